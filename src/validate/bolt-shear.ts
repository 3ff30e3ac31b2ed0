/**
 * What if a face slips after all: do the screws shear, do their holes give way? A second line where the faces grip; the only one where
 * they do not.
 */

import { bearingResistance, screwForce, shearResistance } from '../formulas/bolt-shear.ts';
import { nearestEmpty } from '../job/hole-pattern.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { adapterFace, type FaceSide, faceHeight, faceSides, flangeFace, screwsOfFace } from '../rotor/joint-face.ts';
import { flangeMaterial, passingHole } from '../rotor/plays.ts';
import type { Material } from '../standards/materials.ts';
import { shankOf } from '../standards/shank-lengths.ts';
import { findThread } from '../standards/threads.ts';
import { hypot } from '../units/hypot.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { carryByDowels, dowelsHold } from './dowels-shear.ts';
import { torqueInWords, torqueMissing, torqueOf } from './duty-torque.ts';
import { grips } from './grip.ts';
import { mm, plain, sourced } from './words.ts';

/** Of screws in clearance holes only so many bear at first: holes are never quite in place. Common practice. */
const sharing = 0.5;
/** A screw bends in a deep hole: no more of the wall than this many diameters is counted. Choice of this program. */
const deepest = 1;

const shared = 'Of screws in clearance holes half are taken to bear (common practice)';

/** What cuts the plane of a side's face: the plain shank or the thread, and its area, mm2. */
function sectionIn(joint: Joint, side: FaceSide, group: ScrewGroup) {
  const thread = findThread(group.thread);
  if (!thread.ok) return null;
  const depth = Math.abs(group.headZ - faceHeight(joint, side));
  const shank = group.length === null ? 0 : shankOf(group.head.kind, thread.value, group.length).length;
  const plane = shank > depth ? ('shank' as const) : ('thread' as const);
  const area = plane === 'shank' ? (Math.PI / 4) * thread.value.d ** 2 : thread.value.stressArea;
  return { plane, area };
}

/** Dowels as another way, where they are one. */
const orDowels = (joint: Joint, side: FaceSide, torque: number): string => {
  const dowels = carryByDowels(joint, side, torque);
  return dowels === '' ? '' : `, or ${dowels}`;
};

function shear(joint: Joint, side: FaceSide, group: ScrewGroup, torque: number, words: string): Finding {
  const common = {
    code: `bolt-shear-${side}`,
    feature: group.id,
    title: `${group.thread} screws in shear should the ${side} face slip`,
  };
  const source = 'EN 1993-1-8 table 3.4; loads on fastener groups, NASA RP-1228';
  const section = sectionIn(joint, side, group);
  if (!section) {
    const why = `The thread ${group.thread} is not tabled.`;
    return notAssessed({ ...common, why, missing: `Take a tabled thread (adapter.${group.side}.screw).`, source });
  }
  const force = screwForce(torque, group.positions, sharing) / 1000;
  const limit = shearResistance(group.class, section.area, section.plane) / 1000;
  const outside =
    group.class === '12.9' ? ' Class 12.9 is outside that code: reckoned as 10.9 with its own strength.' : '';
  return judged(
    {
      ...common,
      unit: 'kN',
      why: `${shared}: ${plain(force, 1)} kN on the worst one under ${words}. The ${section.plane} lies in the plane (${plain(section.area, 1)} mm2): ${plain(limit, 1)} kN.${outside}`,
      cure: `Take thicker or more screws (${Math.ceil((group.count * force) / limit)} of these)${orDowels(joint, side, torque)}.`,
      source: sourced(source, group.class === '12.9' || group.head.kind === 'socket' || group.head.kind === 'flat'),
    },
    force,
    { limit, sense: 'at most', worst: grips(joint, side) ? 'caution' : 'fail' },
  );
}

/** One plate that a screw bears on. */
interface Plate {
  readonly what: string;
  readonly material: Material;
  readonly hole: number;
  /** mm; null where it is not known, with the key that would tell. */
  readonly thickness: number | null;
  readonly key: string;
  readonly face: { readonly outside: number; readonly inside: number };
  /** Distance to the nearest hole without a screw, mm; infinite where there is none. */
  readonly empty: number;
}

function platesOf(joint: Joint, side: FaceSide, group: ScrewGroup): Plate[] {
  const flange = joint[side];
  const passing = passingHole(joint, group);
  const washer = group.seat === 'outside' ? 0 : (group.washer?.thickness ?? 0);
  const underHead = group.head.kind === 'flat' ? group.head.height : washer;
  const alongHead =
    group.seat === 'outside'
      ? joint.adapterSpec.thickness
      : Math.abs(group.headZ - faceHeight(joint, side)) - underHead;
  const clear = flange.holes.kind === 'clear';
  return [
    {
      what: 'adapter',
      material: joint.adapterMaterial,
      hole: passing ? passing.diameter : group.major,
      thickness: passing ? alongHead : group.engagement.has,
      key: `${side}.thickness, from which the screw length follows`,
      face: adapterFace(joint, side),
      empty: Number.POSITIVE_INFINITY,
    },
    {
      what: `${side} flange`,
      material: flangeMaterial(joint, side),
      hole: clear ? flange.holes.diameter.value : group.major,
      thickness: clear ? (flange.thickness?.value ?? null) : group.engagement.has,
      key: clear ? `${side}.thickness` : `${side}.holes.depth`,
      face: flangeFace(joint, side),
      empty: nearestEmpty(flange.holes),
    },
  ];
}

