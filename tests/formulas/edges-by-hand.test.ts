/** Edges and readings of curves so short that every figure is worked out on paper. */
import { describe, expect, it } from 'vitest';
import { type Readings, readingsOf } from '../../src/formulas/signal-periods.ts';
import { type Edge, trackedEdges, zeroEdges } from '../../src/formulas/switching.ts';

const turn = 2 * Math.PI;
const rad = Math.PI / 180;
const near = (value: number, digits = 9) => expect.closeTo(value, digits);

/** Edges of one turn from where the output goes on and off, degrees. */
function edgesAt(rises: readonly number[], falls: readonly number[]): Edge[] {
  return [...rises.map((at) => ({ at, rises: true })), ...falls.map((at) => ({ at, rises: false }))]
    .sort((a, b) => a.at - b.at)
    .map(({ at, rises }) => ({ turn: at * rad, rises }));
}
const read = (edges: readonly Edge[], timed: 'rises' | 'falls' = 'rises', drawn?: readonly number[]): Readings => {
  const readings = readingsOf(edges, timed, drawn);
  if (readings === null) throw new Error('no readings');
  return readings;
};

describe('readings of a turn', () => {
  const four = edgesAt([0, 90, 200, 270], [30, 150, 230, 300]);

  it('by the rising edges: periods 90, 110, 70, 90 degrees, on for 30, 60, 30, 30 of them', () => {
    const { teeth, mean, peak, rms, duty, markRatios } = read(four);
    expect(teeth).toEqual(
      [
        [0, 90, 30],
        [90, 110, 60],
        [200, 70, 30],
        [270, 90, 30],
      ].map(([from = 0, period = 0, on = 0]) => ({
        turn: near(from),
        period: near(period),
        error: near(period / 90 - 1),
        speedError: near(90 / period - 1),
        duty: near(on / period),
      })),
    );
    expect([mean, peak]).toEqual([near(90), near(2 / 9)]);
    // Errors 0, 2/9, -2/9, 0: the mean of their squares is 2/81.
    expect(rms).toBeCloseTo(Math.SQRT2 / 9, 9);
    expect(duty).toEqual({ least: near(1 / 3), mean: near((1 / 3 + 6 / 11 + 3 / 7 + 1 / 3) / 4), most: near(6 / 11) });
    expect(markRatios).toEqual([]);
  });

  it('by the falling edges: periods 120, 80, 70, 90, off for 60, 50, 40, 60', () => {
    const { teeth, mean } = read(four, 'falls');
    expect(teeth.map(({ turn, period, duty }) => [turn, period, duty])).toEqual([
      [near(30), near(120), near(1 - 60 / 120)],
      [near(150), near(80), near(1 - 50 / 80)],
      [near(230), near(70), near(1 - 40 / 70)],
      [near(300), near(90), near(1 - 60 / 90)],
    ]);
    expect(mean).toBeCloseTo(90, 9);
  });

  it('what comes once a turn is the sine that leaves least of the errors, found by trying phases', () => {
    // At a phase the best amplitude is a plain projection; errors stand at the middles of their periods.
    const errors = [0, 2 / 9, -2 / 9, 0];
    const middles = [45, 145, 235, 315];
    const tried = Array.from({ length: 36_000 }, (_, i) => {
      const along = middles.map((middle) => Math.cos((middle - i / 200) * rad));
      const amplitude =
        along.reduce((sum, c, k) => sum + c * (errors[k] as number), 0) / along.reduce((sum, c) => sum + c * c, 0);
      const left = along.reduce((sum, c, k) => sum + ((errors[k] as number) - amplitude * c) ** 2, 0);
      return { left, amplitude: Math.abs(amplitude) };
    });
    const best = tried.reduce((least, here) => (here.left < least.left ? here : least));
    expect(read(four).onceATurn).toBeCloseTo(best.amplitude, 5);
    // Two teeth stand opposite: no sine can be told from another.
    expect(read(edgesAt([0, 180], [90, 270])).onceATurn).toBe(0);
    for (const at of [0, 7, 20, 33, 51, 64]) {
      const edges = edgesAt([at, at + 170], [at + 90, at + 260]);
      expect(read(edges).onceATurn).toBe(0);
    }
  });

  it('an edge that comes as the output goes off and on again at once counts before it', () => {
    // On from 0 to 1, from 1 to 2, from 4 to 5 radians.
    const on = [0, 1, 4].flatMap((at) => [
      { turn: at, rises: true },
      { turn: at + 1, rises: false },
    ]);
    const { teeth } = read(on);
    expect(teeth.map(({ duty }) => duty)).toEqual([near(1), near(1 / 3), near(1 / (turn - 4))]);
  });

  it('a period of half again the usual one is a gap, no ordinary period', () => {
    // 1, 1, 1, 1.5 and 1.783 radians.
    const on = [0, 1, 2, 3, 4.5].flatMap((at) => [
      { turn: at, rises: true },
      { turn: at + 0.5, rises: false },
    ]);
    const { teeth, mean, markRatios, duty } = read(on);
    expect(markRatios).toEqual([near(1.5), near(turn - 4.5)]);
    expect(mean).toBeCloseTo(1 / rad, 9);
    expect(teeth.map(({ error, speedError }) => [error, speedError])).toEqual([
      ...[0, 0, 0].map(() => [near(0), near(0)]),
      [null, null],
      [null, null],
    ]);
    expect(duty).toEqual({ least: near(0.5), mean: near(0.5), most: near(0.5) });
  });

  it('a wide tooth is found by the order of the periods as drawn, wherever the turn begins', () => {
    // Places 1, 1, 1.3, 1 of 4.3, begun at each of them; what differs from one place is the mark.
    const drawn = [1, 1, 1.3, 1];
    for (const first of [0, 1, 2, 3]) {
      const periods = drawn.map((_, i) => (360 / 4.3) * (drawn[(i + first) % 4] as number));
      const rises = periods.map((_, i) => periods.slice(0, i).reduce((sum, period) => sum + period, 0));
      const edges = edgesAt(
        rises,
        rises.map((at) => at + 20),
      );
      const { teeth, markRatios } = read(edges, 'rises', drawn);
      expect(teeth.map(({ error }) => error === null)).toEqual(periods.map((period) => period > 100));
      expect(markRatios).toEqual([near(1.3)]);
      // Without the drawing, or with one of another wheel, it is an ordinary period that is 1.3 / 1.075 too long.
      for (const none of [read(edges), read(edges, 'rises', [1, 1, 1.3])]) {
        expect(none.markRatios).toEqual([]);
        expect(none.peak).toBeCloseTo(1.3 / 1.075 - 1, 9);
      }
    }
  });

  it('needs two of either edge', () => {
    expect(readingsOf(edgesAt([0, 180], [90, 270]), 'rises')).not.toBeNull();
    expect(readingsOf(edgesAt([0], [90]), 'rises')).toBeNull();
    expect(readingsOf(edgesAt([0, 100, 200], [90]), 'rises')).toBeNull();
    expect(readingsOf(edgesAt([0, 100, 200], [90]), 'falls')).toBeNull();
  });
});

