/** The joint in space: turn, come nearer, pull apart, cut open. Drawn only while it is open. */
import { computed, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { ShownAs } from '../../core.ts';
import { ask } from '../answer/engine.ts';
import { errors, parts, text, view } from '../job/store.ts';
import type { Scene, SceneView } from './scene.ts';

const isOpen = signal(false);
const shownAs = signal<ShownAs>('assembled');
const apart = signal(0);
const isCut = signal(false);
const cutAt = signal(0);
const ghosts = signal(true);
const isWorking = signal(false);
const trouble = signal('');

const look = computed<SceneView>(() => ({
  apart: apart.value,
  cut: isCut.value ? cutAt.value : null,
  ghosts: ghosts.value,
}));

const ways: Readonly<Record<ShownAs, string>> = {
  assembled: 'as it is bolted up',
  finished: 'the finished parts alone',
  printed: 'the mock-ups, as they are printed',
};

/** What was last asked for: answers that come later than a newer question are not shown. */
let asked = 0;
/** What the scene holds: it need not be made again for the same. */
let holds = '';

async function show(place: HTMLCanvasElement, scene: { current: Scene | null }): Promise<void> {
  const as = shownAs.value;
  const wanted = `${as} ${parts.value}`;
  if (holds === wanted) return;
  asked += 1;
  const mine = asked;
  isWorking.value = true;
  try {
    // The drawing package is loaded when it is first looked at.
    const [answer, { openScene }] = await Promise.all([
      ask({ kind: 'bodies', text: text.value, as }),
      import('./scene.ts'),
    ]);
    if (mine !== asked || answer.kind !== 'bodies') return;
    scene.current ??= openScene(place);
    scene.current.show(answer.bodies, look.value, !holds.startsWith(as));
    holds = wanted;
    trouble.value = '';
  } catch (fault) {
    if (mine === asked) trouble.value = `No view in space: ${fault instanceof Error ? fault.message : String(fault)}`;
  } finally {
    if (mine === asked) isWorking.value = false;
  }
}

function Slider({ label, most, of }: { label: string; most: number; of: typeof apart }) {
  return (
    <label>
      {label}{' '}
      <input
        type="range"
        min="0"
        max={most}
        value={of.value}
        onInput={(event) => {
          of.value = event.currentTarget.valueAsNumber;
        }}
      />
    </label>
  );
}

function Tick({ label, of }: { label: string; of: typeof isCut }) {
  return (
    <label>
      <input
        type="checkbox"
        checked={of.value}
        onChange={(event) => {
          of.value = event.currentTarget.checked;
        }}
      />{' '}
      {label}
    </label>
  );
}

export function SpaceView() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const scene = useRef<Scene | null>(null);
  const isReady = isOpen.value && errors.value.length === 0 && view.value !== null;
  const which = parts.value;
  const as = shownAs.value;

  useEffect(() => {
    if (isReady && canvas.current) void show(canvas.current, scene);
  }, [isReady, which, as]);
  useEffect(() => scene.current?.place(look.value), [look.value]);
  useEffect(
    () => () => {
      scene.current?.close();
      holds = '';
    },
    [],
  );

  return (
    <details
      class="space"
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary>
        <h2>In space</h2>
      </summary>
      <canvas
        ref={canvas}
        hidden={view.value === null}
        width="900"
        height="560"
        aria-label="The joint in space: drag to turn, wheel to come nearer"
        aria-busy={isWorking.value}
      />
      <label>
        show{' '}
        <select
          value={as}
          onChange={(event) => {
            shownAs.value = event.currentTarget.value as ShownAs;
          }}
        >
          {Object.entries(ways).map(([key, words]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <Slider label="pull apart" most={80} of={apart} />
      <Tick label="cut open" of={isCut} />
      {isCut.value ? <Slider label="cut turned by, degrees" most={180} of={cutAt} /> : null}
      {as === 'assembled' ? <Tick label="both flanges, as far as they were measured" of={ghosts} /> : null}
      {trouble.value ? <p role="alert">{trouble.value}</p> : null}
    </details>
  );
}
