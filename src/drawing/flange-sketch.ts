/** A flange as far as it is known, looking at its own face: what a half-typed job shows. mm. */
import type { Drawing, Pen, Point, Shape } from '../model/drawing.ts';
import { cos, sin } from '../units/trig.ts';
import { anchorsOnCircle, type Caption, drawCaptions, wordsUnder } from './captions.ts';
import { centreCross } from './dimension.ts';
import { frame } from './frame.ts';
import { diameterText, type LabelUnits, sizesText } from './length-text.ts';

export interface FlangeSketchInput {
  readonly id: string;
  /** What it is called under the sketch. */
  readonly name: string;
  readonly units: LabelUnits;
  /** Diameters; null: not known yet. */
  readonly outside: number | null;
  readonly register: { readonly diameter: number; readonly gender: 'male' | 'female' | null } | null;
  readonly bore: number | null;
  readonly circle: number | null;
  readonly holes: readonly Point[];
  /** Diameter of each hole and its word, "M8" or "clear"; null: not known yet. */
  readonly hole: { readonly diameter: number; readonly words: string } | null;
}

/** A hole of unknown size is marked so large, as a share of the sketch's radius. */
const markShare = 0.03;

/** Holes that all stand on the axis are drawn in a sketch of this radius, mm. */
const leastReach = 5;

const registerWords = { male: 'spigot', female: 'recess' } as const;

function holesCaption({ holes, hole, circle, units }: FlangeSketchInput): string[] {
  const size = hole === null ? 'size not typed yet' : `${hole.words}, ${diameterText(hole.diameter, units)}`;
  return [
    holes.length === 0 ? 'how many holes?' : `${holes.length} holes`,
    ...(circle === null ? [] : [`on ${diameterText(circle, units)}`]),
    ...(holes.length === 0 ? [] : [size]),
  ];
}

/**
 * Draws what is known: outlines full, what only is a place dashed. A sketch without any size is empty.
 * @param input at least one of outside, register, circle or holes known
 */
export function flangeSketch(input: FlangeSketchInput): Drawing {
  const { outside, register, bore, circle, holes, hole, units } = input;
  const radii = [outside, register?.diameter ?? null, circle].map((d) => (d ?? 0) / 2);
  const reach = Math.max(leastReach, ...radii, ...holes.map(({ x, y }) => Math.hypot(x, y)));
  const size = reach / 19;
  const round = (r: number, pen: Pen, feature: string, centre: Point = { x: 0, y: 0 }): Shape => ({
    kind: 'circle',
    pen,
    fill: 'none',
    centre,
    r,
    feature,
  });
  const hr = hole === null ? markShare * reach : hole.diameter / 2;
  const shapes: Shape[] = [
    ...centreCross({ x: 0, y: 0 }, reach + 1.2 * size),
    ...(outside === null ? [] : [round(outside / 2, 'outline', 'outside')]),
    ...(register === null ? [] : [round(register.diameter / 2, 'outline', 'register')]),
    ...(bore === null ? [] : [round(bore / 2, 'outline', 'bore')]),
    ...(circle === null ? [] : [round(circle / 2, 'centre', 'holes')]),
    ...holes.flatMap((at) => [
      round(hr, hole === null ? 'hidden' : 'outline', 'holes', at),
      ...centreCross(at, Math.max(hr, markShare * reach) + 0.5 * size),
    ]),
  ];
  // A leader ends on the right half of what it names.
  const onRound = (diameter: number, towards: number): Point[] =>
    anchorsOnCircle({ x: 0, y: 0 }, diameter / 2, towards, 60, 6);
  const captions: Caption[] = [
    ...(outside === null ? [] : [{ lines: [diameterText(outside, units), 'outside'], anchors: onRound(outside, 50) }]),
    ...(holes.length > 0 || circle !== null
      ? [
          {
            lines: holesCaption(input),
            anchors:
              holes.length > 0
                ? holes.map(({ x, y }) => ({ x: x + hr * cos(Math.PI / 4), y: y + hr * sin(Math.PI / 4) }))
                : onRound(circle ?? 0, 0),
          },
        ]
      : []),
    ...(register === null
      ? []
      : [
          {
            lines: [
              diameterText(register.diameter, units),
              register.gender === null ? 'register: spigot or recess?' : `register, ${registerWords[register.gender]}`,
            ],
            anchors: onRound(register.diameter, -20),
          },
        ]),
    ...(bore === null ? [] : [{ lines: [diameterText(bore, units), 'bore'], anchors: onRound(bore, -40) }]),
  ];
  const labels = drawCaptions(captions, {
    x: reach + 7 * size,
    side: 'right',
    yMin: -reach,
    yMax: reach,
    size,
    obstacles: holes.map((centre) => ({ centre, r: hr })),
  });
  const words = [`${input.name}, as typed so far`, 'looking at its own face', sizesText(units)];
  const under = wordsUnder(words, -reach, size, 4);
  const description = `${words[0]}: ${captions.map(({ lines }) => lines.join(' ')).join('; ')}.`;
  return frame({ id: input.id, title: words[0] ?? '', description }, [...shapes, ...labels, ...under], 2 * size);
}
