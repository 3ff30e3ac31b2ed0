/** Round holes, however they are drawn: a circle, arcs of one circle, or a ring of short lines. mm. */
import type { Nested } from './nest.ts';

/** A ring of lines has at least so many corners, all within this of one radius, mm. */
const ring = { corners: 12, within: 0.02 } as const;

/** Diameter of a round contour, or null. Lines: the circle of the same area. */
export function roundDiameter({ loop, area }: Nested): number | null {
  if (loop.contour.kind === 'circle') return 2 * loop.contour.r;
  const [first] = loop.stretches;
  if (first === undefined) return null;
  if (first.kind === 'arc') {
    const isOne = loop.stretches.every(
      (s) => s.kind === 'arc' && Math.abs(s.r - first.r) < 1e-3 && Math.hypot(s.x - first.x, s.y - first.y) < 1e-3,
    );
    return isOne ? 2 * first.r : null;
  }
  const count = loop.stretches.length;
  if (count < ring.corners || loop.stretches.some(({ kind }) => kind === 'arc')) return null;
  const x = loop.stretches.reduce((sum, s) => sum + s.x1, 0) / count;
  const y = loop.stretches.reduce((sum, s) => sum + s.y1, 0) / count;
  const radii = loop.stretches.map((s) => Math.hypot(s.x1 - x, s.y1 - y));
  const [least, most] = [radii.reduce((a, b) => Math.min(a, b)), radii.reduce((a, b) => Math.max(a, b))];
  return most - least < ring.within ? 2 * Math.sqrt(area / Math.PI) : null;
}
