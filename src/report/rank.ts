/** Which finding matters most. */
import type { Finding, Verdict } from '../model/finding.ts';

const order: Readonly<Record<Verdict, number>> = { fail: 0, caution: 1, 'not assessed': 2, pass: 3 };

/** 0 for a failure, then cautions, what was not assessed, passes. */
export const verdictRank = (verdict: Verdict): number => order[verdict];

/** Margin as a share of the limit (or of the value when the limit is 0); Infinity when there is no number. */
function share(finding: Finding): number {
  const { margin, limit, value } = finding;
  if (margin === null || !Number.isFinite(margin)) return Infinity;
  const size = Math.abs(limit ?? 0) || Math.abs(value ?? 0) || 1;
  return margin / size;
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Worst first: by verdict, then by the smallest margin for its limit, then by code and feature so that the order is always one. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => {
    const byVerdict = order[a.verdict] - order[b.verdict];
    if (byVerdict !== 0) return byVerdict;
    const [p, q] = [share(a), share(b)];
    if (p !== q) return p < q ? -1 : 1;
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

/** The finding with the number that matters most: the worst one that has a value and a limit, else the worst one. */
export function leading(findings: readonly Finding[]): Finding | null {
  const ranked = worstFirst(findings);
  const worst = ranked[0];
  if (worst === undefined) return null;
  const verdict = overallVerdict(findings);
  const same = ranked.filter((f) => f.verdict === verdict);
  return same.find((f) => f.value !== null && f.limit !== null) ?? same[0] ?? worst;
}
