/** The nearest change that lets a joint pass, found by trying: first one thing at a time, then the best few together. */
import { choicesFor, type SearchInput, stillOpen } from './options.ts';
import { byMerit, byShortfall, type Candidate, passes } from './rank.ts';
import { type Judge, tryChoices } from './search-candidates.ts';
import { wayText } from './search-words.ts';
import type { Steps } from './steps.ts';
import { type Change, givingWay, helpful, loosened, roomiest } from './why-impossible-changes.ts';

/** Ways that are tried under each change: the best of those that fail, the one that leaves most metal... */
const waysKept = 2;
/** ...or the first of those that the change opens. */
const waysOpened = 8;
/** No more changes than this are put together... */
const mostTogether = 3;
/** ...and no more sets of changes than this are tried: an answer must come while one waits for it. */
const mostTrials = 16;

/** The best way under some changes; undefined when none can be drawn. */
function* bestUnder(
  changes: readonly Change[],
  input: SearchInput,
  judge: Judge,
  ranked: readonly Candidate[],
): Steps<Candidate | undefined> {
  const changed = changes.reduce((known, { apply }) => apply(known), input);
  const all = choicesFor(changed);
  const isWider = all.length > choicesFor(input).length;
  const kept = [...ranked.slice(0, waysKept), roomiest(ranked, input.job.adapter.web)];
  const known = new Set(kept.flatMap((candidate) => (candidate ? [candidate.choice] : [])));
  const choices = isWider ? all.slice(0, waysOpened) : [...known];
  const thickestFirst = choices.map((choice) => stillOpen(choice, changed.given)).sort((a, b) => a.thinner - b.thinner);
  const { candidates } = yield* tryChoices(changed, judge, thickestFirst);
  return [...candidates].sort(byMerit)[0];
}

/** What a change is a change of: two of one key contradict each other. */
const keyOf = ({ key }: Change): string => key.split(':')[0] ?? key;

function sentence(changes: readonly Change[], works: Candidate, before: Candidate): string {
  const way = wayText(works.joint);
  const what = [...(way === wayText(before.joint) ? [] : [way]), ...changes.map(({ words }) => words)].join(', with ');
  return `The nearest that works is ${what} (${changes.map(({ key }) => key).join('; ')}).`;
}

/**
 * The nearest change that works, as a sentence; null when nothing that was tried does.
 * @param ranked every way that was tried without a change, best first
 */
export function* nearestCure(input: SearchInput, judge: Judge, ranked: readonly Candidate[]): Steps<string | null> {
  const [before] = ranked;
  if (!before) return null;
  const changes = [...loosened(input), ...givingWay(input, ranked)];
  const taken: Change[] = [];
  let reached = before;
  let trials = 0;
  while (taken.length < mostTogether) {
    let next: { readonly change: Change; readonly best: Candidate } | null = null;
    const isTaken = (one: Change) => taken.some((other) => keyOf(other) === keyOf(one));
    for (const change of helpful(changes, reached).filter((one) => !isTaken(one))) {
      if (++trials > mostTrials) return null;
      const best = yield* bestUnder([...taken, change], input, judge, ranked);
      if (!best) continue;
      if (passes(best)) return sentence([...taken, change], best, before);
      if (byShortfall(best, next?.best ?? reached) < 0) next = { change, best };
    }
    if (!next) return null;
    taken.push(next.change);
    reached = next.best;
  }
  return null;
}
