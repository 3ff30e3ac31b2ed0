/** Designs side by side: one put aside, one as it stands now, and the ways that the search found. */
import { signal } from '@preact/signals';
import type { LiveView } from '../../core.ts';
import { ask } from '../answer/engine.ts';
import type { Called } from '../job/job-name.ts';
import { called, change, notice, open, text, view } from '../job/store.ts';

interface Aside {
  readonly text: string;
  readonly called: Called;
  readonly view: LiveView;
}

const aside = signal<Aside | null>(null);

function rowsOf(before: LiveView, now: LiveView) {
  const then = new Map(before.report.keyNumbers.map(({ label, value }) => [label, value]));
  const labels = [...new Set([...then.keys(), ...now.report.keyNumbers.map(({ label }) => label)])];
  return labels.map((label) => ({
    label,
    before: then.get(label) ?? '-',
    now: now.report.keyNumbers.find((line) => line.label === label)?.value ?? '-',
  }));
}

const tally = ({ report: { counts, verdict } }: LiveView) =>
  `${verdict}: ${counts.fail} fail, ${counts.caution} caution, ${counts['not assessed']} not assessed`;

async function take(keys: string): Promise<void> {
  const answer = await ask({ kind: 'take', text: text.value, keys });
  if (answer.kind === 'edited') change(answer.text);
  else if (answer.kind === 'refused') notice.value = answer.why;
}

export function Compare() {
  const now = view.value;
  if (!now) return null;
  const before = aside.value;
  const ways = now.report.alternatives;
  return (
    <section aria-label="Designs side by side">
      <h2>Side by side</h2>
      <p>
        <button type="button" onClick={() => (aside.value = { text: text.value, called: called.value, view: now })}>
          put this design aside
        </button>{' '}
        {before ? (
          <button type="button" onClick={() => open(before.text, before.called)}>
            go back to it
          </button>
        ) : null}
      </p>
      {before ? (
        <table>
          <thead>
            <tr>
              <th scope="col">Size</th>
              <th scope="col">put aside ({before.view.revision})</th>
              <th scope="col">now ({now.revision})</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Verdict</th>
              <td>{tally(before.view)}</td>
              <td>{tally(now)}</td>
            </tr>
            {rowsOf(before.view, now).map((row) => (
              <tr key={row.label} class={row.before === row.now ? '' : 'differs'}>
                <th scope="row">{row.label}</th>
                <td>{row.before}</td>
                <td>
                  {row.before === row.now ? row.now : <strong>{row.now}</strong>}
                  {row.before === row.now ? null : <span class="quiet"> differs</span>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      {ways ? (
        <>
          <h3>Other ways that were tried</h3>
          <p>{ways.chosen}</p>
          {ways.impossible.map((why) => (
            <p key={why}>{why}</p>
          ))}
          <ul class="ways">
            {ways.others.map(({ what, trades, keys }) => (
              <li key={keys}>
                {what}: {trades}.{' '}
                <button type="button" onClick={() => void take(keys)}>
                  take this way
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}
