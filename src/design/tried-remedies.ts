/** Remedies tried before they are told: each change that a finding asks for is made, and every check is asked again. */
import type { Joint } from '../job/joint.ts';
import { type Finding, gravity } from '../model/finding.ts';
import { checkedName, type Moved, type TriedChange } from '../model/tried.ts';
import type { Judge } from './search-candidates.ts';
import type { Steps } from './steps.ts';
import type { Designed } from './trouble.ts';

/** A value put into the job. */
interface Put {
  readonly path: readonly (string | number)[];
}

/** A change as a remedy's sentence gives it. */
interface Change<P extends Put> {
  readonly words: string;
  readonly puts: readonly P[];
}

/** What a trial needs to know of the job. */
export interface Bench<P extends Put> {
  /** Changes that a remedy's sentence names. */
  readonly changesIn: (remedy: string) => readonly Change<P>[];
  /** The same joint with a change made in the job, and all that was chosen for it left as it is. */
  readonly remade: (puts: readonly P[]) => Designed<Joint>;
  /** All checks, and all but those that take long. */
  readonly judge: Judge;
  readonly judgeQuickly: Judge;
}

/** A change, and the names of the findings that ask for it. */
interface Wanted<P extends Put> {
  readonly change: Change<P>;
  readonly names: Set<string>;
}

/** No more changes than this are tried. */
const mostTried = 24;

const isOpen = ({ verdict }: Finding): boolean => verdict === 'fail' || verdict === 'caution';

/** The findings by name; of two of one name the worse. */
function byName(findings: readonly Finding[]): Map<string, Finding> {
  const worst = new Map<string, Finding>();
  for (const finding of findings) {
    const name = checkedName(finding);
    const known = worst.get(name);
    const isWorse =
      known && (gravity[finding.verdict] - gravity[known.verdict] || (known.margin ?? 0) - (finding.margin ?? 0)) > 0;
    if (!known || isWorse) worst.set(name, finding);
  }
  return worst;
}

/** Changes that findings ask for, each once: those that failures ask for first. */
function wantedBy<P extends Put>(findings: readonly Finding[], { changesIn }: Bench<P>): Wanted<P>[] {
  const wanted = new Map<string, Wanted<P>>();
  for (const verdict of ['fail', 'caution'] as const)
    for (const finding of findings.filter((one) => one.verdict === verdict))
      for (const change of changesIn(finding.remedy)) {
        const known = wanted.get(change.words) ?? { change, names: new Set() };
        known.names.add(checkedName(finding));
        wanted.set(change.words, known);
      }
  return [...wanted.values()];
}

/** Verdicts that differ. What is left out of one list is a pass there: it has nothing to judge. */
function movedBetween(before: Map<string, Finding>, after: Map<string, Finding>): Moved[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((name) => {
    const [was, is] = [before.get(name), after.get(name)];
    const { code = '', title = '' } = is ?? was ?? {};
    const verdicts = { before: was?.verdict ?? 'pass', after: is?.verdict ?? 'pass' } as const;
    return verdicts.before === verdicts.after ? [] : [{ name, code, title, ...verdicts }];
  });
}

function outcome(
  { change, names }: Wanted<Put>,
  before: Map<string, Finding>,
  after: Map<string, Finding>,
): TriedChange {
  const moved = movedBetween(before, after);
  return {
    words: change.words,
    asked: [...names].flatMap((name) => {
      const was = before.get(name);
      return was ? [{ name, code: was.code, before: was, after: after.get(name) ?? null }] : [];
    }),
    better: moved.filter((one) => gravity[one.after] < gravity[one.before] && !names.has(one.name)),
    worse: moved.filter((one) => gravity[one.after] > gravity[one.before]),
    stopped: null,
  };
}

/** Whether two changes are about the same key, or one about a key within the other's. */
function isAbout<P extends Put>(one: Change<P>, other: Change<P>): boolean {
  const paths = (change: Change<P>) => change.puts.map(({ path }) => path.join('.'));
  return paths(one).some((a) => paths(other).some((b) => `${a}.`.startsWith(`${b}.`) || `${b}.`.startsWith(`${a}.`)));
}

/** More of the same, where a change was not enough: what the findings that asked for it say then about its own key. */
function further<P extends Put>({ change }: Wanted<P>, { asked }: TriedChange, bench: Bench<P>): Wanted<P>[] {
  return asked.flatMap(({ name, after }) =>
    after && isOpen(after)
      ? bench
          .changesIn(after.remedy)
          .filter((more) => more.words !== change.words && isAbout(more, change))
          .map((more) => ({ change: more, names: new Set([name]) }))
      : [],
  );
}

/**
 * Try what the remedies of a joint's findings say, and once more where a remedy falls short and its finding then asks for more of the same. The slow
 * checks are asked only where a change spoils nothing that the quick ones see, or where a slow one asked for it. One step a change.
 * @param findings all that the checks say of the joint as it is
 */
export function* triedRemedies<P extends Put>(
  joint: Joint,
  findings: readonly Finding[],
  bench: Bench<P>,
): Steps<TriedChange[]> {
  const first = wantedBy(findings, bench);
  if (first.length === 0) return [];
  const before = byName(findings);
  const quickBefore = byName(bench.judgeQuickly(joint));
  const results = new Map<Wanted<P>, TriedChange>();
  /** What was tried as more of a change that fell short. */
  const more = new Map<Wanted<P>, readonly Wanted<P>[]>();
  const queue = [...first];
  for (const wanted of queue) {
    if (results.size === mostTried) break;
    yield;
    const made = bench.remade(wanted.change.puts);
    if (!made.ok) {
      const stopped = made.troubles[0]?.message ?? 'It cannot be drawn.';
      results.set(wanted, { ...outcome(wanted, before, before), stopped });
      continue;
    }
    let result = outcome(wanted, quickBefore, byName(bench.judgeQuickly(made.value)));
    const isSlow = [...wanted.names].some((name) => !quickBefore.has(name));
    if (result.worse.length === 0 || isSlow) {
      yield;
      result = outcome(wanted, before, byName(bench.judge(made.value)));
    }
    results.set(wanted, result);
    if (!first.includes(wanted)) continue;
    const known = new Set(queue.map(({ change }) => change.words));
    const next = further(wanted, result, bench).filter(({ change }) => !known.has(change.words));
    more.set(wanted, next);
    queue.push(...next);
  }
  return [...results].flatMap(([wanted, result]) =>
    told(
      result,
      (more.get(wanted) ?? []).flatMap((next) => results.get(next) ?? []),
    ),
  );
}

/** A result without the findings that more of the same cures: of them the half measure is not told. */
function told(result: TriedChange, followers: readonly TriedChange[]): TriedChange[] {
  const cured = followers.flatMap(({ asked, stopped }) =>
    stopped === null ? asked.flatMap(({ name, after }) => (after && after.verdict !== 'pass' ? [] : [name])) : [],
  );
  const asked = result.asked.filter(({ name }) => !cured.includes(name));
  return asked.length > 0 ? [{ ...result, asked }] : [];
}
