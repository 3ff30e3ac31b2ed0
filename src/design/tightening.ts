/** How hard each screw is tightened, and what that rests on. */
import { headFrictionDiameter, tighteningTorque, tightenScrew } from '../formulas/preload.ts';
import { stripLoads, threadShearStrength, usefulEngagement, worstThread } from '../formulas/stripping.ts';
import type { PressedSeat, Tightened } from '../job/joint.ts';
import { countersunkScrews, inchCountersunkScrews } from '../standards/countersunk-screws.ts';
import { threadFriction } from '../standards/friction.ts';
import type { HexNut } from '../standards/hex-nuts.ts';
import { inchesToMm } from '../standards/inch.ts';
import type { Material } from '../standards/materials.ts';
import { propertyClass } from '../standards/property-classes.ts';
import { type ScrewHead, screwHead } from '../standards/screw-heads.ts';
import { lookUp, must } from '../standards/table.ts';
import { threadLimits } from '../standards/thread-limits.ts';
import type { Thread } from '../standards/threads.ts';
import { tighteningFactor } from '../standards/tightening.ts';
import { cos } from '../units/trig.ts';
import { isSoft, pressedSeat, type Seat, seatLoad } from './pressed-seats.ts';

/**
 * Friction in thread and under the head that torques are given for: steel, lightly oiled. The middle of VDI 2230 class B (0.08 to 0.16);
 * choice of this program. With less friction the same torque overloads the screw, so no paste.
 */
const usualFriction = 0.12;
/** Share of the yield point that tightening uses up: VDI 2230. */
const utilisation = 0.9;
/** Sunk and button heads have a weakened head (ISO 10642 and ISO 7380-1 scope notes): this share of a full one. The share is from memory. */
const weakHead = 0.8;
/** A thread in a soft part is loaded to this share of what strips it. Common practice, from memory: threads in aluminium are cut loosely. */
const stripShare = 0.8;

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
  /** The flange that has to come off before the screws can be tightened again; left out where they stay within reach. */
  readonly under?: 'driving' | 'driven' | null;
  /** What is under the head and under the nut. */
  readonly seats: readonly Seat[];
  /** What holds the thread, and how much of it engages, mm (null: not known); left out for a nut. */
  readonly parent?: { readonly material: Material; readonly engaged: number | null } | null;
}

/** Bearing face where none is printed: the least share in the metric tables, of the head, and of the flats (hexagons, M6 up). */
const bearingShare = { head: 0.92, hex: 0.88 };

/** The ring that rubs, mm; a cone has an angle, degrees. */
interface Bearing {
  readonly dw: number;
  readonly hole: number;
  readonly coneAngle?: number | undefined;
}

/** Least diameter of a head's own bearing face, mm: a small one gives a small torque, which is the safe side. */
function headFace({ kind, size, dk, dw, s }: ScrewHead): number {
  if (dw !== undefined) return dw;
  if (kind === 'hex') return bearingShare.hex * (s ?? dk * cos(Math.PI / 6));
  if (kind !== 'flat') return bearingShare.head * dk;
  // The sharp diameter of a cone is never reached: the least real head counts.
  const metric = lookUp(countersunkScrews, 'size', size);
  const inch = lookUp(inchCountersunkScrews, 'size', size);
  return metric.ok ? metric.value.dkActual : inch.ok ? inchesToMm(inch.value.Amin) : dk;
}

/** Bearing diameter of a nut, mm: as of a hexagon head. */
function nutFace(thread: Thread, nut: HexNut): number {
  const hex = screwHead('hex', thread.size);
  return hex.ok && hex.value.dw !== undefined ? hex.value.dw : bearingShare.hex * nut.acrossFlats;
}

/** Of head and nut the one that rubs on the smaller ring, since either may be turned. */
function bearingOf({ thread, head, hole, nut }: TighteningInput): Bearing {
  // A hole as wide as the head would leave no ring at all.
  const ring = (dw: number, around: number): Bearing => ({ dw, hole: Math.min(around, dw) });
  const own = { ...ring(headFace(head), hole), coneAngle: head.coneAngle };
  if (!nut) return own;
  const other = ring(nutFace(thread, nut), nut.hole);
  return headFrictionDiameter(other) < headFrictionDiameter(own) ? other : own;
}

/** The friction class in whose middle a friction lies best; the open-ended one, for dry stainless, never does. */
function frictionClassOf(mu: number): { cls: string; from: number; to: number } {
  const closed = threadFriction.rows.flatMap(({ cls, from, to }) => (to === null ? [] : [{ cls, from, to }]));
  const off = ({ from, to }: { from: number; to: number }) => Math.abs(mu - (from + to) / 2);
  return closed.reduce((best, row) => (off(row) < off(best) ? row : best));
}

