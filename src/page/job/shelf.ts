/** The work left in this browser: there again after the page is loaded anew, with the steps that led to it. */
import type { Called } from './job-name.ts';
import { noSteps, readSteps, type Steps, written } from './kept-steps.ts';

/** The key it stands under. */
export const shelf = 'flangewright.job';
/** Its steps stand by themselves: they change less often than the job, and are larger. */
const stepShelf = 'flangewright.steps';

/** What the other tabs of this page say. */
export const otherTab =
  'A job was changed in another tab of this page. Each tab keeps its own: save both as files before you close one.';

/** What is kept; see Called in job-name.ts. Without a title: kept before titles were. */
export interface Shelved {
  readonly text: string;
  readonly name: string;
  readonly title?: string | null;
}

/** What was found. */
export interface Found extends Shelved {
  /** The steps that belong to it; those of another tab's job do not. */
  readonly steps: (now: Called) => Steps;
}

/** Of this page, since it was loaded. */
const mark = crypto.getRandomValues(new Uint32Array(2)).join('-');

/** Each tab has a shelf of its own, which a reload brings back; a new tab takes up what was worked on last in any of them. */
const shelves = (): Storage[] => [sessionStorage, localStorage];

/** What was kept last; null where nothing was, or where the browser keeps nothing. */
export function readShelf(): Found | null {
  try {
    for (const store of shelves()) {
      const kept: unknown = JSON.parse(store.getItem(shelf) ?? 'null');
      if (typeof kept !== 'object' || kept === null) continue;
      const { text: of, name, title, mark: whose } = kept as Record<string, unknown>;
      if (typeof of !== 'string' || of === '') continue;
      const isKnown = typeof title === 'string' || title === null;
      const steps = store.getItem(stepShelf);
      return {
        text: of,
        name: typeof name === 'string' ? name : 'my-joint',
        ...(isKnown ? { title } : {}),
        steps: (now) => (typeof whose === 'string' ? readSteps(steps, whose, now) : noSteps),
      };
    }
    return null;
  } catch {
    return null;
  }
}

function put(key: string, kept: string): void {
  try {
    for (const store of shelves()) store.setItem(key, kept);
  } catch {
    // A full or forbidden store must not stop the work; saving as a file still does.
  }
}

/** Keep the work. */
export const writeShelf = ({ text, name, title }: Shelved): void =>
  put(shelf, JSON.stringify({ text, name, title, mark }));

/** Keep the way it came. */
export const writeSteps = (steps: Steps): void => put(stepShelf, written(steps, mark));
