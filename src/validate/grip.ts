/** Do the clamped faces carry the torque by friction? The wheel is left out: its screws carry only its own small inertia. */
import type { DesignTorque } from '../formulas/design-torque.ts';
import { gripNeeds, gripOfRing, gripOfScrews, radiusSum } from '../formulas/joint-grip.ts';
import { holesThere, usesOf } from '../job/hole-pattern.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { coveringFlange } from '../job/tool-access.ts';
import type { Finding } from '../model/finding.ts';
import {
  contactRing,
  type FaceFriction,
  type FaceSide,
  faceSides,
  frictionOfFace,
  screwsOfFace,
} from '../rotor/joint-face.ts';
import { reverses } from '../rotor/joint-torque.ts';
import { flangeMaterial } from '../rotor/plays.ts';
import { isStocked, propertyClass } from '../standards/property-classes.ts';
import { leastEngagement } from '../standards/thread-engagement.ts';
import { findThread } from '../standards/threads.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { carriedByDowels, carryByDowels, dowelsHold, toAndFro } from './dowels-shear.ts';
import { torqueInWords, torqueMissing, torqueOf } from './duty-torque.ts';
import { plain, roundedDown, sourced } from './words.ts';

/** Safety against slipping: EN 1993-1-8 gammaM3 at the ultimate limit; torque that reverses: VDI 2230, from memory. */
const usualSafety = { steady: 1.25, reversing: 1.8 };
/**
 * Below this the face has failed. At its least preload and least friction a face that just holds a steady torque is doubtful; one that is worked to
 * and fro must at least hold as surely as a steady one should. Choice of this program.
 */
const leastSafety = { steady: 1, reversing: usualSafety.steady };
/** Least friction of blasted faces that the slip classes A and B of EN 1993-1-8 count with. */
const blasted = 0.4;

/** Share of the least preload taken off where settling is not known: the most that the preload's own check lets go by. */
const unknownLoss = 0.5;
/** Below this nothing worth naming is left of a preload, kN. */
const leastClamp = 0.1;

/** Preload that a group loses after tightening, kN per screw; null where it is not known. */
export type LostPreload = (joint: Joint, group: ScrewGroup) => number | null;

/** What a face grips with. */
interface Grip {
  readonly group: ScrewGroup;
  readonly friction: FaceFriction;
  /** Clamp force per screw that is counted on, kN, and what of it was taken off. */
  readonly clamp: number;
  readonly lost: number;
  /** False where the loss could not be worked out and a share is taken. */
  readonly isLossKnown: boolean;
}

/** Dowels as another way, where they are one. */
function orDowels(joint: Joint, side: FaceSide, before: string, torque?: number): string {
  const dowels = carryByDowels(joint, side, torque);
  return dowels === '' ? '' : `${before}or ${dowels}`;
}

/** What a face grips with, or why that is not known. */
export function gripOf(
  joint: Joint,
  side: FaceSide,
  lost: LostPreload,
): Grip | { readonly why: string; readonly missing: string } {
  const group = screwsOfFace(joint, side);
  const least = group?.tightening.leastPreload ?? null;
  if (!group || least === null) {
    const why = `How hard the faces are pressed together is not known: ${group?.tightening.note ?? 'no screws'}.`;
    return { why, missing: `Have the tightening torque worked out${orDowels(joint, side, ', ')}.` };
  }
  const friction = frictionOfFace(joint, side);
  if (!friction.ok) {
    const missing = `Test the faces and give adapter.${side}.face_friction${orDowels(joint, side, ', ')}.`;
    return { why: friction.why, missing };
  }
  const scattered = Math.min(least, group.tightening.spread?.least ?? least);
  const known = lost(joint, group);
  const taken = known ?? unknownLoss * scattered;
  const clamp = Math.max(0, scattered - taken);
  return { group, friction: friction.value, clamp, lost: taken, isLossKnown: known !== null };
}

/** True where a face grips at all, so that shear of the screws is only a second line. */
export function grips(joint: Joint, side: FaceSide): boolean {
  return 'clamp' in gripOf(joint, side, nothingLost);
}

export const nothingLost: LostPreload = () => 0;

/** Mean diameter of the circle that a group's screws stand on, mm. */
const circleOf = ({ positions, count }: ScrewGroup): number => (2 * radiusSum(positions)) / count;

