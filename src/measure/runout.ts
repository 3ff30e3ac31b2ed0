/** What a dial indicator says around a rim or a face: eccentricity or tilt with its direction, ovality, and what is left. */
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import { atan } from '../units/trig.ts';
import { fitHarmonics, leastReadings } from './harmonics.ts';
import { instrumentDoubt } from './measured.ts';
import { mm, tidy, turned } from './words.ts';

/** Readings in mm, plus where the surface comes towards the dial; angles in degrees, counter-clockwise looking at the face. */
export interface DialReadings {
  readonly readings: readonly number[];
  readonly angles: readonly number[];
  /** Half-width of one reading, mm; a dial's own when left out. */
  readonly doubt?: number;
}

export interface RimRunout {
  /** Total indicator reading, and its doubt, mm. */
  readonly tir: number;
  readonly tirDoubt: number;
  /** How far the middle of the rim stands off the axis of turning, and towards which angle. */
  readonly eccentricity: { readonly size: number; readonly doubt: number; readonly angle: number };
  /** Greatest less smallest diameter, and the angle of the greatest (0 up to 180); null when too few readings. */
  readonly ovality: { readonly size: number; readonly doubt: number; readonly angle: number } | null;
  /** Largest part of a reading that none of these explains. */
  readonly remainder: number;
  readonly notes: readonly string[];
}

export interface FaceRunout {
  readonly tir: number;
  readonly tirDoubt: number;
  /** Tilt of the face in degrees, and the angle at which it stands highest. */
  readonly tilt: {
    readonly degrees: number;
    readonly doubt: number;
    readonly high: number;
    readonly amplitude: number;
  };
  /** Twice-a-turn wave of the face (a saddle), whole height; null when too few readings. */
  readonly saddle: { readonly size: number; readonly angle: number } | null;
  readonly remainder: number;
  readonly notes: readonly string[];
}

/**
 * Run-out of a rim or register. A round rim whose middle stands e off the axis reads e cos(t - t0) about its mean
 * (to first order in e / radius): the once-a-turn wave is the eccentricity, the twice-a-turn wave half the ovality.
 * Three readings or more; five or more for the ovality.
 */
export function rimRunout(dial: DialReadings): Lookup<RimRunout> {
  return andThen(wavesOf(dial), ({ tir, doubt, waves, notes }) =>
    found({
      tir,
      tirDoubt: 2 * doubt,
      eccentricity: {
        size: waves.first?.amplitude ?? 0,
        doubt: waves.first?.doubt ?? 0,
        angle: waves.first?.high ?? 0,
      },
      ovality:
        waves.second === null
          ? null
          : { size: 2 * waves.second.amplitude, doubt: 2 * waves.second.doubt, angle: waves.second.high },
      remainder: waves.remainder,
      notes: [...notes, ...remainderNote(waves.remainder, doubt, dial.readings.length)],
    }),
  );
}

/**
 * Run-out of a face, read at `radius` mm from the axis. A flat face tilted by g reads r tan(g) cos(t - t0):
 * tilt = atan(amplitude / radius). Three readings or more; five or more for the saddle.
 */
export function faceRunout(dial: DialReadings, radius: number): Lookup<FaceRunout> {
  if (!(radius > 0)) return missing(`The radius at which the face was read must be above 0; got ${radius}.`);
  const degrees = (height: number) => (atan(height / radius) * 180) / Math.PI;
  return andThen(wavesOf(dial), ({ tir, doubt, waves, notes }) =>
    found({
      tir,
      tirDoubt: 2 * doubt,
      tilt: {
        degrees: degrees(waves.first?.amplitude ?? 0),
        doubt: degrees(waves.first?.doubt ?? 0),
        high: waves.first?.high ?? 0,
        amplitude: waves.first?.amplitude ?? 0,
      },
      saddle: waves.second === null ? null : { size: 2 * waves.second.amplitude, angle: waves.second.high },
      remainder: waves.remainder,
      notes: [...notes, ...remainderNote(waves.remainder, doubt, dial.readings.length)],
    }),
  );
}

function wavesOf({ readings, angles, doubt = instrumentDoubt.dial }: DialReadings) {
  const fault = anglesFault(readings, angles);
  if (fault !== null) return missing(fault);
  const tells = readings.length >= leastReadings.second;
  return andThen(fitHarmonics(readings, angles, tells ? [1, 2] : [1], doubt), (waves) => {
    const notes = tells
      ? []
      : [`${readings.length} readings tell no ovality: take ${leastReadings.second} or more, better 8 or 12.`];
    if (readings.length === 3)
      notes.push('Three readings leave nothing to check them by: ovality would show as eccentricity.');
    const tir = tidy(Math.max(...readings) - Math.min(...readings), 9);
    return found({ tir, doubt, waves, notes });
  });
}

function anglesFault(readings: readonly number[], angles: readonly number[]): string | null {
  if (readings.length < leastReadings.first)
    return `${readings.length} dial readings are too few for an eccentricity and its direction: take ${leastReadings.first} or more around the turn.`;
  if (readings.length !== angles.length)
    return `There are ${readings.length} readings for ${angles.length} angles; correct one of them.`;
  const sorted = angles.map(turned).sort((a, b) => a - b);
  const twice = sorted.find((angle, index) => index > 0 && angle - (sorted[index - 1] ?? 0) < 1e-6);
  return twice === undefined
    ? null
    : `Two readings stand at ${tidy(twice)} degrees; give each place once (the last turn comes back to the first).`;
}

function remainderNote(remainder: number, doubt: number, count: number): string[] {
  if (count <= leastReadings.second || remainder <= 3 * doubt) return [];
  return [
    `${mm(remainder)} of one reading is neither eccentricity nor ovality: a burr, a dent or a slipped dial. Read that place again.`,
  ];
}
