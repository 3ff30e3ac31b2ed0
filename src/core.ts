/**
 * The whole story on one page: read a job, resolve its flanges, design the joint, judge it, make the files.
 *
 * Text and data in; text, bytes and data out. No files, no clock, no network, no console: the same code runs in Node and in a
 * browser's worker. Everything that does touch the world stands in src/cli.
 */
import { assumedDefaults } from './design/assumed-defaults.ts';
import { searchDesign, usualDesign } from './design/search.ts';
import {
  type FlangePreset,
  findPreset,
  type NearMissPair,
  parseFlangePresets,
  parseNearMisses,
} from './job/flange-presets.ts';
import type { Joint } from './job/joint.ts';
import { type JobError, type JobRead, readJob } from './job/read.ts';
import { resolveFlange } from './job/resolve-flange.ts';
import { readVariant, type SweepPlan, valuesOf } from './job/vary.ts';
import type { Finding } from './model/finding.ts';
import { badVariantRow, type VariantRow, variantRow } from './report/variant.ts';
import type { Lookup } from './standards/table.ts';
import { validateQuickly, validateWithBuilt } from './validate/all.ts';

export { type Edited, type EditPath, editJob } from './job/edit.ts';
export type { FlangePreset } from './job/flange-presets.ts';
export type { Joint } from './job/joint.ts';
export type { JobError } from './job/read.ts';
export { formatErrors, readJob } from './job/read.ts';
export { revisionOf } from './job/revision.ts';
export { jobJsonSchema } from './job/schema.ts';
export { searchPresets } from './job/search-presets.ts';
export { type StarterAnswers, type StarterFlange, schemaFileName, starterJob } from './job/starter.ts';
export { type TypedValues, typedValues } from './job/typed-values.ts';
export { type Axis, mostVariants, type Planned, placesOf, planSweep, type SweepPlan, valuesOf } from './job/vary.ts';
export * from './measure/all.ts';
export type { Finding, Verdict } from './model/finding.ts';
export { type AskedPreflight, askedPreflight } from './preflight/asked.ts';
export { type PreflightOptions, preflightDxf } from './preflight/preflight.ts';
export { type LiveBody, type LivePicture, type LiveView, liveBodies, liveView } from './products/live-view.ts';
export { type Held, type Made, type MakeOptions, makeFiles, productKinds, products } from './products/make.ts';
export { type TradeTally, tradeTally } from './products/trade.ts';
export { preflightJson, preflightText } from './report/preflight-text.ts';
export { overallVerdict } from './report/rank.ts';
export { reportData } from './report/report-data.ts';
export { findingJson, reportJson } from './report/report-json.ts';
export { reportText } from './report/report-text.ts';
export type { VariantRow, VariantVerdict } from './report/variant.ts';
export { csvHead, csvLine } from './report/variant-csv.ts';
export { validate } from './validate/all.ts';

/** Known flange patterns and the pairs that are easily taken for each other. */
export interface PatternList {
  readonly flanges: readonly FlangePreset[];
  readonly nearMisses: readonly NearMissPair[];
}

/**
 * The pattern list from its YAML texts, by file name. Read when it is first asked for: most jobs name no pattern.
 * @throws then, on a bad shipped file: that is a bug
 */
export function parsePatterns(texts: Readonly<Record<string, string>>): PatternList {
  const list = Object.entries(texts).map(([file, text]) => ({ file, text }));
  let flanges: readonly FlangePreset[] | undefined;
  let nearMisses: readonly NearMissPair[] | undefined;
  return {
    get flanges() {
      flanges ??= parseFlangePresets(list);
      return flanges;
    },
    get nearMisses() {
      nearMisses ??= parseNearMisses(list);
      return nearMisses;
    },
  };
}

/** A pattern by its id; a miss names the nearest ids. */
export function findPattern(patterns: PatternList, id: string): Lookup<FlangePreset> {
  return findPreset(patterns.flanges, id);
}

/** A joint, designed and judged, or every error of the job at once. */
export type JudgedJob =
  | { readonly ok: true; readonly joint: Joint; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly errors: readonly JobError[] };

export interface JudgeOptions {
  /** Try every way that the job leaves open and take the best; false: the usual way, whatever comes of it. By default true. */
  readonly search?: boolean;
}

/**
 * Read, resolve, design and judge a job.
 * @param text the job file
 * @param fileName how errors name it
 * @param patterns known flange patterns
 */
export function judgeJob(
  text: string,
  fileName: string,
  patterns: PatternList,
  { search = true }: JudgeOptions = {},
): JudgedJob {
  return judgeRead(readJob(text, fileName), patterns, search);
}

/** One variant of a sweep, judged: the same as its job judged alone. Without `search` the usual way is taken. */
export function judgeVariant(plan: SweepPlan, index: number, patterns: PatternList, search = false): VariantRow {
  const values = Object.fromEntries(valuesOf(plan, index).map(({ data }, k) => [plan.axes[k]?.name ?? '', data]));
  const judged = judgeRead(readVariant(plan, index), patterns, search);
  return judged.ok
    ? variantRow(index, values, judged.joint, judged.findings)
    : badVariantRow(index, values, judged.errors);
}

function judgeRead(read: JobRead, patterns: PatternList, search: boolean): JudgedJob {
  if (!read.ok) return read;
  const { job, given, errorAt } = read;
  const known = (flange: { readonly from?: unknown }) => (flange.from === undefined ? [] : patterns.flanges);
  const driving = resolveFlange('driving', job.driving, known(job.driving), errorAt);
  const driven = resolveFlange('driven', job.driven, known(job.driven), errorAt);
  if (!driving.ok || !driven.ok) {
    return { ok: false, errors: [driving, driven].flatMap((flange) => (flange.ok ? [] : [...flange.errors])) };
  }
  const assumptions = [...driving.assumptions, ...driven.assumptions, ...assumedDefaults(job, given)];
  const input = { job, driving: driving.flange, driven: driven.flange, assumptions, given };
  const found = search ? searchDesign(input, validateQuickly) : usualDesign(input);
  if (!found.ok) return { ok: false, errors: found.troubles.map(({ path, message }) => errorAt(path, message)) };
  return { ok: true, joint: found.value.joint, findings: validateWithBuilt(found.value.joint) };
}
