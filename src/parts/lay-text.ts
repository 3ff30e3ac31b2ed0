/** Laying words round a circle where there is room for them. Degrees and mm. */
import { withinTurn } from '../units/turn.ts';

/** Width of a text at a cap height, mm. */
export type MeasureText = (text: string, height: number) => number;

/** A stretch of the circle, degrees, from < to; no longer than a full turn. */
export interface FreeArc {
  readonly from: number;
  readonly to: number;
}

/** A text with its place. */
export interface LaidText {
  readonly text: string;
  /** Middle of the text, degrees in 0 to 360. */
  readonly angle: number;
  readonly height: number;
}

/** Least gap between two texts, in cap heights. */
const between = 1.5;
/** Cap heights are tried in steps of this, mm. */
const step = 0.25;
/** A text is rather left out than all letters made smaller than this share of the height they could have. */
const comfortable = 0.6;

/** What is left of a full turn between stretches that must stay free of letters, degrees. The full turn when nothing is blocked. */
export function freeArcs(blocked: readonly FreeArc[]): FreeArc[] {
  const turned = blocked.flatMap(({ from, to }) => {
    const start = withinTurn(from);
    return [-360, 0].map((turn) => ({ from: start + turn, to: start + turn + (to - from) }));
  });
  let free: FreeArc[] = [{ from: 0, to: 360 }];
  for (const { from, to } of turned) {
    free = free
      .flatMap((arc) => [
        { from: arc.from, to: Math.min(arc.to, from) },
        { from: Math.max(arc.from, to), to: arc.to },
      ])
      .filter((arc) => arc.to - arc.from > 1e-9);
  }
  // The circle is cut at 0 only where something is blocked there.
  const [first, last] = [free[0], free[free.length - 1]];
  if (first && last && first !== last && first.from === 0 && last.to === 360) {
    return [...free.slice(1, -1), { from: last.from, to: first.to + 360 }];
  }
  return free;
}

/** Lays all texts at one height, or null when they do not fit. Each takes the arc with most room left; arcs are shared evenly. */
function layAll(
  texts: readonly string[],
  arcs: readonly FreeArc[],
  radius: number,
  height: number,
  measure: MeasureText,
): LaidText[] | null {
  const degrees = (length: number) => (length / radius) * (180 / Math.PI);
  const gap = degrees(between * height);
  const shares = arcs.map((arc) => ({ arc, room: arc.to - arc.from, texts: [] as { text: string; width: number }[] }));
  for (const text of texts) {
    const width = degrees(measure(text, height));
    const roomiest = shares.reduce<(typeof shares)[number] | null>((a, b) => (a && a.room >= b.room ? a : b), null);
    if (!roomiest) return null;
    roomiest.texts.push({ text, width });
    roomiest.room -= width + gap;
    // An arc with ends needs one gap fewer than it has texts.
    const ends = roomiest.arc.to - roomiest.arc.from < 360 ? gap : 0;
    if (roomiest.room + ends < -1e-9) return null;
  }
  return shares.flatMap(({ arc, texts: here }) => {
    const spare = arc.to - arc.from - here.reduce((sum, { width }) => sum + width, 0);
    // Half a gap at each end of the arc, less where whole gaps between the texts leave no room for that.
    const apart = Math.max(spare / here.length, Math.min(gap, spare / Math.max(1, here.length - 1)));
    let at = arc.from + (spare - (here.length - 1) * apart) / 2;
    return here.map(({ text, width }) => {
      const angle = at + width / 2;
      at += width + apart;
      return { text, angle: withinTurn(angle), height };
    });
  });
}

/**
 * Lay texts round a circle, the first ones with priority, all at one height: as tall as they can be, up to `height`. Texts are left out
 * from the last on rather than made too small or run into each other, except the first, which is always laid, smaller where it must:
 * what it says must be on the part.
 */
export function layText(
  texts: readonly string[],
  arcs: readonly FreeArc[],
  radius: number,
  height: number,
  leastHeight: number,
  measure: MeasureText,
): LaidText[] {
  const wanted = texts.filter((text) => text.trim() !== '');
  const [first] = wanted;
  if (first === undefined || arcs.length === 0) return [];
  const tallest = (count: number, least: number): LaidText[] | null => {
    for (let at = height; at >= least - 1e-9; at = at > least && at - step < least ? least : at - step) {
      const laid = layAll(wanted.slice(0, count), arcs, radius, at, measure);
      if (laid) return laid;
    }
    return null;
  };
  for (const least of [Math.max(leastHeight, comfortable * height), leastHeight]) {
    for (let count = wanted.length; count > 0; count--) {
      const laid = tallest(count, least);
      if (laid) return laid;
    }
  }
  const widest = arcs.reduce((a, b) => (a.to - a.from >= b.to - b.from ? a : b));
  const room = ((widest.to - widest.from) * Math.PI * radius) / 180;
  const middle = (widest.from + widest.to) / 2;
  return [{ text: first, angle: withinTurn(middle), height: (leastHeight * room) / measure(first, leastHeight) }];
}
