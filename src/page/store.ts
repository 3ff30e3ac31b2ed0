/** What the page knows: the job as text, its past and future, and what came of it. One way: text -> judged -> shown. */
import { batch, computed, effect, signal } from '@preact/signals';
import type { EditPath, JobError, LiveView, TypedValues } from '../core.ts';
import { ask, cancel, type JsonSchema, type Kind } from './engine.ts';

const shelf = 'flangewright.job';
/** Steps that can be taken back. */
const mostSteps = 500;

export const text = signal('');
export const name = signal('my-joint');
export const past = signal<readonly string[]>([]);
export const future = signal<readonly string[]>([]);
export const values = signal<TypedValues>({});
export const errors = signal<readonly JobError[]>([]);
export const view = signal<LiveView | null>(null);
export const busy = signal(false);
/** A sentence about something that went wrong or was done, shown until the next change. */
export const notice = signal('');
export const schema = signal<JsonSchema | null>(null);
export const kinds = signal<readonly Kind[]>([]);
export const jobs = signal<Readonly<Record<string, string>>>({});
/** Feature under the pointer, or chosen: lights up in pictures and findings alike. */
export const lit = signal<string | null>(null);

/** Errors by the path of their key. */
export const errorAt = computed(() => new Map(errors.value.map((error) => [error.path, error.message])));
/** Worst finding of each feature. */
export const isStale = computed(() => errors.value.length > 0 && view.value !== null);

const why = (fault: unknown) => (fault instanceof Error ? fault.message : String(fault));

/** A new text as one step that can be taken back. */
export function change(next: string): void {
  if (next === text.value) return;
  batch(() => {
    past.value = [...past.value, text.value].slice(-mostSteps);
    future.value = [];
    text.value = next;
    notice.value = '';
  });
}

/** Another file: its past is its own. */
export function open(next: string, called: string): void {
  batch(() => {
    // Pictures of another job must not stand beside this one.
    if (next !== text.value) view.value = null;
    text.value = next;
    name.value = called;
    past.value = [];
    future.value = [];
    notice.value = '';
  });
}

function step(from: typeof past, to: typeof future): void {
  const next = from.value.at(-1);
  if (next === undefined) return;
  batch(() => {
    to.value = [...to.value, text.value];
    from.value = from.value.slice(0, -1);
    text.value = next;
  });
}

export const undo = (): void => step(past, future);
export const redo = (): void => step(future, past);

/** Edits wait for each other, so that two quick ones never start from the same text. */
let queue: Promise<void> = Promise.resolve();

/** Set one value of the job. The edit is kept as typed text even where it is wrong: errors stand beside it. */
export function set(path: EditPath, typed: string | null): Promise<void> {
  queue = queue.then(async () => {
    try {
      const answer = await ask({ kind: 'edit', text: text.value, path, typed });
      if (answer.kind === 'edited') change(answer.text);
      else if (answer.kind === 'refused') notice.value = answer.why;
    } catch (fault) {
      notice.value = `That edit was not taken: ${why(fault)}`;
    }
  });
  return queue;
}

let round = 0;

/** Judge the text as it stands; only the latest answer counts. */
async function judge(of: string): Promise<void> {
  round += 1;
  const mine = round;
  busy.value = true;
  try {
    const answer = await ask({ kind: 'judge', text: of, search: true });
    if (mine !== round) return;
    batch(() => {
      if (answer.kind === 'judged') {
        view.value = answer.view;
        values.value = answer.values;
        errors.value = [];
      } else if (answer.kind === 'errors') {
        errors.value = answer.errors;
        values.value = answer.values;
      }
    });
  } catch (fault) {
    if (mine === round) notice.value = `The sums stopped: ${why(fault)} Your job is kept; change it or try again.`;
  } finally {
    if (mine === round) busy.value = false;
  }
}

/** Stop what is being worked out. The text stays. */
export function stop(): void {
  round += 1;
  cancel();
  busy.value = false;
  notice.value = 'Stopped. The last pictures are of the job before this change.';
}

/** Begin: take up the work left in this browser, else a starter job. */
export async function begin(): Promise<void> {
  const opened = await ask({ kind: 'open' });
  if (opened.kind !== 'opened') return;
  const kept = readShelf();
  batch(() => {
    schema.value = opened.schema;
    jobs.value = opened.jobs;
    kinds.value = opened.kinds;
    open(kept?.text ?? opened.jobs['orchard-truck'] ?? opened.starter, kept?.name ?? 'orchard-truck');
  });
  effect(() => {
    const of = text.value;
    writeShelf({ text: of, name: name.value });
    if (of !== '') void judge(of);
  });
}

function readShelf(): { text: string; name: string } | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(shelf) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return null;
    const { text: of, name: called } = kept as { text?: unknown; name?: unknown };
    return typeof of === 'string' && of !== ''
      ? { text: of, name: typeof called === 'string' ? called : 'my-joint' }
      : null;
  } catch {
    return null;
  }
}

function writeShelf(work: { readonly text: string; readonly name: string }): void {
  try {
    localStorage.setItem(shelf, JSON.stringify(work));
  } catch {
    // A full or forbidden store must not stop the work; saving as a file still does.
  }
}
