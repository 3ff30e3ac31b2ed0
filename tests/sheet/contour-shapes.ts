/** Contours with closed-form properties, for the geometry tests. */
import fc from 'fast-check';
import type { Contour, ContourVertex } from '../../src/model/sheet.ts';

/** Bulge of a quarter turn, counter-clockwise. */
export const QUARTER = Math.tan(Math.PI / 8);

export type Corner = readonly [x: number, y: number, bulge?: number];

export function path(...corners: readonly Corner[]): Contour {
  return { kind: 'path', feature: 'shape', vertices: corners.map(([x, y, bulge = 0]) => ({ x, y, bulge })) };
}

export function circle(x: number, y: number, r: number): Contour {
  return { kind: 'circle', feature: 'shape', x, y, r };
}

/** Rectangle w by h about the origin with corner rounds r, counter-clockwise. */
export function roundedRectangle(w: number, h: number, r: number): Contour {
  const [x, y] = [w / 2, h / 2];
  return path(
    [x, y - r, QUARTER],
    [x - r, y],
    [-x + r, y, QUARTER],
    [-x, y - r],
    [-x, -y + r, QUARTER],
    [-x + r, -y],
    [x - r, -y, QUARTER],
    [x, -y + r],
  );
}

/** A slot of length l between the centres of its two ends of radius r, along x about the origin. */
export function slot(l: number, r: number): Contour {
  return path([-l / 2, -r], [l / 2, -r, 1], [l / 2, r], [-l / 2, r, 1]);
}

/** The same contour the other way round. */
export function reversed(contour: Contour): Contour {
  if (contour.kind === 'circle') return contour;
  const n = contour.vertices.length;
  const vertices = contour.vertices.map((_, i): ContourVertex => {
    const at = contour.vertices[(2 * n - i) % n] as ContourVertex;
    const before = contour.vertices[(2 * n - i - 1) % n] as ContourVertex;
    return { x: at.x, y: at.y, bulge: -before.bulge };
  });
  return { ...contour, vertices };
}

/** Star-shaped contours of lines and mild arcs about a point near the origin: never crossing themselves. */
export const anyStar: fc.Arbitrary<Contour> = fc
  .record({
    x: fc.double({ min: -20, max: 20, noNaN: true }),
    y: fc.double({ min: -20, max: 20, noNaN: true }),
    arms: fc.array(
      fc.record({
        r: fc.double({ min: 8, max: 12, noNaN: true }),
        bulge: fc.oneof(fc.constant(0), fc.double({ min: -0.12, max: 0.4, noNaN: true })),
      }),
      { minLength: 7, maxLength: 12 },
    ),
  })
  .map(({ x, y, arms }) => {
    return path(
      ...arms.map(({ r, bulge }, i): [number, number, number] => {
        const angle = (2 * Math.PI * i) / arms.length;
        return [x + r * Math.cos(angle), y + r * Math.sin(angle), Math.abs(bulge) < 1e-3 ? 0 : bulge];
      }),
    );
  });

/** Area of a polygon by the sum of its cross products: the second method beside the closed forms. */
export function polygonArea(points: readonly (readonly [number, number])[]): number {
  let twice = 0;
  points.forEach(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length] as readonly [number, number];
    twice += x * ny - nx * y;
  });
  return twice / 2;
}
