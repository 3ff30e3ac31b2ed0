/** What is the same stays the same object: whoever shows it has nothing to do. */
import type { Signal } from '@preact/signals';

/** Take a value up only where it differs from the one that is kept. Plain data. */
export function keep<T>(kept: Signal<T>, next: T): void {
  if (JSON.stringify(kept.peek()) !== JSON.stringify(next)) kept.value = next;
}
