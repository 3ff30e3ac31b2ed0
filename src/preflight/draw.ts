/** From entities to lines and arcs on the sheet, in mm: blocks opened, hidden things left out, every oddity noted. */
import type { Stretch } from '../geometry/contour.ts';
import type { Place } from '../model/preflight.ts';
import { decodeEllipse, decodeSpline } from './decode-curves.ts';
import { decodeLightPolyline, decodePolyline } from './decode-polyline.ts';
import { decodeArc, decodeLine } from './decode-simple.ts';
import type { Decoded } from './drawn.ts';
import { faultOfKind, isMarkLayer, neverPlotted, silentKinds } from './entity-kinds.ts';
import type { FaultLog } from './fault-log.ts';
import { type Inserted, insertsOf } from './insert.ts';
import { curveWithin, mostEntities, mostStretches } from './limits.ts';
import { after, fromBehind, keepsCircles, movedPoint, movedStretches, type PlaneMap, unmoved } from './plane.ts';
import { type DxfDocument, numberOf, placeOf, type RawEntity, textOf } from './read-dxf.ts';

/** One run of cuts, in mm. */
export interface Piece {
  readonly stretches: readonly Stretch[];
  readonly isClosed: boolean;
  /** Where it stands in the file; x and y not filled in. */
  readonly place: Place;
}

export interface Drawing {
  readonly pieces: readonly Piece[];
  /** Entities of the drawing itself, and of the blocks that were opened. */
  readonly entities: number;
  readonly blocksOpened: number;
  /** Lines on layers for bends, marks and engravings: not cut through. */
  readonly marks: number;
  readonly kinds: ReadonlyMap<string, number>;
}

interface Walk {
  readonly document: DxfDocument;
  readonly log: FaultLog;
  /** mm in one unit of the drawing. */
  readonly unit: number;
  readonly pieces: Piece[];
  readonly kinds: Map<string, number>;
  entities: number;
  /** Everything that was looked at, hidden entities and copies of blocks too: bounds the work. */
  looked: number;
  stretches: number;
  blocksOpened: number;
  marks: number;
  level: number | null;
}

/** Draws a document. `unit` is the length of the drawing's unit, mm. */
export function drawDocument(document: DxfDocument, unit: number, log: FaultLog): Drawing {
  const walk: Walk = {
    document,
    log,
    unit,
    pieces: [],
    kinds: new Map(),
    entities: 0,
    looked: 0,
    stretches: 0,
    blocksOpened: 0,
    marks: 0,
    level: null,
  };
  drawList(walk, document.entities, { map: unmoved, height: 0, layer: '', top: null, blocks: [] });
  const { pieces, kinds, entities, blocksOpened, marks } = walk;
  return { pieces, kinds, entities, blocksOpened, marks };
}

/** Draws a list of entities; those of a polyline or of a block's attributes are taken together with their head. */
function drawList(walk: Walk, list: readonly RawEntity[], inside: Inserted): void {
  for (let i = 0; i < list.length; i++) {
    const entity = list[i] as RawEntity;
    const followers: RawEntity[] = [];
    const follower = entity.type === 'POLYLINE' ? 'VERTEX' : entity.type === 'INSERT' ? 'ATTRIB' : '';
    while (follower !== '' && list[i + 1]?.type === follower) followers.push(list[++i] as RawEntity);
    walk.looked += 1;
    if (walk.looked >= mostEntities || walk.stretches >= mostStretches) {
      if (!walk.log.has('dxf-block-loop'))
        walk.log.add('dxf-block-loop', here(walk, entity, inside), 'too many entities');
      return;
    }
    drawEntity(walk, entity, followers, inside);
  }
}

/** Place of an entity; one within a block is told by the INSERT that put it there, and its own line of the file. */
function here(walk: Walk, entity: RawEntity, inside: Inserted, at?: { readonly x: number; readonly y: number }): Place {
  const place = placeOf(walk.document.groups, entity, at);
  return inside.top === null ? place : { ...place, entity: inside.top.number, type: `${place.type} in a block` };
}

function drawEntity(walk: Walk, entity: RawEntity, followers: readonly RawEntity[], inside: Inserted): void {
  const { groups } = walk.document;
  const { log } = walk;
  if (silentKinds.has(entity.type)) return;
  if (numberOf(groups, entity, 67, 0) === 1) {
    log.add('dxf-paper-space', here(walk, entity, inside));
    return;
  }
  const own = textOf(groups, entity, 8);
  const layer = own === '0' && inside.layer !== '' ? inside.layer : own;
  const isHidden = walk.document.hidden.has(layer.toLowerCase()) || layer.toLowerCase() === neverPlotted;
  if (isHidden || numberOf(groups, entity, 60, 0) === 1) {
    log.add('dxf-hidden-layers', here(walk, entity, inside), layer.slice(0, 40));
    return;
  }
  walk.entities += 1;
  walk.kinds.set(entity.type, (walk.kinds.get(entity.type) ?? 0) + 1);
  if (entity.type === 'INSERT') {
    for (const attribute of followers) log.add('dxf-text', here(walk, attribute, inside));
    const inserts = insertsOf(walk.document, entity, layer, inside, (code, note) =>
      log.add(code, here(walk, entity, inside), note),
    );
    walk.looked += inserts.length;
    walk.blocksOpened += inserts.length;
    for (const { list, ...within } of inserts) {
      drawList(walk, list, within);
    }
    return;
  }
  if (isMarkLayer(layer)) {
    walk.marks += 1;
    return;
  }
  const decoded = decode(walk, entity, followers, inside.map);
  if (decoded === null) log.add(faultOfKind(entity.type), here(walk, entity, inside), kindNote(entity.type));
  else place(walk, entity, decoded, inside);
}

