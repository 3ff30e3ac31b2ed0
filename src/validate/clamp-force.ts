/** What is left of a screw's preload in service, step by step: scatter of the wrench, settling faces, cold and heat. */
import {
  clampedResilience,
  clampLength,
  embeddingLoss,
  heatChange,
  screwResilience,
} from '../formulas/preload-change.ts';
import { referenceTemperature } from '../formulas/thermal-fit.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { flangeMaterial } from '../rotor/plays.ts';
import { embeddingOf } from '../standards/embedding.ts';
import { shankOf } from '../standards/shank-lengths.ts';
import { found, type Lookup, missing, must } from '../standards/table.ts';
import { findThread } from '../standards/threads.ts';
import { clampedStack, screwSteel, whyNoStack } from './clamped.ts';

/** Roughness Rz of turned, milled and drilled faces (Ra 3.2), micrometres. Common practice. */
const usualRoughness = 16;
/** One thing that happens to the preload, kN; losses are negative. */
export interface ClampStep {
  readonly what: string;
  readonly kN: number;
}

/** What a screw clamps with, kN. */
export interface ClampForce {
  /** The least that is left, never below 0; and the same as the sum gives it. */
  readonly least: number;
  readonly left: number;
  /** The greatest, hot or cold. */
  readonly greatest: number;
  readonly steps: readonly ClampStep[];
  /** Embedding, mm, and what it costs. */
  readonly embedding: number;
  readonly settles: number;
  /** Change at the coldest and hottest; null where the job gives no temperatures. */
  readonly heat: { readonly cold: number; readonly hot: number } | null;
  /** Clamped length, mm; resilience of screw and parts, mm/N. */
  readonly clamped: number;
  readonly deltaS: number;
  readonly deltaP: number;
}

function parentModulus(joint: Joint, { fastening, side }: ScrewGroup): number {
  if (fastening === 'through') return screwSteel.youngsModulus;
  if (fastening === 'into_adapter' || side === 'wheel') return joint.adapterMaterial.youngsModulus;
  return flangeMaterial(joint, side).youngsModulus;
}

/**
 * Clamp force of one screw of a group in service, kN. Misses say what is not known.
 * Source: VDI 2230-1: FMmax/alphaA - FZ - dF(heat), no working load along the screw. The re-torque after the first run brings most of the
 * settling back; it is not counted on.
 */
export function leastClampForce(joint: Joint, group: ScrewGroup): Lookup<ClampForce> {
  const { preload, leastPreload, note } = group.tightening;
  if (preload === null || leastPreload === null) return missing(`There is ${note}.`);
  const thread = findThread(group.thread);
  const stack = clampedStack(joint, group);
  if (!thread.ok) return thread;
  if (!stack) return missing(whyNoStack(joint, group).why);
  const clamped = clampLength(stack.layers);
  const shank =
    group.length === null ? 0 : Math.min(clamped, shankOf(group.head.kind, thread.value, group.length).length);
  const deltaS = screwResilience({
    d: thread.value.d,
    d3: thread.value.d3,
    head: group.head.kind,
    shank,
    freeThread: clamped - shank,
    E: screwSteel.youngsModulus,
    parentE: parentModulus(joint, group),
    heldBy: group.nut ? 'nut' : 'part',
  });
  const deltaP = clampedResilience(stack);
  // A part that holds the thread is one more to touch.
  const faces = { seats: group.nut ? 2 : 1, joints: stack.layers.length - (group.nut ? 1 : 0) };
  const embedding = must(embeddingOf(usualRoughness, 'across', faces));
  const settles = embeddingLoss(embedding, deltaS, deltaP) / 1000;
  const temperature = joint.job.duty?.temperature;
  const change = (at: number) =>
    heatChange(stack.layers, screwSteel.thermalExpansion, at - referenceTemperature, deltaS, deltaP) / 1000;
  const heat = temperature ? { cold: change(temperature.cold), hot: change(temperature.hot) } : null;
  const worst = heat ? Math.min(0, heat.cold, heat.hot) : 0;
  const left = leastPreload - settles + worst;
  const when = temperature && heat ? ` at ${heat.cold <= heat.hot ? temperature.cold : temperature.hot} degC` : '';
  return found({
    least: Math.max(0, left),
    left,
    greatest: preload + (heat ? Math.max(0, heat.cold, heat.hot) : 0),
    steps: [
      { what: 'greatest preload of the torque', kN: preload },
      { what: 'scatter of the torque wrench', kN: leastPreload - preload },
      { what: `faces and thread settle ${(1000 * embedding).toFixed(0)} um`, kN: -settles },
      ...(worst < 0 ? [{ what: `parts and screw grow unlike${when}`, kN: worst }] : []),
    ],
    embedding,
    settles,
    heat,
    clamped,
    deltaS,
    deltaP,
  });
}

/** What a screw loses after tightening, kN: settling, and what cold or heat takes. Null where it is not known. */
export function lostPreload(joint: Joint, group: ScrewGroup): number | null {
  const force = leastClampForce(joint, group);
  if (!force.ok) return null;
  const { settles, heat } = force.value;
  return settles + (heat ? Math.max(0, -heat.cold, -heat.hot) : 0);
}
