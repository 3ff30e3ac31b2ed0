/**
 * One face of an adapter, looked at along the axis.
 *
 * From the driven side the eye looks along -z: x to the right, y up, angles counter-clockwise. From the driving side it looks along
 * +z: the part is turned over about the y axis, so x runs to the left and angles run clockwise.
 */
import type { Drawing, Shape } from '../model/drawing.ts';
import type { Drilling } from '../model/part.ts';
import { cos } from '../units/trig.ts';
import { drawCaptions, type Obstacle, obstaclesOver, wordsUnder } from './captions.ts';
import { angleArc, arrowHead, centreCross, holeCentre } from './dimension.ts';
import { faceCaptions } from './face-captions.ts';
import {
  type FaceViewInput,
  featureOf,
  holeGroups,
  onAxis,
  polar,
  type Scene,
  sceneOf,
  shownClocking,
  surfaceOver,
  widest,
} from './face-scene.ts';
import { flatOutline } from './flat-outline.ts';
import { frame } from './frame.ts';
import { holeGroupLines, majorOfThread } from './hole-text.ts';
import { angleText, sizesText } from './length-text.ts';
import { boltsAreShared } from './register-text.ts';
import { drillingEdges, outerEdges, type RoundEdge } from './round-edges.ts';
import { boltCircle } from './spacing-text.ts';
import { textBox } from './text-size.ts';

export type { FaceViewInput } from './face-scene.ts';

const named = (feature: string | undefined): { feature?: string } => (feature === undefined ? {} : { feature });

/** Edges of the outside, mm, the axis at the origin; what lies behind the face with the hidden pen. */
export function outsideShapes({ input, outer, seen }: Scene): Shape[] {
  const { flats, features } = input.adapter;
  const keep = (id: string | undefined): boolean =>
    ['spigot', 'wheel seat', 'recess'].includes(featureOf(input.adapter, id)?.purpose ?? 'body');
  const body = features.find((f) => f.purpose === 'body')?.id;
  return outerEdges(outer, keep).map((edge): Shape => {
    const pen = edge.seen ? (edge.fine ? 'thin' : 'outline') : 'hidden';
    const flat = flats && edge.r > flats.across / 2 ? flatOutline(edge.r, flats.across, seen(flats.angle)) : null;
    if (flat) return { kind: 'path', pen, fill: 'none', closed: true, loops: [flat], ...named(edge.of ?? body) };
    return {
      kind: 'circle',
      pen,
      fill: 'none',
      centre: { x: 0, y: 0 },
      r: edge.r,
      ...named(edge.of ?? body),
    };
  });
}

/** Edges of one drilling, mm; hidden pens where the eye does not see them. A thread is three quarters of a thin circle (ISO 6410-1). */
export function drillingShapes(scene: Scene, drilling: Drilling): Shape[] {
  const edges = drillingEdges(drilling, surfaceOver(scene, drilling));
  const centre = { x: drilling.x, y: drilling.y };
  const feature = featureOf(scene.input.adapter, drilling.feature);
  const major = feature?.thread === undefined ? null : majorOfThread(feature.thread);
  const circle = (edge: RoundEdge): Shape => ({
    kind: 'circle',
    pen: edge.seen ? (edge.fine ? 'thin' : 'outline') : 'hidden',
    fill: 'none',
    centre,
    r: edge.r,
    ...named(edge.of ?? drilling.feature),
  });
  if (major === null) return edges.map(circle);
  // A thread seen end-on: its core as a circle, its major diameter as three quarters of a thin circle (ISO 6410-1).
  const core = edges.filter((e) => e.r < major / 2 - 0.02);
  const open = core.some((e) => e.seen);
  return [
    ...core.map(circle),
    open
      ? { kind: 'arc', pen: 'thin', centre, r: major / 2, start: 100, end: 370, ...named(drilling.feature) }
      : { kind: 'circle', pen: 'hidden', fill: 'none', centre, r: major / 2, ...named(drilling.feature) },
  ];
}

/** The cross through the axis, bolt circles, and the strokes at each hole's centre, mm. */
export function centreLines(scene: Scene): Shape[] {
  const circles = holeGroups(scene).flatMap(({ feature, holes }): Shape[] => {
    const circle = boltCircle(holes);
    const ticks = holes.flatMap((h) => holeCentre(h, widest(h) + 0.25 * scene.size));
    return circle === null
      ? ticks
      : [
          {
            kind: 'circle',
            pen: 'centre',
            fill: 'none',
            centre: { x: 0, y: 0 },
            r: circle / 2,
            feature: feature.id,
          },
          ...ticks,
        ];
  });
  return [...centreCross({ x: 0, y: 0 }, scene.rim + 1.2 * scene.size), ...circles];
}

/** Room of a text that a leader should keep out of. */
const textRoom = (shape: Shape): Obstacle[] => (shape.kind === 'text' ? obstaclesOver(textBox(shape)) : []);

