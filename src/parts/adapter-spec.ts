/**
 * What the adapter generator needs: every dimension decided, nothing left to look up.
 * Lengths in mm, angles in degrees counter-clockwise seen from the driven side.
 * The driving face is z = 0, the driven face z = thickness.
 */
import type { PartMaterial } from '../model/part.ts';

/** The adapter's own register on one face. */
export interface RegisterSpec {
  /** male: a spigot stands out of the face. female: a recess goes into it. */
  readonly gender: 'male' | 'female';
  /**
   * inner: inside the bolt circle. rim: outside it, so that the whole bolting face lies within the register; a male rim register is
   * the adapter's own rim turned down, a female one a raised ring round the face.
   */
  readonly at: 'inner' | 'rim';
  /** Nominal diameter, > 0. */
  readonly diameter: number;
  /** Height of the spigot or depth of the recess, > 0. */
  readonly depth: number;
  /** Limits as absolute diameters, and the zone or wording they come from. */
  readonly limits: { readonly lower: number; readonly upper: number; readonly zone: string };
  /** 45 degree lead chamfer of a spigot, or mouth chamfer of a recess, mm along the axis. */
  readonly chamfer: number;
  /** Groove turned into the foot of a spigot so that the faces meet first; null for a recess. */
  readonly undercut: { readonly width: number; readonly depth: number } | null;
}

/** How one hole of a group is made, seen from the face its screw enters. */
export type HoleShape =
  | {
      /** A screw or bolt passes through; its head sits in a pocket or on the surface. */
      readonly kind: 'passing';
      readonly diameter: number;
      /** Face that the head is on. */
      readonly headFace: 'driving' | 'driven';
      readonly head:
        | { readonly kind: 'counterbore'; readonly diameter: number; readonly depth: number }
        | { readonly kind: 'countersink'; readonly diameter: number; readonly angle: number }
        | { readonly kind: 'surface' };
    }
  | {
      /** The adapter carries the thread; the screw comes in through `face`. */
      readonly kind: 'tapped';
      readonly thread: string;
      readonly major: number;
      readonly tapDrill: number;
      readonly face: 'driving' | 'driven';
      /** Full thread depth, and full-diameter drill depth (>= thread depth), from the face; null drill depth: right through. */
      readonly threadDepth: number;
      readonly drillDepth: number | null;
      /** Included angle of the drill's point, degrees. */
      readonly pointAngle: number;
    }
  | {
      /** A reamed hole that holds a dowel pin; it comes in through `face`. */
      readonly kind: 'dowel';
      readonly diameter: number;
      readonly limits: { readonly lower: number; readonly upper: number; readonly zone: string };
      readonly face: 'driving' | 'driven';
      /** Depth of the full diameter from the face; null: right through. */
      readonly drillDepth: number | null;
      /** Included angle of the drill's point, degrees. */
      readonly pointAngle: number;
    };

/** Holes that belong together: one set of screws or of dowels. */
export interface HoleGroupSpec {
  readonly id: string;
  readonly side: 'driving' | 'driven' | 'wheel';
  readonly label: string;
  /** Centres in the pattern's own clocking; the generator turns driven ones by `clocking`. */
  readonly positions: readonly { readonly x: number; readonly y: number }[];
  readonly shape: HoleShape;
}

/** A turned-down rim that centres the wheel: the wheel's bore goes over it and its face sits on the step. */
export interface WheelSeatSpec {
  readonly face: 'driving' | 'driven';
  readonly diameter: number;
  readonly height: number;
  readonly limits: { readonly lower: number; readonly upper: number; readonly zone: string };
}

export interface AdapterSpec {
  readonly id: string;
  readonly name: string;
  readonly material: PartMaterial;
  readonly thickness: number;
  /** Outside diameter. */
  readonly outside: number;
  /** 45 degree chamfer on the two rim edges. */
  readonly chamfer: number;
  /** Diameter of the centre bore (the indicating bore); null for none. */
  readonly bore: number | null;
  /** Distance across two opposite vise flats; null for none. */
  readonly flats: { readonly across: number; readonly angle: number } | null;
  readonly registers: { readonly driving: RegisterSpec | null; readonly driven: RegisterSpec | null };
  /** Angle by which the driven pattern is turned against the driving one. */
  readonly clocking: number;
  readonly groups: readonly HoleGroupSpec[];
  readonly wheelSeat: WheelSeatSpec | null;
}
