/**
 * Coarse rings round fine ones, so that a face with many holes is filled from few corners.
 *
 * Filling an area costs more than linearly in its corners, a strip between two rings about one centre costs next to nothing. Where there is
 * room, a hole gets a coarse polygon round it and the outline one within it; between coarse and fine lies a strip, and only the area between
 * the coarse ones is filled. No corner of the part moves: the new ones lie within the face.
 */
import { acos, cos, sin } from '../units/trig.ts';
import type { MeshBuilder, Ring } from './mesh-builder.ts';

/** A ring round (x, y) in the plane of a face: an even polygon of `sides` corners. mm */
export interface Round {
  readonly x: number;
  readonly y: number;
  readonly ring: Ring;
  readonly sides: number;
  /** Distance of its corners from the middle. */
  readonly corner: number;
  /** Where its first corner stands, in sides from the x axis: on it, or half a side on. */
  readonly first: 0 | 0.5;
}

/** A fine ring of one section as a round one; null where it is cut by flats or is a point. */
export function roundOf({ xyz }: MeshBuilder, ring: Ring, x: number, y: number): Round | null {
  const [section] = ring.sections;
  if (!section || ring.sections.length > 1 || section.ids.length < 4) return null;
  const at = 3 * (section.ids[0] as number);
  const [across, up] = [(xyz[at] as number) - x, (xyz[at + 1] as number) - y];
  return { x, y, ring, sides: section.ids.length - 1, corner: Math.hypot(across, up), first: up === 0 ? 0 : 0.5 };
}

/** Share of the room to the next ring that a collar may take: two of them never meet. */
const shareOfRoom = 0.45;
/** A collar of a hole reaches no further than this, times its radius: coarser than a pentagon nothing is gained. */
const widest = 1.3;
/** Fewer corners than this share of the fine ring's, or the collar is not worth its own. */
const worthwhile = 0.5;
const fewest = 5;

/** Distance of a ring's sides from its middle. */
const apothem = ({ corner, sides }: Round) => corner * cos(Math.PI / sides);

/** Room from each ring to its nearest neighbour, and to the outline by `toOutline`; mm. */
export function roomsOf(rounds: readonly Round[], toOutline: (round: Round) => number): number[] {
  const rooms = rounds.map(toOutline);
  for (let i = 0; i < rounds.length; i++) {
    const a = rounds[i] as Round;
    for (let k = i + 1; k < rounds.length; k++) {
      const b = rounds[k] as Round;
      const room = Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2) - a.corner - b.corner;
      if (room < (rooms[i] as number)) rooms[i] = room;
      if (room < (rooms[k] as number)) rooms[k] = room;
    }
  }
  return rooms;
}

/**
 * The coarse ring round a hole; null where there is no room or nothing to gain. Each of its corners is joined to the fine corners of its own
 * sector and one more, and must see the sides between them from outside: R cos(pi/m + pi/n) > apothem.
 * @param room to the nearest other ring, mm
 */
export function collarRound(builder: MeshBuilder, round: Round, room: number): Ring | null {
  const { corner, sides } = round;
  const radius = Math.min(corner + shareOfRoom * room, widest * corner);
  const angle = acos((1.001 * apothem(round)) / radius) - Math.PI / sides;
  return angle > 0 ? coarseRing(builder, round, radius, Math.ceil(Math.PI / angle)) : null;
}

/**
 * The coarse ring within a round outline; null where there is no room or nothing to gain. Its corners lie within the outline's sides, its
 * sides outside everything else.
 * @param room from the outline's corners to the nearest ring within it, mm
 */
export function collarWithin(builder: MeshBuilder, round: Round, room: number): Ring | null {
  const radius = apothem(round) - 0.1 * room;
  const inside = round.corner - shareOfRoom * room;
  if (!(room > 0) || !(inside < radius)) return null;
  const angle = acos(Math.max(0, inside / radius));
  return coarseRing(builder, round, radius, Math.ceil(Math.PI / angle));
}

function coarseRing(
  builder: MeshBuilder,
  { x, y, ring, sides, first }: Round,
  radius: number,
  needed: number,
): Ring | null {
  const count = Math.max(fewest, needed);
  if (!(count <= worthwhile * sides)) return null;
  const z = builder.xyz[3 * (ring.sections[0]?.ids[0] as number) + 2] as number;
  const ids: number[] = [];
  const at: number[] = [];
  for (let k = 0; k < count; k++) {
    const angle = (2 * Math.PI * (k + 0.5)) / count;
    ids.push(builder.vertex(x + radius * cos(angle), y + radius * sin(angle), z));
    // A fine corner belongs to the coarse one in whose sector it lies: the step to the next comes at the sector's end.
    at.push(k === 0 ? 0 : (k * sides) / count - first);
  }
  ids.push(ids[0] as number);
  at.push(sides - first);
  return { sections: [{ ids, at }] };
}
