/** `measure`: caliper, dial and coordinate readings to numbers with their doubt, and to a section of the job. */
import { access } from 'node:fs/promises';
import { resolve } from 'node:path';
import {
  type Answer,
  type Asked,
  answerCircle,
  answerPattern,
  answerRegister,
  answerRing,
  answerRunout,
  answerThread,
  type Instrument,
  instruments,
  type PatternList,
  searchPresets,
} from '../../core.ts';
import { exit, type Io, UsageError } from '../io.ts';
import { loadPatterns } from '../presets.ts';
import { readText } from '../read-text.ts';
import { measureQuestions } from './measure-questions.ts';
import type { Typed } from './measure-typed.ts';

export const subjects = ['circle', 'pattern', 'register', 'ring', 'runout', 'thread'] as const;
export type Subject = (typeof subjects)[number];

const text = { type: 'string', requiresArg: true } as const;

/** Every flag, by what it belongs to. Readings of one size are parted by commas. */
export const measureFlags = {
  holes: { ...text, describe: 'circle, pattern: how many holes' },
  span: { ...text, describe: 'circle: which two holes: neighbours, skip_one, farthest, or how many positions apart' },
  over: { ...text, describe: 'circle: readings over the outside (far edges) of the two holes, or of bolts in them' },
  between: { ...text, describe: 'circle: readings between them (near edges); with --over the hole size cancels' },
  centres: { ...text, describe: 'circle: readings between their centres' },
  chord: {
    ...text,
    describe: 'more chords, repeatable. circle: "skip_one over 101.2,101.25"; pattern: "1-3 over 101.2"',
  },
  hole: { ...text, describe: 'circle, pattern: diameter of the holes, or of the bolts measured over' },
  at: { ...text, nargs: 1, describe: 'pattern: a hole at x,y; repeatable' },
  rectangle: { ...text, describe: 'pattern: two spacings of four holes, 58x48' },
  diagonal: { ...text, describe: 'pattern: diagonal of the rectangle, held against the spacings' },
  centre: { ...text, nargs: 1, describe: "pattern: x,y of the register's centre in the same coordinates" },
  doubt: { ...text, describe: 'pattern: how well each coordinate is known (0.05 mm)' },
  bore: { ...text, describe: 'register that goes into the face: readings across it' },
  spigot: { ...text, describe: 'register that stands out of the face: readings across it' },
  directions: { ...text, nargs: 1, describe: 'register: direction of each reading, degrees; tells where it is oval' },
  depth: { ...text, describe: 'register: how deep it is, or how far it stands out' },
  jaw: { ...text, describe: "register: width of the flats on the caliper's small jaws (0.3 mm)" },
  rim: {
    ...text,
    nargs: 1,
    describe: 'runout: dial readings around rim or register, counter-clockwise from the x axis',
  },
  face: { ...text, nargs: 1, describe: 'runout: dial readings around the face' },
  angles: { ...text, nargs: 1, describe: 'runout: angle of each reading when the steps are not equal' },
  radius: { ...text, describe: 'runout: how far from the axis the face was read' },
  diameter: { ...text, describe: 'thread: over the crests of the screw' },
  pitch: { ...text, describe: 'thread: pitch' },
  tpi: { ...text, describe: 'thread: threads per inch' },
  ten: { ...text, describe: 'thread: length over ten pitches' },
  ring: { ...text, describe: 'ring: marked size of the smallest printed ring that went on' },
  plug: { ...text, describe: 'ring: marked size of the largest printed plug that went in' },
  step: { ...text, describe: 'ring: from one marked size to the next (0.1 mm)' },
  trusted: { ...text, describe: 'ring: a size trusted more than the printer; learns the printer instead' },
  allowance: { ...text, describe: 'ring: print.registers the gauges were made with (0.3 mm)' },
  tapped: { type: 'boolean', describe: 'thread: --diameter was read across the crests inside a tapped hole' },
  outside: { ...text, describe: "any: the flange's outside diameter; goes into the section and checks the rest" },
  instrument: { ...text, default: 'caliper', describe: `any: ${instruments.join(', ')}` },
  units: { ...text, default: 'mm', describe: 'any: what a bare number means, mm or in' },
  side: { ...text, default: 'driving', describe: 'any: the section to print, driving or driven' },
  json: { type: 'boolean', default: false, describe: 'JSON alone on standard output' },
} as const;

export const measureExamples = `Examples:
  flangewright measure circle --holes 5 --span skip_one --over 103.1,103.15 --between 87.05
  flangewright measure circle --holes 6 --chord "farthest over 92.1" --chord "neighbours over 50.1" --hole 8.1
  flangewright measure pattern holes.csv --hole 8.1        (x,y a line; or a DXF with circles or points)
  flangewright measure pattern --holes 6 --chord "1-2 centres 42" --chord "1-3 centres 72.75" ...
  flangewright measure register --bore 57.02,57.03,57.02 --directions 0,60,120 --depth 2.5
  flangewright measure ring --ring 62.1 --step 0.1         (add --trusted 62.03 to learn the printer)
  flangewright measure runout --rim 0,0.03,0.05,0.04,0.01,-0.01 --face 0,0.01,0.02,0.01 --radius 45
  flangewright measure thread --diameter 9.85 --ten 15.0
With no flags at a terminal it asks.`;

