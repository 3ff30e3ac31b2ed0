/**
 * The nearest points of two solids of revolution, found without the theorem that they lie in one plane: points strewn over every
 * patch of both surfaces in space, and the best of them moved about until nothing is nearer. Never less than the true distance.
 */
import type { Profile } from '../../src/model/part.ts';

type Point = readonly [number, number, number];

/** One straight stretch of a profile turned about its axis: a cylinder, a cone, a ring or an end disc. */
type Patch = (along: number, angle: number) => Point;

/** The closed surface of a drilling, end discs included, as patches with parameters 0 to 1 and an angle. */
export function patchesOf(profile: Profile, x: number, y: number): Patch[] {
  const [first, last] = [profile[0], profile[profile.length - 1]] as [Profile[number], Profile[number]];
  const corners = [{ z: first.z, r: 0 }, ...profile, { z: last.z, r: 0 }];
  return corners.slice(1).flatMap((b, i): Patch[] => {
    const a = corners[i] as Profile[number];
    if (a.z === b.z && a.r === b.r) return [];
    return [
      (along, angle) => {
        const t = Math.min(1, Math.max(0, along));
        const r = a.r + t * (b.r - a.r);
        return [x + r * Math.cos(angle), y + r * Math.sin(angle), a.z + t * (b.z - a.z)];
      },
    ];
  });
}

const turn = 2 * Math.PI;
const apart = (p: Point, q: Point) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
const strewn = { along: 5, round: 12 };

/** Moves of all four parameters at once, each to, fro or not at all. */
const moves = Array.from({ length: 81 }, (_, code) => [0, 1, 2, 3].map((k) => (Math.floor(code / 3 ** k) % 3) - 1));

/** Least distance between two patches: a grid over all four parameters, then ever smaller steps from the best of it. */
function between(a: Patch, b: Patch): number {
  const on = (patch: Patch) =>
    Array.from({ length: (strewn.along + 1) * strewn.round }, (_, i) => {
      const [along, angle] = [Math.floor(i / strewn.round) / strewn.along, ((i % strewn.round) * turn) / strewn.round];
      return { along, angle, p: patch(along, angle) };
    });
  const others = on(b);
  // The best start for every pair of places along the two stretches: angles mean nothing at a point on the axis.
  const starts = new Map<string, { d: number; at: number[] }>();
  for (const p of on(a)) {
    for (const q of others) {
      const d = apart(p.p, q.p);
      const places = `${p.along} ${q.along}`;
      if (d < (starts.get(places)?.d ?? Infinity)) starts.set(places, { d, at: [p.along, p.angle, q.along, q.angle] });
    }
  }
  const best = [...starts.values()].sort((s, t) => s.d - t.d).slice(0, 6);
  return Math.min(...best.map(({ d, at }) => settled(a, b, d, at)));
}

function settled(a: Patch, b: Patch, start: number, from: readonly number[]): number {
  let [best, at] = [start, from];
  for (let size = 1; size > 1e-5; ) {
    let better = false;
    for (const move of moves) {
      const next = at.map(
        (value, k) => value + (move[k] as number) * size * (k % 2 === 0 ? 1 / strewn.along : turn / strewn.round),
      );
      const d = apart(a(next[0] as number, next[1] as number), b(next[2] as number, next[3] as number));
      // Only a step that pays is taken, or the search would creep along flat valleys.
      if (d < best - 1e-4 * size)
        [best, at, better] = [d, next.map((value, k) => (k % 2 ? value : Math.min(1, Math.max(0, value)))), true];
    }
    if (!better) size /= 2;
  }
  return best;
}

/** Least distance between two surfaces, mm. */
export function nearest(first: readonly Patch[], second: readonly Patch[]): number {
  return Math.min(...first.flatMap((a) => second.map((b) => between(a, b))));
}
