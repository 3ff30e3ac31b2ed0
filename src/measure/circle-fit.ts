/** The circle that passes nearest to a set of points: least squares of the radial distances. mm. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { leastSquares, mixBound, student95, sum } from './least-squares.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface CircleFit {
  readonly centre: Point;
  readonly diameter: number;
  /** Distance outside (+) or inside (-) of the circle for each point, mm. */
  readonly residuals: readonly number[];
  /** Standard deviation of one point about the circle, mm; null for three points, which always lie on one. */
  readonly standardDeviation: number | null;
  /** True when no residual is larger than points good to the stated doubt can show. */
  readonly explained: boolean;
  /**
   * Half-widths, mm. While the points are explained by their doubt, a bound: the true circle lies inside whenever every point
   * does. When they are not, 95 in 100 by the scatter of the residuals, if that is more.
   */
  readonly doubt: { readonly centre: number; readonly diameter: number };
}

/**
 * Fit a circle to three or more points, each good to `doubt` (half-width of its radial error, mm).
 * Geometric fit: the sum of squared radial distances is made least by Gauss-Newton steps from an algebraic start
 * (N. Chernov, "Circular and linear regression", describes both). Misses: too few points, points on one line.
 */
export function fitCircle(points: readonly Point[], doubt: number): Lookup<CircleFit> {
  if (points.length < 3)
    return missing(
      `A circle needs three points or more; there ${points.length === 1 ? 'is' : 'are'} ${points.length}.`,
    );
  const start = algebraicCircle(points);
  if (start === null)
    return missing('These points lie on one straight line (or on one place), so no circle passes through them.');
  let { x, y, r } = start;
  const spread = r;
  for (let step = 0; step < 100; step++) {
    const fit = leastSquares(
      points.map((p) => slopes(p, x, y)),
      points.map((p) => Math.hypot(p.x - x, p.y - y) - r),
    );
    if (fit === null) break;
    const [dx = 0, dy = 0, dr = 0] = fit.solution;
    // A step that makes the sum of squares worse is halved until it does not.
    let share = 1;
    while (
      share > 1e-6 &&
      squares(points, x + share * dx, y + share * dy, r + share * dr) > squares(points, x, y, r) + 1e-18
    )
      share /= 2;
    x += share * dx;
    y += share * dy;
    r += share * dr;
    if (Math.hypot(dx, dy, dr) < 1e-12 * spread) break;
  }
  const last = leastSquares(
    points.map((p) => slopes(p, x, y)),
    points.map((p) => Math.hypot(p.x - x, p.y - y) - r),
  );
  if (last === null || !Number.isFinite(r))
    return missing('These points lie too nearly on one straight line to tell a circle.');
  const residuals = points.map((p) => Math.hypot(p.x - x, p.y - y) - r);
  const doubts = points.map(() => doubt);
  const bounds = last.residualBounds(doubts);
  const explained = residuals.every((residual, i) => Math.abs(residual) <= (bounds[i] ?? 0) + 1e-9);
  const freedom = points.length - 3;
  const deviation = freedom === 0 ? null : Math.sqrt(sum(residuals.map((residual) => residual ** 2)) / freedom);
  const [gx = [], gy = [], gr = []] = last.gains;
  const bound = {
    centre: sum(points.map((_, i) => Math.hypot(gx[i] ?? 0, gy[i] ?? 0) * doubt)),
    diameter: 2 * mixBound(last, [0, 0, 1], doubts),
  };
  const likely = (gains: number) => (deviation === null ? 0 : student95(freedom) * deviation * Math.sqrt(gains));
  const scatter = {
    centre: likely(sum(gx.map((g) => g * g)) + sum(gy.map((g) => g * g))),
    diameter: 2 * likely(sum(gr.map((g) => g * g))),
  };
  return found({
    centre: { x, y },
    diameter: 2 * r,
    residuals,
    standardDeviation: deviation,
    explained,
    doubt: explained
      ? bound
      : { centre: Math.max(bound.centre, scatter.centre), diameter: Math.max(bound.diameter, scatter.diameter) },
  });
}

/** How a point's distance from the circle answers to centre and radius: unit vector towards the point, and one. */
function slopes(p: Point, x: number, y: number): number[] {
  const away = Math.hypot(p.x - x, p.y - y) || 1;
  return [(p.x - x) / away, (p.y - y) / away, 1];
}

function squares(points: readonly Point[], x: number, y: number, r: number): number {
  return sum(points.map((p) => (Math.hypot(p.x - x, p.y - y) - r) ** 2));
}

/** Start: x^2 + y^2 = a x + b y + c is linear in a, b, c (I. Kasa's fit). About the points' middle, in their own size. */
function algebraicCircle(points: readonly Point[]): { x: number; y: number; r: number } | null {
  const mean = { x: sum(points.map((p) => p.x)) / points.length, y: sum(points.map((p) => p.y)) / points.length };
  const size = Math.max(...points.map((p) => Math.hypot(p.x - mean.x, p.y - mean.y)));
  if (!(size > 0)) return null;
  const own = points.map((p) => ({ x: (p.x - mean.x) / size, y: (p.y - mean.y) / size }));
  const fit = leastSquares(
    own.map((p) => [p.x, p.y, 1]),
    own.map((p) => p.x ** 2 + p.y ** 2),
  );
  if (fit === null) return null;
  const [a = 0, b = 0, c = 0] = fit.solution;
  const r = Math.sqrt(c + (a * a + b * b) / 4);
  if (!Number.isFinite(r) || r > 1e5) return null;
  return { x: mean.x + (size * a) / 2, y: mean.y + (size * b) / 2, r: size * r };
}
