/** Numbers about the propeller shaft that the job left out and the trade fills in. */
import type { JobInput } from '../job/schema.ts';
import type { Assumption } from '../model/finding.ts';
import { shaftRule } from '../standards/shaft-practice.ts';

/** A rule of the trade that stands in for a key. */
function byRule(path: string, rule: string, unit: string, why = ''): Assumption {
  const { limit, source, memory = false } = shaftRule(rule);
  const value = unit === '%' ? `${100 * limit} %` : `${limit} ${unit}`;
  return { path, value, from: `default: ${why === '' ? '' : `${why}; `}${source}`, memory };
}

function ofLength(shaft: NonNullable<JobInput['shaft']>): Assumption[] {
  const { measured, slip, spacers } = shaft;
  return [
    ...(measured && measured.doubt === undefined ? [byRule('shaft.measured.doubt', 'tape', 'mm')] : []),
    ...(measured?.from === 'mock-up' && measured.mock_up === undefined
      ? [
          {
            path: 'shaft.measured.mock_up',
            value: 'as thick as the adapter',
            from: 'default: measure it',
            memory: false,
          },
        ]
      : []),
    ...(measured && spacers === undefined
      ? [{ path: 'shaft.spacers', value: '0 mm', from: 'default: nothing else between the faces', memory: false }]
      : []),
    ...(slip && slip.reserve === undefined ? [byRule('shaft.slip.reserve', 'reserve', 'mm')] : []),
    ...(slip?.engaged !== undefined && slip.least_engaged === undefined
      ? [byRule('shaft.slip.least_engaged', 'engagement', 'mm')]
      : []),
  ];
}

function ofAngles(angles: NonNullable<NonNullable<JobInput['shaft']>['angles']>, hasWheel: boolean): Assumption[] {
  const inLine = angles.line?.some(({ plan }) => plan === undefined) === true && angles.points === undefined;
  const forks =
    (angles.joints ?? []).length === 0 || angles.joints?.some(({ yokes }, i) => i > 0 && yokes === undefined);
  const plain = (path: string, value: string, from: string): Assumption => ({ path, value, from, memory: false });
  return [
    ...(angles.doubt === undefined ? [byRule('shaft.angles.doubt', 'inclinometer', 'deg')] : []),
    ...(inLine
      ? [plain('shaft.angles.line.plan', '0 deg', 'default: in line seen from above where it is left out')]
      : []),
    ...(angles.joints === undefined ? [plain('shaft.angles.joints', 'universal', 'default kind of every joint')] : []),
    ...(forks ? [plain('shaft.angles.joints.yokes', '0 deg', 'default: forks in line')] : []),
    ...(angles.torsional === undefined ? [byRule('shaft.angles.torsional', 'torsional', 'rad/s2')] : []),
    ...(angles.inertial === undefined ? [byRule('shaft.angles.inertial', 'inertial', 'rad/s2')] : []),
    ...(angles.shim?.wedge === undefined ? [byRule('shaft.angles.shim.wedge', 'wedge-most', 'deg')] : []),
    ...(hasWheel && angles.measures === undefined
      ? [plain('shaft.angles.measures', 'the far end', 'default: the shaft whose speed is wanted')]
      : []),
    ...(hasWheel && angles.ripple === undefined ? [byRule('shaft.angles.ripple', 'ripple', '%')] : []),
  ];
}

/** What was taken for granted about the shaft, in the order of the job file. */
export function assumedShaft({ shaft, wheel }: JobInput): Assumption[] {
  if (!shaft) return [];
  const arm =
    shaft.travel && shaft.travel.arm === undefined
      ? [
          {
            path: 'shaft.travel.arm',
            value: '0 mm',
            from: 'default: the joint stays where it is when the axle turns',
            memory: false,
          },
        ]
      : [];
  return [...ofLength(shaft), ...arm, ...(shaft.angles ? ofAngles(shaft.angles, wheel !== undefined) : [])];
}
