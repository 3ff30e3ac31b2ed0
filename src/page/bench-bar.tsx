/** What is done with the job as a whole: open, save, take back, start from an example. */
import opened from 'made:opened';
import { useRef } from 'preact/hooks';
import { type Called, titleOf, unnamed } from './job/job-name.ts';
import { busy, future, name, notice, open, past, redo, rename, stop, text, undo } from './job/store.ts';

/** Files larger than this are no job. */
const mostBytes = 1_000_000;

function save(): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text.value], { type: 'application/yaml' }));
  link.download = `${name.value}.job.yaml`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** Another job in place of this one, and how to come back. */
function take(of: string, as: Called, words: string): void {
  const isOther = of !== text.value;
  open(of, as);
  if (!isOther) return;
  notice.value = `${words} "undo" brings the job before back.`;
  // Another job is read from its top.
  document.querySelector('.job')?.scrollTo(0, 0);
}

const begin = () =>
  take(
    opened.empty,
    unnamed,
    'A new job: give it a title, fill in both flanges as you measured them, then what it must carry. What is still missing is listed above the sheet.',
  );

export function BenchBar() {
  const picker = useRef<HTMLInputElement>(null);
  const read = async (file: File | undefined) => {
    if (!file) return;
    if (file.size > mostBytes) {
      notice.value = `${file.name} is too large for a job: ${Math.round(file.size / 1e6)} MB. Your job is as it was.`;
      return;
    }
    take(
      await file.text(),
      { name: file.name.replace(/(\.job)?\.ya?ml$/i, ''), title: null },
      `This is ${file.name} now.`,
    );
  };
  return (
    <div class="bar" role="toolbar" aria-label="The job as a whole">
      <input
        ref={picker}
        type="file"
        accept=".yaml,.yml"
        hidden
        onChange={(event) => {
          void read(event.currentTarget.files?.[0]);
          event.currentTarget.value = '';
        }}
      />
      <button type="button" onClick={begin}>
        new job
      </button>
      <button type="button" onClick={() => picker.current?.click()}>
        open a job
      </button>
      <button type="button" onClick={save}>
        save the job
      </button>
      <label>
        called{' '}
        <input
          type="text"
          class="file-name"
          value={name.value}
          autocomplete="off"
          spellcheck={false}
          title="Every file of this job is called so. Emptied: after the job's title."
          onChange={(event) => {
            rename(event.currentTarget.value);
            event.currentTarget.value = name.value;
          }}
        />
      </label>
      <button type="button" disabled={past.value.length === 0} onClick={undo}>
        undo
      </button>
      <button type="button" disabled={future.value.length === 0} onClick={redo}>
        redo
      </button>
      <label>
        start from{' '}
        <select
          value=""
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            const of = opened.jobs[chosen];
            if (of !== undefined) take(of, { name: chosen, title: titleOf(of) }, `The example ${chosen}.`);
            event.currentTarget.value = '';
          }}
        >
          <option value="">an example</option>
          {Object.keys(opened.jobs).map((key) => (
            <option key={key} value={key}>
              {key}
            </option>
          ))}
        </select>
      </label>
      <button type="button" onClick={() => print()}>
        print
      </button>
      {busy.value ? (
        <button type="button" onClick={stop}>
          stop
        </button>
      ) : null}
    </div>
  );
}
