/** What came of it: the verdict, the answers in short, what to do next, and every finding, each tied to its feature. */
import type { Finding } from '../../core.ts';
import { checkedName } from '../../model/tried.ts';
import { isOnlyOpen } from '../job/faults.ts';
import { titleOf } from '../job/job-name.ts';
import { isNone, isStale, lit, pending, text, view } from '../job/store.ts';
import { KeyText } from '../sheet/key-text.tsx';
import { ScrewTable } from './screw-table.tsx';

const marks = { fail: '✕', caution: '!', 'not assessed': '?', pass: '✓' } as const;
const words = { fail: 'Fail', caution: 'Caution', 'not assessed': 'Not assessed', pass: 'Pass' } as const;
const css = (verdict: Finding['verdict']) => verdict.replace(' ', '-');

const number = (value: number) => String(Number(value.toPrecision(5)));

/** The change that a sentence on a trial begins with: "Tried (wheel.fit: H8): ...". What the remedy lets be set is not set twice. */
const changeIn = (words: string): string => /^Tried (\(.*?\)):/.exec(words)?.[1] ?? words;

function FindingLine({ finding, tried = [] }: { finding: Finding; tried?: readonly string[] }) {
  const { verdict, title, feature, value, limit, sense, unit, why, remedy, source, code } = finding;
  const isLit = lit.value === feature;
  return (
    <details
      class={`finding ${css(verdict)}${isLit ? ' lit' : ''}`}
      data-about={feature}
      onPointerEnter={() => {
        lit.value = feature;
      }}
      onPointerLeave={() => {
        lit.value = null;
      }}
      onFocusIn={() => {
        lit.value = feature;
      }}
    >
      <summary>
        <span class="mark" role="img" aria-label={words[verdict]}>
          {marks[verdict]}
        </span>{' '}
        <span class="what">{title}</span>{' '}
        <span class="number">
          {value === null ? '' : `${number(value)}${unit ? ` ${unit}` : ''}`}
          {limit === null ? '' : `${sense ? `, ${sense}` : ' /'} ${number(limit)}`}
        </span>
      </summary>
      <p>
        <KeyText text={why} />
      </p>
      {remedy ? (
        <p>
          <strong>Do:</strong> <KeyText text={remedy} sets={true} />
        </p>
      ) : null}
      {tried.map((words) => (
        <p key={words}>
          <KeyText text={words} sets={!remedy.includes(changeIn(words))} />
        </p>
      ))}
      <p class="quiet">
        {source} ({code})
      </p>
    </details>
  );
}

/** The verdict in a line, for a screen too narrow to show it beside the job. */
export function VerdictStrip() {
  const shown = view.value;
  if (!shown) return null;
  const { verdict, headline } = shown.report;
  return (
    <section class={`strip ${css(verdict)}`} aria-label="Verdict in short">
      <p>
        <strong>
          <span aria-hidden="true">{marks[verdict]} </span>
          {words[verdict]}
          {pending.value.length > 0 ? ' so far' : ''}.
        </strong>{' '}
        {isStale.value ? 'This is of the job before its errors. ' : ''}
        {headline} <a href="#verdict">to the verdict</a>
      </p>
    </section>
  );
}

export function Verdict() {
  const shown = view.value;
  if (isNone.value)
    return <p class="quiet">No job: its text is empty. Begin a new job, open one, or type into the sheet.</p>;
  if (!shown && isOnlyOpen.value)
    return <p class="quiet">No verdict yet: fill in what is still missing; it is listed above the sheet.</p>;
  if (!shown) return <p class="quiet">No verdict yet: the job has errors, or the sums are running.</p>;
  const { report, revision } = shown;
  const open = report.findings.filter(({ verdict }) => verdict !== 'pass');
  const passes = report.findings.filter(({ verdict }) => verdict === 'pass');
  return (
    <section
      aria-label="Verdict"
      data-title={titleOf(text.value)}
      data-open={pending.value.length}
      class={isStale.value ? 'stale' : ''}
    >
      <div class={`banner ${css(report.verdict)}`} role="status">
        <span class="mark" aria-hidden="true">
          {marks[report.verdict]}
        </span>
        <div>
          <h2>
            {words[report.verdict]}
            {pending.value.length > 0 ? ' so far' : ''}
          </h2>
          <p>
            <KeyText text={report.headline} />
          </p>
          <p class="quiet">
            revision {revision}
            {pending.value.length > 0 ? `; still working: ${pending.value.join(', ')}` : ''}
          </p>
        </div>
      </div>
      <table class="answers">
        <caption>In short</caption>
        <tbody>
          {report.answers.map(({ question, word, text: said, verdict }) => (
            <tr key={question} class={css(verdict)}>
              <th scope="row">{question}</th>
              <td>
                <strong>{word}.</strong> <KeyText text={said} sets={true} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>What asks for something</h3>
      {report.bestChange ? (
        <p>
          <KeyText text={report.bestChange} sets={true} />
        </p>
      ) : null}
      {open.length === 0 ? (
        <p>Nothing does.</p>
      ) : (
        open.map((finding) => (
          <FindingLine
            key={`${finding.code} ${finding.title}`}
            finding={finding}
            tried={report.tried[checkedName(finding)] ?? []}
          />
        ))
      )}
      <details class="passes">
        <summary>
          <h3>{passes.length} checks pass</h3>
        </summary>
        {passes.map((finding) => (
          <FindingLine key={`${finding.code} ${finding.title}`} finding={finding} />
        ))}
      </details>
      <details open>
        <summary>
          <h3>Screws, and how hard they are tightened</h3>
        </summary>
        <ScrewTable screws={report.screws} />
      </details>
      {report.controller ? (
        <details open>
          <summary>
            <h3>What to tell the controller</h3>
          </summary>
          <table class="answers">
            <tbody>
              {report.controller.lines.map(({ label, value, note }) => (
                <tr key={label}>
                  <th scope="row">{label}</th>
                  <td>
                    <strong>{value}</strong>
                    {note ? `. ${note}` : ''}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ) : null}
      {report.assumptions.length > 0 ? (
        <details class="assumed">
          <summary>
            <h3>{report.assumptions.length} values chosen or assumed, not measured</h3>
          </summary>
          <ul>
            {report.assumptions.map(({ path, value, from, memory }) => (
              <li key={path}>
                <KeyText text={path} /> <strong>{value}</strong>: {from}
                {memory ? '. From memory: measure it.' : ''}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      <details>
        <summary>
          <h3>Key numbers</h3>
        </summary>
        <table>
          <tbody>
            {report.keyNumbers.map(({ label, value, note }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{value}</td>
                <td class="quiet">{note}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      <section class="safety" aria-label="Safety">
        <h3>Safety</h3>
        <ul>
          {report.safety.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
    </section>
  );
}
