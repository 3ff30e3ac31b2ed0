/** Designs side by side: one put aside, one as it stands now, and the ways that the search found. */
import { effect, signal } from '@preact/signals';
import type { LiveView } from '../../core.ts';
import { ask } from '../answer/engine.ts';
import type { Called } from '../job/job-name.ts';
import { called, change, notice, open, text, view } from '../job/store.ts';

interface Row {
  readonly label: string;
  readonly value: string;
}

/** A design put aside: its job, and what is compared of it. */
interface Aside {
  readonly text: string;
  readonly called: Called;
  readonly revision: string;
  readonly rows: readonly Row[];
}

/** Where it is kept: of this tab, through a reload. */
const place = 'flangewright.aside';

function keptAside(): Aside | null {
  try {
    const kept = JSON.parse(sessionStorage.getItem(place) ?? 'null') as Partial<Aside> | null;
    const isWhole = typeof kept?.text === 'string' && typeof kept.called?.name === 'string' && Array.isArray(kept.rows);
    return isWhole ? (kept as Aside) : null;
  } catch {
    return null;
  }
}

const aside = signal<Aside | null>(keptAside());

effect(() => {
  try {
    sessionStorage.setItem(place, JSON.stringify(aside.value));
  } catch {
    // A full or forbidden store must not stop the work.
  }
});

/** The first number that an answer names: what follows explains it. */
const inShort = (word: string, said: string): string => `${word}. ${/^.*?[.](?=\s|$)/.exec(said)?.[0] ?? said}`;

/** What is compared: the verdict, the answers, the key numbers. */
function rowsOf({ report }: LiveView): Row[] {
  const { counts, verdict } = report;
  return [
    {
      label: 'Verdict',
      value: `${verdict}: ${counts.fail} fail, ${counts.caution} caution, ${counts['not assessed']} not assessed`,
    },
    ...report.answers
      .filter(({ verdict: of }) => of !== 'not assessed')
      .map(({ question, word, text: said }) => ({ label: question, value: inShort(word, said) })),
    ...report.keyNumbers.map(({ label, value }) => ({ label, value })),
  ];
}

/** Both designs' rows side by side, in the order of the one that stands now. */
function pairs(before: readonly Row[], now: readonly Row[]) {
  const [then, here] = [before, now].map((rows) => new Map(rows.map(({ label, value }) => [label, value])));
  const labels = [...new Set([...now, ...before].map(({ label }) => label))];
  return labels.map((label) => ({ label, before: then?.get(label) ?? '-', now: here?.get(label) ?? '-' }));
}

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
        <button
          type="button"
          onClick={() =>
            (aside.value = { text: text.value, called: called.value, revision: now.revision, rows: rowsOf(now) })
          }
        >
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
              <th scope="col">put aside ({before.revision})</th>
              <th scope="col">now ({now.revision})</th>
            </tr>
          </thead>
          <tbody>
            {pairs(before.rows, rowsOf(now)).map((row) => (
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
