/** What a sensor sees of a turning wheel, against counting on the outline itself, closed forms and a sum done the long way. */
import fc from 'fast-check';
import '../seed.ts';
import { describe, expect, it } from 'vitest';
import { curvesOfHarmonics } from '../../src/formulas/fourier.ts';
import { toothFrequency } from '../../src/formulas/pulses.ts';
import { runoutRipple, seenFromWheel, turnWhenPassed } from '../../src/formulas/runout-turn.ts';
import { readingsOf } from '../../src/formulas/signal-periods.ts';
import { gapShare, lowSpotShare, type SensedWheel, signalTrace } from '../../src/formulas/signal-trace.ts';
import { trackedEdges, zeroEdges } from '../../src/formulas/switching.ts';
import { fieldsRound, spacingLoss, toothHarmonics, toothPulse } from '../../src/formulas/tooth-field.ts';
import { polarRun, radiusAlong } from '../../src/geometry/contour.ts';
import type { SheetPart } from '../../src/model/sheet.ts';
import { buildToneWheel, type ToneWheelSpec } from '../../src/parts/tone-wheel.ts';

const spec = (more: Partial<ToneWheelSpec> = {}): ToneWheelSpec => ({
  id: 'wheel',
  name: 'wheel',
  material: { id: 'DC01', name: 'DC01', density: 0.00785 },
  thickness: 5,
  teeth: 60,
  missing: 0,
  outside: 120,
  root: 113,
  ratio: 0.5,
  flanks: 'straight',
  rootRadius: 0.5,
  tipBreak: 0,
  bore: 60,
  screwHoles: null,
  toothAngle: 20,
  kerf: 0,
  ...more,
});

interface Set {
  readonly gap: number;
  readonly size: number;
  readonly nearestAt: number;
  readonly pole: number;
  readonly spacing: number | null;
}

function sensed(made: ToneWheelSpec, set: Partial<Set> = {}, shifts: readonly number[] = [], pieces = 8): SensedWheel {
  const { gap = 0.8, size = 0, nearestAt = 0, pole = 0.3, spacing = null } = set;
  const pitchAngle = (2 * Math.PI) / made.teeth;
  const outline = polarRun(buildToneWheel(made).outside, pieces);
  return {
    pulse: toothPulse(outline, (made.toothAngle * Math.PI) / 180, pitchAngle),
    teeth: Array.from({ length: made.teeth - made.missing }, (_, i) => i * pitchAngle + (shifts[i] ?? 0)),
    pitchAngle,
    tip: made.outside / 2,
    gap,
    off: { size, nearestAt },
    pole,
    spacing,
  };
}

/** The outline as a plain polygon, by cutting its arcs here, without the house's own cutter. */
function polygonOf({ outside }: SheetPart): [number, number][] {
  if (outside.kind !== 'path') throw new Error('a wheel has a path');
  return outside.vertices.flatMap((a, i): [number, number][] => {
    const b = outside.vertices[(i + 1) % outside.vertices.length] as typeof a;
    if (a.bulge === 0) return [[a.x, a.y]];
    const sweep = 4 * Math.atan(a.bulge);
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    const r = chord / 2 / Math.sin(sweep / 2);
    const middle = (a.x + b.x) / 2;
    const toCentre = r * Math.cos(sweep / 2);
    const cx = middle - (toCentre * (b.y - a.y)) / chord;
    const cy = (a.y + b.y) / 2 + (toCentre * (b.x - a.x)) / chord;
    const start = Math.atan2(a.y - cy, a.x - cx);
    return Array.from({ length: 24 }, (_, k): [number, number] => [
      cx + Math.abs(r) * Math.cos(start + (sweep * k) / 24),
      cy + Math.abs(r) * Math.sin(start + (sweep * k) / 24),
    ]);
  });
}

/**
 * Turns at which a probe at `reach` from the axis of turning enters steel, by moving every corner and finding by halving where the
 * point-in-polygon answer changes. The probe dips `depth` below the tips, as a ray that is cut there would.
 */
