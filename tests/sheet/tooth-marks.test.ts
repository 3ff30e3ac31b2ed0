/** Position marks that are no gap: a wide tooth and an extra one, by plane geometry and by counting on the outline itself. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourFaults, leastGap, sheetMass } from '../../src/geometry/contour.ts';
import type { Contour, SheetPart } from '../../src/model/sheet.ts';
import {
  buildToneWheel,
  markOf,
  pulseCount,
  type ToneWheelSpec,
  toneWheelFaults,
  toothMeasures,
  toothRow,
  valleySpans,
  windowsBeside,
} from '../../src/parts/tone-wheel.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshMass } from '../../src/solids/mesh-mass.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { STEEL, wheelSpec, windowSpec } from './specs.ts';

type Point = readonly [number, number];

/** A contour as a plain polygon: its arcs cut here, from the definition of a bulge (a quarter of the turn's tangent). */
function polygonOf(contour: Contour, pieces = 64): Point[] {
  if (contour.kind !== 'path') throw new Error('a path is needed');
  return contour.vertices.flatMap((a, i): Point[] => {
    const b = contour.vertices[(i + 1) % contour.vertices.length] as typeof a;
    if (a.bulge === 0) return [[a.x, a.y]];
    const sweep = 4 * Math.atan(a.bulge);
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    // The centre lies off the chord's middle by half a chord over the tangent of half the turn, to the left.
    const off = 0.5 / Math.tan(sweep / 2);
    const [cx, cy] = [a.x + dx / 2 - off * dy, a.y + dy / 2 + off * dx];
    return Array.from({ length: pieces }, (_, k): Point => {
      const t = (sweep * k) / pieces;
      const [px, py] = [a.x - cx, a.y - cy];
      return [cx + px * Math.cos(t) - py * Math.sin(t), cy + px * Math.sin(t) + py * Math.cos(t)];
    });
  });
}
const shoelace = (points: readonly Point[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [u, v] = points[(i + 1) % points.length] as Point;
    return sum + (x * v - u * y) / 2;
  }, 0);
/** Area within a contour: the polygon of its corners, and r^2 (turn - sin turn) / 2 beyond every chord. */
const areaOf = (contour: Contour): number => {
  if (contour.kind !== 'path') throw new Error('a path is needed');
  const { vertices } = contour;
  const beyond = vertices.map((a, i) => {
    const b = vertices[(i + 1) % vertices.length] as typeof a;
    if (a.bulge === 0) return 0;
    const turn = 4 * Math.atan(a.bulge);
    const r = Math.hypot(b.x - a.x, b.y - a.y) / 2 / Math.sin(turn / 2);
    return ((turn - Math.sin(turn)) * r * r) / 2;
  });
  return shoelace(vertices.map(({ x, y }): Point => [x, y])) + beyond.reduce((a, b) => a + b, 0);
};
const areaOutside = (spec: ToneWheelSpec): number => areaOf(buildToneWheel(spec).outside);
/** How often a polygon goes out through a circle: teeth that stand up through it. */
const outwards = (points: readonly Point[], r: number): number =>
  points.filter((p, i) => {
    const q = points[(i + 1) % points.length] as Point;
    return Math.hypot(...p) < r && Math.hypot(...q) >= r;
  }).length;
/** Where it does so, and where it comes back, degrees, sorted. */
const crossings = (points: readonly Point[], r: number, way: 1 | -1): number[] =>
  points
    .flatMap((p, i) => {
      const q = points[(i + 1) % points.length] as Point;
      if (Math.hypot(...p) < r === (way === 1) && Math.hypot(...q) >= r === (way === 1)) {
        const share = (r - Math.hypot(...p)) / (Math.hypot(...q) - Math.hypot(...p));
        const [x, y] = [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])];
        return [(((Math.atan2(y, x) * 180) / Math.PI + 360) % 360) + 0];
      }
      return [];
    })
    .sort((a, b) => a - b);
