/**
 * What the leads of a speed sensor do on a meter, and which kinds behave so.
 *
 * Each sight is given a likelihood for each kind: how many sensors of that kind in a hundred would show it. They are judgement, common
 * practice, made from: coils of 387 to 2000 ohm (workshop manuals); supply currents of 7 and 14 mA, 5.9 to 8.4 and 11.8 to 16.8 (a
 * workshop manual); a single element that does not mind being turned in its hole (a sensor data sheet); poor signals of coils under
 * 0.38 m/s (an overview). The number of leads is not among them: coils have two or three, wheel-speed sensors two, Hall sensors two to four.
 */
import { type SensorKind, sensorKinds } from '../standards/tooth-rules.ts';

/** How likely each kind is to show a sight, 0 to 1, in the order of `sensorKinds`. */
type Likelihood = readonly [coil: number, hall: number, differential: number, twoChannel: number, active: number];

export interface Sight {
  readonly answer: string;
  readonly what: string;
  readonly likelihood: Likelihood;
}

export interface MeterTest {
  readonly id: string;
  /** What to do, a sentence. */
  readonly how: string;
  readonly sights: readonly Sight[];
}

/** The tests, the safest first: nothing is fed into a lead before its resistance is known. */
export const meterTests: readonly MeterTest[] = [
  {
    id: 'resistance',
    how: 'Unplugged and cold, measure the resistance between the leads two by two, both ways round (--resistance 1100, or open).',
    sights: [
      { answer: 'coil', what: 'a winding: 100 to 5000 ohm', likelihood: [0.95, 0.05, 0.05, 0.05, 0.03] },
      { answer: 'open', what: 'no winding: over 100 kohm or open', likelihood: [0.02, 0.45, 0.45, 0.45, 0.75] },
      { answer: 'other', what: 'neither a winding nor open', likelihood: [0.03, 0.5, 0.5, 0.5, 0.22] },
    ],
  },
  {
    id: 'polarity',
    how: 'Measure the resistance again with the leads of the meter swapped (--polarity same, or differs).',
    sights: [
      { answer: 'same', what: 'the same both ways round', likelihood: [0.97, 0.15, 0.15, 0.15, 0.1] },
      { answer: 'differs', what: 'another reading the other way round', likelihood: [0.03, 0.85, 0.85, 0.85, 0.9] },
    ],
  },
  {
    id: 'supply',
    how: 'With nothing fed to it, pass steel quickly before the tip with a meter on AC volts (--supply none where it gives volts, else needed).',
    sights: [
      { answer: 'none', what: 'gives volts of its own', likelihood: [0.95, 0.01, 0.01, 0.01, 0.01] },
      { answer: 'needed', what: 'gives nothing without a supply', likelihood: [0.05, 0.99, 0.99, 0.99, 0.99] },
    ],
  },
  {
    id: 'output',
    how: 'Plugged in, pass teeth before the tip and watch: --output grows (volts that grow with speed), switches (one lead, two levels at any speed), two (two leads, each with two levels), current (volts over 100 ohm in the supply lead step between two levels).',
    sights: [
      { answer: 'grows', what: 'volts that grow with the speed', likelihood: [0.97, 0.01, 0.01, 0.01, 0.01] },
      { answer: 'switches', what: 'one output of two levels', likelihood: [0.01, 0.9, 0.85, 0.08, 0.1] },
      { answer: 'two', what: 'two outputs of two levels', likelihood: [0.01, 0.02, 0.04, 0.9, 0.01] },
      { answer: 'current', what: 'two levels of its supply current', likelihood: [0.01, 0.07, 0.1, 0.01, 0.88] },
    ],
  },
  {
    id: 'slow',
    how: 'Turn the wheel by hand, tooth by tooth: does it still switch (--slow yes, or no)?',
    sights: [
      { answer: 'yes', what: 'still switches tooth by tooth', likelihood: [0.03, 0.95, 0.8, 0.9, 0.85] },
      { answer: 'no', what: 'silent when turned slowly', likelihood: [0.97, 0.05, 0.2, 0.1, 0.15] },
    ],
  },
  {
    id: 'turned',
    how: 'Turn the sensor a quarter in its hole: does the signal stay (--turned same), or fade (--turned fades)?',
    sights: [
      { answer: 'same', what: 'as good a quarter turn on', likelihood: [0.75, 0.95, 0.1, 0.05, 0.1] },
      { answer: 'fades', what: 'fades a quarter turn on', likelihood: [0.25, 0.05, 0.9, 0.95, 0.9] },
    ],
  },
];

/** A current of the supply lead in mA as the two levels of an active wheel-speed sensor: 5.9 to 8.4 and 11.8 to 16.8 (a workshop manual). */
export const activeLevels = { low: [5.9, 8.4], high: [11.8, 16.8] } as const;

export interface Suspect {
  readonly kind: SensorKind;
  /** 0 to 1; all five make 1. */
  readonly share: number;
}

/** Kinds by how well they explain what was seen, the likeliest first; each kind alike before anything is seen. Source: Bayes. */
export function suspects(seen: readonly Sight[]): Suspect[] {
  const weights = sensorKinds.map((kind, i) => ({
    kind,
    weight: seen.reduce((product, { likelihood }) => product * (likelihood[i] as number), 1),
  }));
  const sum = weights.reduce((total, { weight }) => total + weight, 0);
  return weights.map(({ kind, weight }) => ({ kind, share: weight / sum })).sort((a, b) => b.share - a.share);
}

const doubt = (shares: readonly Suspect[]) =>
  shares.reduce((sum, { share }) => sum - (share > 0 ? share * Math.log2(share) : 0), 0);

/** The test that was not made yet and leaves least doubt on average; null when all were made. Source: expected entropy. */
export function nextTest(seen: readonly Sight[], made: readonly string[]): MeterTest | null {
  const now = suspects(seen);
  const shareOf = (kind: SensorKind) => now.find((one) => one.kind === kind)?.share ?? 0;
  const left = meterTests
    .filter(({ id }) => !made.includes(id))
    .map((test) => ({
      test,
      doubt: test.sights.reduce((sum, sight) => {
        const chance = sensorKinds.reduce(
          (total, kind, i) => total + shareOf(kind) * (sight.likelihood[i] as number),
          0,
        );
        return sum + chance * doubt(suspects([...seen, sight]));
      }, 0),
    }));
  return (
    left.reduce<(typeof left)[number] | null>((best, one) => (best && best.doubt <= one.doubt ? best : one), null)
      ?.test ?? null
  );
}
