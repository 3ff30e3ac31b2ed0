/** What the page knows: the job as text, its past and future, and what came of it. One way: text -> judged -> shown. */
import { batch, computed, effect, type Signal, signal } from '@preact/signals';
import type { EditPath, JobError, LiveView, TypedValues } from '../core.ts';
import { type Answer, ask, cancel, type JsonSchema, type Kind } from './engine.ts';

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
/** What is still being worked out about the text as it stands, in words. */
export const pending = signal<readonly string[]>([]);
/** Pictures that are still of the text before. */
export const late = signal<ReadonlySet<string>>(new Set());
/** Counts joints: the same number stands for the same parts. */
export const parts = signal(0);
/** True while somebody is in the middle of a value: lists of errors wait, so that nothing moves under the hand. */
export const isTyping = signal(false);
const judging = signal(false);
const editing = signal(0);
export const busy = computed(() => judging.value || editing.value > 0);
/** A sentence about something that went wrong or was done, shown until the next change. */
export const notice = signal('');
export const schema = signal<JsonSchema | null>(null);
export const kinds = signal<readonly Kind[]>([]);
export const jobs = signal<Readonly<Record<string, string>>>({});
/** Feature under the pointer, or chosen: lights up in pictures and findings alike. */
export const lit = signal<string | null>(null);

/** Errors by the path of their key. */
export const errorAt = computed(() => new Map(errors.value.map((error) => [error.path, error.message])));
/** Errors as they are listed: those of a value that is still being typed are not. */
export const listed = signal<readonly JobError[]>([]);
effect(() => {
  if (!isTyping.value) listed.value = errors.value;
});
/** True while what is shown is of a text before the errors. */
export const isStale = computed(() => errors.value.length > 0 && view.value !== null);

const why = (fault: unknown) => (fault instanceof Error ? fault.message : String(fault));

/** What the last step was made of: a drag or a word as it is typed is one step, however many texts it went through. */
let lastStep: string | undefined;

/**
 * A new text as one step that can be taken back.
 * @param step the same as last time: part of the same step
 */
