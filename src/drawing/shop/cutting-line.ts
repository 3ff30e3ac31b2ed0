/**
 * Where the section is cut: from the rim to the axis and out again, through one hole of every set that finds room. Holes of one half
 * that stand at different angles are met by an offset line: it runs along an arc between them (ISO 128-44, several planes).
 */
import type { Point, Shape } from '../../model/drawing.ts';
import type { Drilling } from '../../model/part.ts';
import { atan2, cos, sin } from '../../units/trig.ts';
import { arrowHead } from '../dimension.ts';
import { polar } from '../face-scene.ts';
import { line, text } from './shapes.ts';
import type { AdapterToDraw, SetToDraw } from './to-draw.ts';

/** A stretch of the cut: between two distances from the axis it stands at one angle. The last one goes on for ever. */
export interface CutZone {
  readonly angle: number;
  readonly from: number;
  readonly to: number;
  /** The hole it goes through; null where there is none. */
  readonly set: SetToDraw | null;
  readonly drilling: Drilling | null;
}

/** The cut: its upper and its lower half, from the axis outwards. */
export interface CuttingLine {
  readonly upper: readonly CutZone[];
  readonly lower: readonly CutZone[];
}

const turnOf = ({ x, y }: Point): number => ((atan2(y, x) * 180) / Math.PI + 360) % 360;
const apart = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

/** Least free metal between two holes that one half may show, mm. */
const least = 0.3;

interface Shown {
  readonly set: SetToDraw;
  readonly drilling: Drilling;
  readonly angle: number;
  readonly inner: number;
  readonly outer: number;
}

/** A cut that grazes another hole is worth this turn away from the wanted direction, degrees. */
const grazing = 50;

function holeNear(drawn: AdapterToDraw, set: SetToDraw, wanted: number): Shown | null {
  const { drillings } = drawn.adapter;
  const widest = ({ profile }: Drilling) => Math.max(...profile.map(({ r }) => r));
  const grazes = (angle: number): boolean =>
    drillings.some((d) => {
      const turn = ((turnOf(d) - angle) * Math.PI) / 180;
      const off = Math.hypot(d.x, d.y);
      const beside = Math.abs(off * sin(turn));
      return cos(turn) > 0 && beside > 1e-3 && beside < widest(d);
    });
  const cost = (angle: number) => apart(angle, wanted) + (grazes(angle) ? grazing : 0);
  const holes = drillings.filter(({ feature }) => feature === set.group);
  const sorted = [...holes].sort((a, b) => cost(turnOf(a)) - cost(turnOf(b)) || turnOf(a) - turnOf(b));
  const drilling = sorted[0];
  if (!drilling) return null;
  const off = Math.hypot(drilling.x, drilling.y);
  const wide = widest(drilling);
  return { set, drilling, angle: turnOf(drilling), inner: off - wide, outer: off + wide };
}

function zonesOf(shown: readonly Shown[], target: number): CutZone[] {
  if (shown.length === 0) return [{ angle: target, from: 0, to: Infinity, set: null, drilling: null }];
  const sorted = [...shown].sort((a, b) => a.inner - b.inner);
  return sorted.map(({ set, drilling, angle, inner, outer }, i) => {
    const [before, after] = [sorted[i - 1], sorted[i + 1]];
    return {
      angle,
      set,
      drilling,
      from: before ? (before.outer + inner) / 2 : 0,
      to: after ? (outer + after.inner) / 2 : Infinity,
    };
  });
}

/** The cut that shows most sets: driving holes in the upper half, driven ones in the lower, the others where there is room. */
export function cuttingLine(drawn: AdapterToDraw): CuttingLine {
  const targets = { upper: 90, lower: 270 } as const;
  const halves: Record<'upper' | 'lower', Shown[]> = { upper: [], lower: [] };
  const rank = { driving: 0, driven: 1, wheel: 2 } as const;
  const sets = [...drawn.sets].sort(
    (a, b) => rank[a.side] - rank[b.side] || Number(a.limits !== null) - Number(b.limits !== null),
  );
  for (const set of sets) {
    const order = set.side === 'driven' ? (['lower', 'upper'] as const) : (['upper', 'lower'] as const);
    for (const half of order) {
      // A second set of a half is met near the first, so that the jog is short.
      const shown = holeNear(drawn, set, halves[half][0]?.angle ?? targets[half]);
      if (!shown || shown.inner <= 0) continue;
      if (halves[half].some(({ inner, outer }) => shown.inner < outer + least && inner < shown.outer + least)) continue;
      halves[half].push(shown);
      break;
    }
  }
  return { upper: zonesOf(halves.upper, targets.upper), lower: zonesOf(halves.lower, targets.lower) };
}

/** How far the ends of the line stand out of the part, mm of paper. */
const reach = { from: 1.5, to: 6 };

/** The line on the face seen from the driven side, in mm of paper about the axis, with its letter and the way of looking. */
export function cuttingLineOn({ upper, lower }: CuttingLine, letter: string, scale: number, rim: number): Shape[] {
  const half = (zones: readonly CutZone[], way: 1 | -1): Shape[] => {
    const out: Shape[] = [];
    zones.forEach(({ angle, from, to }, i) => {
      const end = to === Infinity ? rim * scale + reach.to : to * scale;
      out.push(line(polar(from * scale, angle), polar(end, angle), 'centre'));
      const next = zones[i + 1];
      if (next && apart(next.angle, angle) > 1e-6) {
        const ahead = (next.angle - angle + 360) % 360 < 180;
        const [start, stop] = ahead ? [angle, next.angle] : [next.angle, angle];
        out.push({ kind: 'arc', pen: 'centre', centre: { x: 0, y: 0 }, r: to * scale, start, end: stop });
      }
    });
    const angle = zones.at(-1)?.angle ?? 90;
    const [inner, outer] = [polar(rim * scale + reach.from, angle), polar(rim * scale + reach.to, angle)];
    const looking = angle + way * 90;
    const back = polar(7, looking + 180);
    const tail = { x: outer.x + back.x, y: outer.y + back.y };
    const beyond = polar(3.9, looking + 180);
    out.push(
      line(inner, outer, 'mark'),
      line(tail, outer),
      arrowHead(outer, looking, 2.4),
      text(letter, { x: tail.x + beyond.x, y: tail.y + beyond.y - 1.75 }, 3.5, { align: 'middle', bold: true }),
    );
    return out;
  };
  // The eye stands on the left of the upper half and looks to the right, seen from the driven side.
  return [...half(upper, -1), ...half(lower, 1)];
}
