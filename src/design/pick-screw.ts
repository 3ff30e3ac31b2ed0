/** Which screw goes through a plain hole when the job does not say. */
import { allThreads, type Thread } from '../standards/threads.ts';

/** Least room round a screw in a plain hole, diametral mm. Common practice: it has to go in by hand. */
const leastRoom = 0.05;
/** An inch screw is only proposed where it fills the hole this much better than the best metric one, mm. Common practice. */
const inchMustBeatBy = 0.4;

/**
 * The thickest usual screw that goes through a clear hole: metric coarse, or unified fine where the hole was plainly made for one
 * (a 9.7 mm hole takes 3/8, not M8).
 * @param hole hole diameter, mm
 * @returns null when even the smallest tabled screw is too thick
 */
export function screwForHole(hole: number): Thread | null {
  const fits = (thread: Thread) => thread.d <= hole - leastRoom;
  const thickest = (threads: readonly Thread[]) =>
    threads.filter(fits).reduce<Thread | null>((best, thread) => (best && best.d >= thread.d ? best : thread), null);
  const metric = thickest(allThreads().filter((t) => t.system === 'metric' && t.series === 'coarse'));
  const inch = thickest(allThreads().filter((t) => t.system === 'unified' && t.series === 'fine'));
  if (!metric) return inch;
  return inch && inch.d > metric.d + inchMustBeatBy ? inch : metric;
}
