import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  contourArea,
  contourFaults,
  contourLength,
  leastGap,
  polygonise,
  sheetMass,
  stretchesOf,
} from '../../src/geometry/contour.ts';
import type { Contour, SheetPart } from '../../src/model/sheet.ts';
import { buildToneWheel, toneWheelFaults, toothMeasures, windowsBeside } from '../../src/parts/tone-wheel.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshMass } from '../../src/solids/mesh-mass.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { polygonArea } from './contour-shapes.ts';
import { anyWindowWheel, STEEL, windowSpec } from './specs.ts';

const degrees = Math.PI / 180;
const windowsOf = (part: SheetPart): Contour[] => part.holes.filter(({ feature }) => feature === 'wheel-outline');
const areaOf = (contour: Contour): number => Math.abs(contourArea(contour));

/**
 * Metal that a round of radius f leaves in a corner between a radial flank and a circle about the axis: what the corner's two sides
 * take from the axis, less the triangle from the axis to the flank and the round's centre, less the round's own sector. Plane geometry.
 */
function cornerOutside(R: number, f: number): number {
  const x = Math.sqrt((R - f) ** 2 - f ** 2);
  const turn = Math.atan2(f, x);
  return (turn * R * R) / 2 - (x * f) / 2 - (f * f * (Math.PI / 2 + turn)) / 2;
}
function cornerInside(q: number, f: number): number {
  const x = Math.sqrt((q + f) ** 2 - f ** 2);
  const turn = Math.atan2(f, x);
  return (x * f) / 2 - (turn * q * q) / 2 - (f * f * (Math.PI / 2 - turn)) / 2;
}
/** Area between two parallel lines h either side of the axis, within a circle, on one side: the integral of sqrt(a^2 - y^2). */
const strip = (a: number, h: number): number => h * Math.sqrt(a * a - h * h) + a * a * Math.asin(h / a);

describe('measures of windows: a tooth is the bar, told at the middle of the windows', () => {
  it('36 windows between 100 and 112: pitch pi 106 / 36; half of it is bar; chords 2 R sin(a / 2)', () => {
    const m = toothMeasures(windowSpec());
    expect(m.pitch).toBeCloseTo((Math.PI * 106) / 36, 10);
    expect(m.toothArc).toBeCloseTo((Math.PI * 106) / 72, 10);
    expect(m.toothChord).toBeCloseTo(106 * Math.sin(2.5 * degrees), 10);
    expect(m.valleyChord).toBeCloseTo(106 * Math.sin(2.5 * degrees), 10);
    expect(m.height).toBeCloseTo(6, 12);
    expect(m.present).toBe(36);
    // Straight flanks: the bar is as wide inside; radial ones: it tapers with the radius.
    expect(m.toothRootChord).toBeCloseTo(m.toothChord, 10);
    const radial = toothMeasures(windowSpec({ flanks: 'radial' }));
    expect(radial.toothRootChord).toBeCloseTo((m.toothChord * 100) / 106, 10);
    expect(radial.valleyRootArc).toBeCloseTo((Math.PI * 100) / 72, 10);
  });

  it('a bar that is missing opens one window over two pitches less a bar: 20 - 5 degrees', () => {
    expect(toothMeasures(windowSpec({ missing: 1 })).missingDegrees).toBeCloseTo(15, 10);
  });

  it('a bar lies where tooth 1 is asked for, as wide as the measures say', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const spec = windowSpec({ flanks, toothAngle: 33, rootRadius: 0 });
      const windows = windowsOf(buildToneWheel(spec));
      // The nearest places of the first and of the last window lie on both sides of bar 1.
      const { gap, at } = leastGap(windows[0] as Contour, windows[35] as Contour);
      expect(gap).toBeCloseTo(toothMeasures(spec).toothRootChord, 9);
      expect(Math.atan2(at[1], at[0]) / degrees).toBeCloseTo(33, 6);
    }
  });
});

