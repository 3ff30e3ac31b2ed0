/** One check that stands in the way of every design, said as a fact about the job's own parts. */

import { allWebs, type Web } from '../geometry/web-pairs.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import type { Feature } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';
import { capital } from '../units/sentence.ts';
import { type Candidate, saying } from './rank.ts';
import { holesText, mmText, screwsOf, wayText } from './search-words.ts';

/** A way and its worst finding of one code. */
interface Reached {
  readonly candidate: Candidate;
  readonly finding: Finding;
}

/** The worst finding of a code in each way that fails it; then the way that comes nearest. */
function nearestMiss(code: string, candidates: readonly Candidate[]): Reached | null {
  const depth = ({ margin }: Finding) => margin ?? Number.NEGATIVE_INFINITY;
  let best: Reached | null = null;
  for (const candidate of candidates) {
    const failing = saying(candidate, 'fail').filter((finding) => finding.code === code);
    const [worst] = failing.sort((a, b) => depth(a) - depth(b));
    if (worst && (!best || depth(worst) > depth(best.finding))) best = { candidate, finding: worst };
  }
  return best;
}

const onAxis = ({ purpose }: Feature) => purpose === 'bore' || purpose === 'recess';

interface Ends {
  readonly web: Web;
  readonly a: Feature;
  readonly b: Feature | null;
}

/** The pair of features that leaves just this much metal. */
function endsOf({ adapter }: Joint, finding: Finding): Ends | null {
  const features = new Map(adapter.features.map((feature) => [feature.id, feature]));
  const featureOf = (id: string) => features.get(adapter.drillings.find((d) => d.id === id)?.feature ?? '') ?? null;
  for (const web of allWebs(adapter)) {
    if (finding.value === null || Math.abs(web.gap - finding.value) > 1e-5) continue;
    const [a, b] = [featureOf(web.a), featureOf(web.b)];
    if (a && a.id === finding.feature) return { web, a, b };
  }
  return null;
}

/** A feature's holes in words. */
function named(joint: Joint, feature: Feature): string {
  const { side } = feature;
  const group = side === 'wheel' ? joint.screws.find((g) => g.side === 'wheel') : side && screwsOf(joint, side);
  return group && !onAxis(feature) ? holesText(joint, group) : `the ${feature.label}`;
}

/** The adapter's registers that a hole comes nearer than allowed, seen along the axis. */
function registersNear(
  { adapter, adapterSpec }: Joint,
  id: string,
  gender: 'male' | 'female',
  limit: number,
): string[] {
  const hole = adapter.drillings.find((drilling) => drilling.id === id);
  if (!hole) return [];
  const inner = hypot(hole.x, hole.y) - Math.max(...hole.profile.map(({ r }) => r));
  const what = gender === 'male' ? 'spigot' : 'recess';
  return (['driving', 'driven'] as const).flatMap((side) => {
    const register = adapterSpec.registers[side];
    const isNear = register?.gender === gender && register.at === 'inner' && register.diameter / 2 + limit > inner;
    return isNear ? [`the ${mmText(register.diameter)} ${what} of the ${side} side`] : [];
  });
}

const left = (gap: number) => (gap < 0 ? `they run ${mmText(-gap)} into each other` : `${mmText(gap)} is left`);

/** Holes against holes, at the clocking. */
function betweenHoles(joint: Joint, { a, b }: Ends, limit: number): string {
  if (!b || a.side === b.side) return `${named(joint, a)} stand too near each other to leave ${mmText(limit)}`;
  const { mode, angle } = joint.clocking;
  const where = mode === 'given' ? `at the ${Number(angle.toFixed(3))} degrees that are typed` : 'at any angle';
  return `${named(joint, a)} cannot clear ${named(joint, b)} by ${mmText(limit)} ${where}`;
}

/** Holes against what is on the axis, or against the outside. */
function besideHoles(joint: Joint, { web, a, b }: Ends, limit: number): string {
  const isAxial = onAxis(a);
  const [hole, id] = isAxial && b ? [b, web.b] : [a, web.a];
  const isOutside = web.b === 'outside';
  const near = registersNear(joint, id, isOutside ? 'male' : 'female', limit);
  const other = isOutside ? 'the outside, the steps and the far face' : named(joint, isAxial ? a : (b ?? a));
  return `${named(joint, hole)} cannot clear ${near.length > 0 ? near.join(' and ') : other} by ${mmText(limit)}`;
}

function webFact({ candidate, finding }: Reached, ways: string): string | null {
  const { joint } = candidate;
  const { code, limit } = finding;
  const ends = endsOf(joint, finding);
  if (!ends || limit === null) return null;
  const reached = `${ways} ${left(ends.web.gap)} (${wayText(joint)})`;
  if (code === 'web-between-holes') return `${betweenHoles(joint, ends, limit)}; ${reached}`;
  return code === 'wall-to-bore' || code === 'wall-to-rim' ? `${besideHoles(joint, ends, limit)}; ${reached}` : null;
}

function threadFact({ candidate, finding }: Reached): string | null {
  const group = candidate.joint.screws.find(({ id }) => id === finding.feature);
  if (!group || group.side === 'wheel' || finding.value === null || finding.limit === null) return null;
  const holder = group.fastening === 'into_flange' ? `the ${group.side} flange` : 'the adapter';
  return `the ${group.thread} thread in ${holder} holds ${mmText(finding.value)} of the screw, and class ${group.class} needs ${mmText(finding.limit)}`;
}

/** Any other check, with its own number. */
function plainFact({ finding }: Reached): string {
  const { title, value, limit, unit, why } = finding;
  const of = (number: number) => (unit === 'mm' ? mmText(number, 3) : `${Number(number.toFixed(3))} ${unit}`.trim());
  const numbers = value === null || limit === null ? '' : `: ${of(value)} at best against ${of(limit)}`;
  return `${title}${numbers}. ${why}`.replace(/\.$/, '');
}

/**
 * The fact behind a code that fails in some ways, told of the way that comes nearest.
 * @param candidates the ways that were tried
 */
export function factOf(code: string, candidates: readonly Candidate[]): string {
  const reached = nearestMiss(code, candidates);
  if (!reached) return `${code} fails.`;
  const ways = candidates.length === 1 ? 'as it is,' : `in the best of ${candidates.length} ways`;
  const fact = code === 'thread-engagement' ? threadFact(reached) : (webFact(reached, ways) ?? plainFact(reached));
  return `${capital(fact ?? plainFact(reached))}.`;
}
