/** Stretches sorted into the squares of a grid, so that only what is near is looked at. mm. */
import { type Stretch, stretchLength } from '../geometry/contour-stretch.ts';
import { cos, sin } from '../units/trig.ts';

export interface StretchGrid {
  /**
   * Calls `visit` once with each stretch of the numbers `first` to `last` that comes within one square's side of stretch `i`; others
   * of these numbers may come too.
   */
  readonly near: (i: number, first: number, last: number, visit: (k: number) => void) => void;
  /** The same for a straight segment no longer than two squares' sides. */
  readonly along: (x1: number, y1: number, x2: number, y2: number, visit: (k: number) => void) => void;
  /** Places in all squares together: what it costs to walk through the grid once. */
  readonly entries: number;
}

/** Point of a stretch at the share 0 to 1 of its length. */
function pointAt(stretch: Stretch, share: number): readonly [number, number] {
  if (stretch.kind === 'line') {
    return [stretch.x1 + share * (stretch.x2 - stretch.x1), stretch.y1 + share * (stretch.y2 - stretch.y1)];
  }
  const angle = stretch.start + share * stretch.sweep;
  return [stretch.x + stretch.r * cos(angle), stretch.y + stretch.r * sin(angle)];
}

/** Where the first number from `first` on stands in a rising list. */
function placeOf(list: readonly number[], first: number): number {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list[middle] as number) < first) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * A grid of squares of side `side`, mm, above 0. A stretch stands in every square that it passes: it is walked in steps of half a
 * side, and no point of it is further than a quarter from a step.
 */
export function stretchGrid(stretches: readonly Stretch[], side: number): StretchGrid {
  const squares = new Map<number, number[]>();
  const own: number[][] = [];
  let entries = 0;
  const cell = (v: number): number => Math.floor(v / side);
  // Two whole numbers in one that a Map finds fast; drawings end at a million sides from the origin.
  const key = (cx: number, cy: number): number => cx * 67_108_864 + cy;
  const put = (i: number, x: number, y: number): void => {
    const quarter = side * 0.2501;
    for (let cx = cell(x - quarter); cx <= cell(x + quarter); cx++) {
      for (let cy = cell(y - quarter); cy <= cell(y + quarter); cy++) {
        const at = key(cx, cy);
        const list = squares.get(at);
        if (list === undefined) squares.set(at, [i]);
        else if (list.at(-1) === i) continue;
        else list.push(i);
        (own[i] as number[]).push(cx, cy);
        entries += 1;
      }
    }
  };
  for (const [i, stretch] of stretches.entries()) {
    own.push([]);
    const steps = Math.max(1, Math.ceil((2 * stretchLength(stretch)) / side));
    for (let s = 0; s <= steps; s++) put(i, ...pointAt(stretch, s / steps));
  }
  // One walk may go on within the other: each has marks of its own.
  const walk = () => {
    const stamp = new Int32Array(stretches.length);
    let round = 0;
    return {
      begin: () => {
        round += 1;
      },
      gather: (cx: number, cy: number, first: number, last: number, visit: (k: number) => void) => {
        const list = squares.get(key(cx, cy)) ?? [];
        for (let m = placeOf(list, first); m < list.length; m++) {
          const k = list[m] as number;
          if (k > last) break;
          if (stamp[k] === round) continue;
          stamp[k] = round;
          visit(k);
        }
      },
    };
  };
  const [around, across] = [walk(), walk()];
  return {
    entries,
    near(i, first, last, visit) {
      around.begin();
      const mine = own[i] as number[];
      for (let m = 0; m < mine.length; m += 2) {
        const [cx, cy] = [mine[m] as number, mine[m + 1] as number];
        for (let dx = -1; dx <= 1; dx++)
          for (let dy = -1; dy <= 1; dy++) around.gather(cx + dx, cy + dy, first, last, visit);
      }
    },
    along(x1, y1, x2, y2, visit) {
      across.begin();
      for (let cx = cell(Math.min(x1, x2)); cx <= cell(Math.max(x1, x2)); cx++) {
        for (let cy = cell(Math.min(y1, y2)); cy <= cell(Math.max(y1, y2)); cy++)
          across.gather(cx, cy, 0, Infinity, visit);
      }
    },
  };
}
