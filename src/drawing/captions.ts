/**
 * Labels in a column beside a view, each with a leader to what it names.
 *
 * Every label brings several points that its leader may touch. The points are chosen one label at a time, again and again,
 * so that leaders stay short, do not cross each other and do not run over holes. The same input gives the same picture.
 */
import type { Point, Shape } from '../model/drawing.ts';

/** A label: its lines, the feature it names, and where its leader may end. */
export interface Caption {
  readonly lines: readonly string[];
  /** How many of the lines, from the first, are bold and full-sized; 1 when left out. */
  readonly strong?: number;
  readonly anchors: readonly Point[];
  readonly feature?: string;
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
  readonly obstacles: readonly { readonly centre: Point; readonly r: number }[];
}

const linePitch = 1.65;

const heightOf = (caption: Caption, size: number): number => (caption.lines.length * linePitch + 1.1) * size;

/** Height that a column of labels needs, mm. */
export const columnHeight = (captions: readonly Caption[], size: number): number =>
  captions.reduce((sum, caption) => sum + heightOf(caption, size), 0);

/** Middles of the labels, in the order given, as near to the wished heights as the spacing allows. `wished` falls. */
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

/** Distance from a point to a stretch, mm. */
function distance(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const crosses = (a: Point, b: Point, c: Point, d: Point): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

interface Leader {
  readonly caption: Caption;
  readonly from: Point;
  readonly to: Point;
}

function leadersFor(captions: readonly Caption[], chosen: readonly number[], column: CaptionColumn): Leader[] {
  const anchored = captions.map((caption, i) => ({
    caption,
    from: caption.anchors[chosen[i] as number] as Point,
  }));
  anchored.sort((a, b) => b.from.y - a.from.y || a.from.x - b.from.x);
  const heights = anchored.map((a) => heightOf(a.caption, column.size));
  const ys = spread(
    anchored.map((a) => a.from.y),
    heights,
    column.yMin,
    column.yMax,
  );
  const elbow = column.side === 'right' ? column.x - 1.4 * column.size : column.x + 1.4 * column.size;
  return anchored.map((a, i) => ({ ...a, to: { x: elbow, y: ys[i] as number } }));
}

/** What a choice costs: long or steep leaders a little, runs over holes more, crossings most. */
function cost(leaders: readonly Leader[], column: CaptionColumn): number {
  let sum = 0;
  leaders.forEach((leader, i) => {
    sum +=
      Math.hypot(leader.to.x - leader.from.x, leader.to.y - leader.from.y) +
      1.5 * Math.abs(leader.to.y - leader.from.y);
    for (const { centre, r } of column.obstacles) {
      if (distance(centre, leader.from, leader.to) < 0.97 * r) sum += 25 * column.size;
    }
    for (const other of leaders.slice(i + 1)) {
      if (crosses(leader.from, leader.to, other.from, other.to)) sum += 200 * column.size;
      if (Math.hypot(leader.from.x - other.from.x, leader.from.y - other.from.y) < 1.5 * column.size)
        sum += 40 * column.size;
    }
  });
  return sum;
}

function choose(captions: readonly Caption[], column: CaptionColumn): Leader[] {
  const chosen = captions.map(() => 0);
  let best = cost(leadersFor(captions, chosen, column), column);
  for (let round = 0; round < 4; round++) {
    const before = best;
    captions.forEach((caption, i) => {
      let keep = chosen[i] as number;
      caption.anchors.forEach((_, k) => {
        chosen[i] = k;
        const c = cost(leadersFor(captions, chosen, column), column);
        if (c < best - 1e-9) {
          best = c;
          keep = k;
        }
      });
      chosen[i] = keep;
    });
    if (best === before) break;
  }
  return leadersFor(captions, chosen, column);
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
