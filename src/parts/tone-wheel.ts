/**
 * Tone wheel: a disc cut from sheet, which a speed sensor reads by the open teeth on its rim or by the windows
 * in it. Pure: measures in, part model out.
 *
 * Datum: axis at the origin, sheet between z = 0 and z = thickness. Tooth number 1 is centred at
 * `toothAngle`; the numbers run counter-clockwise, and missing positions, a wide or an extra tooth are the last ones, so
 * that tooth 1 follows them. With windows the bars between them are the teeth: a missing one joins the windows on both
 * sides of it, and the rim outside of them stays closed. Source of the shapes: plane geometry (see `toothShape`,
 * `windowShape`); trade term "60-2": common practice.
 */
import type { Feature } from '../model/part.ts';
import type { Contour, ContourVertex, SheetPart } from '../model/sheet.ts';
import { cos, sin, tan } from '../units/trig.ts';
import { toneWheelFaults } from './tone-wheel-faults.ts';
import { hasWindows, type PolarPoint, pitchAngle, type ToneWheelSpec, toothShape } from './tone-wheel-tooth.ts';
import { windowContours } from './tone-wheel-window.ts';
import { toothRow, valleySpans } from './tooth-row.ts';

export { toneWheelFaults } from './tone-wheel-faults.ts';
export {
  largestRootRadius,
  largestTipBreak,
  type ToothMeasures,
  toothMeasures,
} from './tone-wheel-measures.ts';
export {
  axialRadius,
  hasWindows,
  type PolarPoint,
  pitchAngle,
  type ToneWheelSpec,
  type ToothBand,
  type ToothShape,
  toothHeight,
  toothShape,
  toothTop,
  widthRadius,
} from './tone-wheel-tooth.ts';
export { largestCorner, type WindowShape, windowShape, windowsBeside } from './tone-wheel-window.ts';
export {
  closestPlaces,
  leastSpan,
  markOf,
  type PositionMark,
  pulseAt,
  pulseCount,
  type ToothPlaces,
  type ToothRun,
  toothRow,
  valleySpans,
} from './tooth-row.ts';

/** Stretches shorter than this, mm, are left out; the corners on both sides become one. */
const NOTHING = 1e-6;

/** What carries the pulses: the toothed outline; or the rim and all windows in it, after the other holes. */
const OUTLINE = 'wheel-outline';

/**
 * The wheel as a sheet part. Features: `wheel-outline`, `wheel-bore`, and `wheel-screw-1` onwards.
 * @throws a plain Error naming the faults; ask `toneWheelFaults` first
 */
export function buildToneWheel(spec: ToneWheelSpec): SheetPart {
  const faults = toneWheelFaults(spec);
  if (faults.length > 0) throw new Error(`Tone wheel ${spec.id}: ${faults.join(' ')}`);
  const isOpen = !hasWindows(spec);
  const label = isOpen ? 'toothed outline' : 'rim with windows';
  const features: Feature[] = [
    { id: OUTLINE, purpose: 'body', label, side: 'wheel', diameter: spec.outside },
    { id: 'wheel-bore', purpose: 'bore', label: 'wheel bore', side: 'wheel', diameter: spec.bore },
  ];
  const hole = (feature: string, x: number, y: number, diameter: number): Contour => {
    return { kind: 'circle', feature, x, y, r: (diameter - spec.kerf) / 2 };
  };
  const holes = [hole('wheel-bore', 0, 0, spec.bore)];
  spec.screwHoles?.positions.forEach(({ x, y }, i) => {
    const { diameter } = spec.screwHoles ?? { diameter: 0 };
    const id = `wheel-screw-${i + 1}`;
    features.push({
      id,
      purpose: 'wheel screw hole',
      label: `wheel screw hole ${i + 1}`,
      side: 'wheel',
      diameter,
    });
    holes.push(hole(id, x, y, diameter));
  });
  return {
    kind: 'sheet',
    id: spec.id,
    name: spec.name,
    material: spec.material,
    thickness: spec.thickness,
    outside: isOpen
      ? { kind: 'path', feature: OUTLINE, vertices: outline(spec) }
      : { kind: 'circle', feature: OUTLINE, x: 0, y: 0, r: (spec.outside + spec.kerf) / 2 },
    holes: isOpen ? holes : [...holes, ...windowContours(spec, OUTLINE)],
    features,
    engravings: [],
  };
}

/**
 * The outline, counter-clockwise, at most 8 corners a tooth. Each tooth runs from the end of the valley
 * before it: root round, flank, tip break, tip arc, tip break, flank, root round, root arc to the next tooth.
 * A stretch that is not there is left out with its starting corner. Where two root rounds meet without a
 * land, they are one arc.
 */
function outline(spec: ToneWheelSpec): ContourVertex[] {
  const shape = toothShape(spec, spec.kerf);
  const pitch = pitchAngle(spec);
  const row = toothRow(spec);
  const spans = valleySpans(spec);
  const first = (spec.toothAngle * Math.PI) / 180;
  const hasRound = shape.rootRadius > 0;
  const hasBreak = shape.tipBreak > 0;
  const hasFlank = shape.flankLength > NOTHING;
  const hasLand = (valley: number) => (valley - 2 * shape.rootStart) * shape.rootR > NOTHING;
  const round = -tan(shape.rootRadiusSweep / 4);
  const fullRound = -tan(shape.rootRadiusSweep / 2);
  const tipBreak = tan(shape.tipBreakSweep / 4);

  const vertices: ContourVertex[] = [];
  row.forEach(({ from, to }, i) => {
    const push = (at: PolarPoint, side: 1 | -1, bulge: number): void => {
      const angle = first + (side > 0 ? to : from) * pitch + side * at.angle;
      vertices.push({ x: at.r * cos(angle), y: at.r * sin(angle), bulge });
    };
    const valleyAfter = (spans[i] ?? 1) * pitch;
    const landBefore = hasLand((spans.at(i - 1) ?? 1) * pitch);
    const landAfter = hasLand(valleyAfter);
    const root: PolarPoint = { r: shape.rootR, angle: shape.rootStart };
    const tipEnd: PolarPoint = { r: shape.outsideR, angle: shape.tipEnd };

    if (hasRound && landBefore) push(root, -1, round);
    if (hasFlank) push(shape.flankBottom, -1, 0);
    if (hasBreak) push(shape.flankTop, -1, tipBreak);
    push(tipEnd, -1, tan(((to - from) * pitch + 2 * shape.tipEnd) / 4));
    if (hasBreak) push(tipEnd, 1, tipBreak);
    if (hasFlank) push(shape.flankTop, 1, 0);
    if (hasRound) push(shape.flankBottom, 1, landAfter ? round : fullRound);
    if (landAfter) push(root, 1, tan((valleyAfter - 2 * shape.rootStart) / 4));
  });
  return vertices;
}