function enteredBy(made: ToneWheelSpec, size: number, depth: number, steps: number): number[] {
  const polygon = polygonOf(buildToneWheel(made));
  const at = (made.toothAngle * Math.PI) / 180;
  const probe = made.outside / 2 - depth;
  const inside = (turn: number): boolean => {
    // Into the wheel's frame: undo the shift, then the turn.
    const dx = probe * Math.cos(at) - size * Math.cos(turn + at);
    const dy = probe * Math.sin(at) - size * Math.sin(turn + at);
    const x = dx * Math.cos(turn) + dy * Math.sin(turn);
    const y = -dx * Math.sin(turn) + dy * Math.cos(turn);
    let odd = false;
    for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
      const [xi, yi] = polygon[i] as [number, number];
      const [xj, yj] = polygon[j] as [number, number];
      if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) odd = !odd;
    }
    return odd;
  };
  const found: number[] = [];
  let was = inside(0);
  for (let k = 1; k <= steps; k++) {
    const now = inside((2 * Math.PI * k) / steps);
    if (now && !was) {
      let [low, high] = [(2 * Math.PI * (k - 1)) / steps, (2 * Math.PI * k) / steps];
      for (let i = 0; i < 40; i++) {
        const middle = (low + high) / 2;
        if (inside(middle)) high = middle;
        else low = middle;
      }
      found.push(high);
    }
    was = now;
  }
  return found;
}

const periodsOf = (turns: readonly number[]): number[] =>
  turns.map((t, i) => ((turns[(i + 1) % turns.length] as number) - t + 2 * Math.PI) % (2 * Math.PI));

const hallReadings = (wheel: SensedWheel) => {
  const { turn, level } = signalTrace(wheel);
  const readings = readingsOf(trackedEdges({ turn, value: level }, 0.6, 0.4), 'rises');
  if (!readings) throw new Error('no readings');
  return readings;
};
const coilReadings = (wheel: SensedWheel) => {
  const { turn, slope } = signalTrace(wheel);
  const readings = readingsOf(zeroEdges({ turn, value: slope }, 0.1), 'falls');
  if (!readings) throw new Error('no readings');
  return readings;
};

describe('the outline seen from the axis', () => {
  it('is as far out as a ray finds on the polygon', () => {
    const made = spec({ tipBreak: 0.3, missing: 2, teeth: 36, toothAngle: 33 });
    const polygon = polygonOf(buildToneWheel(made));
    const nodes = polarRun(buildToneWheel(made).outside);
    for (let k = 0; k < 500; k++) {
      const a = (2 * Math.PI * (k + 0.37)) / 500;
      let far = 0;
      polygon.forEach(([xi, yi], i) => {
        const [xj, yj] = polygon[(i + 1) % polygon.length] as [number, number];
        const si = xi * Math.sin(a) - yi * Math.cos(a);
        const sj = xj * Math.sin(a) - yj * Math.cos(a);
        if (si > 0 === sj > 0) return;
        const share = si / (si - sj);
        far = Math.max(far, (xi + share * (xj - xi)) * Math.cos(a) + (yi + share * (yj - yi)) * Math.sin(a));
      });
      // A chord across a round is off by 0.003 mm at most, several times that along a ray where the round is steep.
      expect(Math.abs(radiusAlong(nodes, a) - far)).toBeLessThan(0.04);
    }
  });

  it('refuses an outline that does not go round the axis', () => {
    expect(() => polarRun({ kind: 'circle', feature: 'x', x: 10, y: 0, r: 5 })).toThrow(/round the axis/);
  });
});

