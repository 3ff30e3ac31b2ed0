/**
 * What moves the teeth towards the sensor and away from it: run-out, play, float, mounts and heat. mm.
 *
 * Radial sensing: across the axis. Axial sensing: along it. Whoever sets the gap does not know where in its play the shaft hangs, so a
 * play counts whole, either way. Left out: the stretch of a spinning wheel (thousandths), a bracket that bends.
 */
import { type Link, stackOf } from '../formulas/chain.ts';
import type { Joint } from '../job/joint.ts';
import { widthRadius } from '../parts/tone-wheel.ts';
import { flatness, flatnessTolerances, usualFlatness } from '../standards/flatness.ts';
import { findMaterial } from '../standards/materials.ts';
import { must } from '../standards/table.ts';
import { linksTo } from './links.ts';
import { tiltLinks } from './tilt.ts';

/** The temperature at which the gap is set, degrees C. */
const setAt = 20;

export interface GapMoves {
  /** How far the gap may close or open, at worst and likely, without heat. */
  readonly worst: number;
  readonly likely: number;
  readonly links: readonly Link[];
  /** How much heat opens the gap (minus: closes it), cold and hot; null where no temperatures are given or it is not reckoned. */
  readonly heat: { readonly cold: number; readonly hot: number; readonly how: string } | null;
  /** Keys of the job that were not given and count as nothing. */
  readonly unread: readonly string[];
}

function playLink(id: string, what: string, play: number | undefined, key: string): Link[] {
  if (play === undefined || play === 0) return [];
  return [
    {
      id,
      what,
      least: 0,
      most: play,
      angle: null,
      doubt: 0,
      source: `given in the job (${key})`,
      memory: false,
      cure: `less of it (${key})`,
    },
  ];
}

/** A leaning wheel's rim goes to and fro by its slope times the radius. */
function wobble(joint: Joint, radius: number): Link[] {
  const on = joint.job.wheel?.on;
  const isBefore = ({ id }: Link) =>
    on === 'driven' || id === 'driving-face' || (on === 'adapter' && id === 'parallelism');
  return tiltLinks(joint)
    .filter((link) => isBefore(link) || link.id === 'as-bolted-up')
    .map((link) => ({ ...link, least: link.least * radius, most: link.most * radius, doubt: link.doubt * radius }));
}

/** Sheet that is not flat: its face goes to and fro by half of the distance of the two planes that it lies between. */
function flatnessLink({ job, wheelSpec }: Joint): Link[] {
  const given = job.wheel?.flatness;
  const table = wheelSpec ? flatness(wheelSpec.outside) : null;
  const size = given ?? (table?.ok ? table.value : 0);
  if (size === 0) return [];
  return [
    {
      id: 'wheel-flatness',
      what: 'wheel that is not flat',
      least: 0,
      most: size / 2,
      angle: null,
      doubt: 0,
      source:
        given === undefined
          ? `${flatnessTolerances.edition}, class ${usualFlatness}, as usual on drawings of sheet (common practice)`
          : 'given in the job (wheel.flatness)',
      memory: false,
      cure: 'a wheel straightened and measured on a surface plate (wheel.flatness)',
    },
  ];
}

/**
 * How far the face of the wheel goes to and fro at a radius, either way and at worst, mm: what makes it lean, and sheet that is not flat,
 * as in the sum of the gap. Once a turn or more often: nobody knows the form of the warp, so its reach is what counts. 0 without a wheel.
 */
export const faceWobble = (joint: Joint, radius: number): number =>
  joint.wheelSpec ? stackOf([...wobble(joint, radius), ...flatnessLink(joint)]).worst : 0;

/**
 * Heat along the axis: from the driving flange's face to the face that is read, adapter and wheel grow against what carries the sensor.
 * What lies behind the flange (shaft, bearing, housing) is not known. Without a bracket nobody says from which side the sensor looks:
 * then the gap is taken to close, hot and cold.
 */
