/** What is turned on one side, in order: roughing leaves metal everywhere; finishing cuts the register last. */
import type { Joint } from '../job/joint.ts';
import type { RegisterSpec } from '../parts/adapter-spec.ts';
import type { LengthUnits } from '../units/format.ts';
import { limitTexts } from '../units/limits.ts';
import type { WorkFace } from './hole-table.ts';
import { lengthsIn } from './lengths.ts';
import { roughLeft } from './route.ts';

/** The side finished first, the one after turning over, or the back of a part that is never let go. */
export type FinishingPart = 'first' | 'second' | 'only';

/** Least metal that a last cut takes off, on the diameter: less rubs and does not cut. Common practice. */
const leastCut = 0.2;

const shapeOf = ({ gender, at }: RegisterSpec): string =>
  gender === 'male' ? (at === 'rim' ? 'rim' : 'spigot') : at === 'rim' ? 'raised ring' : 'recess';

/** A diameter with metal left on: outside shapes larger, inside ones smaller. */
function rough({ gender, diameter }: RegisterSpec): number {
  return gender === 'male' ? diameter + roughLeft.diameter : diameter - roughLeft.diameter;
}

/** Roughing of a side. */
export function roughing(joint: Joint, face: WorkFace): string[] {
  const { outside, bore, registers, wheelSeat } = joint.adapterSpec;
  const register = registers[face];
  const mm = lengthsIn(joint.job.units);
  return [
    `Face clean, ${mm(roughLeft.face)} over the finished face.`,
    `Rim to ${mm(outside + roughLeft.diameter)}, as far as the jaws let you.`,
    ...(bore === null
      ? []
      : [
          `Drill and bore through to ${mm(bore - roughLeft.diameter)} (once is enough: the second side finds it done).`,
        ]),
    ...(register
      ? [
          `${face} register, ${shapeOf(register)}: rough to ${mm(rough(register))}, ${mm(roughLeft.face)} left on its ${register.gender === 'male' ? 'end and foot' : 'floor'}.`,
        ]
      : []),
    ...(wheelSeat?.face === face
      ? [`Seat of the wheel: rough to ${mm(wheelSeat.diameter + roughLeft.diameter)}.`]
      : []),
  ];
}

/** Limits in the units of the job. */
const limitsIn =
  (units: LengthUnits) =>
  ({ lower, upper, zone }: RegisterSpec['limits']): string => {
    const [mm, inch] = [limitTexts(lower, upper, 'mm'), limitTexts(lower, upper, 'in', 5)];
    const metric = `${mm.lower} to ${mm.upper} mm`;
    return units === 'mm' ? `${metric} (${zone})` : `${inch.lower} to ${inch.upper} in (${metric}, ${zone})`;
  };

function registerSteps(face: WorkFace, register: RegisterSpec, units: LengthUnits): string[] {
  const mm = lengthsIn(units);
  const { gender, depth, chamfer, undercut } = register;
  const isMale = gender === 'male';
  return [
    ...(isMale && undercut
      ? [
          `Foot of the ${shapeOf(register)}: groove ${mm(undercut.width)} wide, ${mm(undercut.depth)} deep, so that the faces meet first.`,
        ]
      : []),
    `Last of all the ${face} register, ${shapeOf(register)}: ${limitsIn(units)(register.limits)}, ${mm(depth)} ${isMale ? 'high' : 'deep'}. Stop ${mm(leastCut)} short on the diameter, let it cool, measure, then one cut to the middle of the limits.`,
    ...(chamfer > 0 ? [`Lead chamfer ${mm(chamfer)} by 45 degrees.`] : []),
  ];
}

/** Finishing of a side. The first one also gives the bore, and the rim as far as it can be reached. */
export function finishing(joint: Joint, face: WorkFace, part: FinishingPart): string[] {
  const { outside, bore, registers, wheelSeat, thickness, chamfer } = joint.adapterSpec;
  const register = registers[face];
  const mm = lengthsIn(joint.job.units);
  return [
    part === 'first' ? 'Face: a cleaning cut, square to the axis.' : `Face to ${mm(thickness)} between the faces.`,
    part === 'first'
      ? `Rim to ${mm(outside)}, as far as the jaws let you; chamfer ${mm(chamfer)}.`
      : `Rest of the rim to ${mm(outside)}; chamfer ${mm(chamfer)}.`,
    ...(part === 'first' && bore !== null
      ? [`Bore right through to ${mm(bore)}, edges broken. From here on it is what the dial runs on.`]
      : []),
    ...(wheelSeat?.face === face
      ? [`Seat of the wheel: ${limitsIn(joint.job.units)(wheelSeat.limits)}, ${mm(wheelSeat.height)} high.`]
      : []),
    ...(register ? registerSteps(face, register, joint.job.units) : []),
  ];
}
