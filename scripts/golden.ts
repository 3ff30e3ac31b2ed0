/**
 * Writes the golden list of hashes anew and says what changed: npm run golden. A change of any byte of any file is to be meant: look at the
 * list this prints before it is committed. Tests compare with the list and never write it.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { type GoldenList, goldenPath, packageHashes } from '../tests/golden/package-hashes.ts';

const before = (existsSync(goldenPath) ? JSON.parse(readFileSync(goldenPath, 'utf8')) : {}) as GoldenList;
const now = await packageHashes();
for (const name of Object.keys({ ...before, ...now }).sort()) {
  if (before[name] === now[name]) continue;
  console.log(`${before[name] === undefined ? 'new' : now[name] === undefined ? 'gone' : 'changed'}: ${name}`);
}
writeFileSync(goldenPath, `${JSON.stringify(now, null, 2)}\n`);
console.log(`${Object.keys(now).length} files.`);
