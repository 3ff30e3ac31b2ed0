/** How hard each screw is tightened, and what that rests on. */
import { headFrictionDiameter, tighteningTorque, tightenScrew } from '../formulas/preload.ts';
import type { Tightened } from '../job/joint.ts';
import { countersunkScrews, inchCountersunkScrews } from '../standards/countersunk-screws.ts';
import { threadFriction } from '../standards/friction.ts';
import type { HexNut } from '../standards/hex-nuts.ts';
import { inchesToMm } from '../standards/inch.ts';
import type { Material } from '../standards/materials.ts';
import { propertyClass } from '../standards/property-classes.ts';
import { type ScrewHead, screwHead } from '../standards/screw-heads.ts';
import { lookUp, must } from '../standards/table.ts';
import type { Thread } from '../standards/threads.ts';
import { tighteningFactor } from '../standards/tightening.ts';

/**
 * Friction in thread and under the head that torques are given for: steel, lightly oiled. The middle of VDI 2230 class B (0.08 to 0.16);
 * choice of this program. With less friction the same torque overloads the screw, so no paste.
 */
const usualFriction = 0.12;
/** Share of the yield point that tightening uses up: VDI 2230. */
const utilisation = 0.9;
/** Sunk and button heads have a weakened head (ISO 10642 and ISO 7380-1 scope notes): this share of a full one. The share is from memory. */
const weakHead = 0.8;

/** What a screw presses on and holds in. */
export interface TighteningInput {
  readonly thread: Thread;
  readonly head: ScrewHead;
  /** Hole that the head bears round, mm. */
  readonly hole: number;
  /** The nut and the hole that it bears round, where there is one. */
  readonly nut?: (HexNut & { readonly hole: number }) | null;
  /** Friction in thread and under the head, where the job says it. */
  readonly friction?: number | null;
  readonly class: string;
  /** What is under the head, under the nut, and round the thread. */
  readonly seats: readonly Material[];
}

/** Bearing face where none is printed: the least share in the metric tables, of the head, and of the flats (hexagons, M6 up). */
const bearingShare = { head: 0.92, hex: 0.88 };

const isSoft = ({ family }: Material) => family === 'aluminium' || family === 'plastic';

/** The ring that rubs, mm; a cone has an angle, degrees. */
interface Bearing {
  readonly dw: number;
  readonly hole: number;
  readonly coneAngle?: number | undefined;
}

/** Least diameter of a head's own bearing face, mm: a small one gives a small torque, which is the safe side. */
function headFace({ kind, size, dk, dw, s }: ScrewHead): number {
  if (dw !== undefined) return dw;
  if (kind === 'hex') return bearingShare.hex * (s ?? dk * Math.cos(Math.PI / 6));
  if (kind !== 'flat') return bearingShare.head * dk;
  // The sharp diameter of a cone is never reached: the least real head counts.
  const metric = lookUp(countersunkScrews, 'size', size);
  const inch = lookUp(inchCountersunkScrews, 'size', size);
  return metric.ok ? metric.value.dkActual : inch.ok ? inchesToMm(inch.value.Amin) : dk;
}

/** Of head and nut the one that rubs on the smaller ring, since either may be turned. */
function bearingOf({ thread, head, hole, nut }: TighteningInput): Bearing {
  // A hole as wide as the head would leave no ring at all.
  const ring = (dw: number, around: number): Bearing => ({ dw, hole: Math.min(around, dw) });
  const own = { ...ring(headFace(head), hole), coneAngle: head.coneAngle };
  if (!nut) return own;
  const hex = screwHead('hex', thread.size);
  const face = hex.ok && hex.value.dw !== undefined ? hex.value.dw : bearingShare.hex * nut.acrossFlats;
  const other = ring(face, nut.hole);
  return headFrictionDiameter(other) < headFrictionDiameter(own) ? other : own;
}

/** The friction class in whose middle a friction lies best; the open-ended one, for dry stainless, never does. */
function frictionClassOf(mu: number): { cls: string; from: number; to: number } {
  const closed = threadFriction.rows.flatMap(({ cls, from, to }) => (to === null ? [] : [{ cls, from, to }]));
  const off = ({ from, to }: { from: number; to: number }) => Math.abs(mu - (from + to) / 2);
  return closed.reduce((best, row) => (off(row) < off(best) ? row : best));
}

/**
 * Tightening torque and preload of one screw, or why none is given.
 * Source: VDI 2230-1 preload and torque at 90 % of the yield point; friction as above. Soft seats get none: the pressure under the head
 * is not judged by this version, and a steel torque would crush them.
 */
export function tightened(input: TighteningInput): Tightened {
  const { thread, head, class: name, seats } = input;
  const friction = input.friction ?? usualFriction;
  const soft = seats.find(isSoft);
  if (soft) {
    return {
      torque: null,
      preload: null,
      leastPreload: null,
      friction,
      note: `no torque given: ${soft.name} is soft, and the pressure under the heads is not judged; use hardened washers and have the torque worked out`,
    };
  }
  const weak = head.kind === 'flat' || head.kind === 'button';
  const bearing = bearingOf(input);
  const { torque, preload, leastPreload } = tightenScrew({
    thread,
    head: bearing,
    yieldStrength: must(propertyClass(name, thread.d)).yieldStrength,
    muThread: friction,
    utilisation: weak ? utilisation * weakHead : utilisation,
    alphaA: must(tighteningFactor('torque wrench')).alphaA,
  });
  const pulls = (mu: number) => torque / tighteningTorque(1000, thread, headFrictionDiameter(bearing), mu, mu);
  const { cls, from, to } = frictionClassOf(friction);
  const state =
    input.friction === undefined || input.friction === null ? 'lightly oiled, no paste' : 'friction as given';
  const share = weak ? `, four fifths of the usual preload under a ${head.kind} head (from memory)` : '';
  return {
    torque,
    preload,
    leastPreload,
    friction,
    note: `torque wrench, ${state}${share}; cross-wise in three steps, and again after the first run (common practice)`,
    spread: { class: cls, from, to, most: pulls(from), least: pulls(to) },
  };
}
