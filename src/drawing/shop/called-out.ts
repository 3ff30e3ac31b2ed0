/** Words led out of a round view: an arrow on what they speak of, a leader past the rim, the words where there is room. mm of paper. */
import type { Point, Shape } from '../../model/drawing.ts';
import { cos, sin } from '../../units/trig.ts';
import { arrowHead } from '../dimension.ts';
import { type Box, grown, overlap, textBox, textWidth } from '../text-size.ts';
import { boxOf, cap, line, rectangle, runsThrough, text } from './shapes.ts';

/** Words and the places that their arrow may stand at, each with the direction in which the leader leaves it, degrees. */
export interface Callout {
  readonly lines: readonly string[];
  /** A frame round a size that is theoretically exact. */
  readonly framed: boolean;
  readonly tips: readonly { readonly at: Point; readonly towards: number }[];
}

/** A hole that no leader may run through. */
export interface Blocked {
  readonly centre: Point;
  readonly r: number;
}

const arrow = 2.2;
const pitch = 4.1;
/** The level stretch before the words. */
const shelf = 2.4;
/** How far past the rim a leader may bend, mm. */
const bends = [3, 6, 9, 12, 16, 20, 25, 30, 36, 42] as const;
/** What a mm by which the view grows is worth, beside a mm of leader. */
const growthCosts = 1.2;

interface Tried {
  readonly cost: number;
  readonly tip: Point;
  readonly towards: number;
  readonly elbow: Point;
  readonly way: -1 | 1;
  readonly box: Box;
}

function roomOf({ lines, framed }: Callout): { wide: number; high: number } {
  const wide = Math.max(...lines.map((one) => textWidth(one, cap.size))) + (framed ? 2 : 0);
  return { wide, high: framed ? 4.4 : (lines.length - 1) * pitch + 1.4 * cap.size };
}

/** Least distance of a box from the axis. */
const nearest = ({ xMin, xMax, yMin, yMax }: Box): number =>
  Math.hypot(Math.max(xMin, 0, -xMax), Math.max(yMin, 0, -yMax));

/** Whether two stretches cross. */
function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** How near a stretch comes to a point. */
function nearTo(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / Math.max(1e-12, dx * dx + dy * dy)));
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}

function candidates(callout: Callout, edge: number, around: Box): Tried[] {
  const { wide, high } = roomOf(callout);
  const out: Tried[] = [];
  for (const { at, towards } of callout.tips) {
    const turn = (towards * Math.PI) / 180;
    const [c, s] = [cos(turn), sin(turn)];
    const along = at.x * c + at.y * s;
    const off2 = at.x * at.x + at.y * at.y - along * along;
    for (const past of bends) {
      const r2 = (edge + past) ** 2 - off2;
      if (r2 <= 0) continue;
      const length = Math.sqrt(r2) - along;
      if (length < 4) continue;
      const elbow = { x: at.x + length * c, y: at.y + length * s };
      // A leader that leaves steeply may turn to either side.
      const ways = (Math.abs(c) < 0.35 ? [1, -1] : [c > 0 ? 1 : -1]) as (1 | -1)[];
      for (const way of ways) {
        const start = elbow.x + way * (shelf + 0.6);
        const end = start + way * wide;
        const box = {
          xMin: Math.min(start, end),
          xMax: Math.max(start, end),
          yMin: elbow.y - high / 2,
          yMax: elbow.y + high / 2,
        };
        if (nearest(box) < edge + 1.6) continue;
        const wider = Math.max(0, around.xMin - box.xMin) + Math.max(0, box.xMax - around.xMax);
        const higher = Math.max(0, around.yMin - box.yMin) + Math.max(0, box.yMax - around.yMax);
        out.push({ cost: length + growthCosts * (wider + higher), tip: at, towards, elbow, way, box });
      }
    }
  }
  // Places that are equally good by symmetry stay in one order, whatever an engine does with a last bit.
  const rank = ({ cost }: Tried) => Math.round(1e4 * cost);
  return out.sort((a, b) => rank(a) - rank(b));
}

function drawn({ lines, framed }: Callout, { tip, towards, elbow, way, box }: Tried): Shape[] {
  const { y } = elbow;
  const middle = (lines.length - 1) / 2;
  return [
    arrowHead(tip, towards + 180, arrow),
    line(tip, elbow),
    line(elbow, { x: elbow.x + way * shelf, y }),
    ...lines.map((one, i) =>
      text(
        one,
        {
          x: way === 1 ? box.xMin + (framed ? 1 : 0) : box.xMax - (framed ? 1 : 0),
          y: y + (middle - i) * pitch - cap.size / 2,
        },
        cap.size,
        { align: way === 1 ? 'start' : 'end' },
      ),
    ),
    ...(framed ? [rectangle(box, 'dimension')] : []),
  ];
}

/**
 * Draws a callout at the nearest place that is free: its words touch nothing, its leader runs through no words, and where it can be through no hole
 * and no other leader.
 * @param edge radius of the rim about the origin
 * @returns nothing where no place is free
 */
export function calledOut(
  callout: Callout,
  edge: number,
  blocked: readonly Blocked[],
  taken: readonly Shape[],
): Shape[] {
  const words = taken.flatMap((shape) => (shape.kind === 'text' ? [grown(textBox(shape), 0.4)] : []));
  const straight = taken.flatMap((shape) =>
    shape.kind === 'line' && (shape.pen === 'dimension' || shape.pen === 'mark') ? [shape] : [],
  );
  // Strong short lines, such as the ends of a cutting line, want room round them.
  const marks = straight.filter(({ pen }) => pen === 'mark');
  const middleOf = ({ from, to }: { from: Point; to: Point }) => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  const isReadable = ({ tip, elbow, way, box }: Tried): boolean =>
    [line(tip, elbow), line(elbow, { x: elbow.x + way * shelf, y: elbow.y })].every(
      (one) => !words.some((room) => runsThrough(one, room)),
    ) &&
    !words.some((room) => overlap(room, box)) &&
    !taken.some((shape) => runsThrough(shape, grown(box, 0.6)));
  const isClear = ({ tip, elbow, way }: Tried): boolean => {
    const end = { x: elbow.x + way * shelf, y: elbow.y };
    return (
      !blocked.some(({ centre, r }) => nearTo(centre, tip, elbow) < r - 1e-6) &&
      !straight.some(({ from, to }) => crosses(tip, elbow, from, to) || crosses(elbow, end, from, to)) &&
      !marks.some((one) => nearTo(middleOf(one), tip, elbow) < 4 || nearTo(middleOf(one), elbow, end) < 4)
    );
  };
  const all = candidates(callout, edge, boxOf(taken));
  // A crowded face: better a leader over a hole or over another leader than a size that is lost.
  const found = all.find((one) => isClear(one) && isReadable(one)) ?? all.find(isReadable);
  return found ? drawn(callout, found) : [];
}
