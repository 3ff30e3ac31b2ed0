/** Can the sensor follow: pulses at the highest and the lowest speed, the speed of the tips, and heat. */
import { roadSpeed, rpmAtFrequency, rpmAtTipSpeed, tipSpeed, toothFrequency } from '../formulas/pulses.ts';
import type { Joint } from '../job/joint.ts';
import { roadOf } from '../job/pulses-wanted.ts';
import { type SensorNeeds, sensorNeeds } from '../job/sensor-needs.ts';
import { toothWords } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { closestPlaces, hasWindows, leastSpan, type ToneWheelSpec, widthRadius } from '../parts/tone-wheel.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { plain, sourced } from './words.ts';

const feature = 'wheel-outline';
/** A weak signal is still read by many inputs down to this share of the speed that is named. Common practice. */
const mayStillRead = 0.5;

const hertz = (value: number) => `${Number(value.toPrecision(4))} Hz`;
const rpm = (value: number) => `${Number(value.toPrecision(3))} rpm`;

/** What passes the sensor at the speed that counts. */
const passing = (spec: ToneWheelSpec) => (hasWindows(spec) ? 'bars' : 'tips');

interface Bound {
  readonly value: number;
  readonly isOwn: boolean;
  readonly who: string;
  readonly source: string;
}

function fastest(joint: Joint, spec: ToneWheelSpec, needs: SensorNeeds): Finding[] {
  const { duty, sensor } = joint.job;
  const own = needs.of('frequencyMost');
  const bounds: Bound[] = [
    ...(own ? [{ ...own, who: 'the sensor', source: sourced(own.source, own.memory) }] : []),
    ...(sensor?.controller
      ? [{ value: sensor.controller.most, isOwn: true, who: "the controller's input", source: 'as given in the job' }]
      : []),
  ].sort((a, b) => a.value - b.value);
  const [bound] = bounds;
  const words = toothWords(spec);
  const common = { code: 'sensor-frequency', feature, title: 'pulses a second at the highest speed' };
  if (duty?.speed === undefined) {
    const why = `${spec.teeth} ${words.teeth} make ${hertz(toothFrequency(spec.teeth, 1000))} at 1000 rpm.`;
    const missing = 'Give duty.speed, the highest speed this shaft ever turns.';
    return [notAssessed({ ...common, why, missing, source: 'f = N n / 60' })];
  }
  const value = toothFrequency(closestPlaces(spec), duty.speed);
  const beside = leastSpan(spec) < 1 ? ', and twice as close beside the extra one' : '';
  if (!bound) {
    const why = `${spec.teeth} ${words.teeth}${beside} at ${duty.speed} rpm; a coil has no limit of its own, its voltage and the controller's input have.`;
    return [
      stated(
        { ...common, title: `${common.title}: ${hertz(value)}`, unit: '', why, cure: '', source: 'f = N n / 60' },
        'pass',
      ),
    ];
  }
  return [
    judged(
      {
        ...common,
        unit: 'Hz',
        why: `${spec.teeth} ${words.teeth}${beside} at ${duty.speed} rpm; ${bound.who} reads up to ${hertz(bound.value)}.`,
        cure: `Use at most ${Math.floor((leastSpan(spec) * rpmAtFrequency(1, bound.value)) / duty.speed)} ${words.teeth} (wheel.teeth), or ${bound.who === 'the sensor' ? 'another sensor' : 'another input'}.`,
        source: `f = N n / 60; ${bound.source}`,
      },
      value,
      { limit: bound.value, sense: 'at most', worst: bound.isOwn ? 'fail' : 'caution' },
    ),
  ];
}

/** The slowest speed of the shaft that is read, and what sets it. */
function slowest(joint: Joint, spec: ToneWheelSpec, needs: SensorNeeds) {
  const byFrequency = needs.of('frequencyLeast');
  const bySpeed = needs.of('surfaceSpeed');
  const input = joint.job.sensor?.controller?.least ?? 0;
  const bounds = [
    ...(bySpeed
      ? [
          {
            ...bySpeed,
            rpm: rpmAtTipSpeed(2 * widthRadius(spec), bySpeed.value),
            what: `the ${passing(spec)} must pass at ${plain(bySpeed.value, 2)} m/s`,
          },
        ]
      : []),
    ...(byFrequency
      ? [
          {
            ...byFrequency,
            rpm: rpmAtFrequency(spec.teeth, byFrequency.value),
            what: `the sensor reads from ${hertz(byFrequency.value)} up`,
          },
        ]
      : []),
    ...(input > 0
      ? [
          {
            isOwn: true,
            memory: false,
            source: 'as given in the job',
            rpm: rpmAtFrequency(spec.teeth, input),
            what: `the controller's input counts from ${hertz(input)} up`,
          },
        ]
      : []),
  ].sort((a, b) => b.rpm - a.rpm);
  return bounds[0] ?? null;
}

