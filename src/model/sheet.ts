/** A part cut from sheet: closed contours of lines and true arcs, and a thickness. Lengths in mm. */
import type { Engraving } from './engraving.ts';
import type { Feature, PartMaterial } from './part.ts';

/**
 * A corner of a closed path. `bulge` describes the stretch to the next corner: 0 for a line, tan(sweep / 4) for an arc,
 * positive counter-clockwise. The last corner joins the first.
 */
export interface ContourVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** One closed cut. Outside contours run counter-clockwise; holes are circles or clockwise paths. */
export type Contour =
  | { readonly kind: 'circle'; readonly feature: string; readonly x: number; readonly y: number; readonly r: number }
  | { readonly kind: 'path'; readonly feature: string; readonly vertices: readonly ContourVertex[] };

/** A straight bend of a sheet part, as it lies on the flat blank. */
export interface BendLine {
  readonly id: string;
  /** Ends of the bend's middle line. */
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  /** Degrees turned from flat, above 0 and below 180. */
  readonly angle: number;
  /** Up: the sheet folds towards its face at z = thickness. */
  readonly direction: 'up' | 'down';
  /** Inside radius, mm. */
  readonly radius: number;
  /** Place of the neutral fibre from the inside, as a share of the thickness. */
  readonly k: number;
}

/** A part cut from flat stock, lying between z = 0 and z = thickness in its own coordinates. */
export interface SheetPart {
  readonly kind: 'sheet';
  readonly id: string;
  readonly name: string;
  readonly material: PartMaterial;
  readonly thickness: number;
  readonly outside: Contour;
  readonly holes: readonly Contour[];
  readonly features: readonly Feature[];
  readonly engravings: readonly Engraving[];
  /** Bends to be made after cutting; left out on a part that stays flat. */
  readonly bends?: readonly BendLine[];
}
