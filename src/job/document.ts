/** YAML text to plain data and the place of every key: the first half of reading a job, safe against hostile text. */
import type { Document, Node } from 'yaml';
import { Composer, isAlias, isMap, isScalar, isSeq, Lexer, LineCounter, Parser } from 'yaml';
import type { PathStep } from './errors.ts';
import { pathText, printable } from './errors.ts';
import { keyName } from './yaml-key.ts';
import { syntaxFault } from './yaml-sentence.ts';

/** A fault of the text itself. Offsets count from the start of the text. */
export interface TextFault {
  readonly offset: number;
  readonly path: string;
  readonly message: string;
}

/** Where a key path stands in the text: its key (or the value itself, in a list) and its value. */
export interface KeyPlace {
  readonly key: number;
  readonly value: number;
}

export interface JobDocument {
  /** Plain data: maps, lists, text, numbers, booleans, null. */
  readonly data: unknown;
  /** Every typed key path and its offsets. */
  readonly places: ReadonlyMap<string, KeyPlace>;
  readonly faults: readonly TextFault[];
  readonly lines: LineCounter;
  /** The parsed text itself, for whoever needs the place of every node; null where it could not be read. */
  readonly document: Document.Parsed | null;
}

export const deepestNesting = 32;
/** The parser keeps up to two entries a level on its stack, and a few of its own. */
const deepestStack = 2 * deepestNesting + 8;
const mostNodes = 20_000;
/** Words, signs, spaces and line ends; a long and well commented job has a few thousand. */
const mostLexemes = 60_000;
const mostAliases = 50;
const mostFaults = 200;
/** The parser names the kind of every map and list so; anything else was typed. */
const plainTags = ['tag:yaml.org,2002:map', 'tag:yaml.org,2002:seq'];
const forbiddenKeys = ['__proto__', 'constructor', 'prototype'];

/**
 * Parse `text` (no byte order mark) into data. Faults of syntax end the reading; faults of content are gathered.
 * Nesting is measured while the parser runs, before anything recursive sees the text.
 */
export function parseJobText(text: string): JobDocument {
  const known = lately.find((one) => one.text === text);
  if (known) return known.parsed;
  const parsed = parsedAnew(text);
  lately = [{ text, parsed }, ...lately].slice(0, mostKept);
  return parsed;
}

/** The texts that were parsed last: an edit, its check, the reading and the fields of a page all ask for the same one. */
let lately: readonly { readonly text: string; readonly parsed: JobDocument }[] = [];
const mostKept = 4;

function parsedAnew(text: string): JobDocument {
  const lines = new LineCounter();
  const parser = new Parser();
  const composer = new Composer({
    version: '1.2',
    schema: 'core',
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'error',
  });
  const documents: Document.Parsed[] = [];
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  const stop = (offset: number, message: string): JobDocument => ({
    data: undefined,
    places: new Map(),
    faults: [{ offset, path: '', message }],
    lines,
    document: null,
  });
  let lexemes = 0;
  for (const lexeme of new Lexer().lex(text)) {
    lexemes += 1;
    if (lexemes > mostLexemes)
      return stop(parser.offset, 'This file is far too long for a job: it holds too many words and signs.');
    for (const token of parser.next(lexeme)) documents.push(...composer.next(token));
    if (parser.stack.length > deepestStack)
      return stop(parser.offset, `Nested too deeply: a job is at most ${deepestNesting} levels deep.`);
    if (documents.length > 1) break;
  }
  for (const token of parser.end()) documents.push(...composer.next(token));
  documents.push(...composer.end(true, text.length));
  const document = documents[0];
  const second = documents[1];
  if (document === undefined) return stop(0, 'This file is empty; flangewright new writes a starter job.');
  if (document.errors.length > 0) {
    const faults = document.errors
      .slice(0, 20)
      .map((error) => ({ path: '', ...syntaxFault(error.code, error.message, text, error.pos[0]) }));
    return { data: undefined, places: new Map(), faults: onePerLine(faults, lines), lines, document: null };
  }
  if (second !== undefined)
    return stop(second.range[0], 'This file holds several YAML documents (split by ---); a job is one document.');
  const directives = document.directives.yaml;
  if (directives.explicit === true && directives.version !== '1.2')
    return stop(0, `Delete the line %YAML ${directives.version}: a job is YAML 1.2.`);
  if (document.contents === null || (isScalar(document.contents) && document.contents.value === null)) {
    return stop(0, 'There is nothing in this file but blanks or comments; flangewright new writes a starter job.');
  }
  return { ...walkDocument(document, text), lines, document };
}

