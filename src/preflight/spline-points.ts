/** Points of a rational B-spline, close enough together for lines. Source: de Boor's algorithm, homogeneous coordinates. */

export interface ControlPoint {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly ControlPoint[];
}

interface At {
  readonly x: number;
  readonly y: number;
}

/** Limits of what is worked out: no drawing program goes further. */
const most = { degree: 15, points: 20_000, halvings: 10, made: 400_000 };

/**
 * Points along the spline from its start to its end; the lines between them stay within about `within` of the curve.
 * Null where degree, knots and weights do not make a spline.
 */
export function curvePoints(spline: Spline, within: number): At[] | null {
  const { degree, knots, points } = spline;
  const isWhole = Number.isInteger(degree) && degree >= 1 && degree <= most.degree;
  if (!isWhole || points.length <= degree || points.length > most.points) return null;
  if (knots.length !== points.length + degree + 1) return null;
  if (!knots.every((knot, i) => Number.isFinite(knot) && knot >= (knots[i - 1] ?? knot))) return null;
  if (!points.every(({ weight }) => weight > 0 && Number.isFinite(weight))) return null;
  const curve: At[] = [];
  for (let span = degree; span < points.length; span++) {
    const from = knots[span] as number;
    const to = knots[span + 1] as number;
    if (!(to > from) || curve.length > most.made) continue;
    const at = (t: number) => pointAt(spline, span, t);
    if (curve.length === 0) curve.push(at(from));
    // Halved twice at least: a curve that swings may cross the middle of its chord.
    const quarters = [0, 0.25, 0.5, 0.75, 1].map((share) => from + share * (to - from));
    for (let i = 0; i < 4; i++) {
      const [a, b] = [quarters[i] as number, quarters[i + 1] as number];
      addBetween(curve, at, { t: a, at: at(a) }, { t: b, at: at(b) }, within, most.halvings);
    }
  }
  return curve.length < 2 ? null : curve;
}

interface Sample {
  readonly t: number;
  readonly at: At;
}

/** Adds the points after `a` up to `b`, halving while the middle stands off the chord. */
function addBetween(curve: At[], at: (t: number) => At, a: Sample, b: Sample, within: number, left: number): void {
  const t = (a.t + b.t) / 2;
  const middle = { t, at: at(t) };
  const off = Math.hypot(middle.at.x - (a.at.x + b.at.x) / 2, middle.at.y - (a.at.y + b.at.y) / 2);
  if (left === 0 || off <= within) {
    curve.push(b.at);
    return;
  }
  addBetween(curve, at, a, middle, within, left - 1);
  addBetween(curve, at, middle, b, within, left - 1);
}

/** The point at parameter t, which lies between knots `span` and `span + 1`. */
function pointAt({ degree, knots, points }: Spline, span: number, t: number): At {
  const row = Array.from({ length: degree + 1 }, (_, i) => {
    const { x, y, weight } = points[span - degree + i] as ControlPoint;
    return { x: x * weight, y: y * weight, weight };
  });
  for (let level = 1; level <= degree; level++) {
    for (let i = degree; i >= level; i--) {
      const low = knots[span - degree + i] as number;
      const high = knots[span + 1 + i - level] as number;
      const share = high > low ? (t - low) / (high - low) : 0;
      const a = row[i - 1] as ControlPoint;
      const b = row[i] as ControlPoint;
      row[i] = {
        x: a.x + share * (b.x - a.x),
        y: a.y + share * (b.y - a.y),
        weight: a.weight + share * (b.weight - a.weight),
      };
    }
  }
  const { x, y, weight } = row[degree] as ControlPoint;
  return { x: x / weight, y: y / weight };
}
