/** What turns near the wheel, as discs: a bracket must stay clear of all of them. Adapter coordinates, mm. */

import type { Joint } from '../job/joint.ts';
import type { ToothBand } from '../parts/tone-wheel.ts';
import { hypot } from '../units/hypot.ts';

/** A disc about the axis from one height to another. */
export interface TurningBody {
  readonly name: string;
  readonly zMin: number;
  readonly zMax: number;
  readonly radius: number;
}

/** What a bracket's design starts from besides the job. */
export interface BracketPlace {
  /** Where its teeth or windows lie, thickness, and height of the lower face of the wheel, mm. */
  readonly wheel: ToothBand & { readonly thickness: number; readonly z: number };
  readonly bodies: readonly TurningBody[];
}

type Turning = Pick<Joint, 'adapterSpec' | 'driving' | 'driven' | 'screws' | 'wheelSpec' | 'wheelZ'>;

/** Wheel, adapter, flanges of known thickness, heads and nuts that stand out. Shaft and yokes behind the flanges are not known. */
export function turningBodies(joint: Turning): TurningBody[] {
  const { adapterSpec, driving, driven, screws, wheelSpec, wheelZ } = joint;
  const bodies: TurningBody[] = [
    { name: 'adapter', zMin: 0, zMax: adapterSpec.thickness, radius: adapterSpec.outside / 2 },
  ];
  if (wheelSpec && wheelZ !== null)
    bodies.push({ name: 'wheel', zMin: wheelZ, zMax: wheelZ + wheelSpec.thickness, radius: wheelSpec.outside / 2 });
  const flanges = [
    { flange: driving, from: 0, way: -1 },
    { flange: driven, from: adapterSpec.thickness, way: 1 },
  ];
  for (const { flange, from, way } of flanges) {
    const thick = flange.thickness?.value;
    if (thick === undefined) continue;
    const to = from + way * thick;
    bodies.push({
      name: `${flange.side} flange`,
      zMin: Math.min(from, to),
      zMax: Math.max(from, to),
      radius: flange.outside.value / 2,
    });
  }
  for (const group of screws) {
    const out = Math.max(...group.positions.map(({ x, y }) => hypot(x, y)));
    if (group.seat !== 'sunk') {
      const top = group.headZ - group.points * group.head.height;
      const wide = Math.max(group.head.diameter, group.washer?.outside ?? 0);
      bodies.push({
        name: `heads of the ${group.label}`,
        zMin: Math.min(group.headZ, top),
        zMax: Math.max(group.headZ, top),
        radius: out + wide / 2,
      });
    }
    if (group.nut) {
      const from = group.headZ + group.points * group.grip;
      const to = from + group.points * group.nut.height;
      bodies.push({
        name: `nuts of the ${group.label}`,
        zMin: Math.min(from, to),
        zMax: Math.max(from, to),
        radius: out + group.nut.acrossFlats / Math.sqrt(3),
      });
    }
  }
  return bodies;
}
