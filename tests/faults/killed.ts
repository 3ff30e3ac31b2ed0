/** `make` ended at random moments, again and again, over the files of an earlier run: what then stands in the folder. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate as immediate, setTimeout as wait } from 'node:timers/promises';
import { chanceFrom } from '../fuzz/chance.ts';
import { finished, hashes, jobText, otherText, runProgram, startProgram } from './job.ts';

export interface KilledCount {
  readonly runs: number;
  /** Runs that had ended by themselves before they were killed. */
  readonly late: number;
  /** Runs that were killed while they wrote. */
  readonly writing: number;
  /** Every old file as it was. */
  readonly old: number;
  /** Every new file whole. */
  readonly whole: number;
  /** Some names old and some new, or a name missing for the moment between two renames: each file there is whole. */
  readonly between: number;
  /** A file that is neither the old nor the new one. */
  readonly torn: readonly string[];
  /** Runs after which the next one did not bring everything to its place. */
  readonly stuck: number;
}

const kindsMade = 'report,outline,preview,mockup,wheel-mockup';
const make = ['make', 'a.job.yaml', '-o', 'out', '--only', kindsMade];

/** About how long the files take to be written and renamed, ms. */
const mostWriting = 15;

const isWriting = (out: string) => readdirSync(out).some((name) => name.startsWith('.writing-'));

/**
 * @param folder an empty folder
 * @param runs how often to start and end it
 */
export async function killAtRandom(folder: string, runs: number, seed: number): Promise<KilledCount> {
  const chance = chanceFrom(seed);
  const job = join(folder, 'a.job.yaml');
  const out = join(folder, 'out');
  const madeOf = (text: string) => {
    writeFileSync(job, text);
    rmSync(out, { recursive: true, force: true });
    const from = Date.now();
    const { code, err } = runProgram(folder, make);
    if (code === null || code > 1) throw new Error(`make failed: ${err}`);
    return { files: hashes(out), ms: Date.now() - from };
  };
  // The first run builds the program; only the later ones are timed.
  madeOf(jobText);
  const fresh = madeOf(otherText);
  const before = madeOf(jobText);
  const count = { late: 0, writing: 0, old: 0, whole: 0, between: 0, stuck: 0 };
  const torn: string[] = [];
  for (let run = 0; run < runs; run++) {
    writeFileSync(job, otherText);
    mkdirSync(out, { recursive: true });
    const child = startProgram(folder, make);
    const ended = new Promise((resolve) => child.once('exit', resolve));
    // Half of the ends come at any moment, half while files are being written: their folder shows when.
    if (chance.happens(0.5)) await Promise.race([wait(chance.share() * before.ms), ended]);
    else {
      while (child.exitCode === null && !isWriting(out)) await wait(1);
      const from = performance.now();
      const till = from + chance.share() * mostWriting;
      while (child.exitCode === null && performance.now() < till) await immediate();
    }
    if (child.exitCode !== null) count.late++;
    if (isWriting(out)) count.writing++;
    child.kill('SIGKILL');
    await ended;
    const now = finished(hashes(out));
    const names = Object.keys({ ...now, ...before.files });
    for (const name of names) {
      const hash = now[name];
      if (hash !== undefined && hash !== before.files[name] && hash !== fresh.files[name]) torn.push(`${run}: ${name}`);
    }
    if (names.every((name) => now[name] === before.files[name])) count.old++;
    else if (Object.keys(fresh.files).every((name) => now[name] === fresh.files[name])) count.whole++;
    else count.between++;
    for (const name of readdirSync(out).filter((name) => name.startsWith('.writing-')))
      rmSync(join(out, name), { recursive: true });
    writeFileSync(job, jobText);
    const next = runProgram(folder, make);
    const after = finished(hashes(out));
    if (
      next.code === null ||
      next.code > 1 ||
      Object.keys(before.files).some((name) => after[name] !== before.files[name])
    )
      count.stuck++;
  }
  return { runs, ...count, torn };
}
