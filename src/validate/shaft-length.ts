/** How long the shaft must be, whether its slip is enough for the axle's travel, and whether the shaft at hand can be cut to it. */
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { type FitStudy, type ShaftFit, studyFit } from '../rotor/shaft-fit.ts';
import { shaftRule } from '../standards/shaft-practice.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { slipFindings } from './shaft-slip.ts';
import { mm, sourced } from './words.ts';

const feature = 'shaft';
const about = {
  code: 'shaft-length',
  feature,
  title: 'length of the shaft',
  source: 'geometry of the faces as read; adapter and spacers between faces count once',
};

/** Keys of `shaft` that ask for a length. */
function asksForLength({ job }: Joint): boolean {
  const { slip, travel, at_hand, ends, spacers } = job.shaft ?? {};
  return [slip, travel, at_hand, ends, spacers].some((key) => key !== undefined);
}

const howToRead =
  'Bolt the mock-up in, take the shaft out, let the wheels carry the vehicle, and read from the free face of the mock-up to the far flange, middle to middle: shaft.measured: { from: mock-up, value: 1294 mm, at: ride height }.';

function unreadable(joint: Joint, study: FitStudy & { ok: false }): Finding {
  const { measured, travel } = joint.job.shaft ?? {};
  if (study.why === 'hanging') {
    const why =
      'The reading was taken with the axle hanging. The shaft is then longer or shorter than where it runs; cut to that it bottoms or comes apart.';
    const cure = `${howToRead} What was read hanging may stay as shaft.measured.at_droop.`;
    return stated({ ...about, unit: '', why, cure }, 'fail');
  }
  if (study.why === 'no swing') {
    const why = `An axle that swings about the given pivot cannot go up ${mm(travel?.bump ?? 0, 0)} and down ${mm(travel?.droop ?? 0, 0)}.`;
    const cure =
      'Look at the signs and sizes of shaft.travel.pivot: ahead is counted towards the driving end, above upwards.';
    return stated({ ...about, unit: '', why, cure }, 'fail');
  }
  const parts = [
    `adapter ${mm(joint.adapterSpec.thickness)}`,
    `spacers ${mm(joint.job.shaft?.spacers ?? 0)}`,
    `the shaft's own ends ${mm((joint.job.shaft?.ends?.adapter ?? 0) + (joint.job.shaft?.ends?.far ?? 0))}`,
  ];
  const shortest = Math.min(...[measured?.value, measured?.at_bump, measured?.at_droop].flatMap((list) => list ?? []));
  const why = `A reading of ${mm(shortest, 1)} leaves nothing between the joint centres: ${parts.join(', ')}.`;
  const cure =
    'Look at the unit of the reading (shaft.measured.value: 51 in) and at shaft.ends: each is from a face to the joint centre next to it.';
  return stated({ ...about, unit: '', why, cure }, 'fail');
}

/** Lengths by each way of saying them. */
function lengths(fit: ShaftFit): string {
  const { faces, centres, ends, ordered } = fit;
  const both = (length: number) =>
    `${mm(length, 1)} face to face${ends === null ? '' : ` (${mm(length - ends, 1)} centre to centre)`}`;
  const unknown = centres === null ? ' Give shaft.ends to have it between joint centres too.' : '';
  if (!ordered) return `As fitted ${both(faces)}.${unknown}`;
  return `As fitted at ride height ${both(faces)}; pushed home ${both(ordered.compressed)}; pulled out ${both(ordered.extended)}.${unknown}`;
}

/** How much its doubt may be: what the slip has to spare beside its travel, else a hundredth of an inch as shops hold it. */
function doubtFinding(fit: ShaftFit): Finding {
  const { ordered, doubt, because, bend, reserve } = fit;
  const rest = ordered
    ? Math.max(0, Math.min(reserve, ordered.beforeBottom, ordered.beforeApart))
    : shaftRule('tape').hard;
  const bent =
    Math.abs(bend) < 0.05
      ? ''
      : ` The bends at the joints make it ${mm(Math.abs(bend), 1)} ${bend > 0 ? 'longer' : 'shorter'} on the bench.`;
  const governs = {
    share: ' At ride height a third of the stroke is drawn out.',
    bump: ' Bump fixes it: a third of the stroke drawn out would leave too little before it bottoms.',
    droop: ' Droop fixes it: a third of the stroke drawn out would leave too little before it comes apart.',
    neither: ' The stroke is too short for the travel; what is missing is shared by both ends.',
  };
  return judged(
    {
      ...about,
      title: 'doubt of the length of the shaft',
      unit: 'mm',
      why: `${lengths(fit)} ${because}${bent}${ordered ? governs[ordered.governs] : ' A shaft without slip bears no error at all in principle.'} The doubt is that of the readings and of the adapter's thickness.`,
      cure: ordered
        ? 'Read it again three times with a good tape and give all readings (shaft.measured.value: [1294, 1293.5, 1294]), or a slip with a longer stroke.'
        : 'Read it again with a good tape, three times, and give shaft.measured.value as a list and shaft.measured.doubt; or give shaft.slip if the shaft has one.',
      source: sourced(
        `${about.source}; working length = pushed home + a third of the stroke (a joint maker's catalogues)`,
        false,
      ),
    },
    doubt,
    {
      limit: rest,
      sense: 'at most',
      hard: Math.max(rest, 2 * shaftRule('tape').hard),
      worst: ordered ? 'fail' : 'caution',
    },
  );
}

