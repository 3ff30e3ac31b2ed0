import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  areaMoments,
  contourArea,
  contourBox,
  contourCentroid,
  contourFaults,
  contourLength,
  pointInContour,
  polygonise,
  sheetMass,
} from '../../src/geometry/contour.ts';
import type { SheetPart } from '../../src/model/sheet.ts';
import {
  anyStar,
  type Corner,
  circle,
  path,
  polygonArea,
  QUARTER,
  reversed,
  roundedRectangle,
  slot,
} from './contour-shapes.ts';
import { STEEL } from './specs.ts';

function sheet(outside: SheetPart['outside'], holes: SheetPart['holes'], thickness: number): SheetPart {
  return {
    kind: 'sheet',
    id: 'plate',
    name: 'Plate',
    material: STEEL,
    thickness,
    outside,
    holes,
    features: [],
    engravings: [],
  };
}

describe('area, length and moments of contours, against closed forms of plane geometry', () => {
  it('circle: pi r^2, 2 pi r, pi r^4 / 4 and the parallel-axis rule', () => {
    const m = areaMoments(circle(3, -4, 2));
    const area = Math.PI * 4;
    expect(m.area).toBeCloseTo(area, 10);
    expect(m.x / m.area).toBeCloseTo(3, 12);
    expect(m.y / m.area).toBeCloseTo(-4, 12);
    expect(m.xx).toBeCloseTo((Math.PI * 16) / 4 + area * 9, 9);
    expect(m.yy).toBeCloseTo((Math.PI * 16) / 4 + area * 16, 9);
    expect(m.xy).toBeCloseTo(area * -12, 9);
    expect(contourLength(circle(3, -4, 2))).toBeCloseTo(4 * Math.PI, 12);
  });

  it('a circle drawn as two arcs, as three quarters and one, is the same circle', () => {
    const halves = path([5, -4, 1], [1, -4, 1]);
    const uneven = path([5, -4, Math.tan((3 * Math.PI) / 8)], [3, -6, QUARTER]);
    for (const shape of [halves, uneven]) {
      const [a, b] = [areaMoments(shape), areaMoments(circle(3, -4, 2))];
      for (const key of ['area', 'x', 'y', 'xx', 'yy', 'xy'] as const) expect(a[key]).toBeCloseTo(b[key], 9);
    }
  });

  it('rounded rectangle: w h - (4 - pi) r^2, and second moments by composition', () => {
    const [w, h, r] = [30, 20, 4];
    const m = areaMoments(roundedRectangle(w, h, r));
    expect(m.area).toBeCloseTo(w * h - (4 - Math.PI) * r * r, 9);
    // Rectangle, less four corner squares, plus four quarter discs: pi r^4 / 16 each about the disc's centre
    // lines, centroid 4 r / (3 pi) from them.
    const about = (span: number, other: number): number => {
      const c = span / 2 - r;
      const square = r ** 4 / 12 + r * r * (span / 2 - r / 2) ** 2;
      const quarter = (Math.PI * r ** 4) / 16 + 2 * c * (r ** 3 / 3) + (Math.PI / 4) * r * r * c * c;
      return (other * span ** 3) / 12 - 4 * square + 4 * quarter;
    };
    expect(m.xx).toBeCloseTo(about(w, h), 7);
    expect(m.yy).toBeCloseTo(about(h, w), 7);
    expect(m.xy).toBeCloseTo(0, 9);
    expect(contourLength(roundedRectangle(w, h, r))).toBeCloseTo(2 * (w + h) - (8 - 2 * Math.PI) * r, 10);
  });

  it('circular segment: r^2 (a - sin a) / 2, centroid 4 r sin^3(a/2) / (3 (a - sin a)) (handbook formula)', () => {
    for (const a of [0.4, 1.7, Math.PI, 4.5, 6]) {
      const r = 7;
      const half = a / 2;
      const at = (angle: number, bulge: number): [number, number, number] => {
        return [r * Math.cos(angle), r * Math.sin(angle), bulge];
      };
      const segment = path(at(-half, Math.tan(a / 4)), at(half, 0));
      expect(contourArea(segment)).toBeCloseTo((r * r * (a - Math.sin(a))) / 2, 9);
      const centroid = contourCentroid(segment);
      expect(centroid.x).toBeCloseTo((4 * r * Math.sin(half) ** 3) / (3 * (a - Math.sin(a))), 9);
      expect(centroid.y).toBeCloseTo(0, 10);
    }
  });

  it('running the other way changes every sign', () => {
    fc.assert(
      fc.property(anyStar, (star) => {
        const [a, b] = [areaMoments(star), areaMoments(reversed(star))];
        for (const key of ['area', 'x', 'y', 'xx', 'yy', 'xy'] as const) {
          expect(a[key] + b[key]).toBeCloseTo(0, 6);
        }
      }),
    );
  });

  it('moments of any star agree with the triangles of a fine polygon', () => {
    fc.assert(
      fc.property(anyStar, (star) => {
        const exact = areaMoments(star);
        const points = polygonise(star, 1e-4, 'inside');
        const fine = areaMoments(path(...points));
        // A strip of at most 1e-4 mm along the whole length may be missing, at most 40 mm from the origin.
        const strip = 1e-4 * contourLength(star);
        expect(fine.area).toBeLessThanOrEqual(exact.area + 1e-9);
        expect(exact.area - fine.area).toBeLessThanOrEqual(strip);
        expect(Math.abs(exact.x - fine.x)).toBeLessThanOrEqual(strip * 40);
        expect(Math.abs(exact.xx - fine.xx)).toBeLessThanOrEqual(strip * 1600);
        expect(Math.abs(exact.xy - fine.xy)).toBeLessThanOrEqual(strip * 1600);
      }),
      { numRuns: 50 },
    );
  });
});

