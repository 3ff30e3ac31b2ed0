/** Groups points that lie at one place, by a grid: thousands of ends in milliseconds. mm. */

/** An end of an open piece: the ends of piece i are numbers 2 i and 2 i + 1. */
export interface End {
  readonly piece: number;
  readonly end: 0 | 1;
  readonly x: number;
  readonly y: number;
}

export interface Nodes {
  /** The place of each point. */
  readonly nodeOf: readonly number[];
  /** The points of each place. */
  readonly members: readonly (readonly number[])[];
  /** Widest distance within one place. */
  readonly widest: number;
}

/** Places of points: a point goes to the nearest place within `within` of that place's first point, else makes its own. */
export function nodesOf(points: readonly { readonly x: number; readonly y: number }[], within: number): Nodes {
  const cells = new Map<string, number[]>();
  const members: number[][] = [];
  const nodeOf: number[] = [];
  let widest = 0;
  for (const [i, { x, y }] of points.entries()) {
    const [cx, cy] = [Math.floor(x / within), Math.floor(y / within)];
    let best = -1;
    let least = within;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const node of cells.get(`${cx + dx} ${cy + dy}`) ?? []) {
          const first = points[(members[node] as number[])[0] as number] as { x: number; y: number };
          const gap = Math.hypot(first.x - x, first.y - y);
          if (gap <= least) [best, least] = [node, gap];
        }
      }
    }
    if (best < 0) {
      best = members.length;
      members.push([]);
      const key = `${cx} ${cy}`;
      cells.set(key, [...(cells.get(key) ?? []), best]);
    } else widest = Math.max(widest, least);
    (members[best] as number[]).push(i);
    nodeOf.push(best);
  }
  return { nodeOf, members, widest };
}
