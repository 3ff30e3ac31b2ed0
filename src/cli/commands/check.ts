/** `check JOB`: every finding, worst first. Touches no file. */
import { basename } from 'node:path';
import {
  formatErrors,
  judgeJob,
  overallVerdict,
  reportData,
  reportJson,
  reportText,
  revisionOf,
  withTriedRemedies,
} from '../../core.ts';
import { exit, type Io } from '../io.ts';
import { loadPatterns } from '../presets.ts';
import { readText } from '../read-text.ts';
import { jsonText } from '../shown.ts';

export interface CheckArguments {
  readonly job: string;
  readonly json: boolean;
}

/** Errors of a bad job: plain on standard error; with --json, as JSON on standard output too. */
export function reportErrors(io: Io, errors: Parameters<typeof formatErrors>[0], text: string, json: boolean): number {
  io.err(`${formatErrors(errors, text)}\n`);
  if (json) io.out(jsonText({ errors }));
  return exit.badJob;
}

export async function check(io: Io, { job, json }: CheckArguments): Promise<number> {
  const text = await readText(io, job);
  const patterns = await loadPatterns();
  const judged = judgeJob(text, basename(job), patterns);
  if (!judged.ok) return reportErrors(io, judged.errors, text, json);
  const joint = withTriedRemedies(text, basename(job), patterns, judged);
  const data = reportData(joint, judged.findings, null, revisionOf(joint));
  io.out(json ? jsonText(reportJson(data, job)) : reportText(data, { paint: io.paint }));
  return overallVerdict(judged.findings) === 'fail' ? exit.checkFailed : exit.clean;
}