describe('the field', () => {
  const share = fc.double({ min: -1, max: 1, noNaN: true });
  const anyTerms = fc.array(fc.tuple(share, share), { minLength: 2, maxLength: 30 });

  it('adds harmonics as the sum written out does', () => {
    fc.assert(
      fc.property(fc.array(anyTerms, { minLength: 1, maxLength: 4 }), (curves) => {
        const made = curvesOfHarmonics(
          curves.map((terms) => ({
            re: Float64Array.from(terms, ([a]) => a),
            im: Float64Array.from(terms, ([, b]) => b),
          })),
          64,
        );
        expect(made.length).toBe(curves.length);
        for (const [i, terms] of curves.entries()) {
          for (let k = 0; k < 64; k += 7) {
            const sum = terms.reduce((total, [a, b], n) => {
              const x = (2 * Math.PI * n * k) / 64;
              return total + (n === 0 ? a : 2 * (a * Math.cos(x) - b * Math.sin(x)));
            }, 0);
            expect(made[i]?.[k]).toBeCloseTo(sum, 9);
          }
        }
      }),
    );
  });

  it('is what the Poisson integral over the tip circle gives (exterior of a circle, by quadrature)', () => {
    const made = spec({ teeth: 24, missing: 1, outside: 90, root: 80, tipBreak: 0.4, toothAngle: 0 });
    const outline = polarRun(buildToneWheel(made).outside, 64);
    const pitch = (Math.PI * 90) / 24;
    const wheel = sensed(made, { pole: 0 }, [], 64);
    const harmonics = toothHarmonics(wheel.pulse, wheel.teeth, 1500);
    const [tip, rho] = [45, 46];
    const [curve = new Float64Array()] = fieldsRound(harmonics, tip, [{ rho, pole: 0, spacing: null }], 4096);
    const steps = 200_000;
    for (const k of [0, 33, 100, 1024, 2600, 3990, 4050]) {
      const psi = (2 * Math.PI * k) / 4096;
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const a = (2 * Math.PI * (i + 0.5)) / steps;
        const u = Math.exp((-2 * Math.PI * (tip - radiusAlong(outline, a))) / pitch);
        sum += (u * (rho ** 2 - tip ** 2)) / (rho ** 2 + tip ** 2 - 2 * rho * tip * Math.cos(psi - a));
      }
      expect(curve[k]).toBeCloseTo(sum / steps, 4);
    }
  });

  it('fades by the published spacing loss: 54.6 dB a wavelength, and the reference figures', () => {
    expect(-20 * Math.log10(spacingLoss(1, 1))).toBeCloseTo(54.575, 3);
    // exp(-2 pi dg / p): 0.3 mm more on pitches of 6.283 and 3 mm, worked by hand.
    expect(gapShare(1.1, 0.8, 6.283)).toBeCloseTo(0.7408, 4);
    expect(gapShare(1.1, 0.8, 3)).toBeCloseTo(0.5335, 4);
    // (R / rho)^N tends to it on a large wheel.
    expect(lowSpotShare(0.1, 0.8, 6000, 6000)).toBeCloseTo(spacingLoss(0.2, 2 * Math.PI), 3);
  });

  it('a wide gap leaves a pure tooth harmonic whose swing fades as (R / rho)^N', () => {
    const swing = (gap: number) => {
      const { level } = signalTrace(sensed(spec(), { gap, pole: 0 }));
      return Math.max(...level) - Math.min(...level);
    };
    expect(swing(5) / swing(4)).toBeCloseTo((64 / 65) ** 60, 3);
  });

  it('a pole of one pitch reads no tooth at all, two elements half a pitch apart read twice the swing', () => {
    const pitch = (2 * Math.PI * 64) / 60;
    const swing = (set: Partial<Set>) => {
      const { level } = signalTrace(sensed(spec(), { gap: 4, ...set }));
      return Math.max(...level) - Math.min(...level);
    };
    const plain = swing({ pole: 0 });
    expect(swing({ pole: pitch }) / plain).toBeLessThan(1e-3);
    expect(swing({ pole: 0, spacing: pitch / 2 }) / plain).toBeCloseTo(2, 2);
  });
});

