/**
 * Questions to the workers: one answers while somebody edits, the other makes files, so that neither holds up or hurts the other. A
 * worker that dies is started again, and the question asked once more.
 */
import type {
  EditPath,
  JobError,
  LiveBody,
  LivePicture,
  LiveView,
  Made,
  NearPattern,
  ShownAs,
  ShownPreflight,
  TypedFlange,
  TypedValues,
} from '../../core.ts';

export type Ask =
  | { readonly kind: 'take'; readonly text: string; readonly keys: string }
  | { readonly kind: 'measure'; readonly of: Measuring }
  | { readonly kind: 'patterns'; readonly typed: TypedFlange; readonly units: 'mm' | 'in' }
  | { readonly kind: 'preflight'; readonly of: TypedPreflight }
  | { readonly kind: 'edit'; readonly text: string; readonly edits: readonly Edit[] }
  | { readonly kind: 'judge'; readonly text: string }
  | { readonly kind: 'bodies'; readonly text: string; readonly as: ShownAs }
  | {
      readonly kind: 'make';
      readonly text: string;
      readonly base: string;
      readonly only: readonly string[];
      readonly force: boolean;
    };

/** A value to set; null takes its key out. */
export interface Edit {
  readonly path: EditPath;
  readonly typed: string | null;
}

export type Answer =
  | {
      readonly kind: 'measured';
      readonly title: string;
      readonly lines: readonly string[];
      /** The numbers, as the measuring room names them; mm and degrees. */
      readonly result: Readonly<Record<string, unknown>>;
    }
  | { readonly kind: 'edited'; readonly text: string }
  | { readonly kind: 'patterns'; readonly near: readonly NearPattern[]; readonly isOne: boolean }
  | { readonly kind: 'preflight'; readonly shown: ShownPreflight }
  | { readonly kind: 'refused'; readonly why: string }
  | {
      readonly kind: 'judged';
      readonly view: LiveView;
      readonly values: TypedValues;
      /** What is still being worked out, in words; empty at the end. */
      readonly open: readonly string[];
      /** Counts joints: the same number stands for the same parts. */
      readonly parts: number;
      /** Kinds of file that this joint has something for; told with the whole answer. */
      readonly kinds?: readonly string[];
    }
  /** The text holds no job at all. */
  | { readonly kind: 'nothing' }
  /** Given up, because something newer was asked. */
  | { readonly kind: 'superseded' }
  /** How far a long piece of work has come: what is being done, and the share that is done, 0 to 1. */
  | { readonly kind: 'progress'; readonly what: string; readonly share: number }
  | {
      readonly kind: 'errors';
      readonly errors: readonly JobError[];
      readonly text: string;
      readonly values: TypedValues;
      /** The flanges as far as they can be read. */
      readonly sketches: readonly LivePicture[];
    }
  | { readonly kind: 'bodies'; readonly bodies: readonly LiveBody[] }
  | { readonly kind: 'made'; readonly made: Made };

/** A drawing for the cutting service: its bytes, and what is known of the part; empty where nothing was typed. */
export interface TypedPreflight {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly thickness: string;
  readonly material: string;
  readonly units: string;
  /** The job as it stands: its service's limits hold. */
  readonly text: string;
}

/** Something measured, as typed beside its picture. */
export type Measuring =
  | { readonly what: 'circle'; readonly typed: TypedCircle }
  | { readonly what: 'register'; readonly typed: TypedRegister }
  | { readonly what: 'runout'; readonly typed: TypedRunout };

/** A register: readings across a bore or over a spigot, one for each direction, parted by commas. mm, degrees. */
export interface TypedRegister {
  readonly side: 'driving' | 'driven';
  readonly instrument: 'caliper' | 'micrometer';
  readonly bore?: string;
  readonly spigot?: string;
  readonly directions: string;
}

/** Dial readings at equal steps round the rim or the face, parted by commas. mm */
export interface TypedRunout {
  readonly side: 'driving' | 'driven';
  readonly rim?: string;
  readonly face?: string;
  readonly radius?: string;
}

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

interface Waiting {
  readonly ask: Ask;
  readonly tries: number;
  readonly onPart: (answer: Answer) => void;
  readonly resolve: (answer: Answer) => void;
  readonly reject: (fault: Error) => void;
}

/** What a worker sends: a part of an answer, the whole, or why there is none. */
export interface Reply {
  readonly id: number;
  readonly answer?: Answer;
  readonly isPart?: boolean;
  readonly fault?: string;
}

/** One worker, started when it is first asked. */
class Desk {
  readonly #waiting = new Map<number, Waiting>();
  #count = 0;
  #worker: Worker | undefined;

  ask(ask: Ask, onPart: (answer: Answer) => void): Promise<Answer> {
    return new Promise((resolve, reject) => this.#send({ ask, tries: 0, onPart, resolve, reject }));
  }

  #send(open: Waiting): void {
    this.#count += 1;
    this.#waiting.set(this.#count, open);
    this.#worker ??= this.#start();
    this.#worker.postMessage({ id: this.#count, ask: open.ask });
  }

  #start(): Worker {
    const fresh = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    fresh.addEventListener('message', ({ data }: MessageEvent<Reply>) => {
      const asked = this.#waiting.get(data.id);
      if (data.isPart && data.answer) return asked?.onPart(data.answer);
      this.#waiting.delete(data.id);
      if (data.answer) asked?.resolve(data.answer);
      else asked?.reject(new Error(data.fault ?? 'no answer'));
    });
    fresh.addEventListener('error', (event) => {
      event.preventDefault();
      if (fresh === this.#worker) this.#restart(event.message || 'the worker stopped');
    });
    return fresh;
  }

  #end(): [number, Waiting][] {
    this.#worker?.terminate();
    this.#worker = undefined;
    const open = [...this.#waiting];
    this.#waiting.clear();
    return open;
  }

  /** End the worker and ask what is open again, once; what fails twice is given up with its reason. */
  #restart(why: string): void {
    for (const [, open] of this.#end()) {
      if (open.tries > 0) open.reject(new Error(why));
      else this.#send({ ...open, tries: 1 });
    }
  }

  /** Give up what is being worked out; the next question starts a fresh worker. Edits are asked again: nothing typed is lost. */
  cancel(): void {
    for (const [, open] of this.#end()) {
      if (open.ask.kind === 'edit') this.#send(open);
      else open.reject(new Error('Cancelled.'));
    }
  }
}

const [live, maker] = [new Desk(), new Desk()];

/**
 * Ask a worker. Rejects with a sentence when it cannot answer.
 * @param onPart told what is known before the whole answer is
 */
export const ask = (question: Ask, onPart: (answer: Answer) => void = () => undefined): Promise<Answer> =>
  (question.kind === 'make' || question.kind === 'preflight' ? maker : live).ask(question, onPart);

/** Give up the judging and start afresh. */
export const cancel = (): void => live.cancel();

/** Give up the making of files: its worker goes, with whatever it had loaded. */
export const cancelMaking = (): void => maker.cancel();
