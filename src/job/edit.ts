/**
 * One value of a job file changed, and nothing else: comments, order and spacing of all other lines stay as they were typed. The page
 * edits the user's own file with this.
 */
import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml';
import { parseJobText } from './document.ts';
import { pathText } from './errors.ts';
import { mayStandEmpty, takesList } from './legal-keys.ts';
import { listedNumbers } from './typed-commas.ts';
import { type EditPath, withValue } from './with-value.ts';
import { keyName } from './yaml-key.ts';

/** The text with the change, or a sentence that says why it cannot be made. */
export type Edited = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string };

interface Splice {
  readonly from: number;
  readonly to: number;
  readonly put: string;
}

const refuse = (why: string): Edited => ({ ok: false, why });

/** A value as typed in one field: a number, words, a list or a map in braces, on one line. */
export function fieldValue(
  typed: string,
): { readonly ok: true; readonly data: unknown; readonly text: string } | { readonly ok: false; readonly why: string } {
  const text = typed.trim();
  if (/[\r\n]/.test(text)) return { ok: false, why: 'Type the value on one line.' };
  // Words with signs that mean something to the file's format are quoted for the user; a comment would be lost out of the field.
  const holdsComment = /(^|\s)#/.test(text) && !/^(".*"|'.*')$/.test(text);
  for (const candidate of holdsComment ? [JSON.stringify(text)] : [text, JSON.stringify(text)]) {
    const read = parseJobText(`value: ${candidate}`);
    const { data } = read;
    if (read.faults.length > 0 || typeof data !== 'object' || data === null) continue;
    const keys = Object.keys(data);
    if (keys.length === 1 && keys[0] === 'value')
      return { ok: true, data: (data as { value: unknown }).value, text: candidate };
  }
  return { ok: false, why: 'This is not a value: type a number with its unit, a word, or a list in [ ].' };
}

const spliced = (text: string, { from, to, put }: Splice) => text.slice(0, from) + put + text.slice(to);

const rangeOf = (node: unknown): [number, number, number] => {
  const { range } = node as Node;
  return range ? [range[0], range[1], range[2]] : [0, 0, 0];
};

const isPlainKey = (key: string) => /^[A-Za-z_][\w-]*$/.test(key);
const keyText = (key: string | number) =>
  typeof key === 'string' && isPlainKey(key) ? key : JSON.stringify(String(key));

/** "a: { b: value }" for a path that is not there yet. */
function pairText(path: EditPath, value: string): string {
  const [key, ...rest] = path;
  return rest.length === 0 ? `${keyText(key ?? '')}: ${value}` : `${keyText(key ?? '')}: { ${pairText(rest, value)} }`;
}

/** Column of an offset in its line. */
const columnOf = (text: string, at: number) => at - (text.lastIndexOf('\n', at - 1) + 1);

/** End of the line that an offset stands on, its break excluded. */
function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
}

/** Where the last thing of a node that is really typed ends: blank lines and comments after it do not belong to it. */
const typedEnd = (node: unknown): number => {
  if (isMap(node) && !node.flow) {
    const last = node.items.at(-1);
    return last ? typedEnd(last.value ?? last.key) : rangeOf(node)[1];
  }
  if (isSeq(node) && !node.flow) return node.items.length > 0 ? typedEnd(node.items.at(-1)) : rangeOf(node)[1];
  return rangeOf(node)[1];
};

/** A new key in a map that is there. */
function inserted(text: string, map: YAMLMap, path: EditPath, value: string): Splice {
  const pair = pairText(path, value);
  const last = map.items.at(-1) as Pair | undefined;
  if (map.flow) {
    const close = rangeOf(map)[1] - 1;
    if (!last) return { from: rangeOf(map)[0], to: close + 1, put: `{ ${pair} }` };
    const end = typedEnd(last.value ?? last.key);
    return { from: end, to: end, put: `, ${pair}` };
  }
  const first = map.items[0] as Pair;
  const indent = ' '.repeat(columnOf(text, rangeOf(first.key)[0]));
  const end = lineEnd(text, typedEnd(last?.value ?? last?.key));
  return { from: end, to: end, put: `\n${indent}${pair}` };
}

