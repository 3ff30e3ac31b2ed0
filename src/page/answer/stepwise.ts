/**
 * Judging in steps, in the worker: the pictures of the parts and the quick findings at once, then what takes longer. Between two steps
 * the worker looks whether something newer was asked; then the old work is given up.
 */
import {
  type Choice,
  type Finding,
  flangeSketches,
  formatErrors,
  holdsNothing,
  type Joint,
  judgeInSteps,
  kindsFor,
  type LivePicture,
  livePictures,
  liveReport,
  type PatternList,
  remediesInSteps,
  typedValues,
} from '../../core.ts';
import type { Answer, Reply } from './engine.ts';

type Send = (given: Omit<Reply, 'id'>) => void;

export interface Shown {
  readonly text: string;
  readonly joint: Joint;
  readonly findings: readonly Finding[];
}

/** So long the steps may run before the worker looks for something newer, ms. */
const stretch = 5;
/** Rest before the slow checks, and before the search: somebody who still types or drags goes first, ms. */
const rests = { checks: 20, search: 120 } as const;

/** Something to show, a pause, or a rest. */
type Step = Answer | null | keyof typeof rests;

const studies = 'pictures of the studies';
const remedies = 'what the remedies come to';

/** The pictures of one joint, drawn as far as they are wanted. */
class Drawn {
  readonly pictures: LivePicture[] = [];
  readonly #more: Iterator<LivePicture | null, void, void>;
  isDone = false;

  constructor(joint: Joint) {
    this.#more = livePictures(joint);
  }

  /** Draws up to the next pause. */
  next(): void {
    for (;;) {
      const { done, value } = this.#more.next();
      if (done) this.isDone = true;
      else if (value) this.pictures.push(value);
      if (done || value === null) return;
    }
  }
}

export class Stepwise {
  readonly #patterns: () => PatternList;
  readonly #show: (shown: Shown) => void;
  readonly #turn = new MessageChannel();
  #running: { readonly steps: Iterator<Step, Answer, void>; readonly send: Send } | undefined;
  /** The way that the last search took: what comes next is shown that way first. */
  #choice: Choice | undefined;
  #parts = 0;

  /** @param show told of every joint that is shown */
  constructor(patterns: () => PatternList, show: (shown: Shown) => void) {
    this.#patterns = patterns;
    this.#show = show;
    this.#turn.port1.onmessage = () => this.#pump();
  }

  /** Begin a text; what was being worked out before is given up. The first answer is sent before this returns. */
  begin(text: string, send: Send): void {
    this.#running?.send({ answer: { kind: 'superseded' } });
    this.#running = { steps: this.#judged(text), send };
    this.#pump();
  }

  /** Give up for good: a channel that is listened to keeps a program from ending. */
  end(): void {
    this.#running = undefined;
    this.#turn.port1.close();
  }

  #pump(): void {
    const running = this.#running;
    if (!running) return;
    const { steps, send } = running;
    const from = performance.now();
    do {
      try {
        const { done, value } = steps.next();
        if (done) {
          this.#running = undefined;
          send({ answer: value });
          return;
        }
        if (typeof value === 'string') {
          // A newer text may have begun meanwhile: then this one is not taken up again.
          setTimeout(() => running === this.#running && this.#pump(), rests[value]);
          return;
        }
        if (value) send({ answer: value, isPart: true });
      } catch (fault) {
        this.#running = undefined;
        send({ fault: fault instanceof Error ? fault.message : String(fault) });
        return;
      }
    } while (performance.now() - from < stretch);
    this.#turn.port2.postMessage(null);
  }

  *#judged(text: string): Generator<Step, Answer, void> {
    if (holdsNothing(text)) return { kind: 'nothing' };
    const values = typedValues(text);
    const steps = judgeInSteps(text, 'job', this.#patterns(), this.#choice);
    let drawn: Drawn | undefined;
    const answer = (
      joint: Joint,
      findings: readonly Finding[],
      { pictures }: Drawn,
      open: readonly string[],
    ): Extract<Answer, { kind: 'judged' }> => {
      this.#show({ text, joint, findings });
      return { kind: 'judged', view: { ...liveReport(joint, findings), pictures }, values, open, parts: this.#parts };
    };
    for (;;) {
      const { done, value } = steps.next();
      if (done) {
        if (!value.ok) {
          const { errors } = value;
          const sketches = flangeSketches(text, this.#patterns().flanges);
          return { kind: 'errors', errors, text: formatErrors(errors, text), values, sketches };
        }
        const { joint, findings, choice, isAsShown } = value;
        this.#choice = choice;
        if (!drawn || !isAsShown) {
          drawn = new Drawn(joint);
          this.#parts += 1;
        }
        for (; !drawn.isDone; drawn.next()) yield null;
        if (findings.some(({ verdict }) => verdict === 'fail' || verdict === 'caution'))
          yield answer(joint, findings, drawn, [remedies]);
        const trials = remediesInSteps(text, 'job', this.#patterns(), value);
        let tried = trials.next();
        for (; !tried.done; tried = trials.next()) yield null;
        return { ...answer(tried.value, findings, drawn, []), kinds: kindsFor(joint) };
      }
      if (value === null) {
        yield null;
        continue;
      }
      const { joint, findings, open } = value;
      const isFirst = !drawn;
      if (!drawn) {
        this.#parts += 1;
        drawn = new Drawn(joint);
        drawn.next();
      } else if (open.length === 1) {
        // Only the search is left: what it finds is mostly drawn the same.
        for (; !drawn.isDone; drawn.next()) yield null;
      }
      yield answer(joint, findings, drawn, drawn.isDone ? open : [...open, studies]);
      yield isFirst ? 'checks' : 'search';
    }
  }
}
