/** The verdict on a whole joint: no pass while one of the questions that matter most is open. */
import type { Finding, Verdict } from '../model/finding.ts';
import { openQuestions } from './answers.ts';
import { overallVerdict } from './rank.ts';

/**
 * As `overallVerdict`, but what would be a pass is "not assessed" while nobody knows whether the joint stays centred, balanced and tight and its
 * metal is strong enough: two flanges without a torque and a speed are not known to be good.
 */
export function jointVerdict(findings: readonly Finding[]): Verdict {
  const verdict = overallVerdict(findings);
  return verdict === 'pass' && openQuestions(findings).length > 0 ? 'not assessed' : verdict;
}
