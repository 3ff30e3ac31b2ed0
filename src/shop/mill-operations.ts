/** Operations at the mill: flats, and the holes of each side. */
import type { Joint } from '../job/joint.ts';
import type { DrillingPlan } from './drilling-plan.ts';
import { lengthsIn } from './lengths.ts';
import { nothing, type ShopSize, sizesOf, type Unnumbered } from './operation.ts';
import { clocked, indicated, underneath } from './route.ts';
import { throughHole } from './through-hole.ts';

/** Flats come before everything that is held by them; angles count from the index mark, which is scribed now. */
export function flatting(joint: Joint): Unnumbered[] {
  const mm = lengthsIn(joint.job.units);
  const { flats } = joint.adapterSpec;
  if (!flats) return [];
  return [
    {
      ...nothing,
      title: 'Mill the flats',
      machine: 'mill',
      face: 'driven',
      held: ['Clamped on the table or in a vise with V-jaws, driven side up.'],
      zero: ['X 0, Y 0 in the middle of the part.'],
      steps: [
        `Two flats, ${mm(flats.across, 2)} across, both ${mm(flats.across / 2, 2)} from the middle, over the whole height.`,
        'Mill both without letting go: they are parallel only then.',
        `Scribe the index mark across the rim. Seen from the driven side, the way out through the first flat is ${flats.angle.toFixed(2)} degrees counter-clockwise from it.`,
      ],
    },
  ];
}

/**
 * The holes of one side.
 * @param before the side that was drilled first; null when this is it
 */
export function drillingOperation(
  joint: Joint,
  sizes: readonly ShopSize[],
  plan: DrillingPlan,
  before: DrillingPlan | null,
): Unnumbered {
  const { face } = plan;
  const { flats } = joint.adapterSpec;
  const { tir } = joint.turnOver;
  const mm = lengthsIn(joint.job.units);
  return {
    ...nothing,
    title: before ? `Turn over, drill the ${face} side` : `Drill the ${face} side`,
    machine: 'mill',
    face,
    held: [
      flats
        ? `Milling vise on the flats, ${mm(flats.across, 2)} across.`
        : 'Three-jaw chuck on the table, or three clamps on the face, clear of every hole.',
      underneath(joint, face),
      ...(before ? ['Turned over like the page of a book: what was right is now left, what was up is still up.'] : []),
    ],
    zero: [
      'X 0, Y 0 in the middle of the bore (or of the register, or of the rim, where there is no bore). Z 0 on the face of this side, not on a spigot.',
      ...clocked(joint, face, before === null, before ? throughHole(joint, before, face) : ''),
    ],
    indicate: [
      `Dial in the spindle, swept round ${indicated(joint)}: no more than ${mm(Math.max(0.02, tir / 2))}. Then set the read-out to zero, and do not lean on the table.`,
    ],
    steps: [
      'Spot every hole first; count them and hold a steel rule to two of them before the first drill goes in.',
      'One tool does all its holes, column by column, in the order of the list.',
      ...(plan.steps.some(({ cut }) => cut.op === 'drill' && cut.diameter > 13)
        ? ['Drills over 13 mm: go through with one of half the diameter first (common practice).']
        : []),
      ...(plan.steps.some(({ cut }) => cut.op === 'tap')
        ? ['Tap under the spindle, started straight by it, with tapping oil; half a turn back for each turn in.']
        : []),
      ...plan.later.map(
        ({ letter, what }) => `Set ${letter}, ${what}: drilled here, reamed later together with its flange.`,
      ),
      'Break every edge by 0.5 mm, both ends; no burr may stand on a face.',
    ],
    ...sizesOf(
      sizes,
      joint.screws
        .filter(({ id }) => plan.steps.some(({ holes }) => holes.some(({ drilling }) => drilling.startsWith(`${id}-`))))
        .map(({ side }) => `${side}-holes`),
    ),
    plan,
  };
}
