/** A register's size from readings across it, as typed. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { type Answer, type Asked, told } from './answer.ts';
import { flangeBlock } from './flange-block.ts';
import { sizeRegister } from './register.ts';
import { optional, typedAngles, typedLength, typedLengths, typedSize } from './typed.ts';
import { mm, withDoubt } from './words.ts';

export interface RegisterTyped extends Asked {
  /** Readings across a recess or bore; or over a spigot. One of the two. */
  readonly bore?: string | undefined;
  readonly spigot?: string | undefined;
  readonly directions?: string | undefined;
  readonly depth?: string | undefined;
  readonly jaw?: string | undefined;
}

export function answerRegister(typed: RegisterTyped): Lookup<Answer> {
  const gender = typed.bore === undefined ? 'male' : 'female';
  const text = typed.bore ?? typed.spigot;
  if (text === undefined)
    return missing(
      'Give the readings across the register: as a bore when it goes into the face, as a spigot when it stands out.',
    );
  if (typed.bore !== undefined && typed.spigot !== undefined)
    return missing('Give bore or spigot, not both: the register goes into the face or stands out of it.');
  const what = gender === 'female' ? 'Bore' : 'Spigot';
  const readings = typedLengths(text, what, typed);
  if (!readings.ok) return readings;
  const low = readings.value.find((reading) => reading <= 0);
  if (low !== undefined) return missing(`${what}: a size is above 0; got ${low}.`);
  const angles = optional(typed.directions, (list) => typedAngles(list, 'Directions'));
  if (!angles.ok) return angles;
  const depth = optional(typed.depth, (one) => typedSize(one, 'Depth', typed));
  if (!depth.ok) return depth;
  const outside = optional(typed.outside, (one) => typedSize(one, 'Outside diameter', typed));
  if (!outside.ok) return outside;
  const jaw = optional(typed.jaw, (one) => typedLength(one, 'Jaw flat', typed));
  if (!jaw.ok) return jaw;
  const sized = sizeRegister({
    readings: readings.value,
    angles: angles.value,
    instrument: typed.instrument,
    gender,
    jawFlat: jaw.value,
  });
  if (!sized.ok) return sized;
  const { size, ovality, notes } = sized.value;
  const rim = outside.value;
  if (rim !== undefined && size.value >= rim.value) {
    const slip =
      size.value < 2 * rim.value
        ? ` Was the radius of the outside typed? Twice ${rim.value} is ${mm(2 * rim.value)}.`
        : '';
    return missing(`The register (${mm(size.value)}) is not smaller than the rim (${mm(rim.value)}).${slip}`);
  }
  const name = gender === 'female' ? 'recess' : 'spigot';
  return found({
    title: `Register: ${name} ${told(size, typed)}.`,
    lines:
      ovality === null
        ? []
        : [
            `ovality ${withDoubt(ovality.size, ovality.doubt)}${ovality.angle === null ? ', direction not known' : `, widest at ${ovality.angle.toFixed(0)} degrees`}`,
          ],
    notes,
    result: { gender, ...sized.value },
    search: { register: size.value, ...(rim === undefined ? {} : { outside: rim.value }) },
    block: flangeBlock(typed.side, {
      outside: rim,
      register: { gender, diameter: size, depth: depth.value },
      instrument: typed.instrument,
    }),
  });
}
