/** Where the holes of a typed pattern stand, seen as they were typed: looking at the flange's own face. mm, degrees. */
import type { HoleBeside } from '../formulas/ring-cut.ts';
import { type ChordSet, chordFactor, circleFromChords, fitCircle, type Measured } from '../measure/all.ts';
import { aroundCentre, fitLayout } from '../measure/hole-layout.ts';
import { student95 } from '../measure/least-squares.ts';
import { cos, sin } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import type { HolesInput } from './schema.ts';

export interface HolePosition {
  readonly x: number;
  readonly y: number;
}

/** Hole centres in typed order, or null while the pattern is incomplete or contradicts itself. */
export function patternOf(holes: HolesInput): HolePosition[] | null {
  if (holes.at !== undefined) return holes.at.map(([x, y]) => ({ x, y }));
  const circle = circleOf(holes);
  if (circle === null) return null;
  if (holes.angles !== undefined) return holes.angles.map((angle) => onCircle(circle, angle));
  if (holes.count === undefined) return null;
  const { count, first = 0 } = holes;
  return Array.from({ length: count }, (_, index) => onCircle(circle, first + (index * 360) / count));
}

/** Holes that get a screw, and the holes between them that stay empty. Both in typed order. */
export interface UsedHoles {
  readonly positions: readonly HolePosition[];
  readonly unused: readonly HolePosition[];
}

/**
 * Share out evenly spaced holes: hole 1 gets a screw, and so does every (count / use)th after it.
 * @param all every hole in typed order
 * @param use how many get a screw, a divisor of their number; undefined for all
 */
export function usedOf(all: readonly HolePosition[], use: number = all.length): UsedHoles {
  const step = all.length / use;
  return {
    positions: all.filter((_, i) => i % step === 0),
    unused: all.filter((_, i) => i % step !== 0),
  };
}

/** Every hole that is in the flange, with a screw or without, in typed order. */
export function holesThere({
  positions,
  unused = [],
}: Pick<UsedHoles, 'positions'> & Partial<Pick<UsedHoles, 'unused'>>): readonly HolePosition[] {
  const between = unused.length / positions.length;
  return unused.length === 0
    ? positions
    : positions.flatMap((hole, i) => [hole, ...unused.slice(i * between, (i + 1) * between)]);
}

/** Numbers of the empty holes, as they are counted in the flange from 1. */
export function emptyNumbers({ positions, unused = [] }: Parameters<typeof holesThere>[0]): number[] {
  const step = 1 + unused.length / positions.length;
  return holesThere({ positions, unused }).flatMap((_, i) => (i % step === 0 ? [] : [i + 1]));
}