describe('contours', () => {
  it('one circle outside, and one clean clockwise window a bar; the rim is as wide as asked all round', () => {
    for (const missing of [0, 1, 3]) {
      const part = buildToneWheel(windowSpec({ missing, toothAngle: 12 }));
      expect(part.outside).toMatchObject({ kind: 'circle', r: 60 });
      const windows = windowsOf(part);
      expect(windows).toHaveLength(36 - missing);
      expect(part.holes).toHaveLength(36 - missing + 5);
      for (const window of windows) {
        expect(contourFaults(window)).toEqual([]);
        expect(contourArea(window)).toBeLessThan(0);
        expect(leastGap(window, part.outside).gap).toBeCloseTo(4, 9);
      }
    }
  });

  it('has a round of the radius asked for in all four corners, touching flank and circle', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      for (const window of windowsOf(buildToneWheel(windowSpec({ flanks, missing: 2 })))) {
        const stretches = stretchesOf(window);
        expect(stretches).toHaveLength(8);
        const radii = stretches.flatMap((s) => (s.kind === 'arc' ? [Number(s.r.toFixed(7))] : []));
        expect(radii.sort((a, b) => a - b)).toEqual([0.8, 0.8, 0.8, 0.8, 50, 56]);
        stretches.forEach((stretch, i) => {
          const next = stretches[(i + 1) % 8] as typeof stretch;
          const heading = (s: typeof stretch, end: boolean): number =>
            s.kind === 'line'
              ? Math.atan2(s.y2 - s.y1, s.x2 - s.x1)
              : (end ? s.start + s.sweep : s.start) + (Math.sign(s.sweep) * Math.PI) / 2;
          const bend = heading(next, false) - heading(stretch, true);
          expect(Math.abs(Math.atan2(Math.sin(bend), Math.cos(bend)))).toBeLessThan(1e-8);
        });
      }
    }
  });

  it('straight flanks of a bar are parallel, radial ones point at the axis', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const [window] = windowsOf(buildToneWheel(windowSpec({ flanks })));
      const lines = stretchesOf(window as Contour).flatMap((s) => (s.kind === 'line' ? [s] : []));
      expect(lines).toHaveLength(2);
      for (const { x1, y1, x2, y2 } of lines) {
        const cross = x1 * y2 - x2 * y1;
        const length = Math.hypot(x2 - x1, y2 - y1);
        // Distance of the flank's line from the axis: half the bar, or nothing.
        const far = flanks === 'straight' ? 53 * Math.sin(2.5 * degrees) : 0;
        expect(Math.abs(cross) / length).toBeCloseTo(far, 9);
      }
    }
  });

  it('a brute count along the middle circle, polygon by polygon, finds every bar once', () => {
    for (const missing of [0, 2]) {
      const part = buildToneWheel(windowSpec({ missing, toothAngle: 7.7 }));
      const polygons = windowsOf(part).map((w) => polygonise(w, 1e-3, 'inside'));
      const isOpen = (x: number, y: number) =>
        polygons.some((points) => {
          let inside = false;
          points.forEach(([ax, ay], i) => {
            const [bx, by] = points[(i + 1) % points.length] as [number, number];
            if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
          });
          return inside;
        });
      const steps = 7200;
      const open = Array.from({ length: steps }, (_, k) => {
        const a = (2 * Math.PI * (k + 0.5)) / steps;
        return isOpen(53 * Math.cos(a), 53 * Math.sin(a));
      });
      const rises = open.filter((now, k) => !now && open[(k + steps - 1) % steps]).length;
      expect(rises).toBe(36 - missing);
      // Half of every pitch is bar, and the bars left out are window.
      const share = open.filter((now) => !now).length / steps;
      expect(share).toBeCloseTo((0.5 * (36 - missing)) / 36, 2);
    }
  });
});