/** Samples at even steps, begun at each of them in turn: edges must only move along. Places in steps of the samples. */
function everyStart(
  samples: readonly number[],
  switched: (curve: { turn: Float64Array; value: Float64Array }) => readonly Edge[],
  said: readonly (readonly [number, boolean])[],
) {
  const count = samples.length;
  for (let first = 0; first < count; first++) {
    const value = Float64Array.from(samples, (_, i) => samples[(i + first) % count] as number);
    const edges = switched({ turn: Float64Array.from(samples, (_, i) => (turn * i) / count), value });
    const places = said
      .map(([at, rises]) => ({ turn: (turn * ((at - first + count) % count)) / count, rises }))
      .sort((a, b) => a.turn - b.turn);
    expect(edges, `begun at ${first}`).toEqual(places.map(({ turn, rises }) => ({ turn: near(turn), rises })));
  }
}

describe('a switch that learns', () => {
  it.each([
    // On at 0.6 x 4 = 2.4, off at 1.6.
    [
      'one peak of 4 over 0',
      [0, 1, 2, 3, 4, 3, 2, 1],
      [
        [2.4, true],
        [6.4, false],
      ],
    ],
    // On by the peak before (6: 3.6, 8: 4.8), off by the one just over (3.2, 2.4).
    [
      'peaks of 8 and 6 over 0',
      [0, 2, 4, 6, 8, 6, 4, 2, 0, 2, 4, 6, 4, 2],
      [
        [1.8, true],
        [6.4, false],
        [10.4, true],
        [12.8, false],
      ],
    ],
    // On from the valley just over (0: 4.8; 2: 5.6), off from the valley before (0: 3.2; 2: 4.4).
    [
      'valleys of 0 and 2 under 8',
      [0, 2, 4, 6, 8, 6, 4, 2, 4, 6, 8, 6, 4, 2],
      [
        [2.4, true],
        [6.4, false],
        [8.8, true],
        [11.8, false],
      ],
    ],
  ] as const)('by hand: %s', (_, samples, said) => {
    everyStart(samples, (curve) => trackedEdges(curve, 0.6, 0.4), said);
  });

  it('switches where the curve leaves a level on which it rests, on 5/8 and off 3/8 of 8', () => {
    everyStart([0, 2, 5, 5, 8, 6, 3, 3], (curve) => trackedEdges(curve, 0.625, 0.375), [
      [3, true],
      [7, false],
    ]);
  });

  it('reads samples at uneven turns: between two of them in a straight line', () => {
    const steps = [0, 0.1, 0.3, 0.4, 0.5, 0.6, 0.8, 0.9].map((share) => share * turn);
    const curve = { turn: Float64Array.from(steps), value: Float64Array.of(0, 1, 2, 3, 4, 3, 2, 1) };
    // 2.4 between 0.3 and 0.4 of a turn, 1.6 between 0.8 and 0.9.
    expect(trackedEdges(curve, 0.6, 0.4)).toEqual([
      { turn: near(0.34 * turn), rises: true },
      { turn: near(0.84 * turn), rises: false },
    ]);
  });

  it('says nothing about a curve that stays level', () => {
    expect(trackedEdges({ turn: Float64Array.of(0, 2, 4), value: Float64Array.of(1, 1, 1) }, 0.6, 0.4)).toEqual([]);
  });
});

describe('a squarer for a coil', () => {
  it.each([
    [
      'once a turn',
      [1, 4, 8, 4, 1, -1, -4, -8, -4, -1],
      [
        [4.5, false],
        [9.5, true],
      ],
    ],
    [
      'the last zero before it goes far out',
      [8, 1, -1, 1, -1, -8, -1, 1],
      [
        [3.5, false],
        [6.5, true],
      ],
    ],
    [
      'just as far out as it takes (2 of 8) is not further',
      [8, 1, -2, 1, -1, -8, -1, 2, -1, 3],
      [
        [3.5, false],
        [8.25, true],
      ],
    ],
    [
      'a sample on zero',
      [0, 8, 0, -8],
      [
        [2, false],
        [0, true],
      ],
    ],
    ['never as far to one side', [8, 1, -1.9, 1], []],
    ['never as far to the other', [-8, -1, 1.9, -1], []],
    ['nothing', [0, 0, 0], []],
  ] as const)('by hand, a quarter of the greatest swing: %s', (_, samples, said) => {
    everyStart(samples, (curve) => zeroEdges(curve, 0.25), said);
  });
});
