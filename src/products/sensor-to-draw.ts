/** The sensor over the teeth as its picture needs it: teeth as they are cut, gaps as the checks reckon them. */
import type { GapState } from '../drawing/gap-line.ts';
import type { SensorViewInput } from '../drawing/sensor-view.ts';
import { polarRun, radiusAlong } from '../geometry/contour-polar.ts';
import type { Joint } from '../job/joint.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import { toothWords } from '../job/wheel-form.ts';
import type { Point } from '../model/drawing.ts';
import type { Finding } from '../model/finding.ts';
import type { SheetPart } from '../model/sheet.ts';
import { hasWindows, pulseCount, type ToneWheelSpec, toothMeasures } from '../parts/tone-wheel.ts';
import { type GapMoves, gapMoves } from '../rotor/gap-moves.ts';
import { cos, sin } from '../units/trig.ts';
import { sensorGap } from '../validate/sensor-gap.ts';
import { mm } from '../validate/words.ts';
import { asItIs } from './as-it-is.ts';

type Teeth = Pick<SensorViewInput, 'teeth' | 'edges' | 'beyond' | 'half' | 'deep' | 'pitch' | 'sizes'>;

/** How many pitches are shown at most, and at least; and how long the picture may be in gaps so that the gap is still seen. */
const mostPitches = 3.2;
const leastPitches = 2.1;
const mostGaps = 46;

const shownHalf = (pitch: number, gap: number): number =>
  Math.max(leastPitches * pitch, Math.min(mostPitches * pitch, mostGaps * gap)) / 2;

/** The teeth as they are cut, the middle one upright. */
function radialTeeth(wheel: SheetPart, spec: ToneWheelSpec, gap: number): Teeth {
  const measures = toothMeasures(spec);
  const { pitch, height } = measures;
  const half = shownHalf(pitch, gap);
  const tip = spec.outside / 2;
  const reach = half / tip;
  const nodes = polarRun(wheel.outside);
  const middle = ((spec.toothAngle + (360 / spec.teeth) * Math.floor(pulseCount(spec) / 2)) * Math.PI) / 180;
  const turn = 2 * Math.PI;
  const place = (t: number, r: number): Point => ({ x: -r * sin(t), y: r * cos(t) - tip });
  const inside = nodes
    .map(({ angle, r }) => ({ t: angle - middle - turn * Math.round((angle - middle) / turn), r }))
    .filter(({ t }) => Math.abs(t) < reach);
  const ends = [-reach, reach].map((t) => ({ t, r: radiusAlong(nodes, middle + t) }));
  const run = [...inside, ...ends].sort((a, b) => a.t - b.t);
  // Arcs about the axis are one piece between two nodes: a few points more keep them round.
  const edge = run.flatMap((node, i) => {
    const next = run[i + 1];
    if (!next || Math.abs(next.r - node.r) > 1e-9) return [place(node.t, node.r)];
    return [0, 0.25, 0.5, 0.75].map((share) => place(node.t + share * (next.t - node.t), node.r));
  });
  const deep = height + Math.max(1.2, 0.35 * height) + (tip - tip * cos(reach));
  const [left, right] = [edge[0] as Point, edge.at(-1) as Point];
  return {
    teeth: [[...edge, { x: right.x, y: -deep }, { x: left.x, y: -deep }]],
    edges: [edge],
    beyond: [],
    half,
    deep,
    pitch,
    sizes: sizesOf(spec),
  };
}

/** Teeth or bars laid out flat where their widths are told, the sheet from the side. */
function axialTeeth(spec: ToneWheelSpec, gap: number): Teeth {
  const { pitch, toothArc } = toothMeasures(spec);
  const half = shownHalf(pitch, gap);
  const deep = spec.thickness;
  const count = Math.ceil(half / pitch);
  const bars = Array.from({ length: 2 * count + 1 }, (_, i) => (i - count) * pitch)
    .map((x) => ({ from: Math.max(-half, x - toothArc / 2), to: Math.min(half, x + toothArc / 2) }))
    .filter(({ from, to }) => to > from);
  return {
    teeth: bars.map(({ from, to }) => [
      { x: from, y: 0 },
      { x: to, y: 0 },
      { x: to, y: -deep },
      { x: from, y: -deep },
    ]),
    edges: bars.flatMap(({ from, to }) => {
      const across = [0, -deep].map((y) => [
        { x: from, y },
        { x: to, y },
      ]);
      const sides = [from, to].flatMap((x) =>
        Math.abs(x) < half - 1e-9
          ? [
              [
                { x, y: 0 },
                { x, y: -deep },
              ],
            ]
          : [],
      );
      return [...across, ...sides];
    }),
    beyond: [0, -deep].map((y) => ({ from: { x: -half, y }, to: { x: half, y } })),
    half,
    deep,
    pitch,
    sizes: sizesOf(spec),
  };
}

