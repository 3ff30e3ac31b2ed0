/** Speeds and feeds of turning to start from, at the diameters that matter. */
import type { Joint } from '../job/joint.ts';
import { type StartingCut, startingCut } from '../standards/cutting-speeds.ts';

export interface TurningCut {
  readonly what: string;
  /** mm */
  readonly diameter: number;
  readonly cut: StartingCut;
}

/** Rim (where the part turns, on the lathe), registers and bore of an adapter, each at its own diameter. */
export function turningCuts(joint: Joint, operation: 'rough turn' | 'finish turn', withRim: boolean): TurningCut[] {
  const { outside, bore, registers } = joint.adapterSpec;
  const { tools, top_speed: top } = joint.job.adapter.shop;
  const at = (what: string, diameter: number): TurningCut => ({
    what,
    diameter,
    cut: startingCut(joint.adapterMaterial, operation, tools, diameter, top),
  });
  return [
    ...(withRim ? [at('rim and faces', outside)] : []),
    ...(['driving', 'driven'] as const).flatMap((side) => {
      const register = registers[side];
      return register ? [at(`${side} register`, register.diameter)] : [];
    }),
    ...(bore === null ? [] : [at('bore', bore)]),
  ];
}