function axialHeat(joint: Joint): GapMoves['heat'] {
  const temperature = joint.job.duty?.temperature;
  const { wheelMaterial: wheel, wheelSpec, wheelZ, adapterMaterial } = joint;
  if (!temperature || !wheel || !wheelSpec || wheelZ === null) return null;
  const carrier = joint.job.sensor?.carrier;
  const housing = carrier === undefined ? null : must(findMaterial(carrier));
  const from = joint.job.bracket?.towards;
  // The face looks away from the driving flange, or back at it: growth then opens.
  const face = from === 'driving' ? wheelZ : wheelZ + wheelSpec.thickness;
  const inAdapter = Math.min(Math.max(face, 0), joint.adapterSpec.thickness);
  const grows = adapterMaterial.thermalExpansion * inAdapter + wheel.thermalExpansion * (face - inAdapter);
  const apart = (at: number) => (grows - (housing?.thermalExpansion ?? 0) * face) * (at - setAt);
  const opens = (at: number) =>
    from === undefined ? 0 - Math.abs(apart(at)) : (from === 'driving' ? apart(at) : 0 - apart(at)) + 0;
  const against = housing ? `against ${housing.name}` : 'against a carrier that does not (sensor.carrier is not given)';
  const side = from === undefined ? '; taken to close the gap, for no bracket says from which side it is read' : '';
  const how = `${adapterMaterial.name} and the wheel grow over ${Math.abs(face).toFixed(1)} mm from the driving flange's face, ${against}${side}; shaft and bearing behind that flange are not known`;
  return { cold: opens(temperature.cold), hot: opens(temperature.hot), how };
}

function heatOf(joint: Joint, radius: number, gap: number): GapMoves['heat'] {
  const temperature = joint.job.duty?.temperature;
  const wheel = joint.wheelMaterial;
  if (!temperature || !wheel) return null;
  const { cold, hot } = temperature;
  const carrier = joint.job.sensor?.carrier;
  const housing = carrier === undefined ? null : must(findMaterial(carrier));
  const opens = (at: number) =>
    ((housing?.thermalExpansion ?? 0) * (radius + gap) - wheel.thermalExpansion * radius) * (at - setAt);
  const how = housing
    ? `${wheel.name} wheel in ${housing.name}, both at the same temperature`
    : 'the wheel grows, what carries the sensor does not (sensor.carrier is not given)';
  return { cold: opens(cold), hot: opens(hot), how };
}

/** What moves the gap of the job's sensor; null without a wheel or a sensor. `gap` as set, mm. */
export function gapMoves(joint: Joint, gap: number): GapMoves | null {
  const { wheelSpec, job } = joint;
  const { sensor } = job;
  if (!wheelSpec || !sensor) return null;
  const isAxial = sensor.direction === 'axial';
  const radius = isAxial ? widthRadius(wheelSpec) : wheelSpec.outside / 2;
  const play = isAxial
    ? playLink('float', 'axial float of the shaft', sensor.float, 'sensor.float')
    : playLink('bearing-play', 'play of the bearings', sensor.bearing_play, 'sensor.bearing_play');
  const travel = playLink('travel', 'travel of mounts and suspension', sensor.travel, 'sensor.travel');
  const own = isAxial ? [...wobble(joint, radius), ...flatnessLink(joint)] : linksTo(joint, 'teeth');
  const links = [...own, ...play, ...travel];
  const { worst, likely } = stackOf(links);
  const playKey = isAxial ? 'float' : 'bearing_play';
  return {
    worst,
    likely,
    links,
    heat: isAxial ? axialHeat(joint) : heatOf(joint, radius, gap),
    unread: [
      ...([playKey, 'travel'] as const).filter((key) => sensor[key] === undefined).map((key) => `sensor.${key}`),
      ...(job.duty?.temperature ? [] : ['duty.temperature']),
    ],
  };
}
