/**
 * What screws, nuts and washers weigh and where: plain round bodies of the same volume, standing where the screws stand.
 *
 * A head is a cylinder, a cone or a dome as its standard draws it, less its socket; the thread counts at its pitch diameter, a longer
 * shank at full diameter. Good to a few per cent of published weights (tests hold it there). Left out: dog points, knurls, fillets.
 */
import { profileMass } from '../geometry/turned-mass.ts';
import type { ScrewGroup } from '../job/joint.ts';
import type { MassProperties } from '../model/mass.ts';
import type { Profile } from '../model/part.ts';
import { socketCapScrews } from '../standards/socket-cap-screws.ts';
import { lookUp } from '../standards/table.ts';
import { cos } from '../units/trig.ts';

/** Density of screws, nuts and washers, g/mm3: steel. */
export const screwDensity = 0.00785;

const circle = (diameter: number) => (Math.PI / 4) * diameter * diameter;
/** Area of a hexagon by its distance across flats. */
const hexagon = (across: number) => (Math.sqrt(3) / 2) * across * across;

/** Hexagon socket: across flats and depth, mm. Where no table gives them: half a head wide, half a head deep, common practice. */
function socketOf({ head, thread }: ScrewGroup): { s: number; t: number } {
  const row = lookUp(socketCapScrews, 'size', thread.split('x')[0] ?? thread);
  if (head.kind === 'socket' && row.ok) return { s: row.value.s, t: row.value.t };
  return { s: 0.4 * head.diameter, t: 0.5 * head.height };
}

/** Volume of a head without a flat head's cone, mm3. */
function headVolume(group: ScrewGroup): number {
  const { kind, diameter, height } = group.head;
  if (kind === 'hex') return hexagon(diameter * cos(Math.PI / 6)) * height;
  const { s, t } = socketOf(group);
  const socket = hexagon(s) * t;
  if (kind === 'socket') return circle(diameter) * height - socket;
  // A button is the cap of a ball.
  return (Math.PI / 6) * height * (3 * (diameter / 2) ** 2 + height * height) - socket;
}

/** Length of thread on a long screw: ISO 4762 and ISO 4014 (to 125 mm) make it 2 d + 12 and 2 d + 6. */
const threadLength = ({ head, major }: ScrewGroup) => 2 * major + (head.kind === 'hex' ? 6 : 12);

/** Radius of a cylinder by its volume and height. */
const radiusOf = (volume: number, height: number) => Math.sqrt(volume / (Math.PI * height));

/** One stretch of a round body: from and to along the screw, from its bearing face towards its point. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly r0: number;
  readonly r1: number;
}

function stretches(group: ScrewGroup): Stretch[] {
  const { head, major, pitch, length, grip } = group;
  // ISO 68-1: pitch diameter.
  const thread = (major - 0.6495 * pitch) / 2;
  // A joint whose screw length is not found still has a screw of about its grip and one diameter.
  const total = length ?? grip + major;
  if (head.kind === 'flat') {
    const cone = (head.diameter - major) / 2;
    const sunk = Math.min(cone, total);
    return [
      { from: 0, to: sunk, r0: head.diameter / 2, r1: major / 2 },
      { from: sunk, to: total, r0: thread, r1: thread },
    ];
  }
  const shank = Math.max(0, total - threadLength(group));
  const r = radiusOf(headVolume(group), head.height);
  return [
    { from: -head.height, to: 0, r0: r, r1: r },
    { from: 0, to: shank, r0: major / 2, r1: major / 2 },
    { from: shank, to: total, r0: thread, r1: thread },
  ].filter(({ from, to }) => to > from);
}

/** Masses of one screw, of its nut and of its washers, g; null where there is none. */
export interface ScrewMasses {
  readonly screw: number;
  readonly nut: number | null;
  readonly washer: number | null;
}

const profileOf = ({ from, to, r0, r1 }: Stretch, at: number, along: 1 | -1): Profile => {
  const ends = [
    { z: at + along * from, r: r0 },
    { z: at + along * to, r: r1 },
  ];
  return along === 1 ? ends : ends.reverse();
};

/** A ring between two heights with a hole through it, as the body less the hole. */
function ring(outside: number, hole: number, from: number, to: number) {
  const cylinder = (diameter: number): Profile => [
    { z: from, r: diameter / 2 },
    { z: to, r: diameter / 2 },
  ];
  return { body: cylinder(outside), hole: cylinder(hole) };
}

/** One round piece of steel that stands on the axis of a screw: a profile, and 1 for metal or -1 for a hole in it. */
interface Piece {
  readonly of: 'screw' | 'nut' | 'washer';
  readonly profile: Profile;
  readonly sign: 1 | -1;
}

/** The pieces on one screw axis, in the adapter's heights. */
export function piecesOf(group: ScrewGroup): Piece[] {
  const { headZ, points, washer, nut, major, grip } = group;
  const pieces: Piece[] = stretches(group).map((stretch) => ({
    of: 'screw',
    profile: profileOf(stretch, headZ, points),
    sign: 1,
  }));
  const add = (of: 'nut' | 'washer', outside: number, hole: number, z: number, height: number) => {
    const made = ring(outside, hole, Math.min(z, z + points * height), Math.max(z, z + points * height));
    pieces.push({ of, profile: made.body, sign: 1 }, { of, profile: made.hole, sign: -1 });
  };
  // The washer lies under the head; its hole is a little larger than the screw.
  if (washer) add('washer', washer.outside, major + 1, headZ, washer.thickness);
  if (nut) {
    const outside = 2 * Math.sqrt(hexagon(nut.acrossFlats) / Math.PI);
    add('nut', outside, major - 0.6495 * group.pitch, headZ + points * grip, nut.height);
  }
  return pieces;
}

/** What one screw, its nut and its washer weigh, g. */
export function screwMasses(group: ScrewGroup): ScrewMasses {
  const pieces = piecesOf(group);
  const sum = (of: Piece['of']) =>
    pieces
      .filter((piece) => piece.of === of)
      .reduce((mass, { profile, sign }) => mass + sign * profileMass(profile, screwDensity).mass, 0);
  return { screw: sum('screw'), nut: group.nut ? sum('nut') : null, washer: group.washer ? sum('washer') : null };
}

/** Mass properties of every piece of a group at every place, in the adapter's coordinates, and its sign. */
export function screwBodies(group: ScrewGroup): { readonly mass: MassProperties; readonly sign: 1 | -1 }[] {
  const pieces = piecesOf(group);
  return group.positions.flatMap(({ x, y }) =>
    pieces.map(({ profile, sign }) => ({ mass: profileMass(profile, screwDensity, x, y), sign })),
  );
}
