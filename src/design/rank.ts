/** Which of several designs of one job is the best: one visible order. */
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { pressing } from '../model/limit-use.ts';
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

/** How far a way is from passing. */
export interface Shortfall {
  /** Failures that no number measures: what runs into each other, what cannot go together. */
  readonly stuck: number;
  /** Squares of the shares by which the limits are overstepped, added up; 0 where nothing fails. */
  readonly short: number;
}

/** A share counts to so many parts of a limit: what is less is no reason to take another screw. */
const parts = 100;
const over = (share: number): number => Math.max(0, Math.round(parts * share) / parts - 1);

/** What is ranked: its findings, and the joint's duty where there is one. */
export type Ranked = Pick<Candidate, 'findings'> & {
  readonly joint?: { readonly job: { readonly duty?: { readonly reversing?: boolean | undefined } | undefined } };
};

/**
 * What a face lacks that slips: the less of what its friction and its dowels lack, because either may carry the torque alone and the two are
 * never added up. Null where it has no dowels, where the torque reverses (they are no cure then), or where nothing says how much they carry.
 */
function heldByDowels({ findings, joint }: Ranked, grip: Finding): number | null {
  if (joint?.job.duty?.reversing) return null;
  const dowels = findings.find(({ code }) => code === grip.code.replace('grip-', 'dowel-shear-'));
  return dowels && dowels !== grip && dowels.limit !== null ? Math.min(pressing(grip), pressing(dowels)) : null;
}

/**
 * How far a way is from passing, in shares of the limits that it misses: 1.43 for a safety of 0.875 against 1.25. Squares, so that the largest miss
 * weighs most and a small one beside it little. With more load every share of it grows, and that of the weaker way faster: once a stronger way
 * comes nearer, no more load turns it back.
 */
export function shortfallOf(candidate: Ranked): Shortfall {
  let [stuck, short] = [0, 0];
  for (const finding of saying(candidate, 'fail')) {
    const share = heldByDowels(candidate, finding) ?? pressing(finding);
    if (share < 1 || !Number.isFinite(share)) stuck++;
    else short += over(share) ** 2;
  }
  return { stuck, short };
}

/** @returns below zero when `a` is nearer to passing */
export function byShortfall(a: Ranked, b: Ranked): number {
  const [one, two] = [shortfallOf(a), shortfallOf(b)];
  return one.stuck - two.stuck || compare(one.short, two.short) || saying(a, 'fail').length - saying(b, 'fail').length;
}

/**
 * The order: those that pass; then what is nearest to passing; then the thickest screws, because a thinner one holds less; then, where nothing fails,
 * fewest cautions (those that come from the readings alone are the same for all); then the usual way, so that nothing changes without a reason; then
 * fewest unknowns; then thickness, mass, set-ups and holes to work; then the order of trying.
 * @returns below zero when `a` is the better one; never 0 for two different candidates
 */
export function byMerit(a: Candidate, b: Candidate): number {
  const count = (verdict: Finding['verdict']) => saying(a, verdict).length - saying(b, verdict).length;
  const isUsual = ({ order }: Candidate) => (order === 0 ? 0 : 1);
  const [workA, workB] = [workOf(a.joint), workOf(b.joint)];
  return (
    Number(passes(b)) - Number(passes(a)) ||
    byShortfall(a, b) ||
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
