/** One case by its number: the same seed and number give the same input everywhere. */
import { stringify } from 'yaml';
import { type Chance, chanceFrom } from './chance.ts';
import { drawing, pointTable } from './drawings.ts';
import { graft, grow, type KeyPath } from './grammar.ts';
import { mended } from './mend.ts';
import { damagedBytes, damagedData, damagedText, rawBytes } from './mutate.ts';
import { jobFault, pointsFault, preflightFault } from './oracle.ts';
import { editedCase, editedFault, measuredCase, measuredFault, variedCase, variedFault } from './typed-words.ts';
import type { World } from './world.ts';

/** Ways a case comes about; a way that stands twice comes twice as often. */
export const kinds = [
  'job grown from the schema',
  'shipped job with a grown key',
  'shipped job with grown keys',
  'shipped job, data damaged',
  'shipped job, text damaged',
  'wild job',
  'raw bytes as a job',
  'table of points',
  'drawing for its holes',
  'drawing before cutting',
  'shipped job with a grown key',
  'shipped job, data damaged',
  'readings typed at a prompt',
  'field of a sheet',
  'what a sweep varies',
] as const;

export type Kind = (typeof kinds)[number];

export interface Case {
  readonly number: number;
  readonly kind: Kind;
  readonly bytes: Uint8Array;
  /** File ending, for a case that is kept. */
  readonly ending: string;
  /** How the reader is asked. */
  readonly asked: Asked;
  /** The key that was grown on purpose. */
  readonly path: KeyPath | null;
}

export interface Asked {
  readonly search: boolean;
  readonly kinds: readonly string[];
  readonly units: 'mm' | 'in';
  readonly hole?: number;
}

/** Kinds of files that take little time; the exact kernel and the booleans of fit rings take their turn. */
const quickKinds = [
  'mockup',
  'wheel-mockup',
  'outline',
  'preview',
  'report',
  'bracket',
  'order',
  'inspection',
  'shaft',
  'gap-card',
  'bracket-mockup',
];
const slowKinds = ['rings', 'paper', 'signal', 'bench-sheet', 'setup', 'program', 'drawing', '3mf'];

function askedBy(chance: Chance, number: number): Asked {
  const files = number % 48 === 1 ? [...quickKinds, ...slowKinds] : number % 8 === 1 ? quickKinds : [];
  return {
    search: chance.happens(0.25),
    kinds: files,
    units: chance.pick(['mm', 'in'] as const),
    ...(chance.happens(0.3) ? { hole: chance.whole(0, 40) } : {}),
  };
}

/** Text of some data in YAML's block or flow style. */
const written = (data: unknown, chance: Chance) =>
  chance.happens(0.8) ? stringify(data) : JSON.stringify(data, null, 1);

/** Make case `number` of a seed. */
export function makeCase(world: World, seed: number, number: number): Case {
  const chance = chanceFrom(Math.imul(seed, 0x9e3779b1) + Math.imul(number, 0x85ebca77));
  const kind = kinds[number % kinds.length] as Kind;
  const asked = askedBy(chance, Math.floor(number / kinds.length));
  const growing = { chance, seen: world.seen, wild: 0, fullness: 0.3 };
  const shipped = chance.pick(world.jobs);
  const path = world.paths[Math.floor(number / kinds.length) % world.paths.length] as KeyPath;
  const wild = () => grow({ type: ['number', 'string'] }, { ...growing, wild: 0.5 });
  const mend = (data: unknown, kept: KeyPath | null = null) =>
    chance.happens(0.85) ? mended(data, kept, chance) : data;
  const job = (text: string, grown: KeyPath | null = null): Case => ({
    number,
    kind,
    asked,
    path: grown,
    ending: 'job.yaml',
    bytes: new TextEncoder().encode(text),
  });
  const file = (ending: string, text: string): Case => {
    const bytes = new TextEncoder().encode(text);
    return {
      number,
      kind,
      asked,
      path: null,
      ending,
      bytes: chance.happens(0.25) ? damagedBytes(bytes, chance) : bytes,
    };
  };
  const typed = (text: string): Case => ({ ...job(text), ending: 'json' });
  const which = chance.whole(0, world.jobTexts.length - 1);
  switch (kind) {
    case 'readings typed at a prompt':
      return typed(measuredCase(chance));
    case 'field of a sheet':
      return typed(editedCase(chance, world.paths, which));
    case 'what a sweep varies':
      return typed(variedCase(chance, world.paths, world.jobTexts, which));
    case 'job grown from the schema':
      return job(written(mend(grow(world.schema, { ...growing, fullness: chance.pick([0.1, 0.3, 0.6]) })), chance));
    case 'shipped job with a grown key':
      return job(written(mend(graft(world.schema, path, shipped, growing), path), chance), path);
    case 'shipped job with grown keys': {
      let data: unknown = shipped;
      for (let more = chance.whole(2, 6); more > 0; more--)
        data = graft(world.schema, chance.pick(world.paths), data, growing);
      return job(written(mend(data), chance));
    }
    case 'shipped job, data damaged':
      return job(written(mend(damagedData(shipped, chance, wild)), chance));
    case 'shipped job, text damaged':
      return job(damagedText(chance.pick(world.jobTexts), chance));
    case 'wild job':
      return job(written(grow(world.schema, { ...growing, wild: 0.15, fullness: 0.5 }), chance));
    case 'raw bytes as a job':
      return { ...job(''), bytes: rawBytes(chance) };
    case 'table of points':
      return file('csv', pointTable(chance));
    case 'drawing for its holes':
    case 'drawing before cutting':
      return file('dxf', drawing(chance));
  }
}

export interface Outcome {
  readonly fault: string | null;
  readonly becameJoint: boolean;
  /** The grown key was read without a word against it. */
  readonly pathTaken: boolean;
}

/** Run a case; a throw is a fault. */
export async function runCase(world: World, { kind, bytes, asked, path }: Case): Promise<Outcome> {
  const said = (fault: string | null): Outcome => ({ fault, becameJoint: false, pathTaken: false });
  try {
    if (kind === 'table of points') return said(pointsFault('csv', bytes, asked.units));
    if (kind === 'drawing for its holes') return said(pointsFault('dxf', bytes, asked.units, asked.hole));
    if (kind === 'drawing before cutting')
      // A thickness of 0 is turned away before: it stands for a drawing of which nothing is known.
      return said(preflightFault(bytes, asked.hole || undefined, asked.hole === 0 ? undefined : asked.units));
    const text = new TextDecoder().decode(bytes);
    if (kind === 'readings typed at a prompt') return said(measuredFault(text));
    if (kind === 'field of a sheet') return said(editedFault(text, world.jobTexts));
    if (kind === 'what a sweep varies') return said(variedFault(text, world.jobTexts, world.patterns));
    const { fault, becameJoint, errors } = await jobFault(text, world.patterns, asked);
    const way = (path ?? []).filter((step) => step !== '[]').join('.');
    const against = errors.some((error) => {
      const at = error.path.replace(/\[\d+\]/g, '');
      return at === '' || at === way || at.startsWith(`${way}.`) || way.startsWith(`${at}.`);
    });
    return { fault, becameJoint, pathTaken: path !== null && !against };
  } catch (error) {
    return said(error instanceof Error ? `throws ${error.stack ?? error.message}` : `throws ${String(error)}`);
  }
}
