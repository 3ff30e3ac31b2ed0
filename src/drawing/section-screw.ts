/** A screw in section: drawn whole, as fasteners are. mm; x across, y along the shaft. */
import type { Shape } from '../model/drawing.ts';
import type { ScrewsToDraw } from './joint-to-draw.ts';

type Corner = readonly [number, number];

function body(corners: readonly Corner[], feature: string): Shape {
  return {
    kind: 'path',
    pen: 'thin',
    fill: 'screw',
    closed: true,
    loops: [corners.map(([x, y]) => ({ x, y, bulge: 0 }))],
    feature,
  };
}

/** Core diameter of an ISO metric external thread, close enough for a picture: d - 1.23 p (ISO 724, ISO 68-1). */
const coreOf = (screws: ScrewsToDraw): number => screws.major - 1.23 * screws.pitch;

/** Height of a flat head of the given diameters with a 90 degree cone. */
const coneHeight = (screws: ScrewsToDraw): number => Math.max(0.5, (screws.head.diameter - screws.major) / 2);

function headCorners(screws: ScrewsToDraw, x: number): Corner[] {
  const { headZ, points, head, major } = screws;
  const r = head.diameter / 2;
  const top = headZ - points * head.height;
  if (head.kind === 'flat')
    return [
      [x - r, headZ],
      [x + r, headZ],
      [x + major / 2, headZ + points * coneHeight(screws)],
      [x - major / 2, headZ + points * coneHeight(screws)],
    ];
  const bevel = head.kind === 'button' ? 0.55 * head.height : 0.12 * head.height;
  const inset = head.kind === 'button' ? 0.3 * r : 0.08 * r;
  return [
    [x - r, headZ],
    [x + r, headZ],
    [x + r, top + points * bevel],
    [x + r - inset, top],
    [x - r + inset, top],
    [x - r, top + points * bevel],
  ];
}

/** One screw of a set with its axis at `x`, with washer and nut. A screw of unknown length is drawn a diameter past its grip. */
export function screwSection(screws: ScrewsToDraw, x: number): Shape[] {
  const { id, headZ, points, head, major, washer, nut, grip } = screws;
  const length = screws.length ?? (Number.isFinite(grip) ? grip : 2 * major) + major + (nut?.height ?? 0);
  const at = (below: number): number => headZ + points * below;
  const from = head.kind === 'flat' ? coneHeight(screws) : 0;
  const end = Math.max(length, from + 1);
  const tip = Math.min(0.6 * screws.pitch, (end - from) / 3);
  const half = major / 2;
  const core = coreOf(screws) / 2;
  const threadFrom = Math.max(from, Math.min(end - 2 * major - 6, Math.max(from, grip - major)));
  const shapes: Shape[] = [
    body(
      [
        [x - half, at(from)],
        [x + half, at(from)],
        [x + half, at(end - tip)],
        [x + core, at(end)],
        [x - core, at(end)],
        [x - half, at(end - tip)],
      ],
      id,
    ),
    ...[-core, core].map(
      (dx): Shape => ({
        kind: 'line',
        pen: 'thin',
        from: { x: x + dx, y: at(threadFrom) },
        to: { x: x + dx, y: at(end) },
        feature: id,
      }),
    ),
    {
      kind: 'line',
      pen: 'thin',
      from: { x: x - half, y: at(threadFrom) },
      to: { x: x + half, y: at(threadFrom) },
      feature: id,
    },
    body(headCorners(screws, x), id),
  ];
  if (head.kind === 'socket' || head.kind === 'button') {
    // The key's socket is hidden in a side view: about half the head's depth and half its width across.
    const top = headZ - points * head.height;
    const floor = top + points * 0.5 * head.height;
    const key = 0.28 * head.diameter;
    shapes.push({
      kind: 'path',
      pen: 'hidden',
      fill: 'none',
      closed: false,
      loops: [
        [[x - key, top] as const, [x - key, floor] as const, [x + key, floor] as const, [x + key, top] as const].map(
          ([px, py]) => ({ x: px, y: py, bulge: 0 }),
        ),
      ],
      feature: id,
    });
  }
  if (washer) {
    const w = washer.outside / 2;
    const corners = (z: number): Corner[] => [
      [x - w, z],
      [x + w, z],
      [x + w, z + points * washer.thickness],
      [x - w, z + points * washer.thickness],
    ];
    shapes.push(body(corners(headZ), id));
    if (nut) shapes.push(body(corners(at(grip) - points * washer.thickness), id));
  }
  if (nut) {
    const w = nut.acrossFlats / 2;
    shapes.push(
      body(
        [
          [x - w, at(grip)],
          [x + w, at(grip)],
          [x + w, at(grip + nut.height)],
          [x - w, at(grip + nut.height)],
        ],
        id,
      ),
    );
  }
  const over = 0.35 * major;
  shapes.push({
    kind: 'line',
    pen: 'centre',
    from: { x, y: headZ - points * (head.kind === 'flat' ? over : head.height + over) },
    to: { x, y: at(Math.max(end, nut ? grip + nut.height : 0) + over) },
  });
  return shapes;
}
