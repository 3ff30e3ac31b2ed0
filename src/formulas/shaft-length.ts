/**
 * How long a shaft must be: from a reading between two faces under the vehicle to the length on the shop's bench.
 *
 * The faces stand square to the shafts they sit on, the shaft runs at an angle between its two joint centres, and only the straight part between
 * the joint centres has the shaft's own direction. So the reading D (middle of one face to middle of the other) is a chord:
 * D u = n a + C s + f b, with n and f from the faces to the joint centres, a, s, b the directions of the shaft ahead, the shaft itself and the
 * shaft behind. Solved for C; straight, C = D - n - f. Geometry. All lengths mm.
 */
import { hypot } from '../units/hypot.ts';
import { add, dot, stretched, type Vector } from './vectors.ts';

/** Directions of the three shafts that a length hangs on: unit arrows; null where no angles are known. */
export interface Directions {
  readonly ahead: Vector;
  readonly shaft: Vector;
  readonly behind: Vector;
}

/** What lies between the two faces that were read. */
export interface Between {
  /** Middle of one face to middle of the other. */
  readonly reading: number;
  /** What will lie between the face that was read and the shaft's own flange, at the near end and at the far one: adapter, spacers. */
  readonly near: number;
  readonly far: number;
  /** From the shaft's own faces to its joint centres. */
  readonly nearEnd: number;
  readonly farEnd: number;
}

/**
 * Distance of the joint centres, mm; null when the parts between are longer than the reading.
 * @param directions null: taken as straight
 */
export function centreDistance(
  { reading, near, far, nearEnd, farEnd }: Between,
  directions: Directions | null,
): number | null {
  if (directions === null) {
    const straight = reading - near - far - nearEnd - farEnd;
    return straight > 0 ? straight : null;
  }
  const { ahead, shaft, behind } = directions;
  const ends = add(stretched(ahead, near + nearEnd), stretched(behind, far + farEnd));
  const along = dot(ends, shaft);
  const root = along * along - dot(ends, ends) + reading * reading;
  const distance = root < 0 ? 0 : Math.sqrt(root) - along;
  return distance > 0 ? distance : null;
}

/** Lengths that the installed shaft goes through, face to face on the bench. */
export interface Travel {
  readonly ride: number;
  readonly shortest: number;
  readonly longest: number;
}

/** The slip of a shaft. */
export interface Slip {
  /** From pushed home to pulled out. */
  readonly stroke: number;
  /** Left before it bottoms and before it is pulled out. */
  readonly reserve: number;
}

export interface OrderedLength {
  readonly compressed: number;
  readonly ride: number;
  readonly extended: number;
  /** How far the slip is drawn out at ride height, at its shortest and at its longest. */
  readonly out: Travel;
  /** Left before it bottoms, and before it comes apart. */
  readonly beforeBottom: number;
  readonly beforeApart: number;
  /** What fixed the compressed length. */
  readonly governs: 'share' | 'bump' | 'droop' | 'neither';
}

/** Share of the stroke by which a shaft stands drawn out as fitted. Source: a joint maker's catalogues. */
export const workingShare = 1 / 3;

/**
 * The length to have made: a third of the stroke drawn out at ride height, less or more where bump or droop would use up the reserve.
 * Where the travel needs more than the stroke can give, what is missing is shared by both ends.
 * Source: working length = compressed length + stroke / 3 (a joint maker's catalogues).
 */
export function orderedLength({ ride, shortest, longest }: Travel, { stroke, reserve }: Slip): OrderedLength {
  const wanted = ride - workingShare * stroke;
  const most = shortest - reserve;
  const least = longest + reserve - stroke;
  const governs = least > most ? 'neither' : wanted > most ? 'bump' : wanted < least ? 'droop' : 'share';
  const compressed =
    governs === 'neither' ? (most + least) / 2 : governs === 'bump' ? most : governs === 'droop' ? least : wanted;
  const out = { ride: ride - compressed, shortest: shortest - compressed, longest: longest - compressed };
  return {
    compressed,
    ride,
    extended: compressed + stroke,
    out,
    beforeBottom: out.shortest,
    beforeApart: stroke - out.longest,
    governs,
  };
}

/**
 * Length of a reading that several repeats gave, and its doubt.
 * @param readings at least one, mm
 * @param doubt of one reading, mm: the hook, the parallax; it stays however often one reads
 * @returns mean, and the doubt with half the spread of the repeats as squares
 */
export function meanReading(
  readings: readonly number[],
  doubt: number,
): { readonly value: number; readonly doubt: number } {
  const value = readings.reduce((sum, one) => sum + one, 0) / readings.length;
  const spread = Math.max(...readings) - Math.min(...readings);
  return { value, doubt: hypot(doubt, spread / 2) };
}