describe('area, mass and balance in closed form', () => {
  const plain = { screwHoles: null, rootRadius: 0 } as const;
  const ring = (56 ** 2 - 50 ** 2) / 2;

  it('a sharp radial window is a sector of a ring; one joined by two missing bars spans two pitches more', () => {
    const [one] = windowsOf(buildToneWheel(windowSpec({ ...plain, flanks: 'radial' })));
    expect(areaOf(one as Contour)).toBeCloseTo(5 * degrees * ring, 9);
    const joined = windowsOf(buildToneWheel(windowSpec({ ...plain, flanks: 'radial', missing: 2 }))).at(-1);
    expect(areaOf(joined as Contour)).toBeCloseTo(25 * degrees * ring, 9);
  });

  it('rounded corners take their four pieces off it', () => {
    for (const f of [0.3, 0.8, 1.5]) {
      const [one] = windowsOf(buildToneWheel(windowSpec({ ...plain, flanks: 'radial', rootRadius: f })));
      const left = 2 * cornerOutside(56, f) + 2 * cornerInside(50, f);
      // Each is nearly the (1 - pi / 4) f^2 of a square corner.
      expect(left / (4 * (1 - Math.PI / 4) * f * f)).toBeCloseTo(1, 1);
      expect(areaOf(one as Contour)).toBeCloseTo(5 * degrees * ring - left, 9);
    }
  });

  it('a sharp straight window is a pitch of the ring less the strip of its bar', () => {
    const [one] = windowsOf(buildToneWheel(windowSpec(plain)));
    const h = 53 * Math.sin(2.5 * degrees);
    expect(areaOf(one as Contour)).toBeCloseTo(10 * degrees * ring - (strip(56, h) - strip(50, h)), 9);
  });

  it('mass of the whole wheel: disc less bore less windows', () => {
    const part = buildToneWheel(windowSpec({ ...plain, flanks: 'radial', rootRadius: 0.8 }));
    const window = 5 * degrees * ring - 2 * cornerOutside(56, 0.8) - 2 * cornerInside(50, 0.8);
    const face = Math.PI * (60 ** 2 - 25 ** 2) - 36 * window;
    const { mass, centre } = sheetMass(part);
    expect(mass).toBeCloseTo(face * 5 * STEEL.density, 8);
    expect(Math.hypot(centre[0], centre[1])).toBeLessThan(1e-9);
  });

  it('a bar left out unbalances by its own moment, rho t (R^3 - q^3) / 3 times 2 sin(half), away from the gap', () => {
    const one = (STEEL.density * 5 * (56 ** 3 - 50 ** 3) * 2 * Math.sin(2.5 * degrees)) / 3;
    for (const missing of [1, 2, 3]) {
      const { mass, centre } = sheetMass(buildToneWheel(windowSpec({ ...plain, flanks: 'radial', missing })));
      // Neighbours add as arrows a pitch of 10 degrees apart.
      const several = one * (Math.sin(5 * degrees * missing) / Math.sin(5 * degrees));
      expect(mass * Math.hypot(centre[0], centre[1])).toBeCloseTo(several, 8);
      const heavy = (Math.atan2(centre[1], centre[0]) / degrees + 360) % 360;
      expect(heavy).toBeCloseTo(180 - 5 * (missing + 1), 6);
    }
  });

  it('kerf: each window shrinks by L k less (4 - pi) k^2 and more where sharp, the rim grows by k outside', () => {
    for (const flanks of ['straight', 'radial'] as const) {
      const spec = windowSpec({ flanks, missing: 1 });
      const [nominal, cut] = [buildToneWheel(spec), buildToneWheel({ ...spec, kerf: 0.2 })];
      expect(cut.outside).toMatchObject({ kind: 'circle', r: 60.1 });
      windowsOf(nominal).forEach((window, i) => {
        const inner = windowsOf(cut)[i] as Contour;
        // Smooth contours: Steiner's formula inwards, A - L k + pi k^2.
        const shrunk = areaOf(window) - contourLength(window) * 0.1 + Math.PI * 0.01;
        expect(areaOf(inner)).toBeCloseTo(shrunk, 8);
        expect(leastGap(window, inner).gap).toBeCloseTo(0.1, 9);
      });
    }
  });
});

describe('mesh', () => {
  it('is one closed body with an opening for each window, bore and screw; its volume is the closed form less the chords', async () => {
    const spec = windowSpec({ flanks: 'radial', missing: 1, screwHoles: null });
    const part = buildToneWheel(spec);
    const corners = 2 * cornerOutside(56, 0.8) + 2 * cornerInside(50, 0.8);
    const ring = (56 ** 2 - 50 ** 2) / 2;
    const face = Math.PI * (60 ** 2 - 25 ** 2) - (34 * 5 + 15) * degrees * ring + 35 * corners;
    const edges = [part.outside, ...part.holes].reduce((sum, contour) => sum + contourLength(contour), 0);
    const mesh = meshSheet(part);
    expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, flatTriangles: 0, bodies: 1, voids: 0, genus: 36 });
    expect(await judge(mesh)).toMatchObject({ status: 'NoError', bodies: 1, genus: 36 });
    for (const chordError of [0.05, 0.01, 0.001]) {
      const { volume } = meshMass(meshSheet(part, { chordError }), STEEL.density);
      expect(volume).toBeLessThan(face * 5);
      expect(face * 5 - volume).toBeLessThan(edges * 5 * chordError);
    }
  });
});

