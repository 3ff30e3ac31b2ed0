/** Contours whose thinnest place is known in closed form, and a sampler that finds thin places with code of its own. */
import fc from 'fast-check';
import { contourFaults, stretchesOf } from '../../src/geometry/contour.ts';
import type { Contour } from '../../src/model/sheet.ts';
import type { Loop } from '../../src/preflight/chain.ts';
import { fullBudget } from '../../src/preflight/limits.ts';
import { type Nested, nestingOf } from '../../src/preflight/nest.ts';

export type Point = readonly [x: number, y: number];

export function nested(...contours: readonly Contour[]): Nested[] {
  const loops = contours.map((contour): Loop => ({ contour, stretches: stretchesOf(contour), places: [] }));
  const found = nestingOf(loops, fullBudget());
  if (found === null) throw new Error('too many contours for a test');
  return found;
}

export function pathOf(corners: readonly (readonly [x: number, y: number, bulge?: number])[]): Contour {
  return { kind: 'path', feature: 'shape', vertices: corners.map(([x, y, bulge = 0]) => ({ x, y, bulge })) };
}

/** Turned about the origin and moved, so that nothing lies along an axis. */
export function moved(contour: Contour, degrees: number, dx: number, dy: number): Contour {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = (x: number, y: number) => ({ x: c * x - s * y + dx, y: s * x + c * y + dy });
  if (contour.kind === 'circle') return { ...contour, ...at(contour.x, contour.y) };
  return { ...contour, vertices: contour.vertices.map(({ x, y, bulge }) => ({ ...at(x, y), bulge })) };
}

/** A wheel with sharp corners: teeth with radial flanks, `tooth` and the rest of the pitch in radians of the axis. */
export function sharpWheel(teeth: number, root: number, outside: number, tooth: number): Contour {
  const pitch = (2 * Math.PI) / teeth;
  const polar = (r: number, angle: number, sweep: number) =>
    [r * Math.cos(angle), r * Math.sin(angle), Math.tan(sweep / 4)] as const;
  return pathOf(
    Array.from({ length: teeth }, (_, i) => i * pitch).flatMap((a) => [
      polar(root, a - tooth / 2, 0),
      polar(outside, a - tooth / 2, tooth),
      polar(outside, a + tooth / 2, 0),
      polar(root, a + tooth / 2, pitch - tooth),
    ]),
  );
}

/** Points along a contour, about `step` apart; corners are among them. Written for the tests, from the bulge's definition. */
export function walked(contour: Contour, step: number): Point[] {
  if (contour.kind === 'circle') {
    const count = Math.ceil((2 * Math.PI * contour.r) / step);
    return Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      return [contour.x + contour.r * Math.cos(angle), contour.y + contour.r * Math.sin(angle)];
    });
  }
  return contour.vertices.flatMap(({ x, y, bulge }, i) => {
    const next = contour.vertices[(i + 1) % contour.vertices.length] ?? { x, y };
    const chord = Math.hypot(next.x - x, next.y - y);
    // Radius times sweep; as the bulge goes to 0 that is the chord.
    const size = bulge === 0 ? chord : (chord * (1 + bulge * bulge) * Math.atan(bulge)) / bulge;
    const count = Math.max(2, Math.ceil(size / step));
    return Array.from({ length: count }, (_, k): Point => {
      const t = k / count;
      if (bulge === 0) return [x + t * (next.x - x), y + t * (next.y - y)];
      // A point of the arc at the share t of its sweep, by the two angles at the chord (tan(sweep / 4) is the bulge).
      const sweep = 4 * Math.atan(bulge);
      const reach = (chord * Math.sin((t * sweep) / 2)) / Math.sin(sweep / 2);
      const heading = Math.atan2(next.y - y, next.x - x) - ((1 - t) * sweep) / 2;
      return [x + reach * Math.cos(heading), y + reach * Math.sin(heading)];
    });
  });
}

/** Star-shaped contours with deep valleys, of lines and mild arcs: waists of metal and mouths of air. */
export const anyDeepStar: fc.Arbitrary<Contour> = fc
  .array(
    fc.record({
      r: fc.double({ min: 2, max: 12, noNaN: true }),
      bulge: fc.oneof(fc.constant(0), fc.double({ min: -0.08, max: 0.15, noNaN: true })),
    }),
    { minLength: 6, maxLength: 13 },
  )
  .map((arms) =>
    pathOf(
      arms.map(({ r, bulge }, i) => {
        const angle = (2 * Math.PI * i) / arms.length + 0.1;
        return [r * Math.cos(angle), r * Math.sin(angle), Math.abs(bulge) < 1e-3 ? 0 : bulge] as const;
      }),
    ),
  )
  .filter((contour) => contourFaults(contour).length === 0);

