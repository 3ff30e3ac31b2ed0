/** The shipped jobs as the program sees them: found by listing the folder, so that a new one cannot go untested. */
import { readdirSync, readFileSync } from 'node:fs';
import { type Finding, type Joint, judgeJob, type Made, makeFiles, parsePatterns } from '../../src/core.ts';

export const presetFolder = new URL('../../presets/', import.meta.url);

const textOf = (name: string) => readFileSync(new URL(name, presetFolder), 'utf8');

const flangeFiles = readdirSync(new URL('flanges/', presetFolder)).filter((name) => name.endsWith('.yaml'));
export const patterns = parsePatterns(
  Object.fromEntries(flangeFiles.sort().map((name) => [name, textOf(`flanges/${name}`)])),
);

export interface Shipped {
  /** The file's name without its endings. */
  readonly base: string;
  readonly file: string;
  readonly text: string;
  readonly joint: Joint;
  readonly findings: readonly Finding[];
}

/** Every shipped job, judged. A job with errors throws them all. */
export const shipped: readonly Shipped[] = readdirSync(presetFolder)
  .filter((name) => name.endsWith('.job.yaml'))
  .sort()
  .map((file) => {
    const text = textOf(file);
    const judged = judgeJob(text, file, patterns);
    if (!judged.ok) throw new Error(`${file}: ${judged.errors.map((error) => JSON.stringify(error)).join('\n')}`);
    return { base: file.replace('.job.yaml', ''), file, text, joint: judged.joint, findings: judged.findings };
  });

/** A shipped job by its base name. */
export function shippedJob(base: string): Shipped {
  const found = shipped.find((job) => job.base === base);
  if (!found) throw new Error(`no shipped job ${base}`);
  return found;
}

/** All files of a job, in memory. */
export function makeAll({ base, file, joint, findings }: Shipped, force = false): Promise<Made> {
  return makeFiles(joint, findings, { base, jobName: file, only: [], force });
}
