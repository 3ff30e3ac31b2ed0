/** The turned inside of an adapter: centre bore and the recesses that take a flange's spigot. */
import type { Drilling, Profile, ProfilePoint } from '../model/part.ts';
import { withoutRepeats } from './adapter-outside.ts';
import type { AdapterSpec, RegisterSpec } from './adapter-spec.ts';

/** Edge break where the centre bore meets a face, mm. */
const boreEdge = 0.5;

interface Pocket {
  /** Height of the mouth above the face, and of the floor (0 or below), mm. */
  readonly mouth: number;
  readonly floor: number;
  readonly r: number;
  readonly chamfer: number;
  readonly of: string;
}

function pocketOf(register: RegisterSpec | null, of: string): Pocket | null {
  if (register?.gender !== 'female') return null;
  const { depth, chamfer } = register;
  const r = register.diameter / 2;
  return register.at === 'rim'
    ? { mouth: depth, floor: 0, r, chamfer, of }
    : { mouth: 0, floor: -depth, r, chamfer, of };
}

/** Corners of a pocket from its floor outwards, heights above the face. */
function pocketCorners(pocket: Pocket): { above: number; r: number; of: string }[] {
  const { mouth, floor, r, chamfer, of } = pocket;
  return [
    { above: floor, r, of },
    { above: mouth - chamfer, r, of },
    { above: mouth, r: r + chamfer, of },
  ];
}

/** Height of the adapter's inner end above a face: a spigot carries the bore outwards with it. */
function boreEnd(register: RegisterSpec | null): number {
  return register?.gender === 'male' && register.at === 'inner' ? register.depth : 0;
}

/**
 * Everything bored on the axis. With a centre bore this is one drilling from end to end; without one, each recess is a blind
 * drilling of its own. The features named are `bore`, `driving-register` and `driven-register`.
 */
export function adapterBore(spec: AdapterSpec): Drilling[] {
  const { thickness, registers } = spec;
  const low = pocketOf(registers.driving, 'driving-register');
  const high = pocketOf(registers.driven, 'driven-register');
  const atLow = (corner: { above: number; r: number; of: string }) => ({ z: 0 - corner.above, r: corner.r, of: corner.of });
  const atHigh = (corner: { above: number; r: number; of: string }) => ({ z: thickness + corner.above, r: corner.r, of: corner.of });
  const lowCorners = low ? pocketCorners(low).reverse().map(atLow) : [];
  const highCorners = high ? pocketCorners(high).map(atHigh) : [];
  const axial = (id: string, feature: string, profile: readonly ProfilePoint[]): Drilling => {
    return { id, feature, x: 0, y: 0, profile: withoutRepeats(profile) };
  };

  if (spec.bore === null) {
    const drillings: Drilling[] = [];
    if (low) {
      drillings.push(axial('driving-register', 'driving-register', [...lowCorners, { z: 0 - low.floor, r: 0, of: low.of }]));
    }
    if (high) {
      const floor: ProfilePoint = { z: thickness + high.floor, r: 0, of: high.of };
      drillings.push(axial('driven-register', 'driven-register', [floor, ...highCorners]));
    }
    return drillings;
  }

  const r = spec.bore / 2;
  const boreFrom = low ? 0 - low.floor : -boreEnd(registers.driving);
  const boreTo = high ? thickness + high.floor : thickness + boreEnd(registers.driven);
  const profile: Profile = [
    ...lowCorners,
    ...(low ? [] : [{ z: boreFrom, r: r + boreEdge, of: 'bore' }]),
    { z: low ? boreFrom : boreFrom + boreEdge, r, of: 'bore' },
    { z: high ? boreTo : boreTo - boreEdge, r, of: 'bore' },
    ...(high ? [] : [{ z: boreTo, r: r + boreEdge, of: 'bore' }]),
    ...highCorners,
  ];
  return [axial('bore', 'bore', profile)];
}
