/**
 * The whole story on one page: read a job, resolve its flanges, design the joint, judge it, make the files.
 *
 * Text and data in; text, bytes and data out. No files, no clock, no network, no console: the same code runs in Node and in a
 * browser's worker. Everything that does touch the world stands in src/cli.
 */
import { assumedDefaults } from './design/assumed-defaults.ts';
import { type Choice, type SearchInput, stillOpen, usualChoice } from './design/options.ts';
import { oneDesign, searchDesign, searchInSteps } from './design/search.ts';
import { allSteps, type Steps } from './design/steps.ts';
import { triedRemedies } from './design/tried-remedies.ts';
import type { Designed, Trouble } from './design/trouble.ts';
import { type PutIn, readChanged } from './job/changed-job.ts';
import { parseJobText } from './job/document.ts';
import type { ErrorAt } from './job/errors.ts';
import {
  type FlangePreset,
  findPreset,
  type NearMissPair,
  parseFlangePresets,
  parseNearMisses,
} from './job/flange-presets.ts';
import type { Joint } from './job/joint.ts';
import { type JobError, type JobRead, readJob, textOf } from './job/read.ts';
import { remedyChanges } from './job/remedy-changes.ts';
import { resolveFlange } from './job/resolve-flange.ts';
import { readVariant, type SweepPlan, valuesOf } from './job/vary.ts';
import type { Finding } from './model/finding.ts';
import { badVariantRow, type VariantRow, variantRow } from './report/variant.ts';
import type { Lookup } from './standards/table.ts';
import { validate, validateQuickly, validateWithBuilt } from './validate/all.ts';
import { type KnownFindings, validateInSteps } from './validate/in-steps.ts';

export type { Choice } from './design/options.ts';
export { type AskedPatterns, askedPatterns, type NearPattern, type TypedFlange } from './job/asked-patterns.ts';
export { type Edited, editJob, holdsNothing } from './job/edit.ts';
export type { FlangePreset } from './job/flange-presets.ts';
export type { Joint } from './job/joint.ts';
export { alikeWords, holesWords, registerWords, trustWords } from './job/pattern-words.ts';
export type { JobError } from './job/read.ts';
export { formatErrors, readJob } from './job/read.ts';
export { revisionOf } from './job/revision.ts';
export { jobJsonSchema } from './job/schema.ts';
export { farthestMatch, searchPresets } from './job/search-presets.ts';
export { emptyJob, type StarterAnswers, type StarterFlange, schemaFileName, starterJob } from './job/starter.ts';
export { commaInDoubt } from './job/typed-commas.ts';
export { type TypedValues, typedValues } from './job/typed-values.ts';
export { type Axis, mostVariants, type Planned, placesOf, planSweep, type SweepPlan, valuesOf } from './job/vary.ts';
export type { EditPath } from './job/with-value.ts';
export * from './measure/all.ts';
export type { Finding, Verdict } from './model/finding.ts';
export { type AskedPreflight, askedPreflight } from './preflight/asked.ts';
export { type PreflightOptions, preflightDxf } from './preflight/preflight.ts';
export { flangeSketches } from './products/flanges-so-far.ts';
export { type LiveBody, liveBodies, type ShownAs } from './products/live-bodies.ts';
export {
  type LivePicture,
  type LiveView,
  livePictures,
  liveReport,
  liveView,
} from './products/live-view.ts';
export {
  type Held,
  kindsFor,
  type Made,
  type MakeOptions,
  makeFiles,
  productKinds,
  products,
} from './products/make.ts';
export { type ShownPreflight, shownPreflight } from './products/preflight-shown.ts';
export { reportKind } from './products/report.ts';
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
  | {
      readonly ok: true;
      readonly joint: Joint;
      readonly findings: readonly Finding[];
      /** The way of holding it together that was taken. */
      readonly choice: Choice;
    }
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

type SearchStart = { readonly ok: true; readonly input: SearchInput; readonly errorAt: ErrorAt };

/** What the design starts from, or every error of the job and its flanges. */
function startOf(read: JobRead, patterns: PatternList): SearchStart | Extract<JudgedJob, { ok: false }> {
  if (!read.ok) return read;
  const { job, given, errorAt } = read;
  const known = (flange: { readonly from?: unknown }) => (flange.from === undefined ? [] : patterns.flanges);
  const driving = resolveFlange('driving', job.driving, known(job.driving), errorAt);
  const driven = resolveFlange('driven', job.driven, known(job.driven), errorAt);
  if (!driving.ok || !driven.ok) {
    return { ok: false, errors: [driving, driven].flatMap((flange) => (flange.ok ? [] : [...flange.errors])) };
  }
  const assumptions = [...driving.assumptions, ...driven.assumptions, ...assumedDefaults(job, given)];
  return { ok: true, input: { job, driving: driving.flange, driven: driven.flange, assumptions, given }, errorAt };
}

