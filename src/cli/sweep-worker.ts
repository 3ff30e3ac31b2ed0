/** One thread of a sweep: is told a plan once, then judges the stretches of variants that it is asked for. */
import { parentPort, workerData } from 'node:worker_threads';
import { judgeVariant, planSweep, type VariantRow, type VariantVerdict, valuesOf } from '../core.ts';
import { loadPatterns } from './presets.ts';
import { jsonLine } from './shown.ts';

/** What a thread is told at its start. */
export interface SweepTask {
  readonly text: string;
  readonly file: string;
  readonly vary: readonly string[];
  readonly search: boolean;
}

/** Variants from `from` up to `to`, the last left out. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A stretch, judged: its rows as JSON Lines, and what the sweep counts. */
export interface JudgedStretch extends Stretch {
  readonly lines: string;
  readonly verdicts: readonly VariantVerdict[];
  /** What is wrong with the first variant that is no job, a sentence; null where all are. */
  readonly trouble: string | null;
  /** Stack of the first bug met, or null. */
  readonly bug: string | null;
}

const port = parentPort;
if (!port) throw new Error('sweep-worker runs as a thread only');
const { text, file, vary, search } = workerData as SweepTask;
const planned = planSweep(text, file, vary);
if (!planned.ok) throw new Error(planned.why);
const { plan } = planned;
const patterns = await loadPatterns();

port.on('message', ({ from, to }: Stretch) => {
  const verdicts: VariantVerdict[] = [];
  let lines = '';
  let [trouble, bug]: (string | null)[] = [null, null];
  for (let index = from; index < to; index++) {
    let row: VariantRow;
    try {
      row = judgeVariant(plan, index, patterns, search);
    } catch (error) {
      // One variant that meets a bug must not cost the others.
      bug ??= `variant ${index}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
      const values = Object.fromEntries(valuesOf(plan, index).map(({ data }, k) => [plan.axes[k]?.name ?? '', data]));
      row = { index, values, verdict: 'bad job', errors: [{ path: '', message: 'This is a bug in the program.' }] };
    }
    verdicts.push(row.verdict);
    const [first] = row.errors ?? [];
    if (first) trouble ??= `variant ${index}: ${first.path === '' ? '' : `${first.path}: `}${first.message}`;
    lines += jsonLine(row);
  }
  port.postMessage({ from, to, lines, verdicts, trouble: trouble ?? null, bug: bug ?? null } satisfies JudgedStretch);
});
