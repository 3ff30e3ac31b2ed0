/** What was typed for the vibration finder: at what speed, how often, when it is felt, and what the shaft hangs on. */
import { shaftSpeedOnRoad } from '../formulas/orders.ts';
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { rolledCircumference } from '../standards/tyre-size.ts';
import type { Dimension } from '../units/dimensions.ts';
import { parseQuantity } from '../units/quantity.ts';
import { listed } from '../units/sentence.ts';
import type { Asked } from './answer.ts';
import { optional, typedCount, typedLength } from './typed.ts';
import { type Higher, highers, type When, whens } from './vibration-suspects.ts';
import { tidy } from './words.ts';

export interface VibrationTyped extends Asked {
  /** "1800 rpm" of the shaft, "2600 rpm engine", "90 km/h", or a band: "1700 to 1900 rpm". */
  readonly felt?: string | undefined;
  /** "60 Hz", "60 +-2 Hz" or "3600 rpm". */
  readonly frequency?: string | undefined;
  /** Shakes a turn of the shaft, where the meter gives them. */
  readonly order?: string | undefined;
  readonly when?: string | undefined;
  readonly higher?: string | undefined;
  readonly axle?: string | undefined;
  /** Size on the wall, or rolling radius. */
  readonly tyre?: string | undefined;
  readonly gear?: string | undefined;
  readonly cylinders?: string | undefined;
  readonly critical?: string | undefined;
}

/** A number and how far it may be off, in its own unit. */
export interface Known {
  readonly value: number;
  readonly doubt: number;
}

export interface Felt {
  /** Speed of the shaft, rpm; null when only the order is known. */
  readonly speed: Known | null;
  /** Hz */
  readonly frequency: Known | null;
  /** Shakes a turn of the shaft. */
  readonly order: Known | null;
  readonly when: When | null;
  readonly higher: Higher | null;
  readonly axle: number | undefined;
  readonly gear: number | undefined;
  readonly cylinders: number | undefined;
  /** rpm */
  readonly critical: number | null;
  /** What was taken for want of a better figure. */
  readonly assumed: readonly string[];
}

/** How far off a tachometer, a speedometer with a tyre, an order and a telephone's meter usually are. Common practice. */
const tachometer = 0.02;
const speedometer = 0.04;
const orderMeter = 0.05;
const frequencyMeter = 1;

export function readFelt(typed: VibrationTyped): Lookup<Felt> {
  const axle = optional(typed.axle, (text) => number(text, 'ratio', '--axle', 0.2, 60));
  if (!axle.ok) return axle;
  const gear = optional(typed.gear, (text) => number(text, 'ratio', '--gear', 0.1, 60));
  if (!gear.ok) return gear;
  const cylinders = optional(typed.cylinders, (text) => typedCount(text, '--cylinders', 1, 16));
  if (!cylinders.ok) return cylinders;
  const critical = optional(typed.critical, (text) => number(text, 'speed', '--critical', 100, 200_000));
  if (!critical.ok) return critical;
  const when = word(typed.when, whens, '--when');
  if (!when.ok) return when;
  const higher = word(typed.higher, highers, '--higher');
  if (!higher.ok) return higher;
  const rolled = optional(typed.tyre, (text) => rolledBy(text, typed));
  if (!rolled.ok) return rolled;
  const speed = optional(typed.felt, (text) =>
    feltSpeed(text, { axle: axle.value, gear: gear.value, rolled: rolled.value }),
  );
  if (!speed.ok) return speed;
  const frequency = optional(typed.frequency, typedFrequency);
  if (!frequency.ok) return frequency;
  const order = optional(typed.order, typedOrder);
  if (!order.ok) return order;
  if (order.value !== undefined && frequency.value !== undefined)
    return missing('Give --frequency or --order, one of the two: with --felt the one follows from the other.');
  if (speed.value === undefined && order.value === undefined)
    return missing(
      'Give --felt, the speed at which it is felt: "1800 rpm" of the shaft, "2600 rpm engine" or "90 km/h".',
    );
  const shaft = speed.value ?? null;
  return found({
    speed: shaft,
    frequency: frequency.value ?? null,
    order: order.value ?? (shaft && frequency.value ? orderFrom(frequency.value, shaft) : null),
    when: when.value ?? null,
    higher: higher.value ?? null,
    axle: axle.value,
    gear: gear.value,
    cylinders: cylinders.value,
    critical: critical.value ?? null,
    assumed: assumedOf(typed),
  });
}

/** Shakes a turn, with the doubts of both readings. */
function orderFrom(frequency: Known, speed: Known): Known {
  const value = (60 * frequency.value) / speed.value;
  return { value, doubt: value * Math.hypot(frequency.doubt / frequency.value, speed.doubt / speed.value) };
}

function assumedOf({ felt, frequency, order }: VibrationTyped): string[] {
  const isBand = felt !== undefined && band.test(felt);
  return [
    ...(felt === undefined || isBand
      ? []
      : [
          road.test(felt) ? `the road speed good to ${100 * speedometer} %` : `the speed good to ${100 * tachometer} %`,
        ]),
    ...(frequency === undefined || frequency.includes('+-') ? [] : [`the frequency good to ${frequencyMeter} Hz`]),
    ...(order === undefined ? [] : [`the order good to ${100 * orderMeter} %`]),
  ];
}

