/** One variant of a sweep as one line: what was varied, the verdict, the findings that are no passes, and the sizes asked for first. */
import type { JobError } from '../job/errors.ts';
import type { Joint } from '../job/joint.ts';
import { revisionOf } from '../job/revision.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import { jointVerdict } from './joint-verdict.ts';
import { worstFirst } from './rank.ts';

/** "bad job": the values do not make a job, or nothing can be drawn from it. */
export type VariantVerdict = Verdict | 'bad job';

/** A finding without its sentences: `check` on the variant tells those. */
export type ShortFinding = Pick<Finding, 'code' | 'feature' | 'verdict' | 'value' | 'limit' | 'margin' | 'unit'>;

export interface VariantRow {
  /** Number of the variant, from 0. */
  readonly index: number;
  /** As typed, by key path. */
  readonly values: Readonly<Record<string, unknown>>;
  readonly verdict: VariantVerdict;
  readonly revision?: string;
  readonly counts?: Readonly<Record<Verdict, number>>;
  /** The pass that uses most of its limit; left out where none has a number. */
  readonly tightest?: ShortFinding;
  readonly numbers?: Readonly<Record<string, number | string | null>>;
  /** Failures, cautions and what was not assessed, worst first. */
  readonly findings?: readonly ShortFinding[];
  /** Of a bad job: key path and sentence. */
  readonly errors?: readonly { readonly path: string; readonly message: string }[];
}

/** Six figures are more than any shop measures. */
const rounded = (value: number | null): number | null =>
  value === null || !Number.isFinite(value) ? null : Number(value.toPrecision(6)) + 0;

const short = ({ code, feature, verdict, value, limit, margin, unit }: Finding): ShortFinding => ({
  code,
  feature,
  verdict,
  value: rounded(value),
  limit: rounded(limit),
  margin: rounded(margin),
  unit,
});

/** Numbers of findings that are wanted as columns of their own: the worst of each code. */
const wanted: Readonly<Record<string, string>> = {
  least_web_mm: 'web-between-holes',
  concentricity_mm: 'concentricity',
  unbalance_gmm: 'joint-unbalance',
  grip_driving_times: 'grip-driving',
  grip_driven_times: 'grip-driven',
};

const screwsText = ({ count, thread, length, class: grade }: Joint['screws'][number]): string =>
  `${count} x ${thread}${length === null ? '' : ` x ${length}`} ${grade}`;

function numbersOf(joint: Joint, ranked: readonly Finding[]): Record<string, number | string | null> {
  const { adapterSpec, adapterMass, wheelMass, clocking, screws } = joint;
  const on = (side: string) =>
    screws
      .filter((group) => group.side === side)
      .map(screwsText)
      .join(' + ');
  return {
    thickness_mm: rounded(adapterSpec.thickness),
    outside_mm: rounded(adapterSpec.outside),
    bore_mm: rounded(adapterSpec.bore),
    clocking_deg: rounded(clocking.angle),
    adapter_g: rounded(adapterMass.mass),
    wheel_g: rounded(wheelMass?.mass ?? null),
    screws_driving: on('driving'),
    screws_driven: on('driven'),
    ...Object.fromEntries(
      Object.entries(wanted).map(([name, code]) => [
        name,
        rounded(ranked.find((finding) => finding.code === code)?.value ?? null),
      ]),
    ),
  };
}

/** Names of the numbers of a row, in the order of their columns. */
export const numberNames: readonly string[] = [
  'thickness_mm',
  'outside_mm',
  'bore_mm',
  'clocking_deg',
  'adapter_g',
  'wheel_g',
  'screws_driving',
  'screws_driven',
  ...Object.keys(wanted),
];

/** The row of a variant that was judged. */
export function variantRow(
  index: number,
  values: Readonly<Record<string, unknown>>,
  joint: Joint,
  findings: readonly Finding[],
): VariantRow {
  const ranked = worstFirst(findings);
  const counts: Record<Verdict, number> = { fail: 0, caution: 0, 'not assessed': 0, pass: 0 };
  for (const { verdict } of findings) counts[verdict] += 1;
  const tightest = ranked.find(({ verdict, margin }) => verdict === 'pass' && margin !== null);
  return {
    index,
    values,
    verdict: jointVerdict(findings),
    revision: revisionOf(joint),
    counts,
    ...(tightest ? { tightest: short(tightest) } : {}),
    numbers: numbersOf(joint, ranked),
    findings: ranked.filter(({ verdict }) => verdict !== 'pass').map(short),
  };
}

/** The row of a variant that is no job. */
export function badVariantRow(
  index: number,
  values: Readonly<Record<string, unknown>>,
  errors: readonly JobError[],
): VariantRow {
  return { index, values, verdict: 'bad job', errors: errors.map(({ path, message }) => ({ path, message })) };
}
