/** Outside diameter and centre bore, where the job leaves them open. */

import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { AdapterSpec } from '../parts/adapter-spec.ts';
import { hypot } from '../units/hypot.ts';
import { type Fixing, pocketRadius } from './fixing.ts';

export interface AdapterFlanges {
  readonly driving: ResolvedFlange;
  readonly driven: ResolvedFlange;
}

const sides = ['driving', 'driven'] as const;

/** Greatest radius of a flange's hole centres, mm. */
export function outermost(flange: ResolvedFlange): number {
  return Math.max(...flange.holes.positions.map(({ x, y }) => hypot(x, y)));
}

/** Smallest radius of a flange's hole centres, mm. */
export function innermost(flange: ResolvedFlange): number {
  return Math.min(...flange.holes.positions.map(({ x, y }) => hypot(x, y)));
}

/** Radius that a fixing's widest feature in the adapter takes up round its centre: pocket, hole or thread, mm. */
export function fixingRadius(fixing: Fixing): number {
  return fixing.threadIn === 'adapter' ? fixing.thread.d / 2 : pocketRadius(fixing);
}

/**
 * Least outside diameter that leaves the web to every hole and pocket and covers both flanges, mm, rounded up to a whole
 * millimetre. A raised ring of a female rim register is a web thick. A male rim register is the adapter's own rim: where nothing needs more, the outside is exactly that register.
 */
export function outsideFor(
  fixings: readonly Fixing[],
  flanges: AdapterFlanges,
  registers: AdapterSpec['registers'],
  room: { readonly web: number; readonly chamfer: number },
  wheelNeeds: number,
): number {
  // The rim's chamfer takes its share of the wall where a hole opens.
  const edge = room.web + room.chamfer;
  const holes = fixings.map((f) => 2 * (outermost(flanges[f.side]) + fixingRadius(f) + edge));
  const ownRim = (side: 'driving' | 'driven') => {
    const register = registers[side];
    return register?.at === 'rim' && register.gender === 'male' ? [register.diameter] : [];
  };
  const covered = sides.map((side) => ownRim(side)[0] ?? flanges[side].outside.value);
  const rings = sides.map((side) => {
    const register = registers[side];
    return register?.at === 'rim' && register.gender === 'female' ? register.diameter + 2 * room.web : 0;
  });
  const needed = Math.max(...holes, ...covered, ...rings, wheelNeeds);
  return sides.flatMap(ownRim).find((rim) => rim >= needed - 1e-9) ?? Math.ceil(needed - 1e-9);
}

/** The centre bore is taken as this share of the smallest diameter it must stay inside. Common practice: big enough for a dial. */
const boreShare = 0.5;
/** Below this a dial indicator's finger does not reach in, mm. Common practice. */
export const leastIndicatingBore = 8;

/**
 * A centre bore to indicate on: half the smaller of the registers and of the free middle inside the holes, whole millimetres.
 * Null when nothing big enough for a dial fits.
 */
export function boreFor(
  fixings: readonly Fixing[],
  flanges: AdapterFlanges,
  registers: AdapterSpec['registers'],
  web: number,
): number | null {
  const limits = [
    ...sides.flatMap((side) => {
      const register = registers[side];
      return register?.at === 'inner' ? [register.diameter - (register.gender === 'male' ? 2 * web : 0)] : [];
    }),
    ...fixings.map((f) => 2 * (innermost(flanges[f.side]) - fixingRadius(f) - web)),
  ];
  const bore = Math.floor(boreShare * Math.min(...limits));
  return bore >= leastIndicatingBore ? bore : null;
}
