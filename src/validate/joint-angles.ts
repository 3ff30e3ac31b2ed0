/** The angles of the shaft's joints: each by itself, the train as a whole, needles that must roll, and slips of reading. */

import { accelerationOf, angleFor, speedFor } from '../formulas/joint-train.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { type AngleStudy, studyAngles } from '../rotor/shaft-angles.ts';
import { readAcross, shaftLine } from '../rotor/shaft-line.ts';
import { type ShimStudy, studyShims } from '../rotor/shaft-shims.ts';
import { shimWords } from '../rotor/shaft-words.ts';
import { shaftRule, tabledAngle } from '../standards/shaft-practice.ts';
import { hypot } from '../units/hypot.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { signalRipple } from './signal-ripple.ts';
import { plain, sourced } from './words.ts';

const deg = (value: number, decimals = 2): string => `${plain(value, decimals)} degrees`;
const rad = (value: number): string => `${value.toFixed(0)} rad/s2`;
const rpm = (value: number): string => (value === Infinity ? 'any speed' : `${value.toFixed(0)} rpm`);

const needSpeed = 'Give duty.speed: how much angle is too much hangs on the speed.';

/** A pass that the doubt of the readings puts in question is a caution. */
function withDoubt(finding: Finding, doubt: number, cure: string): Finding {
  const { margin, verdict } = finding;
  if (verdict !== 'pass' || margin === null || margin >= doubt) return finding;
  return { ...finding, verdict: 'caution', remedy: cure };
}

const readAgain =
  'Within the doubt of the readings: read the angles again with a digital inclinometer, each twice and turned end for end, and give shaft.angles.doubt.';

/** Shafts read on their flange's face, across the shaft. */
function acrossFindings(joint: Joint): Finding[] {
  const line = shaftLine(joint);
  if (!line) return [];
  return readAcross(line).map((i) => {
    const { side, plan } = line.readings[i] as { side: number; plan: number };
    const which = Math.abs(side) > 45 ? 'side' : 'plan';
    const value = which === 'side' ? side : plan;
    const meant = Math.sign(value) * 90 - value;
    const why = `${line.names[i]}: ${which} angle ${deg(value, 1)}. No propeller shaft lies so steep; it looks like 90 less the angle, read on the flange's face instead of along the shaft.`;
    const cure = `Lay the inclinometer along the shaft; or write ${plain(Math.abs(meant), 1)} with the sign by the picture: plus when the far end is the ${which === 'side' ? 'lower one' : 'one farther left'} (shaft.angles.line, number ${i + 1}).`;
    return stated(
      {
        code: 'angle-reading',
        feature: `shaft-${i + 1}`,
        title: `reading of the ${line.names[i]}`,
        unit: '',
        why,
        cure,
        source: 'plausibility',
      },
      'fail',
    );
  });
}

function jointFindings(study: AngleStudy, joint: Joint): Finding[] {
  const { line, angles, angleDoubts, limits, speed } = study;
  const rule = shaftRule('inertial');
  return angles.flatMap((angle, i) => {
    const number = i + 1;
    const { kind } = line.train.joints[i] as { kind: string };
    const between = `${line.names[i]} to ${line.names[i + 1]}`;
    const most = joint.job.shaft?.angles?.joints?.[i]?.most;
    const common = {
      code: `joint-angle-${number}`,
      feature: `joint-${number}`,
      title: `angle of joint ${number}, ${between}`,
    };
    const cure = `A flatter shaft: longer, or ends brought nearer to one line; or a constant-velocity joint (shaft.angles.joints[${i}]: { kind: constant velocity }).`;
    const doubt = angleDoubts[i] as number;
    const own: Finding[] =
      most === undefined
        ? []
        : [
            withDoubt(
              judged(
                {
                  ...common,
                  unit: 'deg',
                  why: `The joint itself allows ${deg(most, 1)}.`,
                  cure,
                  source: 'the joint, as given in the job',
                },
                angle,
                { limit: most, sense: 'at most' },
              ),
              doubt,
              readAgain,
            ),
          ];
    if (kind !== 'universal') {
      if (most !== undefined) return own;
      const missing = `Give shaft.angles.joints[${i}].most: the angle that its maker allows.`;
      const why = `${deg(angle)}. A constant-velocity joint turns evenly at any angle; how steep it may run is its maker's word.`;
      return [notAssessed({ ...common, why, missing, source: 'the joint maker' })];
    }
    const source = sourced(rule.source, false);
    if (speed === null) {
      const why = `${deg(angle)}, give or take ${deg(doubt, 1)}. By ${rad(limits.inertial)} it may run up to ${rpm(speedFor(angle, limits.inertial))}.`;
      return [...own, notAssessed({ ...common, why, missing: needSpeed, source })];
    }
    const tabled = tabledAngle(speed);
    const table = tabled.ok ? ` A joint maker's table has ${deg(tabled.value.angle, 1)} at this speed.` : '';
    const [limit, hard] = [angleFor(speed, limits.inertial), angleFor(speed, Math.max(limits.inertial, rule.hard))];
    const finding = judged(
      {
        ...common,
        unit: 'deg',
        why: `At ${rpm(speed)} it speeds the shaft up and down by ${rad(accelerationOf(speed, angle))}; the limit here is ${rad(limits.inertial)}.${table} Another maker's table for small joints comes to ${rule.hard}: beyond that it fails. It would do up to ${rpm(speedFor(angle, limits.inertial))}. Give or take ${deg(doubt, 1)}.`,
        cure,
        source,
      },
      angle,
      { limit, sense: 'at most', hard },
    );
    return [...own, withDoubt(finding, doubt, readAgain)];
  });
}

