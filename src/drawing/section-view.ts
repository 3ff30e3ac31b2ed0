/**
 * A section through the whole joint. The axis stands upright, z upwards: the driving flange below, the driven flange on top. The
 * right half is cut through a hole of the driving pattern, the left half through a hole of the driven pattern.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import type { Contour } from '../model/sheet.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import { columnHeight, drawCaptions, obstaclesOver } from './captions.ts';
import { dimensionWidth, uprightDimension } from './dimension.ts';
import { frame, shapeBox } from './frame.ts';
import type { FlangeToDraw, JointToDraw, ScrewsToDraw } from './joint-to-draw.ts';
import { angleText, lengthText, sizesText } from './length-text.ts';
import { boltsAreShared } from './register-text.ts';
import { type CutAngles, rayIntervals, reachOfFlats, roundSection } from './section-body.ts';
import { type CaptionRoom, leftCaptions, registerNote, rightCaptions, type ShownScrew } from './section-captions.ts';
import { flangeInJoint } from './section-flange.ts';
import { screwSection } from './section-screw.ts';
import { type Box, grown, overlap, passesThrough, textBox } from './text-size.ts';

const turnOf = (p: Point): number => ((atan2(p.y, p.x) * 180) / Math.PI + 360) % 360;

/** The hole of a pattern nearest to a direction: its angle, degrees. */
function nearestHole(holes: readonly Point[], wanted: number): number | null {
  const away = (a: number): number => Math.abs(((a - wanted + 540) % 360) - 180);
  const off = holes.filter((p) => Math.hypot(p.x, p.y) > 1e-6).map(turnOf);
  const sorted = off.sort((a, b) => away(a) - away(b) || a - b);
  return sorted[0] ?? null;
}

interface Cut extends CutAngles {
  /** What each half is cut through: "through a driven hole at 150.00 degrees". */
  readonly said: { readonly right: string; readonly left: string };
}

/** Each half goes through its own pattern's hole; where a pattern has none of its own (bolts through both), through the other's. */
function cutAngles(joint: JointToDraw): Cut {
  const of = (side: 'driving' | 'driven'): Point[] => {
    const ids = joint.adapter.features.filter((f) => f.side === side).map((f) => f.id);
    return joint.adapter.drillings.filter((d) => ids.includes(d.feature) && Math.hypot(d.x, d.y) > 1e-6);
  };
  const half = (side: 'driving' | 'driven', other: 'driving' | 'driven', wanted: number) => {
    const own = nearestHole(of(side), wanted);
    const angle = own ?? nearestHole(of(other), wanted) ?? wanted;
    const shared = boltsAreShared(joint.adapter) ? 'through a bolt hole ' : `through a ${side} hole `;
    const what = own === null && of(other).length === 0 ? '' : shared;
    return { angle, said: `${what}at ${angleText(angle)}` };
  };
  const right = half('driving', 'driven', 0);
  const left = half('driven', 'driving', 180);
  return { right: right.angle, left: left.angle, said: { right: right.said, left: left.said } };
}

