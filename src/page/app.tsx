/** The whole page: the job on the left, what it looks like in the middle, what came of it on the right. */
import { BenchBar } from './bench-bar.tsx';
import { listed } from './job/faults.ts';
import { busy, isExample, notice } from './job/store.ts';
import { MeasureCircle } from './measure/circle.tsx';
import { KnownPatterns } from './measure/patterns.tsx';
import { MeasureRegister } from './measure/register.tsx';
import { MeasureRunout } from './measure/runout.tsx';
import { Compare } from './outcome/compare.tsx';
import { Files } from './outcome/files.tsx';
import { SheetCheck } from './outcome/sheet-check.tsx';
import { Verdict, VerdictStrip } from './outcome/verdict.tsx';
import { Pictures } from './pictures/pictures.tsx';
import { SpaceView } from './pictures/space-view.tsx';
import { JobSheet } from './sheet/job-sheet.tsx';
import { isOnSheet, KeyLink } from './sheet/key-text.tsx';
import { asText } from './sheet/sheet-state.ts';
import { TextEditor } from './sheet/text-editor.tsx';

/** What is missing, without how it is written in a file: its field is a click away. */
const withoutFile = (message: string): string =>
  message.replace(/,? (and|Or) write .*$/s, '.').replace(/([.?!])\.$/, '$1');

/** What is wrong, and what is only not typed yet: that is no alarm. */
function Errors() {
  const { wrong, open } = listed.value;
  return (
    <>
      {wrong.length === 0 ? null : (
        <section class="errors" role="alert" aria-label="Errors in the job">
          <h2>The job has {wrong.length === 1 ? 'an error' : `${wrong.length} errors`}</h2>
          <ul>
            {wrong.map(({ path, message, line }) => (
              <li key={`${path} ${message}`}>
                {isOnSheet(path) ? <KeyLink of={path} /> : path ? <code>{path}</code> : null} {message}{' '}
                <span class="quiet">line {line}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {open.length === 0 ? null : (
        <section class="errors to-fill" aria-label="Still to fill in">
          <h2>Still to fill in</h2>
          <ul>
            {open.map(({ path, message }) => (
              <li key={`${path} ${message}`}>
                {isOnSheet(path) ? <KeyLink of={path} inWords={true} /> : <code>{path}</code>}: {withoutFile(message)}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
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
        <div class={`notice${notice.value ? ' told' : ''}`}>
          <p role="status">{notice.value || (busy.value ? 'working it out...' : '')}</p>
          {notice.value ? (
            <button type="button" class="more" onClick={() => (notice.value = '')}>
              seen
            </button>
          ) : null}
        </div>
      </header>
      <main aria-busy={busy.value}>
        <VerdictStrip />
        <div class="job">
          {isExample.value ? (
            <p class="quiet">An invented example, to look round in. "New job" begins your own.</p>
          ) : null}
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
          <KnownPatterns />
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
