/** Run-out from dial readings around rim or face, as typed. */
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import type { Answer, Asked } from './answer.ts';
import { type DialBlock, flangeBlock } from './flange-block.ts';
import { equalAngles } from './harmonics.ts';
import { faceRunout, rimRunout } from './runout.ts';
import { optional, typedAngles, typedLength, typedLengths } from './typed.ts';
import { tidy, withDoubt } from './words.ts';

export interface RunoutTyped extends Asked {
  /** Readings, and behind them the doubt of each where it is not the usual one of a dial: "0, 0.02, 0.03, 0.01 +-0.002". */
  readonly rim?: string | undefined;
  readonly face?: string | undefined;
  /** Angles of the readings; equal steps from the x axis when left out. */
  readonly angles?: string | undefined;
  /** Where the face was read, from the axis. */
  readonly radius?: string | undefined;
}

/** Widest doubt of a reading, mm. */
const mostDoubt = 1;

/** Readings with the doubt that stands behind them. */
function withTypedDoubt(text: string, what: string, by: Asked): Lookup<{ readings: number[]; doubt?: number }> {
  const [list = '', said, more] = text.split(/\u00b1|\+\/-|\+-/);
  return andThen(typedLengths(list, what, by), (readings) => {
    if (said === undefined) return found({ readings });
    if (more !== undefined) return missing(`${what}: one doubt holds for all readings; write it once, at their end.`);
    return andThen(typedLength(said, `${what}, its doubt`, by), (doubt) =>
      doubt >= 0 && doubt <= mostDoubt
        ? found({ readings, doubt })
        : missing(`${what}: a dial is good to 0 to ${mostDoubt} mm; got +-${tidy(doubt)}.`),
    );
  });
}

export function answerRunout(typed: RunoutTyped): Lookup<Answer> {
  if (typed.rim === undefined && typed.face === undefined)
    return missing('Give dial readings around the rim, or around the face, or both.');
  const angles = optional(typed.angles, (text) => typedAngles(text, 'Angles'));
  if (!angles.ok) return angles;
  const outside = optional(typed.outside, (text) => typedLength(text, 'Outside diameter', typed));
  if (!outside.ok) return outside;
  const stated = optional(typed.radius, (text) => typedLength(text, 'Radius', typed));
  if (!stated.ok) return stated;
  const radius = stated.value ?? (outside.value === undefined ? undefined : outside.value / 2);
  if (stated.value !== undefined && outside.value !== undefined && stated.value > outside.value / 2)
    return missing(
      `The face cannot be read ${tidy(stated.value)} mm from the axis of a flange ${tidy(outside.value)} mm across: was a diameter typed for the radius?`,
    );
  const lines: string[] = [];
  const notes: string[] = [
    "Angles run counter-clockwise from the x axis, looking at the flange's own face; plus is towards the dial.",
    "The report of a joint tells them from the adapter's index mark, seen from the driven side.",
  ];
  const titles: string[] = [];
  const result: Record<string, unknown> = {};
  const dials: { rim?: DialBlock; face?: DialBlock } = {};
  for (const key of ['rim', 'face'] as const) {
    const text = typed[key];
    if (text === undefined) continue;
    const read = withTypedDoubt(text, `Dial around the ${key}`, typed);
    if (!read.ok) return read;
    const { readings } = read.value;
    const known = read.value.doubt === undefined ? {} : { doubt: read.value.doubt };
    const big = readings.find((reading) => Math.abs(reading) > 10);
    if (big !== undefined)
      return missing(
        `Dial around the ${key}: ${tidy(big)} mm is more than a dial reads. Were hundredths typed? Write 0.03 for three hundredths.`,
      );
    const dial = { readings, angles: angles.value ?? equalAngles(readings.length), ...known };
    dials[key] = {
      readings,
      ...known,
      angles: angles.value,
      ...(key === 'face' ? { radius: stated.value } : {}),
    };
    if (key === 'rim') {
      const rim = rimRunout(dial);
      if (!rim.ok) return rim;
      const { tir, eccentricity, ovality, remainder } = rim.value;
      result.rim = { readings, ...rim.value };
      titles.push(
        `Rim: ${tidy(tir)} mm total indicator reading; ${tidy(eccentricity.size)} mm off centre towards ${tidy(eccentricity.angle, 0)} degrees.`,
      );
      lines.push(
        `rim: eccentricity ${withDoubt(eccentricity.size, eccentricity.doubt)} towards ${tidy(eccentricity.angle, 1)} degrees`,
      );
      if (ovality !== null)
        lines.push(
          `rim: ovality ${withDoubt(ovality.size, ovality.doubt)}, widest at ${tidy(ovality.angle, 1)} degrees`,
        );
      lines.push(`rim: remainder ${tidy(remainder)} mm`);
      notes.push(...rim.value.notes);
      continue;
    }
    if (radius === undefined)
      return missing(
        'How far from the axis was the face read? Give the radius (or the outside diameter, when it was read at the rim).',
      );
    const face = faceRunout(dial, radius);
    if (!face.ok) return face;
    const { tir, tilt, saddle, remainder } = face.value;
    result.face = { radius, readings, ...face.value };
    titles.push(
      `Face: ${tidy(tir)} mm total indicator reading; tilted ${tidy(tilt.degrees, 4)} degrees, high at ${tidy(tilt.high, 0)} degrees.`,
    );
    lines.push(
      `face: tilt ${tidy(tilt.degrees, 4)} +-${tidy(tilt.doubt, 4)} degrees (${tidy(tilt.amplitude)} mm at radius ${tidy(radius)} mm), high at ${tidy(tilt.high, 1)} degrees`,
    );
    if (saddle !== null) lines.push(`face: saddle ${tidy(saddle.size)} mm`);
    lines.push(`face: remainder ${tidy(remainder)} mm`);
    notes.push(...face.value.notes);
  }
  return found({
    title: titles.join(' '),
    lines,
    notes: [...new Set(notes)],
    result,
    search: {},
    block: flangeBlock(typed.side, { runout: dials }),
  });
}