describe('periods', () => {
  it('a true wheel gives as many equal periods as it has teeth, on at the share of its teeth or near it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 90 }),
        fc.constantFrom('straight' as const, 'radial' as const),
        fc.double({ min: 0.3, max: 1.5, noNaN: true }),
        (teeth, flanks, gap) => {
          const made = spec({ teeth, flanks, outside: 120, root: 112, rootRadius: 0, toothAngle: 0 });
          for (const readings of [hallReadings(sensed(made, { gap })), coilReadings(sensed(made, { gap }))]) {
            expect(readings.teeth).toHaveLength(teeth);
            expect(readings.mean).toBeCloseTo(360 / teeth, 6);
            // Straight lines between samples leave some millionths.
            expect(readings.peak).toBeLessThan(2e-4);
            expect(readings.markRatios).toEqual([]);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it.each([
    [60, 0.1],
    [36, 0.3],
    [24, 0.05],
  ])('%d teeth off centre by %d mm: each period as a probe on the polygon counts it', (teeth, size) => {
    const made = spec({ teeth, toothAngle: 0, flanks: 'radial', rootRadius: 0 });
    const entered = enteredBy(made, size, size + 0.6, 6000);
    const periods = periodsOf(entered);
    expect(periods).toHaveLength(teeth);
    const even = (2 * Math.PI) / teeth;
    const counted = Math.max(...periods.map((p) => Math.abs(p / even - 1)));
    // Radial flanks have no height in the ripple: the probe's own distance is what counts.
    expect(counted).toBeCloseTo(runoutRipple(size, 60 - size - 0.6, teeth), 4);
    const coil = coilReadings(sensed(made, { size, gap: 0.8 }));
    // Not only as much, but at the same place: the middle of the longest period.
    const longest = periods.indexOf(Math.max(...periods));
    const byProbe = ((entered[longest] as number) + (periods[longest] as number) / 2) * (180 / Math.PI);
    const long = coil.teeth.reduce((x, y) => (y.period > x.period ? y : x));
    const apart = Math.abs(((long.turn + long.period / 2 - byProbe + 540) % 360) - 180);
    expect(apart).toBeLessThan((1.5 * 360) / teeth);
    expect(coil.peak).toBeCloseTo(runoutRipple(size, 60.8, teeth), 3);
    expect(coil.onceATurn).toBeCloseTo(runoutRipple(size, 60.8, teeth), 3);
    // The coil's zero leans another 1 / N of that, since the gap opens while the tooth passes; and it stands further out than the probe.
    expect(Math.abs(coil.peak - counted)).toBeLessThan((2 / teeth + 0.04) * counted);
  });

  it('the figure in the trade for 0.1 mm on a radius of 60: 0.17 %', () => {
    expect(100 * runoutRipple(0.1, 60, 60)).toBeCloseTo(0.17, 2);
  });

  it('shifting one tooth changes two periods by its share of the pitch, whatever the sensor (0.1 of 6.283: 1.6 %)', () => {
    const shifts = Array.from({ length: 60 }, (_, i) => (i === 7 ? 0.1 / 60 : 0));
    const even = 0.1 / ((2 * Math.PI * 60) / 60);
    expect(even).toBeCloseTo(0.0159, 4);
    for (const readings of [
      coilReadings(sensed(spec(), { gap: 0.5, pole: 1 }, shifts)),
      hallReadings(sensed(spec(), { gap: 0.5 }, shifts)),
    ]) {
      const big = readings.teeth.filter(({ error }) => Math.abs(error ?? 0) > 0.5 * even);
      expect(big).toHaveLength(2);
      // The smoothed field spreads some of the shift over the neighbours.
      expect(readings.peak).toBeGreaterThan(0.6 * even);
      expect(readings.peak).toBeLessThan(1.1 * even);
      expect(readings.teeth.reduce((sum, { period }) => sum + period, 0)).toBeCloseTo(360, 6);
    }
  });

  it.each([
    [60, 2],
    [36, 1],
    [24, 1],
  ])('%d places less %d: one long period, and the polygon agrees', (teeth, missing) => {
    const made = spec({ teeth, missing, toothAngle: 0 });
    const periods = periodsOf(enteredBy(made, 0, 1, 6000));
    expect(periods).toHaveLength(teeth - missing);
    expect(Math.max(...periods) / ((2 * Math.PI) / teeth)).toBeCloseTo(missing + 1, 6);
    const coil = coilReadings(sensed(made));
    expect(coil.teeth).toHaveLength(teeth - missing);
    expect(coil.teeth.filter(({ error }) => error === null)).toHaveLength(1);
    // The teeth beside the gap lack a neighbour: their peaks lean a little into it.
    expect(Math.abs((coil.markRatios[0] ?? 0) - (missing + 1))).toBeLessThan(0.1);
    expect(hallReadings(sensed(made)).teeth).toHaveLength(teeth - missing);
  });

  it('a sensor that switches at half way is on for half of an even wave, and longer over wider teeth', () => {
    const on = (ratio: number) => hallReadings(sensed(spec({ ratio, teeth: 24 }), { gap: 0.5 })).duty.mean;
    expect(on(0.6)).toBeGreaterThan(on(0.5));
    expect(on(0.5)).toBeGreaterThan(on(0.4));
    const { duty } = hallReadings(sensed(spec(), { gap: 5, pole: 0 }));
    // 60 % up and 40 % down of a sine: on from asin(0.2) to pi + asin(0.2), half of the turn.
    expect(duty.mean).toBeCloseTo(0.5, 3);
  });

  it('takes the geometry there and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (turn, size, nearestAt) => {
          const { passed } = seenFromWheel(turn, 61, { size, nearestAt });
          expect(turnWhenPassed(passed, 61, { size, nearestAt })).toBeCloseTo(turn, 12);
        },
      ),
    );
  });

  it('frequency is teeth a second: 30 teeth at 4500 rpm are 2250 Hz, 60 teeth give a hertz a turn a minute', () => {
    expect(toothFrequency(30, 4500)).toBe(2250);
    expect(toothFrequency(60, 4500)).toBe(4500);
  });

  it('a flat line has no edges and no readings', () => {
    const turn = Float64Array.from({ length: 64 }, (_, k) => (2 * Math.PI * k) / 64);
    const value = new Float64Array(64).fill(0.4);
    expect(trackedEdges({ turn, value }, 0.6, 0.4)).toEqual([]);
    expect(zeroEdges({ turn, value: new Float64Array(64) }, 0.1)).toEqual([]);
    expect(readingsOf([], 'rises')).toBeNull();
  });

  it('refuses a wheel that touches its sensor', () => {
    expect(() => signalTrace(sensed(spec(), { gap: 0.3, size: 0.3 }))).toThrow(/touches/);
  });
});
