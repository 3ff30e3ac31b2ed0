/** A sentence of the report in which every key of the job leads to its field; what a remedy gives may be set at once. */

import opened from 'made:opened';
import { isMeasured, schemaAt, sectionOf } from '../../model/json-schema.ts';
import { hangsOnUnits, type KeyPiece, keyPieces, partsOf } from '../../model/key-pieces.ts';
import { setTogether } from '../job/edits.ts';
import { notice, values } from '../job/store.ts';
import { benchLabel } from './bench-words.ts';
import { fieldPath, sections } from './sheet-plan.ts';
import { reveal } from './sheet-state.ts';

/** A place in a list stands in the field of the whole list. */
const stepsOf = (key: string): string[] => key.replace(/\[.*$/s, '').split('.');

/** Where a key is on the sheet, in the sheet's own words: "Toothed wheel, fit". */
export function whereIs(key: string): string {
  const path = fieldPath(opened.schema, stepsOf(key));
  const title = sections.find((section) => section.key === path[0])?.title.split(',')[0] ?? '';
  const rest = path.slice(1).map((_, i) => benchLabel(path.slice(0, i + 2)));
  return [title, ...rest].filter(Boolean).join(', ');
}

/** Whether a key has a field on the sheet. */
export const isOnSheet = (key: string): boolean =>
  sections.some((section) => section.key === key.split('.')[0]) && schemaAt(opened.schema, stepsOf(key)) !== undefined;

/** A key as a way to its field on the sheet; by its name in the file, or by the words of the sheet. */
export function KeyLink({ of, inWords = false }: { of: string; inWords?: boolean }) {
  const where = whereIs(of);
  const shown = inWords ? where : of;
  return (
    <button
      type="button"
      class="key"
      title={where}
      aria-label={`${shown}: go to ${inWords ? 'its field' : where}`}
      onClick={() => reveal(of)}
    >
      {shown}
    </button>
  );
}

/** Set what a remedy gives, as one step; a notice says so, or why not. */
async function take(key: string, value: string): Promise<void> {
  const path = key.split('.');
  const of = schemaAt(opened.schema, path);
  const typed = values.value[key];
  // Into a section that has keys of its own go those that are given: the others stay.
  const isWithin = of && sectionOf(of) && !isMeasured(of) && value.startsWith('{') && (typed?.startsWith('{') ?? true);
  const edits = isWithin
    ? partsOf(value).map((part) => ({ path: [...path, part.key], typed: part.value }))
    : [{ path, typed: value }];
  if (await setTogether(edits)) notice.value = `${whereIs(key)} is ${value} now.`;
}

/** A key of a sentence with what touches it: a line breaks neither after the bracket before it nor before the sign behind it. */
function Key({ before, piece, behind, sets }: { before: string; piece: KeyPiece; behind: string; sets: boolean }) {
  const { key, value } = piece;
  const of = schemaAt(opened.schema, key.split('.'));
  const isSafe = value !== undefined && of !== undefined && !(values.value.units === 'in' && hangsOnUnits(of, value));
  if (value === undefined || !sets || !isSafe)
    return (
      <span class="together">
        {before}
        <KeyLink of={key} />
        {value === undefined ? '' : `: ${value}`}
        {behind}
      </span>
    );
  return (
    <>
      <span class="together">
        {before}
        <KeyLink of={key} />
      </span>
      : {value}{' '}
      <span class="together">
        <button
          type="button"
          class="key set"
          aria-label={`set it: ${key} to ${value}`}
          onClick={() => void take(key, value)}
        >
          set it
        </button>
        {behind}
      </span>
    </>
  );
}

/**
 * @param sets whether values that the sentence gives may be set: it is advice on what to do
 */
export function KeyText({ text, sets = false }: { text: string; sets?: boolean }) {
  const pieces = keyPieces(text, opened.schema);
  const wordsAt = (i: number) => {
    const piece = pieces[i];
    return typeof piece === 'string' ? piece : '';
  };
  const opening = (words: string) => /[([{"]*$/.exec(words)?.[0] ?? '';
  const closing = (words: string) => /^[)\]},.;:"]*/.exec(words)?.[0] ?? '';
  return (
    <>
      {pieces.map((piece, i) => {
        if (typeof piece !== 'string')
          return (
            <Key
              key={`${i} ${piece.key}`}
              before={opening(wordsAt(i - 1))}
              piece={piece}
              behind={closing(wordsAt(i + 1))}
              sets={sets}
            />
          );
        const from = i === 0 ? 0 : closing(piece).length;
        const to = i === pieces.length - 1 ? piece.length : piece.length - opening(piece.slice(from)).length;
        return piece.slice(from, to);
      })}
    </>
  );
}
