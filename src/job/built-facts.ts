/** Dial readings on the finished parts, as arrows in the adapter's frame. mm, degrees; angles seen from the driven side. */
import { faceRunout, rimRunout } from '../measure/all.ts';
import { turned } from '../measure/words.ts';
import { tan } from '../units/trig.ts';
import type { BuiltInput } from './schema-built.ts';
import type { DialInput } from './schema-readings.ts';

/** What a dial said: total indicator reading, and where readings around the turn tell, the arrow and half-width of its doubt. */
export interface DialFact {
  /** mm */
  readonly tir: number;
  /** Eccentricity in mm, or slope in mm per mm, towards the high side; null where only the total is known. */
  readonly arrow: { readonly size: number; readonly angle: number; readonly doubt: number } | null;
}

/** Dial readings of the finished parts; null where there are none. */
export interface BuiltFacts {
  /** Driven register against the driving one, and slope of the driven face against the driving one. */
  readonly register: DialFact | null;
  readonly face: DialFact | null;
  /** The driven flange, bolted up, against the driving axis. */
  readonly jointRim: DialFact | null;
  readonly jointFace: DialFact | null;
  /** Total indicator reading at the teeth. */
  readonly teeth: number | null;
}

type Dial = number | DialInput | undefined;

function rimFact(dial: Dial): DialFact | null {
  if (dial === undefined) return null;
  if (typeof dial === 'number') return { tir: dial, arrow: null };
  const read = rimRunout(dial);
  if (!read.ok) return null;
  const { tir, eccentricity } = read.value;
  // Inside a bore the dial reads high where the bore's middle is not.
  const angle = turned(eccentricity.angle + (dial.inside ? 180 : 0));
  return { tir, arrow: { size: eccentricity.size, doubt: eccentricity.doubt, angle } };
}

function faceFact(dial: Dial): DialFact | null {
  if (dial === undefined) return null;
  if (typeof dial === 'number') return { tir: dial, arrow: null };
  if (dial.radius === undefined) return null;
  const read = faceRunout(dial, dial.radius);
  if (!read.ok) return null;
  const slope = (degrees: number) => tan((degrees * Math.PI) / 180);
  const { tir, tilt } = read.value;
  return { tir, arrow: { size: slope(tilt.degrees), doubt: slope(tilt.doubt), angle: tilt.high } };
}

/** Facts of the dial readings under `built`; null without the section. Readings that do not fit together were refused before. */
export function builtFacts(built: BuiltInput | undefined): BuiltFacts | null {
  if (!built) return null;
  return {
    register: rimFact(built.adapter?.runout?.register),
    face: faceFact(built.adapter?.runout?.face),
    jointRim: rimFact(built.joint?.rim),
    jointFace: faceFact(built.joint?.face),
    teeth: built.wheel?.runout ?? null,
  };
}
