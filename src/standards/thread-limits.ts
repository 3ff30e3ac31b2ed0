import { mmPerInch } from './inch.ts';
import type { Lookup } from './table.ts';
import { found, missing } from './table.ts';
import { pitchDiameterTolerances, pitchTolerances } from './thread-tolerances.ts';
import type { Thread } from './threads.ts';

/** Least and largest of one diameter, mm. */
export interface Limits {
  readonly min: number;
  readonly max: number;
}

/** Limits of a screw thread and its tapped hole, mm. Small letters external, capitals internal. */
export interface ThreadLimits {
  readonly d: Limits;
  readonly d2: Limits;
  readonly D1: Limits;
  readonly D2: Limits;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * Limits of a thread in the usual classes: 6g screw in a 6H hole (ISO 965-1), or 2A screw in a 2B hole.
 * The inch tolerances follow the ASME B1.1 formulas, from memory; they reproduce the printed UNC 2B limits to 0.0001 in.
 * Miss: a metric thread whose pitch is not tabled for its diameter.
 */
export function threadLimits(thread: Thread): Lookup<ThreadLimits> {
  return thread.system === 'metric' ? metricLimits(thread) : found(unifiedLimits(thread));
}

function metricLimits({ designation, d, d2, D1, pitch }: Thread): Lookup<ThreadLimits> {
  const byPitch = pitchTolerances.rows.find((row) => row.P === pitch);
  const byDiameter = pitchDiameterTolerances.rows.find((row) => row.P === pitch && d > row.over && d <= row.upTo);
  if (byPitch === undefined || byDiameter === undefined) {
    return missing(`ISO 965-1 tolerances are not tabled here for ${designation}.`);
  }
  const { es, Td, TD1 } = byPitch;
  const { Td2, TD2 } = byDiameter;
  return found({
    d: downFrom(d - es / 1000, Td / 1000),
    d2: downFrom(d2 - es / 1000, Td2 / 1000),
    D1: upFrom(D1, TD1 / 1000),
    D2: upFrom(d2, TD2 / 1000),
    source: 'ISO 965-1, 6g and 6H',
    memory: false,
  });
}

function unifiedLimits({ d, d2, D1, pitch }: Thread): ThreadLimits {
  const D = d / mmPerInch;
  const P = pitch / mmPerInch;
  const pitchRoot = Math.cbrt(P * P);
  // Engagement Le = D, as ASME B1.1 takes it for the UNC and UNF series.
  const Td2 = 0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(D) + 0.015 * pitchRoot;
  const allowance = 0.3 * Td2;
  const TD1 = D > 0.25 ? 0.25 * P - 0.4 * P * P : 0.05 * pitchRoot + (0.03 * P) / D - 0.002;
  return {
    d: downFrom(d - allowance * mmPerInch, 0.06 * pitchRoot * mmPerInch),
    d2: downFrom(d2 - allowance * mmPerInch, Td2 * mmPerInch),
    D1: upFrom(D1, TD1 * mmPerInch),
    D2: upFrom(d2, 1.3 * Td2 * mmPerInch),
    source: 'ASME B1.1 formulas, 2A and 2B',
    memory: true,
  };
}

function downFrom(max: number, tolerance: number): Limits {
  return { min: max - tolerance, max };
}

function upFrom(min: number, tolerance: number): Limits {
  return { min, max: min + tolerance };
}
