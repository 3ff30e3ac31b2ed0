/** Shop names of the drills for each group's holes in the adapter. */
import type { DrillNames, Joint, ScrewGroup } from '../job/joint.ts';
import { type DrillBounds, drillFor, drillSystems } from '../standards/drills.ts';
import { threadLimits } from '../standards/thread-limits.ts';
import { findThread, type Thread } from '../standards/threads.ts';

/** The joint with the drills of every group that has holes in the adapter. */
export function withDrills(joint: Joint): Joint {
  const screws = joint.screws.map((group) => {
    const thread = findThread(group.thread);
    const drills = thread.ok ? drillsFor(group, thread.value, joint) : null;
    return drills ? { ...group, drills } : group;
  });
  return { ...joint, screws };
}

/**
 * Drills for a group's holes: one of the thread's own system, and the nearest of the other. A clearance hole is never smaller than asked;
 * a tapped one ends up within the limits of its thread's minor diameter. Null where the group has no holes in the adapter.
 */
function drillsFor(group: ScrewGroup, thread: Thread, joint: Joint): DrillNames | null {
  const shape = joint.adapterSpec.groups.find(({ id }) => id === group.id)?.shape;
  if (!shape || shape.kind === 'dowel') return null;
  const metric = ['metric'] as const;
  const inch = drillSystems.filter((system) => system !== 'metric');
  const [own, other] = thread.system === 'metric' ? [metric, inch] : [inch, metric];
  if (shape.kind === 'passing') {
    const bounds = { atLeast: shape.diameter };
    return { drill: nameOf(shape.diameter, bounds, own), orDrill: nameOf(shape.diameter, bounds, other) };
  }
  const { tapDrill } = shape;
  const limits = threadLimits(thread);
  const bounds = limits.ok
    ? { atLeast: limits.value.D1.min, atMost: limits.value.D1.max }
    : { atLeast: tapDrill, atMost: tapDrill };
  return {
    drill: nameOf(tapDrill, { atLeast: tapDrill, atMost: tapDrill }, own),
    orDrill: nameOf(tapDrill, bounds, other),
  };
}

function nameOf(mm: number, bounds: DrillBounds, systems: typeof drillSystems): string {
  const drill = drillFor(mm, bounds, systems);
  if (!drill.ok) return '';
  const { system, name, diameter } = drill.value;
  return system === 'metric' ? name : `${system === 'letter' ? `letter ${name}` : name}, ${diameter.toFixed(2)} mm`;
}
