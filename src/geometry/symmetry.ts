/** Turns about the axis that bring one set of holes onto another, or a set onto itself. mm, degrees. */
import { hypot } from '../units/hypot.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';

/** A hole's centre. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

const full = 2 * Math.PI;
/** Turns nearer to each other than this are one, degrees. */
const same = 1e-3;
/** Holes this near to each other meet as well as they can be made to, mm. */
const exact = 1e-9;

const angleOf = ({ x, y }: Place): number => atan2(y, x);

/** A set of holes after a turn in radians. */
function turned(holes: readonly Place[], turn: number): Place[] {
  const c = cos(turn);
  const s = sin(turn);
  return holes.map(({ x, y }) => ({ x: x * c - y * s, y: x * s + y * c }));
}

const apart = (a: Place, b: Place): number => hypot(a.x - b.x, a.y - b.y);

/** Which fixed hole each moving one meets after a turn; null when two of them meet the same one. */
function partners(moving: readonly Place[], fixed: readonly Place[], turn: number): Place[] | null {
  const met = new Set<Place>();
  for (const place of turned(moving, turn)) {
    let [nearest, least] = [fixed[0] as Place, Number.POSITIVE_INFINITY];
    for (const hole of fixed) {
      const gap = apart(place, hole);
      if (gap < least) [nearest, least] = [hole, gap];
    }
    if (met.has(nearest)) return null;
    met.add(nearest);
  }
  return [...met];
}

const worst = (moving: readonly Place[], met: readonly Place[], turn: number): number =>
  turned(moving, turn).reduce((most, place, i) => Math.max(most, apart(place, met[i] as Place)), 0);

/** The turn near `from` (radians) that makes the worst pair as near as it can be: each pair's gap only falls, then rises. */
function settled(moving: readonly Place[], met: readonly Place[], from: number): number {
  let [low, high] = [from - full / 8, from + full / 8];
  for (let step = 0; step < 120; step++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (worst(moving, met, a) <= worst(moving, met, b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

/**
 * Every turn, counter-clockwise, that brings each moving hole within `tolerance` mm of a fixed one, each of another. Where the
 * fixed holes are as many and the turns make a whole even round, they are the even ones: 120, not 119.997.
 * @returns degrees, 0 <= turn < 360, ascending; empty when none fits
 */
export function turnsOnto(moving: readonly Place[], fixed: readonly Place[], tolerance: number): number[] {
  const [first] = moving;
  if (!first || moving.length > fixed.length) return [];
  const found: number[] = [];
  for (const target of fixed) {
    const rough = angleOf(target) - angleOf(first);
    const met = partners(moving, fixed, rough);
    if (!met) continue;
    // Most patterns are exact, and need no search.
    const turn = worst(moving, met, rough) < exact ? rough : settled(moving, met, rough);
    if (worst(moving, met, turn) > tolerance) continue;
    const degrees = withinTurn(Math.round(((turn * 360) / full) * 1e6) / 1e6);
    if (!found.some((other) => Math.abs(withinTurn(other - degrees + 180) - 180) < same)) found.push(degrees);
  }
  found.sort((a, b) => a - b);
  return evened(moving, fixed, tolerance, found) ?? found;
}

/** The even round with as many turns as were found, when each of its turns fits and lies beside one of those; null otherwise. */
function evened(
  moving: readonly Place[],
  fixed: readonly Place[],
  tolerance: number,
  found: readonly number[],
): number[] | null {
  const even = found.map((_, i) => (360 * i) / found.length);
  const fits = (degrees: number): boolean => {
    const turn = (degrees * full) / 360;
    const met = partners(moving, fixed, turn);
    return met !== null && worst(moving, met, turn) <= tolerance;
  };
  return even.every(fits) ? even : null;
}

/**
 * Turns that bring a set of holes onto itself: n of them for n even holes, 0 and 180 for a rectangle, 0 alone for an uneven set.
 * @param tolerance how far a hole may miss, mm
 */
export function symmetryTurns(holes: readonly Place[], tolerance: number): number[] {
  const turns = turnsOnto(holes, holes, tolerance);
  return turns.includes(0) ? turns : [0, ...turns.slice(turns[0] !== undefined && turns[0] < same ? 1 : 0)];
}
