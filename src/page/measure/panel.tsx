/** The panels that measure by picture: their frame, and the way to them from the sheet. */
import { batch, type Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { Question, Side } from './parts.tsx';

export type Panel = 'patterns' | 'circle' | 'register' | 'runout';

export function MeasurePanel({
  of,
  title,
  onOpen = () => undefined,
  children,
}: {
  of: Panel;
  title: string;
  onOpen?: () => void;
  children: ComponentChildren;
}) {
  return (
    <details
      class={of === 'circle' ? 'measuring measure' : 'measuring'}
      data-panel={of}
      onToggle={(event) => event.currentTarget.open && onOpen()}
    >
      <summary>
        <h2>{title}</h2>
      </summary>
      <div class="measure-grid">{children}</div>
    </details>
  );
}

/** Open a panel and go to its first field. */
export function showPanel(of: Panel): void {
  const panel = document.querySelector<HTMLDetailsElement>(`details[data-panel="${of}"]`);
  if (!panel) return;
  panel.open = true;
  panel.querySelector<HTMLElement>('select, input')?.focus({ preventScroll: true });
  panel.scrollIntoView({ block: 'start' });
}

/**
 * Turns a panel to a flange. What was typed of one flange stays with it: it must not stand there as if it were read of the other.
 * @param fields what is typed in the panel
 */
export function turner(side: Signal<Side>, fields: readonly Signal<unknown>[], asked: Question): (to: Side) => void {
  const empty = fields.map((field) => field.peek());
  const kept = new Map<Side, readonly unknown[]>();
  return (to) => {
    if (to === side.value) return;
    kept.set(
      side.value,
      fields.map((field) => field.peek()),
    );
    const before = kept.get(to) ?? empty;
    batch(() => {
      side.value = to;
      for (const [i, field] of fields.entries()) field.value = before[i];
      asked.forget();
    });
  };
}
