/** Is the joint bolted up the way round in which the run-outs of its two flanges cancel best? */
import type { BoltUp, Phased } from '../formulas/phasing.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { boltUps, fittingTurns, meantTurn, type PhasingStudy, studyPhasing } from '../rotor/phasing-study.ts';
import { atan2 } from '../units/trig.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { angle, fromIndex, mm } from './words.ts';

const wrap = (degrees: number): number => ((degrees % 360) + 360) % 360;
/** Whole turns are none, to a tenth of a degree: what can be marked on a rim. */
const mark = (degrees: number): string => angle(wrap(Math.round(degrees * 10) / 10));

const common = {
  code: 'phasing',
  feature: 'driven-screws',
  title: 'which way round the flanges are bolted up',
  source: 'geometry: sum of directed run-outs; marking high spots and indexing the joint is common practice',
};

const keyOf = ({ driving, driven }: BoltUp): string => {
  const turn = (degrees: number) => `${Number(degrees.toFixed(2))} deg`;
  return `adapter.bolt_up: { ${driving === 0 ? '' : `driving: ${turn(driving)}, `}driven: ${turn(driven)} }`;
};

/** Where hole 1 of a flange stands as it was typed, in adapter coordinates, degrees. */
function firstHole(joint: Joint, side: 'driving' | 'driven'): number {
  const [first] = joint[side].holes.positions;
  return first ? (atan2(first.y, first.x) * 180) / Math.PI : 0;
}

/** How to find a way round at the bench. */
function howTo(joint: Joint, from: BoltUp, to: BoltUp): string {
  const steps = [
    ...(to.driving === from.driving
      ? []
      : [
          `Turn the adapter on the driving flange until the driving flange's hole 1 stands at ${mark(firstHole(joint, 'driving') - to.driving)}.`,
        ]),
    ...(to.driven === from.driven && to.driving !== from.driving
      ? ['Leave the driven flange as it is on the adapter.']
      : [
          `Turn the driven flange until its hole 1 stands at ${mark(firstHole(joint, 'driven') + joint.clocking.angle + to.driven)}.`,
        ]),
  ];
  return `${steps.join(' ')} Angles: ${fromIndex}. Write ${keyOf(to)}.`;
}

/** Where both high spots stand, and where that is on the faces that were read: the driven flange's own face is a mirror of how the joint is seen. */
function spots(joint: Joint, { driving, driven }: BoltUp): string {
  const [e1, e2] = [joint.driving.runout.rimEccentricity, joint.driven.runout.rimEccentricity];
  if (!e1 || !e2) return '';
  const there = e2.angle + joint.clocking.angle + driven;
  return `The rims' high spots then stand at ${mark(e1.angle - driving)} (driving) and ${mark(there)} (driven); looking at each flange's own face that is at ${mark(e1.angle)} and ${mark(180 - e2.angle)} from its x axis.`;
}

const off = ({ off: far }: Phased): string => mm(far, 3);

function assessed(joint: Joint, { result, faces, arm }: PhasingStudy & { ok: true }): Finding {
  const { best, worst, chosen, ranked, doubt, seen, matters, pays } = result;
  const what = faces
    ? `from the face to ${mm(arm, 0)} out, where a lean counts`
    : 'rims only: both faces were not read';
  const facts = `${ranked.length} ways round put the driven shaft ${off(best)} to ${off(worst)} off centre (${what}); the readings leave ${mm(doubt, 3)} in doubt.`;
  // A gain that cannot be seen is no gain: nothing is told of it.
  const say = !matters
    ? 'They differ by less than can be told apart: any way is as good as another.'
    : pays
      ? 'Fits and play come on top, whichever way.'
      : 'No other is better than this one by more than can be told. Fits and play come on top, whichever way.';
  return judged(
    {
      ...common,
      unit: 'mm',
      why: `${facts} ${say}`,
      cure: `${howTo(joint, chosen, best)} It brings ${off(chosen)} down to ${off(best)}. ${spots(joint, best)}`,
    },
    chosen.off,
    { limit: best.off + seen, sense: 'at most', worst: 'caution' },
  );
}

/** A turn that was typed and brings no hole onto a hole. */
function misfits(joint: Joint): Finding[] {
  return (['driving', 'driven'] as const).flatMap((side) => {
    const typed = joint.job.adapter.bolt_up?.[side] ?? 0;
    const turns = fittingTurns(joint, side);
    if (meantTurn(turns, typed) !== null) return [];
    const list = turns.map((turn) => Number(turn.toFixed(2))).join(', ');
    const why = `Turned by ${angle(typed)}, the ${side} holes do not meet. Turns that fit: ${list} degrees.`;
    const cure = `Write one of them as adapter.bolt_up.${side}: ${list}.`;
    return [stated({ ...common, feature: `${side}-screws`, unit: '', why, cure }, 'fail')];
  });
}

/** What a total indicator reading leaves open, or what is missing altogether. */
function unknown(joint: Joint, lacking: readonly ('driving' | 'driven')[], ways: number): Finding {
  const [one, two] = [joint.driving.runout.rim, joint.driven.runout.rim];
  const range =
    one === null || two === null
      ? 'Which way round is best hangs on where both rims are high.'
      : `A total reading has no direction: the rims' ${mm(one, 3)} and ${mm(two, 3)} may add up to ${mm((one + two) / 2, 3)} off centre or leave ${mm(Math.abs(one - two) / 2, 3)}.`;
  const keys = lacking.map((side) => `${side}.runout.rim`).join(' and ');
  const missing = `Give ${keys} as dial readings, eight at equal angles from the x axis, counter-clockwise looking at the flange's own face: [0, 0.01, 0.03, ...].`;
  return notAssessed({ ...common, why: `${ways} ways round are possible. ${range}`, missing });
}

function run(joint: Joint): Finding[] {
  const wrong = misfits(joint);
  if (wrong.length > 0) return wrong;
  const { driving, driven } = joint;
  const isRead = [driving, driven].some(({ runout }) => runout.rim !== null || runout.face !== null);
  // Without a dial on either flange there is nothing to phase; concentricity counts what else is known.
  if (!isRead) return [];
  const ways = boltUps(joint)?.ways.length ?? 0;
  if (ways < 2) {
    const why = 'The holes meet in one way only: there is nothing to choose.';
    return [stated({ ...common, unit: '', why, cure: '' }, 'pass')];
  }
  const study = studyPhasing(joint);
  return [study.ok ? assessed(joint, study) : unknown(joint, study.lacking, ways)];
}

export const phasing: Check = {
  id: 'phasing',
  title: 'Bolt-up position',
  source: 'geometry; common practice',
  run,
};
