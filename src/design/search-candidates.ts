/** Designs and judges the choices that a job leaves open, as many as are needed to know the best. */
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { designJoint } from './design-joint.ts';
import { type Choice, choicesFor, type SearchInput, withChoice } from './options.ts';
import { type Candidate, passes } from './rank.ts';
import type { Steps } from './steps.ts';
import type { Trouble } from './trouble.ts';
import { asTyped } from './wheel-size.ts';

/** The checks, handed in: a design proposes, it does not judge itself. */
export type Judge = (joint: Joint) => readonly Finding[];

/** No more choices than this are tried. */
const mostTried = 150;

/** What came of trying. */
export interface Trial {
  /** In the order of trying, each design once. */
  readonly candidates: readonly Candidate[];
  /** Choices that were looked at, those that cannot be drawn and those that come to the same design included. */
  readonly tried: number;
  /** Why the usual way cannot be drawn; empty when it can. */
  readonly troubles: readonly Trouble[];
  /** What first stands in the way of each that cannot be drawn. */
  readonly undrawn: readonly Trouble[];
}

/** What tells one design from another: how each group of screws holds. */
export function kindOf({ screws }: Pick<Joint, 'screws'>, withSize = true): string {
  return screws
    .filter(({ side }) => side !== 'wheel')
    .map(({ side, fastening, thread, head, seat }) =>
      // Outside of the adapter a head is what its class is made with: no other kind of design.
      [side, fastening, ...(withSize ? [thread] : []), ...(seat === 'outside' ? [] : [head.kind]), seat].join(' '),
    )
    .join(', ');
}

/**
 * Try the choices, thickest screws first. When some design passes, thinner screws cannot rank above it and are not tried. One step a
 * choice.
 * @param choices thickest screws first, the usual way first among them
 */
export function* tryChoices(
  input: SearchInput,
  judge: Judge,
  choices: readonly Choice[] = choicesFor(input).slice(0, mostTried),
): Steps<Trial> {
  const candidates: Candidate[] = [];
  const known = new Set<string>();
  let troubles: readonly Trouble[] = [];
  const undrawn: Trouble[] = [];
  let tried = 0;
  let enough = Number.POSITIVE_INFINITY;
  for (const [order, choice] of choices.entries()) {
    if (choice.thinner > enough) break;
    yield;
    tried++;
    const made = designJoint({ ...input, job: withChoice(input.job, choice) });
    if (!made.ok) {
      if (order === 0) troubles = made.troubles;
      undrawn.push(...made.troubles.slice(0, 1));
      continue;
    }
    const joint = asTyped(made.value, input.job);
    const kind = kindOf(joint);
    if (known.has(kind)) continue;
    known.add(kind);
    const candidate = { choice, joint, findings: judge(joint), order };
    candidates.push(candidate);
    if (passes(candidate)) enough = choice.thinner;
  }
  return { candidates, tried, troubles, undrawn };
}
