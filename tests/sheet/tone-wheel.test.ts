import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  contourArea,
  contourBox,
  contourFaults,
  contourLength,
  leastGap,
  polygonise,
  sheetMass,
  stretchesOf,
} from '../../src/geometry/contour.ts';
import type { Contour, SheetPart } from '../../src/model/sheet.ts';
import { buildToneWheel, toneWheelFaults, toothMeasures } from '../../src/parts/tone-wheel.ts';
import { polygonArea } from './contour-shapes.ts';
import { anyWheel, wheelSpec } from './specs.ts';

const SHARP = { rootRadius: 0, tipBreak: 0, screwHoles: null } as const;

function corners(part: SheetPart): number {
  return part.outside.kind === 'path' ? part.outside.vertices.length : 0;
}

/** Largest bend, radians, between the end of one stretch and the start of the next. */
function bends(contour: Contour): number[] {
  const stretches = stretchesOf(contour);
  return stretches.map((stretch, i) => {
    const next = stretches[(i + 1) % stretches.length] ?? stretch;
    const heading = (s: typeof stretch, end: boolean): number => {
      if (s.kind === 'line') return Math.atan2(s.y2 - s.y1, s.x2 - s.x1);
      return (end ? s.start + s.sweep : s.start) + (Math.sign(s.sweep) * Math.PI) / 2;
    };
    const bend = heading(next, false) - heading(stretch, true);
    return Math.abs(Math.atan2(Math.sin(bend), Math.cos(bend)));
  });
}

describe('measures of the teeth', () => {
  it('pitch is pi D / N; 60 teeth on 120 mm: 6.2832 mm (definition)', () => {
    expect(toothMeasures(wheelSpec()).pitch).toBeCloseTo(6.2832, 4);
    expect(toothMeasures(wheelSpec()).pitchDegrees).toBe(6);
  });

  it('widths from angles, w = D/2 rad(angle): 2.7 and 3.3 degrees on 100 mm, 4.45 on 95.3 (inductive wheel pages)', () => {
    const sixty = toothMeasures(wheelSpec({ outside: 100, root: 93, ratio: 2.7 / 6 }));
    expect(sixty.toothArc).toBeCloseTo(2.3562, 4);
    expect(sixty.valleyArc).toBeCloseTo(2.8798, 4);
    const thirtySix = toothMeasures(wheelSpec({ teeth: 36, outside: 95.3, root: 85.3, ratio: 4.45 / 10 }));
    expect(thirtySix.toothArc).toBeCloseTo(3.7008, 4);
  });

  it('chords are 2 R sin(a/2); a straight tooth is as wide at its root as at its tip', () => {
    const straight = toothMeasures(wheelSpec());
    expect(straight.toothChord).toBeCloseTo(120 * Math.sin((1.35 * Math.PI) / 180), 10);
    expect(straight.toothRootChord).toBeCloseTo(straight.toothChord, 10);
    const radial = toothMeasures(wheelSpec({ flanks: 'radial' }));
    expect(radial.toothRootChord).toBeCloseTo((radial.toothChord * 113) / 120, 10);
    expect(radial.valleyRootArc).toBeCloseTo((radial.valleyArc * 113) / 120, 10);
    expect(radial.height).toBeCloseTo(3.5, 10);
  });

  it('the gap of a 60-2 wheel spans three pitches less one tooth: 18 - 2.7 degrees', () => {
    expect(toothMeasures(wheelSpec({ missing: 2 })).missingDegrees).toBeCloseTo(15.3, 10);
    expect(toothMeasures(wheelSpec({ missing: 2 })).present).toBe(58);
  });

  it('lands left by the rounds are those that a build shows', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const spec = wheelSpec({ flanks });
      const m = toothMeasures(spec);
      const arcs = stretchesOf(buildToneWheel(spec).outside).flatMap((s) => (s.kind === 'arc' ? [s] : []));
      const tip = arcs.find((s) => Math.abs(s.r - 60) < 1e-6);
      const root = arcs.find((s) => Math.abs(s.r - 56.5) < 1e-6);
      expect((tip?.sweep ?? 0) * 60).toBeCloseTo(m.tipLand, 9);
      expect((root?.sweep ?? 0) * 56.5).toBeCloseTo(m.rootLand, 9);
    }
  });
});