/** The weakest class that pulls so many times as hard; null where none does, a soft part sets the preload, or no thread would hold it. */
function strongerClass(joint: Joint, group: ScrewGroup, times: number): string | null {
  const thread = findThread(group.thread);
  if (group.tightening.heldDown || !thread.ok) return null;
  const parent =
    group.fastening === 'into_flange' && group.side !== 'wheel'
      ? flangeMaterial(joint, group.side)
      : joint.adapterMaterial;
  const yieldOf = (cls: string) => {
    const strength = propertyClass(cls, group.major);
    return strength.ok ? strength.value.yieldStrength : 0;
  };
  const holds = (cls: string) => group.fastening === 'through' || leastEngagement(thread.value, parent, cls).ok;
  return ['10.9', '12.9'].find((cls) => yieldOf(cls) >= times * yieldOf(group.class) && holds(cls)) ?? null;
}

/** A class as advice: no hexagon head is stocked in the strongest, socket heads are. */
const classWords = ({ side, head }: ScrewGroup, cls: string): string =>
  isStocked(cls, head.kind)
    ? `class ${cls} (adapter.${side}.class: ${cls})`
    : `socket heads of class ${cls} (adapter.${side}.head: socket; adapter.${side}.class: ${cls})`;

/** Screws in more of the holes that are there: so many times as many. Null where every hole has one, or bolts run through both flanges. */
function emptyHoles(joint: Joint, side: FaceSide, group: ScrewGroup, times: number): string | null {
  const there = holesThere(joint[side].holes).length;
  const use = group.side === side && usesOf(there).find((each) => each > group.count && each >= times * group.count);
  return use
    ? `screws in ${use} of the ${there} holes that are there (${side}.holes.use: ${use}), if the other side's leave room`
    : null;
}

/** More screws or a larger circle, where the flange as it is has room for them: new holes in it, unless some are empty. */
function moreScrews(joint: Joint, side: FaceSide, group: ScrewGroup, times: number): string[] {
  const largest = joint[side].outside?.value ?? Number.POSITIVE_INFINITY;
  const circle = Math.ceil(circleOf(group) * times);
  const isFull = (joint[side].holes.unused ?? []).length === 0;
  const empty = isFull ? null : emptyHoles(joint, side, group, times);
  return [
    ...(empty ? [empty] : []),
    // New holes go between those that are there.
    ...(isFull && times <= 2
      ? [`as many again between the ${group.count} that are there, which is new holes in the flange`]
      : []),
    ...(circle + 2 * group.major <= largest ? [`a bolt circle of ${plain(circle, 0)} mm, also new holes`] : []),
  ];
}

/** Where nothing but friction may carry it, and the flange has no room for enough of it. */
const another = 'more of them on a larger circle, which is another flange';

/** Ways to make a face hold, with the numbers that would do. */
function cureOf(
  joint: Joint,
  side: FaceSide,
  { group, friction, clamp, lost }: Grip,
  torque: number,
  safety: number,
): string {
  const needs = gripNeeds(torque, safety, 1000 * clamp, group.positions, friction.mu);
  const isNoCure = reverses(joint) ? ` Dowels are no cure: ${toAndFro}.` : '';
  if (clamp < leastClamp) {
    return `Needs ${plain(needs.force / 1000, 1)} kN per screw, and settling or heat leaves next to nothing: take longer or thinner screws${orDowels(joint, side, ', ', torque)}.${isNoCure}`;
  }
  const times = needs.force / 1000 / clamp;
  const more = moreScrews(joint, side, group, times);
  // What settles away stays the same however hard the screw is pulled.
  const stronger = strongerClass(joint, group, (needs.force / 1000 + lost) / (clamp + lost));
  const ways = [
    ...(stronger ? [`take ${classWords(group, stronger)}`] : []),
    ...(friction.steel && needs.mu <= blasted
      ? [
          `blast both faces (slip classes A and B of EN 1993-1-8 count ${blasted} and more; give adapter.${side}.face_friction once it is tested)`,
        ]
      : []),
    ['take thicker screws', ...(more.length > 0 || !reverses(joint) ? more : [another])].join(', or '),
  ];
  const lacks = `Needs ${plain(needs.force / 1000 - clamp, 1)} kN more per screw, or friction ${plain(Math.ceil(needs.mu * 100 - 1e-6) / 100, 2)}`;
  return `${lacks}: ${ways.join('; or ')}${orDowels(joint, side, '; ', torque)}.${isNoCure}`;
}

/** What would widen the margin of a face that holds. */
function improveOf(joint: Joint, side: FaceSide, { group, friction }: Grip): string {
  const stronger = strongerClass(joint, group, 1.01);
  const ways = [
    ...(stronger
      ? [
          isStocked(stronger, group.head.kind)
            ? `class ${stronger} screws (adapter.${group.side}.class: ${stronger})`
            : classWords(group, stronger),
        ]
      : []),
    'thicker or more screws',
    ...(friction.steel && friction.mu < blasted ? ['blasted faces'] : []),
    ...(joint.dowels?.[side] || reverses(joint) ? [] : [`dowels (adapter.${side}.dowels: auto)`]),
  ];
  const [first = '', ...others] = ways;
  return `${first[0]?.toUpperCase()}${[first.slice(1), ...others].join(', or ')}.`;
}