describe('any window wheel without a fault', () => {
  it('builds clean windows that keep off each other and the rim, and a fine polygon has their area', () => {
    fc.assert(
      fc.property(anyWindowWheel, (spec) => {
        const part = buildToneWheel(spec);
        const windows = windowsOf(part);
        const k = spec.kerf / 2;
        expect(windows).toHaveLength(spec.teeth - spec.missing);
        windows.forEach((window, i) => {
          expect(contourFaults(window)).toEqual([]);
          expect(leastGap(window, part.outside).gap).toBeCloseTo((spec.rim ?? 0) + 2 * k, 7);
          const next = windows[(i + 1) % windows.length] as Contour;
          if (windows.length > 2) expect(leastGap(window, next).gap).toBeGreaterThan(0);
          for (const { x1, y1 } of stretchesOf(window)) {
            const r = Math.hypot(x1, y1);
            expect(r).toBeGreaterThan(spec.root / 2 + k - 1e-6);
            expect(r).toBeLessThan(spec.outside / 2 - (spec.rim ?? 0) - k + 1e-6);
          }
          const inner = polygonArea(polygonise(window, 1e-4, 'inside'));
          expect(Math.abs(Math.abs(inner) - areaOf(window))).toBeLessThanOrEqual(1.1e-4 * contourLength(window));
        });
      }),
      { numRuns: 100 },
    );
  });

  it('the windows named as nearest to a hole hold the nearest of all', () => {
    fc.assert(
      fc.property(
        anyWindowWheel,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: -400, max: 400 }),
        (spec, share, at) => {
          const part = buildToneWheel(spec);
          const r = (0.3 + 0.5 * share) * (spec.root / 2);
          const hole: Contour = {
            kind: 'circle',
            feature: 'h',
            x: r * Math.cos(at * degrees),
            y: r * Math.sin(at * degrees),
            r: 0.05 * spec.root,
          };
          const least = (windows: readonly Contour[]) =>
            Math.min(...windows.map((window) => leastGap(hole, window).gap));
          expect(least(windowsBeside(spec, part.holes, hole.x, hole.y))).toBeCloseTo(least(windowsOf(part)), 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('the corner that a fault allows does build, and a little more does not', () => {
    fc.assert(
      fc.property(anyWindowWheel, (any) => {
        const spec = { ...any, kerf: 0 };
        const largest = toothMeasures(spec).largestRootRadius;
        expect(toneWheelFaults({ ...spec, rootRadius: largest })).toEqual([]);
        for (const window of windowsOf(buildToneWheel({ ...spec, rootRadius: largest })))
          expect(contourFaults(window)).toEqual([]);
        expect(toneWheelFaults({ ...spec, rootRadius: largest + 1e-3 })[0]).toMatch(/^rootRadius: .*Allowed/);
      }),
      { numRuns: 100 },
    );
  });
});

describe('faults: each names the field, the value, what is allowed and the likely slip', () => {
  const cases: readonly (readonly [name: string, change: Parameters<typeof windowSpec>[0], says: RegExp])[] = [
    ['no rim', { rim: 0 }, /^rim: 0 mm must be more than 0 mm/],
    ['rim that is no number', { rim: Number.NaN }, /^rim: NaN/],
    [
      'rim over the windows',
      { rim: 10 },
      /^rim: 10 mm leaves no window between its inside of 100 mm .*less than 10 mm.*diameter/,
    ],
    ['a tip break', { tipBreak: 0.3 }, /^tipBreak: 0\.3 mm is for open teeth/],
    // Half the height.
    ['corner over the height', { ratio: 0.2, teeth: 12, rootRadius: 4 }, /^rootRadius: 4 mm .*6 mm high.*up to 3 mm/],
    // Radial, at the inner circle: q s / (1 - s), s = sin(2.5 degrees) on q = 50.
    ['corner over the width', { flanks: 'radial', rootRadius: 2.5 }, /^rootRadius: 2\.5 mm .*up to 2\.2804 mm/],
    // Straight flanks 2 h apart meet at h / sin(pi / N): 6 bars at 0.8, h = 32.5 sin(24 deg) on windows from 80 to 50.
    [
      'bars meet',
      { teeth: 6, ratio: 0.8, outside: 88, root: 50, bore: 20 },
      /^root: 50 mm is too deep.*bars meet at 52\.8758/,
    ],
    ['kerf over the window', { kerf: 6 }, /^kerf: 6 mm does not reach the ends of the windows/],
    ['screws in the windows', { screwHoles: { diameter: 6, positions: [{ x: 48, y: 0 }] } }, /breaks into the windows/],
    ['one place only', { teeth: 1 }, /^teeth: 1 .*3 or more/],
    ['none left', { missing: 36 }, /^missing: 36 .*0 to 35/],
    [
      'windows that overlap',
      { flanks: 'radial', ratio: 0.9999, rootRadius: 0 },
      /^ratio: 0\.9999 with 36 windows leaves .*overlap/,
    ],
  ];
  it.each(cases)('%s', (_, change, says) => {
    const spec = windowSpec(change);
    expect(toneWheelFaults(spec).join('\n')).toMatch(says);
    expect(() => buildToneWheel(spec)).toThrow(/Tone wheel/);
  });
});
