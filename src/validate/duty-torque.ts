/** The torque that every strength check is made with, and where it comes from. */
import { type DesignTorque, designTorque, type TorqueStep } from '../formulas/design-torque.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { engineOf, torqueOf, tyreOf } from '../rotor/joint-torque.ts';
import { applicationFactors } from '../standards/service-factors.ts';
import { type Check, judged, notAssessed, type Statement, stated } from './check.ts';
import { plain } from './words.ts';

export { torqueOf } from '../rotor/joint-torque.ts';

/** What to give where no torque is known. */
export const torqueMissing =
  'Give duty.torque, the peak torque at this shaft; or duty.engine: { torque, ratios } and duty.tyre: { load, radius, ratio }.';

/** "480 N.m (320 N.m x shock 1.5)" */
export function torqueInWords({ value, peak, shock }: DesignTorque): string {
  return shock === 1 ? `${plain(value, 0)} N.m` : `${plain(value, 0)} N.m (${plain(peak, 0)} N.m x shock ${shock})`;
}

/** "engine torque 240 N.m, torque converter at stall x 2, ratio x 3.5" */
function stepsInWords(steps: readonly TorqueStep[]): string {
  const number = (value: number) => Number(value.toPrecision(4));
  return steps
    .map(({ what, value, unit }) =>
      unit === 'x' || unit === '/' ? `${what} ${unit} ${number(value)}` : `${what} ${number(value)} ${unit}`,
    )
    .join(', ');
}

const says = {
  given: 'Taken from the job',
  engine: 'The engine governs',
  tyres: 'The tyres slip first',
} as const;

/** The other chain, where the job gives both and one governs: "The tyres would slip at 2000 N.m." */
function otherChain(joint: Joint, duty: DesignTorque): string {
  const [engine, tyre] = [engineOf(joint), tyreOf(joint)];
  if (!engine || !tyre || duty.governs === 'given') return '';
  const other = duty.governs === 'engine' ? designTorque({ tyre }) : designTorque({ engine });
  const what = duty.governs === 'engine' ? 'The tyres would slip at' : 'The engine could give';
  return other ? ` ${what} ${plain(other.peak, 0)} N.m.` : '';
}

function judge(joint: Joint): Finding[] {
  const common = { code: 'design-torque', feature: 'body', title: 'torque the joint is sized for' };
  const duty = torqueOf(joint);
  const source = [
    duty?.governs === 'given' ? 'the job' : 'statics',
    ...(typeof joint.job.duty?.shock === 'string' ? [`shock by ${applicationFactors.edition}`] : []),
    ...(duty?.governs === 'tyres' ? ['a tyre grip of 1.0 is common practice'] : []),
  ].join('; ');
  if (!duty) {
    const why = 'Neither a peak torque nor an engine nor tyres are given.';
    return [notAssessed({ ...common, why, missing: torqueMissing, source })];
  }
  const why = `${says[duty.governs]}: ${stepsInWords(duty.steps)}.${otherChain(joint, duty)} The joint is sized for ${torqueInWords(duty)}${joint.job.duty?.reversing ? ', both ways' : ''}.`;
  const statement: Statement = { ...common, unit: 'N.m', why, cure: '', source };
  if (duty.governs !== 'given' || duty.chain === null) return [stated(statement, 'pass')];
  return [
    judged(
      {
        ...statement,
        why: `${why} Engine and tyres come to ${plain(duty.chain, 0)} N.m.`,
        cure: `Give duty.torque: ${Math.ceil(duty.chain)} N.m or more, or leave it out and the chain decides; the checks count with the torque given.`,
      },
      duty.peak,
      { limit: duty.chain, sense: 'at least', worst: 'caution' },
    ),
  ];
}

export const dutyTorque: Check = {
  id: 'duty-torque',
  title: 'Design torque',
  source: 'statics; ISO 6336-1 application factor',
  run: judge,
};
