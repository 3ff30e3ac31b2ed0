/** `make JOB`: every file and the report. Files that send metal to a machine are held back while a check fails. */
import { createHash } from 'node:crypto';
import { basename, join, resolve } from 'node:path';
import {
  findingJson,
  judgeJob,
  type Made,
  makeFiles,
  productKinds,
  reportData,
  reportText,
  revisionOf,
  withTriedRemedies,
} from '../../core.ts';
import { exit, type Io, UsageError } from '../io.ts';
import { loadPatterns } from '../presets.ts';
import { readText } from '../read-text.ts';
import { jsonText, shown } from '../shown.ts';
import { writeAll } from '../write-all.ts';
import { reportErrors } from './check.ts';

export interface MakeArguments {
  readonly job: string;
  readonly out: string;
  readonly only: readonly string[];
  readonly force: boolean;
  readonly json: boolean;
}

/** Start of the file names: the job file's name without its ending, safe on every file system. */
export function baseName(job: string): string {
  const name = basename(job).replace(/(\.job)?\.ya?ml$/i, '');
  const safe = name.replace(/[^\p{L}\p{N}._-]+/gu, '-').replace(/^[-.]+|[-.]+$/g, '');
  return safe === '' ? 'joint' : safe.slice(0, 80);
}

function checkKinds(only: readonly string[]): string[] {
  const kinds = only
    .flatMap((entry) => entry.split(','))
    .map((kind) => kind.trim())
    .filter((kind) => kind !== '');
  const unknown = kinds.find((kind) => !productKinds.includes(kind));
  if (unknown !== undefined)
    throw new UsageError(`--only ${unknown}: there is no such kind. Known: ${productKinds.join(', ')}.`);
  return kinds;
}

function asJson(made: Made, folder: string, findings: Parameters<typeof findingJson>[0][]): string {
  const files = made.files.map(({ kind, name, bytes }) => ({
    kind,
    path: join(folder, name),
    bytes: bytes.length,
    sha256: createHash('sha256').update(bytes).digest('hex'),
  }));
  const held = made.held.map(({ kind, why }) => ({ kind, why }));
  return jsonText({ verdict: made.verdict, files, held, findings: findings.map(findingJson) });
}

export async function make(io: Io, args: MakeArguments): Promise<number> {
  const only = checkKinds(args.only);
  const text = await readText(io, args.job);
  const patterns = await loadPatterns();
  const judged = judgeJob(text, basename(args.job), patterns);
  if (!judged.ok) return reportErrors(io, judged.errors, text, args.json);
  const { findings } = judged;
  const joint = withTriedRemedies(text, basename(args.job), patterns, judged);
  const made = await makeFiles(joint, findings, {
    base: baseName(args.job),
    jobName: args.job,
    only,
    force: args.force,
  });

  // An outline from an earlier, passing version of this job must not lie about under its good name.
  const stale = made.held.flatMap((held) => [...held.names]);
  const retired = await writeAll(resolve(io.cwd, args.out), made.files, stale);

  if (args.json) {
    io.out(asJson(made, args.out, [...findings]));
  } else {
    const list = {
      made: made.files.map(({ kind, name, bytes }) => ({ kind, path: join(args.out, name), bytes: bytes.length })),
      held: made.held,
    };
    io.out(reportText(reportData(joint, findings, list, revisionOf(joint)), { paint: io.paint, passes: false }));
  }
  if (made.held.length > 0) io.err('What is held back is made all the same with --force, marked as failed inside.\n');
  for (const name of retired)
    io.err(`${shown(join(args.out, name))} came from an earlier version of this job: it is now ${name}.old.\n`);
  return made.verdict === 'fail' ? exit.checkFailed : exit.clean;
}
