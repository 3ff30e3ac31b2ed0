/** Which test files guard a source file: those that reach it, nearest first. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
/** Tests that start browsers, outside readers or thousands of cases: too dear to run once a mutant. */
const dear =
  /^tests\/((page|outside|golden|fuzz|faults|hostile|house|products|cli|solids|core|design)\/|presets\/(?!by-hand))/;

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

const folderOf = (path: string) => relative(join(root, 'src'), path).split('/')[0] as string;

/**
 * Codes of the findings that a file writes, as patterns: what stands behind `code:`, or in the list of a type of codes. A side, a part or
 * a number that is filled in may be anything.
 */
const codesIn = (path: string): readonly string[] => {
  const text = texts.get(path) ?? '';
  const typed = [...text.matchAll(/^type \w*Code =([^;]*);/gm)].flatMap((type) => [
    ...(type[1] as string).matchAll(/'([a-z0-9-]+)'/g),
  ]);
  const templates = [...text.matchAll(/\bcode: `([^`]*)`/g)];
  return [...text.matchAll(/\bcode: '([a-z0-9-]+)'/g), ...typed, ...templates].map((match) =>
    (match[1] as string).replace(/\$\{[^}]*\}/g, filled),
  );
};
const filled = '(?:[a-z0-9]+|\\$\\{[^}]*\\})';

/**
 * How well each test judges a check. What a check says is known by the code of its finding, never by its `id`, which names the check (or a
 * part, or a feature) and stands in no finding. So the codes are: those that the file writes; with those of the files it takes demands from, where it
 * hands on codes that others wrote; for a file that only works numbers out, the codes of the checks that use it; and for what serves all
 * checks, every code. A test scores a point each time it names one of them; those that import the file come first, for they look at numbers that
 * no finding may show, and most of them need no whole job. Whole jobs are judged by nearly all others; what makes one dear is what else it starts.
 */
function judgesOf(path: string): (test: string) => number {
  const handsOn = /\{ code[,}]|\bcode: \w+\.code\b/.test(texts.get(path) ?? '');
  const taken = handsOn ? (imports.get(path) ?? []).filter((from) => folderOf(from) !== 'validate') : [];
  const own = [path, ...taken].flatMap(codesIn);
  const users = [...imports].filter(([from, to]) => folderOf(from) === 'validate' && to.includes(path));
  const used = users.flatMap(([from]) => codesIn(from));
  const every = [...texts.keys()].filter((from) => folderOf(from) === 'validate').flatMap(codesIn);
  const codes = [own, used, every].find((some) => some.length > 0) ?? [];
  const named = new RegExp(`['\`](?:${[...new Set(codes)].join('|')})['\`@]`, 'g');
  return (test) =>
    ((texts.get(test) ?? '').match(named)?.length ?? 0) + ((imports.get(test) ?? []).includes(path) ? 1000 : 0);
}

/**
 * Test files for a source file, at most `most`. For numbers and tables: the tests of its own folder and of `tests/truth`, and those elsewhere
 * that import it and judge no jobs; where there are none, the nearest. Those that import it come first. For a
 * check: the tests that judge it best (`judgesOf`).
 */
export function testsFor(path: string, most: number): readonly string[] {
  const steps = stepsTo(path);
  const tests = [...steps].filter(([test]) => test.endsWith('.test.ts') && !dear.test(relative(root, test)));
  const folder = folderOf(path);
  if (folder === 'validate') {
    const scoreOf = judgesOf(path);
    return tests
      .map(([test]) => ({ test, score: scoreOf(test) }))
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
