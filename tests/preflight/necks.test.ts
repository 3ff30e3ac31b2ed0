/** Thin places within one contour: closed forms, a sampler of its own, growth, and no blame where there is none. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Contour } from '../../src/model/sheet.ts';
import { fullBudget } from '../../src/preflight/limits.ts';
import { thinPlaces } from '../../src/preflight/necks.ts';
import { preflightDxf } from '../../src/preflight/preflight.ts';
import '../seed.ts';
import { circle, reversed, roundedRectangle, slot } from '../sheet/contour-shapes.ts';
import { dxf, circle as dxfCircle, polyline } from './dxf-script.ts';
import { anyDeepStar, moved, nested, pathOf, sampledNecks, sharpWheel } from './neck-shapes.ts';

const widths = (contours: readonly Contour[], upTo = 30) => {
  const { metal, air } = thinPlaces(nested(...contours), 0.5, upTo, fullBudget());
  return { metal: metal?.gap ?? null, air: air?.gap ?? null };
};

/** Two discs of radius 20, 60 apart, joined by a bar of `w` with sharp corners. */
function dumbBell(w: number): Contour {
  const half = Math.asin(w / 2 / 20);
  const bulge = Math.tan((2 * Math.PI - 2 * half) / 4);
  const x = 30 - 20 * Math.cos(half);
  return pathOf([
    [-x, -w / 2],
    [x, -w / 2, bulge],
    [x, w / 2],
    [-x, w / 2, bulge],
  ]);
}

/** A bar whose long sides are arcs of radius `r` that come within `w` of each other in the middle; 40 long. */
function waist(w: number, r: number): Contour {
  const sink = r - Math.sqrt(r * r - 400);
  const [y, bulge] = [w / 2 + sink, -Math.tan(Math.asin(20 / r) / 2)];
  return pathOf([
    [-20, -y, bulge],
    [20, -y],
    [20, y, bulge],
    [-20, y],
  ]);
}

/** A comb: `n` teeth `w` wide and 10 long, `gap` between them, on a back 12 high. */
const comb = (n: number, w: number, gap: number): Contour =>
  pathOf([
    [0, -12],
    [n * (w + gap) - gap, -12],
    ...Array.from({ length: n }, (_, i) => n - 1 - i).flatMap((i): [number, number][] => {
      const x = i * (w + gap);
      return [
        [x + w, i === n - 1 ? 10 : 0] as [number, number],
        [x + w, 10] as [number, number],
        [x, 10] as [number, number],
        [x, i === 0 ? 10 : 0] as [number, number],
      ].filter(([px, py], k, all) => k === 0 || px !== all[k - 1]?.[0] || py !== all[k - 1]?.[1]);
    }),
  ]);

/** A round hole of radius 5 with a slot `w` wide that ends round, 20 from its middle. */
function keyhole(w: number): Contour {
  const half = Math.asin(w / 10);
  const x = 5 * Math.cos(half);
  return pathOf([
    [x, w / 2, Math.tan((2 * Math.PI - 2 * half) / 4)],
    [x, -w / 2],
    [20, -w / 2, 1],
    [20, w / 2],
  ]);
}

const plate = roundedRectangle(90, 60, 6);
const turns = [0, 17, 90, 143.7];

