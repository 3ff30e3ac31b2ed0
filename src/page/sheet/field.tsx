/** One quantity of the job: its name, what was typed, what stands there when nothing is, and what is wrong with it. */
import { useComputed } from '@preact/signals';
import type {
  TargetedClipboardEvent,
  TargetedEvent,
  TargetedFocusEvent,
  TargetedInputEvent,
  TargetedKeyboardEvent,
  TargetedPointerEvent,
} from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { EditPath } from '../../core.ts';
import type { JsonSchema } from '../../model/json-schema.ts';
import { type SetOptions, set } from '../job/edits.ts';
import { errorAt, wantedAt } from '../job/faults.ts';
import { tellRefused } from '../job/refused.ts';
import { called, isTyping, values } from '../job/store.ts';
import { benchLabel, benchOption } from './bench-words.ts';
import { explain, explained } from './hint.ts';
import { stepped } from './scrub.ts';
import { choices, growsLong } from './sheet-plan.ts';

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

type TextField = HTMLInputElement | HTMLTextAreaElement;

/** Readings copied from a column of a sheet: a field has one line, and a browser would run them together. */
function pasteColumn(event: TargetedClipboardEvent<TextField>): void {
  const copied = event.clipboardData?.getData('text/plain') ?? '';
  if (!/[\r\n\t]/.test(copied)) return;
  const given = copied
    .split(/[\r\n\t]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  event.preventDefault();
  const field = event.currentTarget;
  field.setRangeText(given.join(', '), field.selectionStart ?? 0, field.selectionEnd ?? 0, 'end');
  field.dispatchEvent(new Event('input', { bubbles: true }));
}

/** Whether a value is the section itself, in braces. */
const isBraced = (typed: string) => typed.startsWith('{');

export interface FieldProps {
  readonly path: EditPath;
  readonly of: JsonSchema;
  readonly label?: string;
  /** Where the section below holds the keys otherwise (what is in braces is shown there): what may stand here in words. */
  readonly wordOnly?: WordForm;
}

export interface WordForm {
  /** The only words that may stand here; none: any text may. */
  readonly words: readonly string[];
  /** What the field shows while nothing stands in it. */
  readonly none: string;
}

export function Field({ path, of, label, wordOnly }: FieldProps) {
  const id = useId();
  const key = path.join('.');
  // Asked for one by one: a key that stands as it stood is not drawn again.
  const kept = useComputed(() => {
    const typed = values.value[key] ?? '';
    return wordOnly !== undefined && isBraced(typed) ? '' : typed;
  }).value;
  /** What is in the field while it is being typed in: the job may not have taken it yet. */
  const [draft, setDraft] = useState<string | null>(null);
  const word = useRef('');
  const last = useRef<Promise<string | null>>(Promise.resolve(null));
  /** Why the job does not have what stands here; the text stays in the field until it can be had, or another file comes. */
  const [refused, setRefused] = useState<string | null>(null);
  const file = called.value;
  useEffect(() => {
    setRefused(null);
    setDraft(null);
  }, [file]);
  useEffect(() => {
    tellRefused(key, refused !== null);
    return () => tellRefused(key, false);
  }, [key, refused]);
  const typed = draft ?? kept;
  const wrong = useComputed(() => errorAt.value.get(key)).value;
  const fault = refused ?? wrong;
  const isExplained = useComputed(() => explained.value === id).value;
  const wanted = useComputed(() => wantedAt.value.get(key)).value;
  const legal = wordOnly?.words ?? choices(of);
  // A word that is none of them stands there all the same until another is chosen.
  const words = legal.length > 0 && typed !== '' && !legal.includes(typed) ? [...legal, typed] : legal;
  const name = label ?? benchLabel(path);
  const Line = growsLong(of) ? 'textarea' : 'input';
  const usual = wordOnly?.none ?? standing(of);
  const put = (value: string, options: SetOptions = {}) => set(path, value === '' ? null : value, options);
  const move = (count: number, isFine: boolean, step: string) => {
    const next = count === 0 ? typed : stepped(typed || standing(of), count, isFine);
    if (next === null) return;
    setDraft(next);
    last.current = put(next, { step });
  };
  /** The field shows what the job says again, once that is what was typed. */
  const settle = async (taken: Promise<string | null>) => {
    isTyping.value = false;
    const why = await taken;
    setRefused(why);
    if (why === null) setDraft(null);
  };
  const follow = (value: string) => {
    setDraft(value);
    setRefused(null);
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
    <div
      class={`field${typed === '' ? ' open' : ''}${fault ? ' wrong' : wanted ? ' wanted' : ''}${isExplained ? ' explained' : ''}`}
      onFocusIn={() => explain(id)}
      onFocusOut={() => explain('')}
    >
      <label for={id} {...dragOf(move, () => void settle(last.current), words.length > 0)}>
        {name}
      </label>
      {words.length > 0 ? (
        <select {...common} value={typed} onChange={(event) => void settle(put(event.currentTarget.value))}>
          <option value="">{usual === '' ? 'not said' : benchOption(path, usual)}</option>
          {words.map((word) => (
            <option key={word} value={word}>
              {benchOption(path, word)}
            </option>
          ))}
        </select>
      ) : (
        <Line
          {...common}
          {...(Line === 'textarea' ? { rows: 1 } : { type: 'text' })}
          value={typed}
          placeholder={usual || 'not said'}
          autocomplete="off"
          spellcheck={false}
          onFocus={() => {
            word.current = newStep();
          }}
          onInput={(event: TargetedInputEvent<TextField>) => follow(event.currentTarget.value)}
          onPaste={pasteColumn}
          onChange={(event: TargetedEvent<TextField>) => leave(event.currentTarget.value)}
          onBlur={(event: TargetedFocusEvent<TextField>) => leave(event.currentTarget.value)}
          onKeyDown={(event: TargetedKeyboardEvent<TextField>) => {
            if (event.key === 'Enter' && Line === 'textarea') {
              // A value has one line, however long its field has grown.
              event.preventDefault();
              leave(event.currentTarget.value);
            }
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
            event.preventDefault();
            move((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1), event.altKey, newStep());
          }}
        />
      )}
      <p id={`${id}-about`} class="about">
        {fault || wanted ? <strong>{fault ?? wanted} </strong> : null}
        {of.description}
      </p>
    </div>
  );
}
