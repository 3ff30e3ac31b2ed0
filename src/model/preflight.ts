/** What a pre-flight of a drawing file says: findings that name their places in the file. */
import type { Finding } from './finding.ts';

/** A place in a drawing file, so that it can be found in a text editor and on the screen. */
export interface Place {
  /** Number of the entity in the file's ENTITIES section, from 1; 0 for the file itself. */
  readonly entity: number;
  /** The file's word for it: LINE, LWPOLYLINE. */
  readonly type: string;
  /** Line of the file on which it starts, from 1. */
  readonly line: number;
  readonly layer: string;
  /** In the drawing's own units; null where it is nowhere in particular. */
  readonly x: number | null;
  readonly y: number | null;
}

/** A finding with its first places; none where it speaks of the whole file. */
export interface PlacedFinding extends Finding {
  readonly places: readonly Place[];
}

/** What was read from a drawing, all in mm, mm2 and g. */
export interface DrawingFacts {
  readonly release: string;
  /** What one unit of the drawing is called, and whether the file says so itself. */
  readonly units: string;
  readonly unitsFrom: 'file' | 'given' | 'assumed';
  readonly width: number;
  readonly height: number;
  readonly contours: number;
  readonly parts: number;
  readonly holes: number;
  readonly pierces: number;
  readonly cutLength: number;
  /** Metal left of all parts, mm2. */
  readonly area: number;
  /** g; null without thickness and material. */
  readonly mass: number | null;
  /** Diameter of the largest and of the smallest round hole, mm; null where there is none. */
  readonly largestHole: number | null;
  readonly smallestHole: number | null;
}

/** What is cut, as it was read: for a picture of it. Lengths in mm. */
export interface DrawnCuts {
  /** mm in one unit of the drawing: places are in the drawing's units. */
  readonly unit: number;
  readonly runs: readonly {
    readonly isClosed: boolean;
    /** Bulge as in a sheet contour. */
    readonly corners: readonly { readonly x: number; readonly y: number; readonly bulge: number }[];
  }[];
}

export interface Preflight {
  /** False where nothing could be read of the file as a DXF. */
  readonly isReadable: boolean;
  /** Worst first is not promised: in the order of looking. */
  readonly findings: readonly PlacedFinding[];
  /** Null where the file could not be read. */
  readonly facts: DrawingFacts | null;
  /** Null where the file could not be read, or holds more lines than a picture shows. */
  readonly cuts: DrawnCuts | null;
}
