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
    };

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

/** Where one copy of a solid stands: turned over about its x axis or not, then moved. */
export interface Place {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly turnedOver: boolean;
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
