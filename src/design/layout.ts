/** Outside diameter, centre bore and vise flats, where the job leaves them open. */
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { AdapterSpec } from '../parts/adapter-spec.ts';
import { type Fixing, pocketRadius } from './fixing.ts';

/** Greatest radius of a flange's hole centres, mm. */
export function outermost(flange: ResolvedFlange): number {
  return Math.max(...flange.holes.positions.map(({ x, y }) => Math.hypot(x, y)));
}

/** Smallest radius of a flange's hole centres, mm. */
export function innermost(flange: ResolvedFlange): number {
  return Math.min(...flange.holes.positions.map(({ x, y }) => Math.hypot(x, y)));
}

/** Radius that a fixing's widest feature in the adapter takes up round its centre: pocket, hole or thread, mm. */
export function fixingRadius(fixing: Fixing): number {
  return fixing.threadIn === 'adapter' ? fixing.thread.d / 2 : pocketRadius(fixing);
}

/**
 * Least outside diameter that leaves the web to every hole and pocket and covers both flanges, mm, rounded up to a whole millimetre.
 * A male rim register is the adapter's own rim, so the outside is then exactly that register if nothing else needs more.
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
  const holes = Math.max(...fixings.map((f) => 2 * (outermost(flanges[f.side]) + fixingRadius(f) + edge)));
  const rims = Math.max(
    ...(['driving', 'driven'] as const).map((side) => {
      const register = registers[side];
      if (register?.at !== 'rim') return flanges[side].outside.value;
      if (register.gender === 'male') return register.diameter;
      // A raised ring goes round the flange's rim: its wall stands between the mouth's chamfer and its own.
      return Math.max(flanges[side].outside.value, Math.ceil(register.diameter + 2 * (register.chamfer + edge) - 1e-9));
    }),
  );
  const round = (d: number) => Math.ceil(d - 1e-9);
  const asked = Math.max(holes, wheelNeeds);
  return rims >= asked ? rims : round(asked);
}

export interface AdapterFlanges {
  readonly driving: ResolvedFlange;
  readonly driven: ResolvedFlange;
}

/** The centre bore is taken as this share of the smallest diameter it must stay inside. Common practice: big enough for a dial. */
const boreShare = 0.5;
/** Below this a dial indicator's finger does not reach in, mm. Common practice. */
export const leastIndicatingBore = 8;

/**
 * A centre bore to indicate on: half the smaller of the registers and of the free middle inside the holes, whole millimetres.
 * Null when nothing big enough for a dial fits.
 */
export function boreFor(fixings: readonly Fixing[], flanges: AdapterFlanges, registers: AdapterSpec['registers'], web: number): number | null {
  const limits = [
    ...(['driving', 'driven'] as const).flatMap((side) => {
      const register = registers[side];
      return register?.at === 'inner' ? [register.diameter - (register.gender === 'male' ? 2 * web : 0)] : [];
    }),
    ...fixings.map((f) => 2 * (innermost(flanges[f.side]) - fixingRadius(f) - web)),
  ];
  const bore = Math.floor(boreShare * Math.min(...limits));
  return bore >= leastIndicatingBore ? bore : null;
}

/** Vise flats are cut this deep into the rim on each side, as a share of the outside diameter. Common practice: a jaw needs a land. */
const flatShare = 0.02;

/** Two flats just deep enough for a vise jaw, mm across. */
export function flatsFor(outside: number): number {
  return Math.floor(outside * (1 - 2 * flatShare));
}
