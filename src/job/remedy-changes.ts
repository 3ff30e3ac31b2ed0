/** What a remedy says to write in the job, taken from its own sentence: a cure that can be typed can be tried. */
import { isMeasured, schemaAt, sectionOf } from '../model/json-schema.ts';
import { hangsOnUnits, type KeyPiece, keyPieces, type Piece, partsOf } from '../model/key-pieces.ts';
import type { PutIn } from './changed-job.ts';
import { fieldValue } from './edit.ts';
import { knownSchema } from './legal-keys.ts';

/** One thing to write, of one key or of several that belong together. */
export interface RemedyChange {
  /** "adapter.driven.washer: true" */
  readonly words: string;
  readonly puts: readonly PutIn[];
}

/** What stands between two keys that are written together: "(adapter.driven.seat: sunk; adapter.driven.head: socket)". */
const together = '; ';

type Given = KeyPiece & { readonly value: string };
const isGiven = (piece: Piece): piece is Given => typeof piece !== 'string' && piece.value !== undefined;

/** The values of one key; null where they are none. Into a section go the keys that are given, and its others stay. */
function putsOf({ key, value }: Given): PutIn[] | null {
  const path = key.split('.');
  const of = schemaAt(knownSchema(), path);
  if (!of) return null;
  const isSection = sectionOf(of) !== undefined && !isMeasured(of) && value.startsWith('{');
  const edits = isSection
    ? partsOf(value).map((part) => ({ path: [...path, part.key], typed: part.value }))
    : [{ path, typed: value }];
  const read = edits.map(({ path: at, typed }) => ({ at, value: fieldValue(typed) }));
  const puts = read.flatMap(({ at, value: field }) => (field.ok ? [{ path: at, data: field.data }] : []));
  // Half of a section is not what the remedy says.
  return puts.length === edits.length ? puts : null;
}

/**
 * What a remedy's sentence gives to be written, in its order: each `key: value` in round brackets is a change; keys with nothing but "; "
 * between them are one.
 * @param units of the job: a bare number in a sentence is mm, so that it is left out where the job counts in inches
 */
export function remedyChanges(remedy: string, units: 'mm' | 'in'): RemedyChange[] {
  const pieces = keyPieces(remedy, knownSchema());
  const groups: Given[][] = [];
  for (const [i, piece] of pieces.entries()) {
    if (!isGiven(piece)) continue;
    const before = pieces[i - 2];
    const isMore = pieces[i - 1] === together && before !== undefined && isGiven(before);
    if (isMore) groups.at(-1)?.push(piece);
    else groups.push([piece]);
  }
  return groups.flatMap((group) => {
    const isClear =
      units === 'mm' ||
      group.every(({ key, value }) => !hangsOnUnits(schemaAt(knownSchema(), key.split('.')) ?? {}, value));
    const puts = group.map(putsOf);
    if (!isClear || puts.some((some) => some === null || some.length === 0)) return [];
    return [
      {
        words: group.map(({ key, value }) => `${key}: ${value}`).join(together),
        puts: puts.flatMap((some) => some ?? []),
      },
    ];
  });
}
