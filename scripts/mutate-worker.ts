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
  // All in one run: its files share what they import, and the first failure ends it.
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
    ask.tests.map((test) => project.createSpecification(test)),
  );
  // The run also tells of files that ran earlier; one that was not reached is no news where another failed.
  const modules = testModules.filter(({ moduleId }) => ask.tests.includes(moduleId));
  const wrong =
    modules.find((module) => module.state() === 'failed') ?? modules.find((module) => module.state() !== 'passed');
  const [first] = wrong?.children.allTests('failed') ?? [];
  const failed =
    wrong === undefined && unhandledErrors.length === 0 && modules.length === ask.tests.length
      ? null
      : (first?.fullName ?? `${wrong?.moduleId ?? ask.tests[0]} does not load`);
  const { user, system } = process.cpuUsage(from);
  process.send?.({ failed, seconds: (user + system) / 1e6 } satisfies Answer);
});
process.send?.('ready');
