/** What is typed and chosen beside a measuring picture: whatever changes, what was said of it before no longer holds. */
import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { Question, Side } from './parts.tsx';

/** What is typed turns out to be of this flange: it stays, and what was said of the other no longer holds. */
export const saidOf = (side: Signal<Side>, asked: Question) => (to: Side) => {
  side.value = to;
  asked.forget();
};

/** Which flange. */
export function SideChoice({ side, turn }: { side: Side; turn: (to: Side) => void }) {
  return (
    <label>
      flange{' '}
      <select value={side} onChange={(event) => turn(event.currentTarget.value === 'driven' ? 'driven' : 'driving')}>
        <option value="driving">driving</option>
        <option value="driven">driven</option>
      </select>
    </label>
  );
}

/** A whole number between two bounds. What was said of another number no longer holds. */
export function Count({
  words,
  count,
  least,
  most,
  asked,
  says = '',
}: {
  words: string;
  count: Signal<number>;
  least: number;
  most: number;
  asked: Question;
  /** What the number means, behind it. */
  says?: string;
}) {
  return (
    <label>
      {words}{' '}
      <input
        type="number"
        min={least}
        max={most}
        value={count.value}
        onInput={(event) => {
          count.value = Math.min(most, Math.max(least, Math.round(event.currentTarget.valueAsNumber) || least));
          asked.forget();
        }}
      />
      {says === '' ? null : <span class="quiet"> {says}</span>}
    </label>
  );
}

/** A line of readings or a size, as it is typed. */
export function Typed({
  value,
  example,
  asked,
  look,
  isOne = false,
  children,
}: {
  value: Signal<string>;
  example: string;
  asked: Question;
  /** As which the picture draws it; left out: it is not in the picture. */
  look?: string;
  /** One number, never several. */
  isOne?: boolean;
  children: ComponentChildren;
}) {
  return (
    <label {...(look === undefined ? {} : { class: look })}>
      {children}{' '}
      <input
        type="text"
        {...(isOne ? { inputMode: 'decimal' } : {})}
        value={value.value}
        placeholder={example}
        onInput={(event) => {
          value.value = event.currentTarget.value;
          asked.forget();
        }}
      />
    </label>
  );
}

/** One of a few words, each with what it means. */
export function Choice<Word extends string>({
  words,
  value,
  of,
  asked,
}: {
  words: string;
  value: Signal<Word>;
  of: Readonly<Record<Word, string>>;
  asked: Question;
}) {
  const all = Object.entries<string>(of);
  return (
    <label>
      {words}{' '}
      <select
        value={value.value}
        onChange={(event) => {
          value.value = event.currentTarget.value as Word;
          asked.forget();
        }}
      >
        {all.map(([word, means]) => (
          <option key={word} value={word}>
            {means}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The readings beside the picture, one for each place; `held` is the place that the picture shows, the one last typed at. */
export function Readings({
  count,
  words,
  example,
  readings,
  held,
  asked,
}: {
  count: number;
  words: (place: number) => string;
  example: string;
  readings: Signal<readonly string[]>;
  held: Signal<number>;
  asked: Question;
}) {
  return (
    <div class="readings">
      {Array.from({ length: count }, (_, i) => (
        <label key={words(i)} class="reading">
          <span>{words(i)}</span>
          <input
            type="text"
            inputMode="decimal"
            value={readings.value[i] ?? ''}
            placeholder={example}
            onFocus={() => {
              held.value = i;
            }}
            onInput={(event) => {
              // What was typed at places that are not asked for now is kept for when they are again.
              const typed = Array.from(
                { length: Math.max(count, readings.value.length) },
                (_, k) => readings.value[k] ?? '',
              );
              typed[i] = event.currentTarget.value;
              readings.value = typed;
              asked.forget();
            }}
          />
        </label>
      ))}
    </div>
  );
}
