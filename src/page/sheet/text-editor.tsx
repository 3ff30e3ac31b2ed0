/** The job as the file it is: what the sheet edits can be read, typed and compared here. */
import { useRef } from 'preact/hooks';
import { change, errors, isTyping, text } from '../job/store.ts';

let focuses = 0;

export function TextEditor() {
  const step = useRef('');
  return (
    <section aria-label="The job as text">
      <label for="job-text">The job file. The sheet edits this text; comments and order stay.</label>
      <textarea
        id="job-text"
        spellcheck={false}
        value={text.value}
        aria-invalid={errors.value.length > 0}
        onFocus={() => {
          focuses += 1;
          step.current = `text ${focuses}`;
        }}
        onInput={(event) => {
          isTyping.value = true;
          change(event.currentTarget.value, step.current);
        }}
        onBlur={() => {
          isTyping.value = false;
        }}
      />
    </section>
  );
}
