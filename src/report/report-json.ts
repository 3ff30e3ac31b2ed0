/** The report as `check --json` prints it. The shape is fixed; keys stand in this order. */
import type { Assumption, Finding, Verdict } from '../model/finding.ts';
import type { ReportData } from './report-data.ts';
import { sheetJson } from './sheet-lines.ts';
import type { TriedJson } from './tried-words.ts';

export interface CheckJson {
  /** The job file's name as it was given. */
  readonly job: string;
  readonly title: string;
  readonly verdict: Verdict;
  readonly findings: readonly Finding[];
  readonly assumed: readonly Assumption[];
  /** Remedies that can be typed, each tried on this job; left out where there are none. */
  readonly tried?: readonly TriedJson[];
  /** Flat parts with the pre-flight of their files; in the report's file only. */
  readonly sheet?: ReturnType<typeof sheetJson>;
}

/** JSON has no NaN or Infinity: a number that is none becomes null. */
const finite = (value: number | null): number | null => (value !== null && Number.isFinite(value) ? value + 0 : null);

/** A finding with its keys in the published order and nothing else. */
export function findingJson(f: Finding): Finding {
  return {
    code: f.code,
    feature: f.feature,
    title: f.title,
    value: finite(f.value),
    limit: finite(f.limit),
    unit: f.unit,
    verdict: f.verdict,
    margin: finite(f.margin),
    why: f.why,
    remedy: f.remedy,
    source: f.source,
  };
}

/** The report as an object ready for JSON.stringify. `job` is the job file's name as it was given. */
export function reportJson(report: ReportData, job: string): CheckJson {
  return {
    job,
    title: report.title,
    verdict: report.verdict,
    findings: report.findings.map(findingJson),
    assumed: report.assumptions.map(({ path, value, from, memory }) => ({ path, value, from, memory })),
    ...(report.triedJson.length > 0 ? { tried: report.triedJson } : {}),
    ...(report.sheet.length > 0 ? { sheet: sheetJson(report.sheet, report.units) } : {}),
  };
}
