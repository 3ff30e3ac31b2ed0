/** Dial readings on the finished parts, as arrows in the adapter's frame. mm, degrees; angles seen from the driven side. */
import { faceRunout, rimRunout } from '../measure/all.ts';
import { turned } from '../measure/words.ts';
import { tan } from '../units/trig.ts';
import type { BuiltInput } from './schema-built.ts';
import { type DialTyped, isAround, totalOf } from './schema-readings.ts';

/** What a dial said: total indicator reading, and where readings around the turn tell, the arrow and half-width of its doubt. */
export interface DialFact {
  /** mm */
  readonly tir: number;
  /** Half-width of the doubt of a total that was read as one number, mm; 0 where readings tell an arrow, which has a doubt of its own. */
  readonly doubt: number;
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

/** A total alone: how much, and to which side nobody knows. */
function totalFact(dial: DialTyped | undefined): DialFact | null {
  const total = totalOf(dial);
  return total && { tir: total.value, doubt: total.doubt, arrow: null };
}

function rimFact(dial: DialTyped | undefined): DialFact | null {
  if (!isAround(dial)) return totalFact(dial);
  const read = rimRunout(dial);
  if (!read.ok) return null;
  const { tir, eccentricity } = read.value;
  // Inside a bore the dial reads high where the bore's middle is not.
  const angle = turned(eccentricity.angle + (dial.inside ? 180 : 0));
  return { tir, doubt: 0, arrow: { size: eccentricity.size, doubt: eccentricity.doubt, angle } };
}

function faceFact(dial: DialTyped | undefined): DialFact | null {
  if (!isAround(dial)) return totalFact(dial);
  if (dial.radius === undefined) return null;
  const read = faceRunout(dial, dial.radius);
  if (!read.ok) return null;
  const slope = (degrees: number) => tan((degrees * Math.PI) / 180);
  const { tir, tilt } = read.value;
  return { tir, doubt: 0, arrow: { size: slope(tilt.degrees), doubt: slope(tilt.doubt), angle: tilt.high } };
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
