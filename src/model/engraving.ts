/** Marks cut into a surface: text and the index mark. Depths in mm; they never count in mass sums. */

/** Where an engraving sits. `rim`: wrapped round the outside, read from outside with +z up. `face`: on the face whose outward
 *  normal is +z ("top") or -z ("bottom"), running round the axis, letters upright towards the rim. */
export type EngravedSurface = 'rim' | 'top' | 'bottom';

/** Text engraved along an arc about the axis. */
export interface EngravedText {
  readonly kind: 'text';
  readonly text: string;
  readonly surface: EngravedSurface;
  /** Angle of the middle of the text, degrees. */
  readonly angle: number;
  /** Radius of the surface (rim) or of the text's mid-line (faces), mm. */
  readonly radius: number;
  /** Height z of the text's mid-line (rim), or of the face itself (faces), mm. */
  readonly z: number;
  /** Cap height, mm. */
  readonly height: number;
  /** How deep it is cut, mm. */
  readonly depth: number;
}

/** A straight V- or round-bottomed groove along the rim at one angle: the clocking zero. */
export interface IndexMark {
  readonly kind: 'index';
  readonly angle: number;
  /** Radius of the rim, mm. */
  readonly radius: number;
  readonly zFrom: number;
  readonly zTo: number;
  /** Radius of the groove, mm. */
  readonly grooveRadius: number;
}

export type Engraving = EngravedText | IndexMark;
