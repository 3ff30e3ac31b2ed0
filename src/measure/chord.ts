/**
 * Bolt circle from the distance between any two holes of an even pattern. mm, degrees.
 *
 * Two holes that stand k positions apart on a circle of diameter B with n even holes have their centres
 * c = B sin(k 180 / n) apart (geometry: half the chord over the radius is the sine of half the angle), so B = c / sin(k 180 / n).
 * The factor 1 / sin(k 180 / n) also magnifies the error of c. Valid for n >= 2 and k from 1 to n / 2.
 */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { listed } from '../units/sentence.ts';
import { sin } from '../units/trig.ts';
import { tidy } from './words.ts';

/** Words for the usual spans; any other span is a whole number of positions. */
export const spanWords = ['neighbours', 'skip_one', 'farthest'] as const;
export type SpanWord = (typeof spanWords)[number];
export type Span = SpanWord | number;

/** The farthest span of a pattern: opposite holes for an even count, nearly so for an odd one. */
export function farthestSpan(holes: number): number {
  return Math.floor(holes / 2);
}

/** How many positions a span covers, from 1 to the farthest. A miss says which spans a pattern of that many holes has. */
export function positionsOf(span: Span, holes: number): Lookup<number> {
  if (!Number.isInteger(holes) || holes < 2)
    return missing(`A bolt circle needs a whole number of holes, 2 or more; got ${holes}.`);
  const most = farthestSpan(holes);
  const positions = span === 'neighbours' ? 1 : span === 'skip_one' ? 2 : span === 'farthest' ? most : span;
  if (Number.isInteger(positions) && positions >= 1 && positions <= most) return found(positions);
  if (span === 'skip_one') return missing(`With ${holes} holes no hole is left to skip: every two are neighbours.`);
  const beyond =
    typeof span === 'number' && span > most && span < holes
      ? ` ${span} positions on is ${holes - span} the other way round.`
      : '';
  return missing(`On ${holes} holes a chord spans 1 to ${most} positions; got ${span}.${beyond}`);
}

/** Plain name of a span of k positions: "neighbours", "skip one", "opposite", "3 positions on". */
export function spanName(positions: number, holes: number): string {
  if (2 * positions === holes) return 'opposite';
  if (positions === 1) return 'neighbours';
  if (positions === 2) return 'skip one';
  return positions === farthestSpan(holes) ? 'farthest' : `${positions} positions on`;
}

/** Bolt circle over chord between centres, and so the magnification of its error: 1 / sin(k 180 / n). At least 1. */
export function chordFactor(holes: number, positions: number): number {
  return 1 / sin((positions * Math.PI) / holes);
}

export interface ChordChoice {
  readonly positions: number;
  readonly name: string;
  /** Factor from the chord's error to the bolt circle's. */
  readonly factor: number;
  readonly best: boolean;
}

/** Every chord of a pattern of n even holes, nearest span first; `best` marks the one that magnifies least (the farthest). */
export function chordChoices(holes: number): ChordChoice[] {
  const most = farthestSpan(holes);
  return Array.from({ length: most }, (_, index) => ({
    positions: index + 1,
    name: spanName(index + 1, holes),
    factor: chordFactor(holes, index + 1),
    best: index + 1 === most,
  }));
}

/** The chord to measure for the least error: the farthest. */
export function bestChord(holes: number): ChordChoice {
  const choice = chordChoices(holes).find(({ best }) => best);
  if (choice === undefined) throw new Error(`a pattern of ${holes} holes has no chord`);
  return choice;
}

/** One sentence: which chord to measure, and what each does to an error of the caliper. */
export function chordAdvice(holes: number): string {
  const choices = chordChoices(holes);
  const best = bestChord(holes);
  if (choices.length === 1) {
    return `${holes} holes have one chord; it magnifies the caliper's error ${best.factor.toFixed(2)} times.`;
  }
  const each = listed(choices.map(({ name, factor }) => `${name} ${factor.toFixed(2)}`));
  return `Best chord: ${best.name}. Of the caliper's error the circle gets, by chord: ${each} times.`;
}

/** What the caliper touched: far edges of the two holes (or bolts), near edges, or their centres. */
export const chordOvers = ['outside', 'inside', 'centres'] as const;
export type ChordOver = (typeof chordOvers)[number];

/**
 * How much a caliper's flat jaws misread a round bore: D - sqrt(D^2 - w^2), mm.
 *
 * Derived (geometry): two parallel flats of width w that touch the wall with their edges stand as far apart as the sides of a
 * rectangle of height w inscribed in the circle, sqrt(D^2 - w^2). w is the flat's width plus whatever one jaw stands sideways
 * of the other. Both in mm, 0 <= w < D. A bore reads small by this; two holes read over their far edges read short by it,
 * over their near edges long by it, so the mean of both is free of it.
 */
export function jawError(bore: number, flat: number): number {
  return bore - Math.sqrt(Math.max(0, bore * bore - flat * flat));
}

/** Flat of a caliper's small jaws where it is not known, mm: knife edges worn or ground to about this. Common practice. */
export const usualJawFlat = 0.3;

/** Bores below this read doubtfully with caliper jaws, mm. Common practice. */
export const smallBore = 25;

/** What to say of a caliper in a small bore; null for a bore that is large enough. */
export function jawNote(bore: number, flat: number = usualJawFlat): string | null {
  if (bore >= smallBore) return null;
  const short = jawError(bore, flat);
  return (
    `Caliper jaws read small bores small (common practice): flats ${tidy(flat)} mm wide read a ${tidy(bore, 2)} mm bore ` +
    `${short < 0.0005 ? 'less than 0.001' : tidy(short)} mm short (geometry), and worn or tilted jaws more. ` +
    'Prove the size with fit rings, or use a bore gauge or a turned plug.'
  );
}
