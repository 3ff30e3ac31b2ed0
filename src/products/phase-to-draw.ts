/** The best way round of a joint as its picture needs it. */
import type { FlangeToPhase, PhaseViewInput } from '../drawing/phase-view.ts';
import { holesThere } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import { turned } from '../parts/adapter-holes.ts';
import { studyPhasing } from '../rotor/phasing-study.ts';

/** A flange turned by `turn` degrees from how it was read; angles from the adapter's index mark, as in words. */
function flangeToPhase(joint: Joint, side: 'driving' | 'driven', turn: number): FlangeToPhase {
  const { name, outside, holes, runout } = joint[side];
  const { rimEccentricity, faceTilt } = runout;
  return {
    name,
    outside: outside.value,
    holes: holesThere(holes).map((at) => ({ ...turned(at, turn), diameter: holes.diameter.value })),
    rim: {
      high: (rimEccentricity?.angle ?? 0) + turn,
      size: rimEccentricity?.size ?? 0,
      // As it was typed: the driven flange's own face was mirrored when it was read, and is mirrored back.
      own: side === 'driven' ? 180 - (rimEccentricity?.angle ?? 0) : (rimEccentricity?.angle ?? 0),
    },
    faceHigh: faceTilt ? faceTilt.high + turn : null,
  };
}

/** Null where the directions of both rims are not known, or the holes meet in one way only. */
export function phaseToDraw(joint: Joint): PhaseViewInput | null {
  const study = studyPhasing(joint);
  if (!study.ok || study.result.ranked.length < 2) return null;
  const { best, chosen, doubt, ranked, matters, pays } = study.result;
  // What is as good as the best way, as far as can be seen, needs no turning.
  const to = pays ? best : chosen;
  return {
    id: 'phasing',
    driving: flangeToPhase(joint, 'driving', -to.driving),
    driven: flangeToPhase(joint, 'driven', joint.clocking.angle + to.driven),
    turn: { driving: to.driving - chosen.driving, driven: to.driven - chosen.driven },
    before: chosen.off,
    after: to.off,
    doubt,
    ways: ranked.length,
    matters,
  };
}
