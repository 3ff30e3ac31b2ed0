/** What a check is, and the few ways of turning a number into a finding. */
import type { Joint } from '../job/joint.ts';
import type { Finding, Verdict } from '../model/finding.ts';

/** One check: what it is called, where it comes from, and how it is run. Its findings always include the passes. */
export interface Check {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** Takes milliseconds: left out while many designs are compared, run for the one that is chosen. */
  readonly isSlow?: boolean;
  run(joint: Joint): readonly Finding[];
}

/** What every finding says beside its number. */
export interface Statement {
  readonly code: string;
  readonly feature: string;
  readonly title: string;
  readonly unit: string;
  readonly why: string;
  /** What to do when it does not pass. */
  readonly cure: string;
  /** What would widen the margin even of a pass; left out where the report's own words do. */
  readonly improve?: string;
  /** Keys of the job that nobody gave and that count as nothing here. */
  readonly notGiven?: readonly string[];
  readonly source: string;
}

/** What a number is held against, and how bad it is to miss it. */
export interface Limit {
  readonly limit: number;
  /** At least: small values are bad. At most: large values are. */
  readonly sense: 'at least' | 'at most';
  /** Not meeting this one is a failure; between the two it is a caution. Left out: missing the limit fails. */
  readonly hard?: number;
  /** The worst that this check can say. Left out: fail. */
  readonly worst?: Verdict;
}

/** Below this, a difference is rounding and not a fault, in the value's own unit. */
const rounding = 1e-6;

/** A number held against a limit. */
export function judged(statement: Statement, value: number, against: Limit): Finding {
  const sign = against.sense === 'at least' ? 1 : -1;
  const margin = sign * (value - against.limit);
  const hardMargin = against.hard === undefined ? margin : sign * (value - against.hard);
  const verdict: Verdict =
    margin >= -rounding ? 'pass' : hardMargin >= -rounding ? 'caution' : (against.worst ?? 'fail');
  return finding(statement, {
    verdict,
    value: tidy(value),
    limit: tidy(against.limit),
    sense: against.sense,
    // A pass by rounding is met exactly, not missed by a hair.
    margin: tidy(verdict === 'pass' ? Math.max(0, margin) : margin),
    remedy: verdict === 'pass' ? '' : statement.cure,
  });
}

/** A yes or no that carries no number. */
export function stated(statement: Statement, verdict: Verdict): Finding {
  const remedy = verdict === 'pass' ? '' : statement.cure;
  return finding(statement, { verdict, value: null, limit: null, margin: null, remedy });
}

/** A check that lacks input: says what is missing and where to give it. */
export function notAssessed(statement: Omit<Statement, 'unit' | 'cure'> & { readonly missing: string }): Finding {
  const remedy = statement.missing;
  return finding(statement, { unit: '', verdict: 'not assessed', value: null, limit: null, margin: null, remedy });
}

/**
 * What a statement says, and how it came out. Copied key by key: rest and spread take ten times as long, and a search makes thousands of
 * findings.
 */
function finding(statement: Omit<Statement, 'unit' | 'cure'>, outcome: Partial<Finding>): Finding {
  const all: Record<string, unknown> = {};
  for (const key in statement)
    if (key !== 'cure' && key !== 'missing') all[key] = statement[key as keyof typeof statement];
  for (const key in outcome) all[key] = outcome[key as keyof Finding];
  return all as unknown as Finding;
}

/** Rounded to a millionth, without a minus zero: findings are for reading and for comparing. */
function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}
