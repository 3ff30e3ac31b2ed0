/** Disks and folders that will not have it: a plain sentence, old files whole, nothing half under a final name. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { UsageError } from '../../src/cli/io.ts';
import { writeAll } from '../../src/cli/write-all.ts';
import { folder, run } from '../cli/terminal.ts';
import { finished, hashes, jobText, otherText } from './job.ts';

const make = ['make', 'a.job.yaml', '-o', 'out', '--only', 'report,outline,preview'];
const mounted: string[] = [];
afterEach(() => {
  for (const path of mounted.splice(0)) spawnSync('umount', [path]);
});

/** A folder on a disk of its own of so many KiB; null where this user may not mount one. */
function smallDisk(kib: number): string | null {
  const path = folder('disk');
  const done = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kib}k`, 'tmpfs', path]);
  if (done.status !== 0) return null;
  mounted.push(path);
  return path;
}

const bytesOf = (count: number, value: number) => new Uint8Array(count).fill(value);

/** A process of its own with a limit on the size of a file, which any user may set: the write fails part of the way. */
function writeUnderLimit(cwd: string): { code: number | null; said: string } {
  const program = [
    `import { writeAll } from ${JSON.stringify(new URL('../../src/cli/write-all.ts', import.meta.url).href)};`,
    "process.on('SIGXFSZ', () => undefined);",
    'const files = [{ name: "a", bytes: new Uint8Array(1000) }, { name: "b", bytes: new Uint8Array(4_000_000) }];',
    'try { await writeAll("out", files); } catch (error) { console.log(error.constructor.name, error.message); process.exit(2); }',
  ].join('\n');
  const loader = new URL('../../node_modules/tsx/dist/esm/index.mjs', import.meta.url).href;
  const command = `ulimit -f 1000; exec "${process.execPath}" --import "${loader}" --input-type=module -e "$PROGRAM"`;
  const ran = spawnSync('bash', ['-c', command], { cwd, encoding: 'utf8', env: { ...process.env, PROGRAM: program } });
  return { code: ran.status, said: `${ran.stdout}${ran.stderr}` };
}

describe('a disk that is full', () => {
  it('leaves the old files as they were and says so', async () => {
    const cwd = smallDisk(400);
    if (cwd === null) {
      // Only the owner of the machine may make a small disk; a limit on the size of files is the same fault for anyone.
      expect(process.getuid?.()).not.toBe(0);
      return;
    }
    const old = [
      { name: 'a', bytes: bytesOf(50_000, 1) },
      { name: 'b', bytes: bytesOf(50_000, 1) },
    ];
    await writeAll(join(cwd, 'out'), old);
    const before = hashes(join(cwd, 'out'));
    const more = [
      { name: 'a', bytes: bytesOf(60_000, 2) },
      { name: 'b', bytes: bytesOf(900_000, 2) },
    ];
    const attempt = writeAll(join(cwd, 'out'), more);
    await expect(attempt).rejects.toThrow(UsageError);
    await expect(attempt).rejects.toThrow(
      /Nothing was written to .*: the disk is full\. Files of earlier runs are as they were\./,
    );
    expect(hashes(join(cwd, 'out'))).toEqual(before);
  });

  it('and a file past the limit that is set on files leave nothing half', () => {
    const cwd = folder();
    mkdirSync(join(cwd, 'out'));
    writeFileSync(join(cwd, 'out', 'a'), 'old');
    const { code, said } = writeUnderLimit(cwd);
    expect([code, said]).toEqual([
      2,
      expect.stringMatching(/^UsageError Nothing was written to out: .*larger than is allowed/),
    ]);
    expect(hashes(join(cwd, 'out'))).toEqual(expect.objectContaining({ a: expect.any(String) }));
    expect(Object.keys(hashes(join(cwd, 'out')))).toEqual(['a']);
    expect(readFileSync(join(cwd, 'out', 'a'), 'utf8')).toBe('old');
  });

  it('takes a whole make without a torn file', async () => {
    const cwd = smallDisk(700);
    if (cwd === null) return expect(process.getuid?.()).not.toBe(0);
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    expect((await run(cwd, make)).code).toBeLessThan(2);
    const before = hashes(join(cwd, 'out'));
    writeFileSync(join(cwd, 'filler'), bytesOf(40_000, 0));
    spawnSync('dd', ['if=/dev/zero', `of=${join(cwd, 'more')}`, 'bs=4k'], { stdio: 'ignore' });
    const { code, err } = await run(cwd, make);
    expect([code, err]).toEqual([2, expect.stringMatching(/the disk is full/)]);
    expect(finished(hashes(join(cwd, 'out')))).toEqual(before);
  });
});

describe('a folder that will not have it', () => {
  it('read-only: a sentence, and the old files stand', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    expect((await run(cwd, make)).code).toBeLessThan(2);
    const before = hashes(join(cwd, 'out'));
    writeFileSync(join(cwd, 'a.job.yaml'), otherText);
    // The owner of the machine may write anywhere: for that user the folder is closed by a read-only mount.
    const isRoot = process.getuid?.() === 0;
    const out = join(cwd, 'out');
    if (isRoot) {
      const closed = ['--bind', out, out];
      expect(spawnSync('mount', closed).status).toBe(0);
      mounted.push(out);
      expect(spawnSync('mount', ['-o', 'remount,ro,bind', out]).status).toBe(0);
    } else chmodSync(out, 0o555);
    const { code, err } = await run(cwd, make);
    if (!isRoot) chmodSync(out, 0o755);
    expect([code, err]).toEqual([2, expect.stringMatching(/Nothing was written to .*(read-only|may not be written)/)]);
    expect(hashes(out)).toEqual(before);
  });

  it('a name taken by a folder: a sentence, and the other files stand', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    mkdirSync(join(cwd, 'out/a-report.html'), { recursive: true });
    writeFileSync(join(cwd, 'out/a-report.txt'), 'old');
    const { code, err } = await run(cwd, make);
    expect([code, err]).toEqual([2, expect.stringMatching(/a-report\.html is a folder there/)]);
    expect(Object.keys(hashes(join(cwd, 'out')))).toEqual(['a-report.txt']);
    expect(readFileSync(join(cwd, 'out/a-report.txt'), 'utf8')).toBe('old');
  });

  it.each(['a file', 'a file/deeper'])('%s where the folder should be: a sentence', async (out) => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), jobText);
    writeFileSync(join(cwd, 'a file'), 'mine');
    const { code, err } = await run(cwd, ['make', 'a.job.yaml', '-o', out, '--only', 'report']);
    expect([code, err]).toEqual([2, expect.stringMatching(/Nothing was written to/)]);
    expect(readFileSync(join(cwd, 'a file'), 'utf8')).toBe('mine');
  });
});