function atCrawl(joint: Joint, spec: ToneWheelSpec, needs: SensorNeeds): Finding[] {
  const bound = slowest(joint, spec, needs);
  const crawl = joint.job.sensor?.crawl;
  const common = { code: 'sensor-lowest-speed', feature, title: 'lowest speed that is read' };
  if (!bound) return [];
  const { axle, rolled } = roadOf(joint.job);
  const onRoad = (speed: number) =>
    axle === null || rolled === null ? '' : ` (${plain(roadSpeed(speed, axle, rolled.value), 1)} km/h)`;
  const why =
    bound.rpm === 0
      ? 'The sensor reads from nearly a standstill.'
      : `${bound.what[0]?.toUpperCase()}${bound.what.slice(1)}: that is ${rpm(bound.rpm)}${onRoad(bound.rpm)} of this shaft.`;
  const source = sourced(bound.source, bound.memory);
  if (crawl === undefined) {
    // A sensor that reads nearly from a standstill needs no crawl to be told of.
    const isNear = needs.of('surfaceSpeed') === null && bound.rpm < 10;
    if (isNear) return [stated({ ...common, unit: '', why, cure: '', source }, 'pass')];
    const missing = 'Give sensor.crawl, the slowest speed of this shaft that must still be read.';
    return [notAssessed({ ...common, why, missing, source })];
  }
  const larger = (spec.outside * bound.rpm) / crawl;
  const cure =
    needs.of('surfaceSpeed') !== null && bound.what.includes(`the ${passing(spec)} must`)
      ? `Use a wheel of ${plain(Math.ceil(larger), 0)} mm (wheel.outside), a smaller gap, or a Hall sensor, which reads from a standstill.`
      : `Use at least ${Math.ceil((spec.teeth * bound.rpm) / crawl)} ${toothWords(spec).teeth} (wheel.teeth), or a sensor that reads from a standstill.`;
  return [
    judged(
      {
        ...common,
        title: 'slowest speed that must be read',
        unit: 'rpm',
        why: `${why} At ${rpm(crawl)}${onRoad(crawl)} the ${passing(spec)} pass at ${plain(tipSpeed(2 * widthRadius(spec), crawl), 2)} m/s.`,
        cure,
        source,
      },
      crawl,
      { limit: bound.rpm, sense: 'at least', hard: bound.isOwn ? bound.rpm : mayStillRead * bound.rpm },
    ),
  ];
}

function heat(joint: Joint, needs: SensorNeeds): Finding[] {
  const [coldest, hottest] = [needs.of('coldest'), needs.of('hottest')];
  const around = joint.job.duty?.temperature;
  if (!coldest || !hottest) return [];
  const common = { code: 'sensor-temperature', feature };
  const source = sourced(hottest.source, hottest.memory);
  if (!around) {
    if (!hottest.isOwn) return [];
    const why = `The sensor bears ${coldest.value} to ${hottest.value} degC.`;
    const missing = 'Give duty.temperature: { cold: -20 degC, hot: 80 degC }.';
    return [notAssessed({ ...common, title: 'heat and cold at the sensor', why, missing, source })];
  }
  const why = `The joint gets from ${around.cold} to ${around.hot} degC; the sensor bears ${coldest.value} to ${hottest.value}.`;
  const cure =
    'Use a sensor for that temperature, or move it away from the heat; its own data sheet goes under sensor.temperature.';
  const worst = hottest.isOwn ? 'fail' : 'caution';
  return [
    judged({ ...common, title: 'heat at the sensor', unit: 'degC', why, cure, source }, around.hot, {
      limit: hottest.value,
      sense: 'at most',
      worst,
    }),
    judged({ ...common, title: 'cold at the sensor', unit: 'degC', why, cure, source }, around.cold, {
      limit: coldest.value,
      sense: 'at least',
      worst,
    }),
  ];
}

export const sensorSpeed: Check = {
  id: 'sensor-speed',
  title: 'Speed range of the sensor',
  source: 'definition of frequency; sensor data sheets',
  run(joint) {
    const { wheelSpec, job } = joint;
    if (!wheelSpec || !job.sensor) return [];
    const needs = sensorNeeds(job.sensor);
    return [...fastest(joint, wheelSpec, needs), ...atCrawl(joint, wheelSpec, needs), ...heat(joint, needs)];
  },
};
