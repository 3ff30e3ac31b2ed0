/** Runs that are cut short, that meet, or that stand in odd places: files are whole and the same. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { productKinds } from '../../src/core.ts';
import { folder, run } from '../cli/terminal.ts';
import { finished, hashes, jobText, otherText, root, runProgram, startProgram } from './job.ts';
import { killAtRandom } from './killed.ts';

const quick = ['--only', 'report,outline,preview'];

/** What a job's files come to in an ordinary folder. */
async function plainly(text: string, name = 'a.job.yaml'): Promise<Record<string, string>> {
  const cwd = folder();
  mkdirSync(dirname(join(cwd, name)), { recursive: true });
  writeFileSync(join(cwd, name), text);
  const { code, err } = await run(cwd, ['make', name, '-o', 'out', ...quick]);
  expect(code, err).toBeLessThan(2);
  return hashes(join(cwd, 'out'));
}

describe('make', () => {
  it('killed at random moments leaves old files or new ones, never half of one', async () => {
    const { runs, writing, old, whole, between, torn, stuck } = await killAtRandom(folder(), 8, 20261125);
    expect(torn).toEqual([]);
    expect(stuck).toBe(0);
    expect(old + whole + between).toBe(runs);
    // Ends came before the writing and after it: else this proves nothing.
    expect(old).toBeGreaterThan(0);
    expect(writing).toBeGreaterThan(0);
  }, 300_000);

  it('run twice at once into one folder leaves the files of one job or the other, each whole', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    mkdirSync(join(cwd, 'other'));
    writeFileSync(join(cwd, 'other/a.job.yaml'), otherText);
    const mine = await plainly(jobText);
    const others = await plainly(otherText, 'other/a.job.yaml');
    for (let round = 0; round < 3; round++) {
      const children = ['a.job.yaml', 'other/a.job.yaml'].map((job) =>
        startProgram(cwd, ['make', job, '-o', 'out', ...quick]),
      );
      await Promise.all(children.map((child) => new Promise((resolve) => child.once('exit', resolve))));
      const now = finished(hashes(join(cwd, 'out')));
      expect(Object.keys(now).sort()).toEqual(Object.keys(mine).sort());
      for (const [name, hash] of Object.entries(now)) expect([mine[name], others[name]]).toContain(hash);
    }
    expect(readdirSync(join(cwd, 'out')).filter((name) => name.startsWith('.'))).toEqual([]);
  }, 120_000);

  it('over files of a time to come, as after a clock that went back, replaces them', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), otherText);
    await run(cwd, ['make', 'a.job.yaml', '-o', 'out', ...quick]);
    const later = new Date('2100-01-01');
    for (const name of readdirSync(join(cwd, 'out'))) utimesSync(join(cwd, 'out', name), later, later);
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    utimesSync(join(cwd, 'a.job.yaml'), new Date('1971-01-01'), new Date('1971-01-01'));
    await run(cwd, ['make', 'a.job.yaml', '-o', 'out', ...quick]);
    expect(hashes(join(cwd, 'out'))).toEqual(await plainly(jobText));
  });
});

describe('the same bytes', () => {
  it('come in every time zone, locale and folder, and from every run', () => {
    const seen = [
      { TZ: 'Asia/Kathmandu', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' },
      { TZ: 'America/St_Johns', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
    ].map((env) => {
      const cwd = folder();
      const below = join(cwd, 'a folder', 'ÅÖ 漢字');
      mkdirSync(below, { recursive: true });
      writeFileSync(join(below, 'a.job.yaml'), jobText);
      const { code, err } = runProgram(
        below,
        ['make', 'a.job.yaml', '-o', 'out', '--force', '--only', productKinds.join(',')],
        env,
      );
      expect(code, err).toBeLessThan(2);
      return hashes(join(below, 'out'));
    });
    expect(Object.keys(seen[0] ?? {}).length).toBeGreaterThan(15);
    for (const other of seen.slice(1)) expect(other).toEqual(seen[0]);
  }, 240_000);

  it('come in a process whose clock went back a year', () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    const clock = `const now = Date.now; Date.now = () => now() - 31_536_000_000;
      globalThis.Date = class extends Date { constructor(...given) { super(...(given.length ? given : [now() - 31_536_000_000])); } };`;
    const env = { NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(clock)}` };
    const argv = (out: string) => ['make', 'a.job.yaml', '-o', out, ...quick, '--json'];
    const [now, then] = [runProgram(cwd, argv('now')), runProgram(cwd, argv('then'), env)];
    expect(now.code, now.err).toBeLessThan(2);
    expect(then.out.replaceAll('then/', 'now/')).toBe(now.out);
    expect(hashes(join(cwd, 'then'))).toEqual(hashes(join(cwd, 'now')));
  }, 120_000);

  it('come of a job with line ends of another system, and with a mark at its start', async () => {
    const plain = await plainly(jobText);
    expect(await plainly(jobText.replaceAll('\n', '\r\n'))).toEqual(plain);
    expect(await plainly(jobText.replaceAll('\n', '\r'))).toEqual(plain);
    expect(await plainly(`\uFEFF${jobText}`)).toEqual(plain);
    expect(await plainly(`\uFEFF${jobText.replaceAll('\n', '\r\n')}`)).toEqual(plain);
  });

  it.each(['my own job', 'ÅÖß', '漢字', 'مثال', 'job.with.dots', '-dash', "it's & so"])(
    'come of a file named %s',
    async (name) => {
      const cwd = folder();
      const file = `${name}.job.yaml`;
      writeFileSync(join(cwd, file), jobText);
      const { code, err } = await run(cwd, ['make', `./${file}`, '-o', `out of ${name}`, ...quick]);
      expect(code, err).toBeLessThan(2);
      const made = hashes(join(cwd, `out of ${name}`));
      const plain = Object.values(await plainly(jobText));
      // Reports name the job file; outlines and pictures do not.
      const same = Object.entries(made).filter(([path]) => /\.(dxf|svg)$/.test(path));
      expect(same.length).toBeGreaterThan(1);
      for (const [, hash] of same) expect(plain).toContain(hash);
    },
  );
});

describe('a locale with decimal commas', () => {
  it('changes no number that is read or written', () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    const check = (env: Readonly<Record<string, string>>) => runProgram(cwd, ['check', 'a.job.yaml'], env);
    const [plain, german] = [check({ LC_ALL: 'C' }), check({ LC_ALL: 'de_DE.UTF-8', LANG: 'de_DE.UTF-8' })];
    expect(german).toEqual(plain);
    expect(plain.out).toMatch(/\d\.\d/);
  });

  it('is proven by what the sources call: nothing that follows the locale', () => {
    const ran = spawnSync(
      'grep',
      ['-rnE', 'toLocale(String|DateString|TimeString)\\(|Intl\\.|localeCompare\\([^,)]*\\)', 'src', '--include=*.ts'],
      {
        cwd: root,
        encoding: 'utf8',
      },
    );
    expect(ran.stdout).toBe('');
  });
});
