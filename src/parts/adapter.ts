/**
 * The adapter: a turned part between the driving flange (face z = 0) and the driven flange (face z = thickness), with a register of
 * the opposite gender on each face, two hole patterns, a centre bore to indicate on, optional vise flats and a seat for the wheel.
 *
 * Pure: the same numbers give the same part. It never judges; src/validate does.
 */
import type { Feature, TurnedPart } from '../model/part.ts';
import { adapterBore } from './adapter-bore.ts';
import { groupDrillings } from './adapter-holes.ts';
import { adapterOutside } from './adapter-outside.ts';
import type { AdapterSpec, HoleGroupSpec, RegisterSpec } from './adapter-spec.ts';

function registerFeature(side: 'driving' | 'driven', register: RegisterSpec | null): Feature[] {
  if (!register) return [];
  const shape = register.gender === 'male' ? 'spigot' : 'recess';
  return [
    {
      id: `${side}-register`,
      purpose: shape,
      label: `${side} register ${shape}`,
      side,
      diameter: register.diameter,
      limits: register.limits,
    },
  ];
}

function holeFeature(group: HoleGroupSpec): Feature {
  const { shape } = group;
  if (shape.kind === 'dowel') {
    const { diameter, limits } = shape;
    return {
      id: group.id,
      purpose: 'dowel hole',
      label: group.label,
      side: group.side,
      group: group.id,
      diameter,
      limits,
    };
  }
  const tapped = shape.kind === 'tapped';
  const purpose = group.side === 'wheel' ? 'wheel screw hole' : tapped ? 'tapped hole' : 'screw hole';
  return {
    id: group.id,
    purpose,
    label: group.label,
    side: group.side,
    group: group.id,
    diameter: tapped ? shape.tapDrill : shape.diameter,
    ...(tapped ? { thread: shape.thread } : {}),
  };
}

/**
 * Build the adapter's part model.
 * @param spec every dimension decided, mm and degrees (see AdapterSpec)
 * @throws never for odd dimensions: a part whose holes cross or break out is still built, so that checks and pictures can show it
 */
export function buildAdapter(spec: AdapterSpec): TurnedPart {
  const features: Feature[] = [
    { id: 'body', purpose: 'body', label: 'adapter body', diameter: spec.outside },
    ...registerFeature('driving', spec.registers.driving),
    ...registerFeature('driven', spec.registers.driven),
    ...(spec.bore === null
      ? []
      : [
          {
            id: 'bore',
            purpose: 'bore',
            label: 'centre bore (indicating bore)',
            diameter: spec.bore,
          } satisfies Feature,
        ]),
    ...spec.groups.map(holeFeature),
    ...(spec.wheelSeat
      ? [
          {
            id: 'wheel-seat',
            purpose: 'wheel seat',
            label: 'wheel seat',
            side: 'wheel',
            diameter: spec.wheelSeat.diameter,
            limits: spec.wheelSeat.limits,
          } satisfies Feature,
        ]
      : []),
    ...(spec.flats ? [{ id: 'flats', purpose: 'flats', label: 'vise flats' } satisfies Feature] : []),
  ];
  return {
    kind: 'turned',
    id: spec.id,
    name: spec.name,
    material: spec.material,
    outer: adapterOutside(spec),
    drillings: [...adapterBore(spec), ...spec.groups.flatMap((group) => groupDrillings(spec, group))],
    ...(spec.flats ? { flats: { feature: 'flats', across: spec.flats.across, angle: spec.flats.angle } } : {}),
    features,
    engravings: [],
  };
}
