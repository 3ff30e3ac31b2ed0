/** What to take off, where and how deep: a drilled hole, or a flat, on the heavy side. */

import { angleOf, sizeOf } from '../formulas/arrows.ts';
import { depthInwards, drilledInwards, flatFor, pointHeight, rimOf } from '../formulas/correction-drill.ts';
import type { Joint } from '../job/joint.ts';
import type { MassProperties } from '../model/mass.ts';
import { hasWindows } from '../parts/tone-wheel.ts';
import { pullOf } from '../rotor/unbalance.ts';
import { hypot } from '../units/hypot.ts';
import { cos, sin } from '../units/trig.ts';
import { angle, mm } from './words.ts';

/** Drills that a shop reaches for, mm, the smallest first. */
const drills = [5, 6, 8, 10, 12, 16] as const;
/** A correction hole is no deeper than this many diameters: more drifts and takes long. Common practice. */
const deepest = 3;

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** How deep a drill may go from the rim towards the axis at an angle before it comes within `web` of a hole, mm. */
export function freeDepth({ adapterSpec, adapter }: Joint, at: number, diameter: number, web: number): number {
  const [c, s] = [cos(radians(at)), sin(radians(at))];
  const rim = adapterSpec.outside / 2;
  const registers = [adapterSpec.registers.driving, adapterSpec.registers.driven].map((r) => (r ? r.diameter / 2 : 0));
  // What lies round the axis: the bore and the registers.
  let innermost = Math.max(...registers, (adapterSpec.bore ?? 0) / 2) + web;
  for (const { x, y, profile } of adapter.drillings) {
    const reach = Math.max(...profile.map(({ r }) => r)) + diameter / 2 + web;
    const [along, across] = [x * c + y * s, Math.abs(y * c - x * s)];
    if (along > 0 && across < reach)
      innermost = Math.max(innermost, along + Math.sqrt(reach * reach - across * across));
  }
  return rim - innermost;
}

/** Heights between which the adapter has its full outside, edge chamfers counted in: a shoulder for the wheel has none. */
function rimHeights({ adapter, job }: Joint): { readonly from: number; readonly to: number } {
  const rim = rimOf(adapter.outer);
  const full = adapter.outer.filter(({ r }) => r >= rim - job.adapter.chamfer - 1e-6).map(({ z }) => z);
  return { from: Math.min(...full), to: Math.max(...full) };
}

/** Whether the rim has been cut away by a vise flat at an angle. */
function isOnViseFlat({ adapterSpec: { flats }, adapter }: Joint, at: number): boolean {
  if (!flats) return false;
  return Math.abs(cos(radians(at - flats.angle))) * 2 * rimOf(adapter.outer) > flats.across;
}

/** Whether a flat leaves `web` of metal to every hole behind it and to what lies round the axis. */
function isFlatClear(joint: Joint, at: number, flat: { depth: number; chord: number }, web: number): boolean {
  const [c, s] = [cos(radians(at)), sin(radians(at))];
  const plane = rimOf(joint.adapter.outer) - flat.depth;
  return joint.adapter.drillings.every(({ x, y, profile }) => {
    const reach = Math.max(...profile.map(({ r }) => r)) + web;
    return Math.abs(y * c - x * s) - reach >= flat.chord / 2 || x * c + y * s + reach <= plane + 1e-9;
  });
}

/** A hole drilled into the rim on the heavy side. */
export interface RimHole {
  readonly diameter: number;
  /** To the shoulder, mm. */
  readonly depth: number;
  /** Of its middle above the driving face, mm. */
  readonly height: number;
}

/** The smallest drill whose one hole is enough, clear of all else and no thicker than half the rim; null where none is. */
export function rimHole(joint: Joint, moment: number, at: number): RimHole | null {
  const { outside, material } = joint.adapterSpec;
  const { from, to } = rimHeights(joint);
  for (const diameter of drills) {
    if (diameter > (to - from) / 2) break;
    const drill = { diameter };
    const depth = depthInwards(drill, moment, outside / 2, material.density);
    if (depth === null || depth > deepest * diameter) continue;
    if (depth === 0 && drilledInwards(drill, 0, outside / 2, material.density).moment > 1.1 * moment) continue;
    const free = freeDepth(joint, at, diameter, joint.job.adapter.web);
    if (depth + pointHeight(drill) <= free) return { diameter, depth, height: (from + to) / 2 };
  }
  return null;
}

