/**
 * A solid as plain data for an exact modeller: pieces that are turned or extruded, some added, some cut away. Lengths in mm.
 * An assembly names solids, gives them colours and says where each of them stands.
 */
import type { Profile } from './part.ts';
import type { Contour } from './sheet.ts';

/** One plain piece. */
export type SolidPiece =
  | {
      /** A profile turned about the line parallel to z through (x, y); its open ends are closed flat. */
      readonly kind: 'revolved';
      readonly x: number;
      readonly y: number;
      readonly profile: Profile;
    }
  | {
      /** A contour with holes, between two heights. */
      readonly kind: 'extruded';
      readonly outside: Contour;
      readonly holes: readonly Contour[];
      readonly from: number;
      readonly to: number;
      /** Only what lies between these two along x; left out: all. */
      readonly within?: readonly [from: number, to: number];
      /** Then turned and moved in the plane of x and z; left out: it stays. */
      readonly tilt?: Tilt;
    }
  | {
      /** A stretch of a sheet's thickness turned about an axis along y: a bend. */
      readonly kind: 'bent';
      /** Lower and upper face where the bend begins. */
      readonly low: PlanePoint;
      readonly high: PlanePoint;
      readonly axis: PlanePoint;
      /** Radians, positive from x towards z. */
      readonly turn: number;
      readonly across: readonly [from: number, to: number];
    };

/** A point in the plane of x and z. */
export interface PlanePoint {
  readonly x: number;
  readonly z: number;
}

/** Turned about the origin from x towards z, radians; then moved. */
export interface Tilt extends PlanePoint {
  readonly heading: number;
}

/** A cylindrical wall that carries a name of its own: the thread that will be cut in it. */
export interface NamedWall {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly name: string;
}

/** The union of `body` less `cuts`. */
export interface Solid {
  readonly id: string;
  readonly body: readonly SolidPiece[];
  readonly cuts: readonly SolidPiece[];
  readonly walls?: readonly NamedWall[];
}

/** Directions of a solid's own x and z in the assembly, of length 1 and square to each other. */
export interface Axes {
  readonly x: readonly [number, number, number];
  readonly z: readonly [number, number, number];
}

/** Where one copy of a solid stands: turned over about its x axis, or laid along axes of its own, or neither; then moved. */
export interface Place {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly turnedOver: boolean;
  readonly axes?: Axes;
}

/** A solid in an assembly, once or several times. */
export interface PlacedSolid {
  /** Name of the part, plain ASCII. */
  readonly name: string;
  readonly solid: Solid;
  /** As seen on a screen: `#8899aa`. */
  readonly colour: string;
  readonly places: readonly Place[];
}

export interface Assembly {
  readonly name: string;
  readonly parts: readonly PlacedSolid[];
}

/**
 * STEP text as a modeller writes it, with a mark in the place of every name: `~0~` for the first of `names`. Modellers have ideas of their
 * own about quotes, long texts and other letters; names are put in afterwards.
 */
export interface RawStep {
  readonly text: string;
  readonly names: readonly string[];
}

/** The mark of a name by its place in the list. */
export const nameMark = (place: number): string => `~${place}~`;
