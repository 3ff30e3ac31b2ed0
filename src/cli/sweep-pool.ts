/** The threads of a sweep: stretches of variants go out as threads come free, and come back in order. */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { JudgedStretch, Stretch, SweepTask } from './sweep-worker.ts';

export interface PoolOptions {
  readonly task: SweepTask;
  /** First variant, and how many there are in all. */
  readonly from: number;
  readonly count: number;
  readonly workers: number;
  /** Variants a stretch. */
  readonly stretch: number;
  /** Takes each stretch, in order; the next waits until it is done. */
  readonly take: (judged: JudgedStretch) => Promise<void>;
  /** Asked before a stretch goes out; true: finish what is out and end. */
  readonly isStopped: () => boolean;
}

/** Stretches that may be out or waiting for their turn, for each thread: more would only fill memory. */
const ahead = 3;

/** Run from source, a thread must be given the loader that reads TypeScript; installed, it needs none. */
const isSource = import.meta.url.endsWith('.ts');
const file = new URL(isSource ? './sweep-worker.ts' : './sweep-worker.js', import.meta.url);

function startThread(task: SweepTask): Worker {
  if (!isSource) return new Worker(file, { workerData: task });
  const loader = pathToFileURL(
    createRequire(import.meta.url)
      .resolve('tsx/esm/api')
      .replace(/\.cjs$/, '.mjs'),
  ).href;
  const script = `import(${JSON.stringify(loader)}).then(({ register }) => (register(), import(${JSON.stringify(file.href)})))`;
  return new Worker(script, { eval: true, workerData: task });
}

/**
 * Judge all variants from `from` on. Memory does not grow with their number.
 * @throws what a thread or `take` threw, once all threads have ended
 */
export async function runPool({ task, from, count, workers, stretch, take, isStopped }: PoolOptions): Promise<void> {
  let next = from;
  let written = from;
  const waiting = new Map<number, JudgedStretch>();
  const threads: Worker[] = [];
  let taking: Promise<void> = Promise.resolve();
  let fault: unknown = null;

  const nextStretch = (): Stretch | null => {
    if (fault !== null || isStopped() || next >= count || next - written > ahead * workers * stretch) return null;
    const one = { from: next, to: Math.min(count, next + stretch) };
    next = one.to;
    return one;
  };

  /** Hands on what has come back, in order. */
  const drain = async (): Promise<void> => {
    for (let judged = waiting.get(written); judged && fault === null; judged = waiting.get(written)) {
      waiting.delete(written);
      await take(judged);
      written = judged.to;
    }
  };

  const work = (thread: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const send = (): void => {
        const one = nextStretch();
        if (one) thread.postMessage(one);
        else if (fault === null && !isStopped() && next < count) setTimeout(send, 5);
        else resolve();
      };
      thread.on('message', (judged: JudgedStretch) => {
        waiting.set(judged.from, judged);
        taking = taking.then(drain);
        taking.catch(reject);
        send();
      });
      thread.on('error', reject);
      thread.on('exit', (code) => {
        if (code !== 0) reject(new Error(`a thread of the sweep ended with code ${code}`));
      });
      send();
    });

  const wanted = Math.max(1, Math.min(workers, Math.ceil((count - from) / stretch)));
  for (let i = 0; i < wanted; i++) {
    threads.push(startThread(task));
  }
  const noted = (error: unknown): void => {
    fault ??= error;
  };
  await Promise.all(threads.map((thread) => work(thread).catch(noted)));
  await taking.catch(noted);
  for (const thread of threads) thread.removeAllListeners('exit');
  await Promise.all(threads.map((thread) => thread.terminate()));
  if (fault !== null) throw fault;
}
