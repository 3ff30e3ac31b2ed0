/** How much of its limit a finding uses. */
import type { Finding } from './finding.ts';

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
