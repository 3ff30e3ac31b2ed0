/** Runs test files against one mutant after another, in a process of its own so that an endless loop can be ended from outside. */
import { createVitest } from 'vitest/node';

/** What to run: with these letters for that file, or with the file as it is. */
export interface Ask {
  readonly path: string | null;
  readonly code: string;
  readonly tests: readonly string[];
}

/** The first test that failed; null where all passed. */
export interface Answer {
  readonly failed: string | null;
  /** Of the processor. */
  readonly seconds: number;
}

let asked: Ask | null = null;
const vitest = await createVitest(
  'test',
  { watch: false, pool: 'threads', maxWorkers: 1, bail: 1, reporters: [{}], coverage: { enabled: false } },
  {
    plugins: [{ name: 'mutant', enforce: 'pre', load: (id) => (id === asked?.path ? asked.code : null) }],
    server: { watch: null },
  },
);
await vitest.standalone();
const project = vitest.getRootProject();

process.on('message', async (ask: Ask) => {
  const before = asked?.path;
  asked = ask;
  for (const path of new Set([before, ask.path])) if (path) vitest.invalidateFile(path);
  const from = process.cpuUsage();
  let failed: string | null = null;
  for (const test of ask.tests) {
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications([project.createSpecification(test)]);
    // The run also tells of files that ran earlier.
    const module = testModules.find(({ moduleId }) => moduleId === test);
    if (module?.state() === 'passed' && unhandledErrors.length === 0) continue;
    const [first] = module?.children.allTests('failed') ?? [];
    failed = first?.fullName ?? `${test} does not load`;
    break;
  }
  const { user, system } = process.cpuUsage(from);
  process.send?.({ failed, seconds: (user + system) / 1e6 } satisfies Answer);
});
process.send?.('ready');
