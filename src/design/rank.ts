/** Which of several designs of one job is the best: one visible order. */
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import type { Choice } from './options.ts';

/** A design that was tried, with what the checks say about it. */
export interface Candidate {
  readonly choice: Choice;
  readonly joint: Joint;
  readonly findings: readonly Finding[];
  /** Place in the order of trying; 0 is the usual way. */
  readonly order: number;
}

/** Findings of one verdict. */
export const saying = ({ findings }: Pick<Candidate, 'findings'>, verdict: Finding['verdict']): Finding[] =>
  findings.filter((finding) => finding.verdict === verdict);

export const passes = (candidate: Pick<Candidate, 'findings'>): boolean => saying(candidate, 'fail').length === 0;

/** What there is to cut, beside turning. */
export interface Work {
  /** Counterbores and countersinks. */
  readonly pockets: number;
  readonly threads: number;
  /** Faces from which holes must be worked: the part is turned over on the drill for the second. */
  readonly faces: number;
}

export function workOf({ adapterSpec }: Pick<Joint, 'adapterSpec'>): Work {
  let [pockets, threads] = [0, 0];
  const faces = new Set<string>();
  for (const { shape, positions } of adapterSpec.groups) {
    if (shape.kind === 'dowel') faces.add(shape.face);
    else if (shape.kind === 'tapped') {
      threads += positions.length;
      faces.add(shape.face);
    } else if (shape.head.kind !== 'surface') {
      pockets += positions.length;
      faces.add(shape.headFace);
    }
  }
  return { pockets, threads, faces: faces.size };
}

/** Sizes and masses that differ by less are equal: mm, g. */
const rounding = 1e-6;
const compare = (a: number, b: number) => (Math.abs(a - b) < rounding ? 0 : a - b);

/**
 * The order: fewest failing checks; then the thickest screws, because a thinner one holds less; then, where nothing fails, fewest cautions (those that come from the readings alone are the same for all); then the usual
 * way, so that nothing changes without a reason; then fewest unknowns; then thickness, mass, set-ups and holes to work; then the order of trying.
 * @returns below zero when `a` is the better one; never 0 for two different candidates
 */
export function byMerit(a: Candidate, b: Candidate): number {
  const count = (verdict: Finding['verdict']) => saying(a, verdict).length - saying(b, verdict).length;
  const isUsual = ({ order }: Candidate) => (order === 0 ? 0 : 1);
  const [workA, workB] = [workOf(a.joint), workOf(b.joint)];
  return (
    count('fail') ||
    a.choice.thinner - b.choice.thinner ||
    (passes(a) ? count('caution') : 0) ||
    isUsual(a) - isUsual(b) ||
    count('not assessed') ||
    compare(a.joint.adapterSpec.thickness, b.joint.adapterSpec.thickness) ||
    compare(a.joint.adapterMass.mass, b.joint.adapterMass.mass) ||
    workA.faces - workB.faces ||
    workA.pockets + workA.threads - (workB.pockets + workB.threads) ||
    a.order - b.order
  );
}
