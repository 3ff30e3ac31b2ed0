/** Findings of a pre-flight that carry a number or a plain yes. */
import type { Verdict } from '../model/finding.ts';
import type { Place, PlacedFinding } from '../model/preflight.ts';

export interface Words {
  readonly code: string;
  readonly title: string;
  readonly unit?: string;
  readonly why: string;
  readonly cure?: string;
  readonly source?: string;
  readonly places?: readonly Place[];
}

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;

/** Below this a difference is rounding, mm. */
const rounding = 1e-6;

function finding(words: Words, verdict: Verdict, value: number | null, limit: number | null): PlacedFinding {
  const place = words.places?.[0];
  return {
    code: words.code,
    feature: place === undefined || place.entity === 0 ? 'file' : `entity-${place.entity}`,
    title: words.title,
    verdict,
    value: value === null ? null : tidy(value),
    limit: limit === null ? null : tidy(limit),
    unit: words.unit ?? '',
    margin: null,
    why: words.why,
    remedy: verdict === 'pass' ? '' : (words.cure ?? ''),
    source: words.source ?? 'read from the file',
    places: words.places ?? [],
  };
}

/** A statement with a number or without one. */
export const told = (words: Words, verdict: Verdict, value: number | null = null): PlacedFinding =>
  finding(words, verdict, value, null);

export interface HeldAgainst {
  readonly limit: number;
  readonly sense: 'at least' | 'at most';
  /** Missing this one fails, between the two is a caution; left out: the limit itself. */
  readonly hard?: number;
  readonly worst?: Verdict;
}

/** A number against a limit. */
export function held(words: Words, value: number, against: HeldAgainst): PlacedFinding {
  const sign = against.sense === 'at least' ? 1 : -1;
  const margin = sign * (value - against.limit);
  const hard = sign * (value - (against.hard ?? against.limit));
  const verdict = margin >= -rounding ? 'pass' : hard >= -rounding ? 'caution' : (against.worst ?? 'fail');
  return { ...finding(words, verdict, value, against.limit), margin: tidy(margin) };
}

/** What could not be judged: says what to give. */
export function unjudged(words: Omit<Words, 'cure'> & { readonly missing: string }): PlacedFinding {
  const { missing, ...rest } = words;
  return finding({ ...rest, cure: missing }, 'not assessed', null, null);
}