export function change(next: string, step?: string): void {
  if (next === text.value) return;
  batch(() => {
    if (step === undefined || step !== lastStep) past.value = [...past.value, text.value].slice(-mostSteps);
    lastStep = step;
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
    lastStep = undefined;
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
  lastStep = undefined;
  batch(() => {
    to.value = [...to.value, text.value];
    from.value = from.value.slice(0, -1);
    text.value = next;
  });
}

export const undo = (): void => step(past, future);
export const redo = (): void => step(future, past);

interface Wish {
  readonly path: EditPath;
  typed: string | null;
  readonly step: string | undefined;
  isQuiet: boolean;
  readonly done: Promise<void>;
  readonly end: () => void;
}

/** Edits wait for each other, so that two quick ones never start from the same text. */
const wishes: Wish[] = [];
let isEditing = false;

async function workOff(): Promise<void> {
  if (isEditing) return;
  isEditing = true;
  for (let wish = wishes.shift(); wish; wish = wishes.shift()) {
    const { path, typed, step, isQuiet } = wish;
    try {
      const answer = await ask({ kind: 'edit', text: text.value, path, typed });
      if (answer.kind === 'edited') {
        batch(() => {
          change(answer.text, step);
          // The field shows it at once; what the judging reads there comes after.
          if (typed !== null) values.value = { ...values.value, [path.join('.')]: typed };
        });
      } else if (answer.kind === 'refused' && !isQuiet) notice.value = answer.why;
    } catch (fault) {
      notice.value = `That edit was not taken: ${why(fault)}`;
    }
    editing.value -= 1;
    wish.end();
  }
  isEditing = false;
}

export interface SetOptions {
  /** Edits of one drag or of one word carry the same name: they are one step back, and only the latest of those that wait is made. */
  readonly step?: string;
  /** A value that is still being typed may be none yet: nothing is said then. */
  readonly isQuiet?: boolean;
}

/** Set one value of the job. The edit is kept as typed text even where it is wrong: errors stand beside it. */
export function set(path: EditPath, typed: string | null, { step, isQuiet = false }: SetOptions = {}): Promise<void> {
  const waiting = wishes.at(-1);
  if (waiting && step !== undefined && waiting.step === step) {
    waiting.typed = typed;
    waiting.isQuiet = isQuiet;
    return waiting.done;
  }
  let end: () => void = () => undefined;
  const done = new Promise<void>((resolve) => {
    end = resolve;
  });
  wishes.push({ path, typed, step, isQuiet, done, end });
  editing.value += 1;
  void workOff();
  return done;
}

/** Pictures as they are now; those that are not drawn yet stay as they were, and are called late. */
function shownWith(next: LiveView, isWhole: boolean): LiveView {
  const before = isWhole ? [] : (view.value?.pictures ?? []);
  const fresh = new Set(next.pictures.map((picture) => picture.name));
  const kept = before.filter((picture) => !fresh.has(picture.name));
  late.value = new Set(kept.map((picture) => picture.name));
  return { ...next, pictures: [...next.pictures, ...kept] };
}

/** What is the same stays the same object: whoever shows it has nothing to do. */
function keep<T>(kept: Signal<T>, next: T): void {
  if (JSON.stringify(kept.peek()) !== JSON.stringify(next)) kept.value = next;
}

function take(answer: Answer): void {
  batch(() => {
    if (answer.kind === 'judged') {
      view.value = shownWith(answer.view, answer.open.length === 0);
      keep(values, answer.values);
      parts.value = answer.parts;
      keep(pending, answer.open);
      keep(errors, []);
    } else if (answer.kind === 'errors') {
      keep(errors, answer.errors);
      keep(values, answer.values);
      pending.value = [];
    }
  });
}

let round = 0;

/** Judge the text as it stands, in steps; only answers about the latest text count. */
async function judge(of: string): Promise<void> {
  round += 1;
  const mine = round;
  const takeMine = (answer: Answer) => {
    if (mine === round) take(answer);
  };
  judging.value = true;
  try {
    takeMine(await ask({ kind: 'judge', text: of }, takeMine));
  } catch (fault) {
    if (mine === round) notice.value = `The sums stopped: ${why(fault)} Your job is kept; change it or try again.`;
  } finally {
    if (mine === round) judging.value = false;
  }
}

/** Stop what is being worked out. The text stays. */
export function stop(): void {
  round += 1;
  cancel();
  judging.value = false;
  notice.value = 'Stopped. What was not worked out yet is missing, or of the job before this change.';
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
    if (of !== '') void judge(of);
  });
  effect(() => writeShelf({ text: text.value, name: name.value }));
  window.addEventListener('storage', ({ key }) => {
    if (key === shelf) notice.value = otherTab;
  });
}

const otherTab =
  'A job was changed in another tab of this page. Each tab keeps its own: save both as files before you close one.';

/** Each tab has a shelf of its own, which a reload brings back; a new tab takes up what was worked on last in any of them. */
const shelves = (): Storage[] => [sessionStorage, localStorage];

function readShelf(): { text: string; name: string } | null {
  try {
    for (const store of shelves()) {
      const kept: unknown = JSON.parse(store.getItem(shelf) ?? 'null');
      if (typeof kept !== 'object' || kept === null) continue;
      const { text: of, name: called } = kept as { text?: unknown; name?: unknown };
      if (typeof of === 'string' && of !== '')
        return { text: of, name: typeof called === 'string' ? called : 'my-joint' };
    }
    return null;
  } catch {
    return null;
  }
}

function writeShelf(work: { readonly text: string; readonly name: string }): void {
  try {
    const kept = JSON.stringify(work);
    for (const store of shelves()) store.setItem(shelf, kept);
  } catch {
    // A full or forbidden store must not stop the work; saving as a file still does.
  }
}
