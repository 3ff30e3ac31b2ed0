/** What pattern is it? Holes by their coordinates, told as a fabricator would say it, with every hole's misfit. mm, degrees. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { listed } from '../units/sentence.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import { fitCircle, type Point } from './circle-fit.ts';
import { aroundCentre, fitLayout, type Layout } from './hole-layout.ts';
import { student95, sum } from './least-squares.ts';
import { mm, tidy, turned, withDoubt } from './words.ts';

export type PatternKind = 'even' | 'rectangle' | 'two sets' | 'odd hole' | 'uneven' | 'irregular';

export interface Pattern {
  readonly kind: PatternKind;
  readonly count: number;
  /** One sentence: what this pattern is. */
  readonly sentence: string;
  readonly notes: readonly string[];
  readonly centre: Point;
  readonly centreDoubt: number;
  /** Diameter of the circle through the holes, and its doubt; null when they lie on no one circle. */
  readonly circle: { readonly value: number; readonly doubt: number } | null;
  /** Angle of each hole about the centre, in the order given. */
  readonly angles: readonly number[];
  /** How far each hole stands from where the pattern wants it, in the order given. */
  readonly residuals: readonly number[];
  /** Scatter of one coordinate about the pattern; null when nothing is left over to tell it. */
  readonly deviation: number | null;
  /** The hole that spoils an even pattern, from 0; null when there is none. */
  readonly oddHole: number | null;
  /** Sides of a rectangle of four. */
  readonly sides: { readonly a: number; readonly b: number } | null;
  /** Two even sets that take turns, such as three and three: their circles and the angle from the first to the second. */
  readonly sets: { readonly circles: readonly [number, number]; readonly apart: number } | null;
}

/**
 * Recognise the pattern of two or more holes, each coordinate good to `doubt` (half-width, mm).
 *
 * Tried in turn: even holes on one circle; one odd hole among even ones; two even sets about one centre (a rectangle when there
 * are two and two, "three plus three" for six); uneven angles on one circle; none of these. A hole or a pattern is only called
 * odd when it stands off by more than readings good to `doubt` can show, whatever their luck: so a sound pattern is never
 * blamed while the readings keep their doubt. Misses: fewer than two holes, two holes on one place.
 */
export function recognisePattern(points: readonly Point[], doubt: number): Lookup<Pattern> {
  if (points.length < 2)
    return missing(`A pattern needs two holes or more; there ${points.length === 1 ? 'is' : 'are'} ${points.length}.`);
  for (const [second, b] of points.entries()) {
    const first = points.findIndex(
      (a, index) => index < second && Math.hypot(a.x - b.x, a.y - b.y) < Math.max(0.5, 4 * doubt),
    );
    if (first >= 0)
      return missing(`Holes ${first + 1} and ${second + 1} stand on one place: one of them was touched off twice.`);
  }
  const circle = points.length < 3 ? null : fitCircle(points, doubt);
  const middle = { x: mean(points.map((p) => p.x)), y: mean(points.map((p) => p.y)) };
  const around = circle?.ok === true ? circle.value.centre : middle;
  const order = aroundCentre(points, around);
  const holes = order.map((index) => points[index] as Point);
  const even = fitLayout(holes, 1, doubt);
  const view = { points, order, doubt };
  if (even?.explained === true) return found(evenPattern(view, even));
  const odd = oddHole(holes, doubt);
  const pairs = points.length >= 4 && points.length % 2 === 0 ? fitLayout(holes, 2, doubt) : null;
  const isPaired = pairs?.explained === true && (points.length > 4 || sameCircles(pairs));
  if (isPaired && pairs !== null && (odd === null || fitness(pairs) <= fitness(odd.layout)))
    return found(pairedPattern(view, pairs));
  if (odd !== null) return found(oddPattern(view, odd));
  if (circle?.ok === true && circle.value.explained && points.length > 3) {
    return found(unevenPattern(view, circle.value));
  }
  if (circle?.ok === true && points.length === 3) return found(unevenPattern(view, circle.value));
  return found(irregularPattern(view, circle?.ok === true ? circle.value.centre : middle, even));
}

interface View {
  readonly points: readonly Point[];
  /** Which point stands at each place around the pattern. */
  readonly order: readonly number[];
  readonly doubt: number;
}

