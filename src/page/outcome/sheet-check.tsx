/** Pre-flight of a drawing of one's own: chosen or dropped here, looked at as a cutting service would, its faults marked in a picture. */
import { signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Finding, ShownPreflight, Verdict } from '../../core.ts';
import { ask } from '../answer/engine.ts';
import { text } from '../job/store.ts';

/** Larger files are no outline of a part: a wheel of 3600 teeth in short lines is 4 MB. */
const mostBytes = 32 * 1024 * 1024;

const thickness = signal('');
const material = signal('');
const units = signal('');
const file = signal<File | null>(null);
const shown = signal<ShownPreflight | null>(null);
const trouble = signal('');
const isBusy = signal(false);
const isOver = signal(false);

let round = 0;

/** Look at the file that lies here; only the latest answer counts. */
async function look(): Promise<void> {
  const of = file.value;
  if (of === null) return;
  round += 1;
  const mine = round;
  trouble.value = '';
  shown.value = null;
  if (of.size > mostBytes) {
    trouble.value = `${of.name} has ${Math.round(of.size / 1024 / 1024)} MB; at most ${mostBytes / 1024 / 1024} MB are read here. A flat part is a few kilobytes: send the outline alone.`;
    return;
  }
  isBusy.value = true;
  try {
    const bytes = new Uint8Array(await of.arrayBuffer());
    const typed = { thickness: thickness.value, material: material.value, units: units.value };
    const answer = await ask({ kind: 'preflight', of: { file: of.name, bytes, text: text.value, ...typed } });
    if (mine !== round) return;
    if (answer.kind === 'preflight') shown.value = answer.shown;
    else if (answer.kind === 'refused') trouble.value = answer.why;
  } catch (fault) {
    if (mine === round)
      trouble.value = `${of.name} could not be looked at: ${fault instanceof Error ? fault.message : fault}`;
  } finally {
    if (mine === round) isBusy.value = false;
  }
}

function take(list: FileList | null | undefined): void {
  const [first] = list ?? [];
  if (first === undefined) return;
  file.value = first;
  void look();
}

const headlines: Readonly<Record<Verdict, string>> = {
  fail: 'Do not send this file.',
  caution: 'It can be cut; settle these points with the service first.',
  'not assessed': 'Nothing could be judged.',
  pass: 'Ready to send.',
};

const number = (value: number): string => String(Number(value.toFixed(3)));

function sizeOf({ value, limit, unit }: Finding): string {
  if (value === null || unit === '') return '';
  return `: ${number(value)} ${unit}${limit === null ? '' : `, limit ${number(limit)} ${unit}`}`;
}

function Row({ mark, finding }: ShownPreflight['findings'][number]) {
  const { verdict, title, why, remedy } = finding;
  return (
    <li class={verdict.replace(' ', '-')}>
      {mark > 0 ? <b class="mark">{mark}</b> : null} <strong>{verdict}</strong> {title}
      {sizeOf(finding)}. <span class="quiet">{why}</span> {remedy ? <span>Do: {remedy}</span> : null}
    </li>
  );
}

function Outcome({ of }: { of: ShownPreflight }) {
  const open = of.findings.filter(({ finding }) => finding.verdict !== 'pass');
  const passes = of.findings.filter(({ finding }) => finding.verdict === 'pass');
  return (
    <div class="sheet-outcome">
      <p>
        <strong>
          {of.file}: {of.verdict}.
        </strong>{' '}
        {of.isReadable ? headlines[of.verdict] : 'It could not be read.'}
      </p>
      {/* The SVG is our own writer's: every text in it is escaped there. */}
      {of.svg ? <div class="drawing" dangerouslySetInnerHTML={{ __html: of.svg }} /> : null}
      <ul>
        {open.map((row) => (
          <Row key={row.finding.code} {...row} />
        ))}
      </ul>
      {passes.length > 0 ? (
        <details>
          <summary>{passes.length} pass</summary>
          <ul>
            {passes.map((row) => (
              <Row key={row.finding.code} {...row} />
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}

export function SheetCheck() {
  const picker = useRef<HTMLInputElement>(null);
  const field = (label: string, of: typeof thickness, hint: string) => (
    <label>
      {label}{' '}
      <input
        type="text"
        value={of.value}
        placeholder={hint}
        onChange={(event) => {
          of.value = event.currentTarget.value;
          void look();
        }}
      />
    </label>
  );
  return (
    <details class="sheet-check">
      <summary>
        <h2>Check a drawing for the cutting service</h2>
      </summary>
      <section
        aria-label="Drop a DXF here"
        class={isOver.value ? 'drop over' : 'drop'}
        onDragOver={(event) => {
          event.preventDefault();
          isOver.value = true;
        }}
        onDragLeave={() => (isOver.value = false)}
        onDrop={(event) => {
          event.preventDefault();
          isOver.value = false;
          take(event.dataTransfer?.files);
        }}
      >
        <input
          ref={picker}
          type="file"
          accept=".dxf"
          hidden
          onChange={(event) => {
            take(event.currentTarget.files);
            event.currentTarget.value = '';
          }}
        />
        <button type="button" onClick={() => picker.current?.click()}>
          choose a DXF
        </button>{' '}
        or drop one here. It stays on this machine.
      </section>
      {field('thickness, mm', thickness, 'of the job')}
      {field('material', material, 'of the job')}
      <label>
        unit of the drawing{' '}
        <select
          value={units.value}
          onChange={(event) => {
            units.value = event.currentTarget.value;
            void look();
          }}
        >
          <option value="">as the file says</option>
          <option value="mm">mm</option>
          <option value="in">in</option>
        </select>
      </label>
      <div role="status">
        {isBusy.value ? <p>looking at it...</p> : null}
        {trouble.value ? <p>{trouble.value}</p> : null}
        {shown.value ? <Outcome of={shown.value} /> : null}
      </div>
    </details>
  );
}
