/** Sizes asked for that leave nothing to make: the part would fall apart or turn inside out. Said at the key that would cure it. */
import type { AdapterSpec, RegisterSpec } from '../parts/adapter-spec.ts';
import { tan } from '../units/trig.ts';
import type { Trouble } from './trouble.ts';

/** The least metal, mm, that still makes one part of it. Whether it is enough is a check's business. */
const aSliver = 0.5;
/** Edge break where the bore meets a face, mm on the diameter. */
const boreEdges = 1;

const mm = (value: number) => `${Number(value.toFixed(3))} mm`;
const sides = ['driving', 'driven'] as const;

const recess = (register: RegisterSpec | null) =>
  register?.gender === 'female' && register.at === 'inner' ? register.depth : 0;

function tooThin({ thickness, registers, groups, wheelSeat, chamfer }: AdapterSpec): Trouble[] {
  const recesses = recess(registers.driving) + recess(registers.driven);
  const pockets = groups.flatMap(({ label, shape }) => {
    if (shape.kind !== 'passing' || shape.head.kind === 'surface') return [];
    const { head } = shape;
    const depth =
      head.kind === 'counterbore'
        ? head.depth
        : (head.diameter - shape.diameter) / 2 / tan((head.angle * Math.PI) / 360);
    return [{ what: `the pockets of the ${label}`, depth }];
  });
  const seat = wheelSeat ? [{ what: 'the wheel seat and its chamfer', depth: wheelSeat.height + chamfer }] : [];
  return [{ what: recesses > 0 ? 'the register recesses' : '', depth: recesses }, ...pockets, ...seat]
    .filter(({ depth }) => depth > 0 && thickness < depth + aSliver)
    .map(({ what, depth }) => ({
      path: 'adapter.thickness',
      message: `A part ${mm(thickness)} thick has no room for ${what}, ${mm(depth)} deep. Leave thickness on auto, or give more than ${mm(depth + aSliver)}.`,
    }));
}

function wrongDiameters({ outside, bore, registers, wheelSeat, chamfer }: AdapterSpec): Trouble[] {
  const troubles: Trouble[] = [];
  for (const side of sides) {
    const register = registers[side];
    if (!register) continue;
    const name = `${side} register (${mm(register.diameter)})`;
    // A raised ring needs a wall outside it; a spigot or recess needs a face round it.
    const around =
      register.at === 'inner' || register.gender === 'female'
        ? register.diameter + 2 * (chamfer + register.chamfer) + aSliver
        : register.diameter;
    if (outside < around - 1e-9)
      troubles.push({
        path: 'adapter.outside',
        message: `The outside (${mm(outside)}) leaves no metal round the ${name}. Use auto, or ${mm(Math.ceil(around))} or more.`,
      });
    const within =
      register.gender === 'male'
        ? register.diameter - 2 * Math.max(register.chamfer, register.undercut?.depth ?? 0) - boreEdges
        : register.diameter;
    if (bore !== null && register.at === 'inner' && bore > within - aSliver) {
      troubles.push({
        path: 'adapter.bore',
        message: `The bore (${mm(bore)}) cuts away the ${name}. Use auto, or less than ${mm(within - aSliver)}.`,
      });
    }
  }
  if (wheelSeat && outside < wheelSeat.diameter + 2 * chamfer + aSliver) {
    const least = Math.ceil(wheelSeat.diameter + 2 * chamfer + aSliver);
    troubles.push({
      path: 'adapter.outside',
      message: `The outside (${mm(outside)}) leaves no step for the wheel to sit on: its seat is ${mm(wheelSeat.diameter)}. Use auto, or ${mm(least)} or more.`,
    });
  }
  return troubles;
}

/** Every size of the design that cannot be made at all. Empty for a part that can be built, good or bad. */
export function impossibleSizes(spec: AdapterSpec): Trouble[] {
  return [...tooThin(spec), ...wrongDiameters(spec)];
}
