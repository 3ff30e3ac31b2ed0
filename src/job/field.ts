/** One block of the job schema: a reader of one typed value, and the words that describe it to an editor. */
import { z } from 'zod';

/** What one block found wrong; `path` is relative to its own key. */
export interface Fault {
  readonly path?: readonly (string | number)[];
  readonly message: string;
  readonly allowed?: string;
  readonly hint?: string;
  /** The key is wrong, not its value. */
  readonly atKey?: boolean;
}

export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export function accept<T>(value: T): Answer<T> {
  return { ok: true, value };
}

export function refuse(message: string, more: Omit<Fault, 'message'> = {}): Answer<never> {
  return { ok: false, faults: [{ ...more, message }] };
}

/** A schema made of a reader and the JSON Schema words that describe it to an editor. */
export function field<T>(
  read: (typed: unknown) => Answer<T>,
  meta: Readonly<Record<string, unknown>>,
): z.ZodType<T, unknown> {
  return z
    .unknown()
    .transform((typed, context): T => {
      const answer =
        typed === undefined ? refuse('This key is missing.') : typed === null ? refuse(emptyKey) : read(typed);
      if (answer.ok) return answer.value;
      for (const { path = [], message, allowed, hint, atKey } of answer.faults) {
        context.addIssue({ code: 'custom', path: [...path], message, params: { allowed, hint, atKey } });
      }
      return z.NEVER;
    })
    .meta(meta);
}

export const emptyKey = 'This key has no value; write one, or delete the line.';

export function isMap(typed: unknown): typed is Readonly<Record<string, unknown>> {
  return typeof typed === 'object' && typed !== null && !Array.isArray(typed);
}
