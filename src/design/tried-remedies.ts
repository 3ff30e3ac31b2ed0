/** Remedies tried before they are told: each change that a finding asks for is made, and every check is asked again. */
import type { Joint } from '../job/joint.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import type { Moved, TriedChange } from '../model/tried.ts';
import type { Judge } from './search-candidates.ts';
import type { Steps } from './steps.ts';
import type { Designed } from './trouble.ts';

/** A change as a remedy's sentence gives it. */
export interface Change<Put> {
  readonly words: string;
  readonly puts: readonly Put[];
}

/** What a trial needs to know of the job. */
export interface Bench<Put> {
  /** Changes that a remedy's sentence names. */
  readonly changesIn: (remedy: string) => readonly Change<Put>[];
  /** The same joint with a change made in the job, and all that was chosen for it left as it is. */
  readonly remade: (puts: readonly Put[]) => Designed<Joint>;
  /** All checks, and all but those that take long. */
  readonly judge: Judge;
  readonly judgeQuickly: Judge;
}

/** No more changes than this are tried. */
const mostTried = 24;

const weight = { pass: 0, 'not assessed': 1, caution: 2, fail: 3 } as const satisfies Record<Verdict, number>;

const depth = ({ margin }: Finding) => margin ?? 0;
const isWorse = (a: Finding, b: Finding) => weight[a.verdict] - weight[b.verdict] || depth(b) - depth(a);

/** The worst that each check says, by its code. */
function worstOf(findings: readonly Finding[]): Map<string, Finding> {
  const worst = new Map<string, Finding>();
  for (const finding of findings) {
    const known = worst.get(finding.code);
    if (!known || isWorse(finding, known) > 0) worst.set(finding.code, finding);
  }
  return worst;
}

/** Changes that findings ask for, each once, with the codes that do; those that more findings ask for first. */
function asked<Put>(findings: readonly Finding[], changesIn: Bench<Put>['changesIn']) {
  const wanted = new Map<string, { readonly change: Change<Put>; readonly codes: Set<string> }>();
  for (const verdict of ['fail', 'caution'] as const)
    for (const { code, remedy } of findings.filter((finding) => finding.verdict === verdict))
      for (const change of changesIn(remedy)) {
        const known = wanted.get(change.words) ?? { change, codes: new Set() };
        known.codes.add(code);
        wanted.set(change.words, known);
      }
  return [...wanted.values()].slice(0, mostTried);
}

/** Verdicts that differ. What is left out of one list is a pass there: it has nothing to judge. */
function movedBetween(before: Map<string, Finding>, after: Map<string, Finding>): Moved[] {
  const codes = [...new Set([...before.keys(), ...after.keys()])];
  return codes.flatMap((code) => {
    const [was, is] = [before.get(code), after.get(code)];
    const verdicts = { before: was?.verdict ?? 'pass', after: is?.verdict ?? 'pass' } as const;
    const title = (is ?? was)?.title ?? code;
    return verdicts.before === verdicts.after ? [] : [{ code, title, ...verdicts }];
  });
}

function outcome(
  words: string,
  codes: ReadonlySet<string>,
  before: Map<string, Finding>,
  after: Map<string, Finding>,
): TriedChange {
  const moved = movedBetween(before, after);
  return {
    words,
    asked: [...codes].flatMap((code) => {
      const was = before.get(code);
      return was ? [{ code, before: was, after: after.get(code) ?? null }] : [];
    }),
    better: moved.filter((one) => weight[one.after] < weight[one.before] && !codes.has(one.code)),
    worse: moved.filter((one) => weight[one.after] > weight[one.before]),
    stopped: null,
  };
}

/**
 * Try what the remedies of a joint's findings say. The slow checks are asked only where a change spoils nothing that the quick ones see, or
 * where a slow one asked for it. One step a change.
 * @param findings all that the checks say of the joint as it is
 */
export function* triedRemedies<Put>(
  joint: Joint,
  findings: readonly Finding[],
  bench: Bench<Put>,
): Steps<TriedChange[]> {
  const before = worstOf(findings);
  const changes = asked(findings, bench.changesIn);
  if (changes.length === 0) return [];
  const quickBefore = worstOf(bench.judgeQuickly(joint));
  const tried: TriedChange[] = [];
  for (const { change, codes } of changes) {
    yield;
    const made = bench.remade(change.puts);
    if (!made.ok) {
      const stopped = made.troubles[0]?.message ?? 'it cannot be drawn';
      tried.push({ ...outcome(change.words, codes, before, before), stopped });
      continue;
    }
    const quick = outcome(change.words, codes, quickBefore, worstOf(bench.judgeQuickly(made.value)));
    const isSlow = [...codes].some((code) => !quickBefore.has(code));
    if (quick.worse.length > 0 && !isSlow) {
      tried.push(quick);
      continue;
    }
    yield;
    tried.push(outcome(change.words, codes, before, worstOf(bench.judge(made.value))));
  }
  return tried;
}
