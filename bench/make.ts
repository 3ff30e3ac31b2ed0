/**
 * What a cold `make` costs, beside the bare cost of starting Node and of loading the packages it uses. Ratios of one run on one machine:
 * absolute times belong to the machine. Run: npm run bench
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
const runs = 7;
const report = "process.on('exit', () => process.stderr.write('\\npeak ' + process.resourceUsage().maxRSS + '\\n'));";
const atExit = `data:text/javascript,${encodeURIComponent(report)}`;

interface Cost {
  readonly what: string;
  /** Median wall time of a whole process, ms. */
  readonly ms: number;
  /** Greatest resident memory, MB. */
  readonly mb: number;
}

function cost(what: string, args: readonly string[]): Cost {
  const times: number[] = [];
  let mb = 0;
  for (let i = 0; i < runs; i++) {
    const start = process.hrtime.bigint();
    const child = spawnSync(process.execPath, ['--import', atExit, ...args], { cwd: root, encoding: 'utf8' });
    times.push(Number(process.hrtime.bigint() - start) / 1e6);
    if (child.status === null || child.status > 1) throw new Error(`${what} failed: ${child.stderr}`);
    mb = Math.max(mb, Number(/peak (\d+)/.exec(child.stderr)?.[1] ?? 0) / 1024);
  }
  times.sort((a, b) => a - b);
  return { what, ms: times[Math.floor(runs / 2)] as number, mb };
}

const loads = ['manifold-3d', 'earcut', 'makerjs', '@tarikjabiri/dxf', '@jscad/modeling', 'zod', 'yaml', 'yargs'];
const loading = `await Promise.all(${JSON.stringify(loads)}.map((name) => import(name))); await (await import('manifold-3d')).default();`;
const folder = mkdtempSync(join(tmpdir(), 'flangewright-bench-'));
const job = 'presets/orchard-truck.job.yaml';
/** Sixteen bolts against fifteen, invented: whichever way they are held, they meet. All ways are tried, then what could give way. */
const crowded = join(folder, 'crowded.job.yaml');
const crowdedJob = {
  job: 1,
  driving: { outside: 160, thickness: 14, behind: 60, holes: { count: 16, circle: 120, diameter: 10.5 } },
  driven: {
    outside: 170,
    thickness: 9,
    behind: 60,
    register: { gender: 'male', diameter: 70, depth: 3, fit: 'h6', corner: 0.3 },
    holes: { count: 15, circle: 126, diameter: 10.5 },
  },
};
try {
  writeFileSync(crowded, JSON.stringify(crowdedJob));
  const costs = [
    cost('start Node and stop', ['-e', '']),
    cost('load the packages and the boolean kernel', ['--input-type=module', '-e', loading]),
    cost('check', ['dist/cli/bin.js', 'check', job]),
    cost('check, a job that nothing can make', ['dist/cli/bin.js', 'check', crowded]),
    cost('make --only outline', ['dist/cli/bin.js', 'make', job, '-o', folder, '--only', 'outline']),
    cost('make, everything', ['dist/cli/bin.js', 'make', job, '-o', folder]),
  ];
  const base = costs[0] as Cost;
  const loaded = costs[1] as Cost;
  console.log(
    `${'cold process'.padEnd(42)} ${'ms'.padStart(7)} ${'x Node'.padStart(8)} ${'x loading'.padStart(10)} ${'peak MB'.padStart(8)}`,
  );
  for (const { what, ms, mb } of costs) {
    console.log(
      `${what.padEnd(42)} ${ms.toFixed(0).padStart(7)} ${(ms / base.ms).toFixed(1).padStart(8)} ${(ms / loaded.ms).toFixed(2).padStart(10)} ${mb.toFixed(0).padStart(8)}`,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
