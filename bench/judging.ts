/** What judging costs in a warm process: reading, all checks, a design, a search. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { presetFolder } from '../src/cli/places.ts';
import { loadPatterns } from '../src/cli/presets.ts';
import { judgeJob, judgeVariant, planSweep, readJob } from '../src/core.ts';
import { validate, validateQuickly } from '../src/validate/all.ts';

export interface JudgingRow {
  readonly what: string;
  /** Processor time of one, ms: the machine may be busy with other things. */
  readonly ms: number;
}

function each(count: number, once: (i: number) => unknown): number {
  for (let i = 0; i < Math.ceil(count / 2); i++) once(i);
  const start = process.cpuUsage();
  const from = performance.now();
  let done = 0;
  while (done < count || performance.now() - from < 500) once(done++ % count);
  return process.cpuUsage(start).user / 1000 / done;
}

/** @param name of a shipped job */
export async function judging(name: string): Promise<JudgingRow[]> {
  const text = readFileSync(join(presetFolder, `${name}.job.yaml`), 'utf8');
  const patterns = await loadPatterns();
  const judged = judgeJob(text, name, patterns);
  if (!judged.ok) throw new Error(`${name} is no job`);
  const { joint } = judged;
  const planned = planSweep(text, name, ['adapter.thickness=16..26/0.1']);
  if (!planned.ok) throw new Error(planned.why);
  const { plan } = planned;
  return [
    { what: 'read the job', ms: each(60, () => readJob(text, name)) },
    // A new joint each time: what is kept for a joint must be worked out again.
    {
      what: 'all checks but the throws of chance and the signal, a new joint',
      ms: each(60, () => validateQuickly({ ...joint })),
    },
    { what: 'all checks, a new joint', ms: each(30, () => validate({ ...joint })) },
    { what: 'a variant of a sweep', ms: each(40, (i) => judgeVariant(plan, i, patterns)) },
    { what: 'the design that is found by search', ms: each(8, () => judgeJob(text, name, patterns)) },
  ];
}
