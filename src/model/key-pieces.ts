/** Sentences in which keys of the job are named, split so that each key can become a way to its field. Pure: text in, pieces out. */
import { type JsonSchema, schemaAt, sectionOf } from './json-schema.ts';

/** A key named in a sentence. */
export interface KeyPiece {
  /** "wheel.fit" */
  readonly key: string;
  /** The value that the sentence gives it after a colon and a space, where that may be set as it stands. */
  readonly value?: string;
}

/** Plain words, or a key. */
export type Piece = string | KeyPiece;

/** Sections whose keys are named by their path. */
const roots = 'adapter|driving|driven|wheel|sensor|duty|shaft|sheet|bracket|print|built';
const keyPath = new RegExp(`(?<![\\w.])(?:${roots})(?:\\.[a-z_]+)+(?!\\w)`, 'g');

/**
 * Keys whose value is a decision. What was measured on the user's own parts, or what they must carry, is never set from a sentence: the
 * figures there are examples. Nor is what is asked of the joint (a balance grade): a click must not lower the bar.
 */
const isDecided = (key: string): boolean => /^(adapter|wheel|bracket|sheet|print)\./.test(key);

/** Longer than any value that a remedy gives. */
const mostLetters = 80;

/** How deep in round brackets a place stands. */
function depthAt(text: string, end: number): number {
  let depth = 0;
  for (let i = 0; i < end; i++) {
    if (text[i] === '(') depth += 1;
    else if (text[i] === ')' && depth > 0) depth -= 1;
  }
  return depth;
}

/** The value from a place on: up to the bracket that closes the remark, or to a comma or semicolon outside of brackets of its own. */
function valueFrom(text: string, start: number): string | null {
  const open: string[] = [];
  const closing: Readonly<Record<string, string>> = { '{': '}', '[': ']', '(': ')' };
  for (let i = start; i < text.length && i - start <= mostLetters; i++) {
    const letter = text[i] ?? '';
    if (open.length === 0 && /[),;`]/.test(letter)) return text.slice(start, i).trimEnd();
    if (closing[letter]) open.push(closing[letter]);
    else if (/[)\]}]/.test(letter) && letter !== open.pop()) return null;
  }
  return null;
}

const types = ({ type }: JsonSchema): readonly string[] => (type === undefined ? [] : ([type].flat() as string[]));

/** Whether words in a sentence are a value that the key could take, and not the start of advice. */
function fits(of: JsonSchema, value: string): boolean {
  if (of.enum) return of.enum.some((word) => String(word) === value);
  if (of.anyOf) return of.anyOf.some((option) => fits(option, value));
  const is = types(of);
  if (of.properties) return /^\{.*\}$/.test(value);
  if (is.includes('array')) return /^\[.*\]$/.test(value);
  if (is.includes('boolean')) return /^(true|false)$/.test(value);
  if (is.includes('integer')) return /^\d+$/.test(value);
  if (is.includes('number') || of.pattern !== undefined)
    if (/^[+-]?\d+(\.\d+)?( ?[^\s\d,{}[\]]+)?$/.test(value)) return true;
  // A name, a thread, a zone: one word, or two.
  return is.includes('string') && of.pattern === undefined && /^[\w./+-]+( [\w./+-]+)?$/.test(value);
}

/**
 * A sentence in pieces; put together again (a key with a value as "key: value") they are the sentence, but for backticks about a key.
 * @param schema the job's: only keys that it has become pieces
 */
export function keyPieces(text: string, schema: JsonSchema): Piece[] {
  const pieces: Piece[] = [];
  let done = 0;
  for (const { 0: key, index } of text.matchAll(keyPath)) {
    const of = schemaAt(schema, key.split('.'));
    if (!of) continue;
    const keyEnd = index + key.length;
    const before = text.slice(done, index);
    const value = text.startsWith(': ', keyEnd) && depthAt(text, index) > 0 ? valueFrom(text, keyEnd + 2) : null;
    const isGiven = value !== null && isDecided(key) && fits(of, value);
    const end = isGiven ? keyEnd + 2 + value.length : keyEnd;
    const isQuoted = before.endsWith('`') && text[end] === '`';
    pieces.push(isQuoted ? before.slice(0, -1) : before, isGiven ? { key, value } : { key });
    done = isQuoted ? end + 1 : end;
  }
  pieces.push(text.slice(done));
  return pieces.filter((piece) => piece !== '');
}

/** Parts of a section in braces, "{ reamed: together, count: 3 }", each with its value. */
export function partsOf(braced: string): readonly { readonly key: string; readonly value: string }[] {
  const inner = braced.replace(/^\{|\}$/g, '');
  const parts: string[] = [];
  let depth = 0;
  let from = 0;
  for (let i = 0; i <= inner.length; i++) {
    const letter = inner[i] ?? ',';
    if (/[{[]/.test(letter)) depth += 1;
    else if (/[\]}]/.test(letter)) depth -= 1;
    else if (letter === ',' && (depth === 0 || i === inner.length)) {
      parts.push(inner.slice(from, i));
      from = i + 1;
    }
  }
  return parts.flatMap((part) => {
    const read = /^\s*([a-z_]+):\s*(.+?)\s*$/s.exec(part);
    return read?.[1] && read[2] ? [{ key: read[1], value: read[2] }] : [];
  });
}

/** Whether a value means another size in a job in inches: sentences give bare numbers in mm. Whole counts and words do not. */
export function hangsOnUnits(of: JsonSchema, value: string): boolean {
  const section = sectionOf(of);
  if (section && value.startsWith('{'))
    return partsOf(value).some(({ key, value: part }) => {
      const inner = schemaAt(section, [key]);
      return !inner || hangsOnUnits(inner, part);
    });
  const options = of.anyOf ?? [of];
  const isCount = options.some(
    (option) => types(option).includes('integer') || option.enum?.some((word) => String(word) === value),
  );
  return !isCount && /^[+-]?\d+(\.\d+)?$/.test(value);
}
