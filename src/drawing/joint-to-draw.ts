/**
 * What the views need to know of a joint, and no more. A resolved joint has this shape; so has anything else that wants a picture.
 * Lengths in mm, angles in degrees counter-clockwise seen from the driven side, z along the shaft from the driving face.
 */
import type { Point } from '../model/drawing.ts';
import type { TurnedPart } from '../model/part.ts';
import type { SheetPart } from '../model/sheet.ts';

/** A flange as far as it shows: what is not known is left out of the picture, or drawn with a broken edge. */
export interface FlangeToDraw {
  readonly name: string;
  readonly outside: number;
  /** Null when nobody measured it. */
  readonly thickness: number | null;
  /** Its own register: a male one stands out of its face, a female one goes into it. */
  readonly register: {
    readonly gender: 'male' | 'female';
    /** inner: within the bolt circle. rim: round the whole bolting face. */
    readonly at: 'inner' | 'rim';
    readonly diameter: number;
    readonly depth: number | null;
  } | null;
  readonly bore: number | null;
  /** Holes as they stand in the joint (clocking applied). */
  readonly holes: readonly {
    readonly x: number;
    readonly y: number;
    /** Of clear holes. */
    readonly diameter: number;
    /** Tapped holes carry their thread's major diameter here; null for clear holes. */
    readonly major: number | null;
    /** Depth from the face; null: right through. */
    readonly depth: number | null;
  }[];
}

/** One set of equal screws in place. */
export interface ScrewsToDraw {
  readonly id: string;
  readonly side: 'driving' | 'driven' | 'wheel';
  readonly label: string;
  readonly count: number;
  /** Designation: "M10". */
  readonly thread: string;
  readonly major: number;
  readonly pitch: number;
  readonly head: {
    readonly kind: 'socket' | 'flat' | 'button' | 'hex';
    readonly diameter: number;
    readonly height: number;
  };
  readonly washer: { readonly outside: number; readonly thickness: number } | null;
  readonly nut: { readonly height: number; readonly acrossFlats: number } | null;
  readonly positions: readonly Point[];
  /** Plane under the head; for a flat head the plane of its top. */
  readonly headZ: number;
  /** Which way the shank points along z. */
  readonly points: 1 | -1;
  readonly length: number | null;
  readonly grip: number;
}

/** Everything that the pictures of a joint show. */
export interface JointToDraw {
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly adapter: TurnedPart;
  readonly thickness: number;
  /** Angle of the driven pattern against the driving one. */
  readonly clocking: number;
  readonly driving: FlangeToDraw;
  readonly driven: FlangeToDraw;
  readonly screws: readonly ScrewsToDraw[];
  readonly wheel: { readonly part: SheetPart; readonly z: number } | null;
  /** Room left between each register and its mate, mm on diameter, worst cases; null when there is none. */
  readonly clearances: {
    readonly driving: { readonly least: number; readonly most: number } | null;
    readonly driven: { readonly least: number; readonly most: number } | null;
  };
}