export type MeasureArguments = Readonly<Record<string, unknown>>;

export async function measure(io: Io, args: MeasureArguments): Promise<number> {
  const flags = typedFlags(args);
  const isBare =
    ownFlags(flags).length === 0 && flags.chords.length + flags.at.length === 0 && flags.texts.file === undefined;
  if (isBare && io.ask === null)
    throw new UsageError(
      `Say what was measured: ${subjects.join(', ')}, and its readings. See: flangewright measure --help.`,
    );
  const typed = isBare ? await measureQuestions(io, flags) : flags;
  const subject = subjectOf(typed);
  const answer = await answerOf(io, subject, typed);
  const patterns = await loadPatterns();
  const near = nearest(patterns, answer);
  if (args.json === true) {
    const { title, notes, result, block } = answer;
    io.out(
      `${JSON.stringify({ subject, title, result, notes, nearest: near.matches, lookalikes: near.lookalikes, block }, null, 2)}\n`,
    );
    return exit.clean;
  }
  io.out(`${say(io, answer, near)}\n`);
  return exit.clean;
}

function typedFlags(args: MeasureArguments): Typed {
  const list = (value: unknown): string[] => (value === undefined ? [] : [value].flat().map(String));
  const entries = Object.keys(measureFlags)
    .filter((key) => !['chord', 'at', 'json'].includes(key) && args[key] !== undefined)
    // A flag given twice is one more reading.
    .map((key) => [key, list(args[key]).join(',')] as const);
  const rest: { subject: unknown; file: unknown } = { subject: args.subject, file: args.file };
  // A file may be named without the word pattern before it.
  if (typeof rest.subject === 'string' && !subjects.some((word) => word === rest.subject)) {
    if (!/\.\w+$/.test(rest.subject))
      throw new UsageError(`"${rest.subject}" is not measured here; write one of ${subjects.join(', ')}.`);
    rest.file = rest.subject;
    rest.subject = 'pattern';
  }
  const named = Object.entries(rest).flatMap(([key, value]) =>
    value === undefined ? [] : [[key, String(value)] as const],
  );
  return { texts: Object.fromEntries([...entries, ...named]), chords: list(args.chord), at: list(args.at) };
}

const commonFlags = ['subject', 'file', 'outside', 'instrument', 'units', 'side', 'tapped'];

/** Flags of one subject that were given. */
function ownFlags({ texts }: Typed): string[] {
  return Object.keys(texts).filter((key) => !commonFlags.includes(key) && texts[key] !== undefined);
}

/** The subject as typed, or as the flags tell. */
function subjectOf({ texts, chords, at }: Typed): Subject {
  const named = subjects.find((word) => word === texts.subject);
  if (named !== undefined) return named;
  if (texts.bore !== undefined || texts.spigot !== undefined) return 'register';
  if (texts.ring !== undefined || texts.plug !== undefined) return 'ring';
  if (texts.rim !== undefined || texts.face !== undefined) return 'runout';
  if (texts.diameter !== undefined) return 'thread';
  if (texts.file !== undefined || texts.rectangle !== undefined || at.length > 0) return 'pattern';
  if (chords.some((chord) => /^\s*\d+\s*-\s*\d+/.test(chord))) return 'pattern';
  if (texts.holes !== undefined || chords.length > 0) return 'circle';
  throw new UsageError(`Say what was measured: ${subjects.join(', ')}. See: flangewright measure --help.`);
}

const belongs: Readonly<Record<Subject, readonly string[]>> = {
  circle: ['holes', 'span', 'over', 'between', 'centres', 'hole'],
  pattern: ['holes', 'hole', 'rectangle', 'diagonal', 'centre', 'doubt'],
  register: ['bore', 'spigot', 'directions', 'depth', 'jaw'],
  ring: ['ring', 'plug', 'step', 'trusted', 'allowance'],
  runout: ['rim', 'face', 'angles', 'radius'],
  thread: ['diameter', 'pitch', 'tpi', 'ten'],
};

