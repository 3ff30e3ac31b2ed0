/** LWPOLYLINE, and POLYLINE with the vertices that follow it. */
import { type Stretch, stretchBetween } from '../geometry/contour.ts';
import type { DxfGroups } from '../measure/dxf-groups.ts';
import { badNumber, type Corner, type Decoded, nothingDrawn } from './drawn.ts';
import { numberOf, parseNumber, type RawEntity } from './read-dxf.ts';

/** Beyond this bulge an arc is all but a full turn: no drawing program makes one. */
const mostBulge = 1e4;

export function decodeLightPolyline(groups: DxfGroups, entity: RawEntity): Decoded {
  const { codes, values } = groups;
  const flags = numberOf(groups, entity, 70, 0);
  const height = numberOf(groups, entity, 38, 0);
  const corners: { x: number; y: number; bulge: number }[] = [];
  let isWide = false;
  for (let i = entity.from + 1; i < entity.to; i++) {
    const code = codes[i] as number;
    if (code >= 1000) break;
    const last = corners.at(-1);
    if (code === 10) corners.push({ x: parseNumber(values[i] as string), y: Number.NaN, bulge: 0 });
    else if (code === 20 && last) last.y = parseNumber(values[i] as string);
    else if (code === 42 && last) last.bulge = parseNumber(values[i] as string);
    else if (code === 40 || code === 41 || code === 43) isWide ||= parseNumber(values[i] as string) > 0;
  }
  return polyline(corners, (flags & 1) !== 0, [height], isWide);
}

/** A polyline of the older kind. Meshes are no outline; control points of a fitted curve are passed over, its points are kept. */
export function decodePolyline(groups: DxfGroups, head: RawEntity, vertices: readonly RawEntity[]): Decoded {
  const flags = numberOf(groups, head, 70, 0);
  if ((flags & (16 | 64)) !== 0) return { ...nothingDrawn, faults: [{ code: 'dxf-solids', note: 'a mesh' }] };
  const isSpace = (flags & 8) !== 0;
  const corners: Corner[] = [];
  const heights: number[] = isSpace ? [] : [numberOf(groups, head, 30, 0)];
  let isWide = [40, 41].some((code) => numberOf(groups, head, code, 0) > 0);
  for (const vertex of vertices) {
    if ((numberOf(groups, vertex, 70, 0) & 16) !== 0) continue;
    const number = (code: number, missing: number) => numberOf(groups, vertex, code, missing);
    corners.push({ x: number(10, Number.NaN), y: number(20, Number.NaN), bulge: isSpace ? 0 : number(42, 0) });
    if (isSpace) heights.push(number(30, 0));
    isWide ||= number(40, 0) > 0 || number(41, 0) > 0;
  }
  return { ...polyline(corners, (flags & 1) !== 0, heights, isWide), isWorld: isSpace };
}

function polyline(corners: readonly Corner[], isClosed: boolean, heights: readonly number[], isWide: boolean): Decoded {
  const bad = corners.findIndex(({ x, y, bulge }) => ![x, y, bulge].every(Number.isFinite));
  if (bad >= 0 || !heights.every(Number.isFinite)) return badNumber(bad < 0 ? 'its height' : `corner ${bad + 1}`);
  const faults: {
    code: 'dxf-zero-length' | 'dxf-bad-bulge' | 'dxf-wide-lines';
    note: string;
    x?: number;
    y?: number;
  }[] = [];
  if (isWide) faults.push({ code: 'dxf-wide-lines', note: '' });
  const first = corners[0];
  if (first === undefined || corners.length < 2) {
    faults.push({
      code: 'dxf-zero-length',
      note: 'fewer than two corners',
      ...(first ? { x: first.x, y: first.y } : {}),
    });
    return { runs: [], heights, faults, isWorld: false };
  }
  const stretches: Stretch[] = [];
  const count = isClosed ? corners.length : corners.length - 1;
  for (let i = 0; i < count; i++) {
    const from = corners[i] as Corner;
    const to = corners[(i + 1) % corners.length] as Corner;
    if (from.x !== to.x || from.y !== to.y) {
      if (Math.abs(from.bulge) > mostBulge)
        faults.push({ code: 'dxf-bad-bulge', note: `bulge ${from.bulge}`, x: from.x, y: from.y });
      else stretches.push(stretchBetween(from.x, from.y, to.x, to.y, from.bulge));
      continue;
    }
    if (from.bulge !== 0)
      faults.push({ code: 'dxf-bad-bulge', note: `bulge ${from.bulge} over no distance`, x: from.x, y: from.y });
    // A closed polyline may repeat its first corner at its end: many machines want it so.
    else if (i !== corners.length - 1)
      faults.push({ code: 'dxf-zero-length', note: 'a corner twice in a row', x: from.x, y: from.y });
  }
  return { runs: stretches.length === 0 ? [] : [{ stretches, isClosed }], heights, faults, isWorld: false };
}
