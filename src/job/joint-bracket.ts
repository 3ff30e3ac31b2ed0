/** The bracket, decided and built, with the plane that its bends lie in. */
import type { FramePoint } from '../formulas/frame-vibration.ts';
import type { SheetPart } from '../model/sheet.ts';
import type { BracketSpec } from '../parts/bracket.ts';
import type { Material } from '../standards/materials.ts';

/**
 * Something that turns near the bracket, as a box in the bracket's plane; sides may lie at infinity.
 */
export interface TurningBox {
  readonly name: string;
  readonly pMin: number;
  readonly pMax: number;
  readonly qMin: number;
  readonly qMax: number;
}

/**
 * The plane of the bends: its origin is where the sensor looks at the wheel, q points from there along the sensor away from the wheel,
 * p square to it towards the bolts. mm.
 */
export interface BracketPlane {
  /** Places the folded blank: a point (x, z) of the fold goes to `origin` + x e + z n. */
  readonly origin: FramePoint;
  readonly e: FramePoint;
  readonly n: FramePoint;
  /** The folded profile, closed: lower face outwards, upper face back. */
  readonly profile: readonly FramePoint[];
  /** Centre line from the row of bolts, at the end of the slot that leaves most free, to the sensor's axis. */
  readonly centreLine: readonly FramePoint[];
  readonly turning: readonly TurningBox[];
}

/** How the gap is set: by sliding the foot, by shims under it, or by the length of stand-offs. */
export type GapSetting = 'slots' | 'shims' | 'stand-offs';

export interface Bracket {
  readonly spec: BracketSpec;
  readonly part: SheetPart;
  readonly material: Material;
  readonly plane: BracketPlane;
  /** The gap it is designed for, how far it may be off, and how far wrong everything may come out before it is set. mm */
  readonly gap: { readonly nominal: number; readonly tolerance: number; readonly build: number };
  readonly setting: GapSetting;
  /** Length of the stand-offs or thickness of the shims as designed, mm; 0 where the foot lies on its pad. */
  readonly packing: number;
  /** K-factor and radius: where they come from. Empty on a flat bracket. */
  readonly kFrom: string;
  readonly radiusFrom: string;
  /** Opening of the usual die and the shortest flange that it bends, mm; null on a flat bracket. */
  readonly die: { readonly opening: number; readonly leastFlange: number } | null;
}
