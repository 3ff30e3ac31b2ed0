/** The same files as the command line makes, one by one. What is held says why. */
import { signal } from '@preact/signals';
import type { Made } from '../core.ts';
import { ask } from './engine.ts';
import { errors, kinds, name, text } from './store.ts';

const working = signal<string | null>(null);
const made = signal<Made | null>(null);
const trouble = signal('');

function save(file: string, bytes: Uint8Array): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([new Uint8Array(bytes)]));
  link.download = file;
  link.click();
  // The browser has taken the data by the next turn of its loop.
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

async function make(kind: string, force: boolean): Promise<void> {
  working.value = kind;
  trouble.value = '';
  try {
    const answer = await ask({ kind: 'make', text: text.value, base: name.value, only: [kind], force });
    if (answer.kind === 'made') made.value = answer.made;
  } catch (fault) {
    trouble.value = fault instanceof Error ? fault.message : String(fault);
  } finally {
    working.value = null;
  }
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
              {working.value === kind ? 'working...' : about}
            </button>
          </li>
        ))}
      </ul>
      {isStuck ? <p>The job has errors: mend them first.</p> : null}
      {trouble.value ? <p role="alert">{trouble.value}</p> : null}
      <div role="status">
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
