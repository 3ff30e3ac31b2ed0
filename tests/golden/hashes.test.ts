/** The files of every shipped job, byte by byte as they were when the golden list was last written on purpose. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type GoldenList, goldenPath, packageHashes } from './package-hashes.ts';

describe('the shipped jobs', () => {
  it('give the bytes of the golden list', async () => {
    const now = await packageHashes();
    expect(Object.keys(now).length).toBeGreaterThan(60);
    // Written by `npm run golden` alone; see what it prints before a new list is committed.
    expect(existsSync(goldenPath), 'npm run golden writes the list').toBe(true);
    expect(now).toEqual(JSON.parse(readFileSync(goldenPath, 'utf8')) as GoldenList);
  }, 300_000);
});
