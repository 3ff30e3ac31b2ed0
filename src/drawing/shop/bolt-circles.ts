/**
 * Bolt circles as a drawing dimensions them where holes are evenly spaced: the diameter of the chain-line circle, how many holes of what
 * size, and the angle of the first one from the datum direction. Where a position tolerance holds, circle and angle are theoretically
 * exact and stand in frames (ISO 1101, ISO 5458). Holes that are not evenly spaced have their places in the table only. mm of paper.
 */
import type { Point, Shape } from '../../model/drawing.ts';
import { atan2, tan } from '../../units/trig.ts';
import { arrowHead } from '../dimension.ts';
import { polar } from '../face-scene.ts';
import type { LabelUnits } from '../length-text.ts';
import { grown, textBox, textWidth } from '../text-size.ts';
import { type Blocked, type Callout, calledOut } from './called-out.ts';
import { cap, type Label, labelled, line, rectangle, runsThrough, text } from './shapes.ts';
import { angleText, diameter } from './size-text.ts';
import type { SetToDraw } from './to-draw.ts';

/** Places that differ from even ones by more than this are no circle: the table's last figure must agree with it, mm. */
const same = 0.001;

/** Holes evenly spaced on one circle about the axis. mm and degrees, as the eye sees them. */
export interface HoleRing {
  readonly radius: number;
  readonly count: number;
  /** Angle of the first hole from the datum direction, 0 up to the pitch: counter-clockwise seen from the driven side. */
  readonly first: number;
  /** Which way that runs for the eye: 1 counter-clockwise, -1 clockwise (seen from the driving side). */
  readonly way: 1 | -1;
  readonly holes: readonly Point[];
}

/**
 * The circle of holes that are evenly spaced on one; null where they are not, or are fewer than two.
 * @param zero the datum direction, degrees
 * @param way 1 where the eye looks from the driven side, -1 from the driving side: angles are told one way whatever side lies up
 */
export function ringOf(holes: readonly Point[], zero: number, way: 1 | -1 = 1): HoleRing | null {
  const [one] = holes;
  if (!one || holes.length < 2) return null;
  const pitch = 360 / holes.length;
  const radius = Math.hypot(one.x, one.y);
  const angle = (atan2(one.y, one.x) * 180) / Math.PI;
  const even = (k: number) => polar(radius, angle + k * pitch);
  const isEven = holes.every((_, k) => {
    const { x, y } = even(k);
    return holes.some((hole) => Math.hypot(hole.x - x, hole.y - y) < same);
  });
  if (!isEven || radius < same) return null;
  const turn = (((way * (angle - zero)) % pitch) + pitch) % pitch;
  return { radius, count: holes.length, first: turn < 1e-6 || pitch - turn < 1e-6 ? 0 : turn, way, holes };
}

/** What a set's holes are called in few words: "M10", "Ø8 H7", "Ø9". */
export function holeSize({ cuts, limits }: Pick<SetToDraw, 'cuts' | 'limits'>, units: LabelUnits): string {
  const tap = cuts.find((cut) => cut.op === 'tap');
  if (tap?.op === 'tap') return tap.thread;
  const ream = cuts.find((cut) => cut.op === 'ream');
  if (ream?.op === 'ream' && limits) return `${diameter(ream.diameter, units)} ${ream.zone}`;
  const drill = cuts.find((cut) => cut.op === 'drill');
  return drill?.op === 'drill' ? diameter(drill.diameter, units) : '';
}

/** A ring with what is said of it. */
export interface RingToSet {
  readonly ring: HoleRing;
  /** "6 x Ø9". */
  readonly words: string;
  /** What the datum direction is called: "the index mark". */
  readonly datum: string;
  /** Radius of what the eye sees of a hole, mm of the part. */
  readonly wide: number;
  /** True where a position tolerance holds: circle and angle are exact. */
  readonly exact: boolean;
}

/** A size, in a frame where it is theoretically exact. */
function sizeLabel(words: string, exact: boolean): Label {
  const half = { x: textWidth(words, cap.size) / 2 + (exact ? 1 : 0), y: exact ? 2.2 : 0.8 * cap.size };
  return {
    half,
    draw: ({ x, y }) => [
      text(words, { x, y: y - cap.size / 2 }, cap.size, { align: 'middle' }),
      ...(exact
        ? [rectangle({ xMin: x - half.x, xMax: x + half.x, yMin: y - half.y, yMax: y + half.y }, 'dimension')]
        : []),
    ],
  };
}

/** An arc about the axis; short stretches, so that a box round its corners is a box round it. */
function arc(r: number, from: number, to: number): Shape {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / 10));
  const bulge = tan(((to - from) / count / 4) * (Math.PI / 180));
  const points = Array.from({ length: count + 1 }, (_, i) => polar(r, from + ((to - from) * i) / count));
  return {
    kind: 'path',
    pen: 'dimension',
    fill: 'none',
    closed: false,
    loops: [points.map((p, i) => ({ ...p, bulge: i < count ? bulge : 0 }))],
  };
}

const arrow = 2.2;
/** How a leader may stand to the ray through its hole, degrees: never along it, where centre lines run. */
const leans = [-55, -40, -25, 25, 40, 55] as const;
/** Room between an arrow on a circle and the holes on it, mm: the first that leaves any place. */
const besideHoles = [2.5, 0.5, Number.NEGATIVE_INFINITY] as const;

