/** When the faces might slip or nothing centres them: the same designs with stronger screws, and with dowels where those are not enough. */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { isStocked } from '../standards/property-classes.ts';
import { designJoint } from './design-joint.ts';
import { type Choice, type SearchInput, type Way, withChoice } from './options.ts';
import { byMerit, type Candidate, passes, saying } from './rank.ts';
import type { Judge } from './search-candidates.ts';
import { screwsOf } from './search-words.ts';
import type { Steps } from './steps.ts';
import { asTyped } from './wheel-size.ts';

type SideName = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

/** The strongest class that screws are stocked in. */
const strongest = '12.9';
/** So many of the best designs are tried stronger; more of them where none passes as it is. */
const mostReinforced = { sound: 4, failing: 12 };

/** Sides whose face slips, or may. */
function slipping(candidate: Candidate, verdicts: readonly ('fail' | 'caution')[]): SideName[] {
  return sides.filter((side) =>
    verdicts.some((verdict) => saying(candidate, verdict).some(({ code }) => code === `grip-${side}`)),
  );
}

/** What fails where only the play of the screws centres a part. */
const centring = ['concentricity', 'joint-unbalance', 'centring-chance', 'balance-chance'] as const;

const isCentring = ({ code }: { readonly code: string }) => centring.some((name) => name === code);

/** Sides that nothing centres, on a joint that runs out too far. */
function loose(candidate: Candidate): SideName[] {
  const { adapterSpec, dowels } = candidate.joint;
  if (!saying(candidate, 'fail').some(isCentring)) return [];
  return sides.filter((side) => !adapterSpec.registers[side] && !dowels?.[side]);
}

/** A candidate as it will be judged once dowels centre it: what they cure must not hide the designs that are sound otherwise. */
function asCentred(candidate: Candidate): Candidate {
  if (loose(candidate).length === 0) return candidate;
  return { ...candidate, findings: candidate.findings.filter((finding) => !isCentring(finding)) };
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

type Keys = Partial<Record<SideName, Way['set']>>;

function withKeys(choice: Choice, keys: Keys): Choice {
  const way = (side: SideName): Way => ({ ...choice[side], set: { ...choice[side].set, ...keys[side] } });
  return { ...choice, driving: way('driving'), driven: way('driven') };
}

/** What makes a side's screws the strongest that are stocked: hexagon heads give way to socket heads. Null where the head was typed. */
function strongestKeys({ joint }: Candidate, side: SideName, given: ReadonlySet<string>): Way['set'] | null {
  const kind = screwsOf(joint, side)?.head.kind;
  if (kind === undefined || isStocked(strongest, kind)) return { class: strongest };
  return given.has(`adapter.${side}.head`) ? null : { class: strongest, head: 'socket' };
}

/**
 * The best designs again with stronger screws, and with dowels beside them where a face still slips or nothing else centres it. What was
 * typed stays. One step a design.
 */
export function* reinforced(input: SearchInput, judge: Judge, candidates: readonly Candidate[]): Steps<Candidate[]> {
  const made: Candidate[] = [];
  let order = Math.max(0, ...candidates.map((candidate) => candidate.order));
  const attempt = (choice: Choice): Candidate | null => {
    const joint = designJoint({ ...input, job: withChoice(input.job, choice) });
    if (!joint.ok) return null;
    order += 1;
    const real = asTyped(joint.value, input.job);
    const candidate = { choice, joint: real, findings: judge(real), order };
    made.push(candidate);
    return candidate;
  };
  const open = (names: readonly SideName[], key: string) =>
    names.filter((side) => !input.given.has(`adapter.${side}.${key}`));
  const most = candidates.some(passes) ? mostReinforced.sound : mostReinforced.failing;
  const best = [...candidates].sort((a, b) => byMerit(asCentred(a), asCentred(b))).slice(0, most);
  for (const candidate of best) {
    yield;
    const classes = open(holders(candidate.joint, slipping(candidate, ['fail', 'caution'])), 'class');
    const keys: Keys = Object.fromEntries(
      classes.flatMap((side) => {
        const found = strongestKeys(candidate, side, input.given);
        return found ? [[side, found]] : [];
      }),
    );
    const stronger = Object.keys(keys).length > 0 ? attempt(withKeys(candidate.choice, keys)) : null;
    const last = stronger ?? candidate;
    // Dowels save no face that slips to and fro; they still centre one.
    const slipped = input.job.duty?.reversing ? [] : slipping(last, ['fail']);
    const pinned = open([...new Set([...slipped, ...loose(last)])], 'dowels');
    const pins: Keys = Object.fromEntries(pinned.map((side) => [side, { dowels: 'auto' }]));
    if (pinned.length > 0) attempt(withKeys(last.choice, pins));
  }
  return made;
}
