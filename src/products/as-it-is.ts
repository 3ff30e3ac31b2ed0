/** The joint that pictures of what runs off centre are about: as built where its parts were measured, else as drawn. */
import { asBuilt } from '../inspect/as-built.ts';
import type { Joint } from '../job/joint.ts';

/** A joint never changes, and several pictures ask for the same. */
const known = new WeakMap<Joint, Joint>();

/** The same joint where nothing was measured on its parts. */
export function asItIs(joint: Joint): Joint {
  const found = known.get(joint) ?? asBuilt(joint) ?? joint;
  known.set(joint, found);
  return found;
}