/** A kind that is not known is named; the others are named by their fault. */
const kindNote = (type: string): string => (faultOfKind(type) === 'dxf-unknown-entity' ? type.slice(0, 40) : '');

/** What an entity draws; null for a kind that draws no cut. */
function decode(walk: Walk, entity: RawEntity, followers: readonly RawEntity[], map: PlaneMap): Decoded | null {
  const { groups } = walk.document;
  const size = Math.max(Math.hypot(map.a, map.b), Math.hypot(map.c, map.d)) * walk.unit;
  const within = size > 0 ? curveWithin / size : curveWithin;
  switch (entity.type) {
    case 'LINE':
      return decodeLine(groups, entity);
    case 'ARC':
    case 'CIRCLE':
      return decodeArc(groups, entity);
    case 'LWPOLYLINE':
      return decodeLightPolyline(groups, entity);
    case 'POLYLINE':
      return decodePolyline(groups, entity, followers);
    case 'ELLIPSE':
      return decodeEllipse(groups, entity, within);
    case 'SPLINE':
      return decodeSpline(groups, entity, within);
    default:
      return null;
  }
}

/** Puts what was decoded on the sheet, if it lies in the sheet's plane. */
function place(walk: Walk, entity: RawEntity, decoded: Decoded, inside: Inserted): void {
  const { groups } = walk.document;
  const { log, unit } = walk;
  const facing = [210, 220, 230].map((code, i) => numberOf(groups, entity, code, i === 2 ? 1 : 0));
  const [nx = 0, ny = 0, nz = 1] = facing;
  const isFlat = Math.hypot(nx, ny) <= 1e-9 * Math.abs(nz);
  const isBehind = isFlat && nz < 0 && !decoded.isWorld;
  const map = isBehind ? after(inside.map, fromBehind) : inside.map;
  for (const { code, note, x, y } of decoded.faults) {
    log.add(
      code,
      here(walk, entity, inside, x === undefined || y === undefined ? undefined : movedPoint(map, x, y)),
      note,
    );
  }
  const first = decoded.runs[0]?.stretches[0];
  const at = first === undefined ? undefined : movedPoint(map, first.x1, first.y1);
  if (!isFlat && !decoded.isWorld) {
    log.add('dxf-tilted', here(walk, entity, inside, at));
    return;
  }
  if (isBehind && decoded.runs.length > 0) log.add('dxf-mirrored-plane', here(walk, entity, inside, at));
  if (decoded.heights.length > 0) noteHeights(walk, entity, decoded, inside, at);
  const onSheet = unit === 1 ? map : after({ ...unmoved, a: unit, d: unit }, map);
  const source = here(walk, entity, inside);
  for (const { stretches, isClosed } of decoded.runs) {
    const moved = movedStretches(onSheet, stretches, curveWithin);
    walk.stretches += moved.length;
    if (moved.length > 0) walk.pieces.push({ stretches: moved, isClosed, place: source });
  }
  if (!keepsCircles(inside.map)) {
    const arcs = decoded.runs.some((run) => run.stretches.some(({ kind }) => kind === 'arc'));
    if (arcs) log.add('dxf-ellipses', here(walk, entity, inside, at), 'an arc stretched by its block');
  }
}

/** Heights in mm: one for the whole drawing, and that 0. */
function noteHeights(
  walk: Walk,
  entity: RawEntity,
  decoded: Decoded,
  inside: Inserted,
  at?: { x: number; y: number },
): void {
  const flat = 1e-6;
  const heights = decoded.heights.map((z) => (z + inside.height) * walk.unit);
  const low = heights.reduce((a, b) => Math.min(a, b));
  const high = heights.reduce((a, b) => Math.max(a, b));
  walk.level ??= low;
  if (high - low > flat || Math.abs(low - walk.level) > flat) {
    walk.log.add('dxf-not-flat', here(walk, entity, inside, at), `height ${low.toFixed(3)} to ${high.toFixed(3)} mm`);
  } else if (Math.abs(low) > flat) {
    walk.log.add('dxf-height', here(walk, entity, inside, at), `height ${low.toFixed(3)} mm`);
  }
}
