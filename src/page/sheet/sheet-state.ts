/** What of the sheet is open, and the way to a field wherever it is hidden. */
import opened from 'made:opened';
import { batch, signal } from '@preact/signals';
import { isTyped } from '../job/typed-keys.ts';
import { fieldPath, firstKeys } from './sheet-plan.ts';

/** Whether the job is shown as text. */
export const asText = signal(false);
/** Sections whose lines are all shown. */
export const all = signal<ReadonlySet<string>>(new Set());
/** Sections that were opened or shut by hand; the others are open when the job has them. */
export const byHand = signal<ReadonlyMap<string, boolean>>(new Map());

const controls = 'input, select, textarea';

/** The control of a field, or the first one of a group; that of what holds it where it is not shown itself. */
function controlOf(path: readonly string[]): HTMLElement | null {
  for (let length = path.length; length > 0; length--) {
    const key = CSS.escape(path.slice(0, length).join('.'));
    const found =
      document.querySelector<HTMLElement>(`.sheet [name="${key}"]`) ??
      document.querySelector<HTMLElement>(`.sheet [data-group="${key}"] :is(${controls})`);
    if (found) return found;
  }
  return null;
}

/** More than enough frames for the sheet to be drawn. */
const patience = 30;

function focusSoon(path: readonly string[], frames = 0): void {
  const found = controlOf(path);
  // Hidden still: the section is drawn with the next frame.
  if ((!found || found.getClientRects().length === 0) && frames < patience) {
    requestAnimationFrame(() => focusSoon(path, frames + 1));
    return;
  }
  found?.focus({ preventScroll: true });
  found?.scrollIntoView({ block: 'center' });
}

/** Show the field of a key on the sheet, whatever hides it, and go there. */
export function reveal(key: string): void {
  // A place in a list stands in the field of the whole list.
  const path = fieldPath(opened.schema, key.replace(/\[.*$/s, '').split('.'));
  batch(() => {
    asText.value = false;
    byHand.value = new Map(byHand.value).set(path[0] ?? '', true);
    const next = new Set(all.value);
    for (let length = 1; length < path.length; length++) {
      const section = path.slice(0, length);
      const first = firstKeys(section);
      const isShown = first.length === 0 || first.includes(path[length] ?? '');
      if (!isShown && !isTyped(path.slice(0, length + 1).join('.'))) next.add(section.join('.'));
    }
    all.value = next;
  });
  // Drawn anew by then; a field that is there already must not be taken before its section is open.
  requestAnimationFrame(() => focusSoon(path));
}
