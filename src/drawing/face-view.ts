/**
 * One face of an adapter, looked at along the axis.
 *
 * From the driven side the eye looks along -z: x to the right, y up, angles counter-clockwise. From the driving side it looks along
 * +z: the part is turned over about the y axis, so x runs to the left and angles run clockwise.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import type { Drilling, Feature, TurnedPart } from '../model/part.ts';
import { anchorsOnCircle, type Caption, drawCaptions } from './captions.ts';
import { angleArc, arrowHead, centreCross, holeCentre } from './dimension.ts';
import { flatOutline } from './flat-outline.ts';
import { frame } from './frame.ts';
import { boltCircle, holeGroupLines, majorOfThread } from './hole-text.ts';
import { angleText, diameterText, type LabelUnits, lengthText, limitsText } from './length-text.ts';
import { drillingEdges, outerEdges, type RoundEdge, upperSurface } from './round-edges.ts';
import { partTurnedOver } from './turned-profile.ts';

export interface FaceViewInput {
  /** Start of the drawing's id. */
  readonly id: string;
  readonly adapter: TurnedPart;
  /** Where the eye is. */
  readonly from: 'driving' | 'driven';
  /** Angle by which the driven pattern is turned against the driving one, degrees. */
  readonly clocking: number;
  /** Outside diameter of the flange that lies on this face, mm; null when not known. */
  readonly mate: number | null;
  readonly units: LabelUnits;
}

interface Scene {
  readonly input: FaceViewInput;
  readonly outer: TurnedPart['outer'];
  readonly drillings: readonly Drilling[];
  readonly rim: number;
  readonly size: number;
  /** Direction of an angle of the joint, as it is drawn. */
  readonly seen: (degrees: number) => number;
}

const onAxis = (d: Drilling): boolean => Math.hypot(d.x, d.y) < 1e-6;

const featureOf = (part: TurnedPart, id: string | undefined): Feature | undefined =>
  part.features.find((f) => f.id === id);

function sceneOf(input: FaceViewInput): Scene {
  const turned = input.from === 'driving';
  const { outer, drillings } = turned ? partTurnedOver(input.adapter) : input.adapter;
  const rim = Math.max(...outer.map((p) => p.r));
  return {
    input,
    outer,
    drillings,
    rim,
    size: Math.max(1, rim / 18),
    seen: (degrees) => (turned ? 180 - degrees : degrees),
  };
}

const polar = (r: number, degrees: number): Point => ({
  x: r * Math.cos((degrees * Math.PI) / 180),
  y: r * Math.sin((degrees * Math.PI) / 180),
});

const named = (feature: string | undefined): { feature?: string } =>
  feature === undefined ? {} : { feature };

