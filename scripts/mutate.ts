/**
 * Do the tests notice a wrong? npm run mutate -- --folder formulas [--sample 300] [--seed 1] [--only NAME] [--list FILE]
 *
 * A seeded sample of the folder's mutants (`mutants.ts`), each judged by the tests nearest to its file (`mutate-tests.ts`): killed when one
 * fails or never ends. The tree is not written to. Prints a line for each that does not simply fail, and the share killed with its 95 %
 * interval.
 * Ends with 1 when a test fails without any mutant. `--list` runs again the survivors that an earlier run printed into that file.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type Mutant, mutantsOf } from './mutants.ts';
import { testsFor } from './mutate-tests.ts';
import type { Answer, Ask } from './mutate-worker.ts';

const root = resolve(import.meta.dirname, '..');
const { values } = parseArgs({
  options: {
    folder: { type: 'string', default: 'formulas' },
    sample: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string', default: '' },
    list: { type: 'string' },
    seconds: { type: 'string', default: '3600' },
  },
});
const home = join(root, 'src', values.folder);
/** Test files a mutant meets at most, best first: tests of tables are cheap, a check is judged in several files. */
const most = { standards: 12, formulas: 4, validate: 6 }[values.folder] ?? 3;

const codes = new Map(
  readdirSync(home)
    .filter((file) => file.endsWith('.ts') && file.includes(values.only))
    .map((file) => [join(home, file), readFileSync(join(home, file), 'utf8')]),
);
const all = [...codes].flatMap(([path, code]) => mutantsOf(path, code));

/** How a survivor is named, in print and in a list. */
function named({ path, line, start, end, text, kind }: Mutant): string {
  const was = codes.get(path)?.slice(start, end) ?? '';
  const short = (of: string) => of.replace(/\s+/g, ' ').trim();
  return `${relative(home, path)}:${line}:${start} ${kind}: ${short(was) || '(nothing)'} -> ${short(text)}`;
}

/** Shuffled by a seeded generator (mulberry32). */
function shuffled<T>(items: readonly T[], seed: number): readonly T[] {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const mixed = [...items];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = Math.floor(next() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other] as T, mixed[last] as T];
  }
  return mixed;
}

const listed = values.list === undefined ? null : readFileSync(values.list, 'utf8');
// In the shuffled order, so that a run that is cut short is still a fair sample.
const queue = listed
  ? all.filter((mutant) => listed.includes(named(mutant)))
  : shuffled(all, Number(values.seed)).slice(0, Number(values.sample));

let worker: ChildProcess | null = null;

/** Processor seconds that a process has used, of all its threads; null where the system does not tell (proc(5), fields 14 and 15, hundredths). */
function processorTime(child: ChildProcess): number | null {
  try {
    const told = readFileSync(`/proc/${child.pid}/stat`, 'utf8');
    const [used, inSystem] = told
      .slice(told.lastIndexOf(')') + 2)
      .split(' ')
      .slice(11, 13)
      .map(Number);
    return ((used as number) + (inSystem as number)) / 100;
  } catch {
    return null;
  }
}

/**
 * One question to the worker, which is started where there is none. Null where it takes more than so many seconds of the processor, or where
 * the worker ends: on a machine that does other things as well, a clock would call slow tests endless.
 */
function ask(question: Ask, seconds: number): Promise<Answer | null> {
  const isNew = worker === null;
  const here =
    worker ?? fork(fileURLToPath(new URL('./mutate-worker.ts', import.meta.url)), { execArgv: ['--import', 'tsx'] });
  worker = here;
  return new Promise((resolve) => {
    const end = (answer: Answer | null) => {
      clearInterval(timer);
      here.removeAllListeners();
      if (answer === null) {
        here.kill('SIGKILL');
        worker = null;
      }
      resolve(answer);
    };
    // A new worker has to load first.
    const allowed = seconds + (isNew ? 90 : 0);
    const [from, start] = [processorTime(here), performance.now()];
    const timer = setInterval(() => {
      const used = processorTime(here);
      const spent = from === null || used === null ? (performance.now() - start) / 1000 : used - from;
      // One that waits for ever uses no processor at all.
      if (spent > allowed || performance.now() - start > 20_000 * allowed) end(null);
    }, 500);
    here.on('exit', () => end(null));
    here.on('message', (told: Answer | 'ready') => (told === 'ready' ? here.send(question) : end(told)));
    if (!isNew) here.send(question);
  });
}

const usual = new Map<string, number>();
const broken = new Map<string, string>();
const count = { killed: 0, endless: 0, survived: 0, unguarded: 0 };
const perKind = new Map<string, { made: number; killed: number }>();
const begun = performance.now();
let done = 0;
for (const mutant of queue) {
  if ((performance.now() - begun) / 1000 > Number(values.seconds)) break;
  const tests = testsFor(mutant.path, most);
  // Without a mutant every test must pass; that run also tells how long it may take.
  for (const test of tests.filter((test) => !usual.has(test) && !broken.has(test))) {
    const answer = await ask({ path: null, code: '', tests: [test] }, 600);
    if (answer?.failed === null) usual.set(test, answer.seconds);
    else broken.set(test, answer?.failed ?? 'never ends');
  }
  const sound = tests.filter((test) => usual.has(test));
  const code = codes.get(mutant.path) as string;
  const bent = code.slice(0, mutant.start) + mutant.text + code.slice(mutant.end);
  const allowed = 30 + 8 * sound.reduce((sum, test) => sum + (usual.get(test) as number), 0);
  const answer = sound.length > 0 ? await ask({ path: mutant.path, code: bent, tests: sound }, allowed) : undefined;
  const fate =
    answer === undefined ? 'unguarded' : answer === null ? 'endless' : answer.failed === null ? 'survived' : 'killed';
  count[fate]++;
  const isKilled = fate === 'killed' || fate === 'endless';
  if (fate !== 'killed') console.log(`${fate.padEnd(9)} ${named(mutant)}`);
  const kind = perKind.get(mutant.kind) ?? { made: 0, killed: 0 };
  perKind.set(mutant.kind, { made: kind.made + 1, killed: kind.killed + Number(isKilled) });
  done++;
  if (done % 25 === 0)
    console.error(`${done} of ${queue.length}, ${((performance.now() - begun) / 1000).toFixed(0)} s`);
}
(worker as ChildProcess | null)?.kill('SIGKILL');

/** 95 % interval of a share (Wilson 1927), percent. */
function interval(killed: number, made: number): readonly [number, number] {
  const z = 1.96;
  const share = killed / made;
  const middle = share + z ** 2 / (2 * made);
  const half = z * Math.sqrt((share * (1 - share)) / made + z ** 2 / (4 * made ** 2));
  return [(100 * (middle - half)) / (1 + z ** 2 / made), (100 * (middle + half)) / (1 + z ** 2 / made)];
}
for (const [kind, { made, killed }] of perKind) console.log(`${String(killed).padStart(6)} of ${made}  ${kind}`);
const dead = count.killed + count.endless;
const [low, high] = interval(dead, done);
console.log(
  `${values.folder}: ${done} of ${all.length} mutants, seed ${values.seed}; ${dead} killed (${count.endless} of them never ended), ${count.survived} survive, ` +
    `${count.unguarded} have no test near: ${((100 * dead) / done).toFixed(1)} % (95 % interval ${low.toFixed(1)} to ${high.toFixed(1)}), ` +
    `${((performance.now() - begun) / 1000).toFixed(0)} s.`,
);
for (const [test, why] of broken) console.log(`fails without a mutant: ${relative(root, test)}: ${why}`);
process.exitCode = broken.size > 0 ? 1 : 0;
