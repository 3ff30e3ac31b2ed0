/** Laying words round a circle where there is room for them. Degrees and mm. */

/** Width of a text at a cap height, mm. */
export type MeasureText = (text: string, height: number) => number;

/** A stretch of the circle, degrees, from < to. */
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

/** Gap between two texts on one arc, in cap heights. */
const between = 1.5;

/**
 * Lay texts round a circle, the first ones with priority: each takes the widest arc left and stands in the middle of it (or at its
 * start, leaving room for the next), smaller where it must. A text that does not fit even at the least height is left out, except the first,
 * which is always laid: what it says must be on the part.
 */
export function layText(
  texts: readonly string[],
  arcs: readonly FreeArc[],
  radius: number,
  height: number,
  leastHeight: number,
  measure: MeasureText,
): LaidText[] {
  const free = arcs.map((arc) => ({ ...arc }));
  const laid: LaidText[] = [];
  const wanted = texts.filter((text) => text.trim() !== '');
  wanted.forEach((text, i) => {
    const widest = free.reduce<{ from: number; to: number } | null>((a, b) => (a && a.to - a.from >= b.to - b.from ? a : b), null);
    if (!widest) return;
    const room = ((widest.to - widest.from) * Math.PI * radius) / 180;
    const full = measure(text, height);
    const fitted = full <= room ? height : (height * room) / full;
    if (fitted < leastHeight && i > 0) return;
    const size = Math.min(height, fitted);
    const width = (measure(text, size) / radius) * (180 / Math.PI);
    // With more to come on this arc, share it evenly: stand in the middle of the first share.
    const rest = wanted.slice(i + 1).reduce((sum, t) => sum + measure(t, height), 0);
    const sharing = free.length === 1 && rest > 0 && full + rest + between * height * (wanted.length - i) <= room;
    const share = sharing ? (full / (full + rest)) * (widest.to - widest.from) : widest.to - widest.from;
    const centre = widest.from + share / 2;
    laid.push({ text, angle: ((centre % 360) + 360) % 360, height: size });
    const gap = ((between * size) / radius) * (180 / Math.PI);
    const after = { from: Math.max(centre + width / 2 + gap, widest.from + (sharing ? share : 0)), to: widest.to };
    const before = { from: widest.from, to: sharing ? widest.from : centre - width / 2 - gap };
    free.splice(free.indexOf(widest), 1, ...[before, after].filter((arc) => arc.to > arc.from));
  });
  return laid;
}