const troubled = (troubles: readonly Trouble[], errorAt: ErrorAt): Extract<JudgedJob, { ok: false }> => ({
  ok: false,
  errors: troubles.map(({ path, message }) => errorAt(path, message)),
});

function judgeRead(read: JobRead, patterns: PatternList, search: boolean): JudgedJob {
  const start = startOf(read, patterns);
  if (!start.ok) return start;
  if (!search) {
    const made = oneDesign(start.input);
    return made.ok
      ? { ok: true, joint: made.value, findings: validateWithBuilt(made.value), choice: usualChoice }
      : troubled(made.troubles, start.errorAt);
  }
  const found = searchDesign(start.input, validateQuickly);
  if (!found.ok) return troubled(found.troubles, start.errorAt);
  const { joint, choice } = found.value;
  return { ok: true, joint, findings: validateWithBuilt(joint), choice };
}

/**
 * A joint that knows what its remedies come to: each change that a finding asks for is made in the job, and every check is asked again. Parts
 * that are made already are past changing: their joint stays as it is.
 * @param text the job file that was judged, by the name it was judged under
 */
export function* remediesInSteps(
  text: string,
  fileName: string,
  patterns: PatternList,
  { joint, findings, choice }: Extract<JudgedJob, { ok: true }>,
): Steps<Joint> {
  if (joint.job.built !== undefined) return joint;
  const document = parseJobText(textOf(text));
  const remade = (puts: readonly PutIn[]): Designed<Joint> => {
    const start = startOf(readChanged(document, fileName, puts), patterns);
    return start.ok
      ? oneDesign(start.input, stillOpen(choice, start.input.given))
      : { ok: false, troubles: start.errors };
  };
  const tried = yield* triedRemedies(joint, findings, {
    changesIn: (remedy) => remedyChanges(remedy, joint.job.units),
    remade,
    judge: validate,
    judgeQuickly: validateQuickly,
  });
  return { ...joint, tried };
}

/** The same all at once. */
export const withTriedRemedies = (...asked: Parameters<typeof remediesInSteps>): Joint =>
  allSteps(remediesInSteps(...asked));

/** How far a job that is judged in steps has come. */
export interface JudgedSoFar {
  readonly joint: Joint;
  readonly findings: readonly Finding[];
  /** What is still being worked out, in words. */
  readonly open: readonly string[];
}

/** What steps end with: the same as `judgeJob`, and whether the way that was taken is the one that was shown first. */
export type JudgedAtLast = JudgedJob & { readonly isAsShown?: boolean };

/**
 * The same as `judgeJob` in steps, for whoever must show something at once and may want to give up: one way of holding the joint
 * together with its quick checks first, then the slow checks, then the search. Null is a pause.
 * @param choice the way to show first, such as the one that the last search took; what the job has typed since goes before it
 */
export function* judgeInSteps(
  text: string,
  fileName: string,
  patterns: PatternList,
  choice?: Choice,
): Generator<JudgedSoFar | null, JudgedAtLast, void> {
  const start = startOf(readJob(text, fileName), patterns);
  if (!start.ok) return start;
  const { input, errorAt } = start;
  const first = choice && stillOpen(choice, input.given);
  const wished = oneDesign(input, first);
  const guess = wished.ok || !first ? wished : oneDesign(input);
  const shown = guess.ok ? guess.value : null;
  const known: KnownFindings = new Map();
  if (shown) {
    const steps = validateInSteps(shown, known);
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        yield { joint: shown, findings: step.value, open: [searchWords] };
        break;
      }
      yield step.value && { joint: shown, findings: step.value.findings, open: [...step.value.open, searchWords] };
    }
  }
  const search = searchInSteps(input, validateQuickly);
  let found = search.next();
  for (; !found.done; found = search.next()) yield null;
  if (!found.value.ok) return troubled(found.value.troubles, errorAt);
  const { joint } = found.value.value;
  // Parts that are the same need their slow checks only once.
  const isAsShown = shown !== null && isSameMade(shown, joint);
  const last = validateInSteps(joint, isAsShown ? known : new Map());
  let checked = last.next();
  for (; !checked.done; checked = last.next()) yield null;
  return { ok: true, joint, findings: checked.value, choice: found.value.value.choice, isAsShown };
}

const searchWords = 'whether another way of holding it together is better';

/** Whether two joints of one job have the same parts: what was assumed, what else was tried and what would be smaller may differ. */
function isSameMade(a: Joint, b: Joint): boolean {
  const made = ({ assumptions: _, alternatives: __, wheelGrowth: ___, job: ____, ...parts }: Joint) =>
    JSON.stringify(parts);
  return made(a) === made(b);
}
