/** The finished parts against their limits: accept, rework (what, by how much), use as they are, or scrap. */
import { stackOf } from '../formulas/chain.ts';
import { type Characteristic, characteristicsOf } from '../inspect/characteristics.ts';
import { type Disposition, isHalf, type Judgement, judgeSize, overall } from '../inspect/disposition.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import { linksTo } from '../rotor/links.ts';
import { judged, stated } from './check.ts';
import { mm, plain } from './words.ts';

/** Checks that fail with the measured numbers and did not with the drawn ones. */
export function newFailures(drawn: readonly Finding[], real: readonly Finding[]): Finding[] {
  const known = new Set(
    drawn.filter(({ verdict }) => verdict === 'fail').map(({ code, feature }) => `${code} ${feature}`),
  );
  return real.filter(({ code, feature, verdict }) => verdict === 'fail' && !known.has(`${code} ${feature}`));
}

const verdictOf: Readonly<Record<Disposition, Verdict>> = {
  'not measured': 'not assessed',
  accept: 'pass',
  'use as it is': 'caution',
  'measure again': 'caution',
  'look into it': 'caution',
  rework: 'fail',
  scrap: 'fail',
};

const shown = (value: number, unit: 'mm' | 'g') => (unit === 'g' ? `${plain(value, 0)} g` : mm(value, 3));

/** What to do about one size, a sentence. */
function cureOf({ characteristic, disposition, takeOff, beyond, fails }: Judgement): string {
  const { what, verb, found, nominal, unit, lower, upper } = characteristic;
  switch (disposition) {
    case 'rework':
      return takeOff
        ? `${verb[0]?.toUpperCase()}${verb.slice(1)} the ${what}: take off ${mm(takeOff.from, 3)} to ${mm(takeOff.to, 3)}, to ${mm(lower, 3)} to ${mm(upper, 3)}.`
        : '';
    case 'measure again':
      return `${beyond === 0 ? 'Within the limits, but not by' : `Out by ${shown(Math.abs(beyond), unit)}, which is less than`} its doubt of ${shown(found?.doubt ?? 0, unit)}: measure again with a finer instrument (${characteristic.gauge}).`;
    case 'use as it is':
      return `Out by ${mm(Math.abs(beyond), 3)} and no metal left to mend it, but every sum still passes with it: it may be used as it is. Note it on the record.`;
    case 'scrap':
      return `Out by ${mm(Math.abs(beyond), 3)}, no metal left to mend it, and with it ${fails.join(', ')} fails. Make it again, or bush it.`;
    case 'look into it':
      if (unit === 'g') {
        return `The scales and the drawing differ by more than they may. Was the right part weighed, is its material right, is every hole drilled?`;
      }
      return isHalf(characteristic)
        ? `${shown(found?.value ?? 0, unit)} is about half of ${shown(nominal, unit)}: was a radius typed? Diameters are wanted.`
        : `${shown(found?.value ?? 0, unit)} is far from ${shown(nominal, unit)}: was it typed in the wrong unit, or another size measured?`;
    default:
      return '';
  }
}

function sizeFinding(judgement: Judgement): Finding[] {
  const { characteristic, disposition } = judgement;
  const { found, lower, upper, unit, what, feature, from, number } = characteristic;
  if (found === null) return [];
  const { value, doubt } = found;
  // The nearer limit is the one that counts; a lower limit of zero is none.
  const isUpper = lower === 0 || upper - value <= value - lower;
  const finding = judged(
    {
      code: 'built-size',
      feature,
      title: `${what}, as made`,
      unit,
      why: `Size ${number} of the record: ${shown(value, unit)} +-${shown(doubt, unit)} (${found.with}), limits ${shown(lower, unit)} to ${shown(upper, unit)} (${from}). Verdict: ${disposition}.`,
      cure: cureOf(judgement),
      source: 'limits of the drawing; measured on the finished part',
    },
    value,
    { limit: isUpper ? upper : lower, sense: isUpper ? 'at most' : 'at least' },
  );
  const verdict = verdictOf[disposition];
  return [{ ...finding, verdict, remedy: verdict === 'pass' ? '' : cureOf(judgement) }];
}

