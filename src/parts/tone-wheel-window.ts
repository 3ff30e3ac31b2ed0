/** The exact shape of a window in a tone wheel with a closed rim, and its contour. */
import type { Contour, ContourVertex } from '../model/sheet.ts';
import { atan2, cos, sin, tan } from '../units/trig.ts';
import {
  leastPitchAngle,
  type PolarPoint,
  pitchAngle,
  type ToneWheelSpec,
  toothTop,
  widthRadius,
} from './tone-wheel-tooth.ts';
import { pulseAt, toothRow, valleySpans } from './tooth-row.ts';

/**
 * What bounds a window at the counter-clockwise side of a bar, as seen along the bar's centre line. mm,
 * radians. The window's other side is the mirror image of it at the next bar.
 */
export interface WindowShape {
  /** Radii of the window's outside and inside. */
  readonly outerR: number;
  readonly innerR: number;
  /** The bar's flank lies on a line at `flankOffset` to the left of a ray at the angle `flankAngle`. */
  readonly flankAngle: number;
  readonly flankOffset: number;
  /** Round in every corner; 0 for sharp ones. */
  readonly corner: number;
  /** Where the flank begins and ends between the two corners. */
  readonly flankTop: PolarPoint;
  readonly flankBottom: PolarPoint;
  /** Length of the flank between its corners; negative where they overlap. */
  readonly flankLength: number;
  /** Angles at which the outer and the inner arc of the window begin. */
  readonly outerStart: number;
  readonly innerStart: number;
  /** Turn of the outer and of the inner corner. */
  readonly outerSweep: number;
  readonly innerSweep: number;
}

/** Stretches shorter than this, mm, are left out; the corners on both sides become one. */
const NOTHING = 1e-6;

/**
 * The shape of a window in closed form. In the frame of the flank (its direction along x) the outer corner is
 * a circle of radius f about (sqrt((R - f)^2 - (h + f)^2), h + f), within the window's outer circle; the inner
 * one about (sqrt((q + f)^2 - (h + f)^2), h + f), outside of its inner circle. Both touch the flank from the
 * window's side. Source: tangent circles, plane geometry.
 *
 * A kerf makes the window smaller: both circles and the flanks move into it by half of the kerf, and the
 * corners shrink by as much (to sharp ones at least). That is the exact offset curve. Cells are NaN where the
 * geometry is impossible; `toneWheelFaults` says why.
 */
export function windowShape(spec: ToneWheelSpec, kerf = 0): WindowShape {
  const grow = kerf / 2;
  const half = (spec.ratio * pitchAngle(spec)) / 2;
  const isRadial = spec.flanks === 'radial';
  const flankAngle = isRadial ? half : 0;
  const flankOffset = (isRadial ? 0 : widthRadius(spec) * sin(half)) + grow;
  const outerR = toothTop(spec) - grow;
  const innerR = spec.root / 2 + grow;
  const corner = Math.max(0, spec.rootRadius - grow);
  const y = flankOffset + corner;
  const outerX = Math.sqrt((outerR - corner) ** 2 - y ** 2);
  const innerX = Math.sqrt((innerR + corner) ** 2 - y ** 2);
  const outer = atan2(y, outerX);
  const inner = atan2(y, innerX);
  const onFlank = (x: number): PolarPoint => ({
    r: Math.hypot(x, flankOffset),
    angle: flankAngle + atan2(flankOffset, x),
  });
  return {
    outerR,
    innerR,
    flankAngle,
    flankOffset,
    corner,
    flankTop: onFlank(outerX),
    flankBottom: onFlank(innerX),
    flankLength: outerX - innerX,
    outerStart: flankAngle + outer,
    innerStart: flankAngle + inner,
    outerSweep: corner > 0 ? Math.PI / 2 + outer : 0,
    innerSweep: corner > 0 ? Math.PI / 2 - inner : 0,
  };
}

/**
 * Largest corner of the narrowest window. Three limits: at the inner circle the round whose centre lies on the window's
 * middle line, (q + f) sin g = h + f, with g the angle from flank to middle line; at the outer circle the same,
 * (R - f) sin g = h + f; on the flank the two rounds that meet, R - f = q + f.
 */
