/** Mass where drillings cross one another or break out of the part: what they share is taken away once. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isLaminar } from '../../src/geometry/nesting.ts';
import { turnedMass } from '../../src/geometry/turned-mass.ts';
import type { Profile, TurnedPart } from '../../src/model/part.ts';
import { drilling, profile, turned } from './fixtures.ts';
import { anyPart } from './random-part.ts';

const disc = (r: number, h: number) => profile([0, r], [h, r]);
const through = (id: string, x: number, r: number) => drilling(id, x, 0, [0, r], [20, r]);

/** Area that two circles share, their centres d apart (school geometry: two sectors less a kite). */
function lens(a: number, b: number, d: number): number {
  const [p, q] = [Math.acos((d * d + a * a - b * b) / (2 * d * a)), Math.acos((d * d + b * b - a * a) / (2 * d * b))];
  return a * a * (p - Math.sin(2 * p) / 2) + b * b * (q - Math.sin(2 * q) / 2);
}

/** The same solid with needless corners in every slope. */
function split({ outer, drillings, ...rest }: TurnedPart): TurnedPart {
  const cut = (corners: Profile, pieces: number): Profile =>
    corners.flatMap((p, i) => {
      const q = corners[i + 1];
      if (!q || q.z <= p.z) return [p];
      const at = (k: number) => ({ z: p.z + ((q.z - p.z) * k) / pieces, r: p.r + ((q.r - p.r) * k) / pieces });
      return [p, ...Array.from({ length: pieces - 1 }, (_, k) => at(k + 1))];
    });
  return { ...rest, outer: cut(outer, 7), drillings: drillings.map((d) => ({ ...d, profile: cut(d.profile, 5) })) };
}

describe('closed forms', () => {
  const solid = Math.PI * 60 ** 2;

  it('two holes that cross share a lens', () => {
    const { volume } = turnedMass(turned('two', disc(60, 20), [through('a', 25, 8), through('b', 37, 6)]));
    expect(volume / 20).toBeCloseTo(solid - Math.PI * (64 + 36) + lens(8, 6, 12), 9);
  });

  it('a hole that breaks out of the rim takes away a lens only', () => {
    const { volume, centre } = turnedMass(turned('out', disc(60, 20), [through('a', 57, 8)]));
    expect(volume / 20).toBeCloseTo(solid - lens(60, 8, 57), 9);
    expect(centre[0]).toBeLessThan(0);
    expect(centre[1]).toBeCloseTo(0, 12);
    expect(centre[2]).toBeCloseTo(10, 12);
  });

  it('a hole whose middle lies on a flat loses half of it', () => {
    const flats = { feature: 'flats', across: 100, angle: 0 };
    const whole = turnedMass(turned('flat', disc(60, 20), [], { flats })).volume;
    const { volume } = turnedMass(turned('notch', disc(60, 20), [through('a', 50, 8)], { flats }));
    expect((whole - volume) / 20).toBeCloseTo((Math.PI * 64) / 2, 9);
  });

  // Round sizes make outlines touch exactly, where rounding alone would decide on which side they lie.
  it.each([0, 90, 17])(
    'touching outlines: flats at %s degrees that only touch the rim, a hole through both',
    (angle) => {
      const at = (angle * Math.PI) / 180;
      const flats = { feature: 'flats', across: 120, angle };
      const hole = drilling('hole', 53 * Math.cos(at), 53 * Math.sin(at), [0, 8], [20, 8]);
      const { volume } = turnedMass(turned('touch', disc(60, 20), [hole], { flats }));
      expect(volume / 20).toBeCloseTo(solid - lens(60, 8, 53), 8);
    },
  );

  it('touching outlines: a hole that touches the rim from within and another that it crosses', () => {
    const holes = [through('a', 52, 8), drilling('b', 56, 12, [0, 5], [20, 5]), through('c', 38, 6)];
    const { volume } = turnedMass(turned('touch', disc(60, 20), holes));
    // a touches the rim at 60 and crosses b, which breaks out; c touches a from outside.
    const gone = Math.PI * (64 + 36) + lens(60, 5, Math.hypot(56, 12)) - lens(8, 5, Math.hypot(4, 12));
    expect(volume / 20).toBeCloseTo(solid - gone, 8);
  });

  it('a hole with its middle on the rim of a cone: the sum of its lenses', () => {
    const part = turned('cone', profile([0, 60], [20, 50]), [through('a', 55, 4)]);
    const gone = (Math.PI * 20 * (60 ** 2 + 60 * 50 + 50 ** 2)) / 3 - turnedMass(part).volume;
    // Simpson's rule on many heights, from the height at which the rim reaches the hole to the one at which it leaves it.
    const at = (z: number) => {
      const rim = 60 - z / 2;
      if (rim >= 59) return Math.PI * 16;
      return rim <= 51 ? 0 : lens(rim, 4, 55);
    };
    const steps = 20000;
    const step = 20 / steps;
    let sum = at(0) + at(20);
    for (let k = 1; k < steps; k++) sum += (k % 2 === 1 ? 4 : 2) * at(k * step);
    expect(gone).toBeCloseTo((sum * step) / 3, 5);
  });
});

describe('random parts that cross', () => {
  const keys = ['xx', 'yy', 'zz', 'xy', 'xz', 'yz'] as const;

  it('corners in the middle of a slope change nothing, to 1e-11', () => {
    let crossing = 0;
    fc.assert(
      fc.property(anyPart, (part) => {
        const [whole, pieces] = [turnedMass(part), turnedMass(split(part))];
        if (isLaminar(part) || whole.volume < 100) return;
        crossing++;
        const moment = Math.max(whole.inertia.xx, whole.inertia.zz, whole.inertia.yy);
        expect(Math.abs(pieces.volume / whole.volume - 1)).toBeLessThan(1e-11);
        for (const key of keys) {
          expect(Math.abs(pieces.inertia[key] - whole.inertia[key]) / moment, key).toBeLessThan(1e-11);
        }
      }),
      { numRuns: 150 },
    );
    expect(crossing).toBeGreaterThan(30);
  });

  it('never has less metal than the same part with every hole counted in full', () => {
    fc.assert(
      fc.property(anyPart, (part) => {
        const alone = part.drillings.map((one) => turnedMass({ ...part, drillings: [one] }).volume);
        const solid = turnedMass({ ...part, drillings: [] }).volume;
        const all = turnedMass(part).volume;
        const slack = 1e-9 * solid;
        expect(all).toBeGreaterThan(solid - alone.reduce((sum, v) => sum + (solid - v), 0) - slack);
        expect(all).toBeLessThan(Math.min(solid, ...alone) + slack);
      }),
      { numRuns: 150 },
    );
  });
});
