/** The same judgement as `validateWithBuilt`, in steps: the quick checks at once, then the slow ones one by one. */
import { asBuilt } from '../inspect/as-built.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { checks, judgementsOf } from './all.ts';
import { builtFindings, newFailures } from './built.ts';
import type { Check } from './check.ts';

/** Findings of slow checks by joint and check, so that parts that are the same are not judged twice. */
export type KnownFindings = Map<string, readonly Finding[]>;

export interface FindingsSoFar {
  readonly findings: readonly Finding[];
  /** Titles of the checks that are still being worked out. */
  readonly open: readonly string[];
}

type Row = readonly { readonly check: Check; readonly findings: readonly Finding[] | null }[];

/** The quick checks of a joint; the slow ones are still open. */
const quickRow = (joint: Joint): Row =>
  checks.map((check) => ({ check, findings: check.isSlow ? null : check.run(joint) }));

const together = (row: Row): Finding[] => row.flatMap(({ findings }) => [...(findings ?? [])]);

function* filled(row: Row, joint: Joint, name: string, known: KnownFindings): Generator<null, Finding[], void> {
  const all: Finding[] = [];
  for (const { check, findings } of row) {
    const key = `${name} ${check.id}`;
    let own = findings ?? known.get(key);
    if (own === undefined) {
      yield null;
      own = check.run(joint);
      known.set(key, own);
    }
    all.push(...own);
  }
  return all;
}

/**
 * Judge a joint in steps. What is yielded first are the quick checks; null is a pause; the end is what `validateWithBuilt` says.
 * @param known slow findings of the same parts from an earlier run; new ones are added
 */
export function* validateInSteps(
  joint: Joint,
  known: KnownFindings = new Map(),
): Generator<FindingsSoFar | null, Finding[], void> {
  const built = asBuilt(joint);
  const row = quickRow(built ?? joint);
  const slow = row.flatMap(({ check, findings }) => (findings === null ? [check.title] : []));
  const ofBuilt = built ? ['What to do with the finished parts'] : [];
  yield { findings: together(row), open: [...slow, ...ofBuilt] };
  const shown = yield* filled(row, built ?? joint, built ? 'built' : 'drawn', known);
  if (!built) return shown;
  yield { findings: shown, open: ofBuilt };
  const drawn = yield* filled(quickRow(joint), joint, 'drawn', known);
  yield null;
  const judgements = judgementsOf(joint, drawn, shown);
  return [...shown, ...builtFindings(built, newFailures(drawn, shown), judgements)];
}