function needleFindings({ line, angles }: AngleStudy): Finding[] {
  const rule = shaftRule('needles');
  return angles.flatMap((angle, i) => {
    if (line.train.joints[i]?.kind !== 'universal') return [];
    return [
      judged(
        {
          code: 'needle-angle',
          feature: `joint-${i + 1}`,
          title: `least angle of joint ${i + 1}`,
          unit: 'deg',
          why: 'The needles of a universal joint must roll a little each turn, or they dent the cross. Dead straight is wrong.',
          cure: `Give it ${deg(rule.limit, 0)}: lower or raise one end of the shaft and turn the other end to match.`,
          source: rule.source,
        },
        angle,
        { limit: rule.limit, sense: 'at least', hard: rule.hard, worst: 'caution' },
      ),
    ];
  });
}

/** What to shim, in words. */
function shimCure(study: AngleStudy, shims: ShimStudy | null): string {
  const { line } = study;
  const last = line.names[line.names.length - 1] ?? 'last shaft';
  if (!shims) return 'Bring the shafts ahead and behind parallel, or use a constant-velocity joint.';
  const words = shims.shims.map((shim) => shimWords(shim, last)).filter((text) => text !== '');
  const left = shims.left.length === 0 ? '' : ` ${shims.left.join(' ')}`;
  if (words.length === 0) {
    return `No wedge makes it better. Look at the phase of the forks (shaft.angles.joints), and at the plan angles: shafts that are out of line seen from above do not cancel by wedges.${left}`;
  }
  // The best setting weighs steep joints and the travel too: it may leave the train less even than it is.
  if (shims.after >= shims.before)
    return `No shim evens it without making a joint too steep or too straight for this speed, or the travel worse: bring the ends of the shaft nearer to one line first.${left}`;
  const rest = shims.shiftLeftOut
    ? ' The shift of the joint by the wedge is not counted: give shaft.travel.arm and the length of every shaft.'
    : '';
  return `${words.join(' ')} The train then leaves ${deg(shims.after)} instead of ${deg(shims.before)}.${rest}${left} Read the angles again afterwards.`;
}

/** Joints' angles and planes, in words. */
function geometry({ line, angles, planes }: AngleStudy): string {
  const list = angles.map((angle, i) => {
    const even = line.train.joints[i]?.kind === 'universal' ? '' : ' (constant velocity)';
    return `joint ${i + 1} ${deg(angle)} in a plane ${((planes[i] ?? 0) % 180).toFixed(0)} degrees from the horizontal${even}`;
  });
  return `${list.join(', ')}.`;
}

