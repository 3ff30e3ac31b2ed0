/** The signal of a wheel with a wide or an extra tooth: against Poisson integrals in closed form, and periods at exact angles. */
import { describe, expect, it } from 'vitest';
import { readingsOf } from '../../src/formulas/signal-periods.ts';
import { signalTrace } from '../../src/formulas/signal-trace.ts';
import type { Edge } from '../../src/formulas/switching.ts';
import { spacingLoss, toothPulse } from '../../src/formulas/tooth-field.ts';
import { windowTrace } from '../../src/formulas/window-trace.ts';
import { polarRun } from '../../src/geometry/contour.ts';
import { buildToneWheel } from '../../src/parts/tone-wheel.ts';
import { wheelSpec } from '../sheet/specs.ts';

const places = 36;
const pitchAngle = (2 * Math.PI) / places;
const whole = 2 * Math.PI;

interface Run {
  readonly from: number;
  readonly to: number;
}

/** A turn of ordinary teeth and the mark, each from and to in pitches from tooth 1, half a tooth `half` pitches. By hand. */
const runs = (half: number, mark: { readonly wide?: number; readonly extra?: boolean }): Run[] => {
  const { wide = 0, extra = false } = mark;
  const alike = Array.from({ length: wide > 0 ? places - 1 - wide : places }, (_, i) => ({
    from: i - half,
    to: i + half,
  }));
  if (wide > 0) return [...alike, { from: places - 1 - wide - half, to: places - 1 + half }];
  return extra ? [...alike, { from: places - 0.5 - half, to: places - 0.5 + half }] : alike;
};

/**
 * Poisson's kernel summed from -pi to a turn, as a share of the whole: 1/2 + atan(k tan(turn / 2)) / pi, one more for each turn passed;
 * k is (rho + R) / (rho - R) round a circle, coth of half the distance over a strip that repeats. Textbook antiderivative.
 */
const summed = (k: number, turn: number): number => {
  const laps = Math.round(turn / whole);
  return laps + Math.atan(k * Math.tan((turn - laps * whole) / 2)) / Math.PI;
};

describe('the field', () => {
  it.each([{ wide: 1 }, { wide: 3 }, { extra: true }])(
    'round open teeth with %o: steps of the outline, summed by Poisson in closed form',
    (mark) => {
      const made = wheelSpec({
        teeth: places,
        flanks: 'radial',
        ratio: 0.3,
        outside: 180,
        root: 171,
        rootRadius: 0,
        tipBreak: 0,
        screwHoles: null,
        toothAngle: 20,
        wide: mark.wide,
        extra: mark.extra ? 1 : 0,
      });
      const outline = polarRun(buildToneWheel(made).outside);
      const first = (20 * Math.PI) / 180;
      const gap = 0.8;
      const middle = -(1 + (mark.wide ?? 0) / 2) * pitchAngle;
      const count = mark.wide ? places - 1 - mark.wide : places;
      const trace = signalTrace({
        pulse: toothPulse(outline, first + pitchAngle, pitchAngle),
        teeth: [
          ...Array.from({ length: count }, (_, i) => i * pitchAngle),
          ...(mark.extra ? [(places - 0.5) * pitchAngle] : []),
        ],
        odd: mark.wide
          ? { at: middle, pulse: toothPulse(outline, first + middle, pitchAngle, ((mark.wide + 1) * pitchAngle) / 2) }
          : null,
        pitchAngle,
        tip: 90,
        gap,
        off: { size: 0, nearestAt: 0 },
        pole: 0,
        spacing: null,
      });
      const floor = spacingLoss(4.5, 90 * pitchAngle);
      const k = (2 * 90 + gap) / gap;
      for (let i = 0; i < trace.passed.length; i += 97) {
        const at = -(trace.passed[i] as number);
        const tips = runs(0.15, mark).reduce(
          (sum, { from, to }) => sum + summed(k, to * pitchAngle - at) - summed(k, from * pitchAngle - at),
          0,
        );
        expect(trace.level[i]).toBeCloseTo(floor + (1 - floor) * tips, 4);
      }
    },
  );

  it.each([{ wide: 2 }, { extra: true }])('over a face with %o: the same law over a strip', (mark) => {
    const radius = 86;
    const gap = 1.2;
    const halfBar = 0.2 * pitchAngle;
    const count = mark.wide ? places - 1 - mark.wide : places;
    const { passed, level } = windowTrace({
      halfBar,
      bars: [
        ...Array.from({ length: count }, (_, i) => i * pitchAngle),
        ...(mark.extra ? [(places - 0.5) * pitchAngle] : []),
      ],
      odd: mark.wide
        ? { at: (places - 1 - mark.wide / 2) * pitchAngle, half: halfBar + (mark.wide / 2) * pitchAngle }
        : null,
      pitchAngle,
      radius,
      gap,
      wobble: 0,
      off: { size: 0, nearestAt: 0 },
      pole: 0,
      spacing: null,
    });
    const k = 1 / Math.tanh(gap / radius / 2);
    for (let i = 0; i < passed.length; i += 97) {
      const at = -(passed[i] as number);
      const bars = runs(0.2, mark).reduce(
        (sum, { from, to }) => sum + summed(k, to * pitchAngle - at) - summed(k, from * pitchAngle - at),
        0,
      );
      expect(level[i]).toBeCloseTo(bars, 4);
    }
  });
});

