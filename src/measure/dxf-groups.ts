/** DXF text as groups: pairs of lines, a whole-number code and its value. By the published DXF reference (ASCII form). */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';

/** Every group of a file, in order. The code of group i stands on line 2 i + 1 of the file, its value on the next. */
export interface DxfGroups {
  readonly codes: Int32Array;
  /** As written, spaces and all. */
  readonly values: readonly string[];
  /** Every line was found; false where the last code has no value. */
  readonly isWhole: boolean;
}

/**
 * The groups of a DXF text. Line ends of any system; a mark of byte order at the start is passed over. A miss names the first line
 * that should be a code and is not.
 */
export function dxfGroups(text: string): Lookup<DxfGroups> {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  while (lines.length > 0 && (lines.at(-1) ?? '').trim() === '') lines.pop();
  if (lines.length === 0) return missing('This file is empty.');
  const count = lines.length >> 1;
  const codes = new Int32Array(count);
  const values: string[] = new Array(count);
  for (let i = 0; i < count; i++) {
    const word = (lines[2 * i] as string).trim();
    if (!isCode(word)) {
      return missing(
        `Line ${2 * i + 1} of this DXF should be a code number and is "${word.slice(0, 20)}": the file is damaged or no DXF.`,
      );
    }
    codes[i] = Number(word);
    values[i] = lines[2 * i + 1] as string;
  }
  return found({ codes, values, isWhole: lines.length % 2 === 0 });
}

/** One to four digits, perhaps a minus. Written out, because it is asked a million times. */
function isCode(word: string): boolean {
  const from = word.charCodeAt(0) === 45 ? 1 : 0;
  const digits = word.length - from;
  if (digits < 1 || digits > 4) return false;
  for (let i = from; i < word.length; i++) {
    const c = word.charCodeAt(i);
    if (c < 48 || c > 57) return false;
  }
  return true;
}

/** $INSUNITS of the DXF reference: what one unit of the drawing is called, and its length in mm. */
export const dxfUnits: Readonly<Record<number, { readonly name: string; readonly mm: number }>> = {
  1: { name: 'inches', mm: 25.4 },
  2: { name: 'feet', mm: 304.8 },
  4: { name: 'millimetres', mm: 1 },
  5: { name: 'centimetres', mm: 10 },
  6: { name: 'metres', mm: 1000 },
  8: { name: 'microinches', mm: 2.54e-5 },
  9: { name: 'thousandths of an inch', mm: 0.0254 },
  13: { name: 'micrometres', mm: 0.001 },
  14: { name: 'decimetres', mm: 100 },
};
