/** Why nothing passes: the smallest set of facts that fails every way, in words, and the nearest change that lets one pass. */
import type { Impossible } from '../job/joint.ts';
import type { SearchInput } from './options.ts';
import { type Candidate, saying } from './rank.ts';
import type { Judge } from './search-candidates.ts';
import type { Steps } from './steps.ts';
import { nearestCure } from './why-impossible-cure.ts';
import { factOf } from './why-impossible-fact.ts';

/** Codes that follow from another that fails: they tell nothing new. */
const followers: Readonly<Record<string, string>> = { clocking: 'web-between-holes' };

const failingCodes = (candidate: Candidate): Set<string> => {
  const codes = new Set(saying(candidate, 'fail').map(({ code }) => code));
  for (const code of [...codes]) if (codes.has(followers[code] ?? '')) codes.delete(code);
  return codes;
};

/** Subsets of a list with `size` members, in the list's order. */
function subsets<T>(list: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return list.flatMap((first, i) => subsets(list.slice(i + 1), size - 1).map((rest) => [first, ...rest]));
}

/**
 * The smallest set of checks that fails every way: each alone, where some do; else the fewest that do it together.
 * @param failing the failing codes of each way; none of them empty
 */
export function smallestReason(failing: readonly ReadonlySet<string>[]): {
  readonly codes: readonly string[];
  readonly together: boolean;
} {
  const all = [...new Set(failing.flatMap((codes) => [...codes]))].sort();
  const alone = all.filter((code) => failing.every((codes) => codes.has(code)));
  if (alone.length > 0) return { codes: alone, together: false };
  for (let size = 2; size <= all.length; size++) {
    const found = subsets(all, size).find((set) => failing.every((codes) => set.some((code) => codes.has(code))));
    if (found) return { codes: found, together: true };
  }
  return { codes: all, together: true };
}

/**
 * @param ranked every way that was tried, best first; all of them fail
 */
export function* whyImpossible(input: SearchInput, judge: Judge, ranked: readonly Candidate[]): Steps<Impossible> {
  const { codes, together } = smallestReason(ranked.map(failingCodes));
  return {
    facts: codes.map((code) => factOf(code, ranked)),
    together,
    nearest: yield* nearestCure(input, judge, ranked),
  };
}
