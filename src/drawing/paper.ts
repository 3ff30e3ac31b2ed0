/**
 * True-size patterns to print, cut out and lay on: a flange's own face, and the two faces of the adapter. Each is what the eye sees that
 * looks at that face, so it is laid on with its print up. Only what shows on the face is drawn: what lies behind it would be punched by
 * mistake. Lengths in mm, the axis at the origin, y up.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import type { Drilling, TurnedPart } from '../model/part.ts';
import { atan2 } from '../units/trig.ts';
import { shortLines } from './captions.ts';
import { centreCross, holeCentre } from './dimension.ts';
import {
  featureOf,
  holeGroups,
  onAxis,
  polar,
  type Scene,
  sceneOf,
  surfaceOver,
  unturned,
  widest,
} from './face-scene.ts';
import { flatOutline } from './flat-outline.ts';
import { frame } from './frame.ts';
import { holeGroupLines, majorOfThread } from './hole-text.ts';
import { diameterText, type LabelUnits } from './length-text.ts';
import { drillingEdges, outerEdges } from './round-edges.ts';
import { boltCircle } from './spacing-text.ts';

/** A pattern and the words that stand beside it. */
export interface PaperPattern {
  readonly drawing: Drawing;
  /** Which face is seen, as a sentence. */
  readonly view: string;
  /** What is on it, a line each. */
  readonly facts: readonly string[];
}

export interface FlangeOnPaper {
  readonly side: 'driving' | 'driven';
  readonly name: string;
  readonly outside: number;
  readonly register: { readonly gender: 'male' | 'female'; readonly diameter: number } | null;
  readonly bore: number | null;
  readonly holes: {
    /** Seen looking at the flange's own face; hole 1 first. */
    readonly positions: readonly Point[];
    /** Clear hole, or the thread's major diameter. */
    readonly diameter: number;
    readonly thread: string | null;
    /** Numbers of those that stay empty; left out where each gets a screw. */
    readonly empty?: readonly number[];
  };
  /** Where the adapter's index mark comes to lie, degrees counter-clockwise as seen. */
  readonly zero: number;
}

const origin: Point = { x: 0, y: 0 };
/** Cap height of figures on the pattern. */
const figure = 3;
/** How far centre strokes reach past a hole. */
const past = 3;
/** Characters in a line beside the pattern; longer ones would be printed too small to read. */
const factWidth = 112;
/** Room round a pattern. */
const margin = 1;

const circle = (pen: 'outline' | 'thin' | 'hidden' | 'centre', centre: Point, r: number, feature: string): Shape => ({
  kind: 'circle',
  pen,
  fill: 'none',
  centre,
  r,
  feature,
});

/** The clocking zero: a thick stroke across the rim, and its figure outside, where no hole is in the way. */
function zeroMark(rim: number, degrees: number): Shape[] {
  const beside = polar(rim + figure, degrees + ((1.1 * figure) / rim) * (180 / Math.PI));
  return [
    {
      kind: 'line',
      pen: 'mark',
      from: polar(rim - past, degrees),
      to: polar(rim + past, degrees),
      feature: 'index-mark',
    },
    {
      kind: 'text',
      at: { x: beside.x, y: beside.y - figure / 2 },
      text: '0\u00b0',
      size: figure,
      align: 'middle',
      angle: 0,
      bold: true,
    },
  ];
}

/** The hole's figure beside it, a third of the way round from straight out, clear of its centre strokes. */
function holeFigure(centre: Point, r: number, text: string): Shape {
  const out = (atan2(centre.y, centre.x) * 180) / Math.PI + 135;
  const at = polar(r + figure, out);
  return {
    kind: 'text',
    at: { x: centre.x + at.x, y: centre.y + at.y - figure / 2 },
    text,
    size: figure,
    align: 'middle',
    angle: 0,
  };
}

/** A hole without a screw: dashed and crossed out, so that nobody drills for it; its centre strokes stay to lay the pattern on by. */
function emptyHole({ x, y }: Point, r: number, feature: string): Shape[] {
  // From rim to rim at 45 degrees, between the strokes of the centre.
  const reach = r * Math.SQRT1_2;
  const across = (rise: 1 | -1): Shape => ({
    kind: 'line',
    pen: 'thin',
    from: { x: x - reach, y: y - rise * reach },
    to: { x: x + reach, y: y + rise * reach },
    feature,
  });
  return [circle('hidden', { x, y }, r, feature), across(1), across(-1)];
}

