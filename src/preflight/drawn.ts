/** What an entity draws: a run of lines and arcs, and what is odd about it. */
import type { Stretch } from '../geometry/contour.ts';
import type { FaultCode } from './fault-kinds.ts';

/** A run of stretches, end to end. */
export interface Run {
  readonly stretches: readonly Stretch[];
  /** Closed by its own form: a circle, or a polyline marked so. */
  readonly isClosed: boolean;
}

/** What came of decoding one entity, in the entity's own plane and the drawing's units. */
export interface Decoded {
  readonly runs: readonly Run[];
  /** Heights of its points. */
  readonly heights: readonly number[];
  readonly faults: readonly {
    readonly code: FaultCode;
    readonly note: string;
    readonly x?: number;
    readonly y?: number;
  }[];
  /** Its coordinates are those of the drawing, whatever its extrusion. */
  readonly isWorld: boolean;
}

export const nothingDrawn: Decoded = { runs: [], heights: [], faults: [], isWorld: true };

/** An entity that cannot be drawn for a number in it. */
export function badNumber(note: string): Decoded {
  return { ...nothingDrawn, faults: [{ code: 'dxf-bad-number', note }] };
}

/** A corner of a polyline. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}
