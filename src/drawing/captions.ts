/**
 * Labels in a column beside a view, each with a leader to what it names.
 *
 * Every label brings several points that its leader may touch. The points are chosen one label at a time, again and again,
 * so that leaders stay short, do not cross each other and do not run over holes. The same input gives the same picture.
 */
import type { Point, Shape } from '../model/drawing.ts';
import { cos, sin } from '../units/trig.ts';
import { placeLabels } from './leaders.ts';
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

interface Leader {
  readonly caption: Caption;
  readonly from: Point;
  readonly to: Point;
}

/** Every label with its leader, from the top. */
function chosenLeaders(captions: readonly Caption[], column: CaptionColumn): Leader[] {
  const { size, side, x } = column;
  const labels = captions.map((caption) => ({ anchors: caption.anchors, height: heightOf(caption, size) }));
  const elbow = side === 'right' ? x - 1.4 * size : x + 1.4 * size;
  return placeLabels(labels, { ...column, elbow }).flatMap(({ index, from, to }) => {
    const caption = captions[index];
    return caption ? [{ caption, from, to }] : [];
  });
}

/** Draws the labels and their leaders. Labels never overlap each other. A caption without an anchor is a bug. */
export function drawCaptions(captions: readonly Caption[], column: CaptionColumn): Shape[] {
  if (captions.some((c) => c.anchors.length === 0)) throw new Error('a caption has no point to lead to');
  const { size, side, x } = column;
  return chosenLeaders(captions, column).flatMap(({ caption, from, to }): Shape[] => {
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

/** What a view is called and how its sizes are meant: centred lines under it, the first one bold. @param gap from `lowest`, in cap heights */
export const wordsUnder = (words: readonly string[], lowest: number, size: number, gap = 4.2): Shape[] =>
  words.map(
    (text, i): Shape => ({
      kind: 'text',
      at: { x: 0, y: lowest - (gap + 1.7 * i) * size },
      text,
      size: i === 0 ? 1.1 * size : 0.86 * size,
      align: 'middle',
      angle: 0,
      bold: i === 0,
    }),
  );

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
      out.push({ x: centre.x + r * cos(a), y: centre.y + r * sin(a) });
    }
  }
  return out;
}
