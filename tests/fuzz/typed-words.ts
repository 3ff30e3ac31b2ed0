/** What people type beside a job: readings at a prompt, one field of a sheet, what a sweep varies. Made by chance, and judged. */
import { parse } from 'yaml';
import { jsonLine } from '../../src/cli/shown.ts';
import {
  answerBalance,
  answerCircle,
  answerPattern,
  answerRegister,
  answerRing,
  answerRunout,
  answerSensor,
  answerThread,
  answerVibration,
  csvLine,
  editJob,
  judgeVariant,
  type PatternList,
  planSweep,
  typedValues,
} from '../../src/core.ts';
import type { Chance } from './chance.ts';
import type { KeyPath } from './grammar.ts';
import { changedNumber, damagedText, pieces } from './mutate.ts';
import { type Fault, notFinite, textFaultOf, withoutQuotes } from './oracle.ts';

/** Questions at the caliper, and for each a few things that somebody might well type. */
const questions = {
  circle: {
    ask: answerCircle,
    good: [
      { holes: '5', span: 'skip_one', over: '103.1,103.15', between: '87.05' },
      { holes: '6', span: 'farthest', over: '92.1, 92.12', hole: '8.1', outside: '112' },
      { holes: '4', span: 'neighbours', centres: '59.4', hole: '10.2' },
    ],
  },
  pattern: {
    ask: answerPattern,
    good: [
      { rectangle: '58x48', diagonal: '75.3', hole: '10.2', outside: '120' },
      { at: ['42,0', '0,42', '-42,0', '0,-42'], hole: '8.1', doubt: '0.05' },
      {
        holes: '4',
        chords: ['1-2 centres 59.4', '2-3 centres 59.4', '3-4 centres 59.4', '4-1 centres 59.4', '1-3 centres 84'],
      },
    ],
  },
  register: {
    ask: answerRegister,
    good: [
      { bore: '57.02,57.03,57.02', directions: '0,60,120', depth: '2.5' },
      { spigot: '62.00,61.99', depth: '3', jaw: '0.3 mm', outside: '112' },
    ],
  },
  ring: {
    ask: answerRing,
    good: [
      { ring: '62.1', step: '0.1' },
      { plug: '59.9', step: '0.1', trusted: '60.03', allowance: '0.3' },
    ],
  },
  runout: {
    ask: answerRunout,
    good: [
      { rim: '0,0.03,0.05,0.04,0.01,-0.01', face: '0,0.01,0.02,0.01', radius: '45' },
      { rim: '0, 0.02, 0.03, 0.01 +-0.002', angles: '0,90,180,270' },
    ],
  },
  sensor: {
    ask: answerSensor,
    good: [
      {
        resistance: '1100 ohm',
        polarity: 'same',
        supply: 'none',
        output: 'grows',
        slow: 'no',
        magnet: 'yes',
        leads: '2',
      },
      { current: '7 mA, 14 mA', turned: 'fades', supply: 'needed', slow: 'yes' },
      { resistance: 'open', supply: 'needed', output: 'two', leads: '4' },
    ],
  },
  thread: {
    ask: answerThread,
    good: [
      { diameter: '9.85', ten: '15.0', holes: '6' },
      { diameter: '0.372 in', tpi: '24' },
      { diameter: '7.9', pitch: '1.25', tapped: true },
    ],
  },
  balance: {
    ask: answerBalance,
    good: [
      { first: '4.2 at 130', trial: '10 g at 90', with: '6.1 at 70', clamp: '14 g', check: '0.8 at 40', sense: 'same' },
      { first: '4.2', trial: '10 g', runs: '0: 7.5, 120: 8.7, 240: 1.6', radius: '45', scatter: '5 %' },
      { weight: '9 kg', radius: '45', speed: '1500', duty: '4200 rpm', critical: '6000' },
      {
        first: '4.2 at 130, 4.3 at 128',
        trial: '10 g at 90',
        with: '6.1 at 70',
        fitted: '8 g at 300',
        check: '1 at 2',
      },
    ],
  },
  vibration: {
    ask: answerVibration,
    good: [
      { felt: '1800 rpm', frequency: '60 Hz', when: 'load', higher: 'grows' },
      { felt: '80 to 90 km/h', tyre: '205/65R16', axle: '4.1', frequency: '60 +-2 Hz', gear: '1', cylinders: '4' },
      { felt: '2600 rpm engine', order: '2', when: 'always', critical: '3000 rpm', gear: '0.8' },
    ],
  },
} as const;
type Question = keyof typeof questions;

