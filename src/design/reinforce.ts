/** When the faces might slip: the same designs with stronger screws, and with dowels where those are not enough. */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { designJoint } from './design-joint.ts';
import { type Choice, type SearchInput, type Way, withChoice } from './options.ts';
import { byMerit, type Candidate, saying } from './rank.ts';
import type { Judge } from './search-candidates.ts';
import { screwsOf } from './search-words.ts';

type SideName = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

/** The strongest class that screws are stocked in. */
const strongest = '12.9';
/** So many of the best designs are tried stronger. */
const mostReinforced = 4;

/** Sides whose face slips, or may. */
function slipping(candidate: Candidate, verdicts: readonly ('fail' | 'caution')[]): SideName[] {
  return sides.filter((side) =>
    verdicts.some((verdict) => saying(candidate, verdict).some(({ code }) => code === `grip-${side}`)),
  );
}

/** Sides whose own choice decides a face's screws: bolts through both flanges take their class from either. */
const holders = (joint: Joint, faces: readonly SideName[]): SideName[] => [
  ...new Set(
    faces.flatMap((face) => {
      const group: ScrewGroup | undefined = screwsOf(joint, face);
      return group && group.side !== 'wheel' ? [group.side] : [];
    }),
  ),
];

function withKeys(choice: Choice, names: readonly SideName[], keys: Way['set']): Choice {
  const way = (side: SideName): Way =>
    names.includes(side) ? { ...choice[side], set: { ...choice[side].set, ...keys } } : choice[side];
  return { ...choice, driving: way('driving'), driven: way('driven') };
}

/** The best designs again with stronger screws, and with dowels beside them where a face still slips. What was typed stays. */
export function reinforced(input: SearchInput, judge: Judge, candidates: readonly Candidate[]): Candidate[] {
  const made: Candidate[] = [];
  let order = Math.max(0, ...candidates.map((candidate) => candidate.order));
  const attempt = (choice: Choice): Candidate | null => {
    const joint = designJoint({ ...input, job: withChoice(input.job, choice) });
    if (!joint.ok) return null;
    order += 1;
    const real: Joint = { ...joint.value, job: input.job };
    const candidate = { choice, joint: real, findings: judge(real), order };
    made.push(candidate);
    return candidate;
  };
  const open = (names: readonly SideName[], key: string) =>
    names.filter((side) => !input.given.has(`adapter.${side}.${key}`));
  for (const candidate of [...candidates].sort(byMerit).slice(0, mostReinforced)) {
    const classes = open(holders(candidate.joint, slipping(candidate, ['fail', 'caution'])), 'class');
    const stronger = classes.length > 0 ? attempt(withKeys(candidate.choice, classes, { class: strongest })) : null;
    const last = stronger ?? candidate;
    const pinned = open(slipping(last, ['fail']), 'dowels');
    if (pinned.length > 0) attempt(withKeys(last.choice, pinned, { dowels: 'auto' }));
  }
  return made;
}
