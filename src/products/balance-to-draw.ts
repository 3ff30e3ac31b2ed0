/** The unbalance of a joint as its picture needs it; what was measured on the finished parts counts. */
import type { BalanceViewInput, CorrectionToDraw } from '../drawing/balance-input.ts';
import type { Joint } from '../job/joint.ts';
import { toothWords } from '../job/wheel-form.ts';
import { markOf } from '../parts/tone-wheel.ts';
import { balanceStudy } from '../rotor/balance-study.ts';
import { pullOf } from '../rotor/unbalance.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { atan2 } from '../units/trig.ts';
import { balance } from '../validate/balance.ts';
import { rimHole, wheelHole } from '../validate/balance-cure.ts';
import { jointBalance } from '../validate/joint-unbalance.ts';
import { angle, mm } from '../validate/words.ts';
import { asItIs } from './as-it-is.ts';
import { partOfLink } from './part-of-link.ts';

/** Corrections that the checks ask for: of a part whose own shape pulls more than its grade allows. */
function corrections(joint: Joint): CorrectionToDraw[] {
  const failed = balance.run(joint).filter(({ verdict }) => verdict === 'fail');
  const asks = (code: string) => failed.some((finding) => finding.code === code);
  const { x, y } = pullOf(joint.adapterMass);
  const list: CorrectionToDraw[] = [];
  if (asks('balance-adapter')) {
    const at = ((atan2(y, x) * 180) / Math.PI + 360) % 360;
    const hole = rimHole(joint, Math.hypot(x, y), at);
    const how = hole
      ? `drill ${mm(hole.diameter, 0)} into the rim, ${mm(hole.depth, 1)} deep, ${mm(hole.height, 1)} above the driving face`
      : 'take metal off the rim: the finding says how much';
    list.push({ at, feature: 'body', words: `Correct the adapter at ${angle(Number(at.toFixed(1)))}: ${how}.` });
  }
  const hole = asks('balance-wheel') ? wheelHole(joint) : null;
  if (hole) {
    const how = hole.fits
      ? `a hole of ${mm(hole.diameter, 1)} through the sheet, ${mm(hole.radius, 1)} from the axis`
      : 'take metal off below the roots: the finding says how much';
    list.push({
      at: hole.at,
      feature: 'wheel-outline',
      words: `Correct the wheel at ${angle(Number(hole.at.toFixed(1)))}: ${how}.`,
    });
  }
  return list;
}

/** Directions that can be found on the parts. */
function marksOf({ wheelSpec }: Joint): BalanceViewInput['marks'] {
  if (!wheelSpec) return [];
  const { teeth, toothAngle } = wheelSpec;
  const mark = markOf(wheelSpec);
  const words = toothWords(wheelSpec);
  const names = {
    missing: `middle of the gap of missing ${words.teeth}`,
    wide: `middle of the wide ${words.tooth}`,
    extra: `extra ${words.tooth}`,
  };
  const turn = (degrees: number) => ((degrees % 360) + 360) % 360;
  return [
    { name: `${words.tooth} 1`, at: turn(toothAngle) },
    ...(mark ? [{ name: names[mark.kind], at: turn(toothAngle - (360 / teeth) * mark.before) }] : []),
  ];
}

/** Null where nothing pulls. */
export function balanceToDraw(joint: Joint): BalanceViewInput | null {
  const built = asItIs(joint);
  const study = balanceStudy(built);
  const finding = jointBalance.run(built).find(({ code }) => code === 'joint-unbalance');
  if (!study || !finding) return null;
  const { shares, first, ...sums } = study;
  const { duty } = joint.job;
  const grade = duty ? must(balanceGrade(duty.grade)) : null;
  return {
    ...sums,
    id: 'balance',
    // Whole g.mm that add up, as the findings tell them: one pull has one number.
    pulls: shares.map(({ link, worst, amount }) => ({
      what: link.what,
      worst,
      told: amount,
      size: link.most,
      angle: link.angle,
      doubt: link.doubt,
      feature: partOfLink(link.id),
    })),
    limit: finding.limit,
    allowed: `${grade?.name ?? ''} at ${duty?.speed ?? 0} rpm for ${(study.mass / 1000).toFixed(2)} kg`,
    verdict: finding.verdict,
    start: first === null ? null : { number: first, cure: shares[first - 1]?.link.cure ?? '' },
    marks: marksOf(joint),
    corrections: corrections(built),
    notGiven: finding.notGiven ?? [],
    feature: finding.feature,
  };
}
