/** Says where contours stay open, how wide the gap is, and where too many ends meet. mm. */
import type { Stretch } from '../geometry/contour.ts';
import type { Place } from '../model/preflight.ts';
import type { Piece } from './draw.ts';
import { type FaultLog, short } from './fault-log.ts';
import type { End } from './nodes.ts';

/** Open ends with the nearest other open end, and places where more than two ends meet. */
export function noteEnds(
  open: readonly Piece[],
  ends: readonly End[],
  nodeOf: readonly number[],
  members: readonly (readonly number[])[],
  quiet: ReadonlySet<Stretch>,
  unit: number,
  log: FaultLog,
): void {
  const alone = ends.flatMap((_, i) => ((members[nodeOf[i] as number] as readonly number[]).length === 1 ? [i] : []));
  const isQuiet = (i: number) => {
    const { piece, end } = ends[i] as End;
    const { stretches } = open[piece] as Piece;
    return quiet.has((end === 0 ? stretches[0] : stretches.at(-1)) as Stretch);
  };
  const placeAt = (i: number): Place => {
    const { piece, x, y } = ends[i] as End;
    return { ...(open[piece] as Piece).place, x: x / unit, y: y / unit };
  };
  const told = new Set<number>();
  // The way to the nearest end is worked out for the first ones only: the rest is counted.
  for (const [n, i] of alone.entries()) {
    if (told.has(i) || isQuiet(i)) continue;
    const nearest = n < 100 ? nearestOf(ends, alone, i) : null;
    if (nearest === null) {
      log.add('dxf-open-contour', placeAt(i), n < 100 ? 'no other end is open' : '');
      continue;
    }
    const back = nearestOf(ends, alone, nearest.end);
    if (back?.end === i) told.add(nearest.end);
    const { x, y } = ends[nearest.end] as End;
    log.add(
      'dxf-open-contour',
      placeAt(i),
      `gap of ${short(nearest.gap)} mm to the open end at (${short(x / unit)}, ${short(y / unit)}), entity ${placeAt(nearest.end).entity}`,
    );
  }
  for (const there of members) {
    const first = there[0];
    if (there.length < 3 || first === undefined || there.some(isQuiet)) continue;
    const names = [...new Set(there.map((i) => placeAt(i).entity))].slice(0, 6);
    log.add('dxf-branch', placeAt(first), `${there.length} ends, of entities ${names.join(', ')}`);
  }
}

function nearestOf(ends: readonly End[], alone: readonly number[], i: number): { end: number; gap: number } | null {
  const { x, y } = ends[i] as End;
  let best: { end: number; gap: number } | null = null;
  for (const k of alone) {
    if (k === i) continue;
    const other = ends[k] as End;
    const gap = Math.hypot(other.x - x, other.y - y);
    if (best === null || gap < best.gap) best = { end: k, gap };
  }
  return best;
}