function outsideShapes({ input, outer, seen }: Scene): Shape[] {
  const { flats, features } = input.adapter;
  const keep = (id: string | undefined): boolean =>
    ['spigot', 'wheel seat', 'recess'].includes(featureOf(input.adapter, id)?.purpose ?? 'body');
  const body = features.find((f) => f.purpose === 'body')?.id;
  return outerEdges(outer, keep).map((edge): Shape => {
    const pen = edge.seen ? (edge.fine ? 'thin' : 'outline') : 'hidden';
    const flat =
      flats && edge.r > flats.across / 2 ? flatOutline(edge.r, flats.across, seen(flats.angle)) : null;
    if (flat)
      return { kind: 'path', pen, fill: 'none', closed: true, loops: [flat], ...named(edge.of ?? body) };
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

function drillingShapes(scene: Scene, drilling: Drilling): Shape[] {
  const axis = onAxis(drilling);
  const others = scene.drillings.filter((d) => onAxis(d) && d !== drilling);
  const surface = upperSurface(scene.outer, others, axis ? 0 : Math.hypot(drilling.x, drilling.y));
  const edges = drillingEdges(
    drilling,
    axis ? Math.min(surface, drilling.profile.at(-1)?.z ?? surface) : surface,
  );
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

const widest = (d: Drilling): number => Math.max(...d.profile.map((p) => p.r));

/** Groups of drillings off the axis that one feature names. */
function holeGroups(scene: Scene): { feature: Feature; holes: Drilling[] }[] {
  return scene.input.adapter.features.flatMap((feature) => {
    const holes = scene.drillings.filter((d) => d.feature === feature.id && !onAxis(d));
    return holes.length > 0 ? [{ feature, holes }] : [];
  });
}

function centreLines(scene: Scene): Shape[] {
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
      from: polar(rim - 1.1 * size, zero),
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
      align: Math.cos((zero * Math.PI) / 180) > 0 ? 'start' : 'end',
      angle: 0,
      bold: true,
    },
  ];
}

/** The arc from the clocking zero to the driven pattern, and the line on which that pattern starts. */
function clockingShapes({ input, rim, size, seen }: Scene): Shape[] {
  const turn = ((input.clocking % 360) + 360) % 360;
  if (turn < 0.05 || turn > 359.95) return [];
  const r = rim + 2 * size;
  const zero = seen(0);
  const start = seen(turn);
  const middle = polar(r + 0.7 * size, seen(turn / 2));
  // On the far side from the labels the angle is written beside its arc, not led right across the part.
  const beside: Shape[] =
    middle.x >= 0
      ? []
      : [
          {
            kind: 'text',
            at: { x: middle.x, y: middle.y - size / 2 },
            text: angleText(turn),
            size,
            align: 'end',
            angle: 0,
            bold: true,
          },
        ];
  return [
    ...beside,
    { kind: 'line', pen: 'centre', from: { x: 0, y: 0 }, to: polar(r + size, start) },
    ...(input.from === 'driven' ? angleArc(zero, start, r, size) : angleArc(start, zero, r, size)),
  ];
}

/** A label that may touch a circle about the axis anywhere on its right. */
function circleCaption(feature: Feature, lines: string[], r: number): Caption {
  return { lines, anchors: anchorsOnCircle({ x: 0, y: 0 }, r, 0, 80, 7), feature: feature.id };
}

function captionsFor(scene: Scene): Caption[] {
  const { input, rim, size } = scene;
  const { units, adapter, from } = input;
  const out: Caption[] = [];
  for (const feature of adapter.features) {
    const { diameter, limits } = feature;
    if (feature.purpose === 'flats' && adapter.flats) {
      const side = scene.seen(adapter.flats.angle);
      const near = Math.cos((side * Math.PI) / 180) < -0.1 ? side + 180 : side;
      const half = Math.sqrt(Math.max(0, rim * rim - (adapter.flats.across / 2) ** 2));
      const anchors = [0.3, -0.3, 0.6, -0.6].map((k) => {
        const foot = polar(adapter.flats ? adapter.flats.across / 2 : 0, near);
        const along = polar(k * half, near + 90);
        return { x: foot.x + along.x, y: foot.y + along.y };
      });
      out.push({
        lines: [`${lengthText(adapter.flats.across, units)} across flats`],
        anchors,
        feature: feature.id,
      });
    }
    if (diameter === undefined) continue;
    if (feature.purpose === 'body') {
      out.push(circleCaption(feature, [`${diameterText(diameter, units)} outside`], diameter / 2));
    } else if (
      ['spigot', 'recess', 'wheel seat'].includes(feature.purpose) &&
      (feature.side === from || feature.side === 'wheel')
    ) {
      const zone = limits ? ` ${limits.zone}` : '';
      const lines = [`${diameterText(diameter, units)}${zone.length <= 8 ? zone : ''}`, feature.label];
      if (limits) lines.push(limitsText(limits.lower, limits.upper));
      out.push(circleCaption(feature, lines, diameter / 2));
    } else if (feature.purpose === 'bore') {
      out.push(circleCaption(feature, [`${diameterText(diameter, units)} bore`], diameter / 2));
    }
  }
  for (const { feature, holes } of holeGroups(scene)) {
    const edges = holes.flatMap((h) => {
      const open = drillingEdges(
        h,
        upperSurface(scene.outer, scene.drillings.filter(onAxis), Math.hypot(h.x, h.y)),
      );
      const r = open[0]?.r ?? widest(h);
      return [0, 25, -25, 50, -50].map((a) => ({ x: h.x + polar(r, a).x, y: h.y + polar(r, a).y }));
    });
    const right = edges.filter((p) => p.x > -0.2 * rim);
    out.push({
      lines: holeGroupLines(feature, holes, units),
      anchors: right.length > 0 ? right : edges,
      feature: feature.id,
    });
  }
  const turn = ((input.clocking % 360) + 360) % 360;
  if (turn >= 0.05 && turn <= 359.95 && Math.cos((scene.seen(turn / 2) * Math.PI) / 180) >= 0) {
    const anchors = [0.5, 0.35, 0.65, 0.2, 0.8].map((k) => polar(rim + 2 * size, scene.seen(turn * k)));
    out.push({ lines: [`${angleText(turn)} clocking`, 'driven holes against driving'], anchors });
  }
  if (input.mate !== null) {
    const r = input.mate / 2;
    const lines = [`${diameterText(input.mate, units)} flange`, `outside of the ${from} flange`];
    out.push({ lines, anchors: anchorsOnCircle({ x: 0, y: 0 }, r, 0, 80, 7) });
  }
  return out;
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
  const zero = scene.seen(0);
  const zeroAt = polar(rim + 3 * size, zero);
  const labels = drawCaptions(captionsFor(scene), {
    x: reach + 8 * size,
    side: 'right',
    yMin: -reach,
    yMax: reach,
    size,
    obstacles: [
      ...scene.drillings.filter((d) => !onAxis(d)).map((d) => ({ centre: { x: d.x, y: d.y }, r: widest(d) })),
      { centre: zeroAt, r: 2.6 * size },
    ],
  });
  const side = `seen from the ${input.from} side`;
  const caption: Shape[] = [
    {
      kind: 'text',
      at: { x: 0, y: -reach - 4.2 * size },
      text: side,
      size: 1.1 * size,
      align: 'middle',
      angle: 0,
      bold: true,
    },
  ];
  return frame(
    {
      id: `${input.id}-${input.from}-face`,
      title: `${input.adapter.name}, ${side}`,
      description: describe(input),
    },
    [
      ...mate,
      ...centreLines(scene),
      ...edges,
      ...clockingShapes(scene),
      ...zeroShapes(scene),
      ...labels,
      ...caption,
    ],
    size,
  );
}

function describe({ adapter, from, clocking, units }: FaceViewInput): string {
  const groups = adapter.features.flatMap((f) => {
    const holes = adapter.drillings.filter((d) => d.feature === f.id && !onAxis(d));
    return holes.length > 0 ? [holeGroupLines(f, holes, units).join(', ')] : [];
  });
  return `Face of the adapter ${from === 'driven' ? 'looking along the shaft against z' : 'looking along the shaft with z, so that angles run clockwise'}. ${groups.join('; ')}. Clocking ${angleText(clocking)}.`;
}
