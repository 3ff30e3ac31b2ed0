/** Fields of the sheet that hold what the job could not take: what is shown there is not in the job. */
import { signal } from '@preact/signals';

/** Their keys. */
export const refusedKeys = signal<ReadonlySet<string>>(new Set());

/** Say of a field whether the job has refused what stands in it. */
export function tellRefused(key: string, isRefused: boolean): void {
  if (refusedKeys.peek().has(key) === isRefused) return;
  const next = new Set(refusedKeys.peek());
  if (isRefused) next.add(key);
  else next.delete(key);
  refusedKeys.value = next;
}