describe('box, inside and faults', () => {
  it('counts the outermost points of arcs', () => {
    expect(contourBox(slot(10, 3))).toEqual({ xMin: -8, yMin: -3, xMax: 8, yMax: 3 });
    expect(contourBox(circle(1, 2, 3))).toEqual({ xMin: -2, yMin: -1, xMax: 4, yMax: 5 });
    // A quarter of a disc of radius 2 reaches neither -2 in x nor -2 in y.
    const quarter = contourBox(path([0, 0], [2, 0, QUARTER], [0, 2]));
    expect(quarter.xMin).toBeCloseTo(0, 12);
    expect(quarter.xMax).toBeCloseTo(2, 12);
    expect(quarter.yMin).toBeCloseTo(0, 12);
    expect(quarter.yMax).toBeCloseTo(2, 12);
  });

  it('tells inside from outside beside arcs: the slot by its definition', () => {
    const shape = slot(10, 3);
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -4, max: 4, noNaN: true }), (x, y) => {
        // A slot is every point nearer than its radius to the line between its centres.
        const away = Math.hypot(Math.max(0, Math.abs(x) - 5), y);
        fc.pre(Math.abs(away - 3) > 1e-9);
        expect(pointInContour(shape, x, y)).toBe(away < 3);
        expect(pointInContour(reversed(shape), x, y)).toBe(away < 3);
      }),
      { numRuns: 500 },
    );
    expect(pointInContour(shape, 0, 3 - 1e-9)).toBe(true);
    expect(pointInContour(shape, -7.9, 0)).toBe(true);
    expect(pointInContour(circle(0, 0, 2), 1.9, 0)).toBe(true);
  });

  it('finds nothing wrong with clean contours', () => {
    for (const shape of [circle(0, 0, 1), slot(10, 3), roundedRectangle(30, 20, 4), path([5, 0, 1], [1, 0, 1])]) {
      expect(contourFaults(shape)).toEqual([]);
    }
    fc.assert(
      fc.property(anyStar, (star) => {
        expect(contourFaults(star)).toEqual([]);
      }),
    );
  });

  it('names each kind of fault, and where', () => {
    const kinds = (...corners: Corner[]): string[] => contourFaults(path(...corners)).map((f) => f.kind);
    const bowTie = contourFaults(path([0, 0], [10, 10], [10, 0], [0, 10]));
    expect(bowTie).toEqual([{ kind: 'crosses itself', at: [5, 5] }]);
    expect(kinds([0, 0], [10, 0], [10, 0], [5, 5])).toEqual(['no length']);
    expect(kinds([0, 0], [10, 0], [4, 0], [4, 5])).toContain('doubles back');
    expect(kinds([0, 0], [Number.NaN, 0], [4, 5])).toEqual(['not a number']);
    expect(kinds([0, 0])).toEqual(['too few corners']);
    // A deep hollow arc on top of a low box breaks through its bottom.
    expect(kinds([0, 0], [10, 0], [10, 2], [0, 2, 1])).toEqual([]);
    expect(kinds([0, 0], [10, 0], [10, 2, -1], [0, 2])).toContain('crosses itself');
    // Two squares that touch along a run.
    expect(kinds([0, 0], [10, 0], [10, 5], [6, 5], [6, 0], [4, 0], [4, 5], [0, 5])).toContain('crosses itself');
    expect(contourFaults(circle(0, 0, 0)).map((f) => f.kind)).toEqual(['no area']);
  });
});

