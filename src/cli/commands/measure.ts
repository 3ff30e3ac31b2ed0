/** `measure`: caliper, dial and coordinate readings to numbers with their doubt, and to a section of the job. */
import { access } from 'node:fs/promises';
import { resolve } from 'node:path';
import {
  type Answer,
  type Asked,
  answerBalance,
  answerCircle,
  answerPattern,
  answerRegister,
  answerRing,
  answerRunout,
  answerSensor,
  answerThread,
  answerVibration,
  farthestMatch,
  type Instrument,
  instruments,
  type PatternList,
  searchPresets,
} from '../../core.ts';
import { exit, type Io, UsageError } from '../io.ts';
import { loadPatterns } from '../presets.ts';
import { readText } from '../read-text.ts';
import { jsonText, shown } from '../shown.ts';
import { belongs, commonFlags, measureFlags, type Subject, subjects } from './measure-flags.ts';
import { measureQuestions } from './measure-questions.ts';
import type { Typed } from './measure-typed.ts';

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
    io.out(jsonText({ subject, title, result, notes, nearest: near.matches, lookalikes: near.lookalikes, block }));
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

/** Flags of one subject that were given. */
function ownFlags({ texts }: Typed): string[] {
  return Object.keys(texts).filter((key) => !commonFlags.includes(key) && texts[key] !== undefined);
}

/** The subject as typed, or as the flags tell. */
function subjectOf({ texts, chords, at }: Typed): Subject {
  const named = subjects.find((word) => word === texts.subject);
  if (named !== undefined) return named;
  if (['first', 'trial', 'weight'].some((key) => texts[key] !== undefined)) return 'balance';
  if (['felt', 'order', 'frequency'].some((key) => texts[key] !== undefined)) return 'vibration';
  if (belongs.sensor.some((key) => texts[key] !== undefined)) return 'sensor';
  if (texts.bore !== undefined || texts.spigot !== undefined) return 'register';
  if (texts.ring !== undefined || texts.plug !== undefined) return 'ring';
  if (texts.rim !== undefined || texts.face !== undefined) return 'runout';
  if (texts.diameter !== undefined) return 'thread';
  if (texts.file !== undefined || texts.rectangle !== undefined || at.length > 0) return 'pattern';
  if (chords.some((chord) => /^\s*\d+\s*-\s*\d+/.test(chord))) return 'pattern';
  if (texts.holes !== undefined || chords.length > 0) return 'circle';
  throw new UsageError(`Say what was measured: ${subjects.join(', ')}. See: flangewright measure --help.`);
}

async function answerOf(io: Io, subject: Subject, typed: Typed): Promise<Answer> {
  const stray = ownFlags(typed).find((key) => !belongs[subject].includes(key));
  if (stray !== undefined) {
    const own = belongs[subject].map((key) => `--${key}`).join(', ');
    throw new UsageError(`--${stray} does not belong to a ${subject}; its flags are ${own}.`);
  }
  const { texts, chords, at } = typed;
  const all = { ...texts, ...askedOf(texts) };
  const answers = {
    balance: async () => answerBalance(all),
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
    sensor: async () => answerSensor(all),
    thread: async () => {
      if (texts.diameter === undefined)
        throw new UsageError(
          'Give --diameter: over the crests of the screw, or with --tapped across those of the hole.',
        );
      return answerThread({ ...all, diameter: texts.diameter, tapped: texts.tapped === 'true' });
    },
    vibration: async () => answerVibration(all),
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
    io.paint(shown(answer.title), 'heading'),
    ...answer.lines.map((line) => `  ${shown(line)}`),
    ...(answer.notes.length > 0 ? ['', ...answer.notes.map((note) => `- ${shown(note)}`)] : []),
    ...(matches.length > 0
      ? ['', 'Nearest known patterns (a guess for your flange, never a measurement):', ...patternLines]
      : []),
    ...(wasSearched && matches.length === 0 ? ['', 'No known pattern comes near: trust your readings.'] : []),
    ...lookalikes.map((line) => `  ${line}`),
    ...(answer.block === null ? [] : ['', 'For the job:', '', shown(answer.block.trimEnd())]),
  ].join('\n');
}
