/** LINE, ARC and CIRCLE. */
import { type ArcStretch, stretchBetween } from '../geometry/contour.ts';
import type { DxfGroups } from '../measure/dxf-groups.ts';
import { cos, sin } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import { badNumber, type Decoded } from './drawn.ts';
import { numberOf, type RawEntity } from './read-dxf.ts';

const isBad = (...numbers: readonly number[]): boolean => !numbers.every(Number.isFinite);
const wanted = Number.NaN;

export function decodeLine(groups: DxfGroups, entity: RawEntity): Decoded {
  const number = (code: number, missing = wanted) => numberOf(groups, entity, code, missing);
  const [x1, y1, x2, y2] = [number(10), number(20), number(11), number(21)];
  const heights = [number(30, 0), number(31, 0)];
  if (isBad(x1, y1, x2, y2, ...heights)) return badNumber('an end of the line');
  const isEmpty = x1 === x2 && y1 === y2;
  const isUpright = isEmpty && heights[0] !== heights[1];
  return {
    runs: isEmpty ? [] : [{ stretches: [stretchBetween(x1, y1, x2, y2, 0)], isClosed: false }],
    heights,
    faults: isEmpty && !isUpright ? [{ code: 'dxf-zero-length', note: '', x: x1, y: y1 }] : [],
    isWorld: true,
  };
}

/** An arc runs counter-clockwise from group 50 to group 51, degrees. */
export function decodeArc(groups: DxfGroups, entity: RawEntity): Decoded {
  const number = (code: number, missing = wanted) => numberOf(groups, entity, code, missing);
  const isCircle = entity.type === 'CIRCLE';
  const [x, y, z, r] = [number(10), number(20), number(30, 0), number(40)];
  const [from, to] = isCircle ? [0, 360] : [number(50), number(51)];
  if (isBad(x, y, z, r, from, to)) return badNumber(isCircle ? 'centre or radius' : 'centre, radius or angles');
  if (r < 0) return badNumber(`radius ${r}`);
  const turn = withinTurn(to - from);
  const isFull = isCircle || (turn < 1e-9 && to !== from);
  if (r === 0 || (turn < 1e-9 && !isFull)) {
    return { runs: [], heights: [z], faults: [{ code: 'dxf-zero-length', note: '', x, y }], isWorld: false };
  }
  return {
    runs: [{ stretches: [arc(x, y, r, from, isFull ? 360 : turn)], isClosed: isFull }],
    heights: [z],
    faults: [],
    isWorld: false,
  };
}

function arc(x: number, y: number, r: number, from: number, turn: number): ArcStretch {
  const start = (from * Math.PI) / 180;
  const sweep = (turn * Math.PI) / 180;
  const end = start + sweep;
  const x1 = x + r * cos(start);
  const y1 = y + r * sin(start);
  const isFull = turn === 360;
  return {
    kind: 'arc',
    x1,
    y1,
    x2: isFull ? x1 : x + r * cos(end),
    y2: isFull ? y1 : y + r * sin(end),
    x,
    y,
    r,
    start,
    sweep,
  };
}