export function largestCorner(spec: ToneWheelSpec): number {
  const { outerR, innerR, flankAngle, flankOffset } = windowShape({ ...spec, rootRadius: 0 });
  const toMiddle = sin(leastPitchAngle(spec) / 2 - flankAngle);
  const inner = (innerR * toMiddle - flankOffset) / (1 - toMiddle);
  const outer = (outerR * toMiddle - flankOffset) / (1 + toMiddle);
  return Math.min(inner, outer, (outerR - innerR) / 2);
}

/**
 * The windows as clockwise contours, one after each bar, at most 8 corners each: down the flank of the bar
 * before it, inner corner, inner arc, inner corner, up the flank of the next bar, outer corner, outer arc, outer
 * corner. A stretch that is not there is left out with its starting corner; where two corners meet without an
 * arc between them, they are one. The last window spans the bars that are missing; beside an extra bar two are half as long.
 */
export function windowContours(spec: ToneWheelSpec, feature: string): Contour[] {
  const shape = windowShape(spec, spec.kerf);
  const pitch = pitchAngle(spec);
  const first = (spec.toothAngle * Math.PI) / 180;
  const row = toothRow(spec);
  return valleySpans(spec).map((span, i) => {
    const bar = first + (row[i]?.to ?? 0) * pitch;
    return { kind: 'path', feature, vertices: oneWindow(shape, bar, span * pitch) };
  });
}

/**
 * The windows that can be nearest to a place inside of them all: the one in its direction and its two neighbours. All windows lie between
 * the same two circles, so a window further round is further away. Empty for open teeth.
 */
export function windowsBeside(spec: ToneWheelSpec, holes: readonly Contour[], x: number, y: number): Contour[] {
  const windows = holes.filter(({ kind }) => kind === 'path');
  const last = windows.length - 1;
  const turns = (atan2(y, x) - (spec.toothAngle * Math.PI) / 180) / (2 * Math.PI);
  const place = Math.min(last, pulseAt(spec, (turns - Math.floor(turns)) * spec.teeth));
  const beside = new Set([place === 0 ? last : place - 1, place, place === last ? 0 : place + 1]);
  return [...beside].flatMap((i) => windows[i] ?? []);
}

function oneWindow(shape: WindowShape, bar: number, span: number): ContourVertex[] {
  const { outerR, innerR, outerStart, innerStart, outerSweep, innerSweep } = shape;
  const hasRound = shape.corner > 0;
  const hasFlank = shape.flankLength > NOTHING;
  const [innerLand, outerLand] = [span - 2 * innerStart, span - 2 * outerStart];
  const hasInner = innerLand * innerR > NOTHING;
  const hasOuter = outerLand * outerR > NOTHING;
  /** Bulge of a corner, or of two that have become one. */
  const corner = (sweep: number, isOne: boolean) => -tan((isOne ? 2 * sweep : sweep) / 4);
  const vertices: ContourVertex[] = [];
  const push = (at: PolarPoint, side: 'before' | 'after', bulge: number): void => {
    const angle = side === 'before' ? bar + at.angle : bar + span - at.angle;
    vertices.push({ x: at.r * cos(angle), y: at.r * sin(angle), bulge });
  };
  const inner: PolarPoint = { r: innerR, angle: innerStart };
  const outer: PolarPoint = { r: outerR, angle: outerStart };

  if (hasFlank) push(shape.flankTop, 'before', 0);
  if (hasRound) push(shape.flankBottom, 'before', corner(innerSweep, !hasInner));
  if (hasInner) push(inner, 'before', tan(innerLand / 4));
  if (hasInner && hasRound) push(inner, 'after', corner(innerSweep, false));
  if (hasFlank) push(shape.flankBottom, 'after', 0);
  if (hasRound) push(shape.flankTop, 'after', corner(outerSweep, !hasOuter));
  if (hasOuter) push(outer, 'after', -tan(outerLand / 4));
  if (hasOuter && hasRound) push(outer, 'before', corner(outerSweep, false));
  return vertices;
}
