/** Which screw goes through a plain hole when the job does not say. */
import { clearanceHole } from '../standards/clearance-holes.ts';
import { allThreads, type Thread } from '../standards/threads.ts';

/** Least room round a screw in a plain hole, diametral mm. Common practice: it has to go in by hand. */
const leastRoom = 0.05;
/** Catalogue flanges drill this much over the bolt, mm (8.1 for M8, DIN flanges). */
const flangeRoom = 0.1;
/** A measured hole counts as made for a screw within this much of a usual size, mm: a worn hole and a caliper. */
const nearEnough = 0.1;

/** Hole sizes that are drilled for a screw, mm: the flange maker's close one and the three tabled series, closest first. */
function usualHoles(thread: Thread): number[] {
  const tabled = (['fine', 'medium', 'coarse'] as const).flatMap((series) => {
    const hole = clearanceHole(thread.size, series);
    return hole.ok ? [hole.value.diameter] : [];
  });
  return [thread.d + flangeRoom, ...tabled];
}

const isMadeFor = (thread: Thread, hole: number) =>
  usualHoles(thread).some((usual) => Math.abs(hole - usual) <= nearEnough + 1e-9);

/**
 * The thickest usual screw that goes through a clear hole: metric coarse, or unified fine where the hole is plainly made for one and
 * for no metric screw (a 9.7 mm hole takes 3/8, a 13.5 mm hole M12).
 * @param hole hole diameter, mm
 * @returns null when even the smallest tabled screw is too thick
 */
export function screwForHole(hole: number): Thread | null {
  const thickest = (system: Thread['system'], series: Thread['series']) =>
    allThreads()
      .filter((thread) => thread.system === system && thread.series === series && thread.d <= hole - leastRoom)
      .reduce<Thread | null>((best, thread) => (best && best.d >= thread.d ? best : thread), null);
  const metric = thickest('metric', 'coarse');
  const inch = thickest('unified', 'fine');
  if (!metric || !inch || inch.d <= metric.d) return metric ?? inch;
  const medium = clearanceHole(metric.size, 'medium');
  const isUsual = isMadeFor(metric, hole) || (medium.ok && hole <= medium.value.diameter);
  return !isUsual && isMadeFor(inch, hole) ? inch : metric;
}
