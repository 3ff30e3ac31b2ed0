/** A joint with the bracket that its job asks for. */
import type { Joint } from '../job/joint.ts';
import { designBracket } from './bracket.ts';
import { turningBodies } from './bracket-turning.ts';
import { type Designed, designed } from './trouble.ts';

/** The joint as it is where the job has no bracket; troubles where it has one that cannot be drawn. */
export function withBracket(joint: Joint): Designed<Joint> {
  if (!joint.job.bracket) return designed(joint);
  const { wheelSpec, wheelZ } = joint;
  const place =
    wheelSpec && wheelZ !== null ? { wheel: { ...wheelSpec, z: wheelZ }, bodies: turningBodies(joint) } : null;
  const made = designBracket(joint.job, place);
  if (!made.ok) return made;
  const { bracket, assumptions } = made.value;
  return designed({ ...joint, bracket, assumptions: [...joint.assumptions, ...assumptions] });
}
