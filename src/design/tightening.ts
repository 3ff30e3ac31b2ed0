/** How hard each screw is tightened, and what that rests on. */
import { tightenScrew } from '../formulas/preload.ts';
import type { Tightened } from '../job/joint.ts';
import type { Material } from '../standards/materials.ts';
import { propertyClass } from '../standards/property-classes.ts';
import type { ScrewHead } from '../standards/screw-heads.ts';
import { must } from '../standards/table.ts';
import type { Thread } from '../standards/threads.ts';
import { tighteningFactor } from '../standards/tightening.ts';

/**
 * Friction in thread and under the head that torques are given for: steel, lightly oiled. The middle of VDI 2230 class B (0.08 to 0.16);
 * choice of this program. With less friction the same torque overloads the screw, so no paste.
 */
const usualFriction = 0.12;
/** Share of the yield point that tightening uses up: VDI 2230. */
const utilisation = 0.9;
/** Sunk and button heads have a weakened head (ISO 10642 and ISO 7380-1 scope notes): this share of a full one. The share is from memory. */
const weakHead = 0.8;

/** What a screw presses on and holds in. */
export interface TighteningInput {
  readonly thread: Thread;
  readonly head: ScrewHead;
  readonly hole: number;
  readonly class: string;
  /** What is under the head, under the nut, and round the thread. */
  readonly seats: readonly Material[];
}

const isSoft = ({ family }: Material) => family === 'aluminium' || family === 'plastic';

/**
 * Tightening torque and preload of one screw, or why none is given.
 * Source: VDI 2230-1 preload and torque at 90 % of the yield point; friction as above. Soft seats get none: the pressure under the head
 * is not judged by this version, and a steel torque would crush them.
 */
export function tightened({ thread, head, hole, class: name, seats }: TighteningInput): Tightened {
  const soft = seats.find(isSoft);
  if (soft) {
    return {
      torque: null,
      preload: null,
      leastPreload: null,
      friction: usualFriction,
      note: `no torque given: ${soft.name} is soft, and the pressure under the heads is not judged; use hardened washers and have the torque worked out`,
    };
  }
  const weak = head.kind === 'flat' || head.kind === 'button';
  const result = tightenScrew({
    thread,
    head: {
      // Where no bearing face is printed the head's own edge is the least that can be said: the torque then errs low.
      dw: head.dw ?? (head.kind === 'flat' ? head.dk : 0.8 * head.dk),
      hole: head.kind === 'flat' ? thread.d : hole,
      ...(head.coneAngle === undefined ? {} : { coneAngle: head.coneAngle }),
    },
    yieldStrength: must(propertyClass(name, thread.d)).yieldStrength,
    muThread: usualFriction,
    utilisation: weak ? utilisation * weakHead : utilisation,
    alphaA: must(tighteningFactor('torque wrench')).alphaA,
  });
  return {
    torque: result.torque,
    preload: result.preload,
    leastPreload: result.leastPreload,
    friction: usualFriction,
    note: 'torque wrench, lightly oiled, no paste; cross-wise in three steps, and again after the first run (common practice)',
  };
}