/** Distance of a point from a half-plane's plane, and along it. */
function onPlane(p: Point, angle: number): { along: number; beside: number } {
  const a = (angle * Math.PI) / 180;
  return {
    along: p.x * cos(a) + p.y * sin(a),
    beside: Math.abs(-p.x * sin(a) + p.y * cos(a)),
  };
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

/** A register's note above or below the joint, moved further out until it stands clear of the other labels and their leaders. */
function clearNote(
  joint: JointToDraw,
  side: 'driving' | 'driven',
  room: { top: number; bottom: number; size: number },
  others: readonly Shape[],
): Shape[] {
  const taken = others.flatMap((s) => (s.kind === 'text' ? [textBox(s)] : []));
  const lines = others.flatMap((s) => (s.kind === 'line' ? [s] : []));
  for (let out = 3.4; ; out += 1) {
    const note = registerNote(
      joint,
      side,
      side === 'driven' ? room.top + out * room.size : room.bottom - out * room.size,
      room.size,
    );
    const boxes = note.flatMap((s) => (s.kind === 'text' ? [grown(textBox(s), 0.7 * room.size)] : []));
    const clear = (box: Box): boolean =>
      !taken.some((b) => overlap(box, b)) && !lines.some(({ from, to }) => passesThrough(from, to, box));
    if (out > 40 || boxes.every(clear)) return note;
  }
}

/** A bolt through a flange of unknown thickness: where its nut goes is not known either, so it runs to the broken edge. */
function brokenOff(screws: ScrewsToDraw, joint: JointToDraw, far: number): ScrewsToDraw {
  const known = screws.side === 'wheel' || joint[screws.side].thickness !== null;
  if (screws.nut === null || (known && Number.isFinite(screws.grip))) return screws;
  return { ...screws, nut: null, length: Math.abs(far - screws.headZ), grip: 0.6 * Math.abs(far - screws.headZ) };
}

/** Draws the joint in section. The description says which holes the two halves are cut through. */
export function sectionView(joint: JointToDraw, id: string): Drawing {
  const cut = cutAngles(joint);
  const driving = flangeInJoint(joint.driving, 'driving', joint.thickness);
  const driven = flangeInJoint(joint.driven, 'driven', joint.thickness);
  const rim = Math.max(...joint.adapter.outer.map((p) => p.r));
  const wheelReach = (angle: number): number =>
    joint.wheel ? Math.max(0, ...rayIntervals([joint.wheel.part.outside], angle).flat()) : 0;
  const reach = Math.max(
    rim,
    joint.driving.outside / 2,
    joint.driven.outside / 2,
    wheelReach(cut.right),
    wheelReach(cut.left),
  );
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
  const screws = shown.flatMap(({ screws: g, x }) =>
    screwSection(brokenOff(g, joint, g.points < 0 ? driving.far : driven.far), x),
  );
  const screwBoxes = screws.map(shapeBox);
  const top = Math.max(driven.far, ...screwBoxes.map((b) => b.yMax));
  const bottom = Math.min(driving.far, ...screwBoxes.map((b) => b.yMin));
  const axis: Shape = {
    kind: 'line',
    pen: 'centre',
    from: { x: 0, y: bottom - 2 * size },
    to: { x: 0, y: top + 2 * size },
  };

  const thickText = lengthText(thickness, 'mm');
  const dimensionX = -(reach + dimensionWidth(thickness, thickText, size));
  const thick = uprightDimension({ low: 0, high: thickness }, dimensionX, -rim, thickText, size);
  const faceEnd = dimensionX - 0.8 * size;

  const room: CaptionRoom = {
    shown,
    faceEnd,
    rim: Math.min(rim, reachOfFlats(joint.adapter.flats, cut.right)),
    wheelReach: wheelReach(cut.right),
    drivingFar: driving.far,
    drivenFar: driven.far,
  };
  const column = { yMin: bottom - size, yMax: top + size, size, obstacles: [] };
  // Leaders go round the dimension, and round screws that are not their own.
  const dimensionRoom = thick.flatMap((s) => (s.kind === 'text' ? obstaclesOver(textBox(s)) : []));
  const screwsOf = (sign: 1 | -1) =>
    screws.flatMap((s) => {
      if (s.kind !== 'path' || s.fill !== 'screw') return [];
      const box = shapeBox(s);
      return Math.sign(box.xMin) === sign ? obstaclesOver(grown(box, -0.04 * (box.xMax - box.xMin))) : [];
    });
  // What lies above the driven face is labelled above it, so that no leader runs through the dimension.
  const left = leftCaptions(joint, room);
  const above = left.filter((c) => (c.anchors[0]?.y ?? 0) > thickness + 1e-6);
  const rest = left.filter((c) => !above.includes(c));
  const onLeft = {
    ...column,
    x: faceEnd - 4 * size,
    side: 'left',
    obstacles: [...dimensionRoom, ...screwsOf(-1)],
  } as const;
  const floor = thickness + 0.8 * size;
  const columns: Shape[] = [
    ...drawCaptions(above, { ...onLeft, yMin: floor, yMax: Math.max(top + size, floor + columnHeight(above, size)) }),
    ...drawCaptions(rest, { ...onLeft, yMin: Math.min(bottom - size, floor - columnHeight(rest, size)), yMax: floor }),
    ...drawCaptions(rightCaptions(joint, room), {
      ...column,
      x: reach + 5 * size,
      side: 'right',
      obstacles: screwsOf(1),
    }),
  ];
  for (const side of ['driven', 'driving'] as const)
    columns.push(...clearNote(joint, side, { top, bottom, size }, columns));

  const said = `left half: cut ${cut.said.left}; right half: cut ${cut.said.right}`;
  const labels = columns.filter((s) => s.kind === 'text').map((s) => s.at.y);
  const under = Math.min(bottom, ...labels) - 4 * size;
  const note: Shape = {
    kind: 'text',
    at: { x: 0, y: under },
    text: `${said}; ${sizesText(units)}`,
    size: 0.9 * size,
    align: 'middle',
    angle: 0,
  };
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