describe('mass of a sheet part', () => {
  it('ring: m (R^2 + r^2) / 2 about its axis, m (3 (R^2 + r^2) + t^2) / 12 across (handbook formula)', () => {
    const [R, r, t] = [60, 25, 5];
    const mass = sheetMass(sheet(circle(10, -20, R), [circle(10, -20, r)], t));
    const m = Math.PI * (R * R - r * r) * t * STEEL.density;
    expect(mass.volume).toBeCloseTo(Math.PI * (R * R - r * r) * t, 6);
    expect(mass.mass).toBeCloseTo(m, 9);
    expect(mass.centre[0]).toBeCloseTo(10, 10);
    expect(mass.centre[1]).toBeCloseTo(-20, 10);
    expect(mass.centre[2]).toBe(t / 2);
    expect(mass.inertia.zz / ((m * (R * R + r * r)) / 2)).toBeCloseTo(1, 12);
    const across = (m * (3 * (R * R + r * r) + t * t)) / 12;
    expect(mass.inertia.xx / across).toBeCloseTo(1, 12);
    expect(mass.inertia.yy / across).toBeCloseTo(1, 12);
    expect(mass.inertia.xy / across).toBeCloseTo(0, 12);
  });

  it('an off-centre hole moves the centre away from it: x = -A_h e / (A - A_h)', () => {
    const mass = sheetMass(sheet(circle(0, 0, 50), [circle(30, 0, 5)], 4));
    expect(mass.centre[0]).toBeCloseTo((-25 * 30) / (2500 - 25), 12);
  });

  it('does not care which way holes run', () => {
    const hole = slot(10, 3);
    const a = sheetMass(sheet(circle(0, 0, 50), [hole], 4));
    const b = sheetMass(sheet(circle(0, 0, 50), [reversed(hole)], 4));
    expect(a.mass).toBeCloseTo(b.mass, 12);
    expect(a.inertia.zz).toBeCloseTo(b.inertia.zz, 8);
  });

  it('refuses a part that its holes eat', () => {
    expect(() => sheetMass(sheet(circle(0, 0, 5), [circle(0, 0, 6)], 4))).toThrow(/no area/);
  });
});

describe('polygons of contours', () => {
  it('circle: a multiple of four vertices, on the axes, chords inside and tangents outside within the bound', () => {
    for (const [r, e] of [
      [60, 0.01],
      [3.3, 0.01],
      [60, 1e-4],
      [1, 5],
    ] as const) {
      const inside = polygonise(circle(7, 2, r), e, 'inside');
      const outside = polygonise(circle(7, 2, r), e, 'outside');
      for (const points of [inside, outside]) {
        expect(points.length % 4).toBe(0);
        const quarter = points.length / 4;
        expect(points[0]?.[1]).toBe(2);
        expect(points[quarter]?.[0]).toBeCloseTo(7, 12);
        expect(polygonArea(points)).toBeGreaterThan(0);
      }
      const middles = (points: [number, number][]): number[] => {
        return points.map(([x, y], i) => {
          const [nx, ny] = points[(i + 1) % points.length] as [number, number];
          return Math.hypot((x + nx) / 2 - 7, (y + ny) / 2 - 2);
        });
      };
      for (const [x, y] of inside) expect(Math.hypot(x - 7, y - 2)).toBeCloseTo(r, 10);
      for (const away of middles(inside)) expect(away).toBeGreaterThanOrEqual(r - e - 1e-12);
      for (const [x, y] of outside) expect(Math.hypot(x - 7, y - 2)).toBeLessThanOrEqual(r + e + 1e-12);
      for (const away of middles(outside)) expect(away).toBeGreaterThanOrEqual(r - 1e-12);
    }
  });

  it('any star: the inside polygon within it, the outside polygon round it, each within the strip', () => {
    fc.assert(
      fc.property(anyStar, fc.double({ min: 1e-3, max: 0.1, noNaN: true }), (star, e) => {
        const exact = contourArea(star);
        const strip = e * contourLength(star) + 1e-9;
        const inside = polygonise(star, e, 'inside');
        const outside = polygonise(star, e, 'outside');
        expect(exact - polygonArea(inside)).toBeGreaterThanOrEqual(-1e-9);
        expect(exact - polygonArea(inside)).toBeLessThanOrEqual(strip);
        expect(polygonArea(outside) - exact).toBeGreaterThanOrEqual(-1e-9);
        expect(polygonArea(outside) - exact).toBeLessThanOrEqual(strip * 1.05);
      }),
    );
  });

  it('keeps its side on hollow arcs too, whichever way the contour runs', () => {
    // A square of 10 with a half disc of radius 5 taken out of its top: 100 - 12.5 pi.
    const bitten = path([0, 0], [10, 0], [10, 10, -1], [0, 10]);
    for (const shape of [bitten, reversed(bitten)]) {
      const inside = Math.abs(polygonArea(polygonise(shape, 0.01, 'inside')));
      const outside = Math.abs(polygonArea(polygonise(shape, 0.01, 'outside')));
      expect(inside).toBeLessThan(100 - 12.5 * Math.PI);
      expect(outside).toBeGreaterThan(100 - 12.5 * Math.PI);
    }
  });

  it('refuses a chord error that is not positive', () => {
    expect(() => polygonise(circle(0, 0, 1), 0, 'inside')).toThrow(/chord error/);
    expect(() => polygonise(circle(0, 0, 1), Number.NaN, 'inside')).toThrow(/chord error/);
  });
});
