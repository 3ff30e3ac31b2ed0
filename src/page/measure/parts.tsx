/** What the measuring pictures have in common: asking the worker, the words that come back, and shapes. */
import { type Signal, signal } from '@preact/signals';
import type { JSX } from 'preact';
import { ask, type Measuring } from '../answer/engine.ts';
import { values } from '../job/store.ts';

export type Side = 'driving' | 'driven';

export interface Told {
  readonly title: string;
  readonly lines: readonly string[];
  readonly result: Readonly<Record<string, unknown>>;
}

/** One question that is asked of the measuring room, and what it last said. */
export interface Question {
  readonly said: Signal<Told | null>;
  readonly trouble: Signal<string>;
  work(of: Measuring): Promise<void>;
  /** The readings are others now: what was said no longer holds. */
  forget(): void;
}

export function question(): Question {
  const said = signal<Told | null>(null);
  const trouble = signal('');
  return {
    said,
    trouble,
    async work(of) {
      trouble.value = '';
      said.value = null;
      try {
        const answer = await ask({ kind: 'measure', of });
        if (answer.kind === 'measured') said.value = answer;
        else if (answer.kind === 'refused') trouble.value = answer.why;
      } catch (fault) {
        trouble.value = fault instanceof Error ? fault.message : String(fault);
      }
    },
    forget() {
      said.value = null;
      trouble.value = '';
    },
  };
}

/** A size with its doubt among the numbers of an answer; null where there is none. */
export function measuredIn(told: Told | null, key: string): { readonly value: number; readonly doubt: number } | null {
  const found = told?.result[key];
  if (typeof found !== 'object' || found === null) return null;
  const { value, doubt } = found as { value?: unknown; doubt?: unknown };
  return typeof value === 'number' && typeof doubt === 'number' ? { value, doubt } : null;
}

/** Behind a number that goes into the job: its unit, where a bare number of this job would be read in inches. */
const unit = (): string => (values.value.units === 'in' ? ' mm' : '');

/** A reading as the job is given it: a bare number is in mm, anything else keeps the unit that it was typed with. */
export const asTyped = (text: string): string => (Number.isFinite(Number(text)) ? `${text}${unit()}` : text);

/** A size with its doubt as the job is given it. */
export const sized = ({ value, doubt }: { readonly value: number; readonly doubt: number }): string =>
  `{ value: ${value.toFixed(3)}${unit()}, doubt: ${doubt.toFixed(3)}${unit()} }`;

/** How many times a thing of so many mm is drawn wider so that it takes about so many units of the picture: 1, 2 or 5 by tens. */
export function timesLarger(mm: number, perMm: number, wanted: number): number {
  if (!(mm > 0)) return 1;
  const rough = wanted / (mm * perMm);
  const decade = 10 ** Math.floor(Math.log10(Math.max(1, rough)));
  const step = [5, 2, 1].find((one) => one * decade <= rough) ?? 1;
  return Math.max(1, step * decade);
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A point round a middle; degrees counter-clockwise, y down as on the screen. */
export const round = (middle: Spot, r: number, degrees: number): Spot => ({
  x: middle.x + r * Math.cos((degrees * Math.PI) / 180),
  y: middle.y - r * Math.sin((degrees * Math.PI) / 180),
});

/** Room about a picture for the beam of a caliper that is laid any way round it. */
export const pictureRoom = '-28 -20 316 316';

/** What came of it, and the button that puts it into the job. */
export function Outcome({
  asked,
  go,
  put,
}: {
  asked: Question;
  go: () => Promise<void>;
  put: (() => Promise<void>) | null;
}) {
  const { said, trouble } = asked;
  return (
    <>
      <p>
        <button type="button" onClick={() => void go()}>
          work it out
        </button>{' '}
        {said.value && put ? (
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
    </>
  );
}

/**
 * A caliper laid along a line: its beam to one side, its two jaws with their measuring faces at `from` and `to`. Jaws that open lie
 * between the faces, jaws that close lie outside of them.
 */
export function Caliper({
  from,
  to,
  offset,
  opens,
  look,
}: {
  from: Spot;
  to: Spot;
  /** Distance of the beam from the line, to its left as seen from `from`; negative: to its right. */
  offset: number;
  opens: boolean;
  look: string;
}): JSX.Element {
  const span = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / span, (to.y - from.y) / span];
  const [nx, ny] = [uy, -ux];
  const sign = Math.sign(offset);
  const thick = 5;
  const place = (along: number, across: number): string =>
    `${(from.x + ux * along + nx * across).toFixed(2)},${(from.y + uy * along + ny * across).toFixed(2)}`;
  const past = -6 * sign;
  const jaw = (face: number, back: number): string =>
    [place(face, past), place(face, offset), place(back, offset), place(back, past + 4 * sign)].join(' ');
  const inner = opens ? thick : -thick;
  const beam = [
    place(-16, offset),
    place(span + 34, offset),
    place(span + 34, offset + 7 * sign),
    place(-16, offset + 7 * sign),
  ].join(' ');
  return (
    <g class={`caliper ${look}`}>
      <polygon points={beam} />
      <polygon points={jaw(0, inner)} />
      <polygon points={jaw(span, span - inner)} />
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} class="measured-line" />
    </g>
  );
}
