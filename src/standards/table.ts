/**
 * The shape every published table has here, and the one way to look something up in it.
 *
 * A table is quoted, never interpolated: a size that is not listed is a miss, and the miss is a sentence
 * that names the sizes which are listed. Callers decide whether a miss is a bad job or a bug, so a lookup
 * returns it as data and throws nothing.
 */

/** How a table was checked: the standard itself was read, independent reprints agree, or it rests on memory. */
export type Verified = 'primary' | 'secondary' | 'memory';

/** What any row may say of itself: `memory` when no source that could be read confirms it. */
export interface TableRow {
  readonly memory?: true;
}

/** One published table. Column names are the standard's own symbols; `unit` says what bare numbers mean. */
export interface StandardTable<Row extends object = object> {
  readonly id: string;
  /** Standard and edition, as a report should cite it. */
  readonly edition: string;
  readonly title: string;
  /** Where the figures were read. */
  readonly source: string;
  /** Sizes and cases the table speaks of. */
  readonly covers: string;
  readonly verified: Verified;
  readonly unit: string;
  /** Columns or single cells that rest on memory although the rest of the table is confirmed. */
  readonly memoryFields?: readonly string[];
  readonly notes?: readonly string[];
  readonly rows: readonly Row[];
}

/** The answer of every lookup: the value, or one plain sentence on why there is none and what is allowed. */
export type Lookup<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

/** A lookup that succeeded. */
export function found<T>(value: T): Lookup<T> {
  return { ok: true, value };
}

/** A lookup that missed; `why` is a whole sentence. */
export function missing(why: string): Lookup<never> {
  return { ok: false, why };
}

/** Carry on with the value of a lookup, or pass its miss along. */
export function andThen<A, B>(first: Lookup<A>, next: (value: A) => Lookup<B>): Lookup<B> {
  return first.ok ? next(first.value) : first;
}

/** The value of a lookup that cannot miss in right code; throws the miss as a bug. For tests and constants. */
export function must<T>(lookup: Lookup<T>): T {
  if (!lookup.ok) throw new Error(lookup.why);
  return lookup.value;
}

/** Rows by the folded values of a column, the first of equal ones. Tables never change, and a search looks the same few rows up again and again. */
const indices = new WeakMap<object, Map<string, Map<string, object>>>();

function indexOf<Row extends object>(table: StandardTable<Row>, column: keyof Row & string): Map<string, object> {
  const byColumn = indices.get(table) ?? new Map<string, Map<string, object>>();
  indices.set(table, byColumn);
  const known = byColumn.get(column);
  if (known) return known;
  const index = new Map<string, object>();
  for (const row of table.rows) {
    const key = fold(String(row[column]));
    if (!index.has(key)) index.set(key, row);
  }
  byColumn.set(column, index);
  return index;
}

/**
 * Find the row whose `column` equals `wanted`. Letter case and spaces do not matter.
 * A miss lists every legal value of that column and, for a small slip, the value that was probably meant.
 */
export function lookUp<Row extends object>(
  table: StandardTable<Row>,
  column: keyof Row & string,
  wanted: string | number,
): Lookup<Row> {
  const row = indexOf(table, column).get(fold(String(wanted)));
  if (row !== undefined) return found(row as Row);
  const legal = [...new Set(table.rows.map((candidate) => String(candidate[column])))];
  return missing(
    `${table.edition} lists no ${column} ${wanted}${meant(String(wanted), legal)}. Listed: ${legal.join(', ')}.`,
  );
}

/**
 * Find the step that holds `d`: over < d <= upTo, the rule of the ISO 286 and ISO 965 tables (a size equal to
 * the upper end belongs to that step). A miss gives the range that the table covers.
 */
export function lookUpStep<Row extends { readonly over: number; readonly upTo: number }>(
  table: StandardTable<Row>,
  d: number,
): Lookup<Row> {
  const row = table.rows.find((candidate) => d > candidate.over && d <= candidate.upTo);
  if (row !== undefined) return found(row);
  const first = Math.min(...table.rows.map((candidate) => candidate.over));
  const last = Math.max(...table.rows.map((candidate) => candidate.upTo));
  return missing(`${table.edition} covers sizes over ${first} up to ${last} mm; ${d} mm is outside.`);
}

/** A hint ", did you mean X?" when one legal word is at most two slips away, else nothing. */
export function meant(wanted: string, legal: readonly string[]): string {
  const word = fold(wanted);
  let best = '';
  let bestSlips = Math.min(3, Math.ceil(word.length / 2));
  for (const candidate of legal) {
    const slips = slipsBetween(word, fold(candidate));
    if (slips < bestSlips) {
      best = candidate;
      bestSlips = slips;
    }
  }
  return best === '' ? '' : ` (did you mean ${best}?)`;
}

/** Lower case without spaces: the form in which names are compared. */
export function fold(text: string): string {
  return text.toLowerCase().replace(/\s+/g, '');
}

/** Levenshtein distance: how many letters must be changed, added or dropped. */
function slipsBetween(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const here = [row];
    for (let column = 1; column <= b.length; column++) {
      const swap = (above[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      here.push(Math.min(swap, (above[column] ?? 0) + 1, (here[column - 1] ?? 0) + 1));
    }
    above = here;
  }
  return above[b.length] ?? 0;
}