/** Pattern of a flange's own face. */
export function flangePattern(flange: FlangeOnPaper, units: LabelUnits): PaperPattern {
  const { side, name, holes, register } = flange;
  const { empty = [] } = holes;
  const rim = flange.outside / 2;
  const on = boltCircle(holes.positions);
  const size = holes.thread ?? diameterText(holes.diameter, units);
  const shapes: Shape[] = [
    ...centreCross(origin, rim + past),
    ...(on === null ? [] : [circle('centre', origin, on / 2, 'bolt-circle')]),
    circle('outline', origin, rim, 'outside'),
    ...(register ? [circle('outline', origin, register.diameter / 2, 'register')] : []),
    ...(flange.bore === null ? [] : [circle('thin', origin, flange.bore / 2, 'bore')]),
    ...holes.positions.flatMap((centre, i) => [
      ...(empty.includes(i + 1)
        ? emptyHole(centre, holes.diameter / 2, `hole-${i + 1}`)
        : [circle('outline', centre, holes.diameter / 2, `hole-${i + 1}`)]),
      ...holeCentre(centre, holes.diameter / 2 + past),
      holeFigure(centre, holes.diameter / 2, String(i + 1)),
    ]),
    ...zeroMark(rim, flange.zero),
  ];
  const view = `${name}: seen looking at the ${side} flange's own face.`;
  const facts = [
    `${holes.positions.length} x ${size}${on === null ? '' : ` on ${diameterText(on, units)}`}, hole 1 first${empty.length === 0 ? '' : `; no screw in ${empty.join(', ')}: dashed and crossed out`}`,
    register
      ? `register ${register.gender === 'male' ? 'spigot' : 'recess'} ${diameterText(register.diameter, units)}`
      : 'no register',
    `outside ${diameterText(flange.outside, units)}${flange.bore === null ? '' : `, bore ${diameterText(flange.bore, units)}`}`,
    "0\u00b0: where the adapter's index mark comes to lie",
  ];
  const about = { id: `${side}-flange`, title: `${side} flange`, description: `${view} ${facts.join('; ')}.` };
  return { drawing: frame(about, shapes, margin), view, facts };
}

function drillingOnPaper(scene: Scene, drilling: Drilling): Shape[] {
  const axis = onAxis(drilling);
  const seen = drillingEdges(drilling, surfaceOver(scene, drilling)).filter((edge) => edge.seen);
  if (seen.length === 0) return [];
  const centre = { x: drilling.x, y: drilling.y };
  const thread = featureOf(scene.input.adapter, drilling.feature)?.thread;
  const major = thread === undefined ? null : majorOfThread(thread);
  const shown = major === null ? seen : seen.filter((edge) => edge.r < major / 2 - 0.02);
  return [
    ...shown.map((edge) => circle(edge.fine ? 'thin' : 'outline', centre, edge.r, drilling.id)),
    ...(major === null
      ? []
      : [
          {
            kind: 'arc',
            pen: 'thin',
            centre,
            r: major / 2,
            start: 100,
            end: 370,
            feature: drilling.id,
          } satisfies Shape,
        ]),
    ...(axis ? [] : holeCentre(centre, widest(drilling) + past)),
  ];
}

function outsideOnPaper({ input, outer, seen }: Scene): Shape[] {
  const { flats } = input.adapter;
  return outerEdges(outer, () => false)
    .filter((edge) => edge.seen)
    .map((edge): Shape => {
      const pen = edge.fine ? 'thin' : 'outline';
      if (!flats || edge.r <= flats.across / 2) return circle(pen, origin, edge.r, edge.of ?? 'outside');
      const loops = [flatOutline(edge.r, flats.across, seen(flats.angle))];
      return { kind: 'path', pen, fill: 'none', closed: true, loops, feature: edge.of ?? 'outside' };
    });
}

/** Pattern of one face of the adapter, seen from the flange that lies on it. */
export function adapterPattern(
  adapter: TurnedPart,
  from: 'driving' | 'driven',
  clocking: number,
  units: LabelUnits,
): PaperPattern {
  const scene = sceneOf({ id: `adapter-${from}`, adapter, from, clocking, mate: null, units });
  const groups = holeGroups(scene).map(({ feature, holes }) => {
    const shown = holes.filter((hole) => drillingOnPaper(scene, hole).length > 0);
    return { feature, holes: shown };
  });
  const open = groups.filter(({ holes }) => holes.length > 0);
  const circles = open.flatMap(({ feature, holes }) => {
    const on = boltCircle(holes);
    return on === null ? [] : [circle('centre', origin, on / 2, feature.id)];
  });
  const shapes: Shape[] = [
    ...centreCross(origin, scene.rim + past),
    ...circles,
    ...outsideOnPaper(scene),
    ...scene.drillings.flatMap((drilling) => drillingOnPaper(scene, drilling)),
    ...zeroMark(scene.rim, scene.seen(0)),
  ];
  const view = `${adapter.name}: seen looking at the adapter's ${from} face, where the ${from} flange lies.`;
  const facts = [
    ...open.flatMap(({ feature, holes }) =>
      shortLines(holeGroupLines(feature, unturned(scene, holes), units).join(', '), factWidth),
    ),
    `outside ${diameterText(2 * scene.rim, units)}`,
    '0\u00b0: the index mark on the rim',
  ];
  const about = { id: `adapter-${from}`, title: `adapter, ${from} face`, description: `${view} ${facts.join('; ')}.` };
  return { drawing: frame(about, shapes, margin), view, facts };
}
