/** "Tubes that would do": stock tubes in place of the one in the job, as sentences for both reports. */
import { torqueOf, type WithDuty } from '../rotor/joint-torque.ts';
import { madeOf, type TubeChoice, tubesThatDo } from '../rotor/shaft-choices.ts';
import { criticalSpeed, goodShare, longestShaft, shaftMass, shaftOf, type WithShaft } from '../rotor/shaft-whirl.ts';
import { formatMass, type LengthUnits } from '../units/format.ts';
import { sizeText } from './numbers.ts';

export interface TubesReport {
  /** What they are held against. */
  readonly lead: string;
  /** A tube each, cheapest first. */
  readonly tubes: readonly string[];
  /** What to mind. */
  readonly note: string;
}

/** So many are told: a shop has some of them. */
const mostTold = 6;

const percent = (share: number): string => `${Math.round(100 * share)} %`;
const rpm = (speed: number): string => `${Math.round(speed)} rpm`;

function tubeLine(choice: TubeChoice, longest: number | null, units: LengthUnits): string {
  const { row, metal, price, critical, share, mass, torsion } = choice;
  const parts = [
    `critical at ${rpm(critical)}, ${percent(share)} used`,
    formatMass(mass, units),
    ...(torsion === null ? [] : [`${percent(torsion)} of its strength used`]),
    price,
    ...(longest === null ? [] : [`good up to ${sizeText(longest, units, 0)}`]),
  ];
  return `${sizeText(row.outside, units, 1)} x ${sizeText(row.wall, units)}, ${metal.name}: ${parts.join(', ')}`;
}

/** Null where the job describes no tube or no speed. */
export function tubesReport(joint: WithShaft & WithDuty, units: LengthUnits): TubesReport | null {
  const shaft = shaftOf(joint);
  const speed = joint.job.duty?.speed;
  if (!shaft || speed === undefined) return null;
  const torque = torqueOf(joint)?.value ?? null;
  const choices = tubesThatDo(shaft, speed, torque);
  const longest = longestShaft(shaft, speed);
  const own = `The job's own tube, ${sizeText(shaft.size.outside, units, 1)} x ${sizeText(shaft.size.wall, units)}: critical at ${rpm(criticalSpeed(shaft))}, ${formatMass(shaftMass(shaft), units)}${longest === null ? '' : `, good up to ${sizeText(longest, units, 0)}`}.`;
  const held = `${rpm(speed)} at most ${percent(goodShare)} of the critical speed, ${sizeText(shaft.length, units, 0)} from joint to joint, same forks and mounts${torque === null ? '; strength not looked at, no torque is given' : `, ${Math.round(torque)} N.m`}`;
  const widest = choices.reduce<TubeChoice | null>(
    (best, choice) => (best && best.share <= choice.share ? best : choice),
    null,
  );
  const most =
    widest === null
      ? ''
      : `Most to spare in speed: ${sizeText(widest.row.outside, units, 1)} x ${sizeText(widest.row.wall, units)}, ${widest.metal.name}, ${percent(widest.share)} used. `;
  return {
    lead:
      choices.length === 0
        ? `${own} No stock tube does in one piece (${held}): shorten the shaft, or split it with a centre bearing.`
        : `${own} Stock tubes that do (${held}), cheapest first, then lightest:`,
    tubes: choices
      .slice(0, mostTold)
      .map((choice) => tubeLine(choice, longestShaft(madeOf(shaft, choice), speed), units)),
    note: `${most}Stock sizes and price classes are common practice, from memory: ask the shaft shop. A larger tube must clear floor, exhaust and cables through the whole travel, ${sizeText(25, units, 0)} at least (common practice). Carbon fibre: only its maker can state the speed.`,
  };
}