/** The tube length that the speed is worked out with, held against the reading: one adapter too much or too little shows here. */
function tubeLengthFinding(joint: Joint, fit: ShaftFit): Finding[] {
  const given = joint.job.shaft?.tube?.length;
  if (given === undefined || fit.centres === null) return [];
  const off = Math.abs(given - fit.centres);
  const { thickness } = joint.adapterSpec;
  const isAdapter = Math.abs(off - thickness) <= 2 * fit.doubt;
  const slip = isAdapter
    ? ` That is the thickness of the adapter, ${mm(thickness)}: it is counted twice in one of them, or not at all.`
    : '';
  return [
    judged(
      {
        ...about,
        feature: 'tube',
        title: 'shaft.tube.length against the reading',
        unit: 'mm',
        why: `shaft.tube.length says ${mm(given, 1)} between joint centres, the reading comes to ${mm(fit.centres, 1)}.${slip}`,
        cure: `Write shaft.tube.length: ${fit.centres.toFixed(1)} mm, or correct shaft.measured.`,
      },
      off,
      { limit: Math.max(5, 3 * fit.doubt), sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** A mock-up may be off by this much as printed, mm; more, and it is another part's. Common practice. */
const printed = 1;

/** A mock-up that is much thicker or thinner than the adapter is not this adapter's. */
function mockUpFinding(joint: Joint): Finding[] {
  const mockUp = joint.job.shaft?.measured?.mock_up;
  if (mockUp === undefined || joint.job.shaft?.measured?.from !== 'mock-up') return [];
  const { thickness } = joint.adapterSpec;
  return [
    judged(
      {
        code: 'mock-up-thickness',
        feature: 'body',
        title: 'mock-up against adapter, thickness',
        unit: 'mm',
        why: `The mock-up measures ${mm(mockUp)}, the adapter is ${mm(thickness)} thick. The length given counts with the difference.`,
        cure: `Was it the mock-up of an earlier design? Hold its rim against the report, print it again, or set adapter.thickness: ${mockUp.toFixed(1)} mm.`,
        source: 'common practice',
      },
      Math.abs(mockUp - thickness),
      { limit: printed, sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** Least tube that can be left between two welds, mm: they must not run into each other. Common practice. */
const leastTube = 100;

function cutFinding(joint: Joint, { toCut }: ShaftFit): Finding[] {
  const hand = joint.job.shaft?.at_hand;
  if (!hand) return [];
  const common = {
    code: 'shaft-to-cut',
    feature: 'tube',
    title: 'tube left in the shaft at hand',
    source: 'arithmetic; common practice',
  };
  if (!toCut) {
    const missing = 'Give shaft.ends: the shaft at hand was measured between joint centres.';
    return [notAssessed({ ...common, why: 'How much to take out hangs on where its faces lie.', missing })];
  }
  const { out, tubeLeft } = toCut;
  if (out < 0) {
    const why = `The shaft at hand is ${mm(-out, 1)} too short.`;
    const cure = `A new tube, ${mm(-out, 1)} longer${hand.tube === undefined ? '' : `: ${mm(hand.tube - out, 1)} weld to weld`}. If it should have been too long, look at shaft.at_hand.between and pulled_out.`;
    return [stated({ ...common, unit: '', why, cure }, 'caution')];
  }
  const take = `Take ${mm(out, 1)} out of the tube.`;
  if (tubeLeft === null) {
    return [
      notAssessed({
        ...common,
        why: take,
        missing: 'Give shaft.at_hand.tube, its length weld to weld, to know what is left.',
      }),
    ];
  }
  const cure = `A shorter shaft to start from: the welds would come within ${mm(leastTube, 0)} of each other.`;
  return [
    judged(
      { ...common, unit: 'mm', why: `${take} Of ${mm(hand.tube ?? 0, 1)} of tube ${mm(tubeLeft, 1)} are left.`, cure },
      tubeLeft,
      {
        limit: leastTube,
        sense: 'at least',
        hard: 0,
      },
    ),
  ];
}

function run(joint: Joint): Finding[] {
  const study = studyFit(joint);
  if (!study) {
    if (!asksForLength(joint)) return [];
    return [notAssessed({ ...about, why: 'No reading between the faces was given.', missing: howToRead })];
  }
  if (!study.ok) return [unreadable(joint, study)];
  return [
    doubtFinding(study),
    ...mockUpFinding(joint),
    ...tubeLengthFinding(joint, study),
    ...slipFindings(joint, study),
    ...cutFinding(joint, study),
  ];
}

export const shaftLength: Check = {
  id: 'shaft-length',
  title: 'Length of the shaft',
  source: "geometry; joint makers' catalogues; common practice",
  run,
};
