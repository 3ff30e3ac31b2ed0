/** What was measured as the `driving:` or `driven:` section of a job, ready to paste. Every length carries its unit. */
import { type ChordReading, type ChordSet, circleFromChords } from './chord-set.ts';
import type { Point } from './circle-fit.ts';
import { fromReadings, type Instrument, type Measured, oddReading } from './measured.ts';
import { tidy, withDoubt } from './words.ts';

export interface DialBlock {
  readonly readings: readonly number[];
  /** Left out when the readings stand at equal steps from the x axis. */
  readonly angles?: readonly number[] | undefined;
  /** Face only: where it was read, mm from the axis. */
  readonly radius?: number | undefined;
  /** Half-width of the doubt of each reading, mm; left out where the usual one of a dial is meant. */
  readonly doubt?: number | undefined;
}

/** Only what was measured; lengths mm, angles degrees. */
export interface BlockParts {
  readonly outside?: Measured | undefined;
  readonly register?:
    | { readonly gender: 'male' | 'female'; readonly diameter: Measured; readonly depth?: Measured | undefined }
    | undefined;
  readonly holes?:
    | {
        readonly count?: number | undefined;
        readonly circle?: Measured | undefined;
        readonly chords?: readonly ChordReading[] | undefined;
        readonly at?: readonly Point[] | undefined;
        readonly angles?: readonly number[] | undefined;
        readonly first?: number | undefined;
        readonly diameter?: Measured | undefined;
        readonly thread?: string | undefined;
      }
    | undefined;
  readonly runout?: { readonly rim?: DialBlock | undefined; readonly face?: DialBlock | undefined } | undefined;
  readonly instrument?: Instrument | undefined;
}

/**
 * The section as YAML text that a job reads as it is. Readings are kept as they were read, so the job does the same sums with
 * the same doubt; a comment tells the result. A register without its depth is written as a comment, for the job asks for it.
 */
export function flangeBlock(side: 'driving' | 'driven', parts: BlockParts): string {
  const { outside, register, holes, runout, instrument = 'caliper' } = parts;
  const lines = [`${side}:`];
  if (outside !== undefined) lines.push(`  outside: ${measuredText(outside, instrument)}`);
  if (register !== undefined) {
    const text = [
      `register:`,
      `  gender: ${register.gender}`,
      `  diameter: ${measuredText(register.diameter, instrument)}   # ${withDoubt(register.diameter.value, register.diameter.doubt)}`,
    ];
    if (register.depth === undefined) {
      lines.push(
        ...text.map((line) => `  # ${line}`),
        '  #   depth: ?   # measure it with the depth rod, and take the # away',
      );
    } else {
      lines.push(...[...text, `  depth: ${measuredText(register.depth, instrument)}`].map((line) => `  ${line}`));
    }
  }
  if (holes !== undefined) lines.push('  holes:', ...holesLines(holes, instrument).map((line) => `    ${line}`));
  const dials = [dialLine('rim', runout?.rim), dialLine('face', runout?.face)].filter((line) => line !== null);
  if (dials.length > 0) lines.push('  runout:', ...dials.map((line) => `    ${line}`));
  if (lines.length === 1 || lines.slice(1).every((line) => line.trim().startsWith('#'))) lines[0] = `${side}: {}`;
  return `${lines.join('\n')}\n`;
}

function holesLines(holes: NonNullable<BlockParts['holes']>, instrument: Instrument): string[] {
  const lines: string[] = [];
  const { count, circle, chords, at, angles, first, diameter, thread } = holes;
  if (count !== undefined) lines.push(`count: ${count}`);
  if (chords !== undefined && chords.length > 0) {
    const set = count === undefined ? null : circleFromChords(count, chords, diameter ?? null);
    lines.push(`chords:${circleComment(set)}`);
    for (const { span, over, reading, pin } of chords) {
      const pinText = pin === undefined ? '' : `, pin: ${measuredText(pin, instrument)}`;
      lines.push(`  - { span: ${span}, over: ${over}, reading: ${measuredText(reading, instrument)}${pinText} }`);
    }
  }
  if (circle !== undefined) lines.push(`circle: ${measuredText(circle, instrument)}`);
  if (first !== undefined && tidy(first) !== 0) lines.push(`first: ${tidy(first)} deg`);
  if (angles !== undefined) lines.push(`angles: [${angles.map((angle) => `${tidy(angle)} deg`).join(', ')}]`);
  if (at !== undefined) lines.push('at:', ...at.map(({ x, y }) => `  - [${tidy(x)} mm, ${tidy(y)} mm]`));
  if (diameter !== undefined) lines.push(`diameter: ${measuredText(diameter, instrument)}`);
  if (thread !== undefined) lines.push(`thread: ${thread}`);
  return lines;
}

function circleComment(set: ChordSet | null): string {
  return set?.ok === true ? `   # circle ${withDoubt(set.circle.value, set.circle.doubt)}` : '';
}

/** A measured size in the job's own words: one number, its readings, or value and doubt. */
export function measuredText(size: Measured, instrument: Instrument): string {
  const { value, doubt, readings } = size;
  const length = (number: number) => `${tidy(number, 4)} mm`;
  const tool = instrument === 'caliper' ? '' : `, instrument: ${instrument}`;
  if (readings !== undefined && readings.length > 0 && oddReading(readings, instrument) === null) {
    const plain = fromReadings(readings, instrument);
    const text = `[${readings.map(length).join(', ')}]`;
    const isPlain = Math.abs(plain.value - value) < 1e-6 && Math.abs(plain.doubt - doubt) < 1e-6;
    if (isPlain) return tool === '' ? text : `{ readings: ${text}${tool} }`;
    return `{ value: ${length(value)}, doubt: ${length(doubt)}, readings: ${text}${tool} }`;
  }
  if (size.basis === 'given' && instrument === 'caliper') return length(value);
  return `{ value: ${length(value)}, doubt: ${length(doubt)} }`;
}

function dialLine(key: string, dial: DialBlock | undefined): string | null {
  if (dial === undefined) return null;
  const readings = `[${dial.readings.map((reading) => `${tidy(reading, 4)} mm`).join(', ')}]`;
  if (dial.angles === undefined && dial.radius === undefined && dial.doubt === undefined) return `${key}: ${readings}`;
  const angles =
    dial.angles === undefined ? '' : `, angles: [${dial.angles.map((angle) => `${tidy(angle)} deg`).join(', ')}]`;
  const radius = dial.radius === undefined ? '' : `, radius: ${tidy(dial.radius)} mm`;
  const doubt = dial.doubt === undefined ? '' : `, doubt: ${tidy(dial.doubt, 4)} mm`;
  return `${key}: { readings: ${readings}${angles}${radius}${doubt} }`;
}
