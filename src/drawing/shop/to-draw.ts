/** What a workshop drawing shows, with every number decided. Lengths in mm, angles in degrees, mass in g. */
import type { TurnedPart } from '../../model/part.ts';
import type { SheetPart } from '../../model/sheet.ts';
import type { LabelUnits } from '../length-text.ts';
import type { MarkedWheel } from '../wheel-mark.ts';
import type { WindowsToDraw } from '../wheel-view.ts';

export type Face = 'driving' | 'driven';

/** One cut of a hole. Depths from the face that the hole opens on, to the full diameter; null: right through. */
export type CutToDraw =
  | { readonly op: 'spot'; readonly diameter: number }
  | { readonly op: 'drill'; readonly diameter: number; readonly depth: number | null; readonly point: number }
  | { readonly op: 'counterbore'; readonly diameter: number; readonly depth: number }
  | { readonly op: 'countersink'; readonly diameter: number; readonly angle: number }
  | { readonly op: 'ream'; readonly diameter: number; readonly depth: number | null; readonly zone: string }
  | { readonly op: 'tap'; readonly thread: string; readonly depth: number | null };

/** Equal holes, each with its place as seen from the side they are worked from. */
export interface SetToDraw {
  readonly letter: string;
  /** Feature of the part that they are: the id of their group. */
  readonly group: string;
  readonly side: 'driving' | 'driven' | 'wheel';
  readonly what: string;
  readonly from: Face;
  /** How far below that face they open. */
  readonly below: number;
  readonly cuts: readonly CutToDraw[];
  readonly holes: readonly {
    readonly tag: string;
    readonly drilling: string;
    readonly x: number;
    readonly y: number;
    readonly radius: number;
    readonly angle: number;
  }[];
  /** Thread's major diameter, and its full depth (null: right through); null for plain holes. */
  readonly thread: { readonly major: number; readonly depth: number | null } | null;
  /** Limits of a reamed hole. */
  readonly limits: { readonly lower: number; readonly upper: number } | null;
}

/** A size that is inspected: the number in its balloon is its line in the inspection record. */
export interface SizeToDraw {
  readonly number: number;
  readonly id: string;
  readonly part: 'adapter' | 'wheel';
  readonly what: string;
  readonly nominal: number;
  readonly lower: number;
  readonly upper: number;
  readonly unit: 'mm' | 'g';
  readonly from: string;
}

export interface RegisterToDraw {
  readonly gender: 'male' | 'female';
  readonly at: 'inner' | 'rim';
  readonly diameter: number;
  readonly depth: number;
  readonly limits: { readonly lower: number; readonly upper: number; readonly zone: string };
  readonly chamfer: number;
  readonly undercut: { readonly width: number; readonly depth: number } | null;
}

/** What stands in the title block of every sheet. */
export interface TitleToDraw {
  /** Number of the drawing: the name of the job and of the part. */
  readonly number: string;
  readonly part: string;
  readonly job: string;
  readonly material: string;
  readonly mass: number;
  readonly massBalloon: number | null;
  readonly revision: string;
  readonly units: LabelUnits;
  /** Plus or minus on sizes without limits of their own, mm; null: the general tolerance of ISO 2768-m. */
  readonly plusMinus: number | null;
  /** Loud words, such as that checks fail; empty for none. */
  readonly warning: string;
}

export interface AdapterToDraw {
  readonly title: TitleToDraw;
  readonly adapter: TurnedPart;
  readonly thickness: number;
  readonly outside: number;
  readonly chamfer: number;
  readonly bore: number | null;
  readonly flats: { readonly across: number; readonly angle: number } | null;
  readonly clocking: number;
  readonly registers: { readonly driving: RegisterToDraw | null; readonly driven: RegisterToDraw | null };
  readonly wheelSeat: {
    readonly face: Face;
    readonly diameter: number;
    readonly height: number;
    readonly limits: { readonly lower: number; readonly upper: number; readonly zone: string };
  } | null;
  readonly sets: readonly SetToDraw[];
  readonly sizes: readonly SizeToDraw[];
  /** How the axis is found again after the part is turned over. */
  readonly setup: string;
}

export interface WheelToDraw extends MarkedWheel {
  readonly title: TitleToDraw;
  readonly wheel: SheetPart;
  readonly outside: number;
  readonly root: number;
  readonly bore: number;
  /** What the bore is cut to when it is turned to its limits afterwards; null where it stays as cut. */
  readonly cutBore: number | null;
  readonly boreLimits: { readonly lower: number; readonly upper: number; readonly zone: string } | null;
  readonly toothAngle: number;
  readonly toothWidth: number;
  readonly rootRadius: number;
  readonly tipBreak: number;
  readonly flanks: string;
  /** Windows instead of open teeth; the tooth's width is then that of a bar, in the middle of the windows. */
  readonly windows?: WindowsToDraw | undefined;
  readonly holes: { readonly diameter: number; readonly positions: readonly { x: number; y: number }[] } | null;
  readonly sizes: readonly SizeToDraw[];
  /** Names of the outline files that rule. */
  readonly outlines: readonly string[];
}

/** How a drawing is laid out. */
export interface SheetChoice {
  readonly paper: ShopPaperName;
  readonly angle: 'first' | 'third';
  /** Asked for: paper mm for one mm of the part; null for the largest that fits. */
  readonly scale: number | null;
}

export type ShopPaperName = 'a4' | 'a3' | 'letter' | 'tabloid';
