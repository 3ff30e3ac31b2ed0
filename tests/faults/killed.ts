/** `make` ended at random moments, again and again, over the files of an earlier run: what then stands in the folder. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { chanceFrom } from '../fuzz/chance.ts';
import { finished, hashes, jobText, otherText, runProgram, startProgram } from './job.ts';

export interface KilledCount {
  readonly runs: number;
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
  const fresh = madeOf(otherText);
  const before = madeOf(jobText);
  const count = { old: 0, whole: 0, between: 0, stuck: 0 };
  const torn: string[] = [];
  for (let run = 0; run < runs; run++) {
    writeFileSync(job, otherText);
    mkdirSync(out, { recursive: true });
    const child = startProgram(folder, make);
    const ended = new Promise((resolve) => child.once('exit', resolve));
    // Most of the time goes into starting and designing: half of the ends come in the last third, where files are written.
    const share = chance.happens(0.5) ? 0.65 + 0.45 * chance.share() : chance.share();
    await Promise.race([wait(share * fresh.ms), ended]);
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
