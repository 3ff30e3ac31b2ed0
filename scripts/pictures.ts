/** Makes the README's pictures with the tool itself. Run after a change that shows: npm run pictures */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { loadPatterns } from '../src/cli/presets.ts';
import { judgeJob, makeFiles } from '../src/core.ts';

const root = resolve(import.meta.dirname, '..');
const job = 'orchard-truck.job.yaml';
const judged = judgeJob(readFileSync(`${root}/presets/${job}`, 'utf8'), job, await loadPatterns());
if (!judged.ok) throw new Error(judged.errors.map((error) => error.message).join('\n'));
const { files } = await makeFiles(judged.joint, judged.findings, {
  base: 'demo',
  jobName: job,
  only: ['preview'],
  force: false,
});
mkdirSync(`${root}/docs/pictures`, { recursive: true });
for (const { name, bytes } of files) writeFileSync(`${root}/docs/pictures/${name.replace('demo-', '')}`, bytes);
console.log(`${files.length} pictures in docs/pictures`);
