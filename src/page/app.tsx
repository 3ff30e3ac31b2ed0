/** The whole page: the job on the left, what it looks like in the middle, what came of it on the right. */
import { signal } from '@preact/signals';
import { BenchBar } from './bench-bar.tsx';
import { Compare } from './compare.tsx';
import { Files } from './files.tsx';
import { JobSheet } from './job-sheet.tsx';
import { MeasureCircle } from './measure-circle.tsx';
import { MeasureRegister } from './measure-register.tsx';
import { MeasureRunout } from './measure-runout.tsx';
import { Pictures } from './pictures.tsx';
import { SheetCheck } from './sheet-check.tsx';
import { SpaceView } from './space-view.tsx';
import { busy, listed, notice } from './store.ts';
import { TextEditor } from './text-editor.tsx';
import { Verdict, VerdictStrip } from './verdict.tsx';

const asText = signal(false);

function Errors() {
  const errors = listed.value;
  if (errors.length === 0) return null;
  return (
    <section class="errors" role="alert" aria-label="Errors in the job">
      <h2>The job has {errors.length === 1 ? 'an error' : `${errors.length} errors`}</h2>
      <ul>
        {errors.map(({ path, message, line }) => (
          <li key={`${path} ${message}`}>
            {path ? <code>{path}</code> : null} {message} <span class="quiet">line {line}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function App() {
  return (
    <>
      <header>
        <h1>flangewright</h1>
        <p>
          Two flanges that were never meant to meet: what you measured on the left, what becomes of it on the right.
        </p>
        <BenchBar />
        <p class="notice" role="status">
          {notice.value || (busy.value ? 'working it out...' : '')}
        </p>
      </header>
      <main aria-busy={busy.value}>
        <VerdictStrip />
        <div class="job">
          <div class="tabs">
            <button type="button" aria-pressed={!asText.value} onClick={() => (asText.value = false)}>
              sheet
            </button>
            <button type="button" aria-pressed={asText.value} onClick={() => (asText.value = true)}>
              text
            </button>
          </div>
          <Errors />
          {asText.value ? <TextEditor /> : <JobSheet />}
          <MeasureCircle />
          <MeasureRegister />
          <MeasureRunout />
        </div>
        <div class="show">
          <Pictures />
          <SpaceView />
        </div>
        <div class="result" id="verdict" tabIndex={-1}>
          <Verdict />
          <Compare />
          <h2>Files</h2>
          <Files />
          <SheetCheck />
        </div>
      </main>
    </>
  );
}
