/** Is a flange as thick as the thread that was measured in it is deep? One of the two readings is wrong otherwise, or a boss stands behind. */
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { type Check, judged } from './check.ts';
import { mm, plain } from './words.ts';

function judgeSide(joint: Joint, side: 'driving' | 'driven'): Finding[] {
  const { holes, thickness } = joint[side];
  const { thread, depth } = holes;
  // Where one of the two was not measured there is nothing that they could contradict.
  if (thread === null || depth === null || thickness === null) return [];
  const right = `${side}.holes: { depth: ${plain(thickness.value, 1)}, through: true }`;
  return [
    judged(
      {
        code: 'thread-in-flange',
        feature: `${side}-screws`,
        title: `depth of the ${thread} threads against the thickness of the ${side} flange`,
        unit: 'mm',
        why: `${side}.thickness is ${mm(thickness.value)} +-${mm(thickness.doubt)} at the holes, and no thread is deeper than the metal that it is cut in. Screws and grip are reckoned with the depth that was typed.`,
        cure: `Measure both again: the depth of full thread with a screw that goes in by hand, not that of the drill, and the thickness at the holes, not beside them. Right through is usable over the thickness alone (${right}). Where a boss or the hub stands behind the holes, it belongs to the thickness (${side}.thickness).`,
        source: 'geometry',
      },
      depth,
      // Whether there is a boss is not known: a question, not a fault of the part.
      { limit: thickness.value + thickness.doubt, sense: 'at most', worst: 'caution' },
    ),
  ];
}

export const threadInFlange: Check = {
  id: 'thread-in-flange',
  title: 'Threads in the flanges',
  source: 'geometry',
  run: (joint) => [...judgeSide(joint, 'driving'), ...judgeSide(joint, 'driven')],
};
