/** Labels of the section: bodies, faces and screws in columns beside it, registers above and below it. */
import type { Point, Shape } from '../model/drawing.ts';
import { type Caption, shortLines } from './captions.ts';
import type { FlangeToDraw, JointToDraw, ScrewsToDraw } from './joint-to-draw.ts';
import { diameterText, lengthText, screwLengthText } from './length-text.ts';

/** Characters in a line of a label beside the section. */
const labelWidth = 22;

/** A screw that the cut shows, at its place across the picture. */
export interface ShownScrew {
  readonly screws: ScrewsToDraw;
  readonly x: number;
}

/** Where labels find the things that they name, mm. */
export interface CaptionRoom {
  readonly shown: readonly ShownScrew[];
  /** Where the lines that mark the two faces end on the left. */
  readonly faceEnd: number;
  readonly rim: number;
  readonly wheelReach: number;
  /** Heights of the far sides of the flanges. */
  readonly drivingFar: number;
  readonly drivenFar: number;
}

const clearanceText = (c: { least: number; most: number }): string =>
  c.least >= 0
    ? `clearance ${c.least.toFixed(3)} to ${c.most.toFixed(3)}`
    : c.most > 0
      ? `from ${(0 - c.least).toFixed(3)} tight to ${c.most.toFixed(3)} loose`
      : `interference ${(0 - c.most).toFixed(3)} to ${(0 - c.least).toFixed(3)}`;

/** The size and fit of a register, led straight up or down out of the part so that no leader runs over a screw. */
export function registerNote(joint: JointToDraw, side: 'driving' | 'driven', beyond: number, size: number): Shape[] {
  const feature = joint.adapter.features.find(
    (f) => f.side === side && (f.purpose === 'spigot' || f.purpose === 'recess'),
  );
  if (feature?.diameter === undefined) return [];
  const out = side === 'driving' ? -1 : 1;
  const face = side === 'driving' ? 0 : joint.thickness;
  const sign = side === 'driving' ? 1 : -1;
  const x = (sign * feature.diameter) / 2;
  const from = { x, y: face + out * (feature.purpose === 'spigot' ? 1.5 : -1.5) };
  const to = { x, y: beyond };
  const zone = feature.limits && feature.limits.zone.length <= 8 ? ` ${feature.limits.zone}` : '';
  const clearance = joint.clearances[side];
  const lines = [
    `${diameterText(feature.diameter, joint.units)}${zone}, ${feature.label}`,
    ...(clearance ? [clearanceText(clearance)] : []),
  ];
  const lowest = side === 'driving' ? beyond - 0.9 * size - (lines.length - 1) * 1.6 * size : beyond;
  return [
    { kind: 'line', pen: 'dimension', from, to, feature: feature.id },
    { kind: 'circle', pen: 'dimension', fill: 'paper', centre: from, r: 0.22 * size, feature: feature.id },
    ...lines.toReversed().map(
      (text, i, all): Shape => ({
        kind: 'text',
        at: { x: x - sign * 0.8 * size, y: lowest + i * 1.6 * size },
        text,
        size: i === all.length - 1 ? size : 0.86 * size,
        align: sign > 0 ? 'end' : 'start',
        angle: 0,
        bold: i === all.length - 1,
        feature: feature.id,
      }),
    ),
  ];
}

function screwCaption({ screws, x }: ShownScrew): Caption {
  const { thread, length, count, head, headZ, points, nut } = screws;
  const size = length === null ? `${count} x ${thread}` : `${count} x ${thread} x ${screwLengthText(thread, length)}`;
  const lines = [
    size,
    ...shortLines(screws.label, labelWidth),
    ...(length === null ? ['no standard length fits'] : []),
    ...(nut ? ['with nut'] : []),
  ];
  const below = head.kind === 'flat' ? 0.3 : -0.5 * head.height;
  return {
    lines,
    anchors: [{ x: x + (Math.sign(x) * head.diameter) / 2, y: headZ + points * below }],
    feature: screws.id,
  };
}

function flangeCaption(flange: FlangeToDraw, joint: JointToDraw, at: Point[]): Caption {
  const { thickness } = flange;
  const name = shortLines(flange.name, labelWidth);
  return {
    strong: name.length,
    lines: [...name, thickness === null ? 'thickness not known' : `${lengthText(thickness, joint.units)} thick`],
    anchors: at,
  };
}

/** Points on a flange's rim, and on its far side near the rim, on one side of the axis. */
function flangeAnchors(outside: number, face: number, far: number, sign: 1 | -1): Point[] {
  const x = (sign * outside) / 2;
  const rim = [0.5, 0.25, 0.75].map((k) => ({ x, y: face + k * (far - face) }));
  return [...rim, { x: x - sign * 0.02 * outside, y: far }, { x: x - sign * 0.3 * outside, y: far }];
}

/** Labels left of the section: what the left half shows, and the two faces. */
export function leftCaptions(joint: JointToDraw, room: CaptionRoom): Caption[] {
  const { thickness, units } = joint;
  return [
    ...room.shown.filter((s) => s.x < 0).map((s) => screwCaption(s)),
    flangeCaption(joint.driven, joint, flangeAnchors(joint.driven.outside, thickness, room.drivenFar, -1)),
    {
      lines: [`z = ${lengthText(thickness, units)}`, 'driven face'],
      anchors: [{ x: room.faceEnd, y: thickness }],
    },
    { lines: ['z = 0', 'driving face'], anchors: [{ x: room.faceEnd, y: 0 }] },
  ];
}

/** Labels right of the section: what the right half shows, the adapter and the wheel. */
export function rightCaptions(joint: JointToDraw, room: CaptionRoom): Caption[] {
  const { thickness, units } = joint;
  return [
    ...room.shown.filter((s) => s.x > 0).map((s) => screwCaption(s)),
    {
      strong: shortLines(joint.adapter.name, labelWidth).length,
      lines: [...shortLines(joint.adapter.name, labelWidth), ...shortLines(joint.adapter.material.name, labelWidth)],
      anchors: [0.15, 0.35, 0.5, 0.65, 0.85].map((k) => ({ x: room.rim, y: k * thickness })),
      feature: joint.adapter.id,
    },
    flangeCaption(joint.driving, joint, flangeAnchors(joint.driving.outside, 0, room.drivingFar, 1)),
    ...(joint.wheel
      ? [
          {
            strong: shortLines(joint.wheel.part.name, labelWidth).length,
            lines: [
              ...shortLines(joint.wheel.part.name, labelWidth),
              `${lengthText(joint.wheel.part.thickness, units)} thick`,
            ],
            anchors: [{ x: room.wheelReach, y: joint.wheel.z + joint.wheel.part.thickness / 2 }],
            feature: joint.wheel.part.id,
          },
        ]
      : []),
  ];
}
