/** A job whose package is quick to make, and the program as a process of its own. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { program, root } from '../program.ts';

export { root };

export const jobText = readFileSync(join(root, 'presets/kart.job.yaml'), 'utf8');

/** The same job with a shaft that turns a little slower: every report of it differs. */
export const otherText = jobText.replace(/^title: .*$/m, 'title: The other one');

const args = (argv: readonly string[]) => [program, ...argv];

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Run the program to its end. */
export function runProgram(cwd: string, argv: readonly string[], env: Readonly<Record<string, string>> = {}): Ran {
  const ran = spawnSync(process.execPath, args(argv), { cwd, encoding: 'utf8', env: { ...process.env, ...env } });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}

/** Start the program; whoever starts it ends it. */
export function startProgram(cwd: string, argv: readonly string[]): ChildProcess {
  return spawn(process.execPath, args(argv), { cwd, stdio: 'ignore' });
}

/** Every file in a folder and below, by its path, with the hash of its bytes. */
export function hashes(folder: string, inside = ''): Record<string, string> {
  const entries = readdirSync(join(folder, inside))
    .sort()
    .map((name) => join(inside, name));
  return Object.assign(
    {},
    ...entries.map((path) =>
      statSync(join(folder, path)).isDirectory()
        ? hashes(folder, path)
        : {
            [path]: createHash('sha256')
              .update(readFileSync(join(folder, path)))
              .digest('hex'),
          },
    ),
  ) as Record<string, string>;
}

/** The files under their final names: what a run that was cut short left beside them does not count. */
export const finished = (all: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(all).filter(([path]) => !path.startsWith('.writing-')));
