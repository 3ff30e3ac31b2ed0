/** Long work in steps: whoever runs it may do something else between two of them, or give up. */

/** Work that pauses now and then and ends with a result. */
export type Steps<T> = Generator<void, T, void>;

/** All the steps at once. */
export function allSteps<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
