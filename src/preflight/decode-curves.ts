/** ELLIPSE and SPLINE, followed by short lines. */
import type { DxfGroups } from '../measure/dxf-groups.ts';
import { cos, sin } from '../units/trig.ts';
import { badNumber, type Decoded, nothingDrawn } from './drawn.ts';
import { anglesOver, linesThrough } from './plane.ts';
import { numberOf, parseNumber, type RawEntity } from './read-dxf.ts';
import { type ControlPoint, curvePoints } from './spline-points.ts';

type XYZ = [x: number, y: number, z: number];

/** An ellipse in the drawing's own coordinates. `within`: how far the lines may lie from it, in the drawing's units. */
export function decodeEllipse(groups: DxfGroups, entity: RawEntity, within: number): Decoded {
  const number = (code: number, missing = Number.NaN) => numberOf(groups, entity, code, missing);
  const [x, y, z, ax, ay, az] = [number(10), number(20), number(30, 0), number(11), number(21), number(31, 0)];
  const [ratio, from, to, facing] = [number(40), number(41, 0), number(42, 2 * Math.PI), number(230, 1)];
  if (![x, y, z, ax, ay, az, ratio, from, to].every(Number.isFinite)) return badNumber('centre, axis, ratio or ends');
  const long = Math.hypot(ax, ay);
  if (!(ratio > 0) || ratio > 1e3) return badNumber(`ratio of the axes ${ratio}`);
  if (long === 0) return { ...nothingDrawn, faults: [{ code: 'dxf-zero-length', note: '', x, y }] };
  const full = 2 * Math.PI;
  const rest = (((to - from) % full) + full) % full;
  const isFull = Math.abs(to - from) > 1e-9 && (rest < 1e-9 || full - rest < 1e-9);
  const side = facing < 0 ? -1 : 1;
  const points = anglesOver(from, isFull ? full : rest, long * Math.max(1, ratio), within).map((angle) => {
    const [c, s] = [cos(angle), side * ratio * sin(angle)];
    return { x: x + c * ax - s * ay, y: y + c * ay + s * ax };
  });
  if (isFull) points.pop();
  const stretches = linesThrough(isFull ? [...points, ...points.slice(0, 1)] : points);
  return {
    runs: stretches.length === 0 ? [] : [{ stretches, isClosed: isFull }],
    heights: az === 0 ? [z] : [z, z + az],
    faults: [{ code: 'dxf-ellipses', note: '', x, y }],
    isWorld: true,
  };
}

/** A spline of lists: knots (40), weights (41), control points (10, 20, 30), points that it passes (11, 21, 31). */
export function decodeSpline(groups: DxfGroups, entity: RawEntity, within: number): Decoded {
  const { codes, values } = groups;
  const knots: number[] = [];
  const weights: number[] = [];
  const control: XYZ[] = [];
  const passed: XYZ[] = [];
  for (let i = entity.from + 1; i < entity.to; i++) {
    const code = codes[i] as number;
    if (code >= 1000) break;
    const value = () => parseNumber(values[i] as string);
    const last = code % 10 === 0 ? control.at(-1) : passed.at(-1);
    if (code === 40) knots.push(value());
    else if (code === 41) weights.push(value());
    else if (code === 10) control.push([value(), Number.NaN, 0]);
    else if (code === 11) passed.push([value(), Number.NaN, 0]);
    else if ((code === 20 || code === 21) && last) last[1] = value();
    else if ((code === 30 || code === 31) && last) last[2] = value();
  }
  const degree = numberOf(groups, entity, 71, 3);
  const isClosed = (numberOf(groups, entity, 70, 0) & 1) !== 0;
  if (![...control, ...passed].every((point) => point.every(Number.isFinite)))
    return badNumber('a point of the spline');
  if (control.length === 0) {
    const [x, y] = passed[0] ?? [Number.NaN, Number.NaN];
    return { ...nothingDrawn, faults: [{ code: 'dxf-spline-points', note: '', x, y }] };
  }
  const points: ControlPoint[] = control.map(([x, y], i) => ({ x, y, weight: weights[i] ?? 1 }));
  const curve = curvePoints({ degree, knots, points }, within);
  if (curve === null) return badNumber('degree, knots or weights of the spline do not fit together');
  const [first, last] = [curve[0], curve.at(-1)];
  const meets = first !== undefined && last !== undefined && Math.hypot(first.x - last.x, first.y - last.y) < within;
  // A closed spline whose ends meet by rounding alone ends where it began.
  const all = meets && first !== undefined ? [...curve.slice(0, -1), first] : curve;
  const stretches = linesThrough(isClosed && !meets && first !== undefined ? [...all, first] : all);
  return {
    runs: stretches.length === 0 ? [] : [{ stretches, isClosed: isClosed || meets }],
    heights: control.map(([, , z]) => z),
    faults: [
      {
        code: 'dxf-splines',
        note: `${control.length} control points`,
        x: first?.x ?? Number.NaN,
        y: first?.y ?? Number.NaN,
      },
      ...(stretches.length === 0 ? [{ code: 'dxf-zero-length' as const, note: '' }] : []),
    ],
    isWorld: true,
  };
}