describe('closed forms', () => {
  it.each(turns)('turned by %d degrees', (turn) => {
    const put = (contour: Contour) => moved(contour, turn, 12.3, -4.56);
    for (const way of [put, (contour: Contour) => reversed(put(contour))]) {
      expect(widths([way(dumbBell(4))]).metal).toBeCloseTo(4, 9);
      // Discs on both sides of the bar face each other across it: 60 - 2 x 20 apart along the axis of the bar is metal, not air.
      expect(widths([way(dumbBell(4))]).air).toBeNull();
      expect(widths([way(waist(3, 60))]).metal).toBeCloseTo(3, 9);
      expect(widths([way(waist(0.4, 300))]).metal).toBeCloseTo(0.4, 9);
      const both = widths([way(comb(9, 2, 3.5))]);
      expect(both.metal).toBeCloseTo(2, 9);
      expect(both.air).toBeCloseTo(3.5, 9);
      const hole = widths([way(plate), way(keyhole(1.2))], 20);
      expect(hole.air).toBeCloseTo(1.2, 9);
      expect(hole.metal).toBeNull();
      expect(widths([way(plate), way(slot(30, 0.35))]).air).toBeCloseTo(0.7, 9);
      // A wheel's tooth with radial flanks is narrowest between the corners of its root: the chord 2 r sin(a / 2).
      const [tooth, root] = [0.06, 50];
      const wheel = widths([way(sharpWheel(45, root, 56, tooth))]);
      expect(wheel.metal).toBeCloseTo(2 * root * Math.sin(tooth / 2), 9);
      // Its gap closes by 2 pi / 45 - 0.06 = 4.6 degrees: nearly parallel, so the chord of the gap at its floor counts.
      expect(wheel.air).toBeCloseTo(2 * root * Math.sin((2 * Math.PI) / 90 - tooth / 2), 9);
      // Twelve teeth with gaps that open by 20 degrees are no slots.
      expect(widths([way(sharpWheel(12, 30, 36, 0.17))]).air).toBeNull();
    }
  });

  it('knows a tongue of metal within a hole, and a slit in a ring', () => {
    // A C-shaped hole: its two arms leave a tongue 2.5 wide.
    const c = pathOf([
      [-10, -10],
      [10, -10],
      [10, -1.25],
      [-6, -1.25],
      [-6, 1.25],
      [10, 1.25],
      [10, 10],
      [-10, 10],
    ]);
    expect(widths([plate, c]).metal).toBeCloseTo(2.5, 9);
    // A ring of 20 and 16 radius slit by 0.3: the slit is air, and the ring's own band is metal between two arcs of one contour.
    const [outer, inner] = [Math.asin(0.15 / 20), Math.asin(0.15 / 16)];
    const whole = 2 * Math.PI;
    const ring = pathOf([
      [20 * Math.cos(outer), 0.15, Math.tan((whole - 2 * outer) / 4)],
      [20 * Math.cos(outer), -0.15],
      [16 * Math.cos(inner), -0.15, -Math.tan((whole - 2 * inner) / 4)],
      [16 * Math.cos(inner), 0.15],
    ]);
    const slit = widths([moved(ring, 30, 5, 5)]);
    expect(slit.air).toBeCloseTo(0.3, 9);
    expect(slit.metal).toBeCloseTo(4, 9);
  });

  it('takes the narrow end of a finger that tapers a little', () => {
    const finger = pathOf([
      [-30, -20],
      [30, -20],
      [30, 0],
      [1, 0],
      [0.6, 18],
      [-0.6, 18],
      [-1, 0],
      [-30, 0],
    ]);
    expect(widths([finger]).metal).toBeCloseTo(1.2, 9);
  });

  it('finds nothing thin in what has no thin place', () => {
    const wedge = pathOf([
      [0, 0],
      [40, -15],
      [40, 15],
    ]);
    const ellipse = pathOf(
      Array.from(
        { length: 240 },
        (_, i) => [9 * Math.cos(i * (Math.PI / 120)), 5 * Math.sin(i * (Math.PI / 120))] as const,
      ),
    );
    for (const shape of [wedge, circle(0, 0, 5), anyRound(), ellipse]) {
      const { metal, air } = widths([shape], 8);
      expect([metal, air]).toEqual([null, null]);
    }
    // A V-shaped notch of 60 degrees and a half-round nick are no slots.
    const notched = pathOf([
      [-40, -20],
      [40, -20],
      [40, 0],
      [20, 0, -1],
      [14, 0],
      [3, 0],
      [0, -5.2],
      [-3, 0],
      [-40, 0],
    ]);
    expect(widths([notched], 14).air).toBeNull();
  });
});

/** A rounded square without straight sides shorter than it is wide. */
function anyRound(): Contour {
  return roundedRectangle(24, 20, 9.5);
}