const spoken = [
  'open',
  'none',
  'yes',
  'no',
  'flat',
  'square wave',
  'in gear',
  'always',
  'coasting',
  '205/65R16',
  'all',
  'mm',
  'in',
];

/** A number as a hand writes it. */
function numberWords(chance: Chance): string {
  const size = chance.pick([1, 10, 60, 100, 1000]) * chance.share();
  const text = size.toFixed(chance.whole(0, 3));
  return chance.pick([
    text,
    text,
    text,
    text.replace('.', ','),
    `-${text}`,
    `${text} mm`,
    `${text} in`,
    `1/${chance.whole(1, 64)}`,
    '0',
  ]);
}

const spans = ['1-2', '1-3', '1-4', '2-5', '0-0', '1-1', '1-99'];
const joiners = [', ', ',', ' ', ';', ' at ', ': ', ' +-', 'x', ' to ', ' over '];

/** A few numbers and words as somebody might type them, and now and then a sign that nobody would. */
function typedWords(chance: Chance): string {
  if (chance.happens(0.08)) return chance.pick(spoken);
  let text = chance.happens(0.1) ? `${chance.pick(spans)} over ` : '';
  const joiner = chance.pick(joiners);
  for (let more = chance.whole(1, 8); more > 0; more--)
    text += (text === '' ? '' : chance.happens(0.9) ? joiner : chance.pick(joiners)) + numberWords(chance);
  if (chance.happens(0.15)) {
    const at = chance.whole(0, text.length);
    text = text.slice(0, at) + chance.pick(pieces) + text.slice(at);
  }
  return text;
}

/** The same words with another number, a slip, or something else altogether. */
function spoilt(words: string, chance: Chance): string {
  if (chance.happens(0.65)) return chance.happens(0.5) ? words : changedNumber(words, chance);
  return chance.happens(0.6) ? damagedText(words, chance) : typedWords(chance);
}

/** Readings typed at a prompt, as JSON. */
export function measuredCase(chance: Chance): string {
  const what = chance.pick(Object.keys(questions)) as Question;
  const { good } = questions[what];
  const typed: Record<string, unknown> = {
    units: chance.happens(0.85) ? 'mm' : 'in',
    instrument: chance.pick(['caliper', 'micrometer']),
    side: chance.pick(['driving', 'driven']),
  };
  const isSpoilt = chance.happens(0.85);
  const change = (words: unknown): unknown => {
    if (!isSpoilt) return words;
    if (Array.isArray(words)) return words.map((one) => change(one));
    return typeof words === 'string' && chance.happens(0.5) ? spoilt(words, chance) : words;
  };
  for (const [flag, words] of Object.entries(chance.pick<Readonly<Record<string, unknown>>>(good)))
    if (!chance.happens(0.04)) typed[flag] = change(words);
  // Flags of another sample of the same question.
  for (const [flag, words] of Object.entries(chance.pick<Readonly<Record<string, unknown>>>(good)))
    if (chance.happens(0.1)) typed[flag] ??= change(words);
  // The command line asks for these two before anything else.
  if (what === 'thread') typed.diameter ??= typedWords(chance);
  if (what === 'circle') typed.holes ??= typedWords(chance);
  return JSON.stringify({ what, typed });
}

/** A key set in a job's text, or several varied: the path and the words, as JSON. */
export function editedCase(chance: Chance, paths: readonly KeyPath[], job: number): string {
  const path = chance.pick(paths).map((step) => (step === '[]' ? chance.whole(0, 3) : step));
  return JSON.stringify({ job, path, typed: chance.happens(0.1) ? null : typedWords(chance) });
}

/** Values for a key that holds some words now: round its number, a list, or anything. */
function variedValues(now: string, chance: Chance): string {
  const number = Number(/^-?\d+(\.\d+)?/.exec(now)?.[0] ?? Number.NaN);
  if (chance.happens(0.15) || (Number.isNaN(number) && chance.happens(0.3))) return typedWords(chance);
  if (Number.isNaN(number) || chance.happens(0.3)) return `${now},${spoilt(now, chance)}`;
  const unit = now.replace(/^-?\d+(\.\d+)?/, '').replace(/[,;].*$/s, '');
  const [from, to] = [number * chance.pick([0.5, 0.9, 1]), number * chance.pick([1, 1.1, 2])];
  return `${from}${unit}..${to}${unit}/${Math.abs(number) * chance.pick([0.01, 0.1, 1])}${unit}`;
}

