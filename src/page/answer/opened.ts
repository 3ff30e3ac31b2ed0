/**
 * What the page knows before anything is asked: the sheet's fields, the examples, and the answer to the example that is shown first. It is
 * worked out when the page is built (`vite.config.ts`), by the same program that answers in the worker: neither the sheet nor the first
 * picture waits for it to be loaded.
 */
import { emptyJob, jobJsonSchema, type PatternList, products, reportKind } from '../../core.ts';
import type { JsonSchema } from '../../model/json-schema.ts';
import type { Answer, Kind } from './engine.ts';
import { Stepwise } from './stepwise.ts';

export interface Opened {
  readonly schema: JsonSchema;
  /** Shipped jobs by their names. */
  readonly jobs: Readonly<Record<string, string>>;
  /** The one that a new visitor sees. */
  readonly first: string;
  /** A job without sizes. */
  readonly empty: string;
  readonly kinds: readonly Kind[];
}

/**
 * @param jobs shipped jobs by their names
 * @param first the name of the one that a new visitor sees
 */
export const openedWith = (jobs: Readonly<Record<string, string>>, first: string): Opened => ({
  schema: jobJsonSchema() as JsonSchema,
  jobs,
  first,
  empty: emptyJob,
  kinds: [
    ...products.map(({ kind, about }) => ({ kind, about })),
    { kind: reportKind, about: 'report: a page to print, text, data' },
  ],
});

/** The whole answer to a job as the worker gives it at the end. Rejects with the reason where there is none. */
export function wholeAnswer(text: string, patterns: PatternList): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const steps = new Stepwise(
      () => patterns,
      () => undefined,
    );
    steps.begin(text, ({ answer, isPart, fault }) => {
      if (fault !== undefined) reject(new Error(fault));
      else if (answer && !isPart) {
        steps.end();
        resolve(answer);
      }
    });
  });
}
