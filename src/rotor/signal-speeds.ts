/** How fast the teeth come, from crawl to top speed. */
import { toothFrequency } from '../formulas/pulses.ts';
import type { Joint } from '../job/joint.ts';
import type { JobInput } from '../job/schema.ts';

/** The part of a joint that speeds are read from. */
export interface JointWithSpeeds {
  readonly job: Pick<JobInput, 'duty' | 'sensor'>;
  readonly wheelSpec?: Pick<NonNullable<Joint['wheelSpec']>, 'teeth' | 'missing' | 'wide' | 'extra' | 'rim'> | null;
}

/** One speed of the shaft. */
export interface SignalSpeed {
  readonly rpm: number;
  readonly hertz: number;
  /** Time from tooth to tooth, ms. */
  readonly period: number;
  /** A coil's voltage as a share of that at top speed: it grows with the speed. */
  readonly coil: number;
}

/** The range of speeds, rpm. */
export interface SpeedRange {
  readonly crawl: number;
  readonly top: number;
  /** False where nobody gave it. */
  readonly isCrawlGiven: boolean;
  readonly isTopGiven: boolean;
}

/** Where nobody gives a speed: top 1000 rpm, crawl a fiftieth of the top (100 km/h against a walk). */
const usualTop = 1000;
const crawlShare = 1 / 50;

/** The speeds to show a signal at. A crawl that is no slower than the top counts as not given. */
export function speedRange(joint: JointWithSpeeds): SpeedRange {
  const given = joint.job.duty?.speed;
  const top = given ?? usualTop;
  const crawl = joint.job.sensor?.crawl;
  const isCrawlGiven = crawl !== undefined && crawl < top;
  return {
    top,
    isTopGiven: given !== undefined,
    crawl: isCrawlGiven ? crawl : top * crawlShare,
    isCrawlGiven,
  };
}

/** Numbers that a table of speeds steps by. */
const steps = [1, 2, 5] as const;

/** Crawl, top, and round speeds between them; frequencies by tooth places: what comes while the teeth pass. */
export function signalSpeeds(joint: JointWithSpeeds): SignalSpeed[] {
  const places = joint.wheelSpec?.teeth ?? 0;
  if (places === 0) return [];
  const { crawl, top } = speedRange(joint);
  const round: number[] = [];
  for (let decade = 10 ** Math.floor(Math.log10(crawl)); decade <= top; decade *= 10) {
    for (const step of steps) {
      const rpm = Number((step * decade).toPrecision(3));
      if (rpm > 1.05 * crawl && rpm < 0.95 * top) round.push(rpm);
    }
  }
  return [crawl, ...round, top].map((rpm) => {
    const hertz = toothFrequency(places, rpm);
    return { rpm, hertz, period: 1000 / hertz, coil: rpm / top };
  });
}
