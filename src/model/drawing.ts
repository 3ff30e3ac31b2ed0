/** One neutral drawing, in mm, y up. Writers replay it; none of them knows what a flange is. */

/** Pens named by what a line means, not by how it looks. */
export type Pen = 'outline' | 'thin' | 'hidden' | 'centre' | 'hatch' | 'dimension' | 'cut' | 'mark';

/** Fill of a closed area: none, the hatch or tint of a body in section, or the tint of a verdict. */
export type Fill =
  | 'none'
  | 'adapter'
  | 'driving'
  | 'driven'
  | 'wheel'
  | 'screw'
  | 'ink'
  | 'void'
  | 'paper'
  | 'good'
  | 'doubtful'
  | 'bad';

export type Shape =
  | { readonly kind: 'line'; readonly pen: Pen; readonly from: Point; readonly to: Point; readonly feature?: string }
  | {
      readonly kind: 'circle';
      readonly pen: Pen;
      readonly fill: Fill;
      readonly centre: Point;
      readonly r: number;
      readonly feature?: string;
    }
  | {
      readonly kind: 'arc';
      readonly pen: Pen;
      readonly centre: Point;
      readonly r: number;
      /** Degrees, counter-clockwise from start to end. */
      readonly start: number;
      readonly end: number;
      readonly feature?: string;
    }
  | {
      /** Closed when `closed`. Bulge as in a sheet contour: tan(sweep / 4) of the stretch to the next corner. */
      readonly kind: 'path';
      readonly pen: Pen;
      readonly fill: Fill;
      readonly closed: boolean;
      /** One or more loops; even-odd fill, so that inner loops are holes. */
      readonly loops: readonly (readonly { readonly x: number; readonly y: number; readonly bulge: number }[])[];
      readonly feature?: string;
    }
  | {
      readonly kind: 'text';
      readonly at: Point;
      readonly text: string;
      /** Cap height, mm. */
      readonly size: number;
      readonly align: 'start' | 'middle' | 'end';
      /** Degrees. */
      readonly angle: number;
      readonly bold?: boolean;
      readonly feature?: string;
    };

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Drawing {
  readonly id: string;
  readonly title: string;
  /** Long description, read aloud by screen readers. */
  readonly description: string;
  readonly box: { readonly xMin: number; readonly yMin: number; readonly xMax: number; readonly yMax: number };
  readonly shapes: readonly Shape[];
}
