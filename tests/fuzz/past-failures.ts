/** Inputs that once did what no input may do, each made small and named. They are run in every test. */
import type { Kind } from './cases.ts';

export interface PastFailure {
  readonly name: string;
  readonly kind: Kind;
  readonly text: string;
  /** Thickness of the sheet or diameter of the holes, for drawings. */
  readonly hole?: number;
}

export const pastFailures: readonly PastFailure[] = [
  {
    name: 'a sign that turns the writing, in the name of a key, came through to the terminal',
    kind: 'shipped job, text damaged',
    text: 'job: 1\ndriving: {}\ndriven: {}\nbuilt: { adapter: { driven: { register: { "\\u202Ee": 1 } } } }\n',
  },
  {
    name: 'a number past all numbers was told as Infinity',
    kind: 'shipped job, text damaged',
    text: 'job: 1\ndriving: {}\ndriven: {}\nadapter: { driving: { head: 1e400 } }\n',
  },
  {
    name: 'a key that is such a number was told as Infinity',
    kind: 'shipped job, text damaged',
    text: 'job: 1\ndriving: {}\ndriven: {}\nadapter: { driving: { 1e400: 10.9 } }\n',
  },
  {
    name: 'a hole as wide as the head over it was cured by weaker screws with a pressure of Infinity MPa',
    kind: 'shipped job, data damaged',
    text: [
      'job: 1',
      'units: in',
      'driving: { outside: 5, register: { gender: female, diameter: 2.5008, depth: 0.125 }, holes: { count: 4, circle: 4.25, diameter: 0.4062 } }',
      'driven: { outside: 4, holes: { at: [[1.25, 0.875], [-1.25, 0.875], [-1.25, -0.875], [1.25, -0.875]], diameter: 0.6562 } }',
      'adapter: { driven: { screw: 5/16-24 UNF } }',
    ].join('\n'),
  },
  {
    name: 'a command to the terminal, written as an escape in the name of a material, came through',
    kind: 'shipped job, data damaged',
    text: 'job: 1\ndriving: { material: "a\\e[2J" }\ndriven: {}\n',
  },
  {
    name: 'a row of numbers with a slip in its first place was taken for the names of columns',
    kind: 'table of points',
    text: 'NaN, 55, -83.1, -22.852, -95, 99.7\n1, 2, 3, 4, 5, 6\n',
  },
  {
    name: 'a step at the rim deeper than the flange is thick made a body whose profile ran backwards',
    kind: 'shipped job with grown keys',
    text: [
      'job: 1',
      'driving: { outside: 102, thickness: 0.5, register: { gender: male, diameter: 94, depth: 3 }, holes: { count: 6, circle: 76, diameter: 8.4 } }',
      'driven: { outside: 114, register: { gender: female, diameter: 100.02, depth: 3.5 }, holes: { count: 6, circle: 76, diameter: 8.4 } }',
    ].join('\n'),
  },
  {
    name: 'a command to the terminal, typed as the number of leads of a sensor, came through',
    kind: 'readings typed at a prompt',
    text: '{"what":"sensor","typed":{"units":"mm","instrument":"caliper","side":"driven","resistance":"open","leads":"\\u001b[31m"}}',
  },
  {
    name: 'a place in a list that is not there became a key of its own name',
    kind: 'field of a sheet',
    text: '{"job":0,"path":["sheet","tolerances",1,"tolerance"],"typed":"0.1"}',
  },
  {
    name: 'a word after a list was told as a place that is no number',
    kind: 'field of a sheet',
    text: '{"job":0,"path":["adapter","driving",0,"seat"],"typed":"sunk"}',
  },
  {
    name: 'a sign that turns the writing stood in the rows of a sweep',
    kind: 'what a sweep varies',
    text: '{"job":0,"vary":["adapter.name=\\"a\\u202Eb\\",c"],"at":0}',
  },
  {
    name: 'a number past all numbers stood in the rows of a sweep',
    kind: 'what a sweep varies',
    text: '{"job":0,"vary":["adapter.web=1e400,.nan"],"at":0.7}',
  },
];