/** A load that a soft part bears, N, and in words what bears it; null load: not known, and the words say why. */
interface Bound {
  readonly load: number | null;
  readonly by: string;
}

/** What soft seats and a soft thread bear. */
function softBounds({ thread, class: name, seats, parent }: TighteningInput, pressed: readonly PressedSeat[]): Bound[] {
  const heads = pressed.flatMap((seat, at): Bound[] => {
    const material = seats[at]?.material;
    if (!material || !isSoft(material)) return [];
    const load = seatLoad(seat);
    if (load === null) return [{ load, by: seat.how }];
    if (load === 0) return [{ load: null, by: `The hole in the ${seat.part} is as wide as the ${seat.under}.` }];
    return [{ load, by: `the pressure under the ${seat.under} on ${material.name}` }];
  });
  if (!parent || !isSoft(parent.material)) return heads;
  const { material, engaged } = parent;
  const limits = threadLimits(thread);
  if (engaged === null || !limits.ok) {
    const why = limits.ok ? 'how much of it engages is not known' : limits.why;
    return [...heads, { load: null, by: `The thread is in ${material.name}, and ${why}.` }];
  }
  const shear = {
    screw: threadShearStrength(must(propertyClass(name, thread.d)).tensileStrength),
    parent: material.shearStrength,
  };
  if (engaged <= 0) return [...heads, { load: null, by: `No thread in ${material.name} engages.` }];
  const counted = Math.min(engaged, usefulEngagement * thread.d);
  const strip = stripLoads(worstThread(limits.value, thread.pitch), counted, shear);
  return [...heads, { load: stripShare * strip.least, by: `the thread in ${material.name}` }];
}

/**
 * Tightening torque and preload of one screw, or why none is given.
 * Source: VDI 2230-1 preload and torque at 90 % of the yield point; friction as above. On soft parts no more than the seat bears (limiting
 * pressure) and four fifths of what strips the thread; none where neither is known.
 */
export function tightened(input: TighteningInput): Tightened {
  const { thread, head, class: name, nut } = input;
  const friction = input.friction ?? usualFriction;
  const weak = head.kind === 'flat' || head.kind === 'button';
  const bearing = bearingOf(input);
  const screw = {
    thread,
    head: bearing,
    yieldStrength: must(propertyClass(name, thread.d)).yieldStrength,
    muThread: friction,
    alphaA: must(tighteningFactor('torque wrench')).alphaA,
  };
  const usualShare = weak ? utilisation * weakHead : utilisation;
  const usual = tightenScrew({ ...screw, utilisation: usualShare });
  const seats = input.seats.map((seat) => {
    const face = seat.under === 'nut' && nut ? nutFace(thread, nut) : headFace(head);
    return pressedSeat(seat, face, 1000 * usual.preload);
  });
  const bounds = softBounds(input, seats);
  const open = bounds.find(({ load }) => load === null);
  if (open) {
    const note = `no torque given: ${open.by.charAt(0).toLowerCase()}${open.by.slice(1).replace(/\.$/, '')}`;
    return { torque: null, preload: null, leastPreload: null, friction, note, seats };
  }
  const least = bounds.reduce<Bound | null>((a, b) => (a === null || (b.load ?? 0) < (a.load ?? 0) ? b : a), null);
  const share = Math.min(1, (least?.load ?? Number.POSITIVE_INFINITY) / (1000 * usual.preload));
  const heldDown = least && share < 1 ? { share, by: least.by } : null;
  const { torque, preload, leastPreload } = tightenScrew({ ...screw, utilisation: usualShare * share });
  const pulls = (mu: number) => torque / tighteningTorque(1000, thread, headFrictionDiameter(bearing), mu, mu);
  const { cls, from, to } = frictionClassOf(friction);
  const most = pulls(from);
  const yieldsAt = tightenScrew({ ...screw, muThread: from, utilisation: 1 }).preload;
  const state =
    input.friction === undefined || input.friction === null ? 'lightly oiled, no paste' : 'friction as given';
  const byHead = weak ? `, four fifths of the usual preload under a ${head.kind} head (from memory)` : '';
  const bySoft = heldDown ? `, limited by ${heldDown.by}: ${Math.floor(100 * share)} % of the usual preload` : '';
  const byFlange = input.under ? `, for which the ${input.under} flange comes off` : '';
  return {
    torque,
    preload,
    leastPreload,
    friction,
    note: `torque wrench, ${state}${byHead}${bySoft}; cross-wise in three steps, and again after the first run${byFlange} (common practice)`,
    seats,
    ...(heldDown ? { heldDown } : {}),
    spread: { class: cls, from, to, most, least: pulls(to), yields: most > yieldsAt },
  };
}
