/**
 * The adapter that designs itself: tries every way of holding it together that the job leaves open, has each judged, and takes the
 * best. Deterministic: the ways stand in one order, and no two of them rank alike.
 */
import type { Alternative, Alternatives, Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { withCloserWheel } from './closer-wheel.ts';
import { designJoint } from './design-joint.ts';
import { type Choice, type SearchInput, usualChoice, withChoice } from './options.ts';
import { byMerit, type Candidate, passes, saying, workOf } from './rank.ts';
import { reinforced } from './reinforce.ts';
import { type Judge, kindOf, tryChoices } from './search-candidates.ts';
import { keysFor, wayText } from './search-words.ts';
import { withSmallerWheels } from './smaller-wheel.ts';
import { allSteps, type Steps } from './steps.ts';
import { type Designed, designed, type Trouble } from './trouble.ts';
import { asTyped } from './wheel-size.ts';
import { whyImpossible } from './why-impossible.ts';

/** A way that cannot be drawn may be the one that would pass: what stands against it may be mended sooner than the others. */
function undrawnText(undrawn: readonly Trouble[]): { readonly undrawn?: string } {
  const counts = new Map<string, number>();
  for (const { path, message } of undrawn) {
    const words = `${path}: ${message}`;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  const [first] = [...counts].sort(([, a], [, b]) => b - a);
  if (!first) return {};
  const [words, count] = first;
  const ways = undrawn.length === 1 ? 'One more way' : `${undrawn.length} more ways`;
  const most = count === undrawn.length ? '' : `, ${count} of them for this`;
  return { undrawn: `${ways} cannot be drawn${most}: ${words}` };
}

/** No more other ways than this are told of. */
const mostOthers = 4;

/** The best design and what the checks say of it. */
export interface Found {
  readonly joint: Joint;
  readonly findings: readonly Finding[];
  /** The way that was taken. */
  readonly choice: Choice;
}

/** What one candidate is said to have and another is not, by the names that findings go by at the bench. */
function only(candidate: Candidate, other: Candidate, verdict: Finding['verdict']): string[] {
  const known = new Set(saying(other, verdict).map(({ code }) => code));
  const own = saying(candidate, verdict).filter(({ code }) => !known.has(code));
  return [...new Set(own.map(({ title }) => title))];
}

function alternativeTo(best: Candidate, other: Candidate): Alternative {
  const sizes = ({ joint }: Candidate) => ({
    thickness: joint.adapterSpec.thickness,
    mass: joint.adapterMass.mass,
    inertia: joint.adapterMass.inertia.zz,
    ...workOf(joint),
  });
  const [own, chosen] = [sizes(other), sizes(best)];
  return {
    what: wayText(other.joint),
    keys: keysFor(other.joint),
    thickness: own.thickness,
    mass: own.mass,
    inertia: own.inertia,
    than: {
      thickness: own.thickness - chosen.thickness,
      mass: own.mass - chosen.mass,
      inertia: own.inertia - chosen.inertia,
      pockets: own.pockets - chosen.pockets,
      threads: own.threads - chosen.threads,
      faces: own.faces - chosen.faces,
    },
    cautions: only(other, best, 'caution'),
    spares: only(best, other, 'caution'),
  };
}

/** The others that pass, best first, one of each kind: screws of another size alone are not another kind. */
function othersThan(best: Candidate, ranked: readonly Candidate[]): Alternative[] {
  const kinds = new Set([kindOf(best.joint, false)]);
  const others: Candidate[] = [];
  for (const candidate of ranked) {
    const kind = kindOf(candidate.joint, false);
    if (kinds.has(kind) || !passes(candidate) || others.length === mostOthers) continue;
    kinds.add(kind);
    others.push(candidate);
  }
  return others.map((other) => alternativeTo(best, other));
}

/** Why the best is not the usual way; empty when it is. */
function becauseOf(best: Candidate, usual: Candidate | undefined): string {
  if (best.order === 0) return '';
  if (!usual) return 'the usual way cannot be drawn';
  const fails = only(usual, best, 'fail');
  if (fails.length > 0) return `the usual way fails in ${fails.join(' and in ')}`;
  const cautions = only(usual, best, 'caution');
  return cautions.length > 0
    ? `the usual way is short of the limit in ${cautions.join(' and in ')}`
    : passes(best)
      ? 'the usual way has more that fails or is past a limit'
      : 'the usual way misses its limits by more';
}

/** The search, all at once; see searchInSteps. */
export const searchDesign = (input: SearchInput, judge: Judge): Designed<Found> =>
  allSteps(searchInSteps(input, judge));

/**
 * Search the ways that the job leaves open.
 * @param input the job and its flanges
 * @param judge the checks
 * @returns the best design, or the troubles of the usual way when no way can be drawn at all
 */
export function* searchInSteps(input: SearchInput, judge: Judge): Steps<Designed<Found>> {
  const { candidates: open, tried, troubles, undrawn } = yield* tryChoices(input, judge);
  const candidates = [...open, ...(yield* reinforced(input, judge, open))];
  const asCut = [...candidates].sort(byMerit);
  const [first] = asCut;
  if (!first) return { ok: false, troubles };
  const best = yield* withCloserWheel(input, judge, first);
  const ranked = [best, ...asCut.slice(1)];
  const because = becauseOf(
    best,
    candidates.find(({ order }) => order === 0),
  );
  const isSound = passes(best);
  const alternatives: Alternatives = {
    tried: candidates.length,
    chosen: wayText(best.joint),
    because,
    others: isSound ? othersThan(best, ranked) : [],
    impossible: isSound ? null : { ...(yield* whyImpossible(input, judge, ranked)), ...undrawnText(undrawn) },
  };
  const filled = (['driving', 'driven'] as const).flatMap((side) =>
    Object.entries(best.choice[side].set).map(([key, value]) => ({
      path: `adapter.${side}.${key}`,
      value: String(value),
      from: `chosen among ${candidates.length} ways: ${because}`,
      memory: false,
    })),
  );
  // What was chosen is no longer assumed at its default.
  const chosen = new Set(filled.map(({ path }) => path));
  const assumptions = [...best.joint.assumptions.filter(({ path }) => !chosen.has(path)), ...filled];
  // Nothing was open and nothing is wrong: there is nothing to tell.
  const isPlain = tried === 1 && candidates.length === 1 && isSound;
  const made: Joint = { ...best.joint, assumptions, ...(isPlain ? {} : { alternatives }) };
  const joint = withSmallerWheels(input, best.choice, made);
  return designed({ joint, findings: best.findings, choice: best.choice });
}

/**
 * One way, without a search and not judged; the usual one where none is given. What would make a large wheel smaller is looked for by the search
 * alone: it takes several designs, and this one is shown while somebody types.
 */
export function oneDesign(input: SearchInput, choice: Choice = usualChoice): Designed<Joint> {
  const made = designJoint({ ...input, job: withChoice(input.job, choice) });
  return made.ok ? designed(asTyped(made.value, input.job)) : made;
}