describe('outline', () => {
  it('eight corners a tooth with every feature, smooth at every one: the rounds are tangent', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const part = buildToneWheel(wheelSpec({ flanks }));
      expect(corners(part)).toBe(480);
      expect(Math.max(...bends(part.outside))).toBeLessThan(1e-9);
      expect(contourArea(part.outside)).toBeGreaterThan(0);
    }
  });

  it('arcs have the radii asked for: tip, break, round, root', () => {
    const arcs = stretchesOf(buildToneWheel(wheelSpec()).outside).flatMap((s) => (s.kind === 'arc' ? [s] : []));
    const radii = new Map<number, number>();
    for (const { r } of arcs) radii.set(Number(r.toFixed(7)), (radii.get(Number(r.toFixed(7))) ?? 0) + 1);
    expect(radii).toEqual(
      new Map([
        [0.8, 120],
        [0.3, 120],
        [60, 60],
        [56.5, 60],
      ]),
    );
    // Root rounds are hollow, everything else turns with the outline.
    for (const { r, sweep } of arcs) expect(Math.sign(sweep)).toBe(Math.abs(r - 0.8) < 1e-6 ? -1 : 1);
  });

  it('straight flanks are parallel to the tooth, radial ones point at the axis', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const part = buildToneWheel(wheelSpec({ flanks, toothAngle: 90, missing: 59, teeth: 60 }));
      const lines = stretchesOf(part.outside).flatMap((s) => (s.kind === 'line' ? [s] : []));
      expect(lines).toHaveLength(2);
      for (const { x1, y1, x2, y2 } of lines) {
        if (flanks === 'straight') expect(x1).toBeCloseTo(x2, 10);
        else expect(x1 * y2 - x2 * y1).toBeCloseTo(0, 9);
      }
    }
  });

  it('missing teeth leave one plain root arc, no deeper than the valleys, before tooth number 1', () => {
    const spec = wheelSpec({ missing: 2, toothAngle: 30 });
    const part = buildToneWheel(spec);
    expect(corners(part)).toBe(58 * 8);
    const roots = stretchesOf(part.outside).flatMap((s) =>
      s.kind === 'arc' && Math.abs(s.r - 56.5) < 1e-6 ? [s] : [],
    );
    expect(roots).toHaveLength(58);
    const widest = roots.reduce((a, b) => (a.sweep > b.sweep ? a : b));
    const m = toothMeasures(spec);
    expect(widest.sweep).toBeCloseTo(m.rootLand / 56.5 + 2 * ((6 * Math.PI) / 180), 10);
    // Middle of the gap: 1.5 pitches clockwise of tooth 1.
    const middle = ((widest.start + widest.sweep / 2) * 180) / Math.PI;
    expect(middle).toBeCloseTo(30 - 9, 8);
  });

  it('tooth number 1 stands at its angle', () => {
    const part = buildToneWheel(wheelSpec({ teeth: 5, missing: 4, toothAngle: 70, ratio: 0.1 }));
    const tip = stretchesOf(part.outside).find((s) => s.kind === 'arc' && Math.abs(s.r - 60) < 1e-6);
    expect(tip?.kind === 'arc' && ((tip.start + tip.sweep / 2) * 180) / Math.PI).toBeCloseTo(70, 9);
  });

  it('a full round in the valley is one arc', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const base = wheelSpec({ flanks, ratio: 0.6, root: 108 });
      const rootRadius = toothMeasures(base).largestRootRadius;
      const part = buildToneWheel({ ...base, rootRadius });
      expect(corners(part)).toBe(60 * 6);
      expect(contourFaults(part.outside)).toEqual([]);
      expect(Math.max(...bends(part.outside))).toBeLessThan(1e-7);
      const missing = buildToneWheel({ ...base, rootRadius, missing: 2 });
      // The gap ends in two rounds of their own and a root arc.
      expect(corners(missing)).toBe(58 * 6 + 2);
      expect(contourFaults(missing.outside)).toEqual([]);
    }
  });

  it('sharp wheels have four corners a tooth', () => {
    expect(corners(buildToneWheel(wheelSpec(SHARP)))).toBe(240);
  });

  it('3,600 teeth keep to eight corners each, clean', () => {
    const spec = wheelSpec({ teeth: 3600, outside: 1200, root: 1198, rootRadius: 0.1, tipBreak: 0.05 });
    const part = buildToneWheel(spec);
    expect(corners(part)).toBe(28800);
    expect(contourFaults(part.outside)).toEqual([]);
  });
});

