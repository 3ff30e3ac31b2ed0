/** The new parts in space: turn, come nearer, pull apart, cut open. Drawn only while it is open. */
import { signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { ask } from './engine.ts';
import type { Scene } from './scene.ts';
import { errors, text } from './store.ts';

const isOpen = signal(false);
const apart = signal(0);
const cut = signal(false);
const trouble = signal('');

export function SpaceView() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const scene = useRef<Scene | null>(null);
  const of = text.value;
  const isWrong = errors.value.length > 0;

  useEffect(() => {
    if (!isOpen.value || !canvas.current || isWrong) return;
    let isGone = false;
    const place = canvas.current;
    void (async () => {
      try {
        const answer = await ask({ kind: 'bodies', text: of });
        if (isGone || answer.kind !== 'bodies') return;
        // The drawing package is loaded when it is first looked at.
        const { openScene } = await import('./scene.ts');
        scene.current ??= openScene(place);
        scene.current.show(answer.bodies);
        scene.current.place(apart.value, cut.value);
        trouble.value = '';
      } catch (fault) {
        trouble.value = `No view in space here: ${fault instanceof Error ? fault.message : String(fault)}`;
      }
    })();
    return () => {
      isGone = true;
    };
  }, [of, isOpen.value, isWrong]);

  useEffect(() => scene.current?.place(apart.value, cut.value), [apart.value, cut.value]);

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
        width="900"
        height="560"
        aria-label="The new parts in space: drag to turn, wheel to come nearer"
      />
      <label>
        pull apart{' '}
        <input
          type="range"
          min="0"
          max="60"
          value={apart.value}
          onInput={(event) => {
            apart.value = event.currentTarget.valueAsNumber;
          }}
        />
      </label>
      <label>
        <input
          type="checkbox"
          checked={cut.value}
          onChange={(event) => {
            cut.value = event.currentTarget.checked;
          }}
        />{' '}
        cut open
      </label>
      {trouble.value ? <p role="alert">{trouble.value}</p> : null}
    </details>
  );
}
