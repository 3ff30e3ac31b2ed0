/** Holes laid on one or two even rings about one centre, by linear least squares. mm, degrees. */
import { atan2, cos, sin } from '../units/trig.ts';
import type { Point } from './circle-fit.ts';
import { leastSquares, mixBound, sum } from './least-squares.ts';
import { turned } from './words.ts';

/** One even ring: its diameter and the angle of its first hole, with their doubts. */
export interface Ring {
  readonly diameter: number;
  readonly doubt: number;
  readonly first: number;
  readonly firstDoubt: number;
}

export interface Layout {
  readonly centre: Point;
  readonly centreDoubt: number;
  readonly rings: readonly Ring[];
  /** For each hole, in the order given: how far it stands from where the layout wants it. */
  readonly residuals: readonly (Point & { readonly size: number })[];
  /** Root mean square of the residuals for each degree of freedom left, mm; null when none is left. */
  readonly deviation: number | null;
  /** Coordinates more than the unknowns. */
  readonly freedom: number;
  /** No hole that counted stands farther off than its own doubt can explain. */
  readonly explained: boolean;
  /** Largest residual over what the doubt explains. */
  readonly worst: number;
}

/**
 * Fit `rings` even rings (1, or 2 that take turns) to holes already in order around the pattern, each coordinate good to
 * `doubt`. Holes in `without` are judged but do not count. With the ring as x = x0 + u cos k - v sin k, y = y0 + u sin k + v cos k
 * (k the turn from the ring's first hole), the unknowns x0, y0, u, v enter linearly, so there is one least-squares answer.
 * @returns null when the holes do not settle the layout
 */
export function fitLayout(
  holes: readonly Point[],
  rings: 1 | 2,
  doubt: number,
  without: readonly number[] = [],
): Layout | null {
  const count = holes.length;
  const used = holes.map((_, index) => index).filter((index) => !without.includes(index));
  const unknowns = 2 + 2 * rings;
  if (count % rings !== 0 || 2 * used.length < unknowns) return null;
  const line = (index: number): [number[], number[]] => {
    const ring = index % rings;
    const turn = (2 * Math.PI * Math.floor(index / rings)) / (count / rings);
    const [c, s] = [cos(turn), sin(turn)];
    const x = new Array<number>(unknowns).fill(0);
    const y = new Array<number>(unknowns).fill(0);
    x[0] = 1;
    y[1] = 1;
    x[2 + 2 * ring] = c;
    x[3 + 2 * ring] = -s;
    y[2 + 2 * ring] = s;
    y[3 + 2 * ring] = c;
    return [x, y];
  };
  const place = (index: number) => holes[index] as Point;
  const fit = leastSquares(
    used.flatMap(line),
    used.flatMap((index) => [place(index).x, place(index).y]),
  );
  if (fit === null) return null;
  const doubts = used.flatMap(() => [doubt, doubt]);
  const bounds = fit.residualBounds(doubts);
  const worst = Math.max(0, ...fit.residuals.map((residual, i) => Math.abs(residual) / Math.max(bounds[i] ?? 0, 1e-9)));
  const [x0 = 0, y0 = 0] = fit.solution;
  const unit = (column: number, factor: number) =>
    Object.assign(new Array<number>(unknowns).fill(0), { [column]: factor });
  const laid = Array.from({ length: rings }, (_, ring): Ring => {
    const [u = 0, v = 0] = fit.solution.slice(2 + 2 * ring);
    const radius = Math.hypot(u, v) || 1e-9;
    const mix = (a: number, b: number) =>
      mixBound(fit, Object.assign(unit(2 + 2 * ring, a), { [3 + 2 * ring]: b }), doubts);
    return {
      diameter: 2 * radius,
      doubt: 2 * mix(u / radius, v / radius),
      first: turned((atan2(v, u) * 180) / Math.PI),
      firstDoubt: ((mix(-v / radius, u / radius) / radius) * 180) / Math.PI,
    };
  });
  const residuals = holes.map((hole, index) => {
    const [rowX, rowY] = line(index);
    const x = hole.x - sum(rowX.map((cell, i) => cell * (fit.solution[i] ?? 0)));
    const y = hole.y - sum(rowY.map((cell, i) => cell * (fit.solution[i] ?? 0)));
    return { x, y, size: Math.hypot(x, y) };
  });
  const freedom = 2 * used.length - unknowns;
  return {
    centre: { x: x0, y: y0 },
    centreDoubt: Math.hypot(mixBound(fit, unit(0, 1), doubts), mixBound(fit, unit(1, 1), doubts)),
    rings: laid,
    residuals,
    deviation: freedom === 0 ? null : Math.sqrt(sum(fit.residuals.map((residual) => residual ** 2)) / freedom),
    freedom,
    explained: worst <= 1 + 1e-6,
    worst,
  };
}

/** Order of points around their common centre, counter-clockwise, from the one nearest above angle 0. */
export function aroundCentre(points: readonly Point[], centre: Point): number[] {
  const angle = (index: number) =>
    turned((atan2((points[index]?.y ?? 0) - centre.y, (points[index]?.x ?? 0) - centre.x) * 180) / Math.PI + 1e-7);
  return points.map((_, index) => index).sort((a, b) => angle(a) - angle(b));
}