/** A key taken out with its value. */
function removed(text: string, map: YAMLMap, pair: Pair): Splice {
  const start = rangeOf(pair.key)[0];
  const end = typedEnd(pair.value ?? pair.key);
  const at = map.items.indexOf(pair as never);
  if (map.flow) {
    const next = map.items[at + 1] as Pair | undefined;
    if (next) return { from: start, to: rangeOf(next.key)[0], put: '' };
    const before = map.items[at - 1] as Pair | undefined;
    const from = before ? typedEnd(before.value ?? before.key) : start;
    return { from, to: end, put: '' };
  }
  const from = start - columnOf(text, start);
  return { from, to: Math.min(text.length, lineEnd(text, end) + 1), put: '' };
}

const same = (a: unknown, b: unknown) => JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));

/** Keys in one order: what matters is what is said, not in which order. */
function sorted(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(sorted);
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(
    Object.entries(data)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, value]) => [key, sorted(value)]),
  );
}

/** Whether a text holds no job at all: nothing but blanks, comments and a document's opening. */
export const holdsNothing = (text: string): boolean =>
  text.split(/\r?\n/).every((line) => /^\s*(#.*)?$|^---\s*(#.*)?$/.test(line));

/** A pair on the way to the key, and the map it stands in. */
interface Stop {
  readonly map: YAMLMap;
  readonly pair: Pair;
}

/**
 * A key taken out; sections that have become empty by that go with it, unless they may stand empty.
 * @param stops one for each step of the path; null where the step is a place in a list
 */
function takenOut(text: string, path: EditPath, stops: readonly (Stop | null)[]): Change | null {
  let depth = path.length - 1;
  let stop = stops[depth];
  if (!stop) return null;
  while (depth > 0 && stop.map.items.length === 1) {
    const above = stops[depth - 1];
    const from = path.slice(0, depth);
    if (!above || mayStandEmpty(from) || hasComment(text, above.pair))
      return { splice: emptied(stop.map, stop.pair), at: path.slice(0, depth + 1) };
    stop = above;
    depth -= 1;
  }
  return { splice: removed(text, stop.map, stop.pair), at: path.slice(0, depth + 1) };
}

/** Comments on lines of their own inside a section stay: what holds them is not taken out with them. */
const hasComment = (text: string, pair: Pair): boolean =>
  /\n\s*#/.test(text.slice(rangeOf(pair.key)[0], typedEnd(pair.value ?? pair.key)));

/** One place of the text to change, and the key that is another then. */
interface Change {
  readonly splice: Splice;
  readonly at: EditPath;
}

type Found = { readonly ok: true; readonly change: Change | null } | { readonly ok: false; readonly why: string };

/** Where a value goes; no change where a key that is to go is not there. */
function placeOf(text: string, contents: unknown, path: EditPath, value: string | null): Found {
  const found = (splice: Splice): Found => ({ ok: true, change: { splice, at: path } });
  const stops: (Stop | null)[] = [];
  let node: unknown = contents;
  for (const [depth, key] of path.entries()) {
    const isLast = depth === path.length - 1;
    if (isSeq(node)) {
      const item = typeof key === 'number' ? node.items[key] : undefined;
      if (item === undefined)
        return {
          ok: false,
          why: `${pathText(path.slice(0, depth))} is a list of ${node.items.length} here: it has no ${pathText(path.slice(depth))}.`,
        };
      if (isLast && value !== null) return found({ from: rangeOf(item)[0], to: rangeOf(item)[1], put: value });
      stops.push(null);
      node = item;
      continue;
    }
    if (!isMap(node)) {
      return {
        ok: false,
        why: `${pathText(path.slice(0, depth))} is a value of its own here, not a section: clear it first.`,
      };
    }
    const pair = (node.items as Pair[]).find((item) => keyName(item.key) === String(key));
    const isOpen = !isLast && (!pair || pair.value === null || (isScalar(pair.value) && pair.value.value === null));
    if (isOpen && value !== null && path.slice(depth).some((step) => typeof step === 'number'))
      return { ok: false, why: `There is no list for ${pathText(path)} yet: type the whole list.` };
    if (!pair)
      return value === null ? { ok: true, change: null } : found(inserted(text, node, path.slice(depth), value));
    stops.push({ map: node, pair });
    if (isLast && value !== null) return found(replaced(pair, value));
    if (isOpen) {
      return value === null
        ? { ok: true, change: null }
        : found(replaced(pair, `{ ${pairText(path.slice(depth + 1), value)} }`));
    }
    node = pair.value;
  }
  const change = takenOut(text, path, stops);
  return change
    ? { ok: true, change }
    : { ok: false, why: 'A place of a list cannot be taken out by itself: type the whole list.' };
}

/**
 * A job text with one value set, put in or taken out. A text that holds nothing becomes a job with this value; its comments stay.
 * @param path keys from the top, such as ['driving', 'register', 'diameter']; numbers for places in a list
 * @param typed the value as typed in a field; null or blank takes the key out, and a section that is empty then and may not be. Where a
 * list may stand, numbers by comma and space, semicolon or space become one. What is no value of the key is kept in quotes, whole.
 * @returns the whole text; a sentence when the text cannot be read, the value is none, or the path leads through a plain value
 */
export function editJob(text: string, path: EditPath, typed: string | null): Edited {
  if (path.length === 0) return refuse('There is no key to change.');
  if (holdsNothing(text)) {
    if (typed === null || typed.trim() === '') return { ok: true, text };
    const comments = text.trim() === '' ? '' : text.replace(/\n?$/, '\n');
    return editJob(`${comments}job: 1\n`, path, typed);
  }
  const read = parseJobText(text);
  const fault = read.faults[0];
  if (fault) return refuse(`The file cannot be read: ${fault.message}`);
  const isGone = typed === null || typed.trim() === '';
  const list = isGone || !takesList(path) ? null : listedNumbers(typed);
  const value = isGone ? null : fieldValue(list ? `[${list.join(', ')}]` : typed);
  if (value && !value.ok) return refuse(value.why);
  // Words that mean something else inside braces ("62,05" there is 62 and a key) are quoted.
  const ways = value ? [value.text, ...(typeof value.data === 'string' ? [JSON.stringify(value.data)] : [])] : [null];
  for (const way of ways) {
    const place = placeOf(text, read.document?.contents, path, way);
    if (!place.ok) return refuse(place.why);
    if (!place.change) return { ok: true, text };
    const edited = spliced(text, place.change.splice);
    const after = parseJobText(edited);
    const wanted = withValue(read.data, place.change.at, value ? value.data : undefined);
    if (after.faults.length === 0 && same(after.data, wanted)) return { ok: true, text: edited };
  }
  return refuse('This change cannot be made in place: edit the file as text.');
}

/** A value in place of the old one, whatever lines that took. */
function replaced(pair: Pair, value: string): Splice {
  const key = rangeOf(pair.key)[1];
  if (pair.value === null || pair.value === undefined) return { from: key + 1, to: key + 1, put: ` ${value}` };
  const [from] = rangeOf(pair.value);
  const isBlock = (isMap(pair.value) || isSeq(pair.value)) && !pair.value.flow;
  // A section on lines of its own becomes a value on the key's line.
  return isBlock
    ? { from: key, to: typedEnd(pair.value), put: `: ${value}` }
    : { from, to: Math.max(from, rangeOf(pair.value)[1]), put: ` ${value}`.slice(from === key + 1 ? 0 : 1) };
}

/** The last key of a section leaves an empty section behind. */
function emptied(map: YAMLMap, pair: Pair): Splice {
  if (map.flow) return { from: rangeOf(map)[0], to: rangeOf(map)[1], put: '{}' };
  const start = rangeOf(pair.key)[0];
  return { from: start, to: typedEnd(pair.value ?? pair.key), put: '{}' };
}
