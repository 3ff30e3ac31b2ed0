/** Numbers that the job left to the program and that a fabricator would want to know about. */
import type { JobInput } from '../job/schema.ts';
import { heldOnContour } from '../job/schema-sheet.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import { rimOf } from '../job/wheel-form.ts';
import type { Assumption } from '../model/finding.ts';
import { assumedDials } from './assumed-dials.ts';
import { assumedShaft } from './assumed-shaft.ts';
import { clearanceAsCut } from './wheel-bore.ts';

interface DefaultToName {
  readonly path: string;
  readonly applies: (job: JobInput) => boolean;
  readonly value: (job: JobInput) => string;
  readonly why: string;
}

const always = () => true;
const withTube = (job: JobInput) => job.shaft?.tube !== undefined;
const withWheel = (job: JobInput) => job.wheel !== undefined;

/** A clearance that is left open; how far a rim may be larger than it read comes on top of it. */
function clearanceWords({ wheel, sheet }: JobInput): string {
  if (!wheel) return '';
  const cut = heldOnContour(sheet, wheel.thickness);
  const clearance = clearanceAsCut(wheel.clearance, { diameter: 0, lower: 0, upper: 0 }, cut);
  return `${clearance} mm${wheel.on === 'adapter' || wheel.clearance !== 'auto' ? '' : ', and the doubt of the rim where that asks for more'}`;
}

const named: readonly DefaultToName[] = [
  {
    path: 'adapter.material',
    applies: always,
    value: (j) => j.adapter.material,
    why: 'default: plain structural steel',
  },
  {
    path: 'adapter.web',
    applies: always,
    value: (j) => `${j.adapter.web} mm`,
    why: 'default: least metal between features, common practice',
  },
  {
    path: 'adapter.setup',
    applies: (j) => j.adapter.runout === undefined,
    value: (j) => j.adapter.setup,
    why: 'default: turned over and indicated on the bore, common practice',
  },
  {
    path: 'adapter.driving.class',
    applies: always,
    value: (j) => j.adapter.driving.class,
    why: 'default property class',
  },
  {
    path: 'adapter.driven.class',
    applies: always,
    value: (j) => j.adapter.driven.class,
    why: 'default property class',
  },
  {
    path: 'duty.grade',
    applies: (j) => j.duty?.speed !== undefined,
    value: (j) => j.duty?.grade ?? '',
    why: 'default: ISO 21940-11 lists drive shafts under G 40 and under G 16',
  },
  {
    path: 'wheel.material',
    applies: withWheel,
    value: (j) => j.wheel?.material ?? '',
    why: 'default: low-carbon sheet',
  },
  { path: 'wheel.thickness', applies: withWheel, value: (j) => `${j.wheel?.thickness} mm`, why: 'default' },
  {
    path: 'wheel.rim',
    applies: (j) => j.wheel?.form === 'windows' && j.wheel.rim === undefined,
    value: (j) => `${j.wheel ? rimOf(j.wheel) : 0} mm`,
    why: "the sheet's thickness and 3 mm at least, common practice",
  },
  {
    path: 'wheel.clearance',
    // A bore that is turned to its register has no use for it.
    applies: (j) => j.wheel?.fit === 'auto' && (j.wheel.bore === 'auto' || j.wheel.on === 'adapter'),
    value: (j) => clearanceWords(j),
    why: 'default: bore over its register, on the diameter, by what the service may cut it smaller and 0.05 mm at least',
  },
  {
    path: 'shaft.tube.material',
    applies: withTube,
    value: (j) => j.shaft?.tube?.material ?? '',
    why: 'default: drawn steel tube, stiffness of plain steel',
  },
  ...(['near', 'far'] as const).flatMap((end): DefaultToName[] => [
    {
      path: `shaft.tube.${end}.stiffness`,
      applies: withTube,
      value: () => 'does not give',
      why: 'default: what carries this end is taken as stiff; a soft mount lowers the critical speed',
    },
    {
      path: `shaft.tube.${end}.reach`,
      applies: withTube,
      value: () => '0 mm',
      why: 'default: tube to the joint centre; a thin stub lowers the critical speed',
    },
  ]),
  {
    path: 'shaft.engine.gears',
    applies: (j) => j.shaft?.engine !== undefined,
    value: () => '[1]',
    why: 'default: direct drive only',
  },
  {
    path: 'sensor.gap',
    applies: (j) => j.wheel !== undefined && j.sensor !== undefined && sensorNeeds(j.sensor).gap?.isGiven === false,
    value: (j) => `${j.sensor && sensorNeeds(j.sensor).gap?.value} mm`,
    why: 'the usual gap of this kind of sensor; its own data sheet stands before it',
  },
  {
    path: 'print.holes',
    applies: always,
    value: (j) => `${j.print.holes} mm`,
    why: 'default: printed holes come out small; on the diameter, common practice',
  },
  {
    path: 'print.registers',
    applies: always,
    value: (j) => `${j.print.registers} mm`,
    why: 'default: the mock-up must drop in; on the diameter, common practice',
  },
  {
    path: 'sheet.kerf',
    applies: withWheel,
    value: (j) => String(j.sheet.kerf),
    why: 'default: outline drawn nominal, the service allows for its cut',
  },
];

/** The defaults that took effect, in the order of the job file. */
export function assumedDefaults(job: JobInput, given: ReadonlySet<string>): Assumption[] {
  const taken = named
    .filter((entry) => entry.applies(job) && !given.has(entry.path))
    .map((entry) => ({ path: entry.path, value: entry.value(job), from: entry.why, memory: false }));
  return [...taken, ...assumedDials(job), ...assumedShaft(job)];
}
