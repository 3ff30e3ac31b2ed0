/** The README's pictures are what the tool draws today. A difference leaves the new picture beside the old one to be looked at. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { loadPatterns } from '../../src/cli/presets.ts';
import { judgeJob, makeFiles } from '../../src/core.ts';

const root = resolve(import.meta.dirname, '../..');
const job = 'orchard-truck.job.yaml';

it('the pictures in docs/pictures are up to date (npm run pictures makes them anew)', async () => {
  const judged = judgeJob(readFileSync(`${root}/presets/${job}`, 'utf8'), job, await loadPatterns());
  if (!judged.ok) throw new Error('the demo job does not read');
  const options = { base: 'demo', jobName: job, only: ['preview'], force: false };
  const { files } = await makeFiles(judged.joint, judged.findings, options);
  const stale = files.filter(({ name, bytes }) => {
    const shipped = `${root}/docs/pictures/${name.replace('demo-', '')}`;
    const beside = shipped.replace('.svg', '.new.svg');
    const same = existsSync(shipped) && Buffer.from(bytes).equals(readFileSync(shipped));
    if (same) rmSync(beside, { force: true });
    else writeFileSync(beside, bytes);
    return !same;
  });
  expect(stale.map(({ name }) => name)).toEqual([]);
});
