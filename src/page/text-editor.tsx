/** The job as the file it is: what the sheet edits can be read, typed and compared here. */
import { change, errors, text } from './store.ts';

export function TextEditor() {
  return (
    <section aria-label="The job as text">
      <label for="job-text">The job file. The sheet edits this text; comments and order stay.</label>
      <textarea
        id="job-text"
        spellcheck={false}
        value={text.value}
        aria-invalid={errors.value.length > 0}
        onChange={(event) => change(event.currentTarget.value)}
      />
    </section>
  );
}
