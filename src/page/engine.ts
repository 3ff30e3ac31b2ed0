/** Questions to the worker. A worker that dies is started again, and the question asked once more. */
import type { EditPath, JobError, LiveBody, LiveView, Made, TypedValues } from '../core.ts';

export type Ask =
  | { readonly kind: 'take'; readonly text: string; readonly keys: string }
  | { readonly kind: 'circle'; readonly typed: TypedCircle }
  | { readonly kind: 'open' }
  | { readonly kind: 'edit'; readonly text: string; readonly path: EditPath; readonly typed: string | null }
  | { readonly kind: 'judge'; readonly text: string; readonly search: boolean }
  | { readonly kind: 'bodies'; readonly text: string }
  | {
      readonly kind: 'make';
      readonly text: string;
      readonly base: string;
      readonly only: readonly string[];
      readonly force: boolean;
    };

export type Answer =
  | {
      readonly kind: 'measured';
      readonly title: string;
      readonly lines: readonly string[];
      readonly circle: number | null;
      readonly doubt: number | null;
    }
  | {
      readonly kind: 'opened';
      readonly schema: JsonSchema;
      readonly jobs: Readonly<Record<string, string>>;
      readonly starter: string;
      readonly kinds: readonly Kind[];
    }
  | { readonly kind: 'edited'; readonly text: string }
  | { readonly kind: 'refused'; readonly why: string }
  | { readonly kind: 'judged'; readonly view: LiveView; readonly values: TypedValues }
  | {
      readonly kind: 'errors';
      readonly errors: readonly JobError[];
      readonly text: string;
      readonly values: TypedValues;
    }
  | { readonly kind: 'bodies'; readonly bodies: readonly LiveBody[] }
  | { readonly kind: 'made'; readonly made: Made };

/** A bolt circle as typed beside its picture; readings in mm, parted by commas. */
export interface TypedCircle {
  readonly side: 'driving' | 'driven';
  readonly holes: string;
  readonly span: string;
  readonly over?: string;
  readonly between?: string;
}

/** A kind of file that can be made, in the words of the bench. */
export interface Kind {
  readonly kind: string;
  readonly about: string;
}

/** The part of a JSON Schema that fields are made of. */
export interface JsonSchema {
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly (string | number | boolean)[];
  readonly anyOf?: readonly JsonSchema[];
  readonly default?: unknown;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
}

interface Waiting {
  readonly ask: Ask;
  readonly tries: number;
  readonly resolve: (answer: Answer) => void;
  readonly reject: (fault: Error) => void;
}

const waiting = new Map<number, Waiting>();
let count = 0;
let worker: Worker | undefined;

function start(): Worker {
  const fresh = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<{ id: number; answer?: Answer; fault?: string }>) => {
    const asked = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.answer) asked?.resolve(data.answer);
    else asked?.reject(new Error(data.fault ?? 'no answer'));
  });
  fresh.addEventListener('error', (event) => {
    event.preventDefault();
    restart(event.message || 'the worker stopped');
  });
  return fresh;
}

/** End the worker and ask what is open again, once; what fails twice is given up with its reason. */
function restart(why: string): void {
  worker?.terminate();
  worker = undefined;
  for (const [id, open] of [...waiting]) {
    waiting.delete(id);
    if (open.tries > 0) open.reject(new Error(why));
    else send({ ...open, tries: 1 });
  }
}

function send(open: Waiting): void {
  count += 1;
  waiting.set(count, open);
  worker ??= start();
  worker.postMessage({ id: count, ask: open.ask });
}

/** Ask the worker. Rejects with a sentence when it cannot answer. */
export function ask(question: Ask): Promise<Answer> {
  return new Promise((resolve, reject) => send({ ask: question, tries: 0, resolve, reject }));
}

/** Give up everything that is being worked out; the next question starts a fresh worker. */
export function cancel(): void {
  worker?.terminate();
  worker = undefined;
  for (const [id, open] of [...waiting]) {
    waiting.delete(id);
    open.reject(new Error('Cancelled.'));
  }
}
