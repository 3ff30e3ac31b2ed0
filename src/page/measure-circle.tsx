/** Measuring by picture: which chord of a bolt circle, where the caliper goes, and what the readings come to. */
import { signal } from '@preact/signals';
import { ask } from './engine.ts';
import { notice, set } from './store.ts';

const side = signal<'driving' | 'driven'>('driving');
const holes = signal(5);
const apart = signal(2);
const outside = signal('');
const inside = signal('');
const said = signal<{
  readonly title: string;
  readonly lines: readonly string[];
  readonly circle: number | null;
  readonly doubt: number | null;
} | null>(null);
const trouble = signal('');

const middle = { x: 110, y: 110 };
const [ring, hole] = [82, 11];

const at = (i: number, count: number) => {
  const angle = Math.PI / 2 + (2 * Math.PI * i) / count;
  return { x: middle.x + ring * Math.cos(angle), y: middle.y - ring * Math.sin(angle) };
};

/** A caliper laid over two holes: jaws at the far edges, or at the near ones. */
function Jaws({ from, to, over }: { from: { x: number; y: number }; to: { x: number; y: number }; over: boolean }) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const reach = over ? hole : -hole;
  const ends = [
    { x: from.x - ux * reach, y: from.y - uy * reach },
    { x: to.x + ux * reach, y: to.y + uy * reach },
  ] as const;
  return (
    <g class={over ? 'jaws over' : 'jaws between'}>
      <line x1={ends[0].x} y1={ends[0].y} x2={ends[1].x} y2={ends[1].y} />
      {ends.map((end) => (
        <line
          key={`${end.x} ${end.y}`}
          x1={end.x - uy * 9}
          y1={end.y + ux * 9}
          x2={end.x + uy * 9}
          y2={end.y - ux * 9}
        />
      ))}
    </g>
  );
}

async function work(): Promise<void> {
  trouble.value = '';
  try {
    const answer = await ask({
      kind: 'circle',
      typed: {
        side: side.value,
        holes: String(holes.value),
        span: String(apart.value),
        ...(outside.value ? { over: outside.value } : {}),
        ...(inside.value ? { between: inside.value } : {}),
      },
    });
    if (answer.kind === 'measured') said.value = answer;
    else if (answer.kind === 'refused') trouble.value = answer.why;
  } catch (fault) {
    trouble.value = fault instanceof Error ? fault.message : String(fault);
  }
}

/** Put the circle into the job, its doubt kept. */
async function put(): Promise<void> {
  const { circle, doubt } = said.value ?? {};
  if (circle === null || circle === undefined) return;
  await set([side.value, 'holes', 'count'], String(holes.value));
  await set([side.value, 'holes', 'circle'], `{ value: ${circle.toFixed(3)}, doubt: ${(doubt ?? 0.05).toFixed(3)} }`);
  notice.value = `The ${side.value} flange's bolt circle is ${circle.toFixed(2)} mm now.`;
}

export function MeasureCircle() {
  const most = Math.floor(holes.value / 2);
  const span = Math.min(apart.value, most);
  const [from, to] = [at(0, holes.value), at(span, holes.value)];
  // An error of the caliper grows by 1 / sin(half the angle) on the circle. Geometry.
  const grows = 1 / Math.sin((Math.PI * span) / holes.value);
  const best = 1 / Math.sin((Math.PI * most) / holes.value);
  return (
    <details class="measure">
      <summary>
        <h2>Measure a bolt circle by picture</h2>
      </summary>
      <div class="measure-grid">
        <svg
          viewBox="0 0 220 220"
          role="img"
          aria-label={`Bolt circle of ${holes.value} holes; the caliper over hole 1 and hole ${span + 1}`}
        >
          <circle class="ring" cx={middle.x} cy={middle.y} r={ring} />
          {Array.from({ length: holes.value }, (_, i) => {
            const { x, y } = at(i, holes.value);
            const number = i + 1;
            return (
              <g key={number}>
                <circle class={i === 0 || i === span ? 'hole used' : 'hole'} cx={x} cy={y} r={hole} />
                <text x={x} y={y + 3.5}>
                  {number}
                </text>
              </g>
            );
          })}
          <Jaws from={from} to={to} over={true} />
          <Jaws from={from} to={to} over={false} />
        </svg>
        <div>
          <label>
            flange{' '}
            <select
              value={side.value}
              onChange={(event) => (side.value = event.currentTarget.value === 'driven' ? 'driven' : 'driving')}
            >
              <option value="driving">driving</option>
              <option value="driven">driven</option>
            </select>
          </label>
          <label>
            how many holes{' '}
            <input
              type="number"
              min="2"
              max="36"
              value={holes.value}
              onInput={(event) => {
                holes.value = Math.min(36, Math.max(2, Math.round(event.currentTarget.valueAsNumber) || 2));
              }}
            />
          </label>
          <label>
            second hole, counted from the first{' '}
            <input
              type="number"
              min="1"
              max={most}
              value={span}
              onInput={(event) => {
                apart.value = Math.min(most, Math.max(1, Math.round(event.currentTarget.valueAsNumber) || 1));
              }}
            />
          </label>
          <p>
            An error of the caliper grows {grows.toFixed(2)} times on the circle
            {grows > best + 0.005
              ? `; over holes 1 and ${most + 1} only ${best.toFixed(2)} times.`
              : ': no chord does better.'}
          </p>
          <label>
            over the outside of both (far edges), mm{' '}
            <input
              type="text"
              value={outside.value}
              placeholder="103.10, 103.15"
              onInput={(event) => (outside.value = event.currentTarget.value)}
            />
          </label>
          <label>
            between them (near edges), mm{' '}
            <input
              type="text"
              value={inside.value}
              placeholder="87.05"
              onInput={(event) => (inside.value = event.currentTarget.value)}
            />
          </label>
          <p>
            <button type="button" onClick={() => void work()}>
              work it out
            </button>{' '}
            {said.value?.circle ? (
              <button type="button" onClick={() => void put()}>
                put it into the job
              </button>
            ) : null}
          </p>
          <div role="status">
            {trouble.value ? <p>{trouble.value}</p> : null}
            {said.value ? (
              <>
                <p>
                  <strong>{said.value.title}</strong>
                </p>
                {said.value.lines.map((line) => (
                  <p key={line} class="quiet">
                    {line}
                  </p>
                ))}
              </>
            ) : null}
          </div>
        </div>
      </div>
    </details>
  );
}