function evenPattern(view: View, layout: Layout): Pattern {
  const [ring] = layout.rings;
  const circle = { value: ring?.diameter ?? 0, doubt: ring?.doubt ?? 0 };
  const count = view.points.length;
  return {
    ...common(view, layout),
    kind: 'even',
    sentence: `${count} even holes on a circle of ${withDoubt(circle.value, circle.doubt)}.`,
    notes: layout.deviation === null ? ['These readings leave nothing over to check them by.'] : [scatterNote(layout)],
    circle,
  };
}

function oddPattern(view: View, { place, layout }: OddHole): Pattern {
  const [ring] = layout.rings;
  const circle = { value: ring?.diameter ?? 0, doubt: ring?.doubt ?? 0 };
  const hole = view.order[place] ?? 0;
  const off = layout.residuals[place] ?? { x: 0, y: 0, size: 0 };
  const count = view.points.length;
  return {
    ...common(view, layout),
    kind: 'odd hole',
    sentence: `${count} holes that would be even on a circle of ${withDoubt(circle.value, circle.doubt)}, but hole ${hole + 1} stands ${mm(off.size)} off its place.`,
    notes: [
      `Hole ${hole + 1} is off by x ${tidy(off.x)}, y ${tidy(off.y)}; the others agree within ${mm(worstBut(layout, place))}. Measure it again: a burr, a touch-off on the wrong edge, or a hole that was drilled by hand.`,
    ],
    circle,
    oddHole: hole,
  };
}

function pairedPattern(view: View, layout: Layout): Pattern {
  const [one, two] = layout.rings;
  const half = view.points.length / 2;
  const circles = [one?.diameter ?? 0, two?.diameter ?? 0] as const;
  const apart = turned((two?.first ?? 0) - (one?.first ?? 0));
  const isOne = sameCircles(layout);
  const circle = isOne
    ? { value: (circles[0] + circles[1]) / 2, doubt: Math.max(one?.doubt ?? 0, two?.doubt ?? 0) }
    : null;
  const base = common(view, layout);
  if (half === 2) {
    // Half-diagonals p and q of the fitted rectangle: its sides are |p - q| and |p + q|.
    const half = (apart * Math.PI) / 360;
    const [a, b] = [(circle?.value ?? 0) * sin(half), (circle?.value ?? 0) * Math.abs(cos(half))];
    const sides = { a: Math.max(a, b), b: Math.min(a, b) };
    return {
      ...base,
      kind: 'rectangle',
      sentence: `Four holes in a rectangle of ${tidy(sides.a, 2)} x ${tidy(sides.b, 2)} mm, on a circle of ${withDoubt(circle?.value ?? 0, circle?.doubt ?? 0)}.`,
      notes: ['Two spacings: it goes on in two positions only, half a turn apart.', scatterNote(layout)],
      circle,
      sides,
    };
  }
  const name = numberWord(half);
  const where = isOne
    ? `one circle of ${withDoubt(circle?.value ?? 0, circle?.doubt ?? 0)}`
    : `circles of ${tidy(circles[0], 2)} and ${tidy(circles[1], 2)} mm`;
  return {
    ...base,
    kind: 'two sets',
    sentence: `${view.points.length} holes: ${name} and ${name}, each set even, on ${where}, the second set ${tidy(apart, 2)} degrees on from the first.`,
    notes: [
      isOne
        ? `Even holes would stand ${tidy(180 / half, 2)} degrees apart: this is not an even pattern of ${view.points.length}.`
        : `Each flange of such a pair may use one set only: bolt the adapter to the set of its own flange.`,
      scatterNote(layout),
    ],
    circle,
    sets: { circles, apart },
  };
}

function unevenPattern(
  view: View,
  fit: {
    centre: Point;
    diameter: number;
    residuals: readonly number[];
    standardDeviation: number | null;
    doubt: { centre: number; diameter: number };
  },
): Pattern {
  const angles = anglesAbout(view.points, fit.centre);
  const steps = view.order.map((index, place) =>
    turned((angles[view.order[(place + 1) % view.order.length] ?? 0] ?? 0) - (angles[index] ?? 0)),
  );
  const circle = { value: fit.diameter, doubt: fit.doubt.diameter };
  return {
    ...common(view, null),
    kind: 'uneven',
    centre: fit.centre,
    centreDoubt: fit.doubt.centre,
    angles,
    residuals: fit.residuals.map(Math.abs),
    deviation: fit.standardDeviation,
    sentence: `${view.points.length} holes on one circle of ${withDoubt(circle.value, circle.doubt)}, not evenly spaced: ${listed(steps.map((step) => tidy(step, 2).toString()))} degrees apart.`,
    notes: [
      'Write them as angles, or as coordinates; a count and a circle would put the holes elsewhere.',
      ...(view.points.length === 3
        ? ['Three holes lie on one circle whatever they are: check the centre against the register.']
        : []),
      ...missingHoles(steps),
    ],
    circle,
  };
}

