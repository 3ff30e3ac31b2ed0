/** The few sizes of a joint that a fabricator asks for first. */
import type { Joint } from '../job/joint.ts';
import { formatAngle, formatMass, type LengthUnits } from '../units/format.ts';
import { withinTurn } from '../units/turn.ts';
import { bracketLines } from './bracket-lines.ts';
import { dowelLine } from './dowel-lines.ts';
import { limitsText, sizeText } from './numbers.ts';

export interface KeyNumber {
  readonly label: string;
  readonly value: string;
  /** Where it comes from, or what it means; may be empty. */
  readonly note: string;
}

/** The part of a joint that key numbers are read from. */
export type JointWithNumbers = Pick<
  Joint,
  | 'adapterSpec'
  | 'adapterMaterial'
  | 'adapterMass'
  | 'wheel'
  | 'wheelMass'
  | 'clocking'
  | 'thickness'
  | 'turnOver'
  | 'screws'
> &
  Pick<Joint, 'fits' | 'dowels' | 'wheelBore' | 'bracket'>;

/** A demand may belong to one side or to the part as a whole. */
const sideText = (side: string): string => (['driving', 'driven', 'wheel'].includes(side) ? `, ${side} side` : '');

function thicknessLine({ thickness }: JointWithNumbers, units: LengthUnits): KeyNumber {
  const governs = thickness.demands[0];
  const least = `least ${sizeText(thickness.least, units)}${governs ? `: ${governs.what}${sideText(governs.side)}` : ''}`;
  const note = thickness.mode === 'auto' ? `chosen; ${least}` : `as given; ${least}`;
  return { label: 'Adapter thickness', value: sizeText(thickness.thickness, units), note };
}

function clockingLine({ clocking }: JointWithNumbers, units: LengthUnits): KeyNumber {
  const web =
    clocking.web === null
      ? 'the two patterns cannot meet'
      : `smallest web between the patterns ${sizeText(clocking.web, units)}`;
  const best =
    clocking.best.web === null
      ? ''
      : `; best possible ${sizeText(clocking.best.web, units)} at ${formatAngle(clocking.best.angle)}`;
  const how = clocking.mode === 'auto' ? 'chosen' : 'as given';
  return {
    label: 'Clocking',
    // Angles run one way, 0 to 360, as on the faces and the drawing, however they were typed.
    value: formatAngle(withinTurn(clocking.angle)),
    note: `${how}; ${web}${clocking.mode === 'given' ? best : ''}`,
  };
}

function registerLine(joint: JointWithNumbers, side: 'driving' | 'driven', units: LengthUnits): KeyNumber[] {
  const register = joint.adapterSpec.registers[side];
  if (register === null) return [];
  const { lower, upper, zone } = register.limits;
  const shape = register.gender === 'male' ? 'spigot' : 'recess';
  const fit = joint.fits?.[side];
  const size = (mm: number) => sizeText(mm, units, 3);
  const play = fit
    ? `; clearance ${size(fit.least)} to ${size(fit.greatest)}${fit.least < 0 ? ' (negative: interference)' : ''}`
    : '';
  const made = fit ? `; ${fit.method}; gauge: ${fit.gauge} (${fit.source})` : '';
  return [
    {
      label: `Register, ${side} side`,
      value: `${shape} ${limitsText(lower, upper, units)}`,
      note: `turn between these limits (${zone}), ${sizeText(register.depth, units)} ${register.gender === 'male' ? 'high' : 'deep'}${play}${made}`,
    },
  ];
}

/** A bore that is turned to its register after cutting. */
function wheelBoreLine({ wheelBore }: JointWithNumbers, units: LengthUnits): KeyNumber[] {
  if (!wheelBore) return [];
  const { limits, least, greatest, method, gauge, source, stock } = wheelBore;
  const size = (mm: number) => sizeText(mm, units, 3);
  return [
    {
      label: 'Wheel bore',
      value: limitsText(limits.lower, limits.upper, units),
      note: `cut ${sizeText(stock, units)} undersize, then turn between these limits (${limits.zone}); clearance ${size(least)} to ${size(greatest)}; ${method}; gauge: ${gauge} (${source})`,
    },
  ];
}

type HoleGroup = Joint['adapterSpec']['groups'][number];

/** Drill, tap and depths of a group of holes in the adapter. Shop names of drills are said where they were looked up. */
function holesLine(joint: JointWithNumbers, group: HoleGroup, units: LengthUnits): KeyNumber[] {
  const { shape, positions, side, id } = group;
  if (shape.kind === 'dowel') return dowelLine(joint, side, units);
  const { thread = '', drills } = joint.screws.find((screws) => screws.id === id) ?? {};
  const size = shape.kind === 'tapped' ? shape.tapDrill : shape.diameter;
  const or = drills === undefined || drills.orDrill === '' ? '' : ` (or ${drills.orDrill})`;
  const drill = `drill ${drills === undefined || drills.drill === '' ? sizeText(size, units) : drills.drill}${or}`;
  return [
    {
      label: `${shape.kind === 'tapped' ? 'Tapped' : 'Clear'} holes, ${side}`,
      value: `${positions.length} x ${shape.kind === 'tapped' ? shape.thread : sizeText(size, units)}`,
      note:
        shape.kind === 'tapped'
          ? `${drill} ${depthText(shape, units)}`
          : `${drill}${thread === '' ? '' : `, for ${thread}`}`,
    },
  ];
}

function depthText(
  { threadDepth, drillDepth }: { threadDepth: number; drillDepth: number | null },
  units: LengthUnits,
): string {
  if (drillDepth === null) return 'right through, thread right through';
  return `${sizeText(drillDepth, units)} deep at full diameter, full thread ${sizeText(threadDepth, units)} deep`;
}

/** Key numbers in the order in which they are wanted at the bench. */
export function keyNumbers(joint: JointWithNumbers, units: LengthUnits): KeyNumber[] {
  const { adapterSpec, adapterMaterial, adapterMass, wheel, wheelMass, turnOver } = joint;
  const { outside, bore, flats } = adapterSpec;
  return [
    thicknessLine(joint, units),
    clockingLine(joint, units),
    { label: 'Adapter outside', value: sizeText(outside, units), note: '' },
    bore === null
      ? { label: 'Centre bore', value: 'none', note: 'nothing to indicate on after the part is turned over' }
      : {
          label: 'Centre bore',
          value: sizeText(bore, units),
          note: 'indicate on it after the part is turned over',
        },
    ...registerLine(joint, 'driving', units),
    ...registerLine(joint, 'driven', units),
    ...adapterSpec.groups.flatMap((group) => holesLine(joint, group, units)),
    ...(flats === null
      ? []
      : [
          {
            label: 'Vise flats',
            value: `${sizeText(flats.across, units)} across`,
            note: `at ${formatAngle(flats.angle)}`,
          },
        ]),
    {
      label: 'Turn-over error',
      value: sizeText(turnOver.tir, units, 3),
      note: `total indicator reading between the registers; ${turnOver.from}`,
    },
    { label: 'Adapter mass', value: formatMass(adapterMass.mass, units), note: adapterMaterial.name },
    ...wheelBoreLine(joint, units),
    ...(wheel !== null && wheelMass !== null
      ? [
          {
            label: 'Wheel mass',
            value: formatMass(wheelMass.mass, units),
            note: `${wheel.material.name}, ${sizeText(wheel.thickness, units)} thick`,
          },
        ]
      : []),
    ...bracketLines(joint, units),
  ];
}