/** Lines of the angle between the datum direction and a ring's first hole, outside the rim. */
function angleLines({ ring, wide }: RingToSet, zero: number, scale: number, edge: number, r: number): Shape[] {
  const { way } = ring;
  const end = zero + way * ring.first;
  const long = (ring.first * Math.PI * r) / 180;
  const inside = long > 3.2 * arrow;
  // An arrow on a curve leans inwards by half of the arc that it covers.
  const lean = ((1.1 * arrow) / r / 2) * (180 / Math.PI);
  const tail = (5 / r) * (180 / Math.PI);
  const [low, high] = way > 0 ? [zero, end] : [end, zero];
  const tip = (at: number, direction: 1 | -1) => arrowHead(polar(r, at), at + direction * (90 - lean), arrow);
  return [
    line(polar(edge + 1.8, zero), polar(r + 0.8, zero)),
    line(polar((ring.radius + wide) * scale + 1.2, end), polar(r + 0.8, end)),
    inside ? arc(r, low, high) : arc(r, low - tail, high + tail),
    tip(zero, (inside ? -way : way) as 1 | -1),
    tip(end, (inside ? way : -way) as 1 | -1),
  ];
}

/** Distance of the first angle's arc from the rim, and of each further one. */
const [firstArc, nextArc] = [7.5, 7];

/**
 * Angles of the rings that do not start on the datum direction, each on an arc of its own, outside of what stands there.
 * @param zero the datum direction as the eye sees it, degrees
 * @param edge the rim
 * @returns the lines, and the labels that still want a place
 */
export function ringAngles(
  rings: readonly RingToSet[],
  zero: number,
  scale: number,
  edge: number,
  taken: readonly Shape[],
): { readonly lines: readonly Shape[]; readonly labels: readonly ((taken: readonly Shape[]) => Shape[])[] } {
  const words = taken.flatMap((shape) => (shape.kind === 'text' ? [grown(textBox(shape), 0.4)] : []));
  const turned: RingToSet[] = [];
  for (const one of rings) {
    // Two rings that start at one angle are told once.
    if (one.ring.first !== 0 && !turned.some((other) => Math.abs(other.ring.first - one.ring.first) < 1e-6))
      turned.push(one);
  }
  turned.sort((a, b) => a.ring.first - b.ring.first);
  const lines: Shape[] = [];
  const labels: ((taken: readonly Shape[]) => Shape[])[] = [];
  let least = edge + firstArc;
  for (const one of turned) {
    const tries = Array.from({ length: 12 }, (_, i) => least + 1.5 * i);
    const shapesAt = (radius: number) => angleLines(one, zero, scale, edge, radius);
    const r = tries.find((radius) => !shapesAt(radius).some((s) => words.some((box) => runsThrough(s, box)))) ?? least;
    lines.push(...shapesAt(r));
    labels.push((now) => {
      const middle = zero + (one.ring.way * one.ring.first) / 2;
      const label = sizeLabel(angleText(one.ring.first), one.exact);
      return labelled(label, polar(r, middle), 0.3, now, middle) ?? [...label.draw(polar(r + 8, middle))];
    });
    least = r + nextArc;
  }
  return { lines, labels };
}

/**
 * Diameters of the rings and callouts of their holes, led out past the rim to where there is room.
 * @param blocked holes that no leader may run through, mm of paper
 */
export function ringCallouts(
  rings: readonly RingToSet[],
  units: LabelUnits,
  scale: number,
  edge: number,
  blocked: readonly Blocked[],
  taken: readonly Shape[],
): Shape[] {
  const out: Shape[] = [];
  const said = new Set<string>();
  for (const { ring, words, wide, exact, datum } of rings) {
    const size = diameter(2 * ring.radius, units);
    const r = ring.radius * scale;
    const start = ring.first === 0 ? [`one on ${datum}`] : [];
    const holes: Callout = {
      lines: [`${words} equally spaced`, ...start],
      framed: false,
      tips: ring.holes.flatMap(({ x, y }) => {
        const centre = { x: x * scale, y: y * scale };
        const at = atan2(centre.y, centre.x) * (180 / Math.PI);
        return leans.map((lean) => {
          const turn = at + lean;
          const step = polar(wide * scale, turn);
          return { at: { x: centre.x + step.x, y: centre.y + step.y }, towards: turn };
        });
      }),
    };
    const onCircle = Array.from({ length: 120 }, (_, i) => 3 * i + 1.5).map((turn) => ({
      at: polar(r, turn),
      towards: turn,
    }));
    const beside = (room: number) =>
      onCircle.filter(({ at }) =>
        blocked.every((hole) => Math.hypot(hole.centre.x - at.x, hole.centre.y - at.y) > hole.r + room),
      );
    const circle: Callout = {
      lines: [size],
      framed: exact,
      tips: besideHoles.map(beside).find((tips) => tips.length > 0) ?? [],
    };
    // Two sets on one circle: its diameter is told once.
    const wanted = said.has(size) ? [holes] : [circle, holes];
    said.add(size);
    for (const callout of wanted) out.push(...calledOut(callout, edge, blocked, [...taken, ...out]));
  }
  return out;
}