describe('area and balance', () => {
  it('sharp radial teeth: root disc plus a sector ring a tooth', () => {
    const part = buildToneWheel(wheelSpec({ ...SHARP, flanks: 'radial', missing: 3 }));
    const ring = ((0.45 * 6 * Math.PI) / 180 / 2) * (60 ** 2 - 56.5 ** 2);
    expect(contourArea(part.outside)).toBeCloseTo(Math.PI * 56.5 ** 2 + 57 * ring, 6);
  });

  it('sharp straight teeth: root disc plus the strip between two circles, by its integral', () => {
    const part = buildToneWheel(wheelSpec({ ...SHARP, missing: 1 }));
    const h = 60 * Math.sin((1.35 * Math.PI) / 180);
    // Integral of 2 sqrt(a^2 - y^2) dy from 0 to h.
    const strip = (a: number): number => h * Math.sqrt(a * a - h * h) + a * a * Math.asin(h / a);
    expect(contourArea(part.outside)).toBeCloseTo(Math.PI * 56.5 ** 2 + 59 * (strip(60) - strip(56.5)), 6);
  });

  it('missing teeth unbalance the wheel: 43.8799 g.mm for 60-2, 80.1283 for 36-1 (reference, geometry)', () => {
    // The reference tooth is the sector ring, which is the sharp radial tooth here: no model difference.
    const unbalance = (spec: ReturnType<typeof wheelSpec>): [number, number] => {
      const { mass, centre } = sheetMass(buildToneWheel(spec));
      return [mass * Math.hypot(centre[0], centre[1]), Math.atan2(centre[1], centre[0])];
    };
    const radial = { ...SHARP, flanks: 'radial' } as const;
    const [sixty, at] = unbalance(wheelSpec({ ...radial, missing: 2 }));
    expect(sixty).toBeCloseTo(43.8799, 4);
    // The heavy side lies opposite the gap, whose middle is 9 degrees before tooth 1.
    expect((at * 180) / Math.PI).toBeCloseTo(171, 6);
    const thirtySix = { teeth: 36, missing: 1, outside: 150, root: 140, ratio: 4.45 / 10 };
    expect(unbalance(wheelSpec({ ...radial, ...thirtySix }))[0]).toBeCloseTo(80.1283, 4);
    // Straight flanks, rounds and breaks change the tooth a little: within 6 % of the reference tooth.
    expect(Math.abs(unbalance(wheelSpec({ missing: 2, screwHoles: null }))[0] / 43.8799 - 1)).toBeLessThan(0.06);
  });

  it('a whole wheel is balanced: its centre lies on the axis within 1e-9 mm, its products of inertia vanish', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const { centre, inertia } = sheetMass(buildToneWheel(wheelSpec({ flanks, toothAngle: 12.3 })));
      expect(Math.hypot(centre[0], centre[1])).toBeLessThan(1e-9);
      expect(inertia.xx / inertia.yy).toBeCloseTo(1, 10);
      expect(inertia.xy / inertia.xx).toBeCloseTo(0, 10);
    }
  });

  it('kerf: the outline grows by L k + pi k^2 with k half the kerf (Steiner), the holes shrink to pi (r - k)^2', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const nominal = buildToneWheel(wheelSpec({ flanks, missing: 2 }));
      const cut = buildToneWheel(wheelSpec({ flanks, missing: 2, kerf: 0.2 }));
      const grown = contourArea(nominal.outside) + contourLength(nominal.outside) * 0.1 + Math.PI * 0.01;
      expect(contourArea(cut.outside)).toBeCloseTo(grown, 7);
      expect(leastGap(nominal.outside, cut.outside).gap).toBeCloseTo(0.1, 9);
      cut.holes.forEach((hole, i) => {
        const before = nominal.holes[i];
        expect(hole.kind === 'circle' && before?.kind === 'circle' && before.r - hole.r).toBeCloseTo(0.1, 12);
      });
    }
  });

  it('kerf on sharp edges rounds the tips and keeps the corners of the valley sharp', () => {
    const cut = buildToneWheel(wheelSpec({ ...SHARP, kerf: 0.2 }));
    expect(corners(cut)).toBe(6 * 60);
    const nominal = buildToneWheel(wheelSpec(SHARP));
    expect(leastGap(nominal.outside, cut.outside).gap).toBeCloseTo(0.1, 9);
    expect(contourFaults(cut.outside)).toEqual([]);
  });
});