/** The index mark on the rim and the arrow that shows the clocking zero. */
function zeroShapes({ input, rim, size, seen }: Scene): Shape[] {
  const mark = input.adapter.engravings.find((e) => e.kind === 'index');
  const zero = seen(mark?.angle ?? 0);
  const tip = polar(rim + 0.5 * size, zero);
  const tail = polar(rim + 3.1 * size, zero);
  const text = polar(rim + 3.7 * size, zero);
  return [
    {
      kind: 'line',
      pen: 'mark',
      from: polar(rim - 0.8 * size, zero),
      to: polar(rim, zero),
      feature: 'index-mark',
    },
    { kind: 'line', pen: 'dimension', from: tail, to: tip },
    arrowHead(tip, zero + 180, size),
    {
      kind: 'text',
      at: { x: text.x, y: text.y - size / 2 },
      text: '0\u00b0',
      size,
      align: cos((zero * Math.PI) / 180) > 0 ? 'start' : 'end',
      angle: 0,
      bold: true,
    },
  ];
}

/** The arc from the clocking zero to the driven pattern, and the line on which that pattern starts. */
function clockingShapes(scene: Scene): Shape[] {
  const { input, rim, size, seen } = scene;
  const turn = shownClocking(scene);
  if (turn === null) return [];
  const r = rim + 2 * size;
  const zero = seen(0);
  const start = seen(turn);
  // The angle stands past the end of the line, on the side away from the zero's own figure.
  const end = polar(r + size, start);
  const text: Shape = {
    kind: 'text',
    at: { x: end.x + Math.sign(end.x) * 0.4 * size, y: end.y + (end.y >= 0 ? 0.5 : -1.5) * size },
    text: angleText(turn),
    size,
    align: end.x >= 0 ? 'start' : 'end',
    angle: 0,
    bold: true,
  };
  return [
    text,
    { kind: 'line', pen: 'centre', from: { x: 0, y: 0 }, to: end },
    ...(input.from === 'driven' ? angleArc(zero, start, r, size) : angleArc(start, zero, r, size)),
  ];
}

/**
 * Draws the face that looks towards `from`. What lies behind the face is hidden-dashed; the outside of the flange that bolts on
 * is a thin circle. Labels stand in a column on the right.
 */
export function faceView(input: FaceViewInput): Drawing {
  const scene = sceneOf(input);
  const { rim, size } = scene;
  const drilled = scene.drillings.flatMap((d) => drillingShapes(scene, d));
  const solidLast = (a: Shape, b: Shape): number =>
    Number('pen' in a && a.pen !== 'hidden') - Number('pen' in b && b.pen !== 'hidden');
  const edges = [...outsideShapes(scene), ...drilled].sort(solidLast);
  const mate: Shape[] =
    input.mate === null
      ? []
      : [{ kind: 'circle', pen: 'centre', fill: 'none', centre: { x: 0, y: 0 }, r: input.mate / 2 }];
  const reach = Math.max(rim, (input.mate ?? 0) / 2);
  const marks = [...clockingShapes(scene), ...zeroShapes(scene)];
  const labels = drawCaptions(faceCaptions(scene), {
    x: Math.max(reach + 8 * size, ...marks.map((s) => (s.kind === 'text' ? textBox(s).xMax + 2.2 * size : 0))),
    side: 'right',
    yMin: -reach,
    yMax: reach,
    size,
    obstacles: [
      ...scene.drillings.filter((d) => !onAxis(d)).map((d) => ({ centre: { x: d.x, y: d.y }, r: widest(d) })),
      ...marks.flatMap(textRoom),
    ],
  });
  const side = `seen from the ${input.from} side`;
  const turn = shownClocking(scene);
  const notes = [
    ...(turn === null ? [] : [`clocking ${angleText(turn)}: driven pattern against driving`]),
    sizesText(input.units),
  ];
  const lowest = Math.min(-reach, ...marks.map((s) => (s.kind === 'text' ? s.at.y : 0)));
  const caption = wordsUnder([side, ...notes], lowest, size);
  return frame(
    {
      id: `${input.id}-${input.from}-face`,
      title: `${input.adapter.name}, ${side}`,
      description: describe(input),
    },
    [...mate, ...centreLines(scene), ...edges, ...marks, ...labels, ...caption],
    size,
  );
}

function describe({ adapter, from, clocking, units }: FaceViewInput): string {
  const groups = adapter.features.flatMap((f) => {
    const holes = adapter.drillings.filter((d) => d.feature === f.id && !onAxis(d));
    return holes.length > 0 ? [holeGroupLines(f, holes, units).join(', ')] : [];
  });
  return `Face of the adapter ${from === 'driven' ? 'looking along the shaft against z' : 'looking along the shaft with z, so that angles run clockwise'}. ${groups.join('; ')}. ${boltsAreShared(adapter) ? 'Both flanges share the bolt holes' : `Clocking ${angleText(clocking)}`}.`;
}
