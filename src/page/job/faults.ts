/** What is wrong with the job, and what is only not typed yet. */
import { computed, effect, signal } from '@preact/signals';
import type { JobError } from '../../core.ts';
import { errors, isTyping, view } from './store.ts';
import { isTyped } from './typed-keys.ts';

export interface Faults {
  readonly wrong: readonly JobError[];
  /** Keys that a job needs and where nothing stands yet. */
  readonly open: readonly JobError[];
}

/**
 * Nothing typed is nothing wrong, as long as the job has never been whole: a new job is a sheet to fill in. Later a key that is missing is
 * an error like any other: what is shown is then of the job before.
 */
const faults = computed<Faults>(() => {
  const isOpen = ({ path, value }: JobError) =>
    view.value === null && path !== '' && value === undefined && !isTyped(path);
  return {
    wrong: errors.value.filter((error) => !isOpen(error)),
    open: errors.value.filter(isOpen),
  };
});

const byPath = (list: readonly JobError[]) => new Map(list.map(({ path, message }) => [path, message]));

/** Errors by the path of their key. */
export const errorAt = computed(() => byPath(faults.value.wrong));
/** What is asked for, by the path of the key that is missing. */
export const wantedAt = computed(() => byPath(faults.value.open));
/** True where nothing is wrong, and something is still to be filled in. */
export const isOnlyOpen = computed(() => faults.value.wrong.length === 0 && faults.value.open.length > 0);

/** As they are listed: those of a value that is still being typed are not. */
export const listed = signal<Faults>({ wrong: [], open: [] });
effect(() => {
  if (!isTyping.value) listed.value = faults.value;
});
