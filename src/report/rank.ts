/** Which finding matters most. */
import type { Finding, Verdict } from '../model/finding.ts';
import { isChance, questions, speaksTo } from './questions.ts';

const order: Readonly<Record<Verdict, number>> = { fail: 0, caution: 1, 'not assessed': 2, pass: 3 };

/** 0 for a failure, then cautions, what was not assessed, passes. */
export const verdictRank = (verdict: Verdict): number => order[verdict];

/** Which way a finding's limit runs; null where it has no number, or where value and limit are equal and nobody said. */
export function senseOf({ sense, value, limit, margin }: Finding): 'at least' | 'at most' | null {
  if (sense !== undefined) return sense;
  if (value === null || limit === null || margin === null || value === limit) return null;
  return margin >= 0 === value < limit ? 'at most' : 'at least';
}

/** How much of what is allowed is used up: 1 at the limit, more beyond it; null where there is nothing to compare. */
export function usedUp(finding: Finding): number | null {
  const { value, limit, margin } = finding;
  if (value === null || limit === null || margin === null || value <= 0 || limit <= 0) return null;
  if (!Number.isFinite(value) || !Number.isFinite(limit)) return null;
  return senseOf(finding) === 'at least' ? limit / value : value / limit;
}

/**
 * The one measure of how near to its limit, or how far past it, a finding is: the share of the limit that is used. What is left of it, in mm or
 * MPa, says nothing of that: 0.1 mm is much of a fit and nothing of a thickness, and a clearance that may be 0 has 0 to spare by design.
 * What has no share (an overlap, a limit of 0) comes first where it is missed and after all that have one where it is met.
 */
export function pressing(finding: Finding): number {
  const used = usedUp(finding);
  if (used !== null) return used;
  const { margin } = finding;
  if (margin === null || Number.isNaN(margin)) return -1;
  return margin < 0 ? Number.POSITIVE_INFINITY : 0;
}

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