/** Resistance of a plate at its worst hole, N. */
function bears(plate: Plate, thickness: number, group: ScrewGroup): number {
  const radii = group.positions.map(({ x, y }) => hypot(x, y));
  const edge = Math.min(plate.face.outside - Math.max(...radii), Math.min(...radii) - plate.face.inside);
  const pitch = group.positions.reduce((least, a, i) => {
    const gaps = group.positions.slice(i + 1).map((b) => hypot(a.x - b.x, a.y - b.y));
    return Math.min(least, ...gaps);
  }, plate.empty);
  const { major: d, class: cls } = group;
  return bearingResistance(
    { d, hole: plate.hole, thickness: Math.min(Math.max(0, thickness), deepest * d), edge: Math.max(0, edge), pitch },
    cls,
    plate.material.tensileStrength,
  );
}

function bearing(joint: Joint, side: FaceSide, group: ScrewGroup, torque: number, words: string): Finding {
  const common = {
    code: `bearing-${side}`,
    feature: group.id,
    title: `walls of the ${group.thread} holes should the ${side} face slip`,
  };
  const source = 'EN 1993-1-8 table 3.4 and 3.6.1(10); aluminium alike';
  const plates = platesOf(joint, side, group);
  const unknown = plates.find(({ thickness }) => thickness === null);
  if (unknown) {
    const why = `How much of the ${unknown.what} the screws bear on is not known.`;
    return notAssessed({ ...common, why, missing: `Give ${unknown.key}.`, source });
  }
  const walls = plates.map((plate) => ({ plate, kN: bears(plate, plate.thickness ?? 0, group) / 1000 }));
  const weaker = walls.reduce((a, b) => (b.kN < a.kN ? b : a));
  const force = screwForce(torque, group.positions, sharing) / 1000;
  return judged(
    {
      ...common,
      unit: 'kN',
      why: `${shared}: ${plain(force, 1)} kN on the worst one under ${words}. The ${weaker.plate.what} (${weaker.plate.material.name}, holes of ${mm(weaker.plate.hole)}) gives way at ${plain(weaker.kN, 1)} kN; no more than one screw diameter of its depth is counted.`,
      cure: `Take thicker or more screws, a stronger material, or more metal round the holes${orDowels(joint, side, torque)}.`,
      source: sourced(source, weaker.plate.material.memory),
    },
    force,
    { limit: weaker.kN, sense: 'at most', worst: grips(joint, side) ? 'caution' : 'fail' },
  );
}

/** Whether a face that moves meets its pins before its screws: reamed together, and with less play at their loosest than a screw in its hole. */
function pinsBearFirst(joint: Joint, side: FaceSide, group: ScrewGroup): boolean {
  const set = joint.dowels?.[side];
  const hole = passingHole(joint, group)?.diameter ?? joint[side].holes.diameter.value;
  return set?.reamed === 'together' && set.fits.adapter.greatest + set.fits.flange.greatest < hole - group.major;
}

/** Pins that hold the torque alone and bear before the screws can: there is nothing left to judge on these. */
function heldByDowels(side: FaceSide, group: ScrewGroup, words: string): Finding[] {
  const common = {
    feature: group.id,
    unit: '',
    why: `The dowels hold the ${side} face alone under ${words} (see dowel-shear-${side}): it does not slip onto its screws.`,
    cure: '',
    source: 'geometry: a reamed pin bears before a screw in a clearance hole',
  };
  return [
    stated({ ...common, code: `bolt-shear-${side}`, title: `${group.thread} screws in shear, ${side} face` }, 'pass'),
    stated({ ...common, code: `bearing-${side}`, title: `walls of the ${group.thread} holes, ${side} face` }, 'pass'),
  ];
}

function judgeFace(joint: Joint, side: FaceSide): Finding[] {
  const group = screwsOfFace(joint, side);
  if (!group) return [];
  const torque = torqueOf(joint);
  if (torque) {
    const words = torqueInWords(torque);
    if (dowelsHold(joint, side, torque.value) && pinsBearFirst(joint, side, group))
      return heldByDowels(side, group, words);
    return [shear(joint, side, group, torque.value, words), bearing(joint, side, group, torque.value, words)];
  }
  const lacking = {
    feature: group.id,
    why: 'The load hangs on the torque.',
    missing: torqueMissing,
    source: 'EN 1993-1-8',
  };
  return [
    notAssessed({ ...lacking, code: `bolt-shear-${side}`, title: `${group.thread} screws in shear, ${side} face` }),
    notAssessed({ ...lacking, code: `bearing-${side}`, title: `walls of the ${group.thread} holes, ${side} face` }),
  ];
}

export const boltShear: Check = {
  id: 'bolt-shear',
  title: 'Screws and holes if a face slips',
  source: 'EN 1993-1-8 table 3.4',
  run: (joint) => faceSides.flatMap((side) => judgeFace(joint, side)),
};
