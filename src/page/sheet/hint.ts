/**
 * Which field says what it takes. Hints stand in the flow and push the sheet down, so none ever lies over a control. Nothing moves while a
 * pointer is on its way: a press and its release, and the second press of a double one, meet the same thing.
 */
import { signal } from '@preact/signals';

/** Id of the field whose hint is shown; empty when none is. */
export const explained = signal('');

/** Longer than between the presses of a double click, ms. Common practice, no source. */
const afterRelease = 350;

let isDown = false;
let waiting: string | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Show the hint of one field, none with an empty id; at once for a keyboard, after the release for a pointer. */
export function explain(id: string): void {
  if (isDown) waiting = id;
  else explained.value = id;
}

function release(): void {
  clearTimeout(timer);
  timer = setTimeout(() => {
    isDown = false;
    if (waiting !== null) explained.value = waiting;
    waiting = null;
  }, afterRelease);
}

addEventListener(
  'pointerdown',
  () => {
    isDown = true;
    clearTimeout(timer);
  },
  true,
);
addEventListener('pointerup', release, true);
addEventListener('pointercancel', release, true);
