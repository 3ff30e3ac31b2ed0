/**
 * The wheel's bore turned to its register, where the bore as it is cut puts a verdict in doubt. A bore that is turned is one operation more, so
 * it is taken only where it cures something and makes nothing worse.
 */
import { type Finding, gravity } from '../model/finding.ts';
import { designJoint } from './design-joint.ts';
import { type Choice, mayTurnWheel, type SearchInput, withChoice } from './options.ts';
import { type Candidate, saying } from './rank.ts';
import type { Judge } from './search-candidates.ts';
import type { Steps } from './steps.ts';
import { asTyped } from './wheel-size.ts';

/** The zone that cures name: a light last cut, and it still slides over a shoulder of h7. */
const closer = 'H8';

/** What hangs on how far the wheel may shift on its register. */
const hangsOnIt = new Set([
  'wheel-runout',
  'joint-unbalance',
  'sensor-gap',
  'sensor-gap-high',
  'sensor-gap-low',
  'sensor-over-teeth',
]);

/** The worst that each check says of each feature. */
function verdicts(findings: readonly Finding[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { code, feature, verdict } of findings) {
    const key = `${code} ${feature}`;
    found.set(key, Math.max(found.get(key) ?? 0, gravity[verdict]));
  }
  return found;
}

/** What the closer bore cures, by the findings as they stand without it; empty where it cures nothing or makes something worse. */
function cured(asCut: Candidate, turned: Candidate): Finding[] {
  const [before, after] = [verdicts(asCut.findings), verdicts(turned.findings)];
  if ([...after].some(([key, verdict]) => verdict > (before.get(key) ?? 0))) return [];
  return [...saying(asCut, 'fail'), ...saying(asCut, 'caution')].filter(
    ({ code, feature }) => hangsOnIt.has(code) && after.get(`${code} ${feature}`) === gravity.pass,
  );
}

/** A finding's number beside its limit, as the reason tells it. */
const against = ({ title, value, limit, unit, sense }: Finding): string =>
  value === null || limit === null
    ? title
    : `${title} ${Number(value.toPrecision(3))} ${unit}, ${sense === 'at least' ? 'at least' : 'at most'} ${Number(limit.toPrecision(3))} ${unit}`;

/**
 * The same design with the wheel's bore turned to its register, where that cures what the bore as cut puts in doubt; else the design as it is.
 * What was typed of the bore stays (wheel.fit, .clearance, .bore), and a wheel that is set true with a dial has no need of it.
 */
export function* withCloserWheel(input: SearchInput, judge: Judge, best: Candidate): Steps<Candidate> {
  const inDoubt = [...saying(best, 'fail'), ...saying(best, 'caution')].some(({ code }) => hangsOnIt.has(code));
  if (!inDoubt || input.job.wheel?.fit !== 'auto' || !mayTurnWheel(input.given)) return best;
  yield;
  const choice: Choice = { ...best.choice, wheel: { fit: closer } };
  const made = designJoint({ ...input, job: withChoice(input.job, choice) });
  if (!made.ok) return best;
  const joint = asTyped(made.value, input.job);
  const turned: Candidate = { ...best, choice, joint, findings: judge(joint) };
  const [first] = cured(best, turned);
  if (!first) return best;
  const from = `chosen: turned to its register after cutting; with the bore as it is cut ${against(first)}. wheel.fit: auto, written down, leaves it as cut`;
  // The clearance of a bore as cut counts no more.
  const others = joint.assumptions.filter(({ path }) => path !== 'wheel.clearance');
  const assumptions = [...others, { path: 'wheel.fit', value: closer, from, memory: false }];
  return { ...turned, joint: { ...joint, assumptions } };
}
