/**
 * Labels in a column beside a view, each with a leader to what it names.
 *
 * Every label brings several points that its leader may touch. The points are chosen one label at a time, again and again,
 * so that leaders stay short, do not cross each other and do not run over holes. The same input gives the same picture.
 */
import type { Point, Shape } from '../model/drawing.ts';
import type { Box } from './text-size.ts';

/** A label: its lines, the feature it names, and where its leader may end. */
export interface Caption {
  readonly lines: readonly string[];
  /** How many of the lines, from the first, are bold and full-sized; 1 when left out. */
  readonly strong?: number;
  readonly anchors: readonly Point[];
  readonly feature?: string;
}

/** A round place that a leader should not run over. */
export interface Obstacle {
  readonly centre: Point;
  readonly r: number;
}

/** A box, such as a text's or a screw's, as a row of circles across its shorter side. */
export function obstaclesOver({ xMin, yMin, xMax, yMax }: Box): Obstacle[] {
  const wide = xMax - xMin;
  const high = yMax - yMin;
  const r = Math.max(1e-3, Math.min(wide, high) / 2);
  const count = Math.max(1, Math.ceil(Math.max(wide, high) / (2 * r)));
  const place = (low: number, length: number, i: number): number =>
    length <= 2 * r ? low + length / 2 : low + r + ((length - 2 * r) * i) / (count - 1);
  return Array.from({ length: count }, (_, i) => ({
    centre: { x: place(xMin, wide, i), y: place(yMin, high, i) },
    r,
  }));
}

export interface CaptionColumn {
  /** Edge of the column that faces the view, mm. */
  readonly x: number;
  /** The column lies to the right or to the left of the view. */
  readonly side: 'right' | 'left';
  /** Height that the labels should keep to, mm; they spread beyond it evenly when they need more. */
  readonly yMin: number;
  readonly yMax: number;
  /** Cap height, mm. */
  readonly size: number;
  /** Circles that a leader should not run over. */
  readonly obstacles: readonly Obstacle[];
}

const linePitch = 1.65;

const heightOf = (caption: Caption, size: number): number => (caption.lines.length * linePitch + 1.1) * size;

/** Height that a column of labels needs, mm. */
export const columnHeight = (captions: readonly Caption[], size: number): number =>
  captions.reduce((sum, caption) => sum + heightOf(caption, size), 0);

/** Middles of the labels, in the order given, as near to the wished heights as the spacing allows. */
function spread(wished: readonly number[], heights: readonly number[], yMin: number, yMax: number): number[] {
  type Block = { sum: number; count: number; height: number; first: number };
  const blocks: Block[] = [];
  const middle = (b: Block): number => {
    const free = b.sum / b.count;
    const low = yMin + b.height / 2;
    const high = yMax - b.height / 2;
    return low > high ? (yMin + yMax) / 2 : Math.min(high, Math.max(low, free));
  };
  let below = 0;
  wished.forEach((y, i) => {
    const height = heights[i] as number;
    blocks.push({ sum: y, count: 1, height, first: i });
    for (;;) {
      const b = blocks.at(-1) as Block;
      const a = blocks.at(-2);
      if (a === undefined || middle(a) - a.height / 2 >= middle(b) + b.height / 2) break;
      blocks.splice(-2, 2, {
        sum: a.sum + b.sum,
        count: a.count + b.count,
        height: a.height + b.height,
        first: a.first,
      });
    }
    below += height;
  });
  const out: number[] = [];
  for (const b of blocks) {
    let top = middle(b) + b.height / 2;
    for (let i = b.first; i < b.first + b.count; i++) {
      const height = heights[i] as number;
      out.push(top - height / 2);
      top -= height;
    }
  }
  return below > 0 ? out : [];
}

/** Whether a point lies nearer than `reach` (mm) to the stretch from `a` to `b`. */
function within(reach: number, p: Point, a: Point, b: Point): boolean {
  if (p.y + reach < a.y && p.y + reach < b.y) return false;
  if (p.y - reach > a.y && p.y - reach > b.y) return false;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  const offX = p.x - a.x - t * dx;
  const offY = p.y - a.y - t * dy;
  return offX * offX + offY * offY < reach * reach;
}

const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const crosses = (a: Point, b: Point, c: Point, d: Point): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

interface Anchored {
  readonly caption: Caption;
  readonly from: Point;
}

interface Leader extends Anchored {
  readonly to: Point;
}

function leadersFor(captions: readonly Caption[], chosen: readonly number[], column: CaptionColumn): Leader[] {
  const anchored = captions.map((caption, i) => ({
    caption,
    from: caption.anchors[chosen[i] as number] as Point,
  }));
  anchored.sort((a, b) => b.from.y - a.from.y || a.from.x - b.from.x);
  // Highest first is a good order, not always the best one: neighbours whose leaders cross change places.
  for (let turn = 0; ; turn++) {
    const leaders = placed(anchored, column);
    const at = leaders.findIndex((a, i) => {
      const b = leaders[i + 1];
      return b !== undefined && crosses(a.from, a.to, b.from, b.to);
    });
    if (at < 0 || turn >= captions.length) return leaders;
    anchored.splice(at, 2, anchored[at + 1] as Anchored, anchored[at] as Anchored);
  }
}

