/** Which part of the outside a hole comes nearest to: "the outside" is no help to somebody with the part in hand. */

import type { Joint } from '../job/joint.ts';
import type { Drilling, ProfilePoint } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';

export interface Neighbour {
  readonly kind: 'rim' | 'step' | 'spigot' | 'wheel seat' | 'far face';
  readonly side: 'driving' | 'driven' | null;
  /** As a finding says it. */
  readonly name: string;
}

interface Candidate extends Neighbour {
  /** Metal as seen along the axis, or along it for the far face, mm; for telling the candidates apart only. */
  readonly wall: number;
}

const ends = ({ profile }: Drilling) => [profile[0], profile[profile.length - 1]] as [ProfilePoint, ProfilePoint];

/** Radius with which a drilling opens on a face; null where it does not reach it. */
export function openingOn(face: 'driving' | 'driven', thickness: number, drilling: Drilling): number | null {
  const [low, high] = ends(drilling);
  if (face === 'driving') return low.r > 0 && low.z <= 1e-9 ? low.r : null;
  return high.r > 0 && high.z >= thickness - 1e-9 ? high.r : null;
}

function candidates({ adapterSpec: spec }: Joint, drilling: Drilling): Candidate[] {
  const offset = hypot(drilling.x, drilling.y);
  const widest = Math.max(...drilling.profile.map(({ r }) => r));
  const found: Candidate[] = [{ kind: 'rim', side: null, name: 'the rim', wall: spec.outside / 2 - offset - widest }];
  for (const side of ['driving', 'driven'] as const) {
    const register = spec.registers[side];
    const opening = openingOn(side, spec.thickness, drilling);
    if (register?.gender === 'male' && register.at === 'inner' && opening !== null) {
      found.push({
        kind: 'spigot',
        side,
        name: `the ${side} spigot`,
        wall: Math.abs(offset - register.diameter / 2) - opening,
      });
    }
    if (register?.gender === 'male' && register.at === 'rim') {
      found.push({
        kind: 'step',
        side,
        name: `the step of the ${side} register`,
        wall: register.diameter / 2 - offset - widest,
      });
    }
    if (spec.wheelSeat?.face === side && opening !== null) {
      found.push({
        kind: 'wheel seat',
        side,
        name: 'the wheel seat',
        wall: spec.wheelSeat.diameter / 2 - offset - opening,
      });
    }
  }
  const [low, high] = ends(drilling);
  if (low.r === 0) found.push({ kind: 'far face', side: 'driving', name: 'the driving face', wall: low.z });
  if (high.r === 0)
    found.push({ kind: 'far face', side: 'driven', name: 'the driven face', wall: spec.thickness - high.z });
  return found;
}

/** The stretch of the outside that a drilling leaves least metal to. @param id of the drilling */
export function thinnestTowards(joint: Joint, id: string): Neighbour {
  const drilling = joint.adapter.drillings.find((candidate) => candidate.id === id);
  if (!drilling) return { kind: 'rim', side: null, name: 'the outside' };
  const { kind, side, name } = candidates(joint, drilling).reduce((a, b) => (b.wall < a.wall ? b : a));
  return { kind, side, name };
}
