/** What a half-typed job knows of its flanges. */
import { describe, expect, it } from 'vitest';
import { parseFlangePresets } from '../../src/job/flange-presets.ts';
import { flangesSoFar } from '../../src/job/flange-so-far.ts';

const presets = parseFlangePresets([
  {
    file: 'made-up.yaml',
    text: `- { id: MADE-UP, family: invented, title: t, outside: 100, register: { gender: male, diameter: 57 },
    holes: { count: 6, circle: 84, thread: M8 }, source: invented for this test, memory: [] }`,
  },
]);
const one = (text: string) => flangesSoFar(text, presets)[0];

describe('a flange so far', () => {
  it('is nothing while no size is typed', () => {
    expect(flangesSoFar('job: 1\ndriving:\n  name: a\ndriven: {}\n', presets)).toEqual([]);
    expect(flangesSoFar('job: [', presets)).toEqual([]);
    expect(flangesSoFar('just words', presets)).toEqual([]);
  });

  it('has each size as soon as it can be read, and leaves out what cannot', () => {
    const flange = one('driving:\n  outside: [112, 112.04]\n  bore: wide\n  register: { diameter: 62 }\n');
    // Mean of the two readings.
    expect(flange?.outside).toBeCloseTo(112.02, 9);
    expect(flange).toMatchObject({ register: { diameter: 62, gender: null }, bore: null, circle: null, holes: [] });
  });

  it('puts holes where the trade does: evenly, from the x axis', () => {
    const flange = one('driven:\n  holes: { count: 4, circle: 100, first: 90 deg }\n');
    const wanted = [
      [0, 50],
      [-50, 0],
      [0, -50],
      [50, 0],
    ];
    expect(flange?.holes).toHaveLength(4);
    for (const [i, [x, y]] of wanted.entries()) {
      expect(flange?.holes[i]?.x).toBeCloseTo(x as number, 9);
      expect(flange?.holes[i]?.y).toBeCloseTo(y as number, 9);
    }
    expect(flange?.hole).toBeNull();
    // ISO 261: the M10's major diameter is 10 mm.
    expect(one('driven:\n  holes: { circle: 100, thread: M10 }\n')).toMatchObject({
      hole: { diameter: 10, words: 'M10' },
      holes: [],
      circle: 100,
    });
    // The chord of two neighbours of six is half the circle.
    expect(one('driven:\n  holes: { count: 6, chord: 50 }\n')?.circle).toBeCloseTo(100, 9);
  });

  it('is filled in by its pattern, and what is typed goes before that', () => {
    expect(one('driving:\n  from: MADE-UP\n')).toMatchObject({
      outside: 100,
      circle: 84,
      register: { diameter: 57, gender: 'male' },
      hole: { diameter: 8, words: 'M8' },
      pattern: 'MADE-UP',
    });
    const typed = one(
      'driving:\n  from: MADE-UP\n  outside: 99\n  register: none\n  holes: { count: 5, diameter: 8.4 }\n',
    );
    expect(typed).toMatchObject({ outside: 99, register: null, circle: 84, hole: { diameter: 8.4, words: 'clear' } });
    expect(typed?.holes).toHaveLength(5);
    expect(one('driving:\n  from: NOBODY\n  outside: 99\n')?.pattern).toBeNull();
  });

  it('reads bare numbers in the unit of the job', () => {
    expect(one('units: in\ndriving:\n  outside: 4\n')?.outside).toBeCloseTo(101.6, 9);
  });
});
