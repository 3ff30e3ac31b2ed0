/**
 * One value of a job file changed, and nothing else: comments, order and spacing of all other lines stay as they were typed. The page
 * edits the user's own file with this.
 */
import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml';
import { parseJobText } from './document.ts';

export type EditPath = readonly (string | number)[];

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
  // Words with signs that mean something to the file's format are quoted for the user.
  for (const candidate of [text, JSON.stringify(text)]) {
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

/** Plain data with a change, to hold the edited text against. */
function changed(data: unknown, [key, ...rest]: EditPath, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(data)) return data.map((item, i) => (i === key ? changed(item, rest, value) : item));
  const map = { ...((data ?? {}) as Record<string, unknown>) };
  if (rest.length === 0 && value === undefined) delete map[String(key)];
  else map[String(key)] = changed(map[String(key)], rest, value);
  return map;
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

/**
 * A job text with one value set, put in or taken out.
 * @param path keys from the top, such as ['driving', 'register', 'diameter']; numbers for places in a list
 * @param typed the value as typed in a field; null or blank takes the key out
 * @returns the whole text; a sentence when the text cannot be read, the value is none, or the path leads through a plain value
 */
export function editJob(text: string, path: EditPath, typed: string | null): Edited {
  if (path.length === 0) return refuse('There is no key to change.');
  const read = parseJobText(text);
  const fault = read.faults[0];
  if (fault) return refuse(`The file cannot be read: ${fault.message}`);
  const isGone = typed === null || typed.trim() === '';
  const value = isGone ? null : fieldValue(typed);
  if (value && !value.ok) return refuse(value.why);

  let node: unknown = read.document?.contents;
  let splice: Splice | null = null;
  for (const [depth, key] of path.entries()) {
    const isLast = depth === path.length - 1;
    if (isSeq(node)) {
      const item = node.items[Number(key)];
      if (item === undefined) return refuse(`The list has no place ${Number(key) + 1}.`);
      if (isLast && value) splice = { from: rangeOf(item)[0], to: rangeOf(item)[1], put: value.text };
      node = item;
      continue;
    }
    if (!isMap(node))
      return refuse(`${path.slice(0, depth).join('.')} is a value of its own here, not a section: clear it first.`);
    const pair = (node.items as Pair[]).find((item) => isScalar(item.key) && String(item.key.value) === String(key));
    if (!pair) {
      if (!value) return { ok: true, text };
      splice = inserted(text, node, path.slice(depth), value.text);
      break;
    }
    if (isLast) {
      if (!value) splice = node.items.length > 1 || depth === 0 ? removed(text, node, pair) : emptied(node, pair);
      else splice = replaced(pair, value.text);
      break;
    }
    if (pair.value === null || (isScalar(pair.value) && pair.value.value === null)) {
      if (!value) return { ok: true, text };
      splice = replaced(pair, `{ ${pairText(path.slice(depth + 1), value.text)} }`);
      break;
    }
    node = pair.value;
  }
  if (!splice) return refuse('A place of a list cannot be taken out by itself: type the whole list.');
  const edited = spliced(text, splice);
  const after = parseJobText(edited);
  const wanted = changed(read.data, path, value ? value.data : undefined);
  if (after.faults.length > 0 || !same(after.data, wanted))
    return refuse('This change cannot be made in place: edit the file as text.');
  return { ok: true, text: edited };
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
