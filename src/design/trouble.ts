/** What cannot be designed from this job, said at the key that would cure it. */

/** A demand of the job that contradicts its facts. The reader adds file, line and column from the path. */
export interface Trouble {
  /** Key path in the job, e.g. "adapter.driven.fastening". */
  readonly path: string;
  /** One sentence: what is wrong, what is allowed, the likely slip. */
  readonly message: string;
}

/** The value, or the troubles that stand in its way. */
export type Designed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly troubles: readonly Trouble[] };

export function designed<T>(value: T): Designed<T> {
  return { ok: true, value };
}

export function trouble(path: string, message: string): { readonly ok: false; readonly troubles: readonly Trouble[] } {
  return { ok: false, troubles: [{ path, message }] };
}