/** @param alone torque that the face's dowels carry without friction, N.m; null where it has none */
function whyOf(joint: Joint, side: FaceSide, grip: Grip, torque: DesignTorque, alone: number | null): string {
  const { group, friction, clamp, lost, isLossKnown } = grip;
  const holds = gripOfScrews(1000 * clamp, group.positions, friction.mu);
  const circle = plain(circleOf(group), 1);
  const ring = contactRing(joint, side);
  const spread = ring
    ? ` Pressed evenly over the ring ${plain(2 * ring.inside, 0)} to ${plain(2 * ring.outside, 0)} mm it would be ${plain(gripOfRing(1000 * clamp * group.count, ring.outside, ring.inside, friction.mu), 0)} N.m.`
    : '';
  const oil =
    friction.oiled === null
      ? ''
      : ` Oil between the faces (${friction.oiled}) would leave a safety of ${roundedDown(((holds / torque.value) * friction.oiled) / friction.mu, 2)}.`;
  // They bear on their holes only once the face has moved: the two are never added.
  const pins =
    alone !== null
      ? ` The dowels alone carry ${plain(alone, 0)} N.m${alone < torque.value ? ', which is too little; they bear only once the face has slipped, so friction and pins are not added' : reverses(joint) ? `, which does not count: ${toAndFro}` : ': should the face slip, they hold it'}.`
      : '';
  const settled =
    lost === 0
      ? 'nothing taken off for settling or heat'
      : isLossKnown
        ? `${plain(lost, 1)} kN taken off for settling and heat`
        : `half of it, ${plain(lost, 1)} kN, taken off for settling that is not known: see preload-${group.side}`;
  const whole = gripOfScrews(1000 * (clamp + lost), group.positions, friction.mu);
  const under = coveringFlange(group, (side) => joint[side].outside.value);
  const again =
    lost === 0
      ? ''
      : ` Without that loss the safety would be ${roundedDown(whole / torque.value, 2)}: the re-torque after the first run brings the settling back${under ? `, but the ${under} flange has to come off for it` : ''}.`;
  return `${group.count} x ${group.thread} at ${plain(clamp, 1)} kN (the least a torque wrench gives, ${settled}), friction ${friction.mu} (${friction.words}), on ${circle} mm: ${plain(holds, 0)} N.m against ${torqueInWords(torque)}.${again}${spread}${oil}${pins}`;
}

function judgeFace(joint: Joint, side: FaceSide, lost: LostPreload): Finding {
  const common = {
    code: `grip-${side}`,
    feature: screwsOfFace(joint, side)?.id ?? 'body',
    title: `safety against slipping, ${side} face`,
  };
  const source = 'statics, T = mu sum(F R); EN 1993-1-8 (3.9); VDI 2230 tightening factor';
  const torque = torqueOf(joint);
  if (!torque) {
    const why = 'Whether the faces slip hangs on the torque.';
    return notAssessed({ ...common, why, missing: torqueMissing, source });
  }
  const grip = gripOf(joint, side, lost);
  if (!('clamp' in grip)) return notAssessed({ ...common, ...grip, source });
  const { duty } = joint.job;
  const safety = duty?.slip_safety ?? (reverses(joint) ? usualSafety.reversing : usualSafety.steady);
  const holds = gripOfScrews(1000 * grip.clamp, grip.group.positions, grip.friction.mu);
  const pins = joint.dowels?.[side];
  const alone = pins ? carriedByDowels(joint, pins).torque : null;
  return judged(
    {
      ...common,
      unit: 'times',
      why: whyOf(joint, side, grip, torque, alone),
      cure: cureOf(joint, side, grip, torque.value, safety),
      improve: improveOf(joint, side, grip),
      source: sourced(`${source}; friction: ${grip.friction.source}`, grip.friction.memory),
    },
    holds / torque.value,
    // Dowels that hold the torque alone save a face that slips one way only: to and fro it works its screws loose and frets.
    {
      limit: safety,
      sense: 'at least',
      worst: dowelsHold(joint, side, torque.value) ? 'caution' : 'fail',
      ...(duty?.slip_safety === undefined
        ? { hard: reverses(joint) ? leastSafety.reversing : leastSafety.steady }
        : {}),
    },
  );
}

/** The check, with a sum of what the screws lose after tightening. */
export function gripCheck(lost: LostPreload): Check {
  return {
    id: 'grip',
    title: 'Grip of the faces',
    source: 'EN 1993-1-8; VDI 2230-1',
    run: (joint) => faceSides.map((side) => judgeFace(joint, side, lost)),
  };
}