/** The holes of a part are a plain outline's business too: only the outside is looked at. */
const outsideOf = (spec: ToneWheelSpec): Point[] => polygonOf(buildToneWheel(spec).outside);
const windowsOf = (part: SheetPart): Contour[] => part.holes.filter(({ kind }) => kind === 'path');

const degrees = Math.PI / 180;
/** Area between two lines h either side of the axis, within a circle, on one side. */
const strip = (a: number, h: number): number => h * Math.sqrt(a * a - h * h) + a * a * Math.asin(h / a);
/** What a round of radius f between a radial flank and the root circle fills: two sides from the axis, less the round's sector. */
function rootRound(q: number, f: number): number {
  const x = Math.sqrt((q + f) ** 2 - f ** 2);
  const turn = Math.atan2(f, x);
  return (x * f) / 2 - (turn * q * q) / 2 - (f * f * (Math.PI / 2 - turn)) / 2;
}
const plainRadial = { flanks: 'radial' as const, tipBreak: 0, screwHoles: null };

describe('the row of pulses', () => {
  it('60-2, a wide tooth over 3 of 60, one tooth more: counts and spans written out by hand', () => {
    expect(toothRow({ teeth: 4, missing: 0 })).toEqual([0, 1, 2, 3].map((at) => ({ from: at, to: at })));
    expect(toothRow({ teeth: 5, missing: 0, wide: 2 })).toEqual([
      { from: 0, to: 0 },
      { from: 1, to: 1 },
      { from: 2, to: 4 },
    ]);
    expect(toothRow({ teeth: 3, missing: 0, extra: 1 }).at(-1)).toEqual({ from: 2.5, to: 2.5 });
    expect(valleySpans({ teeth: 5, missing: 2 })).toEqual([1, 1, 3]);
    expect(valleySpans({ teeth: 5, missing: 0, wide: 2 })).toEqual([1, 1, 1]);
    expect(valleySpans({ teeth: 3, missing: 0, extra: 1 })).toEqual([1, 1, 0.5, 0.5]);
    expect(
      [
        { teeth: 60, missing: 2 },
        { teeth: 60, missing: 0, wide: 2 },
        { teeth: 60, missing: 0, extra: 1 },
      ].map(pulseCount),
    ).toEqual([58, 58, 61]);
    // Middles, in places before tooth 1: of the gap 3 wide, of the tooth from the third last to the last, of the valley.
    expect(markOf({ missing: 2 })?.before).toBe(1.5);
    expect(markOf({ missing: 0, wide: 2 })?.before).toBe(2);
    expect(markOf({ missing: 0, extra: 1 })?.before).toBe(0.5);
    expect(markOf({ missing: 0 })).toBeNull();
  });
});