/** One slip often makes several syntax errors on its line: the first says it. */
function onePerLine(faults: readonly TextFault[], lines: LineCounter): TextFault[] {
  const seen = new Set<number>();
  return faults.filter((fault) => {
    const { line } = lines.linePos(fault.offset);
    if (seen.has(line)) return false;
    seen.add(line);
    return true;
  });
}

function walkDocument(document: Document.Parsed, text: string): Omit<JobDocument, 'lines' | 'document'> {
  const places = new Map<string, KeyPlace>();
  const faults: TextFault[] = [];
  let nodes = 0;
  let aliases = 0;

  const fault = (offset: number, steps: readonly PathStep[], message: string): null => {
    if (faults.length < mostFaults) faults.push({ offset, path: pathText(steps), message });
    return null;
  };

  /** `at` is set inside an alias: everything found there stands where the alias was written. */
  const walk = (node: Node | null, steps: readonly PathStep[], at: number | null): unknown => {
    const offset = at ?? node?.range?.[0] ?? 0;
    nodes += 1;
    if (nodes > mostNodes)
      return nodes === mostNodes + 1
        ? fault(offset, steps, `Too many values: a job holds at most ${mostNodes}.`)
        : null;
    if (steps.length > deepestNesting)
      return fault(offset, steps.slice(0, 8), `Nested too deeply: a job is at most ${deepestNesting} levels deep.`);
    if (node === null) return null;
    if (isAlias(node)) {
      aliases += 1;
      if (aliases > mostAliases)
        return aliases === mostAliases + 1
          ? fault(offset, steps, `Too many aliases (*name): at most ${mostAliases} are read.`)
          : null;
      const target = node.resolve(document);
      if (target === undefined)
        return fault(
          offset,
          steps,
          `*${printable(node.source, 30)} names nothing: no &${printable(node.source, 30)} stands before it.`,
        );
      return walk(target, steps, offset);
    }
    if (node.tag !== undefined && !plainTags.includes(node.tag))
      return fault(offset, steps, 'YAML tags (words that start with !) are not used in a job.');
    if (isMap(node)) return walkMap(node.items as readonly { key: unknown; value: unknown }[], steps, at);
    if (isSeq(node)) {
      return node.items.map((item, index) => {
        const child = item as Node | null;
        const place = at ?? child?.range?.[0] ?? offset;
        places.set(pathText([...steps, index]), { key: place, value: place });
        return walk(child, [...steps, index], at);
      });
    }
    if (!isScalar(node)) return fault(offset, steps, 'This kind of value is not used in a job.');
    if (node.format === 'HEX' || node.format === 'OCT') {
      return fault(
        offset,
        steps,
        `${printable(text.slice(node.range?.[0] ?? 0, node.range?.[1] ?? 0), 30)} is not a decimal number; write it in decimals.`,
      );
    }
    return node.value;
  };

  const walkMap = (
    items: readonly { key: unknown; value: unknown }[],
    steps: readonly PathStep[],
    at: number | null,
  ): unknown => {
    const result: Record<string, unknown> = {};
    const seen = new Map<string, number>();
    for (const item of items) {
      const keyNode = item.key as Node | null;
      const keyOffset = at ?? keyNode?.range?.[0] ?? 0;
      const key = keyName(keyNode);
      if (keyNode === null || key === null) {
        fault(keyOffset, steps, 'A key must be a plain word followed by a colon.');
        continue;
      }
      const valueNode = (item.value ?? null) as Node | null;
      if (forbiddenKeys.includes(key)) {
        fault(keyOffset, [...steps, key], `"${key}" cannot be a key.`);
        continue;
      }
      const earlier = seen.get(key);
      if (earlier !== undefined) {
        fault(
          keyOffset,
          [...steps, printable(key, 40)],
          `"${printable(key, 40)}" is written twice; delete one of the two.`,
        );
        continue;
      }
      seen.set(key, keyOffset);
      const keyEnd = keyNode.range?.[0] ?? keyOffset;
      const isEmpty = valueNode === null || (isScalar(valueNode) && valueNode.value === null);
      // An indented section starts on its first key: the section's own key is the better place.
      const hasNoPlace = isEmpty || (isMap(valueNode) && valueNode.flow !== true);
      places.set(pathText([...steps, key]), {
        key: keyOffset,
        value: hasNoPlace ? keyOffset : (at ?? valueNode?.range?.[0] ?? keyEnd),
      });
      result[key] = walk(valueNode, [...steps, key], at);
    }
    return result;
  };

  const data = walk(document.contents, [], null);
  return { data, places, faults };
}
