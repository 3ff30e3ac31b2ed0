/** Screws in only some of a flange's holes, as the way out of a web that is too thin: which number leaves enough metal. mm. */
import { webAtClocking } from '../geometry/clocking.ts';
import { webAtDistance } from '../geometry/webs.ts';
import { holesThere, usesOf } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import type { Drilling } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';
import { cos } from '../units/trig.ts';
import { mm } from './words.ts';

type Side = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

/** With fewer screws than this a face is not held all round. Common practice; the search proposes no fewer either. */
const fewest = 3;

/** A side's holes in the adapter, in typed order, where they are evenly spaced. */
function evenHoles(joint: Joint, side: Side): readonly Drilling[] {
  const { at, angles } = joint.job[side].holes ?? {};
  if (at !== undefined || angles !== undefined) return [];
  return joint.adapter.drillings.filter(({ feature }) => feature === `${side}-screws`);
}

/** Fewer screws of a side that fall on holes which have one now, most first. */
function fewerOf(joint: Joint, side: Side, now: number): number[] {
  return usesOf(holesThere(joint[side].holes).length)
    .filter((use) => use >= fewest && use < now && now % use === 0)
    .reverse();
}

const every = (holes: readonly Drilling[], use: number) => holes.filter((_, i) => i % (holes.length / use) === 0);

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/** Least web between two even patterns at the best angle: the nearest pair can stand half a turn over their least common multiple apart. */
function bestBetween(one: readonly Drilling[], other: readonly Drilling[]): number {
  const [a, b] = [one[0], other[0]];
  if (!a || !b) return Number.POSITIVE_INFINITY;
  const step = (Math.PI * divisor(one.length, other.length)) / (one.length * other.length);
  const [p, q] = [hypot(a.x, a.y), hypot(b.x, b.y)];
  return webAtDistance(a.profile, b.profile, Math.sqrt(p * p + q * q - 2 * p * q * cos(step)));
}

/** Least web between neighbours of one pattern. */
function betweenNeighbours(holes: readonly Drilling[]): number {
  const [a, b] = holes;
  return a && b ? webAtDistance(a.profile, b.profile, hypot(a.x - b.x, a.y - b.y)) : Number.POSITIVE_INFINITY;
}

/**
 * The most screws with which the web between holes is thick enough, as a clause of a cure; empty where no number does it, where one set of bolts
 * runs through both flanges, or where holes are not evenly spaced.
 * @param between the side whose own neighbours stand too near, or 'both' where the two patterns do
 * @param limit least web, mm
 */
export function fewerScrews(joint: Joint, between: Side | 'both', limit: number): string {
  if (joint.screws.some(({ fastening, seat }) => fastening === 'through' && seat === 'outside')) return '';
  const own = { driving: evenHoles(joint, 'driving'), driven: evenHoles(joint, 'driven') };
  const isGiven = joint.clocking.mode === 'given';
  const left = (side: Side, use: number): number => {
    const fewer = every(own[side], use);
    if (between !== 'both') return betweenNeighbours(fewer);
    const other = own[side === 'driving' ? 'driven' : 'driving'];
    return isGiven ? (webAtClocking(other, fewer, 0) ?? Number.POSITIVE_INFINITY) : bestBetween(other, fewer);
  };
  const found = sides
    .filter((side) => (between === 'both' ? own.driving.length > 0 && own.driven.length > 0 : side === between))
    .flatMap((side) => fewerOf(joint, side, own[side].length).map((use) => ({ side, use, web: left(side, use) })))
    .sort((a, b) => b.use - a.use)
    .find(({ web }) => web >= limit - 1e-9);
  if (!found) return '';
  const { side, use, web } = found;
  return `, or put screws in only ${use} of the ${holesThere(joint[side].holes).length} ${side} holes (${side}.holes.use: ${use}; ${mm(web)}), if they carry the torque`;
}
