/**
 * A turned part as plain data: an outer profile turned about the z axis, and drillings parallel to it.
 *
 * Axes: z along the shaft. The driving face is z = 0, the driven face z = thickness. Angles run counter-clockwise
 * as seen from the driven side (looking along -z). All lengths in mm.
 */
import type { Engraving } from './engraving.ts';

/** One corner of a profile: at height z the radius is r. Both in mm; r >= 0. */
export interface ProfilePoint {
  readonly z: number;
  readonly r: number;
  /** Feature to which the stretch from this point to the next belongs. */
  readonly of?: string;
}

/**
 * Corners joined by straight lines; z never decreases. Two corners at one z make a step (a flat ring).
 * A profile opens where it starts or ends with r > 0, and is closed by a point or by a flat bottom otherwise:
 * a flat bottom is a last corner at r = 0 and the same z.
 */
export type Profile = readonly ProfilePoint[];

/** What a feature is for. Drawings, hole tables, checks and print allowances all ask this. */
export type FeaturePurpose =
  | 'body'
  | 'spigot'
  | 'recess'
  | 'bore'
  | 'screw hole'
  | 'tapped hole'
  | 'bolt hole'
  | 'dowel hole'
  | 'wheel seat'
  | 'wheel screw hole'
  | 'flats'
  | 'index mark';

/** Which face of the joint a feature serves: the driving flange, the driven flange, or the wheel. */
export type Side = 'driving' | 'driven' | 'wheel';

/** A machined feature with its intent, shared by every reader of the part. */
export interface Feature {
  readonly id: string;
  readonly purpose: FeaturePurpose;
  /** Plain name as a fabricator would say it: "driven register spigot". */
  readonly label: string;
  readonly side?: Side;
  /** Nominal diameter, mm, and its limits when a fit is stated. */
  readonly diameter?: number;
  readonly limits?: { readonly lower: number; readonly upper: number; readonly zone: string };
  /** Thread designation for tapped holes, e.g. "M10x1.5". */
  readonly thread?: string;
  /** Screw group that uses this hole. */
  readonly group?: string;
}

/** A hole parallel to the axis: its centre and its own profile, z ascending. */
export interface Drilling {
  readonly id: string;
  readonly feature: string;
  readonly x: number;
  readonly y: number;
  readonly profile: Profile;
}

/** Two parallel flats, symmetrical about the axis, over the whole height. */
export interface Flats {
  readonly feature: string;
  /** Distance across the flats, mm. */
  readonly across: number;
  /** Direction of the flats' normals, degrees. */
  readonly angle: number;
}

/** Enough of a material for mass: density in g/mm3. */
export interface PartMaterial {
  readonly id: string;
  readonly name: string;
  readonly density: number;
}

/** A part made on the lathe and the drill. */
export interface TurnedPart {
  readonly kind: 'turned';
  readonly id: string;
  readonly name: string;
  readonly material: PartMaterial;
  /** Outside, from the lowest to the highest z. Starts and ends with the radius of its end faces. */
  readonly outer: Profile;
  readonly drillings: readonly Drilling[];
  readonly flats?: Flats;
  readonly features: readonly Feature[];
  readonly engravings: readonly Engraving[];
}
