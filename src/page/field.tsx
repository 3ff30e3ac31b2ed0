/** One quantity of the job: its name, what was typed, what stands there when nothing is, and what is wrong with it. */
import { useComputed } from '@preact/signals';
import type { TargetedPointerEvent } from 'preact';
import { useId, useRef, useState } from 'preact/hooks';
import type { EditPath } from '../core.ts';
import type { JsonSchema } from './engine.ts';
import { stepped } from './scrub.ts';
import { errorAt, isTyping, type SetOptions, set, values } from './store.ts';

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

/** Names a word that is being typed, or a drag: it is one step back. */
let steps = 0;
const newStep = (): string => {
  steps += 1;
  return `field ${steps}`;
};

/** A label that is dragged sideways turns its number up and down; a plain click still goes to the field. */
function dragOf(move: (steps: number, isFine: boolean, drag: string) => void, end: () => void, isWord: boolean) {
  if (isWord) return {};
  return {
    class: 'scrub',
    onPointerDown: (event: TargetedPointerEvent<HTMLLabelElement>) => {
      const label = event.currentTarget;
      const from = event.clientX;
      const drag = newStep();
      let done = 0;
      label.setPointerCapture(event.pointerId);
      // Steps count from where the drag began: what came of the last one may still be on its way.
      const follow = ({ clientX, altKey }: PointerEvent) => {
        const steps = Math.trunc((clientX - from) / pixelsPerStep);
        if (steps === done) return;
        done = steps;
        move(steps, altKey, drag);
      };
      label.addEventListener('pointermove', follow);
      const letGo = () => {
        label.removeEventListener('pointermove', follow);
        label.removeEventListener('pointerup', letGo);
        label.removeEventListener('pointercancel', letGo);
        end();
      };
      label.addEventListener('pointerup', letGo);
      label.addEventListener('pointercancel', letGo);
    },
  };
}

export function Field({ path, of, label }: { path: EditPath; of: JsonSchema; label?: string }) {
  const id = useId();
  const key = path.join('.');
  // Asked for one by one: a key that stands as it stood is not drawn again.
  const kept = useComputed(() => values.value[key] ?? '').value;
  /** What is in the field while it is being typed in: the job may not have taken it yet. */
  const [draft, setDraft] = useState<string | null>(null);
  const word = useRef('');
  const last = useRef<Promise<void>>(Promise.resolve());
  const typed = draft ?? kept;
  const fault = useComputed(() => errorAt.value.get(key)).value;
  const words = choices(of);
  const name = label ?? plain(String(path.at(-1)));
  const usual = standing(of);
  const put = (value: string, options: SetOptions = {}) => set(path, value === '' ? null : value, options);
  const move = (count: number, isFine: boolean, step: string) => {
    const next = count === 0 ? typed : stepped(typed || usual, count, isFine);
    if (next === null) return;
    setDraft(next);
    last.current = put(next, { step });
  };
  /** The field shows what the job says again, once that is what was typed. */
  const settle = async (taken: Promise<void>) => {
    isTyping.value = false;
    await taken;
    setDraft(null);
  };
  const follow = (value: string) => {
    setDraft(value);
    isTyping.value = true;
    // An empty field is mostly on its way to another value: the key is taken out when the field is left so.
    if (value.trim() !== '') void put(value, { step: word.current, isQuiet: true });
  };
  const leave = (value: string) => {
    if (draft === null && value === kept) return;
    void settle(put(value, { step: word.current }));
  };
  const common = { id, 'aria-describedby': `${id}-about`, 'aria-invalid': fault !== undefined, name: key };
  return (
    <div class={`field${typed === '' ? ' open' : ''}${fault ? ' wrong' : ''}`}>
      <label for={id} {...dragOf(move, () => void settle(last.current), words.length > 0)}>
        {name}
      </label>
      {words.length > 0 ? (
        <select {...common} value={typed} onChange={(event) => void put(event.currentTarget.value)}>
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
          onFocus={() => {
            word.current = newStep();
          }}
          onInput={(event) => follow(event.currentTarget.value)}
          onChange={(event) => leave(event.currentTarget.value)}
          onBlur={(event) => leave(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
            event.preventDefault();
            move((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1), event.altKey, newStep());
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
