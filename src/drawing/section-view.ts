/**
 * A section through the whole joint. The axis stands upright, z upwards: the driving flange below, the driven flange on top. The
 * right half is cut through a hole of the driving pattern, the left half through a hole of the driven pattern.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import type { Contour } from '../model/sheet.ts';
import { type Caption, drawCaptions, shortLines } from './captions.ts';
import { uprightDimension } from './dimension.ts';
import { frame } from './frame.ts';
import type { FlangeToDraw, JointToDraw, ScrewsToDraw } from './joint-to-draw.ts';
import { angleText, diameterText, lengthText } from './length-text.ts';
import { type CutAngles, rayIntervals, roundSection } from './section-body.ts';
import { flangeInJoint } from './section-flange.ts';
import { screwSection } from './section-screw.ts';

/** Characters in a line of a label beside the section. */
const labelWidth = 22;

const turnOf = (p: Point): number => ((Math.atan2(p.y, p.x) * 180) / Math.PI + 360) % 360;

/** The hole of a pattern nearest to a direction: its angle, degrees. */
function nearestHole(holes: readonly Point[], wanted: number): number | null {
  const away = (a: number): number => Math.abs(((a - wanted + 540) % 360) - 180);
  const off = holes.filter((p) => Math.hypot(p.x, p.y) > 1e-6).map(turnOf);
  const sorted = off.sort((a, b) => away(a) - away(b) || a - b);
  return sorted[0] ?? null;
}

function cutAngles(joint: JointToDraw): CutAngles & { found: { right: boolean; left: boolean } } {
  const of = (side: 'driving' | 'driven'): Point[] => {
    const ids = joint.adapter.features.filter((f) => f.side === side).map((f) => f.id);
    return joint.adapter.drillings.filter((d) => ids.includes(d.feature) && Math.hypot(d.x, d.y) > 1e-6);
  };
  const right = nearestHole(of('driving'), 0);
  const left = nearestHole(of('driven'), 180);
  return { right: right ?? 0, left: left ?? 180, found: { right: right !== null, left: left !== null } };
}

/** Distance of a point from a half-plane's plane, and along it. */
function onPlane(p: Point, angle: number): { along: number; beside: number } {
  const a = (angle * Math.PI) / 180;
  return {
    along: p.x * Math.cos(a) + p.y * Math.sin(a),
    beside: Math.abs(-p.x * Math.sin(a) + p.y * Math.cos(a)),
  };
}

interface ShownScrew {
  readonly screws: ScrewsToDraw;
  readonly x: number;
}

function shownScrews(joint: JointToDraw, cut: CutAngles): ShownScrew[] {
  const halves = [
    { angle: cut.right, sign: 1 },
    { angle: cut.left, sign: -1 },
  ];
  return joint.screws.flatMap((screws) =>
    halves.flatMap(({ angle, sign }) =>
      screws.positions.flatMap((p) => {
        const { along, beside } = onPlane(p, angle);
        return along > 0 && beside < 0.15 * screws.major ? [{ screws, x: sign * along }] : [];
      }),
    ),
  );
}

function wheelShapes(joint: JointToDraw, cut: CutAngles): Shape[] {
  if (joint.wheel === null) return [];
  const { part, z } = joint.wheel;
  const contours: Contour[] = [part.outside, ...part.holes];
  const rect = (a: number, b: number) => [
    { x: a, y: z, bulge: 0 },
    { x: b, y: z, bulge: 0 },
    { x: b, y: z + part.thickness, bulge: 0 },
    { x: a, y: z + part.thickness, bulge: 0 },
  ];
  const loops = [
    ...rayIntervals(contours, cut.right).map(([a, b]) => rect(a, b)),
    ...rayIntervals(contours, cut.left).map(([a, b]) => rect(-b, -a)),
  ];
  return [{ kind: 'path', pen: 'cut', fill: 'wheel', closed: true, loops, feature: part.id }];
}

/** Thread lines of a tapped flange hole where the cut shows it. */
function threadLines(flange: FlangeToDraw, cut: CutAngles, face: number, up: 1 | -1, far: number): Shape[] {
  return flange.holes.flatMap((h) => {
    const { major } = h;
    if (major === null) return [];
    return [
      { angle: cut.right, sign: 1 },
      { angle: cut.left, sign: -1 },
    ].flatMap(({ angle, sign }) => {
      const { along, beside } = onPlane(h, angle);
      if (along <= 0 || beside > 0.15 * major) return [];
      const end = h.depth === null ? far : face + up * Math.min(h.depth, Math.abs(far - face));
      return [-1, 1].map(
        (k): Shape => ({
          kind: 'line',
          pen: 'thin',
          from: { x: sign * along + (k * major) / 2, y: face },
          to: { x: sign * along + (k * major) / 2, y: end },
        }),
      );
    });
  });
}

const clearanceText = (c: { least: number; most: number }): string =>
  c.least >= 0
    ? `clearance ${c.least.toFixed(3)} to ${c.most.toFixed(3)}`
    : c.most > 0
      ? `from ${(0 - c.least).toFixed(3)} tight to ${c.most.toFixed(3)} loose`
      : `interference ${(0 - c.most).toFixed(3)} to ${(0 - c.least).toFixed(3)}`;

/** The size and fit of a register, led straight up or down out of the part so that no leader runs over a screw. */
function registerNote(joint: JointToDraw, side: 'driving' | 'driven', beyond: number, size: number): Shape[] {
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
  const size =
    length === null ? `${count} x ${thread}` : `${count} x ${thread} x ${lengthText(length, 'mm', 0)}`;
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
  return {
    lines: [
      ...shortLines(flange.name, labelWidth),
      thickness === null ? 'thickness not known' : `${lengthText(thickness, joint.units)} thick`,
    ],
    anchors: at,
  };
}

