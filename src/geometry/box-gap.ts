/** Distance from a straight edge to a box along the axes, in a plane of p and q. mm. */
import { hypot } from '../units/hypot.ts';

export interface PlanePoint {
  readonly p: number;
  readonly q: number;
}

/** A box; sides may lie at infinity. */
export interface PlaneBox {
  readonly pMin: number;
  readonly pMax: number;
  readonly qMin: number;
  readonly qMax: number;
}

/** Least distance between a closed run of corners and a box; 0 where they meet. The run does not lie round the box. */
export function boxGap(corners: readonly PlanePoint[], box: PlaneBox): number {
  return corners.reduce((least, a, i) => {
    const b = corners[(i + 1) % corners.length] as PlanePoint;
    return Math.min(least, edgeGap(a, b, box));
  }, Infinity);
}

function edgeGap(a: PlanePoint, b: PlanePoint, box: PlaneBox): number {
  if (meets(a, b, box)) return 0;
  const ends = Math.min(pointGap(a, box), pointGap(b, box));
  const corners = [box.pMin, box.pMax].flatMap((p) => [box.qMin, box.qMax].map((q) => ({ p, q })));
  const finite = corners.filter(({ p, q }) => Number.isFinite(p) && Number.isFinite(q));
  return Math.min(ends, ...finite.map((corner) => toEdge(corner, a, b)));
}

function pointGap({ p, q }: PlanePoint, { pMin, pMax, qMin, qMax }: PlaneBox): number {
  return hypot(Math.max(pMin - p, 0, p - pMax), Math.max(qMin - q, 0, q - qMax));
}

function toEdge(point: PlanePoint, a: PlanePoint, b: PlanePoint): number {
  const d = { p: b.p - a.p, q: b.q - a.q };
  const length = d.p ** 2 + d.q ** 2;
  const share = length === 0 ? 0 : ((point.p - a.p) * d.p + (point.q - a.q) * d.q) / length;
  const on = Math.max(0, Math.min(1, share));
  return hypot(point.p - a.p - on * d.p, point.q - a.q - on * d.q);
}

/** Whether the edge has a point in the box: clipped side by side. */
function meets(a: PlanePoint, b: PlanePoint, { pMin, pMax, qMin, qMax }: PlaneBox): boolean {
  let [from, to] = [0, 1];
  for (const [start, end, min, max] of [
    [a.p, b.p, pMin, pMax],
    [a.q, b.q, qMin, qMax],
  ] as const) {
    const d = end - start;
    if (d === 0) {
      if (start < min || start > max) return false;
      continue;
    }
    const [s, t] = [(min - start) / d, (max - start) / d];
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  return from <= to;
}
