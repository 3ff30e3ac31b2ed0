/** A DXF as it stands: header, layers, blocks and entities as runs of groups. Nothing is drawn yet, nothing is judged. */
import { type DxfGroups, dxfGroups } from '../measure/dxf-groups.ts';
import type { Place } from '../model/preflight.ts';
import type { Lookup } from '../standards/table.ts';
import { found } from '../standards/table.ts';
import { wildNumber } from './limits.ts';

/** One entity: its groups lie from `from` to `to` (not included), the first of them its type. */
export interface RawEntity {
  readonly type: string;
  /** From 1, in the order of the file; entities of a block carry the number of the block's own list. */
  readonly number: number;
  readonly from: number;
  readonly to: number;
}

export interface RawBlock {
  readonly head: RawEntity;
  readonly entities: readonly RawEntity[];
}

export interface DxfDocument {
  readonly groups: DxfGroups;
  /** Header variables: the first value of each. */
  readonly header: ReadonlyMap<string, string>;
  /** Layers that are off, frozen or not plotted, in lower case. */
  readonly hidden: ReadonlySet<string>;
  readonly blocks: ReadonlyMap<string, RawBlock>;
  readonly entities: readonly RawEntity[];
  readonly hasEntities: boolean;
  /** The file ends as a DXF ends. */
  readonly isEnded: boolean;
}

/** Reads a DXF text; a miss is a sentence with the line at fault. */
export function readDxf(text: string): Lookup<DxfDocument> {
  const read = dxfGroups(text);
  if (!read.ok) return read;
  const groups = read.value;
  const { codes, values } = groups;
  const count = values.length;
  const header = new Map<string, string>();
  const hidden = new Set<string>();
  const blocks = new Map<string, RawBlock>();
  const entities: RawEntity[] = [];
  let section = '';
  let hasEntities = false;
  let isEnded = false;
  let open: { head: RawEntity; entities: RawEntity[] } | null = null;
  for (let i = 0; i < count; ) {
    if (codes[i] !== 0) {
      if (section === 'HEADER' && codes[i] === 9 && i + 1 < count) {
        header.set((values[i] as string).trim(), (values[i + 1] as string).trim());
      }
      i += 1;
      continue;
    }
    const type = (values[i] as string).trim().toUpperCase();
    let to = i + 1;
    while (to < count && codes[to] !== 0) to += 1;
    if (type === 'SECTION') {
      section = codes[i + 1] === 2 ? (values[i + 1] as string).trim().toUpperCase() : '';
      hasEntities ||= section === 'ENTITIES';
      // The header's groups belong to no entity: they are read one by one.
      if (section === 'HEADER') to = Math.min(count, i + 2);
    } else if (type === 'ENDSEC') section = '';
    else if (type === 'EOF') {
      isEnded = true;
      break;
    } else if (section === 'TABLES' && type === 'LAYER') readLayer(groups, i, to, hidden);
    else if (section === 'BLOCKS') {
      if (type === 'BLOCK') {
        open = { head: { type, number: 0, from: i, to }, entities: [] };
        blocks.set(textOf(groups, open.head, 2).toLowerCase(), open);
      } else if (type === 'ENDBLK') open = null;
      else open?.entities.push({ type, number: open.entities.length + 1, from: i, to });
    } else if (section === 'ENTITIES') entities.push({ type, number: entities.length + 1, from: i, to });
    i = to;
  }
  return found({ groups, header, hidden, blocks, entities, hasEntities, isEnded: isEnded && section === '' });
}

function readLayer(groups: DxfGroups, from: number, to: number, hidden: Set<string>): void {
  const layer: RawEntity = { type: 'LAYER', number: 0, from, to };
  const isFrozen = (numberOf(groups, layer, 70, 0) & 1) !== 0;
  const isOff = numberOf(groups, layer, 62, 7) < 0;
  const isPlotted = numberOf(groups, layer, 290, 1) !== 0;
  if (isFrozen || isOff || !isPlotted) hidden.add(textOf(groups, layer, 2).toLowerCase());
}

/** Where the first group of this code stands in an entity, or -1. Extended data (codes from 1000) is not looked into. */
export function groupAt({ codes }: DxfGroups, { from, to }: RawEntity, code: number): number {
  for (let i = from + 1; i < to; i++) {
    const at = codes[i] as number;
    if (at === code) return i;
    if (at >= 1000) return -1;
  }
  return -1;
}

/** A number of a DXF, or NaN for what is none or is wild. */
export function parseNumber(value: string): number {
  if (value.trim() === '') return Number.NaN;
  const number = Number(value);
  return Math.abs(number) <= wildNumber ? number : Number.NaN;
}

/** The first group of a code as a number; `missing` where there is none, NaN where it is no number. */
export function numberOf(groups: DxfGroups, entity: RawEntity, code: number, missing: number): number {
  const at = groupAt(groups, entity, code);
  return at < 0 ? missing : parseNumber(groups.values[at] as string);
}

/** The first group of a code as text, trimmed; empty where there is none. */
export function textOf(groups: DxfGroups, entity: RawEntity, code: number): string {
  const at = groupAt(groups, entity, code);
  return at < 0 ? '' : (groups.values[at] as string).trim();
}

/** Where an entity stands in its file. */
export function placeOf(groups: DxfGroups, entity: RawEntity, at?: { readonly x: number; readonly y: number }): Place {
  const known = at !== undefined && Number.isFinite(at.x) && Number.isFinite(at.y);
  return {
    entity: entity.number,
    type: entity.type.slice(0, 24),
    line: 2 * entity.from + 1,
    layer: textOf(groups, entity, 8).slice(0, 80),
    x: known ? at.x : null,
    y: known ? at.y : null,
  };
}