describe('a sampler that shares no code', () => {
  it('agrees on star-shaped contours of lines and arcs', () => {
    let seen = 0;
    for (const star of fc.sample(anyDeepStar, { numRuns: 25, seed: 7 })) {
      const sampled = sampledNecks(star, 0.15, 15);
      // The sampler knows true waists only, no tapering edges.
      const exact = thinPlaces(nested(star), 0.5, 15, fullBudget(), 1e-7);
      for (const kind of ['metal', 'air'] as const) {
        const [theirs, mine] = [sampled[kind], exact[kind]?.gap ?? Infinity];
        if (Math.min(theirs, mine) > 14.9) continue;
        seen += 1;
        expect([kind, JSON.stringify(star), Math.abs(theirs - mine) < 0.01, theirs, mine]).toEqual([
          kind,
          JSON.stringify(star),
          true,
          theirs,
          mine,
        ]);
      }
    }
    expect(seen).toBeGreaterThan(10);
  });

  it.each([
    ['dumb-bell', dumbBell(3)],
    ['waist', waist(2.2, 45)],
    ['comb', comb(5, 2.4, 3.1)],
    ['wheel', sharpWheel(24, 20, 26, 0.12)],
  ] as const)('agrees on the %s', (_, shape) => {
    const turned = moved(shape, 31, 3, 4);
    const sampled = sampledNecks(turned, 0.2, 5);
    const exact = widths([turned], 5);
    expect(exact.metal).not.toBeNull();
    expect(Math.abs(sampled.metal - (exact.metal ?? 0))).toBeLessThan(0.02);
    if (sampled.air < Infinity) expect(Math.abs(sampled.air - (exact.air ?? 0))).toBeLessThan(0.02);
  });
});

describe('growth', () => {
  it('is near linear in the teeth of a wheel', () => {
    const cost = (teeth: number) => {
      const budget = fullBudget();
      const full = budget.left;
      const root = teeth;
      thinPlaces(nested(sharpWheel(teeth, root, root + 6, Math.PI / teeth)), 1.5, 12, budget);
      return full - budget.left;
    };
    // Eight times the teeth of the same pitch: eight times the work, not sixty-four.
    const [few, many] = [cost(225), cost(1800)];
    expect(many / few).toBeLessThan(10);
  });

  it('is near linear in the facets of a curve', () => {
    const cost = (n: number) => {
      const budget = fullBudget();
      const full = budget.left;
      const wavy = Array.from({ length: n }, (_, i) => {
        const [angle, r] = [(2 * Math.PI * i) / n, 100 + 5 * Math.sin((14 * Math.PI * i) / n)];
        return [r * Math.cos(angle), r * Math.sin(angle)] as const;
      });
      const { metal, air, upTo } = thinPlaces(nested(pathOf(wavy)), 1.5, 12, budget);
      expect([metal, air, upTo]).toEqual([null, null, 12]);
      return full - budget.left;
    };
    const [few, many] = [cost(2000), cost(16_000)];
    expect(many / few).toBeLessThan(10);
  });

  it('gives up in time on a knot, and says how far it looked', () => {
    const found = thinPlaces(nested(sharpWheel(400, 400, 406, 0.008)), 1.5, 12, { left: 1000 });
    expect(found).toEqual({ metal: null, air: null, upTo: 0 });
  });
});

describe('findings', () => {
  const text = dxf({
    entities: [
      polyline([
        [0, 0],
        [30, 0],
        [30, 9],
        [50, 9],
        [50, 0],
        [80, 0],
        [80, 30],
        [50, 30],
        [50, 11],
        [30, 11],
        [30, 30],
        [0, 30],
      ]),
      dxfCircle(15, 15, 4),
      polyline([
        [60, 8],
        [72, 8],
        [72, 8.06],
        [60, 8.06],
      ]),
    ],
  });
  const look = (thickness?: number) => preflightDxf(new TextEncoder().encode(text), { thickness }).findings;
  const one = (code: string, thickness?: number) => look(thickness).find((finding) => finding.code === code);

  it('name value, limit, place and cure', () => {
    const neck = one('dxf-neck', 3);
    expect(neck).toMatchObject({ value: 2, limit: 3, verdict: 'fail', margin: -1, feature: 'entity-1' });
    // In the middle of the bar, which runs from 30 to 50.
    expect(neck?.places[0]).toMatchObject({ entity: 1, x: 40, y: 10 });
    expect(neck?.remedy).toContain('wider');
    // At 2.5 mm the least is 2.5 mm, and 0.7 x 2.5 is what some service leaves: a caution.
    expect(one('dxf-neck', 2.5)).toMatchObject({ verdict: 'caution' });
    expect(one('dxf-neck', 2)).toMatchObject({ verdict: 'pass', margin: 0 });
    const slit = one('dxf-slot', 3);
    expect(slit).toMatchObject({ value: 0.06, limit: 3, verdict: 'fail', feature: 'entity-3' });
  });

  it('need no thickness for what is narrower than any beam', () => {
    expect(one('dxf-slot')).toMatchObject({ value: 0.06, limit: 0.1, verdict: 'fail' });
    expect(one('dxf-neck')?.verdict).toBe('not assessed');
  });
});
