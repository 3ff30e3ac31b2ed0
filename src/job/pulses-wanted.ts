/** How many pulses the controller expects of one turn of this shaft, from what the job tells of it. */
import { mmPerKm, mmPerMile, pulsesForTurn, pulsesOver } from '../formulas/pulses.ts';
import { rolledCircumference, tyreDoubt } from '../standards/tyre-size.ts';
import type { JobInput } from './schema.ts';
import type { TyreInput } from './tyre-field.ts';

type SensorInput = NonNullable<JobInput['sensor']>;
type RoadJob = Pick<JobInput, 'duty' | 'sensor'>;

/** How far one turn of the road wheels rolls, mm, and how it is known. */
export interface Rolled {
  readonly value: number;
  /** Half-width of its doubt, as a share; 0 where it was measured. */
  readonly doubt: number;
  readonly from: string;
}

/** What is known of the way from this shaft to the road. */
export interface Road {
  /** Turns of this shaft in a turn of the road wheels; null where nobody tells. */
  readonly axle: number | null;
  readonly rolled: Rolled | null;
}

/** What the controller expects. */
export interface PulsesWanted {
  /** In one turn of this shaft. */
  readonly perTurn: number;
  /** How that came about, a sentence. */
  readonly from: string;
  /** The number as the controller has it: "8000 pulses a km". */
  readonly asTold: string;
  readonly unit: SensorUnit;
  /** Pulses in the controller's own unit for one pulse in a turn of this shaft. */
  readonly perUnit: number;
}

/** Turn or distance that the controller counts over. */
export type SensorUnit = NonNullable<SensorInput['expects']>['per'];

export type Wanted =
  | { readonly ok: true; readonly value: PulsesWanted }
  | { readonly ok: false; readonly missing: string };

function rolledOf(tyre: TyreInput): Rolled {
  if (tyre.rolled !== undefined) return { value: tyre.rolled, doubt: 0, from: 'as rolled and measured' };
  if (tyre.radius !== undefined)
    return { value: 2 * Math.PI * tyre.radius, doubt: tyreDoubt, from: `radius of ${tyre.radius} mm, hub to ground` };
  const rolled = rolledCircumference(tyre.size ?? '');
  if (!rolled.ok) throw new Error(rolled.why);
  return { value: rolled.value, doubt: tyreDoubt, from: `size ${tyre.size}: 3.05 x free diameter, from memory` };
}

/** The way from this shaft to the road as it is now. */
export function roadOf({ duty, sensor }: RoadJob): Road {
  const axle = sensor?.axle ?? duty?.tyre?.ratio ?? null;
  const tyre = sensor?.tyre ?? (duty?.tyre ? { radius: duty.tyre.radius } : undefined);
  return { axle, rolled: tyre === undefined ? null : rolledOf(tyre) };
}

const unitWords: Readonly<Record<SensorUnit, string>> = {
  shaft: 'in a turn of this shaft',
  wheel: 'in a turn of the road wheels',
  engine: 'in a turn of the engine',
  km: 'a km',
  mile: 'a mile',
};

/** "60 pulses in a turn of this shaft", "8000 pulses a km". */
export const pulsesText = (pulses: string, unit: SensorUnit): string => `${pulses} pulses ${unitWords[unit]}`;

const round = (value: number) => Number(value.toPrecision(6));

/** What is missing where pulses are counted by the road wheels. */
const needsAxle = 'Give sensor.axle: turns of this shaft in one turn of the road wheels (the final drive).';

/** Pulses in a controller's unit for one pulse in a turn of this shaft; a sentence on what is missing. */
function perUnitOf(unit: SensorUnit, ratio: number | undefined, road: Road): number | string {
  const { axle, rolled } = road;
  if (unit === 'shaft') return 1;
  if (unit === 'engine')
    return ratio === undefined
      ? 'Give sensor.expects.ratio: turns of the engine in one turn of this shaft.'
      : 1 / ratio;
  if (axle === null) return needsAxle;
  if (unit === 'wheel') return axle;
  if (rolled === null) return 'Give sensor.tyre: the size on its wall (205/65R16), or { rolled: 2050 mm }.';
  return pulsesOver(1, axle, rolled.value, unit === 'km' ? mmPerKm : mmPerMile);
}

/** From the wheel before: the same pulses on the road, or in a turn of the road wheels where no tyre is known. */
function asBefore(was: NonNullable<SensorInput['was']>, road: Road): Wanted {
  const { teeth, ratio, tyre } = was;
  const { axle, rolled } = road;
  if (axle === null)
    return {
      ok: false,
      missing: `${needsAxle} A machine without road wheels, whose old wheel turned with this shaft: sensor.expects: { pulses: ${teeth} }.`,
    };
  const before = `${teeth} teeth before, turning ${ratio} times in a turn of the road wheels`;
  if (tyre === undefined) {
    return {
      ok: true,
      value: {
        perTurn: (teeth * ratio) / axle,
        from: `${before}, on the same tyres; this shaft turns ${axle} times.`,
        asTold: `${round(teeth * ratio)} pulses in a turn of the road wheels`,
        unit: 'wheel',
        perUnit: axle,
      },
    };
  }
  if (rolled === null)
    return { ok: false, missing: 'Give sensor.tyre too: the tyres that are on now, for those before are given.' };
  const old = rolledOf(tyre);
  const perKm = pulsesOver(teeth, ratio, old.value, mmPerKm);
  return {
    ok: true,
    value: {
      perTurn: pulsesForTurn(perKm, axle, rolled.value, mmPerKm),
      from: `${before}, on tyres that rolled ${round(old.value)} mm; those of now roll ${round(rolled.value)} mm and this shaft turns ${axle} times.`,
      asTold: `${round(perKm)} pulses a km`,
      unit: 'km',
      perUnit: pulsesOver(1, axle, rolled.value, mmPerKm),
    },
  };
}

/** What the controller expects of one turn of this shaft; null where the job tells nothing of it. */
export function pulsesWanted(job: RoadJob): Wanted | null {
  const { sensor } = job;
  const road = roadOf(job);
  const expects = sensor?.expects;
  if (expects === undefined) return sensor?.was === undefined ? null : asBefore(sensor.was, road);
  const { pulses, per, ratio } = expects;
  const perUnit = perUnitOf(per, ratio, road);
  if (typeof perUnit === 'string') return { ok: false, missing: perUnit };
  return {
    ok: true,
    value: {
      perTurn: pulses / perUnit,
      from: `as the controller is set up: ${pulsesText(String(round(pulses)), per)}.`,
      asTold: pulsesText(String(round(pulses)), per),
      unit: per,
      perUnit,
    },
  };
}
