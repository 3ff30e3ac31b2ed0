/** What is done with the job as a whole: open, save, take back, start from an example. */
import { useRef } from 'preact/hooks';
import { busy, future, jobs, name, notice, open, past, redo, stop, text, undo } from './store.ts';

/** Files larger than this are no job. */
const mostBytes = 1_000_000;

function save(): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text.value], { type: 'application/yaml' }));
  link.download = `${name.value}.job.yaml`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

export function BenchBar() {
  const picker = useRef<HTMLInputElement>(null);
  const take = async (file: File | undefined) => {
    if (!file) return;
    if (file.size > mostBytes) {
      notice.value = `${file.name} is too large for a job: ${Math.round(file.size / 1e6)} MB. Your job is as it was.`;
      return;
    }
    open(await file.text(), file.name.replace(/(\.job)?\.ya?ml$/i, ''));
  };
  return (
    <div class="bar" role="toolbar" aria-label="The job as a whole">
      <input
        ref={picker}
        type="file"
        accept=".yaml,.yml"
        hidden
        onChange={(event) => {
          void take(event.currentTarget.files?.[0]);
          event.currentTarget.value = '';
        }}
      />
      <button type="button" onClick={() => picker.current?.click()}>
        open a job
      </button>
      <button type="button" onClick={save}>
        save the job
      </button>
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
            const of = jobs.value[chosen];
            if (of !== undefined) open(of, chosen);
          }}
        >
          <option value="">an example</option>
          {Object.keys(jobs.value).map((key) => (
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