describe('any wheel without a fault', () => {
  it('builds one clean counter-clockwise outline between its circles, and a fine polygon has its area', () => {
    fc.assert(
      fc.property(anyWheel, (spec) => {
        const { outside } = buildToneWheel(spec);
        expect(contourFaults(outside)).toEqual([]);
        const area = contourArea(outside);
        const k = spec.kerf / 2;
        expect(area).toBeGreaterThan(Math.PI * (spec.root / 2) ** 2 * 0.999);
        expect(area).toBeLessThan(Math.PI * (spec.outside / 2 + k) ** 2);
        const strip = contourLength(outside) * 1e-4;
        const inner = polygonArea(polygonise(outside, 1e-4, 'inside'));
        const outer = polygonArea(polygonise(outside, 1e-4, 'outside'));
        expect(area - inner).toBeGreaterThanOrEqual(-1e-7);
        expect(outer - area).toBeGreaterThanOrEqual(-1e-7);
        expect(outer - inner).toBeLessThanOrEqual(2.1 * strip);
        for (const s of stretchesOf(outside)) {
          const r = Math.hypot(s.x1, s.y1);
          expect(r).toBeGreaterThan(spec.root / 2 + k - 1e-6);
          expect(r).toBeLessThan(spec.outside / 2 + k + 1e-6);
        }
        const box = contourBox(outside);
        expect(Math.max(box.xMax, -box.xMin, box.yMax, -box.yMin)).toBeLessThan(spec.outside / 2 + k + 1e-6);
      }),
      { numRuns: 200 },
    );
  });

  it('the limits that a fault allows do build, and a little more does not', () => {
    fc.assert(
      fc.property(anyWheel, (any) => {
        const spec = { ...any, kerf: 0 };
        const largest = toothMeasures(spec).largestRootRadius;
        expect(toneWheelFaults({ ...spec, rootRadius: largest })).toEqual([]);
        expect(contourFaults(buildToneWheel({ ...spec, rootRadius: largest }).outside)).toEqual([]);
        expect(toneWheelFaults({ ...spec, rootRadius: largest + 1e-3 })[0]).toMatch(/^rootRadius: .*Allowed/);
        fc.pre(2 * largest + 0.1 < spec.bore);
        expect(toneWheelFaults({ ...spec, kerf: 2 * largest + 1e-3 })[0]).toMatch(/^kerf: .*Allowed/);
        expect(contourFaults(buildToneWheel({ ...spec, kerf: 2 * largest }).outside)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});

describe('faults: each names the field, the value, what is allowed and the likely slip', () => {
  const cases: readonly (readonly [name: string, change: Parameters<typeof wheelSpec>[0], says: RegExp])[] = [
    ['two teeth', { teeth: 2 }, /^teeth: 2 .*3 or more/],
    ['half a tooth', { teeth: 30.5 }, /^teeth: 30\.5 /],
    ['none left', { missing: 60 }, /^missing: 60 .*0 to 59/],
    ['minus one missing', { missing: -1 }, /^missing: -1/],
    ['root outside', { root: 120 }, /^root: 120 mm .*120 mm.*swapped/],
    ['bore beyond the root', { bore: 113 }, /^bore: 113 mm .*113 mm/],
    ['ratio in percent', { ratio: 45 }, /^ratio: 45 .*0\.45/],
    ['ratio of one', { ratio: 1 }, /^ratio: 1 must lie between 0 and 1/],
    ['no thickness', { thickness: 0 }, /^thickness: 0 mm/],
    ['not a number', { outside: Number.NaN }, /^outside: NaN/],
    ['endless', { outside: Infinity }, /^outside: Infinity/],
    ['negative round', { rootRadius: -1 }, /^rootRadius: -1 mm/],
    ['negative kerf', { kerf: -0.2 }, /^kerf: -0\.2 mm/],
    ['angle missing', { toothAngle: Number.NaN }, /^toothAngle: NaN/],
    // Straight flanks 2 h apart meet at h / sin(pi / N): 6 teeth at 0.6 on 120 mm, h = 60 sin 18 deg.
    ['straight flanks meet', { teeth: 6, ratio: 0.6, root: 60, bore: 20 }, /^root: 60 mm is too deep.*74\.1641 mm/],
    // Full round of a radial valley: f = q s / (1 - s), s = sin(1.65 deg) on q = 56.5.
    ['round too large', { flanks: 'radial', rootRadius: 2 }, /^rootRadius: 2 mm .*up to 1\.6751 mm/],
    // Half of the straight tooth's width, 60 sin(1.35 deg).
    ['break too large', { tipBreak: 1.5 }, /^tipBreak: 1\.5 mm .*less than 1\.4136 mm/],
    // The widest beam is twice the full round of the valley, f = (q s - h) / (1 - s), s = sin(3 deg), h = 60
    // sin(1.35 deg).
    ['kerf in the valley', { kerf: 3.3 }, /^kerf: 3\.3 mm .*up to 3\.2573 mm/],
    [
      'kerf in the holes',
      { screwHoles: { diameter: 1, positions: [{ x: 40, y: 0 }] }, kerf: 1 },
      /^kerf: 1 mm .*screwHoles/,
    ],
    ['hole in the teeth', { screwHoles: { diameter: 6, positions: [{ x: 55, y: 0 }] } }, /positions\[0\].*the teeth/],
    ['hole in the bore', { screwHoles: { diameter: 6, positions: [{ x: 27, y: 0 }] } }, /positions\[0\].*the bore/],
    [
      'hole twice',
      {
        screwHoles: {
          diameter: 6,
          positions: [
            { x: 40, y: 0 },
            { x: 40, y: 0 },
          ],
        },
      },
      /positions\[1\].*twice/,
    ],
    ['hole of nothing', { screwHoles: { diameter: 0, positions: [] } }, /^screwHoles\.diameter: 0 mm/],
  ];
  for (const [name, change, says] of cases) {
    it(name, () => {
      const spec = wheelSpec(change);
      const faults = toneWheelFaults(spec);
      expect(faults.join('\n')).toMatch(new RegExp(says.source, 'm'));
      expect(() => buildToneWheel(spec)).toThrow(/Tone wheel wheel/);
    });
  }

  it('has nothing to say about the sound ones', () => {
    expect(toneWheelFaults(wheelSpec())).toEqual([]);
    expect(toneWheelFaults(wheelSpec({ missing: 2, kerf: 0.2 }))).toEqual([]);
  });
});
