/** Does the shaft stay below its critical speed, and out of half of it; where does the engine's firing meet its bending? */
import { ordersOf, speedAt } from '../formulas/orders.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { longestShaft, studyWhirl, type WhirlStudy } from '../rotor/shaft-whirl.ts';
import { goodShare, halfBand, halfBandSource, mostShare, shareSource } from '../standards/shaft-speed-rules.ts';
import { type Check, judged, notAssessed, type Statement, stated } from './check.ts';
import { plain, sourced } from './words.ts';

const feature = 'shaft-tube';
const rpm = (speed: number): string => `${plain(speed, 0)} rpm`;
const percent = (share: number): string => `${plain(100 * share, 0)} %`;

const speedMissing =
  'Give duty.speed, the highest speed that this shaft ever turns: engine speed over the ratio of the highest gear.';

/** What the tube is and at what speed it bends. */
function bendsAt(study: WhirlStudy): string {
  const { size, length, metal } = study.shaft;
  const beam = 60 * (study.modes[0]?.frequency ?? 0);
  const what = `A tube of ${plain(size.outside, 1)} x ${plain(size.wall, 2)} mm, ${metal.name}, ${plain(length, 0)} mm from joint to joint`;
  const carried = [
    ...(study.forksLeftOut ? [] : ['its forks']),
    ...(study.endsHeld ? [] : ['its mounts and what they carry']),
  ];
  const as = carried.length === 0 ? 'as a beam between pins' : `as a beam with ${carried.join(' and ')}`;
  return `${what}: ${rpm(study.handbook.speed)} by the handbook (${study.handbook.from}), ${rpm(beam)} ${as}; the lower counts.`;
}

/** What was taken for want of a figure, each with its key. */
function leftOut(study: WhirlStudy): string {
  const parts = [
    ...(study.endsHeld
      ? ['Both ends are taken not to give: soft mounts lower it (shaft.tube.near.stiffness, shaft.tube.far.stiffness).']
      : []),
    ...(study.forksLeftOut
      ? ['The forks are taken as more of the tube: give shaft.tube.near and shaft.tube.far (fork, reach, neck).']
      : []),
  ];
  return parts.length === 0 ? '' : ` ${parts.join(' ')}`;
}

function criticalFinding(joint: Joint, study: WhirlStudy): Finding {
  const speed = joint.job.duty?.speed;
  const { critical, shaft } = study;
  const source = sourced(`trade formula and a beam of finite elements; ${shareSource}`, shaft.metal.memory);
  const common = {
    code: 'shaft-critical-speed',
    feature,
    title: 'highest speed against the critical speed of the shaft',
  };
  const sums = `${bendsAt(study)} Work up to ${percent(goodShare)} of it, ${rpm(goodShare * critical)}, and never over ${percent(mostShare)}, ${rpm(mostShare * critical)}.${leftOut(study)}`;
  if (speed === undefined) return notAssessed({ ...common, why: sums, missing: speedMissing, source });
  const longest = longestShaft(shaft, speed);
  const one =
    longest === null
      ? ` No length of this tube on these ends would do at ${rpm(speed)}.`
      : ` Longest one-piece shaft of this tube at ${rpm(speed)}: ${plain(longest, 0)} mm.`;
  const shorter = longest === null ? '' : `Shorten it to ${plain(longest, 0)} mm (shaft.tube.length), `;
  return judged(
    {
      ...common,
      unit: 'rpm',
      why: `${sums}${one}`,
      cure: `${shorter === '' ? 'Take' : `${shorter}or take`} a larger tube (shaft.tube.outside; see "Tubes that would do"), or split it with a centre bearing. A thicker wall does not help. Until then stay below ${rpm(goodShare * critical)}, with guard and retention loop: past its critical speed a shaft whips out.`,
      improve: 'A larger or shorter tube (shaft.tube).',
      source,
    },
    speed,
    { limit: goodShare * critical, sense: 'at most', hard: mostShare * critical },
  );
}

