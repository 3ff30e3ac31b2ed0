/** Which known pattern is it? What was measured of a flange, held against the list; one of it may be started from. */
import { signal } from '@preact/signals';
import type { NearPattern } from '../../core.ts';
import { ask } from '../answer/engine.ts';
import { setTogether } from '../job/edits.ts';
import { notice, values, why } from '../job/store.ts';
import { SideChoice } from './inputs.tsx';
import { MeasurePanel, showPanel } from './panel.tsx';
import type { Side } from './parts.tsx';

const sizes = ['circle', 'holes', 'outside', 'register'] as const;
type Sizes = Readonly<Record<(typeof sizes)[number], string>>;
const none: Sizes = { circle: '', holes: '', outside: '', register: '' };

const side = signal<Side>('driving');
const typed = signal<Sizes>(none);
const near = signal<readonly NearPattern[] | null>(null);
const isOne = signal(true);
const trouble = signal('');

let round = 0;

/** Hold what is typed against the list; only the latest answer counts. */
async function look(): Promise<void> {
  round += 1;
  const mine = round;
  try {
    const units = values.value.units === 'in' ? 'in' : 'mm';
    const answer = await ask({ kind: 'patterns', typed: typed.value, units });
    if (mine !== round) return;
    trouble.value = answer.kind === 'refused' ? answer.why : '';
    if (answer.kind !== 'patterns') return;
    near.value = answer.near;
    isOne.value = answer.isOne;
  } catch (fault) {
    if (mine === round) trouble.value = why(fault);
  }
}

/** What the sheet says of a flange stands in the fields. */
function takeFromSheet(of: Side): void {
  side.value = of;
  const said = (key: string) => values.value[`${of}.${key}`] ?? '';
  typed.value = {
    circle: said('holes.circle'),
    holes: said('holes.count'),
    outside: said('outside'),
    register: said('register.diameter'),
  };
  void look();
}

/** Find the pattern of one flange: the panel opens with what the job has of it. */
export function findPattern(of: Side): void {
  takeFromSheet(of);
  showPanel('patterns');
}

async function start(id: string): Promise<void> {
  const of = side.value;
  if (await setTogether([{ path: [of, 'from'], typed: id }]))
    notice.value = `The ${of} flange starts from ${id} now. What stands on the sheet goes before it: type over what you measure.`;
}

const words: Sizes = { circle: 'bolt circle', holes: 'how many holes', outside: 'outside', register: 'register' };

function Found({ of }: { of: NearPattern }) {
  const { id, title, sizes: own, differences, notes, unsuitable } = of;
  return (
    <li class="pattern">
      <p>
        <strong>{id}</strong> {title}
        {unsuitable === null ? (
          <>
            {' '}
            <button type="button" aria-label={`start from it: ${id}`} onClick={() => void start(id)}>
              start from it
            </button>
          </>
        ) : null}
      </p>
      <p>{own}</p>
      {differences.length > 0 ? <p class="differs">{differences.join('; ')}</p> : null}
      {unsuitable === null ? null : (
        <p>
          <strong>Not for an adapter:</strong> {unsuitable}
        </p>
      )}
      <details>
        <summary>how far it can be trusted</summary>
        {notes.map((note) => (
          <p key={note} class="quiet">
            {note}
          </p>
        ))}
      </details>
    </li>
  );
}

export function KnownPatterns() {
  return (
    <MeasurePanel
      of="patterns"
      title="Which known pattern is it?"
      onOpen={() => {
        // What is typed by then stays.
        if (typed.value === none) takeFromSheet(side.value);
      }}
    >
      <div>
        <p>
          A pattern is a guess for your flange, never a measurement. Bare sizes are in the job's unit; the list is in
          mm.
        </p>
        <SideChoice side={side.value} turn={takeFromSheet} />
        {sizes.map((key) => (
          <label key={key}>
            {words[key]}{' '}
            <input
              type="text"
              value={typed.value[key]}
              placeholder="not measured"
              onInput={(event) => {
                typed.value = { ...typed.value, [key]: event.currentTarget.value };
                void look();
              }}
            />
          </label>
        ))}
      </div>
      <div>
        <p role="status">
          {trouble.value ||
            (isOne.value
              ? 'Nearest first.'
              : 'None of them is your flange: leave the pattern out, and type what you measure. Nearest all the same:')}
        </p>
        <ul class="found-patterns">
          {near.value?.map((one) => (
            <Found key={one.id} of={one} />
          ))}
        </ul>
      </div>
    </MeasurePanel>
  );
}