/** Least distance between the centres of a hole with a screw and an empty one, mm; infinite where none is empty. */
export function nearestEmpty({ positions, unused = [] }: Parameters<typeof holesThere>[0]): number {
  const gaps = unused.flatMap((a) => positions.map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  return Math.min(Number.POSITIVE_INFINITY, ...gaps);
}

/** The holes of a flange and their size. */
export interface HolesOfFlange extends Pick<UsedHoles, 'positions'>, Partial<Pick<UsedHoles, 'unused'>> {
  readonly diameter: { readonly value: number };
}

/** For each screw that has any: the flange's other holes whose edge lies nearer to its axis than `reach`, mm, the empty ones among them. */
export function holesBeside(holes: HolesOfFlange, reach: number): HoleBeside[][] {
  const radius = holes.diameter.value / 2;
  const all = holesThere(holes);
  return holes.positions
    .map((screw) =>
      all.flatMap((hole) => {
        const distance = Math.hypot(hole.x - screw.x, hole.y - screw.y);
        return hole !== screw && distance - radius < reach ? [{ distance, radius }] : [];
      }),
    )
    .filter((beside) => beside.length > 0);
}

/** How many of so many evenly spaced holes can be used and still be evenly spaced: the divisors from 2 up, all of them included. */
export function usesOf(count: number): number[] {
  return Array.from({ length: count - 1 }, (_, i) => i + 2).filter((use) => count % use === 0);
}

/** Diameter of the hole circle: typed, or from the chord or chords. Null when none of them settles it. */
export function circleOf(holes: HolesInput): number | null {
  return measuredCircle(holes)?.value ?? null;
}

/** The hole circle with its doubt: as typed, or by circle = chord / sin(180 / count), which magnifies the doubt as well. */
export function measuredCircle(holes: HolesInput): Measured | null {
  if (holes.circle !== undefined) return holes.circle;
  if (holes.chord !== undefined && holes.count !== undefined) {
    const factor = chordFactor(holes.count, 1);
    return { value: holes.chord.value * factor, doubt: holes.chord.doubt * factor, basis: holes.chord.basis };
  }
  const set = chordSetOf(holes);
  return set?.ok === true ? set.circle : null;
}

/** What the list of chords says of the circle, or why it says nothing; null without chords or count. */
export function chordSetOf({ chords, count, diameter }: HolesInput): ChordSet | null {
  return chords === undefined || count === undefined ? null : circleFromChords(count, chords, diameter ?? null);
}

/** How well a read-out or caliper places a hole typed by its coordinates, mm. Common practice. */
const coordinateDoubt = 0.05;
/** No read-out or caliper places a hole better than this, mm. Common practice. */
const leastDoubt = 0.01;
/** Holes that stand farther off than this do not lie on one circle about the axis, mm of radius. */
const offCircle = 0.1;

/** How far a hole's centre may stand from where it was measured, mm radial: half the doubt of the circle, or the coordinates' own. */
export function positionDoubt(holes: HolesInput): number {
  const circle = measuredCircle(holes);
  if (circle !== null && holes.at === undefined) return circle.doubt / 2;
  return (holes.at === undefined ? null : fittedCircle(holes.at.map(([x, y]) => ({ x, y }))))?.doubt ?? coordinateDoubt;
}

/**
 * The circle through four or more typed coordinates about the axis, and how far a hole may stand from where it was typed: as far
 * as 95 in 100 by the scatter about even holes, or else about the circle. A scatter that plain read-out doubt explains never
 * makes the doubt larger than that. Null for fewer holes, and for holes on no one circle about the axis.
 */
export function fittedCircle(pattern: readonly HolePosition[]): { diameter: number; doubt: number } | null {
  if (pattern.length < 4) return null;
  const fit = fitCircle(pattern, coordinateDoubt);
  if (!fit.ok || Math.hypot(fit.value.centre.x, fit.value.centre.y) > offCircle) return null;
  if (fit.value.residuals.some((residual) => Math.abs(residual) > offCircle)) return null;
  const order = aroundCentre(pattern, fit.value.centre);
  const even = fitLayout(
    order.map((index) => pattern[index] as HolePosition),
    1,
    coordinateDoubt,
  );
  const isEven = even?.explained === true;
  const [freedom, deviation] = isEven
    ? [even.freedom, even.deviation ?? 0]
    : [pattern.length - 3, fit.value.standardDeviation ?? 0];
  const scatter = Math.max(leastDoubt, student95(freedom) * deviation);
  const doubt = isEven || fit.value.explained ? Math.min(coordinateDoubt, scatter) : Math.max(coordinateDoubt, scatter);
  return { diameter: fit.value.diameter, doubt };
}

/** The two holes that stand nearest each other, and how far apart; null for fewer than two. */
export function pairedHoles(
  pattern: readonly HolePosition[],
): { first: number; second: number; distance: number } | null {
  let nearest: { first: number; second: number; distance: number } | null = null;
  for (const [second, b] of pattern.entries()) {
    for (const [first, a] of pattern.slice(0, second).entries()) {
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      if (nearest === null || distance < nearest.distance - 1e-9) nearest = { first, second, distance };
    }
  }
  return nearest;
}

/** A point on a circle of that diameter, without binary noise where a coordinate is zero. */
function onCircle(diameter: number, angle: number): HolePosition {
  const turned = withinTurn(angle);
  const radians = (turned * Math.PI) / 180;
  const radius = diameter / 2;
  const x = turned === 90 || turned === 270 ? 0 : radius * cos(radians);
  const y = turned === 0 || turned === 180 ? 0 : radius * sin(radians);
  return { x, y };
}
