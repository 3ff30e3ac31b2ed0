/** How far off the driving axis the shaft and the teeth can end up, how far the joint can lean, and how likely that is. */
import { permissibleSpecificUnbalance } from '../formulas/balance.ts';
import { type Link, stackOf } from '../formulas/chain.ts';
import type { Joint } from '../job/joint.ts';
import { toothWords } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { hasWindows } from '../parts/tone-wheel.ts';
import { linksTo, unread } from '../rotor/links.ts';
import { tiltLinks } from '../rotor/tilt.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { runoutShareOfGapTolerance, toothRule } from '../standards/tooth-rules.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { angle, mm, sourced } from './words.ts';

/** Links as a list, the greatest first. */
export function listed(links: readonly Link[], sized: (size: number) => string): string {
  return [...links]
    .sort((a, b) => b.most - a.most)
    .map(
      ({ what, most, angle: at }) =>
        `${what} ${sized(most)}${at === null ? '' : ` towards ${angle(Number(at.toFixed(1)))}`}`,
    )
    .join(', ');
}

/** The link that gives most, in words; empty for an empty chain. */
export function startWith(links: readonly Link[]): string {
  const [first] = [...links].sort((a, b) => b.most - a.most);
  return first ? `Start with the biggest, ${first.what}: ${first.cure}.` : '';
}

/** Run-outs that nobody gave: as keys for a finding, and in words to put behind another sentence, empty where all are known. */
export function notRead(
  joint: Joint,
  of: 'rim' | 'face',
): { readonly words: string; readonly notGiven: readonly string[] } {
  const notGiven = unread(joint).filter((key) => key.endsWith(of));
  return { words: notGiven.length === 0 ? '' : ` Not given, counted as nothing: ${notGiven.join(', ')}.`, notGiven };
}

const source = (links: readonly Link[], rest: string) =>
  sourced(
    `sum of the links: fits (ISO 286), dial readings, set-up; ${rest}`,
    links.some(({ memory }) => memory),
  );

function shaftFinding(joint: Joint): Finding {
  const links = linksTo(joint, 'shaft');
  const { worst, likely } = stackOf(links);
  const { duty } = joint.job;
  const { words, notGiven } = notRead(joint, 'rim');
  const common = {
    code: 'concentricity',
    feature: 'driven-register',
    title: 'how far the driven shaft can be off centre',
    notGiven,
    source: source(links, 'specific unbalance by ISO 21940-11'),
  };
  const made = `${listed(links, (size) => mm(size, 3))}.${words}`;
  if (duty?.speed === undefined) {
    return notAssessed({
      ...common,
      why: `At worst ${mm(worst, 3)}, likely ${mm(likely, 3)}: ${made}`,
      missing: 'Give duty.speed: how much is too much hangs on the speed.',
    });
  }
  const grade = must(balanceGrade(duty.grade));
  const allowed = permissibleSpecificUnbalance(grade.G, duty.speed) / 1000;
  // Meeting the limit in the likely case only is a caution: a dial indicator at assembly settles it.
  return judged(
    {
      ...common,
      unit: 'mm',
      why: `Worst case is the sum; likely ${mm(likely, 3)}. ${made} ${grade.name} at ${duty.speed} rpm allows ${mm(allowed, 3)}.`,
      cure: `${startWith(links)} Then have the shaft balanced in place.`,
      improve: startWith(links),
    },
    worst,
    { limit: allowed, sense: 'at most', worst: likely <= allowed ? 'caution' : 'fail' },
  );
}

/** Face run-out that a flange in service may have, total indicator reading, mm. A workshop manual for light trucks. */
const faceLimit = 0.1;

function leanFinding(joint: Joint): Finding {
  const links = tiltLinks(joint);
  const across = joint.driven.outside.value;
  const { words, notGiven } = notRead(joint, 'face');
  const { worst, likely } = stackOf(links);
  const over = (slope: number) => `${mm(slope * across, 3)}`;
  return judged(
    {
      code: 'face-runout',
      feature: 'driven-register',
      title: `face run-out at the driven flange's rim`,
      notGiven,
      unit: 'mm',
      why: `Total indicator reading over ${mm(across)}; likely ${over(likely)}. ${listed(links, over)}.${words}`,
      cure: `${startWith(links)} A leaning joint shakes twice a turn through the joint angle, and cannot be balanced away in one plane.`,
      improve: startWith(links),
      source: source(links, 'limit of 0.10 mm from a workshop manual for light trucks'),
    },
    worst * across,
    { limit: faceLimit, sense: 'at most', worst: likely * across <= faceLimit ? 'caution' : 'fail' },
  );
}

/** Run-out of the teeth that any sensor bears, total indicator reading, mm. Common practice. */
const usualToothRunout = 0.2;

/** Run-out of the teeth that a sensor bears, total indicator reading, mm, and where that comes from. */
function toothRunoutLimit(joint: Joint): { limit: number; from: string } {
  const rule = joint.job.sensor?.kind ? toothRule(joint.job.sensor.kind) : null;
  const gapTolerance = rule?.ok ? rule.value.gapTolerance : null;
  return gapTolerance === null
    ? {
        limit: usualToothRunout,
        from: `0.2 mm total run-out at the ${toothWords(joint.wheelSpec ?? {}).teeth}, common practice`,
      }
    : {
        limit: 2 * gapTolerance * runoutShareOfGapTolerance,
        from: 'a third of the gap tolerance of the sensor, common practice',
      };
}

function teethFinding(joint: Joint): Finding[] {
  const links = linksTo(joint, 'teeth');
  if (links.length === 0) return [];
  const { worst, likely } = stackOf(links);
  const { limit, from } = toothRunoutLimit(joint);
  const windows = joint.wheelSpec !== null && hasWindows(joint.wheelSpec);
  return [
    judged(
      {
        code: 'wheel-runout',
        feature: 'wheel-outline',
        title: `run-out of the ${windows ? 'windows' : 'teeth'}`,
        unit: 'mm',
        why: `Total indicator reading at the ${windows ? 'rim' : 'tips'}, twice the shift; likely ${mm(2 * likely, 3)}. As shifts: ${listed(links, (size) => mm(size, 3))}.`,
        cure: startWith(links),
        source: source(links, from),
      },
      2 * worst,
      { limit, sense: 'at most', worst: 'caution' },
    ),
  ];
}

export const concentricity: Check = {
  id: 'concentricity',
  title: 'Concentricity',
  source: 'ISO 286; ISO 21940-11; statics',
  run: (joint) => [shaftFinding(joint), leanFinding(joint), ...teethFinding(joint)],
};
