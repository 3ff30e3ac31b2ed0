import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** How much the faces of a screwed joint settle, micrometres, by their roughness Rz and by how the joint is loaded. */
export interface EmbeddingRow extends TableRow {
  /** Average peak to valley height Rz, micrometres: over < Rz <= upTo. */
  readonly over: number;
  readonly upTo: number;
  readonly load: 'along' | 'across';
  /** In the thread; under each head or nut; in each joint between two clamped parts. */
  readonly thread: number;
  readonly seat: number;
  readonly joint: number;
}

/** Guide values of embedding. */
export const embeddingAmounts: StandardTable<EmbeddingRow> = {
  id: 'vdi2230-embedding',
  edition: 'VDI 2230 Part 1, guide values of embedding',
  title: 'Embedding of thread, seats and joints',
  source: 'two independent public programs print the same figures along the screw, one of them those across it',
  covers: 'Rz up to 160 um, solid steel parts, loads along and across the screw',
  verified: 'secondary',
  unit: 'um',
  notes: ['For steel at room temperature. Aluminium above 100 degC creeps on top of it.'],
  // biome-ignore format: a table is read row by row
  rows: [
    { over: 0, upTo: 10, load: 'along', thread: 3, seat: 2.5, joint: 1.5 },
    { over: 10, upTo: 40, load: 'along', thread: 3, seat: 3, joint: 2 },
    { over: 40, upTo: 160, load: 'along', thread: 3, seat: 4, joint: 3 },
    { over: 0, upTo: 10, load: 'across', thread: 3, seat: 3, joint: 2 },
    { over: 10, upTo: 40, load: 'across', thread: 3, seat: 4.5, joint: 2.5 },
    { over: 40, upTo: 160, load: 'across', thread: 3, seat: 6.5, joint: 3.5 },
  ],
};

/** Faces of one screw that settle. */
export interface SettlingFaces {
  /** Heads and nuts. */
  readonly seats: number;
  /** Joints between clamped parts, and to the part that holds the thread. */
  readonly joints: number;
}

/**
 * Embedding fZ of one screw, mm.
 * @param Rz roughness of the faces, micrometres, above 0 up to 160
 * @param load along the screw, or across it (torque carried by friction)
 * Source: VDI 2230-1. Errors: a roughness outside the table.
 */
export function embeddingOf(Rz: number, load: 'along' | 'across', { seats, joints }: SettlingFaces): Lookup<number> {
  const row = embeddingAmounts.rows.find((r) => r.load === load && Rz > r.over && Rz <= r.upTo);
  if (row === undefined) return missing(`Embedding is tabled above Rz 0 up to 160 um; got ${Rz}.`);
  return found((row.thread + seats * row.seat + joints * row.joint) / 1000);
}
