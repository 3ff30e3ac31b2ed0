/** Steps back and forward as they are kept in the browser: few enough to write at once, and read as what they are: somebody's text. Pure. */
import type { Called, Step } from './job-name.ts';

/** Steps on both sides of the job as it stands; in each list the nearest is the last. */
export interface Steps {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export const noSteps: Steps = { past: [], future: [] };

/** So many steps are kept, the nearest ones. */
export const mostKept = 40;
/** So much text is kept, characters. */
export const mostText = 400_000;

/** The steps nearest to the job as it stands, back and forward in turn, as far as they find room; none is left out in between. */
export function nearest({ past, future }: Steps): Steps {
  const sides = [
    { from: past, taken: 0, isShut: false },
    { from: future, taken: 0, isShut: false },
  ];
  let [count, room] = [0, mostText];
  while (count < mostKept && sides.some(({ isShut }) => !isShut)) {
    for (const side of sides) {
      if (side.isShut) continue;
      const step = side.from.at(-1 - side.taken);
      if (!step || step.text.length > room || count >= mostKept) {
        side.isShut = true;
        continue;
      }
      side.taken += 1;
      count += 1;
      room -= step.text.length;
    }
  }
  const last = ({ from, taken }: (typeof sides)[number]) => (taken === 0 ? [] : from.slice(-taken));
  return { past: last(sides[0] as (typeof sides)[number]), future: last(sides[1] as (typeof sides)[number]) };
}

/** Steps as text, with a mark of whose they are. */
export function written(steps: Steps, mark: string): string {
  const plain = ({ text, called: { name, title } }: Step) => ({ text, name, title });
  const { past, future } = nearest(steps);
  return JSON.stringify({ mark, past: past.map(plain), future: future.map(plain) });
}

/**
 * Steps that were kept; none where they are another's, or no steps at all. What is broken in a list is left out.
 * @param now what the job is called as it stands: a step that is called the same is of the same job, and holds the same object
 */
export function readSteps(kept: string | null, mark: string, now: Called): Steps {
  const known: Called[] = [now];
  const calledAs = (name: string, title: string | null): Called => {
    const same = known.find((one) => one.name === name && one.title === title);
    if (same) return same;
    const called = { name, title };
    known.push(called);
    return called;
  };
  const listIn = (given: unknown): Step[] =>
    (Array.isArray(given) ? given : []).flatMap((one: unknown) => {
      const { text, name, title } = (typeof one === 'object' && one !== null ? one : {}) as Record<string, unknown>;
      const isStep = typeof text === 'string' && typeof name === 'string';
      return isStep && (typeof title === 'string' || title === null) ? [{ text, called: calledAs(name, title) }] : [];
    });
  try {
    const found: unknown = JSON.parse(kept ?? 'null');
    if (typeof found !== 'object' || found === null) return noSteps;
    const { mark: of, past, future } = found as Record<string, unknown>;
    return of === mark ? nearest({ past: listIn(past), future: listIn(future) }) : noSteps;
  } catch {
    return noSteps;
  }
}
