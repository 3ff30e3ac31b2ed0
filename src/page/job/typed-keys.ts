/** Which keys of the job are typed, sections that hold one included. */
import { computed } from '@preact/signals';
import { values } from './store.ts';

/** In one text: it changes only when a key comes or goes. */
const typedKeys = computed(() => {
  const keys = new Set<string>();
  for (const path of Object.keys(values.value)) {
    for (let end = path.length; end > 0; end = path.lastIndexOf('.', end - 1)) keys.add(path.slice(0, end));
  }
  return [...keys].sort().join('\n');
});
const typedSet = computed(() => new Set(typedKeys.value.split('\n')));

/** Whether something stands at a path, or below it. */
export const isTyped = (path: string): boolean => typedSet.value.has(path);