function sizesOf(spec: ToneWheelSpec): string {
  const { toothArc, valleyArc, height } = toothMeasures(spec);
  const { tooth, valley } = toothWords(spec);
  return `A ${tooth} is ${mm(toothArc)} wide, a ${valley} ${mm(valleyArc)}, ${mm(height)} high; the sheet ${mm(spec.thickness)} thick.`;
}

function statesOf(joint: Joint, gap: number, moves: GapMoves): GapState[] {
  const at = (name: string, heat: number): GapState => ({
    name,
    nearest: gap - moves.worst + heat,
    middle: gap + heat,
    farthest: gap + moves.worst + heat,
    likely: moves.likely,
  });
  const temperature = joint.job.duty?.temperature;
  const set = at('as set, at 20 \u00b0C', 0);
  if (!moves.heat || !temperature) return [set];
  const { cold, hot } = moves.heat;
  return [at(`cold, ${temperature.cold} \u00b0C`, cold), set, at(`hot, ${temperature.hot} \u00b0C`, hot)];
}

/** What is left to a limit of the gap, in a clause. */
function left(finding: Finding | undefined, near: string): string[] {
  if (!finding || finding.value === null || finding.limit === null || finding.margin === null) return [];
  return [
    finding.margin >= 0
      ? `${mm(finding.margin)} to spare before it is too ${near}`
      : `${mm(-finding.margin)} too ${near}`,
  ];
}

const worse = (findings: readonly (Finding | undefined)[]): Finding['verdict'] =>
  (['fail', 'caution', 'not assessed'] as const).find((verdict) => findings.some((one) => one?.verdict === verdict)) ??
  'pass';

/** Null where there is no wheel, no sensor, or nobody knows its gap. */
export function sensorToDraw(joint: Joint): SensorViewInput | null {
  const built = asItIs(joint);
  const { wheelSpec: spec, wheel, job } = built;
  const { sensor } = job;
  if (!spec || !wheel || !sensor) return null;
  const needs = sensorNeeds(sensor);
  const moves = needs.gap && gapMoves(built, needs.gap.value);
  if (!needs.gap || !moves) return null;
  const gap = needs.gap.value;
  const findings = sensorGap.run(built);
  const [high, low] = ['sensor-gap-high', 'sensor-gap-low'].map((code) => findings.find((one) => one.code === code));
  const spacing = needs.of('spacing')?.value ?? null;
  const wanted = needs.of('pitch')?.value ?? null;
  const isAxial = sensor.direction === 'axial' || hasWindows(spec);
  const teeth = isAxial ? axialTeeth(spec, gap) : radialTeeth(wheel, spec, gap);
  const margins = [...left(high, 'near'), ...left(low, 'far')];
  const widest = [...moves.links].sort((a, b) => b.most - a.most)[0];
  return {
    ...teeth,
    id: 'sensor',
    sensor: needs.kind?.title ?? 'sensor',
    direction: isAxial ? 'axial' : 'radial',
    teethWord: toothWords(spec).teeth,
    gap,
    isGapGiven: needs.gap.isGiven,
    pole: sensor.pole ?? null,
    spacing,
    body: job.bracket?.sensor.bore ?? null,
    states: statesOf(joint, gap, moves),
    least: needs.of('gapLeast')?.value ?? null,
    most: needs.of('gapMost')?.value ?? null,
    verdict: worse([high, low]),
    said: [
      margins.length > 0 ? `${margins.join(', ')}.` : 'how much it bears is not known.',
      ...(widest ? [`Most of what moves it: ${widest.what}, ${mm(widest.most, 3)} either way.`] : []),
      ...(spacing === null || wanted === null
        ? []
        : [
            `Its elements are ${mm(spacing)} apart, the ${toothWords(spec).teeth} ${mm(teeth.pitch)} from one to the next: ${mm(wanted)} or more is wanted.`,
          ]),
    ],
    notGiven: moves.unread,
    units: job.units,
    feature: 'wheel-outline',
  };
}