/** Draws the joint in section. The description says which holes the two halves are cut through. */
export function sectionView(joint: JointToDraw, id: string): Drawing {
  const cut = cutAngles(joint);
  const driving = flangeInJoint(joint.driving, 'driving', joint.thickness);
  const driven = flangeInJoint(joint.driven, 'driven', joint.thickness);
  const rim = Math.max(...joint.adapter.outer.map((p) => p.r));
  const wheelReach = joint.wheel
    ? Math.max(
        ...[cut.right, cut.left].flatMap((a) =>
          rayIntervals([joint.wheel?.part.outside as Contour], a).flat(),
        ),
      )
    : 0;
  const reach = Math.max(rim, joint.driving.outside / 2, joint.driven.outside / 2, wheelReach);
  const size = Math.max(1, reach / 16);
  const { thickness, units } = joint;

  const bodies: Shape[] = [
    ...roundSection(driving.body, cut, {
      fill: 'driving',
      pen: 'thin',
      feature: 'driving-flange',
      brokenAt: driving.brokenAt,
    }),
    ...roundSection(driven.body, cut, {
      fill: 'driven',
      pen: 'thin',
      feature: 'driven-flange',
      brokenAt: driven.brokenAt,
    }),
    ...threadLines(joint.driving, cut, 0, -1, driving.far),
    ...threadLines(joint.driven, cut, thickness, 1, driven.far),
    ...wheelShapes(joint, cut),
    ...roundSection(joint.adapter, cut, {
      fill: 'adapter',
      pen: 'cut',
      feature: joint.adapter.id,
      brokenAt: null,
    }),
  ];
  const shown = shownScrews(joint, cut);
  const top = Math.max(
    driven.far,
    ...shown.map((s) => Math.max(s.screws.headZ, s.screws.headZ - s.screws.points * s.screws.head.height)),
  );
  const bottom = Math.min(
    driving.far,
    ...shown.map((s) => Math.min(s.screws.headZ, s.screws.headZ - s.screws.points * s.screws.head.height)),
  );
  const axis: Shape = {
    kind: 'line',
    pen: 'centre',
    from: { x: 0, y: bottom - 2 * size },
    to: { x: 0, y: top + 2 * size },
  };

  const dimensionX = -(reach + 3.2 * size);
  const thick = uprightDimension(
    { low: 0, high: thickness },
    dimensionX,
    -rim,
    lengthText(thickness, 'mm'),
    size,
  );
  const faceEnd = dimensionX - 0.8 * size;

  const leftCaptions: Caption[] = [
    ...shown.filter((s) => s.x < 0).map((s) => screwCaption(s)),
    flangeCaption(
      joint.driven,
      joint,
      [0.25, 0.5, 0.75].map((k) => ({
        x: -joint.driven.outside / 2,
        y: thickness + k * (driven.far - thickness),
      })),
    ),
    {
      lines: [`z = ${lengthText(thickness, units)}`, 'driven face'],
      anchors: [{ x: faceEnd, y: thickness }],
    },
    { lines: ['z = 0', 'driving face'], anchors: [{ x: faceEnd, y: 0 }] },
  ];
  const rightCaptions: Caption[] = [
    ...shown.filter((s) => s.x > 0).map((s) => screwCaption(s)),
    {
      lines: [...shortLines(joint.adapter.name, labelWidth), joint.adapter.material.name],
      anchors: [0.15, 0.35, 0.5, 0.65, 0.85].map((k) => ({ x: rim, y: k * thickness })),
      feature: joint.adapter.id,
    },
    flangeCaption(
      joint.driving,
      joint,
      [0.25, 0.5, 0.75].map((k) => ({ x: joint.driving.outside / 2, y: k * driving.far })),
    ),
    ...(joint.wheel
      ? [
          {
            lines: [
              ...shortLines(joint.wheel.part.name, labelWidth),
              `${lengthText(joint.wheel.part.thickness, units)} thick`,
            ],
            anchors: [{ x: wheelReach, y: joint.wheel.z + joint.wheel.part.thickness / 2 }],
            feature: joint.wheel.part.id,
          },
        ]
      : []),
  ];
  const column = { yMin: bottom - size, yMax: top + size, size, obstacles: [] };
  const columns = [
    ...drawCaptions(leftCaptions, { ...column, x: faceEnd - 4 * size, side: 'left' }),
    ...drawCaptions(rightCaptions, { ...column, x: reach + 5 * size, side: 'right' }),
    ...registerNote(joint, 'driven', top + 3.4 * size, size),
    ...registerNote(joint, 'driving', bottom - 3.4 * size, size),
  ];

  const said = `left half: cut ${cut.found.left ? 'through a driven hole' : 'at'} at ${angleText(cut.left)}; right half: cut ${cut.found.right ? 'through a driving hole' : 'at'} at ${angleText(cut.right)}`;
  const labels = columns.filter((s) => s.kind === 'text').map((s) => s.at.y);
  const under = Math.min(bottom, ...labels) - 4 * size;
  const note: Shape = {
    kind: 'text',
    at: { x: 0, y: under },
    text: said,
    size: 0.9 * size,
    align: 'middle',
    angle: 0,
  };
  const screws = shown.flatMap(({ screws, x }) => screwSection(screws, x));
  return frame(
    {
      id: `${id}-section`,
      title: `${joint.title}, section through the joint`,
      description: `Section along the shaft, ${said}. The driving flange lies below z = 0, the driven flange above z = ${lengthText(thickness, units)}. Screws are drawn whole.`,
    },
    [...bodies, ...screws, axis, ...thick, ...columns, note],
    size,
  );
}
