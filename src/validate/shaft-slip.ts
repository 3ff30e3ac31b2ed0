/** Whether the slip of the shaft is enough for the axle's travel, and whether its spline stays engaged. */
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import type { ShaftFit } from '../rotor/shaft-fit.ts';
import { shaftRule } from '../standards/shaft-practice.ts';
import { judged, notAssessed } from './check.ts';
import { mm, sourced } from './words.ts';

function plungeFindings(joint: Joint, fit: ShaftFit): Finding[] {
  const { ordered, travel, reserve, doubt } = fit;
  const rule = shaftRule('reserve');
  const common = {
    code: 'shaft-plunge',
    unit: 'mm',
    source: sourced(rule.source, joint.job.shaft?.slip?.reserve === undefined),
  };
  const slip = joint.job.shaft?.slip;
  if (!ordered || !slip) {
    const why = 'A shaft between two parts that move against each other must change its length.';
    const missing = 'Give shaft.slip: { stroke: 90 mm }, the travel of its sliding spline or plunging joint.';
    return [notAssessed({ ...common, feature: 'shaft', title: 'slip of the shaft', why, missing })];
  }
  if (!travel) {
    const why = `The slip has ${mm(slip.stroke, 0)}. How much of it the axle needs is not known.`;
    const missing =
      'Give shaft.measured.at_bump and at_droop, the same reading with the axle at both stops; or shaft.travel with shaft.ends, shaft.angles and the length of every shaft.';
    return [notAssessed({ ...common, feature: 'shaft', title: 'slip of the shaft', why, missing })];
  }
  const from = fit.travelFrom === 'readings' ? 'as read at both stops' : 'worked out from the path of the axle';
  const needs = travel.longest - travel.shortest + 2 * reserve;
  const changes = `Between its stops the shaft goes from ${mm(travel.shortest, 1)} to ${mm(travel.longest, 1)} face to face (${from}); the stroke is ${mm(slip.stroke, 0)}.`;
  const cannot =
    travel.longest - travel.shortest > slip.stroke
      ? ' No length of shaft reaches both ends: it would bottom or come apart. If that cannot be, look at the readings: one may have been taken from another face.'
      : '';
  const cure = `${
    ordered.governs === 'neither'
      ? `A slip with a stroke of ${mm(Math.ceil(needs), 0)} or more (shaft.slip.stroke), or less travel.`
      : 'Have it made to the length given here.'
  }${cannot}`;
  const side = (which: 'bump' | 'droop', left: number): Finding =>
    judged(
      {
        ...common,
        feature: `shaft-${which}`,
        title: which === 'bump' ? 'slip left before it bottoms' : 'slip left before it comes apart',
        why: `${changes} Made as told, ${mm(left, 1)} are left at the ${which === 'bump' ? 'shortest' : 'longest'}.`,
        cure,
      },
      left,
      // What the doubt of the length can use up must be there in any case.
      { limit: reserve, sense: 'at least', hard: Math.max(doubt, Math.min(reserve, rule.hard)) },
    );
  return [side('bump', ordered.beforeBottom), side('droop', ordered.beforeApart)];
}

function engagementFinding(joint: Joint, fit: ShaftFit): Finding[] {
  const { ordered } = fit;
  const slip = joint.job.shaft?.slip;
  if (!ordered || !slip) return [];
  const rule = shaftRule('engagement');
  const common = {
    code: 'spline-engagement',
    feature: 'slip',
    title: 'spline engaged at the longest',
    source: sourced(rule.source, slip.least_engaged === undefined),
  };
  if (slip.engaged === undefined) {
    const why = 'A spline that is drawn out too far carries its torque on too little length and rattles.';
    return [
      notAssessed({ ...common, why, missing: 'Give shaft.slip.engaged: length of spline engaged when pushed home.' }),
    ];
  }
  const left = slip.engaged - ordered.out.longest;
  const least = slip.least_engaged ?? rule.limit;
  const travel = fit.travel ? '' : ' The travel of the axle is not known: this is at ride height.';
  return [
    judged(
      {
        ...common,
        unit: 'mm',
        why: `${mm(slip.engaged, 0)} are engaged pushed home, ${mm(slip.engaged - ordered.out.ride, 1)} at ride height, ${mm(slip.engaged - ordered.out.shortest, 1)} at the shortest and ${mm(left, 1)} at the longest.${travel}`,
        cure: `A longer spline: shaft.slip.engaged of ${mm(Math.ceil(ordered.out.longest + least), 0)} or more; or less travel.`,
      },
      left,
      { limit: least, sense: 'at least', hard: Math.min(least, 0.75 * least) },
    ),
  ];
}

/** Findings about the slip of a shaft whose length is known. */
export function slipFindings(joint: Joint, fit: ShaftFit): Finding[] {
  return [...plungeFindings(joint, fit), ...engagementFinding(joint, fit)];
}
