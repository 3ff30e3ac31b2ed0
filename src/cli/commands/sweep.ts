/** `sweep JOB`: every combination of several values of some keys, judged on all cores; rows, CSV and a picture of the trade. */
import { createHash } from 'node:crypto';
import { mkdir, rename, rm } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { planSweep, type SweepPlan, type TradeTally, tradeTally } from '../../core.ts';
import { exit, type Io, UsageError } from '../io.ts';
import { progressBar } from '../progress.ts';
import { readText } from '../read-text.ts';
import { jsonText, shown } from '../shown.ts';
import {
  isRunning,
  openRows,
  readMark,
  type SweepPaths,
  sizeOf,
  sweepPaths,
  takeUp,
  writeCsv,
  writeText,
} from '../sweep-files.ts';
import { runPool } from '../sweep-pool.ts';
import { version } from '../version.ts';
import { reasons } from '../write-all.ts';
import { reportErrors } from './check.ts';
import { baseName } from './make.ts';

export interface SweepArguments {
  readonly job: string;
  readonly vary: readonly string[];
  readonly out: string;
  readonly workers?: number | undefined;
  readonly search: boolean;
  readonly resume: boolean;
  readonly json: boolean;
}

/** Variants that a thread judges at a time: short enough that Ctrl-C is answered at once. */
const stretchOf = (search: boolean): number => (search ? 8 : 50);

/** The same only for the same job, values, way of judging and program. */
function keyOf(text: string, vary: readonly string[], search: boolean): string {
  return createHash('sha256')
    .update(JSON.stringify([version, text, vary, search]))
    .digest('hex');
}

/** A sentence for what stops a disk; a bug stays one. */
function userError(error: unknown, folder: string, done: number): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const reason = reasons[code] ?? (code === 'EISDIR' ? 'a folder stands where a file should be' : undefined);
  if (reason === undefined) return error;
  const kept = done > 0 ? ` ${done} variants are kept: --resume goes on with them.` : '';
  return new UsageError(`The sweep cannot be written to ${folder}: ${reason}.${kept}`);
}

/** Make the part file ready. @returns how many of its rows stand already */
async function start(paths: SweepPaths, key: string, resume: boolean, tally: TradeTally): Promise<number> {
  const mark = await readMark(paths.partPlan);
  if (mark && isRunning(mark))
    throw new UsageError(
      `Another sweep of this job is being written there (process ${mark.process}): wait for it, or choose another folder with -o.`,
    );
  if (!resume) {
    if (mark?.key === key && (await sizeOf(paths.part)) > 0)
      throw new UsageError(
        `A part of this sweep is there already: go on with --resume, or delete ${paths.part} to start anew.`,
      );
    await rm(paths.part, { force: true });
  } else if (mark?.key !== key || (await sizeOf(paths.part)) === 0) {
    const old = await readMark(paths.plan);
    if (old?.key === key && (await sizeOf(paths.rows)) > 0) await rename(paths.rows, paths.part);
    else if (mark || old)
      throw new UsageError(
        'What stands there belongs to another sweep: the job, the values or the program have changed. Start anew without --resume.',
      );
    else await rm(paths.part, { force: true });
  }
  await writeText(paths.partPlan, `${JSON.stringify({ key, process: process.pid })}\n`);
  return resume ? takeUp(paths.part, ({ index, verdict }) => tally.add(index, verdict)) : 0;
}

export async function sweep(io: Io, args: SweepArguments): Promise<number> {
  const text = await readText(io, args.job);
  const file = basename(args.job);
  const planned = planSweep(text, file, args.vary);
  if (!planned.ok) {
    if (planned.errors) return reportErrors(io, planned.errors, text, args.json);
    throw new UsageError(planned.why);
  }
  const { plan } = planned;
  const names = plan.axes.map(({ name }) => name);
  const tally = tradeTally(plan);
  const folder = resolve(io.cwd, args.out);
  const paths = sweepPaths(join(folder, baseName(args.job)));
  const told = sweepPaths(join(args.out, baseName(args.job)));

  let done = 0;
  let isStopped = false;
  let bug: string | null = null;
  let trouble: string | null = null;
  const stop = () => {
    isStopped = true;
  };
  // The first Ctrl-C ends the sweep in order; the second ends the program.
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
  try {
    await mkdir(folder, { recursive: true });
    const key = keyOf(text, args.vary, args.search);
    done = await start(paths, key, args.resume, tally);
    const bar = progressBar(io, done, plan.count);
    const rows = await openRows(paths.part);
    try {
      if (done < plan.count) {
        await runPool({
          task: { text, file, vary: args.vary, search: args.search },
          from: done,
          count: plan.count,
          workers: args.workers ?? availableParallelism(),
          stretch: stretchOf(args.search),
          isStopped: () => isStopped,
          take: async (judged) => {
            await rows.add(judged.lines);
            for (const [i, verdict] of judged.verdicts.entries()) tally.add(judged.from + i, verdict);
            bug ??= judged.bug;
            trouble ??= judged.trouble;
            done = judged.to;
            bar.at(done);
          },
        });
      }
    } finally {
      bar.end();
      await rows.close();
    }
    await writeCsv(paths.part, paths.csv, names);
    await writeText(paths.picture, tally.picture(titleOf(plan, args.job, done)));
    const counts = tally.counts();
    const summary = {
      key,
      job: args.job,
      variants: plan.count,
      done,
      search: args.search,
      varied: names,
      verdicts: counts,
    };
    await writeText(paths.plan, jsonText(summary));
    await rename(paths.part, paths.rows);
    await rm(paths.partPlan, { force: true });
    const files = [told.rows, told.csv, told.picture, told.plan];
    io.out(args.json ? jsonText({ ...summary, files }) : shown(summaryText(plan, done, counts, files)));
    if (trouble !== null) io.err(`Some values make no job; the first of them, ${shown(trouble)}\n`);
    if (bug !== null) {
      io.err(`flangewright: this is a bug in the program, not in your job.\n${bug}\n`);
      return exit.bug;
    }
    if (done < plan.count) {
      io.err(`Stopped after ${done} of ${plan.count} variants: the same command with --resume goes on.\n`);
      return exit.stopped;
    }
    return counts.pass + counts.caution > 0 ? exit.clean : exit.checkFailed;
  } catch (error) {
    throw userError(error, args.out, done);
  } finally {
    process.removeListener('SIGINT', stop);
    process.removeListener('SIGTERM', stop);
  }
}

const titleOf = (plan: SweepPlan, job: string, done: number): string =>
  `${baseName(job)}: ${done === plan.count ? `${done}` : `${done} of ${plan.count}`} variants`;

function summaryText(
  plan: SweepPlan,
  done: number,
  counts: ReturnType<TradeTally['counts']>,
  files: readonly string[],
): string {
  const varied = plan.axes.map(
    ({ name, count, at }) =>
      `  ${name}: ${count} ${count === 1 ? 'value' : 'values'}, ${at(0).typed} to ${at(count - 1).typed}`,
  );
  const verdicts = Object.entries(counts)
    .filter(([, count]) => count > 0)
    .map(([verdict, count]) => `${count} ${verdict}`);
  return `${done} variants: ${verdicts.join(', ')}\n${varied.join('\n')}\n${files.map((file) => `  ${file}`).join('\n')}\n`;
}
