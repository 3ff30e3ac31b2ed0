/** Which test files guard a source file: those that reach it, nearest first. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
/** Tests that start browsers, outside readers or thousands of cases: too dear to run once a mutant. */
const dear = /^tests\/(page|outside|golden|fuzz|faults|hostile|house|products|presets|cli|solids|core|design)\//;

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesIn(path) : entry.name.endsWith('.ts') ? [path] : [];
  });
}

const texts = new Map<string, string>();
for (const path of [...filesIn(join(root, 'src')), ...filesIn(join(root, 'tests'))])
  if (!path.includes('/page/')) texts.set(path, readFileSync(path, 'utf8'));
const imports = new Map(
  [...texts].map(([path, text]) => [
    path,
    [...text.matchAll(/^(?:import|export)(?!\s+type)[^'";]*?from\s+'(\.[^']+)'/gm)].map((match) =>
      resolve(dirname(path), match[1] as string),
    ),
  ]),
);

/** Steps from each file to `target`, by its imports. */
function stepsTo(target: string): ReadonlyMap<string, number> {
  const steps = new Map([[target, 0]]);
  for (const [path, far] of steps)
    for (const [from, to] of imports) if (!steps.has(from) && to.includes(path)) steps.set(from, far + 1);
  return steps;
}

/** Tests that reach the whole story judge whole jobs: dear. */
const judgesJobs = stepsTo(join(root, 'src/core.ts'));

/** Codes of findings that a check speaks with: as written, with what stands in for a side left out. */
const codesOf = (path: string): readonly string[] =>
  [...(texts.get(path) ?? '').matchAll(/\b(?:code|id)(?:: |\()['`]([a-z0-9-]+)/g)].map((match) =>
    (match[1] as string).replace(/-$/, ''),
  );

/**
 * Test files for a source file, at most `most`. For numbers and tables: the tests of its own folder and of `tests/truth`, and those elsewhere
 * that import it and judge no jobs; where there are none, the nearest. Those that import it come first. For a check: the tests that speak most of its findings.
 */
export function testsFor(path: string, most: number): readonly string[] {
  const steps = stepsTo(path);
  const tests = [...steps].filter(([test]) => test.endsWith('.test.ts') && !dear.test(relative(root, test)));
  const folder = relative(join(root, 'src'), path).split('/')[0] as string;
  if (folder === 'validate') {
    const direct = codesOf(path);
    const users = [...imports].filter(
      ([from, to]) => from.includes('/validate/') && to.includes(path) && !from.endsWith('/all.ts'),
    );
    const codes = [...new Set(direct.length > 0 ? direct : users.flatMap(([from]) => codesOf(from)))];
    const mentions = (test: string) =>
      codes.reduce(
        (sum, code) => sum + ((texts.get(test) ?? '').match(new RegExp(`['\`]${code}\\b`, 'g'))?.length ?? 0),
        0,
      );
    return tests
      .map(([test, far]) => ({ test, score: mentions(test) + (far === 1 ? 100 : 0) }))
      .filter(({ score }) => score > 0)
      .sort((a, b) => b.score - a.score)
      .slice(0, most)
      .map(({ test }) => test);
  }
  const near = tests.filter(([test, far]) => {
    const own = far <= 3 && new RegExp(`/tests/(${folder}|truth)/`).test(test);
    return own || (far === 1 && !judgesJobs.has(test));
  });
  const nearest = Math.min(...tests.map(([, far]) => far));
  return (near.length > 0 ? near : tests.filter(([, far]) => far === nearest))
    .sort(([, far], [, further]) => far - further)
    .slice(0, most)
    .map(([test]) => test);
}