function residualFindings(study: AngleStudy, joint: Joint): Finding[] {
  const { residual, residualDoubt, limits, speed, exact, stances } = study;
  const rule = shaftRule('torsional');
  const asked = joint.job.shaft?.angles?.torsional !== undefined;
  const common = {
    code: 'train-residual',
    feature: 'shaft',
    title: 'unevenness of the whole train',
    source: sourced(
      asked ? 'second-order rule; limit as given in the job' : rule.source,
      !asked && rule.memory === true,
    ),
  };
  const shims = studyShims(joint, study);
  const what = `As uneven as one joint at ${deg(residual)}: ${geometry(study)}`;
  if (speed === null) {
    const why = `${what} By ${rad(limits.torsional)} it may run up to ${rpm(speedFor(residual, limits.torsional))}. ${shims === null || shims.shims.every(({ by }) => by === 0) ? '' : shimCure(study, shims)}`;
    return [notAssessed({ ...common, why: why.trim(), missing: needSpeed })];
  }
  const perSquareDegree = accelerationOf(speed, 1);
  const cure = shimCure(study, shims);
  const hard = Math.max(limits.torsional, asked ? 0 : rule.hard);
  // Shims are put in when the joint is bolted up: what they mend does not hold the metal back.
  const isMended = shims !== null && accelerationOf(speed, shims.after) <= limits.torsional;
  const finding = judged(
    {
      ...common,
      unit: 'rad/s2',
      why: `${what} At ${rpm(speed)}; by the exact turning of every fork ${rad(exact ?? 0)}. It would do up to ${rpm(speedFor(residual, limits.torsional))}. Give or take ${rad(residualDoubt * perSquareDegree)}.`,
      cure,
    },
    accelerationOf(speed, residual),
    { limit: limits.torsional, sense: 'at most', hard, worst: isMended ? 'caution' : 'fail' },
  );
  const moving = stances.slice(1).map((stance) =>
    judged(
      {
        ...common,
        feature: stance.what === 'full bump' ? 'shaft-bump' : 'shaft-droop',
        title: `unevenness of the whole train at ${stance.what}`,
        unit: 'rad/s2',
        why: `As uneven as one joint at ${deg(stance.residual)}; joints at ${stance.angles.map((a) => deg(a, 1)).join(', ')}. The axle passes here, it does not stay: no more than a caution.`,
        cure: 'An axle that keeps its slope as it travels (parallel links), or shims that favour this end of the travel.',
      },
      accelerationOf(speed, stance.residual),
      { limit: limits.torsional, sense: 'at most', worst: 'caution' },
    ),
  );
  return [withDoubt(finding, residualDoubt * perSquareDegree, readAgain), ...moving];
}

function signFinding({ slip, line, residual }: AngleStudy): Finding[] {
  if (!slip) return [];
  const name = line.names[slip.shaft];
  const why = `With the ${slip.which} angle of the ${name} turned to the other sign the train would leave ${deg(slip.residual)} instead of ${deg(residual)}. That looks like a slip of sign.`;
  const cure = `Hold shaft.angles.line number ${slip.shaft + 1} against the picture: ${slip.which === 'side' ? 'plus when its far end, away from the driving end, is the lower one' : 'plus when its far end lies more to the left, looking from the driving end'}.`;
  return [
    stated(
      {
        code: 'angle-signs',
        feature: `shaft-${slip.shaft + 1}`,
        title: 'signs of the angles',
        unit: '',
        why,
        cure,
        source: 'plausibility',
      },
      'caution',
    ),
  ];
}

/** Forks count as in line up to this, degrees. Common practice. */
const forksInLine = 5;

function differenceFinding(study: AngleStudy): Finding[] {
  const { line, angles, angleDoubts, planes } = study;
  const [one, two, third] = line.train.joints.flatMap(({ kind }, i) => (kind === 'universal' ? [i] : []));
  if (one === undefined || two !== one + 1 || third !== undefined) return [];
  // Forks that are not in line cancel otherwise: the train tells, the difference does not.
  const turned = Math.abs(line.train.joints[two]?.yokes ?? 0) % 180;
  if (Math.min(turned, 180 - turned) > forksInLine) return [];
  const rule = shaftRule('difference');
  const [a, b] = [angles[one] as number, angles[two] as number];
  // Planes count as one when they are the same line, whichever way the bend points.
  const apart = Math.abs((((((planes[one] as number) - (planes[two] as number)) % 180) + 270) % 180) - 90);
  const twisted =
    Math.min(a, b) > 0.5 && apart > 10
      ? ` Their planes lie ${apart.toFixed(0)} degrees apart: equal angles alone do not cancel then; go by the train.`
      : '';
  const finding = judged(
    {
      code: 'angle-difference',
      feature: `joint-${one + 1}`,
      title: 'difference of the two joint angles',
      unit: 'deg',
      why: `${deg(a)} and ${deg(b)}. Equal angles in one plane with forks in line cancel; at low speed 3 to 5 degrees pass.${twisted}`,
      cure: 'Turn the far end until both joints run at the same angle; see the wedge under train-residual.',
      source: rule.source,
    },
    Math.abs(a - b),
    { limit: rule.limit, sense: 'at most', hard: rule.hard, worst: 'caution' },
  );
  return [withDoubt(finding, hypot(angleDoubts[one] as number, angleDoubts[two] as number) / 2, readAgain)];
}

function run(joint: Joint): Finding[] {
  const across = acrossFindings(joint);
  if (across.length > 0) return across;
  const study = studyAngles(joint);
  if (!study) return [];
  return [
    ...residualFindings(study, joint),
    ...jointFindings(study, joint),
    ...needleFindings(study),
    ...differenceFinding(study),
    ...signFinding(study),
    ...signalRipple(joint, study),
  ];
}

export const jointAngleCheck: Check = {
  id: 'joint-angles',
  title: 'Angles of the joints',
  source: "joint makers' annexes and manuals; exact kinematics; trade practice",
  isSlow: true,
  run,
};