describe('a wide tooth', () => {
  it.each([1, 2, 3])('%d valleys filled: area of the plain wheel and as many valleys between root and tip', (wide) => {
    const spec = { ...wheelSpec({ ...plainRadial, teeth: 36, ratio: 0.4, root: 108, rootRadius: 0.6 }) };
    const [R, q] = [60, 54];
    const valley = 0.6 * 5 * degrees * (R * R - q * q) - 2 * rootRound(q, 0.6);
    const area = (more: Partial<ToneWheelSpec>) => areaOutside({ ...spec, ...more });
    expect(area({ wide }) - area({})).toBeCloseTo(wide * valley, 6);
    // Closed form of the whole: root disc, teeth, rounds, filled valleys.
    const whole = Math.PI * q * q + 36 * (0.4 * 5 * degrees * (R * R - q * q) + 2 * rootRound(q, 0.6)) + wide * valley;
    expect(area({ wide })).toBeCloseTo(whole, 6);
  });

  it('straight flanks: a valley is its sector less a strip either side', () => {
    const spec = wheelSpec({ teeth: 30, ratio: 0.5, root: 110, rootRadius: 0, tipBreak: 0, screwHoles: null });
    const h = 60 * Math.sin(3 * degrees);
    const valley = 6 * degrees * (60 ** 2 - 55 ** 2) - (strip(60, h) - strip(55, h));
    expect(areaOutside({ ...spec, wide: 2 }) - areaOutside(spec)).toBeCloseTo(2 * valley, 6);
  });

  it('pulls by the moment of the ring sectors it fills, towards its middle', () => {
    const spec = wheelSpec({
      ...plainRadial,
      teeth: 36,
      ratio: 0.4,
      root: 108,
      rootRadius: 0,
      wide: 2,
      toothAngle: 20,
    });
    const { mass, centre } = sheetMass(buildToneWheel(spec));
    // A piece of ring 6 degrees wide, about its middle: the integral of r^2 cos; two of them 5 degrees either side of the tooth's middle.
    const one = (0.00785 * 5 * (60 ** 3 - 54 ** 3) * 2 * Math.sin(3 * degrees)) / 3;
    const pull = 2 * one * Math.cos(5 * degrees);
    expect(mass * Math.hypot(centre[0], centre[1])).toBeCloseTo(pull, 6);
    // Its middle is place 34 of 36: 20 degrees before tooth 1, which stands at 20.
    expect(centre[0]).toBeGreaterThan(0);
    expect(centre[1]).toBeCloseTo(0, 9);
  });

  it('is one pulse of n + 1 places: rises n + 1 pitches apart, all others one, at mid height and near the tips', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const points = outsideOf(wheelSpec({ teeth: 36, flanks, screwHoles: null, wide: 3, toothAngle: 7 }));
      for (const r of [58.25, 59.5]) {
        expect(outwards(points, r)).toBe(33);
        for (const way of [1, -1] as const) {
          const at = crossings(points, r, way);
          const apart = at.map((a, i) => ((at[(i + 1) % at.length] as number) - a + 360) % 360).sort((a, b) => a - b);
          expect(apart.at(-1)).toBeCloseTo(40, 2);
          for (const one of apart.slice(0, -1)) expect(one).toBeCloseTo(10, 2);
        }
      }
    }
  });

  it('stands before tooth 1: the long tip ends one valley before it', () => {
    const at = crossings(
      outsideOf(wheelSpec({ ...plainRadial, teeth: 36, ratio: 0.4, wide: 2, toothAngle: 50 })),
      59,
      1,
    );
    // Tooth 1 begins at 48; the one before it, places 33 to 35, begins at 50 + 330 - 2 and ends at 50 - 10 + 2.
    expect(at.map((a) => Number(a.toFixed(3)))).toContain(48);
    expect(at.map((a) => Number(a.toFixed(3)))).toContain(18);
    const back = crossings(
      outsideOf(wheelSpec({ ...plainRadial, teeth: 36, ratio: 0.4, wide: 2, toothAngle: 50 })),
      59,
      -1,
    );
    expect(back.map((a) => Number(a.toFixed(3)))).toContain(42);
  });
});

