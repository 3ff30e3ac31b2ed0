/** Takes out what is drawn twice, and notes what lies on one another. */
import { type Box, type Stretch, stretchBox } from '../geometry/contour-stretch.ts';
import type { Piece } from './draw.ts';
import type { FaultLog } from './fault-log.ts';
import { type Budget, sameWithin } from './limits.ts';
import { eachNearPair } from './near-pairs.ts';
import { overlapOf } from './overlap.ts';

export interface Singles {
  /** The pieces, each drawn once. */
  readonly pieces: readonly Piece[];
  /** Stretches that share a run with another: what is odd about their ends has been said. */
  readonly overlapping: ReadonlySet<Stretch>;
  readonly isWhole: boolean;
}

/** A pair that is remembered costs as much as so many that are looked at: a file of one circle a million times must not fill memory. */
const pairCost = 1000;

interface Met {
  same: number;
  readonly at: { readonly x: number; readonly y: number };
}

/** Duplicates (logged, the later one dropped) and overlaps (logged, kept). `unit`: mm in one unit of the drawing. */
export function singlesOf(pieces: readonly Piece[], unit: number, log: FaultLog, budget: Budget): Singles {
  const stretches: Stretch[] = [];
  const owner: number[] = [];
  for (const [i, piece] of pieces.entries()) {
    for (const stretch of piece.stretches) {
      stretches.push(stretch);
      owner.push(i);
    }
  }
  const boxes: Box[] = stretches.map(stretchBox);
  const met = new Map<string, Met & { readonly a: number; readonly b: number; readonly shared: Set<Stretch> }>();
  const isWhole = eachNearPair(
    boxes,
    () => sameWithin,
    budget,
    (i, k) => {
      const overlap = overlapOf(stretches[i] as Stretch, stretches[k] as Stretch);
      if (overlap === null) return;
      const [a, b] = [
        Math.min(owner[i] as number, owner[k] as number),
        Math.max(owner[i] as number, owner[k] as number),
      ];
      const key = `${a} ${b}`;
      if (!met.has(key)) budget.left -= pairCost;
      const pair = met.get(key) ?? { a, b, same: 0, at: { x: overlap.x, y: overlap.y }, shared: new Set<Stretch>() };
      met.set(key, pair);
      if (overlap.kind === 'same') pair.same += 1;
      pair.shared.add(stretches[i] as Stretch).add(stretches[k] as Stretch);
    },
  );
  const dropped = new Set<number>();
  const overlapping = new Set<Stretch>();
  for (const { a, b, same, at, shared } of [...met.values()].sort((p, q) => p.b - q.b || p.a - q.a)) {
    if (dropped.has(a) || dropped.has(b)) continue;
    const [first, second] = [pieces[a] as Piece, pieces[b] as Piece];
    const isTwice = a !== b && same === second.stretches.length && same === first.stretches.length;
    const place = { ...second.place, x: at.x / unit, y: at.y / unit };
    const other =
      a === b ? 'it runs back on itself' : `the other is entity ${first.place.entity}, line ${first.place.line}`;
    if (isTwice) {
      dropped.add(b);
      log.add('dxf-duplicates', place, other);
    } else {
      for (const stretch of shared) overlapping.add(stretch);
      log.add('dxf-overlap', place, other);
    }
  }
  return { pieces: pieces.filter((_, i) => !dropped.has(i)), overlapping, isWhole };
}
