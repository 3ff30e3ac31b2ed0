/** Which finding matters most. */
import type { Finding, Verdict } from '../model/finding.ts';
import { pressing } from '../model/limit-use.ts';
import { isChance, questions, speaksTo } from './questions.ts';

const order: Readonly<Record<Verdict, number>> = { fail: 0, caution: 1, 'not assessed': 2, pass: 3 };

/** 0 for a failure, then cautions, what was not assessed, passes. */
export const verdictRank = (verdict: Verdict): number => order[verdict];

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Worst first: by verdict, then by the share of the limit that is used, then by code and feature so that the order is always one. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => {
    const byVerdict = order[a.verdict] - order[b.verdict];
    if (byVerdict !== 0) return byVerdict;
    const [p, q] = [pressing(a), pressing(b)];
    if (p !== q) return p > q ? -1 : 1;
    return compareText(a.code, b.code) || compareText(a.feature, b.feature) || compareText(a.title, b.title);
  });
}

/**
 * Verdict over all findings: the worst of fail, caution and pass. What was not assessed never makes a pass: when nothing at all
 * was assessed, that is the verdict.
 */
export function overallVerdict(findings: readonly Finding[]): Verdict {
  for (const verdict of ['fail', 'caution', 'pass'] as const) {
    if (findings.some((f) => f.verdict === verdict)) return verdict;
  }
  return 'not assessed';
}

/** Whether a finding speaks of the joint itself; a pass of a size that was chosen to just do is no weakness of it. */
const ofJoint = (finding: Finding): boolean =>
  questions.some(
    (question) =>
      speaksTo(question, finding) &&
      question.isBesides !== true &&
      (finding.verdict !== 'pass' || question.isChosen !== true),
  );

/**
 * The finding that is told first, in the headline and as the weakest link: the worst verdict, and of that the one that uses most of its limit. One
 * without a number only where none has one. What a sensor reads or a controller shows only where nothing of the joint itself is as bad: a shaft that
 * runs off centre is worse than a number to type, however far that is off. A chance likewise: it tells the same sums again.
 */
export function leading(findings: readonly Finding[]): Finding | null {
  const ranked = worstFirst(findings);
  const verdict = overallVerdict(findings);
  const same = ranked.filter((f) => f.verdict === verdict);
  const hasNumber = ({ value, limit }: Finding) => value !== null && limit !== null;
  const choices = [
    (f: Finding) => hasNumber(f) && !isChance(f) && ofJoint(f),
    (f: Finding) => hasNumber(f) && !isChance(f),
    hasNumber,
    () => true,
  ];
  for (const isChoice of choices) {
    const found = same.find(isChoice);
    if (found) return found;
  }
  return ranked[0] ?? null;
}
