/** Opening a block: where it is put, how it is turned and scaled, and what is wrong with that. */
import { cos, sin } from '../units/trig.ts';
import type { FaultCode } from './fault-kinds.ts';
import { deepestBlock } from './limits.ts';
import { after, fromBehind, isMirrored, type PlaneMap, unmoved } from './plane.ts';
import { type DxfDocument, numberOf, type RawEntity, textOf } from './read-dxf.ts';

/** What holds for the entities of a block that is being drawn; for the drawing itself nothing has been done yet. */
export interface Inserted {
  readonly map: PlaneMap;
  readonly height: number;
  /** Layer that entities on layer 0 take; empty for the drawing itself. */
  readonly layer: string;
  /** The outermost INSERT; null for the drawing itself. */
  readonly top: RawEntity | null;
  /** Names of the blocks that are open, outermost first. */
  readonly blocks: readonly string[];
}

/** Copies of one array of blocks. */
const mostCopies = 10_000;

type Note = (code: FaultCode, note: string) => void;

/** The copies of its block that an INSERT puts in; none where there is no block or no end of it. */
export function insertsOf(
  { groups, blocks }: DxfDocument,
  entity: RawEntity,
  layer: string,
  inside: Inserted,
  note: Note,
): (Inserted & { readonly list: readonly RawEntity[] })[] {
  const name = textOf(groups, entity, 2);
  const shown = `block "${name.slice(0, 40)}"`;
  const block = blocks.get(name.toLowerCase());
  const nothing = (code: FaultCode): [] => {
    note(code, shown);
    return [];
  };
  if (block === undefined) return nothing('dxf-missing-block');
  if (inside.blocks.includes(name.toLowerCase()) || inside.blocks.length >= deepestBlock)
    return nothing('dxf-block-loop');
  const number = (code: number, missing: number) => numberOf(groups, entity, code, missing);
  const [x, y, z, turn] = [number(10, 0), number(20, 0), number(30, 0), number(50, 0)];
  const [sx, sy] = [number(41, 1), number(42, 1)];
  const [columns, rows, right, up] = [number(70, 1), number(71, 1), number(44, 0), number(45, 0)];
  const [nx, ny, nz] = [number(210, 0), number(220, 0), number(230, 1)];
  if (![x, y, z, turn, sx, sy, columns, rows, right, up, nx, ny, nz].every(Number.isFinite) || sx === 0 || sy === 0) {
    return nothing('dxf-bad-number');
  }
  if (Math.hypot(nx, ny) > 1e-9 * Math.abs(nz)) return nothing('dxf-tilted');
  const copies = Math.max(1, Math.trunc(columns)) * Math.max(1, Math.trunc(rows));
  if (copies > mostCopies) return nothing('dxf-block-loop');
  const baseX = numberOf(groups, block.head, 10, 0);
  const baseY = numberOf(groups, block.head, 20, 0);
  if (![baseX, baseY].every(Number.isFinite)) return nothing('dxf-bad-number');
  const angle = (turn * Math.PI) / 180;
  const [c, s] = [rounded(cos(angle)), rounded(sin(angle))];
  const plane = nz < 0 ? fromBehind : unmoved;
  const list = Array.from({ length: copies }, (_, i) => {
    const column = i % Math.max(1, Math.trunc(columns));
    const row = Math.floor(i / Math.max(1, Math.trunc(columns)));
    const placed: PlaneMap = {
      a: c,
      b: s,
      c: -s,
      d: c,
      e: x + c * column * right - s * row * up,
      f: y + s * column * right + c * row * up,
    };
    const scaled: PlaneMap = { a: sx, b: 0, c: 0, d: sy, e: -sx * baseX, f: -sy * baseY };
    return after(plane, after(placed, scaled));
  });
  if (list.some(isMirrored)) note('dxf-mirrored-block', shown);
  if (Math.abs(Math.abs(sx) - Math.abs(sy)) > 1e-9 * Math.abs(sx)) note('dxf-stretched-block', shown);
  return list.map((map) => ({
    map: after(inside.map, map),
    height: inside.height + z,
    layer,
    top: inside.top ?? entity,
    blocks: [...inside.blocks, name.toLowerCase()],
    list: block.entities,
  }));
}

/** Quarter turns exactly. */
const rounded = (value: number): number => (Math.abs(value) < 1e-15 ? 0 : value);
