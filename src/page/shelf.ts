/** The work left in this browser: there again after the page is loaded anew. */

/** The key it stands under. */
export const shelf = 'flangewright.job';

/** What the other tabs of this page say. */
export const otherTab =
  'A job was changed in another tab of this page. Each tab keeps its own: save both as files before you close one.';

/** What is kept; see Called in job-name.ts. Without a title: kept before titles were. */
export interface Shelved {
  readonly text: string;
  readonly name: string;
  readonly title?: string | null;
}

/** Each tab has a shelf of its own, which a reload brings back; a new tab takes up what was worked on last in any of them. */
const shelves = (): Storage[] => [sessionStorage, localStorage];

/** What was kept last; null where nothing was, or where the browser keeps nothing. */
export function readShelf(): Shelved | null {
  try {
    for (const store of shelves()) {
      const kept: unknown = JSON.parse(store.getItem(shelf) ?? 'null');
      if (typeof kept !== 'object' || kept === null) continue;
      const { text: of, name, title } = kept as { text?: unknown; name?: unknown; title?: unknown };
      if (typeof of !== 'string' || of === '') continue;
      const isKnown = typeof title === 'string' || title === null;
      return { text: of, name: typeof name === 'string' ? name : 'my-joint', ...(isKnown ? { title } : {}) };
    }
    return null;
  } catch {
    return null;
  }
}

/** Keep the work. */
export function writeShelf(work: Shelved): void {
  try {
    const kept = JSON.stringify(work);
    for (const store of shelves()) store.setItem(shelf, kept);
  } catch {
    // A full or forbidden store must not stop the work; saving as a file still does.
  }
}
