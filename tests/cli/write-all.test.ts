/** All or nothing: whatever goes wrong, the old files stand. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { UsageError } from '../../src/cli/io.ts';
import { writeAll } from '../../src/cli/write-all.ts';
import { folder } from './terminal.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const read = (cwd: string, name: string) => readFileSync(join(cwd, name), 'utf8');

describe('writeAll', () => {
  it('replaces old files and leaves no scraps', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a'), 'old');
    await writeAll(cwd, [
      { name: 'a', bytes: bytes('new') },
      { name: 'b', bytes: bytes('also') },
    ]);
    expect([read(cwd, 'a'), read(cwd, 'b'), readdirSync(cwd).length]).toEqual(['new', 'also', 2]);
  });

  it('changes nothing when one name is taken by a folder', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a'), 'old');
    mkdirSync(join(cwd, 'b'));
    const attempt = writeAll(cwd, [
      { name: 'a', bytes: bytes('new') },
      { name: 'b', bytes: bytes('x') },
    ]);
    await expect(attempt).rejects.toThrow(UsageError);
    expect(read(cwd, 'a')).toBe('old');
    expect(readdirSync(cwd).sort()).toEqual(['a', 'b']);
  });

  it('puts everything back when a rename fails half way', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a'), 'old');
    writeFileSync(join(cwd, 'stale'), 'was good once');
    // Two files of one name: the second finds its staged copy gone.
    const twice = [
      { name: 'a', bytes: bytes('new') },
      { name: 'sub/none', bytes: bytes('x') },
    ];
    await expect(writeAll(cwd, twice, ['stale'])).rejects.toThrow();
    expect([read(cwd, 'a'), read(cwd, 'stale')]).toEqual(['old', 'was good once']);
    expect(readdirSync(cwd).sort()).toEqual(['a', 'stale']);
  });

  it('says so when the folder is a file', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'out'), 'a file');
    await expect(writeAll(join(cwd, 'out'), [{ name: 'a', bytes: bytes('x') }])).rejects.toThrow(/Nothing was written/);
    expect(read(cwd, 'out')).toBe('a file');
  });
});
