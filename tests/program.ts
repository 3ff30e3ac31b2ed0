/**
 * The program and the page, built as they are shipped, once for all tests: from source every start of the program would translate hundreds of
 * files again. vitest calls `setup` before all tests; the page is built when the first test asks for it.
 */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

export const root = resolve(import.meta.dirname, '..');
/** Two folders below the package, as in dist: the program finds the shipped jobs from where it stands. Within the checkout: checkouts may share their packages. */
const home = join(root, '.built/program');

/** What node runs. */
export const program = join(home, 'bin.js');

/** Builds that take longer than this have died, ms. */
const patience = 120_000;

const changed = (path: string) => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;

function isFresh(folder: string, config: string): boolean {
  const since = changed(join(folder, 'made'));
  const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' }).map((path) => `src/${path}`);
  return [...sources, config, 'package-lock.json'].every((path) => changed(join(root, path)) < since);
}

/** Build into a folder unless nothing has changed since; who comes while somebody else builds waits for him. */
async function built(folder: string, config: string): Promise<void> {
  const lock = `${folder}-lock`;
  mkdirSync(dirname(folder), { recursive: true });
  for (;;) {
    if (existsSync(lock)) {
      if (Date.now() - changed(lock) > patience) rmSync(lock, { recursive: true, force: true });
      else await wait(50);
      continue;
    }
    if (isFresh(folder, config)) return;
    try {
      mkdirSync(lock);
      break;
    } catch (fault) {
      // Somebody else was quicker.
      if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw fault;
    }
  }
  try {
    const from = new Date();
    // Loaded here: tests that only run the program have no use for it.
    const { build } = await import('vite');
    const outDir = join(lock, 'made');
    await build({ configFile: join(root, config), logLevel: 'warn', build: { outDir, emptyOutDir: true } });
    writeFileSync(join(outDir, 'made'), from.toISOString());
    rmSync(folder, { recursive: true, force: true });
    renameSync(outDir, folder);
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

/** Build the program. */
export const setup = (): Promise<void> => built(home, 'vite.cli.config.ts');

/** The folder with the page. */
export async function builtPage(): Promise<string> {
  const folder = join(root, '.built/page');
  await built(folder, 'vite.config.ts');
  return folder;
}