/** Labels one under the other in the order given. */
function placed(anchored: readonly Anchored[], column: CaptionColumn): Leader[] {
  const heights = anchored.map((a) => heightOf(a.caption, column.size));
  const wished = anchored.map((a) => a.from.y);
  const ys = spread(wished, heights, column.yMin, column.yMax);
  const elbow = column.side === 'right' ? column.x - 1.4 * column.size : column.x + 1.4 * column.size;
  return anchored.map((a, i) => ({ ...a, to: { x: elbow, y: ys[i] as number } }));
}

/**
 * What a choice costs: long or steep leaders a little, runs over holes and over other labels' points more, crossings most.
 * Counting stops where `limit` is reached: such a choice is not taken anyway.
 */
function cost(leaders: readonly Leader[], column: CaptionColumn, limit: number): number {
  const { size, obstacles } = column;
  let sum = 0;
  for (const { from, to } of leaders) {
    const steep = Math.abs(to.y - from.y);
    sum += Math.hypot(to.x - from.x, steep) + 1.5 * steep;
  }
  for (const [i, { from, to }] of leaders.entries()) {
    for (const [k, other] of leaders.entries()) {
      if (sum >= limit) return sum;
      if (k !== i && within(0.7 * size, other.from, from, to)) sum += 25 * size;
      if (k <= i) continue;
      if (crosses(from, to, other.from, other.to)) sum += 200 * size;
      if (Math.abs(from.y - other.from.y) < 1.5 * size && within(1.5 * size, other.from, from, from)) sum += 40 * size;
    }
    for (const { centre, r } of obstacles) if (within(0.97 * r, centre, from, to)) sum += 25 * size;
  }
  return sum;
}

/** From how many first guesses the search sets out. */
const firstGuesses = 3;

/** The cheapest of several searches. The first guesses are fixed, so that the same input gives the same picture. */
function choose(captions: readonly Caption[], column: CaptionColumn): Leader[] {
  let best = { leaders: [] as Leader[], cost: Infinity };
  for (let guess = 0; guess < firstGuesses; guess++) {
    const first = captions.map((c, i) => (guess * (i + 1) * 5) % c.anchors.length);
    const found = improved(captions, first, column);
    if (found.cost < best.cost - 1e-9) best = found;
  }
  return best.leaders;
}

/** Points chosen one label at a time, until no single change makes the picture better. */
function improved(
  captions: readonly Caption[],
  first: readonly number[],
  column: CaptionColumn,
): { leaders: Leader[]; cost: number } {
  const chosen = [...first];
  let best = cost(leadersFor(captions, chosen, column), column, Infinity);
  for (let round = 0; round < 4; round++) {
    const before = best;
    captions.forEach((caption, i) => {
      let keep = chosen[i] as number;
      caption.anchors.forEach((_, k) => {
        chosen[i] = k;
        const c = cost(leadersFor(captions, chosen, column), column, best);
        if (c < best - 1e-9) {
          best = c;
          keep = k;
        }
      });
      chosen[i] = keep;
    });
    if (best === before) break;
  }
  return { leaders: leadersFor(captions, chosen, column), cost: best };
}

/** Draws the labels and their leaders. Labels never overlap each other. A caption without an anchor is a bug. */
export function drawCaptions(captions: readonly Caption[], column: CaptionColumn): Shape[] {
  if (captions.some((c) => c.anchors.length === 0)) throw new Error('a caption has no point to lead to');
  const { size, side, x } = column;
  return choose(captions, column).flatMap(({ caption, from, to }): Shape[] => {
    const named = caption.feature === undefined ? {} : { feature: caption.feature };
    const shoulder = { x: side === 'right' ? x - 0.4 * size : x + 0.4 * size, y: to.y };
    const first = to.y + ((caption.lines.length - 1) * linePitch * size) / 2 - size / 2;
    return [
      { kind: 'line', pen: 'dimension', from, to, ...named },
      { kind: 'line', pen: 'dimension', from: to, to: shoulder, ...named },
      { kind: 'circle', pen: 'dimension', fill: 'paper', centre: from, r: 0.22 * size, ...named },
      ...caption.lines.map(
        (text, i): Shape => ({
          kind: 'text',
          at: { x, y: first - i * linePitch * size },
          text,
          size: i < (caption.strong ?? 1) ? size : 0.86 * size,
          align: side === 'right' ? 'start' : 'end',
          angle: 0,
          bold: i < (caption.strong ?? 1),
          ...named,
        }),
      ),
    ];
  });
}

/** A label broken between words so that its lines are short: about `most` characters each. */
export function shortLines(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

/** Points on a circle within `reach` degrees of the direction `towards`, nearest to it first. */
export function anchorsOnCircle(centre: Point, r: number, towards: number, reach: number, step: number): Point[] {
  const out: Point[] = [];
  for (let off = step / 2; off <= reach; off += step) {
    for (const sign of [1, -1]) {
      const a = ((towards + sign * off) * Math.PI) / 180;
      out.push({ x: centre.x + r * Math.cos(a), y: centre.y + r * Math.sin(a) });
    }
  }
  return out;
}
