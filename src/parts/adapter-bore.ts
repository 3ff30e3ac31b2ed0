/** The turned inside of an adapter: centre bore and the recesses that take a flange's spigot. */
import type { Drilling, Profile, ProfilePoint } from '../model/part.ts';
import { ascending, withoutRepeats } from './adapter-outside.ts';
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
    { above: mouth - Math.min(chamfer, mouth - floor), r, of },
    { above: mouth, r: r + chamfer, of },
  ];
}

/** Height of the adapter's inner end above a face: a spigot carries the bore outwards with it. */
function boreEnd(register: RegisterSpec | null): number {
  return register?.gender === 'male' && register.at === 'inner' ? register.depth : 0;
}

const axial = (id: string, profile: readonly ProfilePoint[]): Drilling => {
  return { id, feature: id, x: 0, y: 0, profile: withoutRepeats(profile) };
};

/**
 * Everything bored on the axis. With a centre bore this is one drilling from end to end. Each recess is a blind drilling of its own
 * where there is no bore, and where the pieces do not follow one another: recesses that meet, or a bore as wide as a recess.
 * The features named are `bore`, `driving-register` and `driven-register`.
 */
export function adapterBore(spec: AdapterSpec): Drilling[] {
  const { thickness, registers } = spec;
  const low = pocketOf(registers.driving, 'driving-register');
  const high = pocketOf(registers.driven, 'driven-register');
  const atLow = (corner: { above: number; r: number; of: string }) => ({
    z: 0 - corner.above,
    r: corner.r,
    of: corner.of,
  });
  const atHigh = (corner: { above: number; r: number; of: string }) => ({
    z: thickness + corner.above,
    r: corner.r,
    of: corner.of,
  });
  // Turned over, a stretch belongs to the same pocket, so every corner keeps its feature.
  const lowCorners = low ? pocketCorners(low).reverse().map(atLow) : [];
  const highCorners = high ? pocketCorners(high).map(atHigh) : [];
  const blind = [
    ...(low ? [axial('driving-register', [...lowCorners, { z: 0 - low.floor, r: 0, of: low.of }])] : []),
    ...(high ? [axial('driven-register', [{ z: thickness + high.floor, r: 0, of: high.of }, ...highCorners])] : []),
  ];
  if (spec.bore === null) return blind;

  const r = spec.bore / 2;
  const from = low ? 0 - low.floor : -boreEnd(registers.driving);
  const to = high ? thickness + high.floor : thickness + boreEnd(registers.driven);
  const follow = from < to && [low, high].every((pocket) => pocket === null || pocket.r > r);
  if (!follow) {
    const ends = { from: low ? 0 - low.mouth : from, to: high ? thickness + high.mouth : to };
    return [axial('bore', boreProfile(r, ends.from, ends.to)), ...blind];
  }
  const plain = boreProfile(r, from, to);
  const middle = [
    ...(low ? [{ z: from, r, of: 'bore' }] : plain.slice(0, 2)),
    ...(high ? [{ z: to, r, of: high.of }] : plain.slice(2)),
  ];
  return [axial('bore', ascending([...lowCorners, ...middle, ...highCorners]))];
}

/** A plain bore with its edges broken. */
function boreProfile(r: number, from: number, to: number): Profile {
  const edge = Math.min(boreEdge, (to - from) / 3);
  return [
    { z: from, r: r + edge, of: 'bore' },
    { z: from + edge, r, of: 'bore' },
    { z: to - edge, r, of: 'bore' },
    { z: to, r: r + edge, of: 'bore' },
  ];
}