/** What a sweep varies: one to three fields, with values as they may be typed. */
export function variedCase(
  chance: Chance,
  paths: readonly KeyPath[],
  jobTexts: readonly string[],
  job: number,
): string {
  const values = Object.entries(typedValues(jobTexts[job] ?? ''));
  const vary = Array.from({ length: chance.whole(1, 3) }, () => {
    const [key, now] = chance.pick(values);
    const name = chance.happens(0.8)
      ? key
      : chance
          .pick(paths)
          .filter((step) => step !== '[]')
          .join('.');
    const text = variedValues(now, chance);
    return chance.happens(0.97) ? `${name}=${text}` : text;
  });
  return JSON.stringify({ job, vary, at: chance.share() });
}

/** Data of a case that was made smaller may be none. */
function read<T>(bytes: string): T | null {
  try {
    const data: unknown = JSON.parse(bytes);
    return typeof data === 'object' && data !== null ? (data as T) : null;
  } catch {
    return null;
  }
}

/** A sentence for what was refused. */
function refusalFault(why: string, given: string): Fault {
  if (why.length < 10 || why.length > 1500) return `a refusal of ${why.length} letters: ${why.slice(0, 80)}`;
  return /\bNaN\b|\bInfinity\b|\bundefined\b|\[object /.test(withoutQuotes(why, given))
    ? `a refusal that says ${why}`
    : null;
}

/** Answers at the caliper: finite, in words, and what they give for the job is a section of one. */
export function measuredFault(text: string): Fault {
  const asked = read<{ what: Question; typed: never }>(text);
  const question = asked && questions[asked.what];
  if (!question || typeof asked.typed !== 'object' || asked.typed === null) return null;
  const answer = question.ask(asked.typed);
  if (!answer.ok) return refusalFault(answer.why, text);
  const { title, lines, notes, result, block } = answer.value;
  const words = [title, ...lines, ...notes, block ?? ''].join('\n');
  const fault = notFinite(result, 'result') ?? textFaultOf('the answer', words, text);
  if (fault !== null || block === null) return fault;
  const data: unknown = parse(block);
  return typeof data === 'object' && data !== null ? null : `a section that is none: ${block.slice(0, 80)}`;
}

/** A field of the sheet: what was typed stands there, or is refused; every other value stays. */
export function editedFault(text: string, jobTexts: readonly string[]): Fault {
  const asked = read<{ job: number; path: (string | number)[]; typed: string | null }>(text);
  const before = jobTexts[asked?.job ?? -1];
  if (!asked || before === undefined || !Array.isArray(asked.path)) return null;
  const edited = editJob(before, asked.path, asked.typed);
  if (!edited.ok) return refusalFault(edited.why, text);
  const [was, is] = [typedValues(before), typedValues(edited.text)];
  const name = asked.path.reduce<string>(
    (all, step) => (typeof step === 'number' ? `${all}[${step}]` : all === '' ? step : `${all}.${step}`),
    '',
  );
  const isNear = (key: string) =>
    key === name ||
    key.startsWith(`${name}.`) ||
    key.startsWith(`${name}[`) ||
    name.startsWith(`${key}.`) ||
    name.startsWith(`${key}[`);
  for (const key of new Set([...Object.keys(was), ...Object.keys(is)]))
    if (!isNear(key) && was[key] !== is[key]) return `setting ${name} made ${key} ${is[key]}, which was ${was[key]}`;
  const comments = (job: string) => job.split('\n').filter((line) => /^\s*#/.test(line)).length;
  return comments(edited.text) < comments(before) ? `setting ${name} lost a comment` : null;
}

/** A sweep: laid out or refused in words, and one of its variants says what its own job says. */
export function variedFault(text: string, jobTexts: readonly string[], patterns: PatternList): Fault {
  const asked = read<{ job: number; vary: string[]; at: number }>(text);
  const job = jobTexts[asked?.job ?? -1];
  if (!asked || job === undefined || !Array.isArray(asked.vary)) return null;
  const planned = planSweep(job, 'fuzz.job.yaml', asked.vary.map(String));
  if (!planned.ok) return refusalFault(planned.why, text);
  const { plan } = planned;
  const index = Math.min(plan.count - 1, Math.floor(Number(asked.at) * plan.count));
  const row = judgeVariant(plan, index, patterns);
  const names = plan.axes.map(({ name }) => name);
  return (
    notFinite(row, 'row') ??
    textFaultOf('the row', csvLine(names, row).replaceAll('""', '"'), text) ??
    textFaultOf('the line', jsonLine(row).replace(/\\"/g, "'"), text)
  );
}