function isInside(points: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  for (const [i, [x1, y1]] of points.entries()) {
    const [x2, y2] = points[(i + 1) % points.length] as Point;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  }
  return inside;
}

/**
 * Least places by brute force: every pair of samples that no step of one sample of either end, or of both, makes shorter; then small
 * steps along the contour, ever smaller, as long as they help. What slides together is no place. Good to about 0.002 mm.
 */
export function sampledNecks(contour: Contour, step: number, upTo: number): { metal: number; air: number } {
  const points = walked(contour, step);
  const fine = walked(contour, step / 50);
  const along = lengthsOf(fine);
  const n = points.length;
  const starts = lengthsAt(contour, points, fine, along);
  const at = (i: number): Point => points[(i + n) % n] as Point;
  const apart = (i: number, k: number) => distance(at(i), at(k));
  const best = { metal: Infinity, air: Infinity };
  for (let i = 0; i < n; i++) {
    for (let k = i + 2; k < n; k++) {
      const gap = apart(i, k);
      // A slide shortens a place by a step or so: what is wider than the best by more need not be looked at.
      if (gap > Math.min(upTo, Math.max(best.metal, best.air)) + step) continue;
      const isLeast = [-1, 0, 1].every((a) => [-1, 0, 1].every((b) => apart(i + a, k + b) >= gap - 1e-9));
      if (!isLeast) continue;
      const [p, q] = slid(fine, along, starts[i] as number, starts[k] as number, step);
      const least = distance(p, q);
      if (least < step / 5) continue;
      const between = [0.02, 0.2, 0.35, 0.5, 0.65, 0.8, 0.98].map((t): Point => {
        return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
      });
      const inside = between.filter((point) => isInside(fine, point)).length;
      if (inside === between.length) best.metal = Math.min(best.metal, least);
      if (inside === 0) best.air = Math.min(best.air, least);
    }
  }
  return best;
}

const distance = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1]);

/** Length of the cut up to each point; the whole length last. */
function lengthsOf(points: readonly Point[]): number[] {
  const list = [0];
  for (const [i, point] of points.entries()) {
    list.push((list[i] as number) + distance(point, points[(i + 1) % points.length] as Point));
  }
  return list;
}

/** Where the coarse points lie on the fine walk. */
function lengthsAt(
  contour: Contour,
  points: readonly Point[],
  fine: readonly Point[],
  along: readonly number[],
): number[] {
  let k = 0;
  return points.map((point) => {
    let best = k;
    for (let m = k; m < Math.min(fine.length, k + 400); m++) {
      if (distance(fine[m] as Point, point) < distance(fine[best] as Point, point)) best = m;
    }
    k = best;
    if (distance(fine[best] as Point, point) > 0.05) throw new Error(`lost on ${contour.feature}`);
    return along[best] as number;
  });
}

function pointAt(fine: readonly Point[], along: readonly number[], s: number): Point {
  const whole = along.at(-1) as number;
  const at = ((s % whole) + whole) % whole;
  let [low, high] = [0, along.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((along[middle] as number) <= at) low = middle;
    else high = middle;
  }
  const [a, b] = [fine[low] as Point, fine[(low + 1) % fine.length] as Point];
  const t = (at - (along[low] as number)) / ((along[high] as number) - (along[low] as number));
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

function slid(fine: readonly Point[], along: readonly number[], s: number, t: number, step: number): [Point, Point] {
  let [a, b] = [s, t];
  const gap = (x: number, y: number) => distance(pointAt(fine, along, x), pointAt(fine, along, y));
  let now = gap(a, b);
  for (let h = step / 2; h > 1e-4; ) {
    let next = { gap: now, a, b };
    for (const da of [-h, 0, h]) {
      for (const db of [-h, 0, h]) {
        const there = gap(a + da, b + db);
        if (there < next.gap - 1e-10) next = { gap: there, a: a + da, b: b + db };
      }
    }
    if (next.gap < now) {
      now = next.gap;
      a = next.a;
      b = next.b;
    } else h /= 2;
  }
  return [pointAt(fine, along, a), pointAt(fine, along, b)];
}
