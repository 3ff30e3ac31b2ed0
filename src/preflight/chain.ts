/** Joins runs of lines and arcs end to end into closed contours, and says where that fails. mm. */
import { type Stretch, stretchBetween } from '../geometry/contour.ts';
import type { Place } from '../model/preflight.ts';
import type { Contour, ContourVertex } from '../model/sheet.ts';
import { tan } from '../units/trig.ts';
import type { Piece } from './draw.ts';
import type { FaultLog } from './fault-log.ts';
import { joinWithin } from './limits.ts';
import { type End, nodesOf } from './nodes.ts';
import { noteEnds } from './open-ends.ts';

/** A closed contour with the place of the entity that each of its stretches comes from. */
export interface Loop {
  readonly contour: Contour;
  readonly stretches: readonly Stretch[];
  readonly places: readonly Place[];
}

/** Stretches end to end, each with the place of its entity. */
export interface Run {
  readonly stretches: readonly Stretch[];
  readonly places: readonly Place[];
}

export interface Chains {
  readonly loops: readonly Loop[];
  /** Runs that are in no contour. */
  readonly loose: readonly Run[];
  /** Widest gap that was closed by joining, mm. */
  readonly widestJoin: number;
}

/** Contours of the pieces. `quiet`: stretches about whose ends nothing more is to be said. */
export function chainsOf(pieces: readonly Piece[], quiet: ReadonlySet<Stretch>, unit: number, log: FaultLog): Chains {
  const loops = pieces.filter(({ isClosed }) => isClosed).map((piece) => loopOf([piece], [false]));
  const open = pieces.filter(({ isClosed }) => !isClosed);
  const ends: End[] = open.flatMap((piece, i) => {
    const first = piece.stretches[0] as Stretch;
    const last = piece.stretches.at(-1) as Stretch;
    return [
      { piece: i, end: 0 as const, x: first.x1, y: first.y1 },
      { piece: i, end: 1 as const, x: last.x2, y: last.y2 },
    ];
  });
  const { nodeOf, members, widest } = nodesOf(ends, joinWithin);
  const used = new Set<number>();
  const loose: Run[] = [];
  for (const [i] of open.entries()) {
    if (used.has(i)) continue;
    const chain = follow(i, ends, nodeOf, members);
    for (const { piece } of chain.links) used.add(piece);
    const list = chain.links.map(({ piece }) => open[piece] as Piece);
    const isTurned = chain.links.map((link) => link.isTurned);
    if (chain.isClosed) loops.push(loopOf(list, isTurned));
    else loose.push(runOf(list, isTurned));
  }
  noteEnds(open, ends, nodeOf, members, quiet, unit, log);
  return { loops: loops.filter((loop) => loop.stretches.length > 0), loose, widestJoin: widest };
}

interface Link {
  readonly piece: number;
  readonly isTurned: boolean;
}

/** The chain through a piece, over places where exactly two ends meet. */
function follow(
  start: number,
  ends: readonly End[],
  nodeOf: readonly number[],
  members: readonly (readonly number[])[],
): { links: Link[]; isClosed: boolean } {
  const links: Link[] = [{ piece: start, isTurned: false }];
  /** The other end at the place where this end is, or null where it is alone or one of many. */
  const across = (end: number): number | null => {
    const there = members[nodeOf[end] as number] as readonly number[];
    return there.length === 2 ? ((there[0] === end ? there[1] : there[0]) as number) : null;
  };
  for (let at = across(2 * start + 1); at !== null; at = across(at ^ 1)) {
    const piece = (ends[at] as End).piece;
    if (piece === start) return { links, isClosed: at === 2 * start };
    links.push({ piece, isTurned: (at & 1) === 1 });
  }
  const before: Link[] = [];
  for (let at = across(2 * start); at !== null; at = across(at ^ 1)) {
    const piece = (ends[at] as End).piece;
    before.push({ piece, isTurned: (at & 1) === 0 });
  }
  return { links: [...before.reverse(), ...links], isClosed: false };
}

function turned(stretch: Stretch): Stretch {
  const { x1, y1, x2, y2 } = stretch;
  const ends = { x1: x2, y1: y2, x2: x1, y2: y1 };
  if (stretch.kind === 'line') return { kind: 'line', ...ends };
  return { ...stretch, ...ends, start: stretch.start + stretch.sweep, sweep: -stretch.sweep };
}

/** The stretches of pieces in order, those of turned pieces the other way round. */
function runOf(pieces: readonly Piece[], isTurned: readonly boolean[]): Run {
  const places: Place[] = [];
  const stretches: Stretch[] = [];
  for (const [i, piece] of pieces.entries()) {
    const list = isTurned[i] ? [...piece.stretches].reverse().map(turned) : piece.stretches;
    for (const stretch of list) {
      stretches.push(stretch);
      places.push(piece.place);
    }
  }
  return { stretches, places };
}

/** A contour of pieces in order. Each stretch is led to the start of the next, so that joins leave no gap. */
function loopOf(pieces: readonly Piece[], isTurned: readonly boolean[]): Loop {
  const { stretches: run, places } = runOf(pieces, isTurned);
  const [only] = run;
  if (run.length === 1 && only?.kind === 'arc' && Math.abs(only.sweep) > 2 * Math.PI - 1e-9) {
    const contour: Contour = { kind: 'circle', feature: 'contour', x: only.x, y: only.y, r: only.r };
    return { contour, stretches: run, places };
  }
  const vertices: ContourVertex[] = [];
  const stretches: Stretch[] = [];
  const kept: Place[] = [];
  for (const [i, stretch] of run.entries()) {
    const next = run[(i + 1) % run.length] as Stretch;
    if (stretch.x1 === next.x1 && stretch.y1 === next.y1) continue;
    const bulge = stretch.kind === 'arc' ? tan(stretch.sweep / 4) : 0;
    vertices.push({ x: stretch.x1, y: stretch.y1, bulge });
    stretches.push(stretchBetween(stretch.x1, stretch.y1, next.x1, next.y1, bulge));
    kept.push(places[i] as Place);
  }
  return { contour: { kind: 'path', feature: 'contour', vertices }, stretches, places: kept };
}
