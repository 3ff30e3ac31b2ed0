/** Measuring a bolt circle by picture: which chord, where the caliper's jaws go, and what the readings come to. */
import { signal } from '@preact/signals';
import { setTogether } from '../job/edits.ts';
import { notice, values } from '../job/store.ts';
import { Count, SideChoice, saidOf, Typed } from './inputs.tsx';
import { MeasurePanel, showPanel, turner } from './panel.tsx';
import {
  Caliper,
  measuredIn,
  Outcome,
  pictureRoom,
  question,
  round,
  type Side,
  type Spot,
  sized,
  timesLarger,
} from './parts.tsx';

const side = signal<Side>('driving');
const holes = signal(5);
const apart = signal(2);
const outside = signal('');
const inside = signal('');
const bore = signal('');
const asked = question();
const turnTo = turner(side, [holes, apart, outside, inside, bore], asked);

const [leastHoles, mostHoles] = [2, 36];

/** Measure the circle of one flange: the panel opens with as many holes as its job has. */
export function measureCircle(of: Side): void {
  turnTo(of);
  const count = Number(values.value[`${of}.holes.count`]);
  if (Number.isInteger(count) && count >= leastHoles && count <= mostHoles && count !== holes.value) {
    holes.value = count;
    asked.forget();
  }
  showPanel('circle');
}

const middle = { x: 130, y: 130 };
const [ring, hole] = [84, 13];

const at = (i: number, count: number): Spot => round(middle, ring, 90 + (360 * i) / count);

/** Both edges of two holes on the line through their middles: far ones (over) or near ones (between). */
function edges(from: Spot, to: Spot, over: boolean): readonly [Spot, Spot] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const reach = over ? hole : -hole;
  return [
    { x: from.x - ux * reach, y: from.y - uy * reach },
    { x: to.x + ux * reach, y: to.y + uy * reach },
  ];
}

/** How far on the second hole stands. */
const steps = (span: number) => (span === 1 ? 'the next hole' : `hole ${span + 1}, when the first is hole 1`);

const work = () =>
  asked.work({
    what: 'circle',
    typed: {
      side: side.value,
      holes: String(holes.value),
      span: String(Math.min(apart.value, Math.floor(holes.value / 2))),
      ...(outside.value ? { over: outside.value } : {}),
      ...(inside.value ? { between: inside.value } : {}),
      ...(bore.value.trim() ? { hole: bore.value } : {}),
    },
  });

/** Put the circle into the job, its doubt kept. */
async function put(): Promise<void> {
  const circle = measuredIn(asked.said.value, 'circle');
  if (!circle) return;
  const isTaken = await setTogether([
    { path: [side.value, 'holes', 'count'], typed: String(holes.value) },
    { path: [side.value, 'holes', 'circle'], typed: sized(circle) },
  ]);
  if (!isTaken) return;
  notice.value = `The ${side.value} flange's bolt circle is ${circle.value.toFixed(2)} mm now, in doubt by ${circle.doubt.toFixed(3)} mm.`;
}

/** The doubt of the circle as a band about it, drawn wider, and that of the holes about the two that were measured. */
function Band({ used }: { used: readonly Spot[] }) {
  const circle = measuredIn(asked.said.value, 'circle');
  const size = measuredIn(asked.said.value, 'hole');
  if (!circle) return null;
  const perMm = (2 * ring) / circle.value;
  const times = timesLarger(circle.doubt, perMm, 14);
  // A doubt of the diameter moves the line by half of it to either side.
  return (
    <g class="band">
      <circle cx={middle.x} cy={middle.y} r={ring} stroke-width={circle.doubt * perMm * times} />
      {size
        ? used.map(({ x, y }) => (
            <circle key={`${x}`} cx={x} cy={y} r={hole} stroke-width={Math.min(hole, size.doubt * perMm * times)} />
          ))
        : null}
      <text x={middle.x} y={272}>
        {circle.value.toFixed(2)} ± {circle.doubt.toFixed(3)} mm
      </text>
      <text class="note" x={middle.x} y={287}>
        doubt drawn {times} times wider
      </text>
    </g>
  );
}

function Pattern({ span }: { span: number }) {
  const [from, to] = [at(0, holes.value), at(span, holes.value)];
  const far = edges(from, to, true);
  const near = edges(from, to, false);
  return (
    <svg
      viewBox={pictureRoom}
      role="img"
      aria-label={`Bolt circle of ${holes.value} holes: the caliper in hole 1 and hole ${span + 1}, its jaws opened outwards, then closed inwards`}
    >
      <circle class="ring" cx={middle.x} cy={middle.y} r={ring} />
      {Array.from({ length: holes.value }, (_, i) => {
        const { x, y } = at(i, holes.value);
        const number = i + 1;
        return <circle key={number} class={i === 0 || i === span ? 'hole used' : 'hole'} cx={x} cy={y} r={hole} />;
      })}
      <Band used={[from, to]} />
      <Caliper from={far[0]} to={far[1]} offset={-30} opens={true} look="over" />
      <Caliper from={near[0]} to={near[1]} offset={30} opens={false} look="between" />
      {Array.from({ length: holes.value }, (_, i) => {
        const { x, y } = round(middle, ring + hole + 9, 90 + (360 * i) / holes.value);
        const number = i + 1;
        return (
          <text key={number} class={i === 0 || i === span ? 'strong' : ''} x={x} y={y + 3.5}>
            {number}
          </text>
        );
      })}
    </svg>
  );
}

export function MeasureCircle() {
  const most = Math.floor(holes.value / 2);
  const span = Math.min(apart.value, most);
  // An error of the caliper grows by 1 / sin(half the angle) on the circle. Geometry.
  const grows = 1 / Math.sin((Math.PI * span) / holes.value);
  const best = 1 / Math.sin((Math.PI * most) / holes.value);
  return (
    <MeasurePanel of="circle" title="Measure a bolt circle by picture">
      <Pattern span={span} />
      <div>
        <SideChoice side={side.value} turn={saidOf(side, asked)} />
        <Count words="how many holes" count={holes} least={leastHoles} most={mostHoles} asked={asked} />
        <Count
          words="second hole, counted from the first"
          count={apart}
          least={1}
          most={most}
          asked={asked}
          says={steps(span)}
        />
        <p>
          An error of the caliper grows {grows.toFixed(2)} times on the circle
          {grows > best + 0.005
            ? `; over holes 1 and ${most + 1} only ${best.toFixed(2)} times.`
            : ': no chord does better.'}
        </p>
        <Typed value={outside} example="103.10, 103.15" asked={asked} look="over">
          over the outside of both (far edges: small jaws, opened), mm
        </Typed>
        <Typed value={inside} example="87.05" asked={asked} look="between">
          between them (near edges: large jaws, closed), mm
        </Typed>
        <Typed value={bore} example="8.05" asked={asked} look="bore" isOne={true}>
          diameter of the holes, or of the bolts in them, mm (needed where only one of the two above is read)
        </Typed>
        <Outcome asked={asked} go={work} put={put} />
      </div>
    </MeasurePanel>
  );
}
