/** Labels of the section: bodies, faces and screws in columns beside it, registers above and below it. */
import type { Point, Shape } from '../model/drawing.ts';
import { formatShopSize } from '../units/format.ts';
import { type Caption, shortLines } from './captions.ts';
import type { FlangeToDraw, JointToDraw, ScrewsToDraw } from './joint-to-draw.ts';
import { diameterText, type LabelUnits, lengthText, rangeText } from './length-text.ts';
import { featureText, isAtRim, registerOf } from './register-text.ts';
import { radiusAt, slopes } from './turned-profile.ts';

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
  /** How far the adapter and the wheel reach in the right half. */
  readonly rim: number;
  readonly wheelReach: number;
  /** Heights of the far sides of the flanges. */
  readonly drivingFar: number;
  readonly drivenFar: number;
}

function clearanceText({ least, most }: { least: number; most: number }, units: LabelUnits): string {
  if (least >= 0) return `clearance ${rangeText(least, most, units)}`;
  if (most <= 0) return `interference ${rangeText(0 - most, 0 - least, units)}`;
  const inches = units === 'in' ? ` [${(0 - least / 25.4).toFixed(4)} to ${(most / 25.4).toFixed(4)} in]` : '';
  return `from ${(0 - least).toFixed(3)} tight to ${most.toFixed(3)} loose${inches}`;
}

/** The size and fit of a register, led straight up or down out of the part so that no leader runs over a screw. */
export function registerNote(joint: JointToDraw, side: 'driving' | 'driven', beyond: number, size: number): Shape[] {
  const feature = registerOf(joint.adapter, side);
  if (feature?.diameter === undefined) return [];
  const out = side === 'driving' ? -1 : 1;
  const face = side === 'driving' ? 0 : joint.thickness;
  const sign = side === 'driving' ? 1 : -1;
  const x = (sign * feature.diameter) / 2;
  // A spigot and a ring round the rim stand out of the face; a recess and a step round the rim go back from it.
  const standsOut = (feature.purpose === 'spigot') !== isAtRim(joint.adapter, feature);
  const from = { x, y: face + out * (standsOut ? 1.5 : -1.5) };
  const to = { x, y: beyond };
  const zone = feature.limits && feature.limits.zone.length <= 8 ? ` ${feature.limits.zone}` : '';
  const clearance = joint.clearances[side];
  const lines = [
    `${diameterText(feature.diameter, joint.units)}${zone}, ${featureText(joint.adapter, feature)}`,
    ...(clearance ? [clearanceText(clearance, joint.units)] : []),
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

/** One screw of each set: screws that show in both halves are named once, in the half that is cut through their holes. */
const named = (shown: readonly ShownScrew[]): ShownScrew[] =>
  [...new Set(shown.map((s) => s.screws))].flatMap((screws) => {
    const own = shown.filter((s) => s.screws === screws);
    const side = screws.side === 'driven' ? -1 : 1;
    return own.find((s) => Math.sign(s.x) === side) ?? own[0] ?? [];
  });

function screwCaption({ screws, x }: ShownScrew): Caption {
  const { thread, length, count, head, headZ, points, nut, major, grip } = screws;
  const size = length === null ? `${count} x ${thread}` : `${count} x ${thread} x ${formatShopSize(thread, length)}`;
  const lines = [
    size,
    ...shortLines(screws.label, labelWidth),
    ...(length === null ? ['no standard length fits'] : []),
    ...(nut ? ['with nut'] : []),
  ];
  const below = head.kind === 'flat' ? 0.3 : -0.5 * head.height;
  const beside = (width: number, depth: number): Point => ({
    x: x + (Math.sign(x) * width) / 2,
    y: headZ + points * depth,
  });
  const anchors = [beside(head.diameter, below)];
  if (head.kind === 'socket' || head.kind === 'hex') anchors.push(beside(0.5 * head.diameter, -head.height));
  if (nut && Number.isFinite(grip)) anchors.push(beside(nut.acrossFlats, grip + nut.height / 2));
  else if (length !== null) anchors.push(beside(major, 0.9 * length));
  return { lines, anchors, feature: screws.id };
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

/** Points on the adapter's own rim, clear of the wheel's seat and of edges broken off. */
function rimAnchors(joint: JointToDraw, reach: number): Point[] {
  const stretches = slopes(joint.adapter.outer);
  const at = [0.15, 0.35, 0.5, 0.65, 0.85].map((k) => {
    const y = k * joint.thickness;
    return { x: Math.min(reach, radiusAt(stretches, y) ?? 0), y };
  });
  const widest = Math.max(...at.map((p) => p.x));
  return at.filter((p) => p.x > widest - 0.1);
}

/** Points on the part of the wheel that stands out of the joint. */
function wheelAnchors(z: number, thickness: number, reach: number): Point[] {
  const inward = reach - 1.5 * thickness;
  return [
    { x: reach, y: z + thickness / 2 },
    { x: inward, y: z + thickness },
    { x: inward, y: z },
  ];
}

/** Labels left of the section: what the left half shows, and the two faces. */
export function leftCaptions(joint: JointToDraw, room: CaptionRoom): Caption[] {
  const { thickness, units } = joint;
  return [
    ...named(room.shown)
      .filter((s) => s.x < 0)
      .map(screwCaption),
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
  const { units } = joint;
  return [
    ...named(room.shown)
      .filter((s) => s.x > 0)
      .map(screwCaption),
    {
      strong: shortLines(joint.adapter.name, labelWidth).length,
      lines: [...shortLines(joint.adapter.name, labelWidth), ...shortLines(joint.adapter.material.name, labelWidth)],
      anchors: rimAnchors(joint, room.rim),
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
            anchors: wheelAnchors(joint.wheel.z, joint.wheel.part.thickness, room.wheelReach),
            feature: joint.wheel.part.id,
          },
        ]
      : []),
  ];
}
