/**
 * The nearest points of two solids of revolution, found without the theorem that they lie in one plane: points strewn over both
 * surfaces in space, and the best few then moved about until nothing is nearer. Never less than the true distance.
 */
import type { Profile } from '../../src/model/part.ts';

type Point = readonly [number, number, number];

/** A closed surface of revolution, by a parameter 0 to 1 along its profile (end discs included) and an angle. */
export interface Round {
  readonly at: (along: number, angle: number) => Point;
}

export function roundOf(profile: Profile, x: number, y: number): Round {
  const [first, last] = [profile[0], profile[profile.length - 1]] as [Profile[number], Profile[number]];
  const corners = [{ z: first.z, r: 0 }, ...profile, { z: last.z, r: 0 }];
  const lengths = corners.slice(1).map((b, i) => Math.hypot(b.z - (corners[i] as { z: number }).z, b.r - (corners[i] as { r: number }).r));
  const whole = lengths.reduce((a, b) => a + b, 0);
  return {
    at(along, angle) {
      let left = Math.min(1, Math.max(0, along)) * whole;
      let i = 0;
      while (i + 1 < lengths.length && left > (lengths[i] as number)) left -= lengths[i++] as number;
      const t = (lengths[i] as number) === 0 ? 0 : Math.min(1, left / (lengths[i] as number));
      const [a, b] = [corners[i], corners[i + 1]] as [Profile[number], Profile[number]];
      const r = a.r + t * (b.r - a.r);
      return [x + r * Math.cos(angle), y + r * Math.sin(angle), a.z + t * (b.z - a.z)];
    },
  };
}

const apart = (p: Point, q: Point) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);

/** Least distance between two surfaces, mm: a grid over all four parameters, then ever smaller steps from the best starts. */
export function nearest(a: Round, b: Round, grid: { readonly along: number; readonly round: number }): number {
  const strewn = (surface: Round) => {
    const points: { along: number; angle: number; p: Point }[] = [];
    for (let i = 0; i <= grid.along; i++) {
      for (let k = 0; k < grid.round; k++) {
        const angle = (2 * Math.PI * k) / grid.round;
        points.push({ along: i / grid.along, angle, p: surface.at(i / grid.along, angle) });
      }
    }
    return points;
  };
  const [as, bs] = [strewn(a), strewn(b)];
  const starts: { d: number; v: number[] }[] = [];
  for (const p of as) {
    let best = { d: Infinity, q: bs[0] as (typeof bs)[number] };
    for (const q of bs) {
      const d = apart(p.p, q.p);
      if (d < best.d) best = { d, q };
    }
    starts.push({ d: best.d, v: [p.along, p.angle, best.q.along, best.q.angle] });
  }
  starts.sort((s, t) => s.d - t.d);
  const from = (v: readonly number[]) => apart(a.at(v[0] as number, v[1] as number), b.at(v[2] as number, v[3] as number));
  return Math.min(...starts.slice(0, 8).map(({ d, v }) => settled(from, d, v, grid)));
}

/** Moves each parameter and each pair of them to and fro, by ever smaller steps, while that helps. */
function settled(from: (v: readonly number[]) => number, start: number, at: readonly number[], grid: { readonly along: number; readonly round: number }) {
  let [best, v] = [start, [...at]];
  const moves: number[][] = [];
  for (let code = 1; code < 81; code++) moves.push([0, 1, 2, 3].map((k) => (Math.floor(code / 3 ** k) % 3) - 1));
  let size = 1;
  while (size > 1e-4) {
    let better = false;
    for (const move of moves) {
      const next = v.map((value, k) => value + (move[k] as number) * size * (k % 2 === 0 ? 1 / grid.along : (2 * Math.PI) / grid.round));
      const d = from(next);
      if (d < best - 1e-6) [best, v, better] = [d, next, true];
    }
    if (!better) size /= 2;
  }
  return best;
}
