/**
 * What would make a wheel smaller that has grown for its teeth: one change of the job at a time, each wheel really sized with it. mm.
 */
import type { Joint, WheelGrowth } from '../job/joint.ts';
import type { JobInput } from '../job/schema.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import { hasGrown, quietUpTo } from '../job/wheel-growth.ts';
import { hypot } from '../units/hypot.ts';
import { designJoint, roundNeighbours } from './design-joint.ts';
import { type Choice, type SearchInput, withChoice } from './options.ts';
import type { WheelInput } from './wheel.ts';
import { leastOutside, type ScrewRing } from './wheel-size.ts';

/** A change, by what to write, and the job with it. */
interface Change {
  readonly key: string;
  readonly job: JobInput;
}

/** Sheets that services stock, mm. Common practice. */
const stocked = [6, 5, 4, 3, 2.5, 2, 1.5];
/** Shares of the pitch that teeth are tried at. */
const ratios = [0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6];
/** What a careful service holds on a contour, plus or minus mm. Common practice. */
const careful = 0.05;
/** A wheel that is smaller by less than this share is no gain worth a word. */
const leastGain = 0.05;
/** No more changes than this are told. */
const mostTold = 3;

/** A change and the size that it comes to. */
interface Sized extends Change {
  readonly outside: number;
}

/** One of each key: the mildest that is quiet about its size, else the one that helps most. */
function bestOf(tries: readonly Change[], sizeOf: (job: JobInput) => number | null, quiet: number): Sized | null {
  let best: Sized | null = null;
  for (const change of tries) {
    const outside = sizeOf(change.job);
    if (outside === null) continue;
    if (best === null || outside < best.outside - 1e-9) best = { ...change, outside };
    if (best.outside <= quiet) break;
  }
  return best;
}

/** The most teeth with which nothing is said of the size, by halving: fewer teeth never need a larger wheel. Null where three are too many. */
function fewerTeeth(now: number, sizeOf: (teeth: number) => number | null, quiet: number): number | null {
  const fits = (teeth: number) => (sizeOf(teeth) ?? Number.POSITIVE_INFINITY) <= quiet;
  let [yes, no] = [3, now];
  if (!fits(yes)) return null;
  while (no - yes > 1) {
    const middle = Math.floor((yes + no) / 2);
    if (fits(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/** Thinner sheets, thickest first, no thinner than the sensor asks for. */
function thinnerSheets(job: JobInput, wheel: WheelInput): Change[] {
  const thinnest = job.sensor ? (sensorNeeds(job.sensor).of('thickness')?.value ?? 0) : 0;
  return stocked
    .filter((thickness) => thickness < wheel.thickness && thickness >= thinnest)
    .map((thickness) => ({ key: `wheel.thickness: ${thickness} mm`, job: { ...job, wheel: { ...wheel, thickness } } }));
}

/** Wheels of the same place: what their size hangs on beside the teeth. */
function ringOf({ wheelSpec, screws }: Joint): ScrewRing | null {
  const holes = wheelSpec?.screwHoles;
  const head = screws.find(({ side }) => side === 'wheel')?.head;
  const [first] = holes?.positions ?? [];
  if (!holes || !head || !first) return null;
  return { circle: 2 * hypot(first.x, first.y), hole: holes.diameter, head: { dk: head.diameter } };
}

/** Every change of teeth and limits worth trying, in groups of one key, mildest first. */
function groupsOf(job: JobInput, wheel: WheelInput, { outside }: WheelGrowth, quiet: number): Change[][] {
  const { sensor, sheet } = job;
  const crawl = sensor?.crawl;
  return [
    ratios
      .filter((ratio) => Math.abs(ratio - wheel.ratio) > 1e-9)
      .sort((a, b) => Math.abs(a - wheel.ratio) - Math.abs(b - wheel.ratio))
      .map((ratio) => ({ key: `wheel.ratio: ${ratio}`, job: { ...job, wheel: { ...wheel, ratio } } })),
    // The slowest speed that is read falls as the wheel grows.
    sensor && crawl !== undefined
      ? [Math.ceil((crawl * outside) / quiet)].map((slowest) => ({
          key: `sensor.crawl: ${slowest} rpm`,
          job: { ...job, sensor: { ...sensor, crawl: slowest } },
        }))
      : [],
    (sheet.tolerance ?? 1) > careful
      ? [
          {
            key: `sheet.tolerance: ${careful} mm`,
            job: { ...job, sheet: { ...sheet, tolerance: careful } },
          },
        ]
      : [],
    thinnerSheets(job, wheel),
  ];
}

/**
 * The joint with what would make its wheel smaller, where the wheel was sized and has grown for its teeth; any other joint as it is.
 * @param choice the way of holding it together that the joint was made with
 */
export function withSmallerWheels(input: SearchInput, choice: Choice, joint: Joint): Joint {
  const { wheelGrowth: growth } = joint;
  const { wheel } = input.job;
  if (!growth || !wheel || !hasGrown(growth)) return joint;
  const ring = ringOf(joint);
  if (!ring) return joint;
  const round = roundNeighbours(joint.adapterSpec, joint);
  const count = joint.wheelSpec?.teeth ?? 0;
  const sizeOf = (job: JobInput, teeth = count): number | null =>
    job.wheel ? leastOutside({ ...job, wheel: job.wheel }, ring, round, teeth) : null;
  const redesigned = (job: JobInput): number | null => {
    const made = designJoint({ ...input, job: withChoice(job, choice) });
    return made.ok ? (made.value.wheelSpec?.outside ?? null) : null;
  };
  const quiet = quietUpTo(growth);
  const fewer = wheel.teeth === 'auto' ? null : fewerTeeth(wheel.teeth, (teeth) => sizeOf(input.job, teeth), quiet);
  const changes: (Sized | null)[] = [
    ...(fewer === null
      ? []
      : [{ key: `wheel.teeth: ${fewer}`, job: { ...input.job, wheel: { ...wheel, teeth: fewer } }, outside: 0 }]),
    ...groupsOf(input.job, wheel, growth, quiet).map((tries) => bestOf(tries, sizeOf, quiet)),
  ];
  const enough = (1 - leastGain) * growth.outside;
  // What was found by the teeth alone is designed whole before it is told.
  const found = changes.flatMap((change) => {
    if (!change || change.outside > enough) return [];
    const outside = redesigned(change.job);
    return outside !== null && outside <= enough ? [{ key: change.key, outside }] : [];
  });
  const smaller = found.sort((a, b) => a.outside - b.outside).slice(0, mostTold);
  return { ...joint, wheelGrowth: { ...growth, smaller } };
}
