import type { DesignFriction, FacePair } from './friction.ts';
import { designFriction } from './friction.ts';
import type { Material } from './materials.ts';
import type { Lookup } from './table.ts';
import { missing } from './table.ts';

/**
 * Friction to design the face between two materials with. Iron and stainless steel are taken as steel.
 * Errors: plastic, and aluminium on aluminium, for which nothing is published.
 */
export function frictionBetween(a: Material, b: Material, oiled: boolean): Lookup<DesignFriction> {
  const families = [a.family, b.family];
  if (families.includes('plastic'))
    return missing('No friction is published for plastic in a joint that carries torque.');
  const soft = families.filter((family) => family === 'aluminium').length;
  const pairs: readonly FacePair[] = ['steel on steel', 'steel on aluminium', 'aluminium on aluminium'];
  return designFriction(pairs[soft] as FacePair, oiled);
}
