/** Damage done to sound input: to its letters, its lines, its data, its bytes. */
import type { Chance } from './chance.ts';

/** Signs and words that a reader of jobs may stumble over. */
export const pieces: readonly string[] = [
  '\n',
  '  ',
  '[',
  ']',
  '{',
  '}',
  ':',
  '- ',
  '#',
  '"',
  "'",
  '&a ',
  '*a',
  '!',
  '|',
  '>',
  '\t',
  ',',
  '.nan',
  '.inf',
  '1e400',
  '-',
  '0',
  '9',
  '1e-9',
  '---\n',
  '%YAML 1.1\n',
  '<<: *a',
  '? ',
  '\uFEFF',
  '\r',
  '\u0000',
  '\u001b[31m',
  '\u202e',
  '\u2028',
  '\ud800',
  '漢',
  '__proto__: {}\n',
  ' mm',
  ' in',
  'auto',
  'none',
  '~',
];

/** A few letters or lines of a text replaced, doubled, swapped or dropped. */
export function damagedText(text: string, chance: Chance): string {
  let now = text;
  for (let hits = chance.whole(1, 4); hits > 0; hits--) {
    const at = chance.whole(0, now.length);
    const lines = now.split('\n');
    const line = chance.whole(0, lines.length - 1);
    const way = chance.whole(0, 6);
    if (way <= 2) now = now.slice(0, at) + chance.pick(pieces) + now.slice(at + chance.whole(0, 8));
    else if (way === 3) now = lines.toSpliced(line, chance.whole(1, 3)).join('\n');
    else if (way === 4) now = lines.toSpliced(line, 0, lines[chance.whole(0, lines.length - 1)] ?? '').join('\n');
    else if (way === 5)
      now = lines.with(line, `${' '.repeat(chance.whole(0, 6))}${(lines[line] ?? '').trimStart()}`).join('\n');
    else now = changedNumber(now, chance);
  }
  return now;
}

/** One number of a text made larger, smaller, negative or nought. */
export function changedNumber(text: string, chance: Chance): string {
  const numbers = [...text.matchAll(/-?\d+(?:\.\d+)?/g)];
  if (numbers.length === 0) return text;
  const hit = chance.pick(numbers);
  const value = Number(hit[0]);
  const other = chance.pick([
    value * 10,
    value / 10,
    -value,
    0,
    value + 1,
    value * 1.01,
    value * 1e6,
    value * 1e-6,
    value * (0.5 + chance.share()),
  ]);
  return text.slice(0, hit.index) + String(other) + text.slice(hit.index + hit[0].length);
}

type Bag = Record<string, unknown> | unknown[];

const isBag = (value: unknown): value is Bag => typeof value === 'object' && value !== null;

/** Every section and list inside some data, itself included. */
function bagsOf(data: unknown): Bag[] {
  return isBag(data) ? [data, ...Object.values(data).flatMap(bagsOf)] : [];
}

/** A copy of some data with values scaled, dropped, moved or copied elsewhere. */
export function damagedData(data: unknown, chance: Chance, other: () => unknown): unknown {
  const copy: unknown = structuredClone(data);
  for (let hits = chance.whole(1, 5); hits > 0; hits--) {
    const bags = bagsOf(copy).filter((bag) => Object.keys(bag).length > 0);
    if (bags.length === 0) return copy;
    const bag = chance.pick(bags) as Record<string, unknown>;
    const key = chance.pick(Object.keys(bag));
    const value = bag[key];
    const way = chance.whole(0, 5);
    if (typeof value === 'number' && way < 4)
      bag[key] = Number((value * chance.pick([0.5, 0.8, 0.95, 1.05, 1.25, 2])).toPrecision(6));
    else if (typeof value === 'string' && way < 3) bag[key] = changedNumber(value, chance);
    else if (way === 3) delete bag[key];
    else if (way === 4) bag[key] = structuredClone(chance.pick(bags));
    else bag[key] = structuredClone(other());
  }
  return copy;
}

/** Bytes by chance: all of them, or printable ones with many line ends. */
export function rawBytes(chance: Chance): Uint8Array {
  const printable = chance.happens(0.5);
  return Uint8Array.from({ length: chance.whole(0, 600) }, () => {
    if (!printable) return chance.whole(0, 255);
    return chance.happens(0.1) ? 10 : chance.whole(32, 126);
  });
}

/** A few bytes of a file changed, its end cut off, a piece of it doubled. */
export function damagedBytes(bytes: Uint8Array, chance: Chance): Uint8Array {
  let now = Uint8Array.from(bytes);
  for (let hits = chance.whole(1, 6); hits > 0 && now.length > 0; hits--) {
    const at = chance.whole(0, now.length - 1);
    const way = chance.whole(0, 9);
    if (way < 6) now[at] = chance.whole(0, 255);
    else if (way < 8) now = Uint8Array.from([...now.subarray(0, at), ...now.subarray(Math.max(0, at - 60))]);
    else now = now.slice(0, at);
  }
  return now;
}
