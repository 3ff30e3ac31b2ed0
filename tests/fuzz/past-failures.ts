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
];
