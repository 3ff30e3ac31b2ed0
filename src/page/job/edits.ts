/** Edits of single values: they wait for each other, and are made in the text by the worker. */
import { batch } from '@preact/signals';
import type { EditPath } from '../../core.ts';
import { ask, type Edit } from '../answer/engine.ts';
import { change, editing, notice, text, values, why } from './store.ts';

interface Wish {
  edits: readonly Edit[];
  readonly step: string | undefined;
  isQuiet: boolean;
  readonly done: Promise<boolean>;
  readonly end: (isTaken: boolean) => void;
}

/** Edits wait for each other, so that two quick ones never start from the same text. */
const wishes: Wish[] = [];
let isEditing = false;

async function workOff(): Promise<void> {
  if (isEditing) return;
  isEditing = true;
  for (let wish = wishes.shift(); wish; wish = wishes.shift()) {
    const { edits, step, isQuiet } = wish;
    let isTaken = false;
    try {
      const answer = await ask({ kind: 'edit', text: text.value, edits });
      if (answer.kind === 'edited') {
        isTaken = true;
        batch(() => {
          change(answer.text, step);
          // The fields show it at once; what the judging reads there comes after.
          for (const { path, typed } of edits)
            if (typed !== null) values.value = { ...values.value, [path.join('.')]: typed };
        });
      } else if (answer.kind === 'refused' && !isQuiet) notice.value = answer.why;
    } catch (fault) {
      notice.value = `That edit was not taken: ${why(fault)}`;
    }
    editing.value -= 1;
    wish.end(isTaken);
  }
  isEditing = false;
}

export interface SetOptions {
  /** Edits of one drag or of one word carry the same name: they are one step back, and only the latest of those that wait is made. */
  readonly step?: string;
  /** A value that is still being typed may be none yet: nothing is said then. */
  readonly isQuiet?: boolean;
}

const keysOf = (edits: readonly Edit[]) => edits.map(({ path }) => path.join('.')).join(' ');

/**
 * Set several values of the job as one step: all of them or, where one is refused, none.
 * @returns whether they were taken; a notice says why not
 */
export function setTogether(edits: readonly Edit[], { step, isQuiet = false }: SetOptions = {}): Promise<boolean> {
  const waiting = wishes.at(-1);
  if (waiting && step !== undefined && waiting.step === step && keysOf(waiting.edits) === keysOf(edits)) {
    waiting.edits = edits;
    waiting.isQuiet = isQuiet;
    return waiting.done;
  }
  let end: Wish['end'] = () => undefined;
  const done = new Promise<boolean>((resolve) => {
    end = resolve;
  });
  latest = done;
  wishes.push({ edits, step, isQuiet, done, end });
  editing.value += 1;
  void workOff();
  return done;
}

/**
 * Set one value of the job. The edit is kept as typed text even where it is wrong: errors stand beside it.
 * @returns the sentence that says why the job cannot have it; null when it has, or when nothing is to be said yet
 */
export async function set(path: EditPath, typed: string | null, options: SetOptions = {}): Promise<string | null> {
  const isTaken = await setTogether([{ path, typed }], options);
  return isTaken || options.isQuiet ? null : notice.value;
}

let latest: Promise<unknown> = Promise.resolve();

/** Waits until every edit that was typed so far is in the text. */
export const allTyped = (): Promise<unknown> => latest;
