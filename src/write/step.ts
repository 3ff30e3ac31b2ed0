/**
 * Makes a modeller's STEP text into a file of ours: a header that says what it is, revisions and descriptions at the parts, no clock, no
 * counters that remember earlier files. Source of the syntax: ISO 10303-21 (clear text encoding), the entities: ISO 10303-41 and -44.
 */

import type { RawStep } from '../model/solid.ts';
import { withColours } from './step-colours.ts';

/** What is said of one part in the tree. */
export interface StepPart {
  /** Its name, by which the text knows it. */
  readonly name: string;
  /** Part number. */
  readonly number: string;
  readonly description: string;
  /** Empty for what is bought or was there before. */
  readonly revision: string;
  /** `#8899aa` as seen on a screen; null for an assembly. */
  readonly colour: string | null;
}

export interface StepFacts {
  readonly fileName: string;
  /** Lines of the file's description: part, material, revision, threads. */
  readonly description: readonly string[];
  readonly parts: readonly StepPart[];
}

/**
 * The standard wants a time; a file that is the same whenever it is made cannot have a true one. The description says so, and the
 * revision tells versions apart.
 */
const noTime = '2000-01-01T00:00:00';
const noTimeWords = 'the time in this header is not a date: the revision tells versions apart';

/** Characters beyond ASCII, as ISO 10303-21 writes them: \X2\ and four digits for each 16 bits. */
const escaped = (text: string) =>
  text.replace(/[^\x20-\x7e]+/g, (run) => {
    const digits = (i: number) => run.charCodeAt(i).toString(16).toUpperCase().padStart(4, '0');
    return `\\X2\\${Array.from({ length: run.length }, (_, i) => digits(i)).join('')}\\X0\\`;
  });

/** A text between quotes. */
const quoted = (text: string) => `'${escaped(text.replaceAll('\\', '\\\\').replaceAll("'", "''"))}'`;

function header(facts: StepFacts, schema: string): string {
  const lines = [...facts.description, noTimeWords].map((line) => quoted(line.slice(0, 256)));
  return [
    'ISO-10303-21;',
    'HEADER;',
    `FILE_DESCRIPTION((${lines.join(',\n  ')}),'2;1');`,
    `FILE_NAME(${quoted(facts.fileName)},'${noTime}',(''),(''),'flangewright','flangewright','');`,
    `FILE_SCHEMA(('${schema}'));`,
    'ENDSEC;',
    '',
  ].join('\n');
}

/** Products of a text by their entity numbers. */
function productsOf(data: string, names: readonly string[], parts: readonly StepPart[]): Map<string, StepPart> {
  const waiting = new Map(parts.map((part) => [part.name, part]));
  const known = [...data.matchAll(/#(\d+) = PRODUCT\('~(\d+)~'/g)].map(([, id, place]) => {
    const name = names[Number(place)] as string;
    const part = waiting.get(name);
    if (!part) throw new Error(`the STEP text names a part that nobody knows: ${name}`);
    waiting.delete(name);
    return [id as string, part] as const;
  });
  if (waiting.size > 0) throw new Error(`the STEP text does not name ${[...waiting.keys()].join(', ')}`);
  return new Map(known);
}

/** Where something of ours goes: a product's texts, the name of its version, any other name. */
const gaps = /#(\d+) = PRODUCT\('~\d+~','~\d+~','',|PRODUCT_DEFINITION_FORMATION\('','',#(\d+)\)|'~(\d+)~'/g;

/**
 * The finished text. Throws an Error when the text is not laid out as the modeller lays it out, when it names a part that is not
 * known, or does not name one that is.
 */
export function finishStep({ text, names }: RawStep, facts: StepFacts): string {
  const schema = /FILE_SCHEMA\s*\(\(\s*'([^']*)'\s*\)\s*\)/.exec(text)?.[1];
  const start = text.indexOf('DATA;');
  if (schema === undefined || start < 0) throw new Error('the STEP text has no header that could be replaced');
  const data = text.slice(start);
  const products = productsOf(data, names, facts.parts);
  const colours = [...products].flatMap(([id, { colour }]) => (colour === null ? [] : [[id, colour] as const]));
  // The modeller numbers instances on and on while its program runs.
  let instance = 0;
  const finished = withColours(data, new Map(colours))
    .replace(/(NEXT_ASSEMBLY_USAGE_OCCURRENCE\(\s*)'\d+'/g, (_, open: string) => `${open}'${++instance}'`)
    // All in one pass, so that a name of ours is never taken for a gap.
    .replace(gaps, (found, product: string | undefined, version: string | undefined, name: string | undefined) => {
      if (name !== undefined) return quoted(names[Number(name)] as string);
      const part = products.get((product ?? version) as string);
      if (!part) throw new Error(`the STEP text has a version of no part: ${found}`);
      return product === undefined
        ? `PRODUCT_DEFINITION_FORMATION(${quoted(part.revision)},'',#${version})`
        : `#${product} = PRODUCT(${quoted(part.number)},${quoted(part.name)},\n  ${quoted(part.description)},`;
    });
  return header(facts, schema) + finished;
}