/** A joint that runs out by more than all that can cause it. */
function oddRunout(built: Joint): Finding[] {
  const seen = built.asMeasured?.jointRim;
  if (!seen) return [];
  // The chain to the driven register as the parts' own sizes give it.
  const links = linksTo({ ...built, asMeasured: built.asMeasured && { ...built.asMeasured, jointRim: null } }, 'shaft');
  const { worst } = stackOf(links.filter(({ id }) => id !== 'driven-run-out'));
  const isUnread = built.driving.runout.rim === null;
  const found = seen.arrow?.size ?? seen.tir / 2;
  return [
    judged(
      {
        code: 'built-runout',
        feature: 'driven-register',
        title: 'run-out of the joint as bolted up, against what can cause it',
        unit: 'mm',
        why: `The dial says ${mm(found, 3)} off centre; clearances, the adapter and the driving flange together can make ${mm(worst, 3)} at most.${isUnread ? " The driving flange's own run-out was not given and counts as nothing: give driving.runout.rim." : ''}`,
        cure: 'Something is wrong that no size shows: dirt or a burr under a face, a register that is not home, a bent flange, or a dial that slipped. Take it apart, clean it, bolt it up and read again.',
        source: 'sum of the links with their measured sizes',
      },
      found,
      { limit: worst + (seen.arrow?.doubt ?? seen.doubt / 2), sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** What the sizes say together: one sentence a machinist acts on. */
function verdictFinding(judgements: readonly Judgement[], fails: readonly Finding[]): Finding {
  const what = overall(judgements);
  const measured = judgements.filter(({ disposition }) => disposition !== 'not measured');
  const of = (disposition: Disposition) => judgements.filter((judgement) => judgement.disposition === disposition);
  const list = (some: readonly Judgement[]) => some.map(({ characteristic }) => characteristic.what).join(', ');
  const missing = of('not measured');
  // Nothing is known of the centring before the registers are measured.
  const untold = missing.filter(({ characteristic }) => /-register$/.test(characteristic.id));
  const isSoFar = what === 'accept' && untold.length > 0;
  const failing = [...new Set(fails.map(({ title }) => title))].join(', ');
  const sums =
    fails.length === 0
      ? 'With the measured numbers every sum that passed on paper still passes.'
      : `With the measured numbers these fail: ${failing}.`;
  const verdict: Verdict =
    measured.length === 0 ? 'not assessed' : fails.length > 0 ? 'fail' : isSoFar ? 'caution' : verdictOf[what];
  const named =
    measured.length === 0
      ? 'nothing measured yet'
      : fails.length > 0 && what === 'accept'
        ? 'sizes right, sums fail'
        : isSoFar
          ? 'accept so far'
          : what;
  const cures = [
    ...of('scrap').map(cureOf),
    ...of('rework').map(cureOf),
    ...(of('look into it').length > 0 ? [`Look into: ${list(of('look into it'))}.`] : []),
    ...(of('measure again').length > 0 ? [`Measure again: ${list(of('measure again'))}.`] : []),
    ...(of('use as it is').length > 0 ? [`Out of limits but usable: ${list(of('use as it is'))}.`] : []),
    ...(fails.length > 0 && what !== 'scrap' && what !== 'rework' ? [`See: ${failing}.`] : []),
    ...(measured.length > 0 && untold.length > 0 ? [`Measure ${list(untold)} too: the centring hangs on it.`] : []),
  ];
  return {
    ...stated(
      {
        code: 'built-verdict',
        feature: 'body',
        title: `the finished parts: ${named}`,
        unit: '',
        why: `${measured.length} of ${judgements.length} sizes measured${missing.length > 0 ? `; not yet: ${list(missing)}` : ''}. ${sums}`,
        cure: cures.join(' ') || 'Measure the finished parts and give built: the record lists what and how.',
        source: 'limits of the drawing; every check run again with the measured numbers',
      },
      verdict,
    ),
  };
}

/** The judgements of a designed joint whose parts were measured. */
export function judgeBuilt(drawn: Joint, fails: readonly Finding[]): Judgement[] {
  return characteristicsOf(drawn).map((characteristic: Characteristic) => judgeSize(characteristic, fails));
}

/**
 * What the finished parts say.
 * @param real the joint as built
 * @param fails checks that fail with the measured numbers and did not with the drawn ones
 * @param judgements of every size
 */
export function builtFindings(real: Joint, fails: readonly Finding[], judgements: readonly Judgement[]): Finding[] {
  return [verdictFinding(judgements, fails), ...judgements.flatMap(sizeFinding), ...oddRunout(real)];
}
