/** Bolt circle from chords, as typed. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { type Answer, type Asked, told } from './answer.ts';
import { type ChordOver, chordAdvice, farthestSpan, jawNote, type Span, spanWords } from './chord.ts';
import { type ChordReading, circleFromChords } from './chord-set.ts';
import { flangeBlock } from './flange-block.ts';
import type { Measured } from './measured.ts';
import { optional, typedCount, typedSize } from './typed.ts';
import { mm, withDoubt } from './words.ts';

export interface CircleTyped extends Asked {
  readonly holes: string;
  readonly span?: string | undefined;
  /** Readings over the far edges, between the near edges, and between centres, of the one span. */
  readonly over?: string | undefined;
  readonly between?: string | undefined;
  readonly centres?: string | undefined;
  /** More chords, each "SPAN over|between|centres READINGS". */
  readonly chords?: readonly string[] | undefined;
  /** Diameter of the holes, or of the bolts in them. */
  readonly hole?: string | undefined;
}

/** Words for what the caliper touched, and the job's word for each. */
const touched: Readonly<Record<string, ChordOver>> = {
  over: 'outside',
  outside: 'outside',
  between: 'inside',
  inside: 'inside',
  centres: 'centres',
  centers: 'centres',
};

/** The bolt circle of an even pattern from one or more typed chords. */
export function answerCircle(typed: CircleTyped): Lookup<Answer> {
  const count = typedCount(typed.holes, 'Number of holes', 2, 72);
  if (!count.ok) return count;
  const holes = count.value;
  const hole = optional(typed.hole, (text) => typedSize(text, 'Hole diameter', typed));
  if (!hole.ok) return hole;
  const outside = optional(typed.outside, (text) => typedSize(text, 'Outside diameter', typed));
  if (!outside.ok) return outside;
  const readings = readingsOf(typed, holes);
  if (!readings.ok) return readings;
  const set = circleFromChords(holes, readings.value, hole.value ?? null);
  if (!set.ok) return missing(set.why);
  const size = hole.value ?? set.hole ?? undefined;
  const rim = rimFault(set.circle, size, outside.value, holes);
  if (rim !== null) return missing(rim);
  const { circle, estimates } = set;
  const jaws = size === undefined || typed.instrument !== 'caliper' ? null : jawNote(size.value);
  return found({
    title: `Bolt circle ${told(circle, typed)}, ${holes} holes.`,
    lines: [
      ...estimates.map(
        ({ how, centres, centresDoubt, factor, circle: own, doubt }) =>
          `${how}: centres ${withDoubt(centres, centresDoubt)}, times ${factor.toFixed(4)} = ${withDoubt(own, doubt)}`,
      ),
      ...(set.hole === null
        ? []
        : [`holes (or bolts) by the same readings: ${withDoubt(set.hole.value, set.hole.doubt)}`]),
    ],
    notes: [
      chordAdvice(holes),
      ...(readings.value.some(({ over }) => over === 'centres')
        ? [
            'Centres are hard to see: over the outside and between the inside of the same two holes is surer, and cancels the hole size.',
          ]
        : []),
      ...(holes > 3 && estimates.length === 1
        ? ['One span takes even spacing on trust: measure another span, or another pair, to check it.']
        : []),
      ...(set.isScattered
        ? ['The spans disagree by more than the caliper explains, as drilled holes do; the doubt covers it.']
        : []),
      ...(jaws === null ? [] : [`Of the holes themselves: ${jaws}`]),
    ],
    result: { holes, circle, hole: size ?? null, estimates },
    search: { circle: circle.value, holes, ...(outside.value === undefined ? {} : { outside: outside.value.value }) },
    block: flangeBlock(typed.side, {
      outside: outside.value,
      holes: {
        count: holes,
        chords: readings.value,
        diameter: size,
      },
      instrument: typed.instrument,
    }),
  });
}

function readingsOf(typed: CircleTyped, holes: number): Lookup<ChordReading[]> {
  const readings: ChordReading[] = [];
  const word = typed.span ?? (farthestSpan(holes) === 1 ? 'neighbours' : undefined);
  for (const [key, over] of [
    ['over', 'outside'],
    ['between', 'inside'],
    ['centres', 'centres'],
  ] as const) {
    const text = typed[key];
    if (text === undefined || text.trim() === '') continue;
    if (word === undefined)
      return missing(
        `Which two of the ${holes} holes? Say the span: ${spanWords.join(', ')}, or how many positions apart.`,
      );
    const one = readingOf(word, over, text, typed);
    if (!one.ok) return one;
    readings.push(one.value);
  }
  for (const chord of typed.chords ?? []) {
    const [span = '', edge = '', ...rest] = chord.trim().split(/\s+/);
    const over = touched[edge.toLowerCase()];
    if (over === undefined || rest.length === 0)
      return missing(
        `"${chord.slice(0, 40)}" is not a chord; write for example "skip_one over 101.2,101.25" (${Object.keys(touched).slice(0, 5).join(', ')}).`,
      );
    const one = readingOf(span, over, rest.join(' '), typed);
    if (!one.ok) return one;
    readings.push(one.value);
  }
  return readings.length > 0
    ? found(readings)
    : missing('There is no reading here: give one over the outside of two holes, between them, or centre to centre.');
}

function readingOf(span: string, over: ChordOver, text: string, typed: CircleTyped): Lookup<ChordReading> {
  const key = spanOf(span);
  if (!key.ok) return key;
  const reading = typedSize(text, `Reading ${over === 'centres' ? 'between centres' : `over the ${over}`}`, typed);
  return reading.ok ? found({ span: key.value, over, reading: reading.value }) : reading;
}

function spanOf(text: string): Lookup<Span> {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  const word = spanWords.find((known) => known === plain || (plain.length > 2 && known.startsWith(plain)));
  if (word !== undefined) return found(word);
  if (/^\d{1,2}$/.test(plain)) return found(Number(plain));
  if (plain === 'opposite') return found('farthest');
  return missing(
    `"${text.slice(0, 30)}" is no span; write ${spanWords.join(', ')}, or how many positions apart the two holes stand.`,
  );
}

/** Holes off the rim: the chord was too long for this flange. */
function rimFault(
  circle: Measured,
  hole: Measured | undefined,
  outside: Measured | undefined,
  holes: number,
): string | null {
  if (outside === undefined) return null;
  const reach = circle.value + (hole?.value ?? 0);
  if (reach < outside.value) return null;
  const slip =
    reach < 2 * outside.value
      ? ` Was the radius of the outside typed? Twice ${outside.value} is ${mm(2 * outside.value)}.`
      : '';
  return `A bolt circle of ${mm(circle.value)} with these holes reaches ${mm(reach)}, past the rim of ${mm(outside.value)}: centres can be ${mm(outside.value - (hole?.value ?? 0))} apart at the most. Are there ${holes} holes, and which two were measured?${slip}`;
}
