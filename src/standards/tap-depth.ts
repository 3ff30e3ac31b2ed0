import { tan } from '../units/trig.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';
import type { Thread } from './threads.ts';

/** How far a blind tapping drill runs past the last useful turn, by pitch, mm. Symbols of DIN 76-1. */
export interface TapRunoutRow extends TableRow {
  readonly P: number;
  /** Regular. */
  readonly e1: number;
  /** Short: needs a bottoming tap and care. */
  readonly e2: number;
}

/** DIN 76-1 run-out of blind tapped holes. From memory: no copy could be read. It lies in the 3 to 6 P of the trade. */
export const tapRunouts: StandardTable<TapRunoutRow> = {
  id: 'din76-1',
  edition: 'DIN 76-1',
  title: 'Run-out of blind tapped holes',
  source: 'memory; an independent machining guide asks for 0.5 d beyond the thread, which lies between e2 and e1',
  covers: 'pitches 0.5 to 3 mm',
  verified: 'memory',
  unit: 'mm',
  rows: [
    { P: 0.5, e1: 2.8, e2: 1.8, memory: true },
    { P: 0.7, e1: 3.8, e2: 2.4, memory: true },
    { P: 0.8, e1: 4.2, e2: 2.7, memory: true },
    { P: 1, e1: 5.1, e2: 3.2, memory: true },
    { P: 1.25, e1: 6.2, e2: 3.9, memory: true },
    { P: 1.5, e1: 7.3, e2: 4.6, memory: true },
    { P: 1.75, e1: 8.3, e2: 5.2, memory: true },
    { P: 2, e1: 9.3, e2: 5.8, memory: true },
    { P: 2.5, e1: 11.2, e2: 7, memory: true },
    { P: 3, e1: 13.1, e2: 8.2, memory: true },
  ],
};

/** Point angle of a twist drill, degrees (common practice). */
export const drillPointAngle = 118;

/** A blind tapped hole, depths in mm from the face. */
export interface BlindTap {
  /** Depth of full thread. */
  readonly thread: number;
  /** Depth of the tap drill at full diameter. */
  readonly drill: number;
  /** Depth of the drill's point. */
  readonly tip: number;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * The blind hole that leaves `fullThread` mm of full thread: the drill goes deeper by the run-out, and its point
 * deeper still. An inch thread, or any pitch between rows, takes the next coarser pitch: the safe side, no interpolation.
 * Source: DIN 76-1 (from memory); drill point 118 degrees.
 */
export function blindTap(
  thread: Thread,
  fullThread: number,
  runout: 'regular' | 'short' = 'regular',
): Lookup<BlindTap> {
  const row = tapRunouts.rows.find((candidate) => candidate.P >= thread.pitch - 1e-9);
  if (row === undefined)
    return missing(`DIN 76-1 run-outs are tabled up to a pitch of 3 mm; ${thread.designation} is coarser.`);
  if (!(fullThread > 0)) return missing(`The depth of full thread must be above 0 mm; got ${fullThread}.`);
  const drill = fullThread + (runout === 'regular' ? row.e1 : row.e2);
  return found({
    thread: fullThread,
    drill,
    tip: drill + drillPointHeight(thread.tapDrill),
    source: tapRunouts.edition,
    memory: row.memory ?? false,
  });
}

/** Height of a twist drill's point of this diameter, mm: (d/2) / tan(118/2 degrees). */
export function drillPointHeight(diameter: number): number {
  return diameter / 2 / tan((drillPointAngle / 2) * (Math.PI / 180));
}
