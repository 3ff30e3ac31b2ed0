/** The air gap as it is set, and at its high and its low spot, cold and hot. */
import { sharesOf } from '../formulas/chain-shares.ts';
import type { Joint } from '../job/joint.ts';
import { type Need, type SensorNeeds, sensorNeeds } from '../job/sensor-needs.ts';
import { type ToothWords, toothWords } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { hasWindows, toothHeight } from '../parts/tone-wheel.ts';
import { type GapMoves, gapMoves } from '../rotor/gap-moves.ts';
import { toothRules } from '../standards/tooth-rules.ts';
import { listed, startOrDone } from './chain-words.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { mm, sourced } from './words.ts';

const feature = 'wheel-outline';
/** A gap that may get smaller than this is a sensor that is hit: dirt, a burr, a bearing that wears. Common practice. */
const neverTouches = 0.05;
/** Beyond this many times its greatest gap a sensor is not looked for any more. Common practice. */
const farBeyond = 2;

/** How far the gap is set from where this kind is usually set. */
function setting(needs: SensorNeeds, { teeth }: ToothWords): Finding[] {
  const { kind, gap } = needs;
  const common = { code: 'sensor-gap', feature, title: 'air gap off its middle value' };
  if (gap === null) {
    return [
      notAssessed({
        ...common,
        title: 'air gap',
        why: `How far the sensor stands from the ${teeth} is not given.`,
        missing: "Give sensor.gap, and from the sensor's data sheet sensor.gap_range: { least: 0.5 mm, most: 1.5 mm }.",
        source: toothRules.edition,
      }),
    ];
  }
  if (!gap.isGiven || kind === null || kind.gap === null || kind.gapTolerance === null) return [];
  const { gap: usual, gapTolerance, recalled } = kind;
  return [
    judged(
      {
        ...common,
        unit: 'mm',
        why: `The gap is set to ${mm(gap.value)}; this kind of sensor is usually set to ${mm(usual)}.`,
        cure: `Set the gap to ${mm(usual)} within ${mm(gapTolerance)} (sensor.gap), or follow the sensor's own data sheet.`,
        source: sourced(kind.source, recalled.includes('gap')),
      },
      Math.abs(gap.value - usual),
      { limit: gapTolerance, sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** Where the gap could be set so that all that moves stays within; empty where there is no such place. */
function setTo(moves: GapMoves, closes: number, opens: number, least: number, most: number): string {
  const [from, to] = [least + closes, most - opens];
  if (from <= to) return `Set the gap to ${mm((from + to) / 2)} (sensor.gap).`;
  return `No setting will do: the gap moves by ${mm(closes + opens)}, the sensor bears ${mm(most - least)}. ${startOrDone(moves.links)}`;
}

function told(gap: NonNullable<SensorNeeds['gap']>, moves: GapMoves): string {
  const set = gap.isGiven ? `Set to ${mm(gap.value)}` : `Set to ${mm(gap.value)}, the usual gap of its kind`;
  const heat = moves.heat
    ? ` Heat opens it by ${mm(moves.heat.cold, 3)} cold and ${mm(moves.heat.hot, 3)} hot: ${moves.heat.how}.`
    : '';
  const rest = moves.unread.length === 0 ? '' : ` Not given, counted as nothing: ${moves.unread.join(', ')}.`;
  const from = moves.links.length === 0 ? '' : ` It moves by ${listed(sharesOf(moves.links))}.`;
  return `${set}.${from}${heat}${rest}`;
}

function limitsOf(needs: SensorNeeds): { least: Need | null; most: Need | null } {
  return { least: needs.of('gapLeast'), most: needs.of('gapMost') };
}

function spots(joint: Joint, needs: SensorNeeds): Finding[] {
  const { gap } = needs;
  const moves = gap && gapMoves(joint, gap.value);
  if (!gap || !moves) return [];
  const common = { feature, unit: 'mm' };
  const { sensor } = joint.job;
  if (sensor?.direction === 'axial' && sensor.float === undefined) {
    return [
      notAssessed({
        code: 'sensor-gap-high',
        feature,
        title: 'air gap as the shaft floats',
        why: 'Seen from the side, the gap opens and closes by whatever the shaft can be pushed along its axis.',
        missing: 'Push the shaft to and fro with a dial on it and give sensor.float.',
        source: 'geometry',
      }),
    ];
  }
  const { least, most } = limitsOf(needs);
  const [cold, hot] = [moves.heat?.cold ?? 0, moves.heat?.hot ?? 0];
  const closes = moves.worst - Math.min(0, cold, hot);
  const opens = moves.worst + Math.max(0, cold, hot);
  const likelyLess = moves.likely - Math.min(0, cold, hot);
  const likelyMore = moves.likely + Math.max(0, cold, hot);
  const floor = least?.value ?? neverTouches;
  const cure = setTo(moves, closes, opens, floor, most?.value ?? Number.POSITIVE_INFINITY);
  const why = told(gap, moves);
  const at = (sign: number) =>
    moves.heat
      ? ` Cold ${mm(gap.value + sign * moves.worst + cold, 3)}, at 20 degC ${mm(gap.value + sign * moves.worst, 3)}, hot ${mm(gap.value + sign * moves.worst + hot, 3)}.`
      : '';
  const sum = `sum of the links: run-out of the ${toothWords(joint.wheelSpec ?? {}).teeth}, plays, heat`;
  const nearest = gap.value - closes;
  const isLikelyEnough = gap.value - likelyLess >= floor;
  const high = judged(
    {
      ...common,
      code: 'sensor-gap-high',
      title: 'air gap at the high spot',
      why: `${why} Likely ${mm(gap.value - likelyLess, 3)}.${at(-1)}`,
      cure: most === null ? `Set the gap ${mm(floor - nearest)} wider (sensor.gap). ${startOrDone(moves.links)}` : cure,
      source: `${sum}; least gap: ${least ? sourced(least.source, least.memory) : '0.05 mm so that nothing touches, common practice'}`,
    },
    nearest,
    // A sensor that stands a little too near still reads; one that is hit does not.
    { limit: floor, sense: 'at least', hard: least?.isOwn && !isLikelyEnough ? floor : Math.min(floor, neverTouches) },
  );
  if (most === null) {
    return [
      high,
      notAssessed({
        code: 'sensor-gap-low',
        feature,
        title: 'air gap at the low spot',
        why: `${why} At the low spot it is ${mm(gap.value + opens, 3)}.${at(1)}`,
        missing: "Give the greatest gap of the sensor's data sheet: sensor.gap_range: { least: 0.5 mm, most: 1.5 mm }.",
        source: sum,
      }),
    ];
  }
  const likelyReads = gap.value + likelyMore <= most.value;
  return [
    high,
    judged(
      {
        ...common,
        code: 'sensor-gap-low',
        title: 'air gap at the low spot',
        why: `${why} Likely ${mm(gap.value + likelyMore, 3)}.${at(1)}`,
        cure,
        source: `${sum}; greatest gap: ${sourced(most.source, most.memory)}`,
      },
      gap.value + opens,
      {
        limit: most.value,
        sense: 'at most',
        hard: most.isOwn && !likelyReads ? most.value : farBeyond * most.value,
        worst: most.memory ? 'caution' : 'fail',
      },
    ),
  ];
}

/** The teeth must stay in front of the sensor while the shaft moves the other way. */
function overTeeth(joint: Joint): Finding[] {
  const { wheelSpec, job } = joint;
  const { pole, float, direction, bearing_play: play = 0, travel = 0 } = job.sensor ?? {};
  if (!wheelSpec) return [];
  const isAxial = direction === 'axial';
  if (!isAxial && float === undefined) return [];
  const title = `${hasWindows(wheelSpec) ? 'windows' : 'teeth'} stay in front of the sensor`;
  const common = { code: 'sensor-over-teeth', feature, title };
  const source = `common practice: ${hasWindows(wheelSpec) ? 'windows as high as' : 'teeth at least as wide as'} the pole and all that moves them past it`;
  if (pole === undefined) {
    const why = isAxial
      ? `Seen from the side, the ${hasWindows(wheelSpec) ? 'windows' : 'teeth'} must be as high as the pole and all that moves them across it.`
      : `The shaft floats by ${mm(float ?? 0)}; the wheel must stay in front of the pole.`;
    return [notAssessed({ ...common, why, missing: 'Give sensor.pole, the width of its pole or element.', source })];
  }
  const moves = isAxial ? 2 * (gapMovesAcross(joint) + play + travel) : (float ?? 0);
  const isOpen = !hasWindows(wheelSpec);
  const value = isAxial ? toothHeight(wheelSpec) : wheelSpec.thickness;
  const { teeth, valleys } = toothWords(wheelSpec);
  const high = isOpen ? teeth : valleys;
  const what = isAxial ? `higher ${high} (wheel.height)` : 'thicker sheet (wheel.thickness)';
  const beside = isOpen
    ? ''
    : ' A face that also sees rim or hub beside a window never sees it wholly, and the amplitude falls.';
  return [
    judged(
      {
        ...common,
        unit: 'mm',
        why: `A pole of ${mm(pole)} and ${mm(moves)} of movement past it, against ${isAxial ? `the height of the ${high}` : 'the thickness of the wheel'}.${beside}`,
        cure: `Use ${what}: ${mm(pole + moves)} or more.`,
        source,
      },
      value,
      // Half of the face over rim and hub still leaves a signal, of about half the height.
      { limit: pole + moves, sense: 'at least', hard: isOpen ? pole : pole / 2 },
    ),
  ];
}

/** Room that is left between the tips and what stands still, whatever moves. Common practice. */
const roomLeft = 1;

/** Casing, bracket and floor against the tips, through run-out, play, mounts and heat. */
function roomRound(joint: Joint): Finding[] {
  const room = joint.job.wheel?.room;
  if (room === undefined || !joint.wheelSpec) return [];
  const sensor = { ...joint.job.sensor, direction: 'radial' as const };
  const moves = gapMoves({ ...joint, job: { ...joint.job, sensor } }, room);
  if (!moves) return [];
  const heat = Math.min(0, moves.heat?.cold ?? 0, moves.heat?.hot ?? 0);
  const from = moves.links.length === 0 ? '' : `, less ${listed(sharesOf(moves.links))}`;
  const warm = heat < 0 ? `, less ${mm(-heat, 3)} of heat` : '';
  const needed = roomLeft + moves.worst - heat;
  return [
    judged(
      {
        code: 'wheel-room',
        feature,
        title: `room between the ${toothWords(joint.wheelSpec).tips} and what stands still`,
        unit: 'mm',
        why: `${mm(room)} at rest${from}${warm}.`,
        cure: `Make room: ${mm(needed)} at rest, or a wheel ${mm(2 * (needed - room))} smaller (wheel.outside). ${startOrDone(moves.links)}`,
        source: 'sum of the links; 1 mm left is common practice',
      },
      room - moves.worst + heat,
      { limit: roomLeft, sense: 'at least', hard: 0 },
    ),
  ];
}

/** How far run-out moves the teeth across a sensor that looks along the axis, either way. */
function gapMovesAcross(joint: Joint): number {
  const { sensor } = joint.job;
  if (!sensor) return 0;
  const bare = { ...sensor, direction: 'radial' as const, bearing_play: undefined, travel: undefined };
  return gapMoves({ ...joint, job: { ...joint.job, sensor: bare } }, 0)?.worst ?? 0;
}

export const sensorGap: Check = {
  id: 'sensor-gap',
  title: 'Air gap',
  source: 'sensor data sheets; sum of the links; common practice',
  run(joint) {
    const { sensor } = joint.job;
    if (!joint.wheelSpec) return [];
    if (!sensor) return roomRound(joint);
    const needs = sensorNeeds(sensor);
    const isKnown = needs.kind !== null || needs.gap !== null;
    const gap = isKnown
      ? [...setting(needs, toothWords(joint.wheelSpec)), ...spots(joint, needs), ...overTeeth(joint)]
      : [];
    return [...gap, ...roomRound(joint)];
  },
};