describe('an extra tooth', () => {
  const narrow = { teeth: 36, ratio: 0.3, root: 110, rootRadius: 0.3, tipBreak: 0.1 } as const;

  it('adds one tooth to the plain wheel, and makes two pulses half a pitch apart', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const spec = wheelSpec({ ...narrow, flanks, screwHoles: null });
      const plain = areaOutside(spec);
      // Teeth are alike, so one of them is a 36th of all above the root circle.
      const tooth = (plain - Math.PI * 55 ** 2) / 36;
      const points = outsideOf({ ...spec, extra: 1 });
      expect(areaOutside({ ...spec, extra: 1 }) - plain).toBeCloseTo(tooth, 6);
      expect(outwards(points, 57.5)).toBe(37);
      const at = crossings(points, 57.5, 1);
      const apart = at.map((a, i) => ((at[(i + 1) % at.length] as number) - a + 360) % 360).sort((a, b) => a - b);
      for (const one of apart.slice(0, 2)) expect(one).toBeCloseTo(5, 2);
      for (const one of apart.slice(2)) expect(one).toBeCloseTo(10, 2);
    }
  });

  it('its valleys are half of pitch less tooth each, and that is what is told as the least', () => {
    const m = toothMeasures(wheelSpec({ ...narrow, flanks: 'radial', extra: 1 }));
    expect(m.leastPitch).toBeCloseTo((Math.PI * 120) / 72, 9);
    expect(m.leastValleyChord).toBeCloseTo(120 * Math.sin(((5 - 3) / 2) * degrees), 9);
    expect(m.leastValleyRootArc).toBeCloseTo(55 * 2 * degrees, 9);
    expect(m.present).toBe(37);
    const part = outsideOf(wheelSpec({ ...narrow, flanks: 'radial', extra: 1, screwHoles: null }));
    const [rise = 0] = crossings(part, 57.5, 1).filter((a) => a > 353 && a < 354);
    const [fall = 0] = crossings(part, 57.5, -1).filter((a) => a > 350 && a < 353);
    expect(rise - fall).toBeCloseTo(2, 2);
  });

  it('a round that just fits the narrow valley is the largest; half as much again is refused with its limit', () => {
    const spec = wheelSpec({ ...narrow, flanks: 'radial', tipBreak: 0, screwHoles: null, extra: 1 });
    // Tangent circles: (q + f) sin g = f, g a quarter of pitch less tooth.
    const sin = Math.sin(1 * degrees);
    const largest = (55 * sin) / (1 - sin);
    expect(toothMeasures(spec).largestRootRadius).toBeCloseTo(largest, 9);
    const full = buildToneWheel({ ...spec, rootRadius: largest });
    expect(contourFaults(full.outside)).toEqual([]);
    expect(toneWheelFaults({ ...spec, rootRadius: 1.5 * largest })[0]).toMatch(
      /^rootRadius: .* does not fit the valley beside the extra tooth\. Allowed: up to 0\.97/,
    );
  });
});

describe('what cannot be drawn, in words', () => {
  it.each([
    [{ missing: 1, wide: 1 }, /^missing, wide, extra: 1, 1 and 0 are given.*Give one of them/],
    [{ wide: 1, extra: 1 }, /one mark is all that a turn takes/],
    [{ wide: 59 }, /^wide: 59 is not a whole number from 0 to 58/],
    [{ wide: 1.5 }, /^wide: 1\.5 is not a whole number/],
    [{ extra: 2 }, /^extra: 2 is neither 0 nor 1/],
    [{ extra: 1, ratio: 0.5, rootRadius: 0.1, flanks: 'radial' as const }, /^extra: one more tooth of .* has no room/],
    // Straight flanks: open at the tips, met at the roots. 0.48 of a pitch of 30 places at 60, at 40 the valley is gone.
    [
      { extra: 1, teeth: 30, ratio: 0.42, root: 80, rootRadius: 0 },
      /^extra: .* all the way down, so a ratio below 0\.5/,
    ],
    [{ extra: 1, teeth: 36, rim: 4, root: 100, tipBreak: 0, ratio: 0.5 }, /^extra: one more bar of .* window/],
  ])('%o', (change, sentence) => {
    expect(toneWheelFaults(wheelSpec({ screwHoles: null, ...change }))[0]).toMatch(sentence);
  });
});

