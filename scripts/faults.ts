/** `make` killed at random moments, many times: npm run faults -- [--runs 200] [--seed 1]. Ends with 1 when a file was torn. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { killAtRandom } from '../tests/faults/killed.ts';
import { setup } from '../tests/program.ts';

const { values } = parseArgs({
  options: { runs: { type: 'string', default: '200' }, seed: { type: 'string', default: '1' } },
});
await setup();
const folder = mkdtempSync(join(tmpdir(), 'flangewright-faults-'));
try {
  const { runs, late, writing, old, whole, between, torn, stuck } = await killAtRandom(
    folder,
    Number(values.runs),
    Number(values.seed),
  );
  console.log(
    `make killed ${runs} times (${writing} while it wrote, ${late} too late): ${old} left every old file, ${whole} every new one, ${between} some of each, all whole; ` +
      `${torn.length} torn files; ${stuck} times the next run did not mend it.`,
  );
  for (const name of torn) console.log(`torn: run ${name}`);
  process.exitCode = torn.length + stuck === 0 ? 0 : 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
