/** The same files as the command line makes, one by one. What is held says why. */
import { signal } from '@preact/signals';
import type { Made } from '../core.ts';
import { ask, cancelMaking } from './engine.ts';
import { errors, kinds, name, text } from './store.ts';

interface Work {
  readonly kind: string;
  readonly what: string;
  /** 0 to 1. */
  readonly share: number;
}

const working = signal<Work | null>(null);
const made = signal<Made | null>(null);
const trouble = signal('');
/** Shorter work than this is not told of, ms: words that flash by only disturb. */
const patience = 200;
const isLong = signal(false);

function save(file: string, bytes: Uint8Array): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([new Uint8Array(bytes)]));
  link.download = file;
  link.click();
  // The browser has taken the data by the next turn of its loop.
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** What went wrong, and what to do about it. */
function sentence(fault: unknown, kind: string): string {
  const why = fault instanceof Error ? fault.message : String(fault);
  if (why === 'Cancelled.') return 'Cancelled. Your job is as it was.';
  return `This file could not be made: ${why} Your job is kept. Try again; if it stays so, save the job and make it with the command line: flangewright make JOB --only ${kind}`;
}

async function make(kind: string, force: boolean): Promise<void> {
  working.value = { kind, what: 'beginning', share: 0 };
  trouble.value = '';
  isLong.value = false;
  const timer = setTimeout(() => (isLong.value = true), patience);
  try {
    const question = { kind: 'make', text: text.value, base: name.value, only: [kind], force } as const;
    const answer = await ask(question, (part) => {
      if (part.kind === 'progress') working.value = { kind, what: part.what, share: part.share };
    });
    if (answer.kind === 'made') made.value = answer.made;
  } catch (fault) {
    trouble.value = sentence(fault, kind);
    // What a failed making left behind (half a modeller, say) must not spoil the next try.
    cancelMaking();
  } finally {
    clearTimeout(timer);
    working.value = null;
  }
}

function Progress() {
  const work = working.value;
  if (!work || !isLong.value) return null;
  const percent = Math.round(100 * work.share);
  return (
    <p class="progress">
      <progress max="100" value={percent} aria-label="how much is done" /> {percent} %: {work.what}{' '}
      <button type="button" onClick={cancelMaking}>
        cancel
      </button>
    </p>
  );
}

export function Files() {
  const isStuck = errors.value.length > 0;
  const result = made.value;
  return (
    <section aria-label="Files">
      <p class="quiet">Made here, in your browser, the same to the last byte as the command line makes them.</p>
      <ul class="kinds">
        {kinds.value.map(({ kind, about }) => (
          <li key={kind}>
            <button type="button" disabled={isStuck || working.value !== null} onClick={() => void make(kind, false)}>
              {working.value?.kind === kind ? 'working...' : about}
            </button>
          </li>
        ))}
      </ul>
      {isStuck ? <p>The job has errors: mend them first.</p> : null}
      {trouble.value ? <p role="alert">{trouble.value}</p> : null}
      <div role="status">
        <Progress />
        {result?.files.map(({ name: file, bytes }) => (
          <p key={file}>
            <button type="button" class="file" onClick={() => save(file, bytes)}>
              save {file}
            </button>{' '}
            <span class="quiet">{bytes.length} bytes</span>
          </p>
        ))}
        {result?.held.map(({ kind, why }) => (
          <p key={kind} class="held">
            <strong>Held back:</strong> {why}{' '}
            <button type="button" onClick={() => void make(kind, true)}>
              make it all the same, marked as failed
            </button>
          </p>
        ))}
      </div>
    </section>
  );
}
