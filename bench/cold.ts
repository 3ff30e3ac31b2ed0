/** What a cold process costs, beside the bare cost of starting Node and of loading the packages it uses. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
const runs = 5;
const report =
  "process.on('exit', () => { const u = process.resourceUsage(); process.stderr.write('\\ncost ' + (u.userCPUTime + u.systemCPUTime) + ' ' + u.maxRSS + '\\n'); });";
const atExit = `data:text/javascript,${encodeURIComponent(report)}`;

export interface Cost {
  readonly what: string;
  /** Best wall time of a whole process, and its processor time, ms. */
  readonly ms: number;
  readonly cpu: number;
  /** Greatest resident memory, MB. */
  readonly mb: number;
}

function cost(what: string, args: readonly string[]): Cost {
  let [ms, cpu, mb] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0];
  for (let i = 0; i < runs; i++) {
    const start = process.hrtime.bigint();
    const child = spawnSync(process.execPath, ['--import', atExit, ...args], { cwd: root, encoding: 'utf8' });
    ms = Math.min(ms, Number(process.hrtime.bigint() - start) / 1e6);
    if (child.status === null || child.status > 1) throw new Error(`${what} failed: ${child.stderr}`);
    const [, used, peak] = /cost (\d+) (\d+)/.exec(child.stderr) ?? [];
    cpu = Math.min(cpu, Number(used) / 1000);
    mb = Math.max(mb, Number(peak) / 1024);
  }
  return { what, ms, cpu, mb };
}

const loads = ['manifold-3d', 'earcut', 'makerjs', '@tarikjabiri/dxf', '@jscad/modeling', 'zod', 'yaml', 'yargs'];
const loading = `await Promise.all(${JSON.stringify(loads)}.map((name) => import(name))); await (await import('manifold-3d')).default();`;
/** The exact modeller, loaded, and its first solid built. */
const firstSolid =
  "const oc = await (await import('replicad-opencascadejs')).default({ print() {}, printErr() {} }); const a = new oc.BRepPrimAPI_MakeCylinder(10, 10).Shape(), b = new oc.BRepPrimAPI_MakeCylinder(4, 20).Shape(); const cut = new oc.BRepAlgoAPI_Cut(a, b, new oc.Message_ProgressRange()); cut.Shape();";

/** Sixteen bolts against fifteen, invented: whichever way they are held, they meet. All ways are tried, then what could give way. */
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

/** Cold processes; the first is Node alone, the second its packages and the boolean kernel, the third the exact modeller. */
export function coldCosts(): Cost[] {
  const folder = mkdtempSync(join(tmpdir(), 'flangewright-bench-'));
  const job = 'presets/orchard-truck.job.yaml';
  const crowded = join(folder, 'crowded.job.yaml');
  try {
    writeFileSync(crowded, JSON.stringify(crowdedJob));
    const make = (only: readonly string[]) => ['dist/cli/bin.js', 'make', job, '-o', folder, ...only];
    return [
      cost('start Node and stop', ['-e', '']),
      cost('load the packages and the boolean kernel', ['--input-type=module', '-e', loading]),
      cost('load the exact modeller, first build', ['--input-type=module', '-e', firstSolid]),
      cost('check', ['dist/cli/bin.js', 'check', job]),
      cost('check, a job that nothing can make', ['dist/cli/bin.js', 'check', crowded]),
      cost('make --only outline', make(['--only', 'outline'])),
      cost('make --only step', make(['--only', 'step'])),
      cost('make, everything that is made unasked', make([])),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
