/** Do the screws go through every hole on their way, although no hole stands quite where it should? */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { screwPlay } from '../rotor/plays.ts';
import { machiningRule } from '../standards/machining-practice.ts';
import { must } from '../standards/table.ts';
import { type Check, judged } from './check.ts';
import { mm } from './words.ts';

/** Play below which a screw does not go in by hand, mm. Common practice. */
const leastPlay = 0.05;

/** A better reading is only worth asking for where it leaves some doubt to be had, mm. */
const leastGain = 0.005;

/** What helps depends on whether a better measured circle could be enough. */
function cureFor(screws: ScrewGroup, side: string, play: number, drilled: number): string {
  const measure =
    play >= 2 * drilled + leastGain
      ? `Measure the bolt circle better (more chords, repeated; ${side}.holes.circle), or d`
      : 'D';
  const wider =
    screws.fastening === 'into_flange'
      ? `use the next series of clearance hole (adapter.${side}.hole: coarse)`
      : `take a thinner screw (adapter.${side}.screw)`;
  return `${measure}rill through the flange as a template, or ${wider}.`;
}

function holesClear(joint: Joint, screws: ScrewGroup, side: 'driving' | 'driven'): Finding {
  const { doubt } = joint[side].holes;
  const drilled = must(machiningRule('hole_position', screws.major)).value;
  const needs = 2 * (doubt + drilled);
  const play = screwPlay(joint, screws, side);
  return judged(
    {
      code: 'holes-clear',
      feature: screws.id,
      title: `${screws.thread} screws go through, ${side} side`,
      unit: 'mm',
      why: `Play of the screw in its holes, against holes that may be ${mm(doubt, 3)} (as measured) and ${mm(drilled, 3)} (as drilled) out of place.`,
      cure: cureFor(screws, side, play, drilled),
      source: 'geometry; drilled position of 0.05 mm is common practice',
    },
    play,
    { limit: needs, sense: 'at least', hard: Math.min(needs, leastPlay) },
  );
}

export const holes: Check = {
  id: 'holes-clear',
  title: 'Screws through their holes',
  source: 'geometry; common practice',
  run: (joint) =>
    joint.screws.flatMap((screws) => {
      if (screws.side === 'wheel') return [];
      const isShared = screws.fastening === 'through' && screws.seat === 'outside';
      return (isShared ? (['driving', 'driven'] as const) : [screws.side]).map((side) =>
        holesClear(joint, screws, side),
      );
    }),
};