async function answerOf(io: Io, subject: Subject, typed: Typed): Promise<Answer> {
  const stray = ownFlags(typed).find((key) => !belongs[subject].includes(key));
  if (stray !== undefined) {
    const own = belongs[subject].map((key) => `--${key}`).join(', ');
    throw new UsageError(`--${stray} does not belong to a ${subject}; its flags are ${own}.`);
  }
  const { texts, chords, at } = typed;
  const all = { ...texts, ...askedOf(texts) };
  const answers = {
    circle: async () => {
      if (texts.holes === undefined) throw new UsageError('How many holes are there? Give --holes.');
      return answerCircle({ ...all, holes: texts.holes, chords });
    },
    pattern: async () => {
      const file = texts.file === undefined ? undefined : { name: texts.file, text: await pointsText(io, texts.file) };
      return answerPattern({ ...all, file, at, chords });
    },
    register: async () => answerRegister(all),
    ring: async () => answerRing(all),
    runout: async () => answerRunout(all),
    thread: async () => {
      if (texts.diameter === undefined)
        throw new UsageError(
          'Give --diameter: over the crests of the screw, or with --tapped across those of the hole.',
        );
      return answerThread({ ...all, diameter: texts.diameter, tapped: texts.tapped === 'true' });
    },
  };
  const answer = await answers[subject]();
  if (!answer.ok) throw new UsageError(answer.why);
  return answer.value;
}

/** The text of a file of points; one that is not there is no job to be started. */
async function pointsText(io: Io, file: string): Promise<string> {
  const isThere = await access(resolve(io.cwd, file)).then(
    () => true,
    () => false,
  );
  if (!isThere) throw new UsageError(`There is no file ${file}, or it may not be read.`);
  return readText(io, file);
}

function askedOf(typed: Typed['texts']): Asked {
  const instrument = instruments.find((word) => word === typed.instrument?.trim().toLowerCase());
  if (instrument === undefined)
    throw new UsageError(`--instrument is ${instruments.join(', ')}; got ${typed.instrument}.`);
  const units = ({ mm: 'mm', in: 'in', inch: 'in', inches: 'in' } as const)[typed.units?.trim().toLowerCase() ?? 'mm'];
  if (units === undefined) throw new UsageError(`--units is mm or in; got ${typed.units}.`);
  const side = typed.side?.trim().toLowerCase();
  if (side !== 'driving' && side !== 'driven') throw new UsageError(`--side is driving or driven; got ${typed.side}.`);
  return { units, instrument: instrument as Instrument, side, outside: typed.outside };
}

interface Near {
  readonly matches: readonly {
    readonly id: string;
    readonly title: string;
    readonly distance: number;
    readonly differences: readonly string[];
    readonly unsuitable: string | null;
  }[];
  readonly lookalikes: readonly string[];
}

/** Farther than this nothing is alike: about so many differences that a careful caliper cannot explain. */
const farthestMatch = 8;

function nearest({ flanges, nearMisses }: PatternList, { search }: Answer): Near {
  if (search.circle === undefined && search.register === undefined && search.outside === undefined)
    return { matches: [], lookalikes: [] };
  const round = Object.fromEntries(Object.entries(search).map(([key, value]) => [key, Number(value.toFixed(2))]));
  const matches = searchPresets(flanges, round, 4).filter(({ distance }) => distance <= farthestMatch);
  const stems = new Set(
    matches.filter(({ distance }) => distance <= 3).map(({ preset }) => preset.id.replace(/-(companion|shaft)$/, '')),
  );
  const lookalikes = nearMisses
    .filter(({ a, b }) => stems.has(a) || stems.has(b))
    .map(
      ({ a, b, circles, counts, mismatch }) =>
        `${a} (${counts[0]} on ${circles[0]}) and ${b} (${counts[1]} on ${circles[1]}) look alike and are not: ${mismatch} mm out at each hole.`,
    );
  return {
    matches: matches.map(({ preset, distance, differences }) => ({
      id: preset.id,
      title: preset.title,
      distance: Number(distance.toFixed(3)),
      differences,
      unsuitable: preset.unsuitable ?? null,
    })),
    lookalikes,
  };
}

function say(io: Io, answer: Answer, { matches, lookalikes }: Near): string {
  const wasSearched = answer.search.circle !== undefined || answer.search.register !== undefined;
  const patternLines = matches.flatMap(({ id, title, differences, unsuitable }) => [
    `  ${id.padEnd(18)} ${title}${unsuitable === null ? '' : '   NOT FOR AN ADAPTER'}`,
    ...differences.map((difference) => `      ${difference}`),
  ]);
  return [
    io.paint(answer.title, 'heading'),
    ...answer.lines.map((line) => `  ${line}`),
    ...(answer.notes.length > 0 ? ['', ...answer.notes.map((note) => `- ${note}`)] : []),
    ...(matches.length > 0
      ? ['', 'Nearest known patterns (a guess for your flange, never a measurement):', ...patternLines]
      : []),
    ...(wasSearched && matches.length === 0 ? ['', 'No known pattern comes near: trust your readings.'] : []),
    ...lookalikes.map((line) => `  ${line}`),
    ...(answer.block === null ? [] : ['', 'For the job:', '', answer.block.trimEnd()]),
  ].join('\n');
}
