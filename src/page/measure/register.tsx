/** Measuring a register by picture: across it in several directions, and what size, doubt and wear that gives. */
import { signal } from '@preact/signals';
import { setTogether } from '../job/edits.ts';
import { notice, values } from '../job/store.ts';
import { Choice, Count, Readings, SideChoice, saidOf } from './inputs.tsx';
import { MeasurePanel, showPanel, turner } from './panel.tsx';
import {
  Caliper,
  measuredIn,
  Outcome,
  pictureRoom,
  question,
  round,
  type Side,
  sized,
  type Told,
  timesLarger,
} from './parts.tsx';

const side = signal<Side>('driving');
const kind = signal<'bore' | 'spigot'>('bore');
const instrument = signal<'caliper' | 'micrometer'>('caliper');
const directions = signal(4);
const readings = signal<readonly string[]>([]);
const held = signal(0);
const asked = question();
const turnTo = turner(side, [kind, directions, readings, held], asked);

/** Measure the register of one flange: the panel opens for a bore or a spigot, as its job says. */
export function measureRegister(of: Side): void {
  turnTo(of);
  const gender = values.value[`${of}.register.gender`];
  const is = gender === 'male' ? 'spigot' : gender === 'female' ? 'bore' : kind.value;
  if (is !== kind.value) {
    kind.value = is;
    asked.forget();
  }
  showPanel('register');
}

const middle = { x: 130, y: 130 };
const radius = 74;

const angleOf = (i: number): number => (180 * i) / directions.value;

/** Readings that were typed, with their directions. */
const typed = () =>
  Array.from({ length: directions.value }, (_, i) => ({
    text: (readings.value[i] ?? '').trim(),
    angle: angleOf(i),
  })).filter(({ text }) => text !== '');

function work(): Promise<void> {
  const given = typed();
  return asked.work({
    what: 'register',
    typed: {
      side: side.value,
      instrument: instrument.value,
      [kind.value]: given.map(({ text }) => text).join(', '),
      directions: given.map(({ angle }) => `${angle} deg`).join(', '),
    },
  });
}

/** Put the size into the job, its doubt kept. */
async function put(): Promise<void> {
  const size = measuredIn(asked.said.value, 'size');
  if (!size) return;
  const isTaken = await setTogether([
    { path: [side.value, 'register', 'gender'], typed: kind.value === 'bore' ? 'female' : 'male' },
    { path: [side.value, 'register', 'diameter'], typed: sized(size) },
  ]);
  if (!isTaken) return;
  notice.value = `The ${side.value} flange's register is a ${kind.value} of ${size.value.toFixed(3)} mm now, in doubt by ${size.doubt.toFixed(3)} mm. Measure its depth too.`;
}

interface Oval {
  readonly size: number;
  readonly angle: number;
}

function ovalOf(told: Told | null): Oval | null {
  const found = told?.result.ovality as { size?: unknown; angle?: unknown } | null | undefined;
  return found && typeof found.size === 'number' && typeof found.angle === 'number'
    ? { size: found.size, angle: found.angle }
    : null;
}

/** The register as it was found: its band of doubt, and how oval it is, both drawn many times larger. */
function Found() {
  const size = measuredIn(asked.said.value, 'size');
  if (!size) return null;
  const oval = ovalOf(asked.said.value);
  const perMm = (2 * radius) / size.value;
  const times = timesLarger(Math.max(size.doubt, (oval?.size ?? 0) / 2), perMm, 14);
  // Half the ovality is the wave of the diameter, and half of that the wave of the radius.
  const wave = ((oval?.size ?? 0) / 4) * perMm * times;
  const outline = Array.from({ length: 72 }, (_, i) => {
    const degrees = 5 * i;
    const { x, y } = round(
      middle,
      radius + wave * Math.cos((2 * (degrees - (oval?.angle ?? 0)) * Math.PI) / 180),
      degrees,
    );
    return `${x.toFixed(2)},${y.toFixed(2)}`;
  }).join(' ');
  return (
    <g class="band">
      <polygon points={outline} stroke-width={size.doubt * perMm * times} />
      <polygon class="middle-line" points={outline} />
      <text x={middle.x} y={272}>
        {size.value.toFixed(3)} ± {size.doubt.toFixed(3)} mm
      </text>
      <text class="note" x={middle.x} y={287}>
        doubt and wear drawn {times} times larger
      </text>
    </g>
  );
}

function Round() {
  const at = Math.min(held.value, directions.value - 1);
  const angle = angleOf(at);
  const [from, to] = [round(middle, radius, angle + 180), round(middle, radius, angle)];
  const isBore = kind.value === 'bore';
  return (
    <svg
      viewBox={pictureRoom}
      role="img"
      aria-label={`The register as a ${kind.value}, ${directions.value} directions; the jaws ${isBore ? 'opened in it' : 'closed on it'} at ${angle} degrees`}
    >
      {isBore ? <circle class="metal" cx={middle.x} cy={middle.y} r={radius + 20} /> : null}
      <circle class={isBore ? 'hole' : 'metal edge'} cx={middle.x} cy={middle.y} r={radius} />
      <Found />
      {Array.from({ length: directions.value }, (_, i) => {
        const [a, b] = [round(middle, radius, angleOf(i)), round(middle, radius, angleOf(i) + 180)];
        const name = round(middle, radius + 29, angleOf(i));
        const degrees = `${Number(angleOf(i).toFixed(1))}°`;
        return (
          <g key={degrees}>
            <line class="ring" x1={a.x} y1={a.y} x2={b.x} y2={b.y} />
            <text class={i === at ? 'strong' : ''} x={name.x} y={name.y + 3.5}>
              {degrees}
            </text>
          </g>
        );
      })}
      <Caliper from={from} to={to} offset={isBore ? -16 : -(radius + 12)} opens={isBore} look="over" />
    </svg>
  );
}

const kinds = { bore: 'bore: it goes into the face', spigot: 'spigot: it stands out' } as const;
const instruments = { caliper: 'caliper', micrometer: 'micrometer' } as const;

export function MeasureRegister() {
  return (
    <MeasurePanel of="register" title="Measure a register by picture">
      <Round />
      <div>
        <SideChoice side={side.value} turn={saidOf(side, asked)} />
        <Choice words="it is a" value={kind} of={kinds} asked={asked} />
        <Choice words="read with a" value={instrument} of={instruments} asked={asked} />
        <Count words="in how many directions" count={directions} least={1} most={8} asked={asked} />
        <p>
          {kind.value === 'bore'
            ? 'Rock the jaws: across a bore the greatest reading counts, along its axis the smallest.'
            : 'Keep the jaws square: over a spigot the smallest reading that still slides counts.'}{' '}
          Three directions or more tell whether it is worn.
        </p>
        <Readings
          count={directions.value}
          words={(i) => `across at ${Number(angleOf(i).toFixed(1))}°, mm`}
          example="62.02"
          readings={readings}
          held={held}
          asked={asked}
        />
        <Outcome asked={asked} go={work} put={put} />
      </div>
    </MeasurePanel>
  );
}
