/** A register, bore or rim from caliper or micrometer readings across it. mm, degrees. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { jawError, jawNote, smallBore, usualJawFlat } from './chord.ts';
import { fitHarmonics } from './harmonics.ts';
import { fromReadings, type Instrument, instrumentDoubt, type Measured, oddReading } from './measured.ts';
import { mm, tidy, withDoubt } from './words.ts';

export interface RegisterReadings {
  readonly readings: readonly number[];
  /** Direction of each reading, degrees; left out when not noted. */
  readonly angles?: readonly number[] | undefined;
  readonly instrument: Instrument;
  /** A bore is read with the small jaws. */
  readonly gender: 'male' | 'female';
  /** Width of the small jaws' flats, mm. */
  readonly jawFlat?: number | undefined;
}

export interface RegisterSize {
  readonly size: Measured;
  /** Greatest less smallest diameter; `angle` of the greatest (0 up to 180) when directions are known. Null for one reading. */
  readonly ovality: { readonly size: number; readonly doubt: number; readonly angle: number | null } | null;
  /** The ovality is more than the instrument could make up. */
  readonly isOval: boolean;
  readonly notes: readonly string[];
}

/**
 * Size of a register from one or more readings across it, at several directions if it is worn.
 *
 * Size: the mean (of the wave fit when directions are known, so that uneven directions do not favour one side). Doubt: the
 * instrument's own, beyond the farthest reading where they cannot be of one size; in a bore read by caliper the jaw error is added to it.
 * Ovality: a two-point reading at direction t is D + (ovality / 2) cos 2(t - t0); with directions it is fitted, else it is half
 * the spread, doubled. Misses: readings that spread more than the instrument explains and are not an oval.
 */
export function sizeRegister({
  readings,
  angles,
  instrument,
  gender,
  jawFlat = usualJawFlat,
}: RegisterReadings): Lookup<RegisterSize> {
  const [first] = readings;
  if (first === undefined) return missing('There is no reading here; measure across the register.');
  if (angles !== undefined && angles.length !== readings.length)
    return missing(`There are ${readings.length} readings for ${angles.length} directions; correct one of them.`);
  const doubt = instrumentDoubt[instrument];
  const waves = angles !== undefined && readings.length >= 3 ? fitHarmonics(readings, angles, [2], doubt) : null;
  const fitted = waves?.ok === true ? waves.value : null;
  const oval = fitted?.second ?? null;
  const odd = oddReading(readings, instrument);
  // An oval that the wave explains is worn, not misread.
  const isWorn = oval !== null && readings.length > 3 && (fitted?.remainder ?? 0) <= 2 * doubt;
  if (odd !== null && !isWorn) return missing(spreadSentence(readings, odd, instrument));
  const plain = fromReadings(readings, instrument);
  const bore = gender === 'female' && instrument === 'caliper';
  const short = bore ? jawError(fitted?.mean ?? plain.value, jawFlat) : 0;
  const size: Measured = {
    value: tidy(fitted?.mean ?? plain.value, 9),
    doubt: tidy(plain.doubt + short, 6),
    basis: readings.length > 1 ? 'repeated' : instrument === 'caliper' ? 'given' : 'stated',
    readings,
  };
  const range = Math.max(...readings) - Math.min(...readings);
  const ovality =
    oval !== null
      ? { size: 2 * oval.amplitude, doubt: 2 * oval.doubt, angle: oval.high }
      : readings.length > 1
        ? { size: range, doubt: 2 * doubt, angle: null }
        : null;
  const isOval = ovality !== null && ovality.size > ovality.doubt;
  return found({
    size,
    ovality,
    isOval,
    notes: notesOn({ readings, angles, instrument, gender }, size, ovality, isOval, bore, jawFlat),
  });
}

function notesOn(
  { readings, angles, gender, instrument }: Pick<RegisterReadings, 'readings' | 'angles' | 'gender' | 'instrument'>,
  size: Measured,
  ovality: RegisterSize['ovality'],
  isOval: boolean,
  bore: boolean,
  jawFlat: number,
): string[] {
  const notes: string[] = [];
  if (readings.length < 3) notes.push('Measure in three directions or more: one reading tells nothing of wear.');
  if (isOval && ovality !== null) {
    const where = ovality.angle === null ? '' : `, widest at ${tidy(ovality.angle, 0)} degrees`;
    const mate =
      gender === 'female' ? 'A new spigot centres on its narrow way' : 'A new recess must clear its wide way';
    notes.push(`It is ${mm(ovality.size)} out of round${where}. ${mate}.`);
  }
  if (ovality !== null && ovality.angle === null && angles === undefined && isOval)
    notes.push('Note the direction of each reading, and the ovality gets one too.');
  const jaws = bore ? jawNote(size.value, jawFlat) : null;
  if (jaws !== null) notes.push(jaws);
  if (instrument === 'ruler') notes.push('A ruler does not measure a register: use a caliper, or better a micrometer.');
  if (instrument === 'caliper' && (gender === 'male' || size.value >= smallBore))
    notes.push(
      `Good to ${withDoubt(size.value, size.doubt)}. A fit that must centre needs better: prove it with fit rings, or use a micrometer.`,
    );
  return notes;
}

function spreadSentence(readings: readonly number[], odd: number, instrument: Instrument): string {
  const spread = mm(Math.max(...readings) - Math.min(...readings));
  const [a, b] = readings;
  const which =
    readings.length === 2
      ? `${tidy(a ?? 0)} and ${tidy(b ?? 0)} mm disagree`
      : `${mm(readings[odd] ?? 0)} (number ${odd + 1} of ${readings.length}) stands apart from the others`;
  return `These readings spread over ${spread}, more than a ${instrument} can explain: ${which}. Measure again; if it is worn oval, note the direction of four readings or more.`;
}
