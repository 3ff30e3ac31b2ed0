/** One quantity of the job: its name, what was typed, what stands there when nothing is, and what is wrong with it. */
import type { TargetedPointerEvent } from 'preact';
import { useId } from 'preact/hooks';
import type { EditPath } from '../core.ts';
import type { JsonSchema } from './engine.ts';
import { stepped } from './scrub.ts';
import { errorAt, set, values } from './store.ts';

/** Words that a key may take; empty where any value may be typed. */
function choices(of: JsonSchema): readonly string[] {
  if (of.enum) return of.enum.map(String);
  const isFlag = of.type === 'boolean' || of.anyOf?.some(({ type }) => type === 'boolean');
  return isFlag ? ['true', 'false'] : [];
}

const plain = (key: string) => key.replaceAll('_', ' ');

/** What a key stands at when nothing is typed. */
const standing = ({ default: usual }: JsonSchema): string =>
  usual === undefined ? '' : typeof usual === 'object' ? '' : String(usual);

/** So many pixels of drag are one step. */
const pixelsPerStep = 6;

/** A label that is dragged sideways turns its number up and down; a plain click still goes to the field. */
function dragOf(move: (steps: number, isFine: boolean) => void, isWord: boolean) {
  if (isWord) return {};
  return {
    class: 'scrub',
    onPointerDown: (event: TargetedPointerEvent<HTMLLabelElement>) => {
      const label = event.currentTarget;
      const from = event.clientX;
      let done = 0;
      label.setPointerCapture(event.pointerId);
      // Steps count from where the drag began: what came of the last one may still be on its way.
      const follow = ({ clientX, altKey }: PointerEvent) => {
        const steps = Math.trunc((clientX - from) / pixelsPerStep);
        if (steps === done) return;
        done = steps;
        move(steps, altKey);
      };
      label.addEventListener('pointermove', follow);
      label.addEventListener('pointerup', () => label.removeEventListener('pointermove', follow), { once: true });
    },
  };
}

export function Field({ path, of, label }: { path: EditPath; of: JsonSchema; label?: string }) {
  const id = useId();
  const key = path.join('.');
  const typed = values.value[key] ?? '';
  const fault = errorAt.value.get(key);
  const words = choices(of);
  const name = label ?? plain(String(path.at(-1)));
  const usual = standing(of);
  const put = (value: string) => void set(path, value === '' ? null : value);
  const move = (steps: number, isFine: boolean) => {
    const next = steps === 0 ? typed : stepped(typed || usual, steps, isFine);
    if (next !== null) put(next);
  };
  const common = { id, 'aria-describedby': `${id}-about`, 'aria-invalid': fault !== undefined, name: key };
  return (
    <div class={`field${typed === '' ? ' open' : ''}${fault ? ' wrong' : ''}`}>
      <label for={id} {...dragOf(move, words.length > 0)}>
        {name}
      </label>
      {words.length > 0 ? (
        <select {...common} value={typed} onChange={(event) => put(event.currentTarget.value)}>
          <option value="">{usual === '' ? 'not said' : usual}</option>
          {words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          value={typed}
          placeholder={usual || 'not said'}
          autocomplete="off"
          spellcheck={false}
          onChange={(event) => put(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
            event.preventDefault();
            move((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1), event.altKey);
          }}
        />
      )}
      <p id={`${id}-about`} class="about">
        {fault ? <strong>{fault} </strong> : null}
        {of.description}
      </p>
    </div>
  );
}
