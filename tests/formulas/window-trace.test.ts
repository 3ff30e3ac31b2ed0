/** What a sensor that looks through windows sees, against Poisson integrals done the long way, and closed forms. */
import { describe, expect, it } from 'vitest';
import { runoutRipple } from '../../src/formulas/runout-turn.ts';
import { readingsOf } from '../../src/formulas/signal-periods.ts';
import { trackedEdges } from '../../src/formulas/switching.ts';
import { heightShare, type SensedWindows, windowTrace } from '../../src/formulas/window-trace.ts';

const places = 36;
const pitchAngle = (2 * Math.PI) / places;
const radius = 86;
const pitch = radius * pitchAngle;

function sensed(set: Partial<SensedWindows> = {}, missing = 0): SensedWindows {
  return {
    halfBar: pitchAngle / 4,
    bars: Array.from({ length: places - missing }, (_, i) => i * pitchAngle),
    pitchAngle,
    radius,
    gap: 1.2,
    wobble: 0,
    off: { size: 0, nearestAt: 0 },
    pole: 0,
    spacing: null,
    ...set,
  };
}

const swing = (level: Float64Array) => Math.max(...level) - Math.min(...level);

describe('the field over a face with windows', () => {
  it('is what the Poisson integral over the plane gives (strip of one turn, by quadrature)', () => {
    const wheel = sensed({}, 2);
    const { passed, level } = windowTrace(wheel);
    const turn = 2 * Math.PI * radius;
    // Kernel of the half plane for a pattern that repeats after L: sinh(2 pi g / L) / (cosh - cos) / L.
    const [sh, ch] = [Math.sinh((2 * Math.PI * wheel.gap) / turn), Math.cosh((2 * Math.PI * wheel.gap) / turn)];
    const steps = 4000;
    for (let k = 0; k < passed.length; k += Math.floor(passed.length / 40)) {
      const at = -(passed[k] as number);
      let sum = 0;
      for (const bar of wheel.bars) {
        for (let i = 0; i < steps; i++) {
          const a = bar - wheel.halfBar + (2 * wheel.halfBar * (i + 0.5)) / steps;
          sum += ((sh / (ch - Math.cos(at - a))) * ((2 * wheel.halfBar) / steps)) / (2 * Math.PI);
        }
      }
      expect(level[k]).toBeCloseTo(sum, 5);
    }
  });

  it("fades by 54.6 dB a wavelength where only the bars' own harmonic is left (published spacing loss)", () => {
    const far = (gap: number) => swing(windowTrace(sensed({ gap })).level);
    expect(-20 * Math.log10(far(16 + pitch / 2) / far(16))).toBeCloseTo(54.575 / 2, 1);
  });

  it('a pole of one pitch reads no bar at all, two elements half a pitch apart read twice the swing', () => {
    const at = (set: Partial<SensedWindows>) => swing(windowTrace(sensed({ gap: 6, ...set })).level);
    expect(at({ pole: pitch }) / at({})).toBeLessThan(1e-3);
    expect(at({ spacing: pitch / 2 }) / at({})).toBeCloseTo(2, 2);
  });

  it('comes and goes with the face: nearest when the turn begins', () => {
    const { turn, gap, level } = windowTrace(sensed({ wobble: 0.3 }));
    expect(gap[0]).toBeCloseTo(0.9, 9);
    expect(Math.max(...gap)).toBeCloseTo(1.5, 6);
    const still = (g: number) => Math.max(...windowTrace(sensed({ gap: g })).level);
    const top = (from: number, to: number) =>
      Math.max(...level.filter((_, k) => (turn[k] as number) >= from && (turn[k] as number) <= to));
    expect(top(0, pitchAngle / 2)).toBeCloseTo(still(0.9), 3);
    expect(top(Math.PI - pitchAngle / 2, Math.PI + pitchAngle / 2)).toBeCloseTo(still(1.5), 3);
  });

  it('refuses a face that touches', () => {
    expect(() => windowTrace(sensed({ gap: 0.3, wobble: 0.3 }))).toThrow(/touches/);
  });
});

describe('periods', () => {
  const read = (wheel: SensedWindows) => {
    const { turn, level } = windowTrace(wheel);
    return readingsOf(trackedEdges({ turn, value: level }, 0.6, 0.4), 'rises');
  };

  it('as many as bars, all alike on a true wheel, the gap of missing ones as long as its places', () => {
    const even = read(sensed());
    expect(even?.teeth).toHaveLength(36);
    expect(even?.peak).toBeLessThan(1e-3);
    expect(even?.duty.mean).toBeCloseTo(0.5, 2);
    const short = read(sensed({}, 2));
    expect(short?.teeth).toHaveLength(34);
    expect(short?.markRatios[0]).toBeCloseTo(3, 1);
  });

  it('a wheel off centre is early and late by e / R, whatever its gap', () => {
    const size = 0.2;
    for (const gap of [0.8, 2]) {
      const readings = read(sensed({ gap, off: { size, nearestAt: 0 } }));
      expect((readings?.onceATurn ?? 0) / runoutRipple(size, radius, places)).toBeCloseTo(1, 1);
    }
  });
});

describe('the share that the height of the windows leaves', () => {
  it('at hardly any gap is what of the face lies over the windows: H / w, at most 1', () => {
    expect(heightShare(pitch, 8, 0.01, 2)).toBeCloseTo(1, 2);
    expect(heightShare(pitch, 8, 0.01, 16)).toBeCloseTo(0.5, 2);
    expect(heightShare(pitch, 3, 0.01, 4)).toBeCloseTo(0.75, 2);
  });

  it('is what the Poisson kernel of the half space gives, integrated over path and height', () => {
    // One harmonic cos(p x) in a band H high: g / 2 pi times the integral of cos(p x) (x^2 + y^2 + g^2)^(-3/2), over exp(-p g).
    const [g, height, pole] = [1.2, 4, 1.5];
    const p = (2 * Math.PI) / pitch;
    const [across, along, reach] = [240, 6000, 120];
    let sum = 0;
    const faces = 24;
    for (let f = 0; f < faces; f++) {
      const middle = -pole / 2 + (pole * (f + 0.5)) / faces;
      for (let j = 0; j < across; j++) {
        const y = -height / 2 + (height * (j + 0.5)) / across - middle;
        let line = 0;
        for (let i = 0; i < along / 12; i++) {
          // Finer near the middle, where the kernel is sharp: x = reach s^3.
          const s = (i + 0.5) / (along / 12);
          const x = reach * s ** 3;
          line += (2 * Math.cos(p * x) * (3 * reach * s * s)) / (along / 12) / (x * x + y * y + g * g) ** 1.5;
        }
        sum += (line * height) / across / faces;
      }
    }
    const share = (g * sum) / (2 * Math.PI) / Math.exp(-p * g);
    expect(heightShare(pitch, height, g, pole)).toBeCloseTo(share, 3);
  });

  it('grows with the height and falls with the gap', () => {
    const byHeight = [2, 4, 8, 16].map((height) => heightShare(pitch, height, 1.2, 2));
    expect([...byHeight].sort((a, b) => a - b)).toEqual(byHeight);
    expect(byHeight.at(-1)).toBeGreaterThan(0.99);
    expect(heightShare(pitch, 4, 2, 2)).toBeLessThan(heightShare(pitch, 4, 1, 2));
  });
});