/** Steps that are all whole multiples of one even spacing: some holes were left out. */
function missingHoles(steps: readonly number[]): string[] {
  for (let count = steps.length + 1; count <= 24; count++) {
    const step = 360 / count;
    if (steps.every((angle) => Math.abs(angle / step - Math.round(angle / step)) * step < 0.15 && angle > step / 2)) {
      return [
        `Every angle is a multiple of ${tidy(step, 3)} degrees: these are ${steps.length} of ${count} even places. Were some holes left out?`,
      ];
    }
  }
  return [];
}

function irregularPattern(view: View, centre: Point, even: Layout | null): Pattern {
  const angles = anglesAbout(view.points, centre);
  const radii = view.points.map((p) => Math.hypot(p.x - centre.x, p.y - centre.y));
  return {
    ...common(view, null),
    kind: 'irregular',
    centre,
    centreDoubt: view.doubt,
    angles,
    residuals:
      even === null
        ? radii.map((radius) => Math.abs(radius - mean(radii)))
        : backInOrder(
            view,
            even.residuals.map(({ size }) => size),
          ),
    sentence: `${view.points.length} holes on no one circle: they stand ${tidy(Math.min(...radii), 2)} to ${tidy(Math.max(...radii), 2)} mm from their middle.`,
    notes: [
      'Use the coordinates as they are (holes: at), measured from the register, and check the ones that stand off most.',
    ],
  };
}

function common(view: View, layout: Layout | null): Omit<Pattern, 'kind' | 'sentence'> {
  const centre = layout?.centre ?? { x: 0, y: 0 };
  return {
    count: view.points.length,
    notes: [],
    centre,
    centreDoubt: layout?.centreDoubt ?? 0,
    circle: null,
    angles: anglesAbout(view.points, centre),
    residuals:
      layout === null
        ? []
        : backInOrder(
            view,
            layout.residuals.map(({ size }) => size),
          ),
    deviation: layout?.deviation ?? null,
    oddHole: null,
    sides: null,
    sets: null,
  };
}

interface OddHole {
  /** Place around the pattern. */
  readonly place: number;
  readonly layout: Layout;
}

/** The one hole without which the others are even; the one that leaves least when several would do. Needs four holes. */
function oddHole(holes: readonly Point[], doubt: number): OddHole | null {
  if (holes.length < 4) return null;
  const [best] = holes
    .map((_, place) => ({ place, layout: fitLayout(holes, 1, doubt, [place]) }))
    .filter((entry): entry is OddHole => entry.layout?.explained === true)
    .sort((a, b) => a.layout.worst - b.layout.worst);
  return best ?? null;
}

/** Misfit for each degree of freedom: what two explanations are compared by. */
function fitness(layout: Layout): number {
  return layout.deviation ?? 0;
}

function sameCircles(layout: Layout): boolean {
  const [one, two] = layout.rings;
  return Math.abs((one?.diameter ?? 0) - (two?.diameter ?? 0)) <= (one?.doubt ?? 0) + (two?.doubt ?? 0);
}

function scatterNote({ deviation, freedom }: Layout): string {
  if (deviation === null) return 'These readings leave nothing over to check them by.';
  return `Each hole scatters by ${mm(deviation)} about this pattern (95 in 100 within ${mm(student95(freedom) * deviation)}).`;
}

function worstBut(layout: Layout, place: number): number {
  return Math.max(...layout.residuals.filter((_, index) => index !== place).map(({ size }) => size));
}

function backInOrder(view: View, values: readonly number[]): number[] {
  const back = new Array<number>(values.length).fill(0);
  for (const [place, index] of view.order.entries()) back[index] = values[place] ?? 0;
  return back;
}

function anglesAbout(points: readonly Point[], centre: Point): number[] {
  return points.map((p) => turned((atan2(p.y - centre.y, p.x - centre.x) * 180) / Math.PI));
}

function mean(numbers: readonly number[]): number {
  return sum(numbers) / numbers.length;
}

function numberWord(count: number): string {
  return ['none', 'one', 'two', 'three', 'four', 'five', 'six'][count] ?? String(count);
}