function number(text: string, dimension: Dimension, what: string, least: number, most: number): Lookup<number> {
  const read = parseQuantity(text, dimension);
  if (!read.ok) return missing(`${what}: ${read.why}`);
  return read.value >= least && read.value <= most
    ? found(read.value)
    : missing(`${what} is ${least} to ${most}; got ${tidy(read.value)}.`);
}

function word<W extends string>(text: string | undefined, words: readonly W[], what: string): Lookup<W | undefined> {
  if (text === undefined) return found(undefined);
  const known = words.find((one) => one === text.trim().toLowerCase());
  return known === undefined ? missing(`${what} is one of ${listed(words)}; got ${text.slice(0, 30)}.`) : found(known);
}

/** How far one turn rolls, mm: from the size on the wall, or from a rolling radius. */
function rolledBy(text: string, by: Asked): Lookup<number> {
  if (/[/x×]/i.test(text.replace(/\d\/\d+\s*(in|")/i, ''))) return rolledCircumference(text);
  const radius = typedLength(text, '--tyre', by);
  if (!radius.ok) return radius;
  return radius.value >= 30 && radius.value <= 2400
    ? found(2 * Math.PI * radius.value)
    : missing(
        `--tyre is a size (205/65R16) or a rolling radius, hub to ground, of 30 to 2400 mm; got ${tidy(radius.value)} mm.`,
      );
}

interface Ratios {
  readonly axle: number | undefined;
  readonly gear: number | undefined;
  readonly rolled: number | undefined;
}

const road = /km\/?h|kph|mph|mi\/h|m\/s/i;
const band = /\d\s*[a-z/]*\s*(?:\bto\b|\.\.)\s*\d/i;

/** Speed of the shaft, from its own, the engine's or the road's; a band stands for its middle. */
function feltSpeed(text: string, known: Ratios): Lookup<Known> {
  const [low = '', high] = text.split(/\bto\b|\.\./i).map((part) => part.trim());
  if (high === undefined) return oneSpeed(low, known);
  const unit = /[a-z/][a-z/ ]*$/i.exec(high)?.[0] ?? '';
  const from = oneSpeed(/[a-z]/i.test(low) ? low : `${low} ${unit}`, known);
  if (!from.ok) return from;
  const to = oneSpeed(high, known);
  if (!to.ok) return to;
  if (to.value.value <= from.value.value) return missing('--felt: a band runs from its lower to its higher speed.');
  const value = (from.value.value + to.value.value) / 2;
  return found({ value, doubt: Math.max((to.value.value - from.value.value) / 2, from.value.doubt) });
}

function oneSpeed(text: string, { axle, gear, rolled }: Ratios): Lookup<Known> {
  if (road.test(text)) {
    const read = number(text, 'velocity', '--felt', 0.3, 150);
    if (!read.ok) return read;
    if (axle === undefined || rolled === undefined)
      return missing(
        'A road speed needs --tyre (205/65R16, or the rolling radius) and --axle (its ratio, such as 3.73).',
      );
    const value = shaftSpeedOnRoad(read.value, rolled, axle);
    return found({ value, doubt: value * speedometer });
  }
  const isEngine = /\bengine\s*$/i.test(text);
  const read = number(text.replace(/\b(engine|shaft)\s*$/i, '').trim(), 'speed', '--felt', 10, 100_000);
  if (!read.ok) return read;
  if (isEngine && gear === undefined)
    return missing('An engine speed needs --gear: engine turns for one turn of the shaft in the gear it was felt in.');
  const value = isEngine ? read.value / (gear ?? 1) : read.value;
  return found({ value, doubt: value * tachometer });
}

/** "60 Hz", "60 +-2 Hz", "3600 rpm". */
function typedFrequency(text: string): Lookup<Known> {
  const [left = '', right] = text.split('+-').map((part) => part.trim());
  const unit = /[a-z/]+$/i.exec(right ?? left)?.[0] ?? 'Hz';
  const perMinute = /rpm|min/i.test(unit);
  const read = (part: string): Lookup<number> => {
    const bare = part.replace(/[a-z/\s]+$/i, '');
    const value = Number(bare);
    return bare !== '' && Number.isFinite(value)
      ? found(perMinute ? value / 60 : value)
      : missing(`--frequency: write 60 Hz, 60 +-2 Hz or 3600 rpm; got ${text.slice(0, 30)}.`);
  };
  if (!/^(hz|rpm|1\/min|\/min|cpm)$/i.test(unit))
    return missing(`--frequency is in Hz or rpm; got ${unit.slice(0, 20)}.`);
  const value = read(left);
  if (!value.ok) return value;
  if (!(value.value >= 0.5 && value.value <= 5000))
    return missing(`--frequency is 0.5 to 5000 Hz; got ${tidy(value.value)} Hz.`);
  if (right === undefined) return found({ value: value.value, doubt: frequencyMeter });
  const doubt = read(right);
  if (!doubt.ok) return doubt;
  return doubt.value > 0 && doubt.value < value.value
    ? found({ value: value.value, doubt: doubt.value })
    : missing('--frequency: what stands after +- is above 0 and less than the frequency.');
}

function typedOrder(text: string): Lookup<Known> {
  const value = Number(text.replace(/x\s*$/i, '').trim());
  return text.trim() !== '' && Number.isFinite(value) && value >= 0.02 && value <= 200
    ? found({ value, doubt: orderMeter * value })
    : missing(`--order is shakes for one turn of the shaft, 0.02 to 200; got ${text.slice(0, 30)}.`);
}
