/** Are the two flanges' patterns one and the same, so that bolts can run through all three pieces? */
import { turned } from '../parts/adapter-holes.ts';
import type { AdapterFlanges } from './layout.ts';

/** Holes that miss each other by more than this are not one pattern, mm. Common practice: the bolts must pass both. */
const meet = 0.3;

/** Smallest angle by which the driven pattern must turn to fall on the driving one, 0 <= degrees < 360; null when it cannot. */
export function sharedPattern({ driving, driven }: AdapterFlanges): number | null {
  const fixed = driving.holes.positions;
  const moving = driven.holes.positions;
  const [first] = moving;
  if (!first || fixed.length !== moving.length) return null;
  const angles = fixed.flatMap((target) => {
    const angle = ((Math.atan2(target.y, target.x) - Math.atan2(first.y, first.x)) * 180) / Math.PI;
    const placed = moving.map((p) => turned(p, angle));
    const falls = placed.every((p) => fixed.some((q) => Math.hypot(p.x - q.x, p.y - q.y) <= meet));
    // Nine decimals: binary noise must not turn 0 into 360.
    return falls ? [Number((((angle % 360) + 360) % 360).toFixed(9)) % 360] : [];
  });
  return angles.length === 0 ? null : Math.min(...angles);
}
