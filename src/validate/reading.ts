/** What the controller reads when nothing is changed in it, against what is true. */
import { controllerNumber, readsText } from '../job/controller-number.ts';
import type { Joint } from '../job/joint.ts';
import { pulsesText } from '../job/pulses-wanted.ts';
import { asGoodAsTyres, noUse, toothCandidates } from '../job/tooth-count.ts';
import type { Finding } from '../model/finding.ts';
import { type Check, judged, notAssessed } from './check.ts';

const feature = 'wheel-outline';

const number = (value: number) => String(Number(value.toPrecision(6)));

function cureFor(joint: Joint, { wanted }: NonNullable<ReturnType<typeof controllerNumber>>): string {
  if (!wanted) return '';
  const { enter, unit, ratios } = wanted;
  if (enter)
    return `Enter ${pulsesText(number(enter.number), unit)} in the controller: it then ${readsText(enter.error)}. Then write it in sensor.expects.pulses.`;
  const better = toothCandidates(joint.job).find(({ verdict }) => verdict !== 'fail');
  const best = ratios[ratios.length - 1];
  const count =
    better?.error !== null && better !== undefined && better.teeth !== joint.wheelSpec?.teeth
      ? `Make ${better.teeth} teeth (wheel.teeth: ${better.teeth}): it then ${readsText(better.error)}. Or put`
      : 'Put';
  return `${count} a converter box between that makes ${best?.p} pulses of ${best?.q}: it then ${readsText(best?.error ?? 0)}.`;
}

export const reading: Check = {
  id: 'reading',
  title: 'What the controller reads',
  source: 'definition; UN Regulation 39',
  run(joint) {
    const figures = controllerNumber(joint);
    if (!figures) return [];
    const common = { code: 'reading-error', feature, title: 'reading of the controller when nothing is changed' };
    const source = 'made / expected - 1; 1 % is common practice, tyres differ by more';
    if (figures.missing !== null) {
      const why = `The wheel makes ${figures.made} pulses in a turn of this shaft.`;
      return [notAssessed({ ...common, why, missing: figures.missing, source })];
    }
    const { wanted } = figures;
    if (!wanted) return [];
    const slow = wanted.error < -5e-5 ? ' A speedometer must never read slow (UN Regulation 39).' : '';
    const finding: Finding = judged(
      {
        ...common,
        unit: '%',
        why: `${wanted.asTold} expected, ${number(wanted.exact)} made: it ${readsText(wanted.error)}.${slow}`,
        cure: cureFor(joint, figures),
        source,
      },
      Math.abs(100 * wanted.error),
      {
        limit: 100 * asGoodAsTyres,
        sense: 'at most',
        ...(wanted.enter === null ? { hard: 100 * noUse } : { worst: 'caution' as const }),
      },
    );
    return [finding];
  },
};