describe('windows', () => {
  const radial = windowSpec({ flanks: 'radial', rootRadius: 0, ratio: 0.4, screwHoles: null, toothAngle: 15 });
  const area = (part: SheetPart) => windowsOf(part).map((one) => Math.abs(areaOf(one)));
  const one = 0.6 * 5 * degrees * (56 ** 2 - 50 ** 2);

  it('wide: as many windows left out, the others alike', () => {
    const found = area(buildToneWheel({ ...radial, wide: 3 }));
    expect(found).toHaveLength(33);
    for (const each of found) expect(each).toBeCloseTo(one, 6);
  });

  it('extra: a bar in the middle of the last window, two of half of what is left', () => {
    const found = area(buildToneWheel({ ...radial, extra: 1 }));
    expect(found).toHaveLength(37);
    for (const each of found.slice(0, 35)) expect(each).toBeCloseTo(one, 6);
    // Half a pitch of 5 degrees, less a bar of 4: 1 degree each.
    for (const each of found.slice(35)) expect(each).toBeCloseTo((1 * degrees * (56 ** 2 - 50 ** 2)) / 2, 6);
  });

  it.each([{ wide: 3 }, { extra: 1 }])('%o: the windows nearest to a place are those that are looked at', (mark) => {
    const spec = windowSpec({ ratio: 0.3, rootRadius: 0.3, screwHoles: null, toothAngle: 15, ...mark });
    const part = buildToneWheel(spec);
    for (let at = 0; at < 360; at += 3.7) {
      const [x, y] = [40 * Math.cos(at * degrees), 40 * Math.sin(at * degrees)];
      const hole: Contour = { kind: 'circle', feature: 'probe', x, y, r: 2 };
      const gap = (windows: readonly Contour[]) => Math.min(...windows.map((window) => leastGap(hole, window).gap));
      expect(gap(windowsBeside(spec, part.holes, x, y))).toBeCloseTo(gap(windowsOf(part)), 9);
    }
  });
});

describe('any wheel with a mark', () => {
  const marked = fc
    .record({
      teeth: fc.integer({ min: 3, max: 40 }),
      mark: fc.oneof(
        fc.integer({ min: 1, max: 5 }).map((wide) => ({ wide })),
        fc.constant({ extra: 1 }),
      ),
      isOpen: fc.boolean(),
      ratio: fc.double({ min: 0.15, max: 0.6, noNaN: true }),
      flanks: fc.constantFrom('straight' as const, 'radial' as const),
      rootRadius: fc.constantFrom(0, 0.2, 0.6),
      kerf: fc.constantFrom(0, 0.1),
      toothAngle: fc.double({ min: -360, max: 360, noNaN: true }),
    })
    .map(({ mark, isOpen, ...rest }) =>
      (isOpen ? wheelSpec : windowSpec)({ ...rest, ...mark, tipBreak: 0, screwHoles: null, outside: 140, root: 128 }),
    )
    .filter((spec) => toneWheelFaults(spec).length === 0);

  it('closes, and counts its pulses', () => {
    fc.assert(
      fc.property(marked, (spec) => {
        const part = buildToneWheel(spec);
        expect([part.outside, ...part.holes].flatMap((contour) => contourFaults(contour))).toEqual([]);
        const pulses = spec.teeth - (spec.wide ?? 0) + (spec.extra ?? 0);
        if (spec.rim === undefined) expect(outwards(polygonOf(part.outside), (140 + 128) / 4)).toBe(pulses);
        else expect(windowsOf(part)).toHaveLength(pulses);
      }),
      { numRuns: 150 },
    );
  });

  it.each([
    ['wide tooth', wheelSpec({ wide: 3 }), 5],
    ['extra tooth', wheelSpec({ teeth: 36, ratio: 0.3, rootRadius: 0.3, extra: 1 }), 5],
    ['wide bar', windowSpec({ wide: 2 }), 5 + 34],
    ['extra bar', windowSpec({ ratio: 0.3, rootRadius: 0.3, extra: 1 }), 5 + 37],
  ] as const)(
    '%s: one watertight body with a hole for every hole, of the mass of the contour',
    async (_, spec, genus) => {
      const part = buildToneWheel(spec);
      const mesh = meshSheet(part, { chordError: 0.002 });
      expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, flatTriangles: 0, bodies: 1, voids: 0, genus });
      expect(await judge(mesh)).toMatchObject({ status: 'NoError', bodies: 1, genus });
      expect(meshMass(mesh, STEEL.density).mass / sheetMass(part).mass).toBeCloseTo(1, 3);
    },
  );
});