/** What to take off the adapter, a sentence without its full stop. */
export function adapterCorrection(joint: Joint, mass: MassProperties = joint.adapterMass): string {
  const pull = pullOf(mass);
  const [moment, heavy] = [sizeOf(pull), angleOf(pull)];
  const rim = joint.adapterSpec.outside / 2;
  const place = `at ${angle(heavy)}, the heavy side (seen from the driven side, from the index mark)`;
  const grams = `Take ${(moment / rim).toFixed(1)} g off the rim ${place}`;
  if (isOnViseFlat(joint, heavy)) return grams;
  const hole = rimHole(joint, moment, heavy);
  const flat = flatFor(moment, joint.adapter.outer, joint.adapterSpec.material.density);
  const isClear = flat !== null && isFlatClear(joint, heavy, flat, joint.job.adapter.web);
  const ways = [
    hole &&
      `drill ${mm(hole.diameter, 0)} into the rim there, ${mm(hole.height, 1)} above the driving face and ${mm(hole.depth, 1)} deep at full diameter (a 118 degree point is counted)`,
    isClear && `mill a flat ${mm(flat.depth)} deep there (${mm(flat.chord, 1)} wide)`,
  ].filter((way) => typeof way === 'string');
  return ways.length === 0 ? grams : `${grams}: ${ways.join(', or ')}`;
}

/** A hole through the sheet of the wheel on its heavy side. */
export interface WheelHole {
  /** Of the hole, and of its middle from the axis, mm. */
  readonly diameter: number;
  readonly radius: number;
  /** Degrees. */
  readonly at: number;
  /** False where it would come too near the roots, the screws or the bore. */
  readonly fits: boolean;
}

/** The hole between screws and roots whose mass balances the wheel; null without a wheel. */
export function wheelHole({ wheelMass, wheelSpec }: Joint): WheelHole | null {
  if (!wheelMass || !wheelSpec) return null;
  const pull = pullOf(wheelMass);
  const circle = wheelSpec.screwHoles ? Math.max(...wheelSpec.screwHoles.positions.map((p) => hypot(p.x, p.y))) : 0;
  const inner = Math.max(circle + (wheelSpec.screwHoles?.diameter ?? 0) / 2, wheelSpec.bore / 2);
  const radius = (inner + wheelSpec.root / 2) / 2;
  const { density } = wheelSpec.material;
  const diameter = Math.sqrt((4 * sizeOf(pull)) / (Math.PI * density * wheelSpec.thickness * radius));
  const room = wheelSpec.root / 2 - inner - 2 * wheelSpec.thickness;
  return { diameter, radius, at: angleOf(pull), fits: diameter <= room };
}

/** What to take off the wheel: a hole through the sheet between its screws and its roots. */
export function wheelCorrection(joint: Joint): string {
  const { wheelMass, wheelSpec } = joint;
  const hole = wheelHole(joint);
  if (!wheelMass || !wheelSpec || !hole) return '';
  const place = `at ${angle(hole.at)}, the heavy side (seen from the driven side, from the index mark)`;
  const moment = sizeOf(pullOf(wheelMass));
  const root = wheelSpec.root / 2;
  const grams = `Take ${(moment / root).toFixed(1)} g off below the ${hasWindows(wheelSpec) ? 'windows' : 'roots'} ${place}`;
  return hole.fits
    ? `${grams}: a hole of ${mm(hole.diameter, 1)} through the sheet, ${mm(hole.radius, 1)} from the axis, does it`
    : `${grams}, if it comes off ${mm(root, 1)} from the axis. Nearer to the axis it has to be more: grams times their distance from it make ${moment.toFixed(0)} g.mm`;
}