describe('periods at exact angles', () => {
  /** Edges of a switch that is on over every run as it passes, what stands before tooth 1 first; each shifted by chance within `noise`. */
  const edgesOf = (all: readonly Run[], noise = 0): Edge[] => {
    let seed = 5;
    const chance = () => {
      seed = (seed * 16807) % 2147483647;
      return (2 * seed) / 2147483647 - 1;
    };
    const turned = (at: number) => ((((-at * pitchAngle) % whole) + whole) % whole) + 0;
    return all
      .flatMap(({ from, to }) => {
        const shift = noise * chance();
        return [
          { turn: turned(to + shift), rises: true },
          { turn: turned(from + shift), rises: false },
        ];
      })
      .sort((a, b) => a.turn - b.turn);
  };
  /** As drawn, in order of turn, by hand: what stands before tooth 1 passes right after it. */
  const drawn = ({ wide = 0, extra = false }: { readonly wide?: number; readonly extra?: boolean }) => [
    ...(extra ? [0.5, 0.5] : []),
    ...Array.from({ length: places - (extra ? 1 : 1 + wide) }, () => 1),
    ...(wide > 0 ? [wide + 1] : []),
  ];

  it.each([1, 2, 3, 5])('%d valleys filled: one period of as many places more, all others exact', (wide) => {
    const all = runs(0.2, { wide });
    for (const timed of ['rises', 'falls'] as const) {
      const read = readingsOf(edgesOf(all), timed, drawn({ wide }));
      expect(read?.markRatios).toHaveLength(1);
      expect(read?.markRatios[0]).toBeCloseTo(wide + 1, 9);
      expect(read?.peak).toBeLessThan(1e-9);
      expect(read?.teeth).toHaveLength(places - wide);
      expect(read?.mean).toBeCloseTo(10, 9);
    }
  });

  it('a tooth more: two periods of a half, and none of them spoils the speed', () => {
    const read = readingsOf(edgesOf(runs(0.15, { extra: true })), 'rises', drawn({ extra: true }));
    expect(read?.teeth).toHaveLength(37);
    for (const ratio of read?.markRatios ?? []) expect(ratio).toBeCloseTo(0.5, 9);
    expect(read?.markRatios).toHaveLength(2);
    expect(read?.peak).toBeLessThan(1e-9);
  });

  it('a coil times middles: n filled are two periods of 1 + n / 2, which for one valley is no more than a bad tooth', () => {
    for (const wide of [1, 2]) {
      const middles = runs(0, { wide }).map(({ from, to }) => ({ from: (from + to) / 2, to: (from + to) / 2 + 0.3 }));
      const read = readingsOf(edgesOf(middles), 'rises', [
        1 + wide / 2,
        1 + wide / 2,
        ...Array.from({ length: places - wide - 2 }, () => 1),
      ]);
      expect(read?.markRatios).toHaveLength(2);
      for (const ratio of read?.markRatios ?? []) expect(ratio).toBeCloseTo(1 + wide / 2, 9);
      expect(read?.peak).toBeLessThan(1e-9);
    }
  });

  it('the mark is found wherever the list begins and however the teeth are cut, and the others keep their errors', () => {
    const list = drawn({ extra: true });
    const turnedList = [...list.slice(11), ...list.slice(0, 11)];
    const noisy = edgesOf(runs(0.15, { extra: true }), 0.08);
    const [a, b] = [readingsOf(noisy, 'rises', list), readingsOf(noisy, 'rises', turnedList)];
    expect(a?.markRatios).toEqual(b?.markRatios);
    expect(a?.teeth.filter(({ error }) => error === null)).toHaveLength(2);
    expect(a?.peak).toBeGreaterThan(0.05);
    expect(a?.peak).toBeLessThan(0.2);
    // Not told, the two halves would pass for teeth that are half a period out.
    expect(readingsOf(noisy, 'rises')?.peak).toBeGreaterThan(0.4);
  });
});
