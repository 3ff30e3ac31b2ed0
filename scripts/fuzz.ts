/**
 * Fuzzing for as long as one likes: npm run fuzz -- --seconds 60 --seed 1 [--limit 20] [--keep FOLDER]
 *
 * Cases come from tests/fuzz/cases.ts. A case may take `--limit` seconds and the process 1 GiB; what goes past is a fault. A fault is made
 * smaller and kept with its input in a folder outside the tree. Ends with 1 when there was any.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { kinds, makeCase } from '../tests/fuzz/cases.ts';
import { sortOfFault } from '../tests/fuzz/shrink.ts';
import { readWorld } from '../tests/fuzz/world.ts';

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    limit: { type: 'string', default: '20' },
    keep: { type: 'string' },
  },
});
const positive = (name: 'seconds' | 'seed' | 'limit'): number => {
  const number = Number(values[name]);
  if (!(number > 0) || !Number.isFinite(number))
    throw new Error(`--${name} wants a number above 0; got ${values[name]}.`);
  return number;
};
const [seconds, seed, limit] = [positive('seconds'), positive('seed'), positive('limit')];
const keep = values.keep ?? mkdtempSync(join(tmpdir(), 'flangewright-fuzz-'));
mkdirSync(keep, { recursive: true });

interface Told {
  readonly number: number;
  readonly kind: string;
  readonly path: string | null;
  readonly fault: string | null;
  readonly small: string | null;
  readonly becameJoint: boolean;
  readonly pathTaken: boolean;
  /** Memory of the process, bytes. */
  readonly rss: number;
}

const world = readWorld();
const count = new Map<string, number>(kinds.map((kind) => [kind, 0]));
const faults = new Map<string, number>();
const taken = new Set<string>();
let joints = 0;
let done = 0;
let slowest = { ms: 0, number: -1 };
let peak = 0;

function start(): ChildProcess {
  return fork(fileURLToPath(new URL('./fuzz-worker.ts', import.meta.url)), [String(seed)], {
    execArgv: ['--import', 'tsx', '--max-old-space-size=1024'],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
}

function note(number: number, fault: string, small: string | null): void {
  const sort = sortOfFault(fault);
  const before = faults.get(sort) ?? 0;
  faults.set(sort, before + 1);
  if (before >= 3) return;
  const made = makeCase(world, seed, number);
  writeFileSync(join(keep, `${seed}-${number}.${made.ending}`), made.bytes);
  writeFileSync(join(keep, `${seed}-${number}.fault.txt`), `${made.kind}\n${JSON.stringify(made.asked)}\n${fault}\n`);
  if (small !== null) writeFileSync(join(keep, `${seed}-${number}.small.${made.ending}`), small);
  console.log(`case ${number} (${made.kind}): ${fault.split('\n').slice(0, 2).join(' ')}`);
}

/** One case in the process: what it told, or why it never answered. */
function ask(worker: ChildProcess, number: number, allowed: number): Promise<Told | string> {
  return new Promise((resolve) => {
    const end = (answer: Told | string) => {
      clearTimeout(timer);
      worker.removeAllListeners();
      resolve(answer);
    };
    const timer = setTimeout(() => end(`hangs: no answer within ${allowed} s`), allowed * 1000);
    worker.on('message', (told: Told | 'ready') => told !== 'ready' && end(told));
    worker.on('exit', (code, signal) => end(`ends the process: ${signal ?? code}`));
    worker.send(number);
  });
}

const begun = Date.now();
let worker = start();
for (let number = 0; Date.now() - begun < seconds * 1000; number++) {
  const from = Date.now();
  // A first case waits for the process to load; a fault takes time to be made smaller.
  let told = await ask(worker, number, done === 0 ? limit + 60 : limit);
  if (typeof told === 'string') {
    worker.kill('SIGKILL');
    worker = start();
    // A machine that is busy with other work may have been the reason: alone and with four times the time it counts.
    if (told.startsWith('hangs')) told = await ask(worker, number, 4 * limit + 30);
    if (typeof told === 'string') {
      note(number, told, null);
      worker.kill('SIGKILL');
      worker = start();
    }
  }
  done++;
  const ms = Date.now() - from;
  if (ms > slowest.ms && done > 1) slowest = { ms, number };
  if (typeof told === 'string') continue;
  peak = Math.max(peak, told.rss);
  count.set(told.kind, (count.get(told.kind) ?? 0) + 1);
  if (told.becameJoint) joints++;
  if (told.pathTaken && told.path !== null) taken.add(told.path);
  if (told.fault !== null) note(number, told.fault, told.small);
}
worker.kill('SIGKILL');

const took = (Date.now() - begun) / 1000;
for (const [kind, times] of count) console.log(`${String(times).padStart(8)}  ${kind}`);
console.log(
  `${done} cases in ${took.toFixed(0)} s (${(done / took).toFixed(1)} a second), seed ${seed}; ${joints} came to a joint; ` +
    `${taken.size} of ${world.paths.length} keys grown and taken; slowest ${(slowest.ms / 1000).toFixed(1)} s (case ${slowest.number}); ` +
    `peak ${(peak / 2 ** 20).toFixed(0)} MiB.`,
);
for (const [sort, times] of faults) console.log(`FAULT ${times} times: ${sort}`);
console.log(faults.size === 0 ? 'No fault.' : `${faults.size} sorts of fault; inputs are kept in ${keep}`);
process.exitCode = faults.size === 0 ? 0 : 1;
