/** Every file of every shipped job by the hash of its bytes: what the golden list holds. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { judgeJob, makeFiles, productKinds } from '../../src/core.ts';
import { readWorld } from '../fuzz/world.ts';

const presets = resolve(import.meta.dirname, '../../presets');

/** Where the list is kept. Only `npm run golden` writes it. */
export const goldenPath = join(import.meta.dirname, 'hashes.json');

export type GoldenList = Readonly<Record<string, string>>;

/** Make every kind of file of every shipped job, held ones too, in memory; file name to SHA-256. */
export async function packageHashes(): Promise<GoldenList> {
  const { patterns } = readWorld();
  const list: [string, string][] = [];
  for (const file of readdirSync(presets)
    .filter((name) => name.endsWith('.job.yaml'))
    .sort()) {
    const judged = judgeJob(readFileSync(join(presets, file), 'utf8'), file, patterns);
    if (!judged.ok) throw new Error(`${file}: ${judged.errors.map(({ message }) => message).join(' ')}`);
    const options = { base: file.replace(/\.job\.yaml$/, ''), jobName: file, only: productKinds, force: true };
    const { files } = await makeFiles(judged.joint, judged.findings, options);
    for (const { name, bytes } of files) list.push([name, createHash('sha256').update(bytes).digest('hex')]);
  }
  return Object.fromEntries(list.sort(([a], [b]) => (a < b ? -1 : 1)));
}
