/** How far off the driving axis the shaft and the teeth can end up, how far the joint can lean, and how likely that is. */
import { permissibleSpecificUnbalance } from '../formulas/balance.ts';
import type { Link } from '../formulas/chain.ts';
import type { Joint } from '../job/joint.ts';
import { toothWords } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { hasWindows } from '../parts/tone-wheel.ts';
import { type ChainId, type ChainSums, chainSums } from '../rotor/chain-study.ts';
import { unread } from '../rotor/links.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { runoutShareOfGapTolerance, toothRule } from '../standards/tooth-rules.ts';
import { anglesSaid, cureOfChain, listed, startOrDone, startWith } from './chain-words.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { mm, sourced } from './words.ts';

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

/** A chain in the measure in which its picture shows it, and its links. */
function chainOf(joint: Joint, id: ChainId): Omit<ChainSums, 'id'> & { readonly links: readonly Link[] } {
  const study = chainSums(joint).find((one) => one.id === id) ?? { shares: [], worst: 0, likely: 0 };
  return { ...study, links: study.shares.map(({ link }) => link) };
}

function shaftFinding(joint: Joint): Finding {
  const { links, shares, worst, likely } = chainOf(joint, 'shaft');
  const { duty } = joint.job;
  const { words, notGiven } = notRead(joint, 'rim');
  const common = {
    code: 'concentricity',
    feature: 'driven-register',
    title: 'how far the driven shaft can be off centre',
    notGiven,
    source: source(links, 'specific unbalance by ISO 21940-11'),
  };
  const made = `${listed(shares)}.${words}`;
  if (duty?.speed === undefined) {
    return notAssessed({
      ...common,
      why: `At worst ${mm(worst, 3)}, likely ${mm(likely, 3)}: ${made}${anglesSaid(links)}`,
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
      why: `Worst case is the sum of the links: ${made} Likely ${mm(likely, 3)}. ${grade.name} at ${duty.speed} rpm allows ${mm(allowed, 3)}.${anglesSaid(links)}`,
      cure: cureOfChain(links, worst, duty.speed, grade),
      improve: startWith(links),
    },
    worst,
    { limit: allowed, sense: 'at most', worst: likely <= allowed ? 'caution' : 'fail' },
  );
}

/** Face run-out that a flange in service may have, total indicator reading, mm. A workshop manual for light trucks. */
const faceLimit = 0.1;

function leanFinding(joint: Joint): Finding {
  const { links, shares, worst, likely } = chainOf(joint, 'lean');
  const { words, notGiven } = notRead(joint, 'face');
  return judged(
    {
      code: 'face-runout',
      feature: 'driven-register',
      title: `face run-out at the driven flange's rim`,
      notGiven,
      unit: 'mm',
      why: `Total indicator reading over ${mm(joint.driven.outside.value)}, the sum of the links: ${listed(shares)}. Likely ${mm(likely, 3)}.${words}${anglesSaid(links)}`,
      cure: `${startOrDone(links)} A leaning joint shakes twice a turn through the joint angle, and cannot be balanced away in one plane.`,
      improve: startWith(links),
      source: source(links, 'limit of 0.10 mm from a workshop manual for light trucks'),
    },
    worst,
    { limit: faceLimit, sense: 'at most', worst: likely <= faceLimit ? 'caution' : 'fail' },
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
  const { links, shares, worst, likely } = chainOf(joint, 'teeth');
  if (links.length === 0) return [];
  const { limit, from } = toothRunoutLimit(joint);
  const windows = joint.wheelSpec !== null && hasWindows(joint.wheelSpec);
  return [
    judged(
      {
        code: 'wheel-runout',
        feature: 'wheel-outline',
        title: `run-out of the ${windows ? 'windows' : 'teeth'}`,
        unit: 'mm',
        why: `Total indicator reading at the ${windows ? 'rim' : 'tips'}, twice the shift, the sum of the links: ${listed(shares)}. Likely ${mm(likely, 3)}.${anglesSaid(links)}`,
        cure: startOrDone(links),
        improve: startWith(links),
        source: source(links, from),
      },
      worst,
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