function halfFinding(joint: Joint, study: WhirlStudy): Finding {
  const speed = joint.job.duty?.speed;
  const cruise = joint.job.shaft?.cruise;
  const { from, at, to } = study.half;
  const common = { code: 'shaft-half-critical', feature, title: 'half the critical speed' };
  const source = `${halfBandSource}; it matters most with joint angles above 3 degrees on a long shaft (a joint maker's catalogue)`;
  const band = `A joint at an angle bends the shaft twice a turn, which meets its bending at ${rpm(at)}: keep out of ${rpm(from)} to ${rpm(to)} for long.`;
  const runs = cruise ?? speed;
  if (runs === undefined) {
    return notAssessed({
      ...common,
      why: band,
      missing: `${speedMissing} And shaft.cruise, at which it runs for long.`,
      source,
    });
  }
  if (cruise === undefined && runs > to) {
    const why = `${band} The shaft goes through it on its way to ${rpm(runs)}; where it runs for long is not known.`;
    return notAssessed({
      ...common,
      why,
      missing: 'Give shaft.cruise: the speed at which this shaft runs for long.',
      source,
    });
  }
  const isIn = runs > from && runs < to;
  const statement: Statement = {
    ...common,
    unit: '',
    why: `${band} It runs at ${rpm(runs)}${cruise === undefined ? ' at most' : ' for long'}${isIn ? ', inside that band' : runs <= from ? ', below it' : ', above it'}.`,
    cure: `Cruise below ${rpm(Math.floor(from))} or above ${rpm(Math.ceil(to))} (shaft.cruise), keep the joint angles small and equal, or take another tube (shaft.tube.outside).`,
    source,
  };
  return stated(statement, isIn ? 'caution' : 'pass');
}

/** Half-width of the band about a meeting of firing and bending, as a share: the same as about half the critical speed. Common practice. */
const meetingBand = halfBand;

function firingFinding(joint: Joint, study: WhirlStudy): Finding[] {
  const { engine, cruise } = joint.job.shaft ?? {};
  if (engine === undefined) return [];
  const common = { code: 'shaft-orders', feature, title: "the engine's firing against the bending of the shaft" };
  const source = 'orders of a four-stroke engine, textbook; a band of 8 % is common practice';
  const meetings = engine.gears.map((gear) => {
    const firing = ordersOf({ gear, cylinders: engine.cylinders }).find(({ id }) => id === 'firing');
    return { gear, at: firing ? speedAt(firing, study.critical / 60) : Number.POSITIVE_INFINITY };
  });
  const most = joint.job.duty?.speed ?? Number.POSITIVE_INFINITY;
  const told = meetings
    .map(
      ({ gear, at }) =>
        `${rpm(at)} ${gear === 1 ? 'in direct drive' : `in a gear of ${Number(gear.toFixed(3))}`}${at > most ? ' (never reached)' : ''}`,
    )
    .join(', ');
  const why = `An engine of ${engine.cylinders} cylinders fires ${Number((engine.cylinders / 2).toFixed(1))} times a turn. That meets the bending of the shaft at ${told}.`;
  if (cruise === undefined) {
    return [
      notAssessed({
        ...common,
        why,
        missing: 'Give shaft.cruise: the speed at which this shaft runs for long.',
        source,
      }),
    ];
  }
  const near = meetings.find(({ at }) => Math.abs(cruise / at - 1) < meetingBand);
  const statement: Statement = {
    ...common,
    unit: '',
    why: `${why} It runs at ${rpm(cruise)} for long${near ? ', and there the firing shakes it' : ''}.`,
    cure: near
      ? `Cruise below ${rpm(Math.floor(near.at * (1 - meetingBand)))} or above ${rpm(Math.ceil(near.at * (1 + meetingBand)))} (shaft.cruise), or take another tube (shaft.tube.outside); softer engine mounts help too.`
      : '',
    source,
  };
  return [stated(statement, near ? 'caution' : 'pass')];
}

/** Judges nothing where the job describes no tube. Independent of how the adapter is made, so the search needs it not. */
export const shaftSpeed: Check = {
  id: 'shaft-speed',
  title: 'Speed of the shaft',
  source: 'trade formula; finite elements',
  isSlow: true,
  run: (joint) => {
    const study = studyWhirl(joint);
    return study ? [criticalFinding(joint, study), halfFinding(joint, study), ...firingFinding(joint, study)] : [];
  },
};
