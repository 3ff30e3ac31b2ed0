/** Measuring run-out by picture: a dial read round the clock, and which way the rim or the face is off. */
import { signal } from '@preact/signals';
import { setTogether } from '../job/edits.ts';
import { notice } from '../job/store.ts';
import { Choice, Count, Readings, SideChoice, saidOf, Typed } from './inputs.tsx';
import { MeasurePanel, showPanel, turner } from './panel.tsx';
import { asTyped, Outcome, question, round, type Side, type Told, timesLarger } from './parts.tsx';

const side = signal<Side>('driving');
const where = signal<'rim' | 'face'>('rim');
const places = signal(8);
const readings = signal<readonly string[]>([]);
const radius = signal('');
const held = signal(0);
const asked = question();
const turnTo = turner(side, [where, places, readings, radius, held], asked);

/** Measure the run-out of one flange. */
export function measureRunout(of: Side): void {
  turnTo(of);
  showPanel('runout');
}

const middle = { x: 130, y: 130 };
const rim = 78;
const mostPlaces = 12;

const angleOf = (i: number): number => (360 * i) / places.value;
const typed = () => Array.from({ length: places.value }, (_, i) => (readings.value[i] ?? '').trim());

async function work(): Promise<void> {
  const given = typed();
  const open = given.filter((text) => text === '').length;
  if (open > 0) {
    asked.forget();
    asked.trouble.value = `${open} of the ${places.value} readings ${open === 1 ? 'is' : 'are'} still open: turn the flange to each place in turn.`;
    return;
  }
  await asked.work({
    what: 'runout',
    typed: {
      side: side.value,
      [where.value]: given.join(', '),
      ...(where.value === 'face' && radius.value ? { radius: radius.value } : {}),
    },
  });
}

/** Put the readings into the job as they were read: the same sums there find size, direction and doubt again. */
async function put(): Promise<void> {
  const list = `[${typed().map(asTyped).join(', ')}]`;
  const face = `{ readings: ${list}, radius: ${asTyped(radius.value.trim())} }`;
  const read = where.value === 'rim' ? list : face;
  if (!(await setTogether([{ path: [side.value, 'runout', where.value], typed: read }]))) return;
  notice.value = `The ${side.value} flange's ${where.value} is read at ${places.value} places now.`;
}

interface Off {
  /** What the dial read, mm, place by place. */
  readonly readings: readonly number[];
  /** Off which way, mm, and how far that is in doubt. */
  readonly size: number;
  readonly angle: number;
  readonly doubt: number;
}

function off(told: Told | null): Off | null {
  const { rim: onRim, face } = (told?.result ?? {}) as {
    rim?: { readings: number[]; eccentricity: { size: number; angle: number; doubt: number } };
    face?: { readings: number[]; radius: number; tilt: { amplitude: number; high: number; doubt: number } };
  };
  if (onRim) return { readings: onRim.readings, ...onRim.eccentricity };
  if (!face) return null;
  const { readings, radius, tilt } = face;
  const doubt = radius * Math.tan((tilt.doubt * Math.PI) / 180);
  return { readings, size: tilt.amplitude, angle: tilt.high, doubt };
}

/** The readings as a curve round the rim, the round that fits them, and an arrow to the high side in its disc of doubt. */
function Found() {
  const found = off(asked.said.value);
  if (!found) return null;
  const read = found.readings;
  const mean = read.reduce((sum, height) => sum + height, 0) / read.length;
  const times = timesLarger(Math.max(...read.map((height) => Math.abs(height - mean)), found.size, 0.001), 1, 24);
  const dots = read.map((height, i) => ({
    ...round(middle, rim + times * (height - mean), angleOf(i)),
    angle: angleOf(i),
  }));
  const centre = round(middle, times * found.size, found.angle);
  return (
    <g class="band">
      <circle class="middle-line" cx={centre.x} cy={centre.y} r={rim} />
      {dots.map(({ x, y, angle }) => (
        <circle key={angle} class="dot" cx={x} cy={y} r="3" />
      ))}
      <circle class="doubt" cx={centre.x} cy={centre.y} r={Math.max(1, times * found.doubt)} />
      <line class="arrow" x1={middle.x} y1={middle.y} x2={centre.x} y2={centre.y} />
      <text x={middle.x} y={272}>
        {found.size.toFixed(3)} ± {found.doubt.toFixed(3)} mm at {Math.round(found.angle) % 360}°
      </text>
      <text class="note" x={middle.x} y={287}>
        run-out drawn far larger than it is
      </text>
    </g>
  );
}

/** A dial with its plunger on the rim, or on the face. */
function Dial({ angle }: { angle: number }) {
  const touch = where.value === 'rim' ? rim : rim - 10;
  const [tip, body] = [round(middle, touch, angle), round(middle, rim + 34, angle)];
  return (
    <g class="dial">
      <line x1={tip.x} y1={tip.y} x2={body.x} y2={body.y} />
      <circle cx={body.x} cy={body.y} r="13" />
      <line x1={body.x} y1={body.y} x2={body.x + 6} y2={body.y - 7} />
      <circle class="dot" cx={tip.x} cy={tip.y} r="2.5" />
    </g>
  );
}

const spots = { rim: 'rim: how far off centre', face: 'face: how it leans' } as const;

export function MeasureRunout() {
  const at = Math.min(held.value, places.value - 1);
  return (
    <MeasurePanel of="runout" title="Measure run-out by picture">
      <svg
        viewBox="0 0 260 294"
        role="img"
        aria-label={`Flange seen from its own face; the dial on its ${where.value} at ${Number(angleOf(at).toFixed(1))} degrees, ${at + 1} of ${places.value}`}
      >
        <circle class="metal edge" cx={middle.x} cy={middle.y} r={rim} />
        <circle class="hole" cx={middle.x} cy={middle.y} r={26} />
        <line class="ring" x1={middle.x} y1={middle.y} x2={middle.x + rim} y2={middle.y} />
        <Found />
        {Array.from({ length: places.value }, (_, i) => {
          const [a, b] = [round(middle, rim - 5, angleOf(i)), round(middle, rim, angleOf(i))];
          const name = round(middle, rim - 25, angleOf(i));
          const number = i + 1;
          return (
            <g key={number}>
              <line class="tick" x1={a.x} y1={a.y} x2={b.x} y2={b.y} />
              <text class={i === at ? 'strong' : ''} x={name.x} y={name.y + 3.5}>
                {number}
              </text>
            </g>
          );
        })}
        <Dial angle={angleOf(at)} />
      </svg>
      <div>
        <SideChoice side={side.value} turn={saidOf(side, asked)} />
        <Choice words="the dial stands on the" value={where} of={spots} asked={asked} />
        <Count words="at how many places round the clock" count={places} least={3} most={mostPlaces} asked={asked} />
        <p>
          Look at the flange's own face. Place 1 lies on its x axis, the others follow counter-clockwise. Set the dial
          to 0 at place 1, turn by hand, and lock out whatever could start it. Plus is towards the dial.
        </p>
        {where.value === 'face' ? (
          <Typed value={radius} example="50" asked={asked} isOne={true}>
            distance of the dial from the axis, mm
          </Typed>
        ) : null}
        <Readings
          count={places.value}
          words={(i) => `${i + 1}, at ${Number(angleOf(i).toFixed(1))}°`}
          example="0.01"
          readings={readings}
          held={held}
          asked={asked}
        />
        <Outcome asked={asked} go={work} put={put} />
      </div>
    </MeasurePanel>
  );
}
