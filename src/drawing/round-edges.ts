/** Which circles of a turned part show when it is looked at along the axis, from above (towards -z). */
import type { Drilling, Profile } from '../model/part.ts';
import { slopes } from './turned-profile.ts';

/** One circular edge. `fine` marks the inner edge of a chamfer, drawn with a thinner pen. */
export interface RoundEdge {
  readonly r: number;
  readonly seen: boolean;
  readonly fine: boolean;
  readonly of?: string | undefined;
}

const least = 1e-6;

function withoutDoubles(edges: readonly RoundEdge[]): RoundEdge[] {
  return edges.filter((e, i) => !edges.slice(0, i).some((f) => Math.abs(f.r - e.r) < 1e-4));
}

/**
 * Edges of the outside. From above, an edge shows when nothing higher reaches further out. Of what lies below only cylinders
 * of features are kept (registers, seats): chamfers and grooves behind the face would only blur the picture.
 */
export function outerEdges(outer: Profile, keepHidden: (feature: string | undefined) => boolean): RoundEdge[] {
  const seen: RoundEdge[] = [];
  const hidden: RoundEdge[] = [];
  let widest = 0;
  for (const s of slopes(outer).toReversed()) {
    const chamfer = Math.abs(s.r1 - s.r0) > least;
    if (s.r1 > widest + least) seen.push({ r: s.r1, seen: true, fine: chamfer, of: s.of });
    else if (!chamfer && s.r1 < widest - least && keepHidden(s.of))
      hidden.push({ r: s.r1, seen: false, fine: false, of: s.of });
    widest = Math.max(widest, s.r1);
    if (s.r0 > widest + least) seen.push({ r: s.r0, seen: true, fine: false, of: s.of });
    widest = Math.max(widest, s.r0);
  }
  return withoutDoubles([...seen, ...widestOfEach(hidden)]);
}

/** Hidden edges without the ones that run just inside another of the same feature: the groove at a spigot's foot. */
const widestOfEach = (hidden: readonly RoundEdge[]): RoundEdge[] =>
  hidden.filter((e) => !hidden.some((f) => f.of === e.of && f.r > e.r && f.r < 1.05 * e.r));

/** Edges of one drilling. It is open to the eye when it reaches the surface above it, at height `surface`. */
export function drillingEdges(drilling: Drilling, surface: number): RoundEdge[] {
  const down = slopes(drilling.profile).toReversed();
  const top = down[0];
  if (top === undefined) return [];
  const open = top.z1 >= surface - 1e-3;
  const seen: RoundEdge[] = [];
  const hidden: RoundEdge[] = [];
  let narrowest = open ? Infinity : 0;
  for (const s of down) {
    const slope = Math.abs(s.r1 - s.r0) > least;
    const wide = Math.max(s.r0, s.r1);
    // A countersink shows as a ring of its own; a broken edge is only a fine line, or nothing from behind.
    const fine = slope && s.z1 - s.z0 < 0.15 * wide;
    if (!fine && wide > narrowest + least) hidden.push({ r: wide, seen: false, fine: false, of: s.of });
    for (const [k, r] of [s.r1, s.r0].entries()) {
      if (r < least) continue;
      if (r < narrowest - least) seen.push({ r, seen: true, fine: fine && k === 0, of: s.of });
      narrowest = Math.min(narrowest, r);
    }
  }
  return withoutDoubles([...seen, ...hidden]);
}

/** Height of the part's upper surface at a distance from the axis: the outside, less what is drilled on the axis. */
export function upperSurface(outer: Profile, onAxis: readonly Drilling[], distance: number): number {
  let height = -Infinity;
  for (const s of slopes(outer)) {
    if (Math.max(s.r0, s.r1) >= distance - least) height = Math.max(height, s.z1);
  }
  for (const drilling of onAxis) {
    const stretches = slopes(drilling.profile).toReversed();
    if ((stretches[0]?.z1 ?? -Infinity) < height - 1e-3) continue;
    for (const s of stretches) {
      if (Math.max(s.r0, s.r1) < distance - least) break;
      height = Math.min(height, s.z0);
    }
  }
  return height;
}
