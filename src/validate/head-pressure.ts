/** Do heads and nuts crush what they press on? */
import { bearingArea, ringUnderWasher, seatPressure } from '../formulas/head-pressure.ts';
import type { Joint, PressedSeat, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { propertyClass } from '../standards/property-classes.ts';
import { findThread } from '../standards/threads.ts';
import { washerFor } from '../standards/washers.ts';
import { capital } from '../units/sentence.ts';
import { type Check, judged, notAssessed, type Statement, stated } from './check.ts';
import { mm } from './words.ts';

/** Beyond the limiting pressure by this share a hard seat settles a little and is retightened. Choice of this program: editions differ by more. */
const settles = 1.2;
/** A soft seat may cost half of the usual preload; with less the screw is not worth its size. Choice of this program. */
const worthwhile = 2;

const MPa = (value: number) => `${value.toFixed(0)} MPa`;

/** Pressure with a washer, MPa; null where none can be added. */
function withWasher({ thread, washer, head, side }: ScrewGroup, seat: PressedSeat): number | null {
  const found = washerFor(thread);
  if (washer || side === 'wheel' || head.kind === 'flat' || !found.ok) return null;
  const { beside = [] } = seat;
  return seatPressure(seat.usual * bearingArea(seat), {
    ...ringUnderWasher(seat.face, found.value, seat.inner),
    beside,
  });
}

/** Whether a standard washer, not there yet, would lie on metal round a hole that is too wide for the head. */
function bridges({ thread, washer, head }: ScrewGroup, { inner }: PressedSeat): boolean {
  const found = washerFor(thread);
  return !washer && head.kind !== 'flat' && found.ok && found.value.outside > inner;
}

/** Pressure with screws of class 8.8, MPa; null where they are already. */
function withWeakerScrews({ class: name, major }: ScrewGroup, { usual }: PressedSeat): number | null {
  const [now, weak] = [propertyClass(name, major), propertyClass('8.8', major)];
  return name === '8.8' || !now.ok || !weak.ok ? null : (usual * weak.value.yieldStrength) / now.value.yieldStrength;
}

function cureOf(group: ScrewGroup, seat: PressedSeat, limit: number): string {
  const { side } = group;
  if (!Number.isFinite(seat.usual)) {
    if (side === 'wheel') return 'Put wide washers under them, or have smaller holes drilled.';
    const washers = bridges(group, seat) ? `, or put hardened washers under them (adapter.${side}.washer: true)` : '';
    return `Take a larger screw (adapter.${side}.screw)${washers}.`;
  }
  const washer = withWasher(group, seat);
  const weaker = side === 'wheel' ? null : withWeakerScrews(group, seat);
  const cures = [
    ...(washer !== null && washer < seat.usual
      ? [`put hardened washers (300 HV) under them (adapter.${side}.washer: true): ${MPa(washer)}`]
      : []),
    ...(weaker !== null ? [`take weaker screws (adapter.${side}.class: 8.8): ${MPa(weaker)}`] : []),
    `use a metal that bears ${MPa(Math.min(seat.usual, 10 * limit))}`,
  ].join(', or ');
  return `${capital(cures)}.`;
}

/** What other holes leave of the ring; empty where they leave all of it. */
function cutWords({ outer, inner, beside }: PressedSeat): string {
  const left = bearingArea({ outer, inner, beside: beside ?? [] }) / bearingArea({ outer, inner });
  return left < 1 ? `, of which other holes of the flange leave ${Math.floor(100 * left)} %` : '';
}

/** What a group has under its heads or nuts, judged at the preload that is usual for the class. */
function judgeSeat(joint: Joint, group: ScrewGroup, seat: PressedSeat): Finding {
  const { side, thread, tightening } = group;
  const flange = seat.part === 'driving flange' ? joint.driving : seat.part === 'driven flange' ? joint.driven : null;
  const taken = flange?.material === null ? ' (taken: the flange material is not given)' : '';
  const common = {
    code: `${seat.under === 'head' ? 'head' : 'nut'}-pressure-${side}`,
    feature: group.id,
    title: `pressure under the ${thread} ${seat.under}s on the ${seat.part}`,
    source: seat.source,
  };
  const statement = (limit: number): Statement => ({
    ...common,
    unit: 'MPa',
    why:
      `The usual preload on a ring of ${mm(seat.inner, 1)} to ${mm(seat.outer, 1)}${cutWords(seat)}. ${seat.material}${taken} bears ${MPa(limit)} (${seat.how}); beyond it the seat creeps and the preload with it.` +
      (tightening.heldDown
        ? ` The torque given is held down to ${Math.floor(100 * tightening.heldDown.share)} % by ${tightening.heldDown.by}.`
        : ''),
    cure: cureOf(group, seat, limit),
  });
  if (seat.limit === null) {
    const missing = `Put metal under the ${seat.under}s, or have the torque found by trial.`;
    return notAssessed({ ...common, why: seat.how, missing });
  }
  if (!Number.isFinite(seat.usual)) {
    const why = `The hole of ${mm(seat.inner)} is as wide as the bearing face of ${mm(seat.outer)}: nothing is left to press on.`;
    return stated({ ...statement(seat.limit), why }, 'fail');
  }
  return judged(statement(seat.limit), seat.usual, {
    limit: seat.limit,
    sense: 'at most',
    hard: (seat.soft ? worthwhile : settles) * seat.limit,
  });
}

export const headPressure: Check = {
  id: 'head-pressure',
  title: 'Pressure under heads and nuts',
  source: 'VDI 2230',
  run: (joint) =>
    joint.screws.flatMap((group) => {
      if (!findThread(group.thread).ok) return [];
      return (group.tightening.seats ?? []).map((seat) => judgeSeat(joint, group, seat));
    }),
};
