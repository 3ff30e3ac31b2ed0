/** What the page knows: the job as text, its past and future, and what came of it. One way: text -> judged -> shown. */
import firstAnswer from 'made:first';
import opened from 'made:opened';
import { batch, computed, effect, signal } from '@preact/signals';
import type { JobError, LivePicture, LiveView, TypedValues } from '../../core.ts';
import { type Answer, ask, cancel } from '../answer/engine.ts';
import { type Called, calledAsShelved, nameOf, type Step, slug, titleOf, unnamed } from './job-name.ts';
import { keep } from './keep.ts';
import { otherTab, readShelf, shelf, writeShelf, writeSteps } from './shelf.ts';

/** Steps that can be taken back. */
const mostSteps = 500;

export const text = signal('');
export const called = signal<Called>(unnamed);
export const name = computed(() => nameOf(called.value, text.value));
/** True while one of the examples stands as it is shipped. */
export const isExample = computed(() => Object.values(opened.jobs).includes(text.value));
export const past = signal<readonly Step[]>([]);
export const future = signal<readonly Step[]>([]);
export const values = signal<TypedValues>({});
export const errors = signal<readonly JobError[]>([]);
export const view = signal<LiveView | null>(null);
/** The flanges of a job that is not whole yet, as far as they can be read. */
export const sketches = signal<readonly LivePicture[]>([]);
/** What is still being worked out about the text as it stands, in words. */
export const pending = signal<readonly string[]>([]);
/** Pictures that are still of the text before. */
export const late = signal<ReadonlySet<string>>(new Set());
/** Counts joints: the same number stands for the same parts. */
export const parts = signal(0);
/** True while somebody is in the middle of a value: lists of errors wait, so that nothing moves under the hand. */
export const isTyping = signal(false);
const judging = signal(false);
/** Edits that are not in the text yet. */
export const editing = signal(0);
/** True while the text does not say yet what the sheet says. */
export const isBehind = computed(() => editing.value > 0);
export const busy = computed(() => judging.value || editing.value > 0);
/** A sentence about something that went wrong or was done, shown until the next change. */
export const notice = signal('');
/** Kinds of file that this job has something for; null until that is known. */
export const offered = signal<readonly string[] | null>(null);
/** True where the text holds nothing: there is no job. */
export const isNone = signal(false);
/** Feature under the pointer, or chosen: lights up in pictures and findings alike. */
export const lit = signal<string | null>(null);

/** True while what is shown is of a text before the errors. */
export const isStale = computed(() => errors.value.length > 0 && view.value !== null);

/** What a fault says. */
export const why = (fault: unknown) => (fault instanceof Error ? fault.message : String(fault));

/** What the last step was made of: a drag or a word as it is typed is one step, however many texts it went through. */
let lastStep: string | undefined;

/** The job as it stands becomes the step to go back to. */
function remember(): void {
  past.value = [...past.value, { text: text.value, called: called.value }].slice(-mostSteps);
}

/**
 * A new text as one step that can be taken back.
 * @param step the same as last time: part of the same step
 */
export function change(next: string, step?: string): void {
  if (next === text.value) return;
  batch(() => {
    if (step === undefined || step !== lastStep) remember();
    lastStep = step;
    future.value = [];
    text.value = next;
    notice.value = '';
  });
}

/** Nothing that was worked out of another job may stand beside this one. */
function clear(): void {
  view.value = null;
  offered.value = null;
}

/** Another job in place of this one, as a step that can be taken back: its name comes back too. */
export function open(next: string, as: Called): void {
  if (next === text.value && as.name === name.value) return;
  batch(() => {
    remember();
    if (next !== text.value) clear();
    lastStep = undefined;
    text.value = next;
    called.value = as;
    future.value = [];
    notice.value = '';
  });
}

/**
 * Call the job's files otherwise: letters, digits and hyphens are kept. A step that can be taken back.
 * @param typed empty: by the job's title again
 */
export function rename(typed: string): void {
  const to = slug(typed);
  if (to === name.value) return;
  batch(() => {
    remember();
    lastStep = undefined;
    called.value = to === '' ? unnamed : { name: to, title: null };
    future.value = [];
  });
}

function step(from: typeof past, to: typeof future): void {
  const next = from.value.at(-1);
  if (next === undefined) return;
  lastStep = undefined;
  batch(() => {
    to.value = [...to.value, { text: text.value, called: called.value }];
    from.value = from.value.slice(0, -1);
    // A step across two jobs: a name given by hand is a step by itself, and leaves the text.
    if (next.called !== called.value && next.text !== text.value) clear();
    text.value = next.text;
    called.value = next.called;
    notice.value = '';
  });
}

export const undo = (): void => step(past, future);
export const redo = (): void => step(future, past);

/** Pictures as they are now; those that are not drawn yet stay as they were, and are called late. */
function shownWith(next: LiveView, isWhole: boolean): LiveView {
  const before = isWhole ? [] : (view.value?.pictures ?? []);
  const fresh = new Set(next.pictures.map((picture) => picture.name));
  const kept = before.filter((picture) => !fresh.has(picture.name));
  late.value = new Set(kept.map((picture) => picture.name));
  return { ...next, pictures: [...next.pictures, ...kept] };
}

function take(answer: Answer): void {
  batch(() => {
    if (answer.kind === 'judged') {
      view.value = shownWith(answer.view, answer.open.length === 0);
      keep(values, answer.values);
      parts.value = answer.parts;
      if (answer.kinds) keep(offered, answer.kinds);
      keep(pending, answer.open);
      keep(errors, []);
      keep(sketches, []);
    } else if (answer.kind === 'errors') {
      keep(errors, answer.errors);
      keep(sketches, answer.sketches);
      keep(values, answer.values);
      pending.value = [];
    } else if (answer.kind === 'nothing') {
      clear();
      keep(errors, []);
      keep(sketches, []);
      keep(values, {});
      pending.value = [];
      late.value = new Set();
    } else return;
    isNone.value = answer.kind === 'nothing';
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

/** What is shown already is worked out once more as soon as the page stands: then the worker is loaded when the first edit comes. */
function warmUp(of: string): void {
  requestAnimationFrame(() =>
    setTimeout(() => {
      if (of === text.value) ask({ kind: 'judge', text: of }).catch(() => undefined);
    }),
  );
}

/** Begin: take up the work left in this browser, else the example. The example's answer came with the page: it is shown at once. */
export function begin(): void {
  const kept = readShelf();
  const example = opened.jobs[opened.first] ?? '';
  const [first, as] = kept
    ? [kept.text, calledAsShelved(kept, opened.jobs)]
    : [example, { name: opened.first, title: titleOf(example) }];
  let isAnswered = first === example;
  batch(() => {
    text.value = first;
    called.value = as;
    const steps = kept?.steps(as);
    past.value = steps?.past ?? [];
    future.value = steps?.future ?? [];
    if (isAnswered) take(firstAnswer());
  });
  effect(() => {
    const of = text.value;
    if (isAnswered) warmUp(of);
    else void judge(of);
    isAnswered = false;
  });
  effect(() => writeShelf({ text: text.value, ...called.value }));
  effect(() => writeSteps({ past: past.value, future: future.value }));
  window.addEventListener('storage', ({ key }) => {
    if (key === shelf) notice.value = otherTab;
  });
}
