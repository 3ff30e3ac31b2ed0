/** The same files as the command line makes, one by one. What is held says why. */

import opened from 'made:opened';
import { computed, signal } from '@preact/signals';
import type { Made } from '../../core.ts';
import { ask, cancelMaking } from '../answer/engine.ts';
import { allTyped } from '../job/edits.ts';
import { isOnlyOpen } from '../job/faults.ts';
import { refusedKeys } from '../job/refused.ts';
import { errors, isBehind, isNone, name, offered, text } from '../job/store.ts';

interface Work {
  readonly kind: string;
  readonly what: string;
  /** 0 to 1. */
  readonly share: number;
}

/** What was made, and of which job. */
interface MadeOf extends Job {
  readonly made: Made;
}

interface Job {
  readonly text: string;
  readonly base: string;
}

const working = signal<Work | null>(null);
/** By kind. What was made of another job than the one shown is never offered. */
const made = signal<ReadonlyMap<string, MadeOf>>(new Map());
const trouble = signal<{ readonly kind: string; readonly why: string } | null>(null);

/** Whether something was made of the job as it is shown: edits that are not in the text yet, or could not be taken, count. */
const isOfThisJob = ({ text: of, base }: Job): boolean =>
  !isBehind.value && refusedKeys.value.size === 0 && of === text.value && base === name.value;
/** Shorter work than this is not told of, ms: words that flash by only disturb. */
const patience = 200;
const isLong = signal(false);

function save(of: Job, file: string, bytes: Uint8Array): void {
  // A click may come before the button has gone.
  if (!isOfThisJob(of)) return;
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
  trouble.value = null;
  isLong.value = false;
  const timer = setTimeout(() => (isLong.value = true), patience);
  try {
    // The field that was just left may not be in the text yet.
    await allTyped();
    const of: Job = { text: text.value, base: name.value };
    const answer = await ask({ kind: 'make', ...of, only: [kind], force }, (part) => {
      if (part.kind === 'progress') working.value = { kind, what: part.what, share: part.share };
    });
    if (answer.kind === 'made') made.value = new Map(made.value).set(kind, { ...of, made: answer.made });
  } catch (fault) {
    trouble.value = { kind, why: sentence(fault, kind) };
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

/** What one button made, right under it. */
function Outcome({ kind }: { kind: string }) {
  if (working.value?.kind === kind) return <Progress />;
  if (trouble.value?.kind === kind) return <p role="alert">{trouble.value.why}</p>;
  const of = made.value.get(kind);
  if (!of) return null;
  if (!isOfThisJob(of)) return <p class="quiet">What was made here is of the job as it was before: make it again.</p>;
  const { files, held } = of.made;
  return (
    <>
      {files.map(({ name: file, bytes }) => (
        <p key={file}>
          <button type="button" class="file" onClick={() => save(of, file, bytes)}>
            save {file}
          </button>{' '}
          <span class="quiet">{bytes.length} bytes</span>
        </p>
      ))}
      {held.map(({ why }) => (
        <p key={why} class="held">
          <strong>Held back:</strong> {why}.{' '}
          <button type="button" onClick={() => void make(kind, true)}>
            make it all the same, marked as failed
          </button>
        </p>
      ))}
      {files.length + held.length === 0 ? <p class="quiet">The job has nothing for this file.</p> : null}
    </>
  );
}

/** Kinds that this job has something for. Until that is known: all. */
const fitting = computed(() => opened.kinds.filter(({ kind }) => offered.value?.includes(kind) ?? true));

export function Files() {
  const refused = [...refusedKeys.value];
  const isStuck = errors.value.length > 0 || refused.length > 0;
  if (isNone.value) return <p class="quiet">No job: there is nothing to make files of.</p>;
  return (
    <section aria-label="Files">
      <p class="quiet">
        Every file is made here in your browser; nothing is sent anywhere. What is made waits under its button to be
        saved, until the job changes.
      </p>
      {errors.value.length > 0 ? (
        <p>
          {isOnlyOpen.value
            ? 'The job is not whole yet: fill in what is still missing first.'
            : 'The job has errors: mend them first.'}
        </p>
      ) : null}
      {refused.length > 0 ? <p>What stands in {refused.join(', ')} is not in the job: mend it first.</p> : null}
      <ul class="kinds">
        {fitting.value.map(({ kind, about }) => (
          <li key={kind}>
            <button type="button" disabled={isStuck || working.value !== null} onClick={() => void make(kind, false)}>
              {working.value?.kind === kind ? 'working...' : about}
            </button>
            <div role="status">
              <Outcome kind={kind} />
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
