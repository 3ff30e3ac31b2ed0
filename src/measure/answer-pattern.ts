/** The whole pattern from coordinates, a table, a drawing or distances between numbered holes, as typed. */
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import { type Answer, type Asked, told } from './answer.ts';
import type { ChordOver } from './chord.ts';
import { distancesNeeded, type HoleDistance, patternFromDistances } from './chord-network.ts';
import type { Point } from './circle-fit.ts';
import { type BlockParts, flangeBlock } from './flange-block.ts';
import type { Measured } from './measured.ts';
import { type Pattern, recognisePattern } from './pattern.ts';
import { pointsFromCsv } from './points-from-csv.ts';
import { holesFromDxf } from './points-from-dxf.ts';
import { checkDiagonal, rectangleCircle } from './rectangle.ts';
import { optional, typedCount, typedLength, typedLengths, typedSize } from './typed.ts';
import { mm, tidy, turned, withDoubt } from './words.ts';

export interface PatternTyped extends Asked {
  /** A file that was read for it. */
  readonly file?: { readonly name: string; readonly text: string } | undefined;
  /** Points as "x,y" each. */
  readonly at?: readonly string[] | undefined;
  /** Distances as "1-2 over 50.1,50.12". */
  readonly chords?: readonly string[] | undefined;
  readonly holes?: string | undefined;
  readonly hole?: string | undefined;
  /** Two spacings of a rectangle, "58x48", and its diagonal. */
  readonly rectangle?: string | undefined;
  readonly diagonal?: string | undefined;
  /** Where the register's centre stands in the same coordinates, "x,y"; the pattern's own centre when left out. */
  readonly centre?: string | undefined;
  /** How well each coordinate is known. */
  readonly doubt?: string | undefined;
}

/** A read-out touches a hole's centre off to about this, each coordinate, mm. Common practice. */
const touchOffDoubt = 0.05;

export function answerPattern(typed: PatternTyped): Lookup<Answer> {
  const sources = [
    typed.file,
    typed.at?.length ? typed.at : undefined,
    typed.chords?.length ? typed.chords : undefined,
    typed.rectangle,
  ].filter((one) => one !== undefined);
  if (sources.length !== 1)
    return missing('Give the holes once: a file of points, points with at, distances with chord, or a rectangle.');
  const hole = optional(typed.hole, (text) => typedSize(text, 'Hole diameter', typed));
  if (!hole.ok) return hole;
  const outside = optional(typed.outside, (text) => typedSize(text, 'Outside diameter', typed));
  if (!outside.ok) return outside;
  const seen: Seen = { typed, hole: hole.value, outside: outside.value };
  if (typed.rectangle !== undefined) return rectangle(typed.rectangle, seen);
  if (typed.chords?.length) return fromDistances(typed.chords, seen);
  return fromPoints(seen);
}

interface Seen {
  readonly typed: PatternTyped;
  readonly hole: Measured | undefined;
  readonly outside: Measured | undefined;
}

function fromPoints(seen: Seen): Lookup<Answer> {
  const { typed } = seen;
  const doubt = optional(typed.doubt, (text) => typedLength(text, 'Doubt', typed));
  if (!doubt.ok) return doubt;
  if (doubt.value !== undefined && !(doubt.value > 0)) return missing('The doubt of a coordinate is above 0.');
  const read = pointsOf(seen);
  if (!read.ok) return read;
  const { points, notes, diameter } = read.value;
  if (points.length > 72)
    return missing(`There are ${points.length} points here; a bolt pattern has 72 holes at the most.`);
  const centre = optional(typed.centre, (text) => typedPoint(text, 'Centre', typed));
  if (!centre.ok) return centre;
  return andThen(recognisePattern(points, doubt.value ?? touchOffDoubt), (pattern) => {
    const axis = centre.value ?? pattern.centre;
    const own = points.map(({ x, y }) => ({ x: x - axis.x, y: y - axis.y }));
    const off = centre.value === undefined ? 0 : Math.hypot(pattern.centre.x - axis.x, pattern.centre.y - axis.y);
    const offNote =
      off > pattern.centreDoubt
        ? [`The pattern's centre stands ${mm(off)} off the stated centre: the holes are kept where they are.`]
        : [];
    const hole =
      seen.hole ??
      (diameter === undefined ? undefined : ({ value: diameter, doubt: 0.05, basis: 'catalogue' } as const));
    return answered(pattern, own, { ...seen, hole }, [...notes, ...offNote], offNote.length > 0);
  });
}

function pointsOf({
  typed,
  hole,
}: Seen): Lookup<{ points: readonly Point[]; notes: readonly string[]; diameter?: number }> {
  if (typed.file !== undefined) {
    const { name, text } = typed.file;
    if (/\.dxf$/i.test(name)) {
      return andThen(holesFromDxf(text, typed.units, hole?.value), ({ holes, notes }) => {
        const diameter = holes[0]?.diameter ?? 0;
        return found({ points: holes, notes, ...(diameter > 0 ? { diameter } : {}) });
      });
    }
    return andThen(pointsFromCsv(text, typed.units), (points) => found({ points, notes: [] }));
  }
  const points: Point[] = [];
  for (const text of typed.at ?? []) {
    const point = typedPoint(text, `Point ${points.length + 1}`, typed);
    if (!point.ok) return point;
    points.push(point.value);
  }
  return found({ points, notes: [] });
}

function typedPoint(text: string, what: string, typed: PatternTyped): Lookup<Point> {
  return andThen(typedLengths(text, what, typed), ([x, y, ...more]) =>
    x === undefined || y === undefined || more.length > 0
      ? missing(`${what} is two numbers, x,y; got "${text.slice(0, 30)}".`)
      : found({ x, y }),
  );
}

const edges: Readonly<Record<string, ChordOver>> = {
  over: 'outside',
  outside: 'outside',
  between: 'inside',
  inside: 'inside',
  centres: 'centres',
  centers: 'centres',
};

function fromDistances(chords: readonly string[], seen: Seen): Lookup<Answer> {
  const { typed, hole } = seen;
  if (typed.holes === undefined)
    return missing('How many holes are there? Distances between numbered holes need the count.');
  const count = typedCount(typed.holes, 'Number of holes', 2, 72);
  if (!count.ok) return count;
  const distances: HoleDistance[] = [];
  for (const chord of chords) {
    const match = /^\s*(\d+)\s*-\s*(\d+)\s+(\w+)\s+(.+)$/.exec(chord);
    const over = edges[match?.[3]?.toLowerCase() ?? ''];
    if (match === null || over === undefined)
      return missing(
        `"${chord.slice(0, 40)}" is not a distance; write for example "1-3 over 101.2,101.25" (over, between or centres).`,
      );
    const reading = typedSize(match[4] ?? '', `Holes ${match[1]} and ${match[2]}`, typed);
    if (!reading.ok) return reading;
    distances.push({ from: Number(match[1]), to: Number(match[2]), over, reading: reading.value });
  }
  const network = patternFromDistances(count.value, distances, hole ?? null);
  if (!network.ok) return missing(network.why);
  const worst = network.distances.reduce((a, b) => (Math.abs(b.residual) > Math.abs(a.residual) ? b : a));
  const notes = [
    ...(distances.length < distancesNeeded(count.value)
      ? [
          `${distances.length} distances do not settle where ${count.value} holes stand: even spacing was taken, and they agree with it. ${distancesNeeded(count.value)} distances, three or more from each hole, tell.`,
        ]
      : []),
    `The distances agree within ${mm(Math.abs(worst.residual))} (holes ${worst.from} and ${worst.to}). Hole 1 is put on the x axis: distances tell no first angle.`,
  ];
  return andThen(answered(network.pattern, network.points, seen, notes, false), (answer) => {
    const lines = network.distances.map(
      ({ from, to, centres, residual }) =>
        `holes ${from} and ${to}: centres ${mm(centres)}, ${mm(Math.abs(residual))} ${residual < 0 ? 'less' : 'more'} than fitted`,
    );
    return found({ ...answer, lines: network.isSettled ? [...answer.lines, ...lines] : lines });
  });
}

function rectangle(text: string, seen: Seen): Lookup<Answer> {
  const [first = '', second = '', ...more] = text.split(/[x*×]/i);
  if (more.length > 0 || second.trim() === '')
    return missing(
      `"${text.slice(0, 30)}" is no rectangle; write its two spacings between centres, for example 58x48.`,
    );
  const a = typedSize(first, 'First spacing', seen.typed);
  const b = typedSize(second, 'Second spacing', seen.typed);
  if (!a.ok) return a;
  if (!b.ok) return b;
  const diagonal = optional(seen.typed.diagonal, (one) => typedSize(one, 'Diagonal', seen.typed));
  if (!diagonal.ok) return diagonal;
  const checked =
    diagonal.value === undefined
      ? found(rectangleCircle(a.value, b.value))
      : checkDiagonal(a.value, b.value, diagonal.value);
  return andThen(checked, (circle) => {
    const [x, y] = [a.value.value / 2, b.value.value / 2];
    const at = [
      { x, y },
      { x: -x, y },
      { x: -x, y: -y },
      { x, y: -y },
    ];
    const square = Math.abs(a.value.value - b.value.value) <= a.value.doubt + b.value.doubt;
    return found({
      title: `Four holes in a ${square ? 'square' : 'rectangle'} of ${tidy(a.value.value)} x ${tidy(b.value.value)} mm, on a circle of ${told(circle, seen.typed)}.`,
      lines: [],
      notes: [
        ...(square
          ? []
          : [
              'Two spacings: it goes on in two positions only, half a turn apart. A count and a circle would put the holes elsewhere.',
            ]),
        ...(diagonal.value === undefined
          ? ['Measure a diagonal as well: only it tells a rectangle from a leaning one.']
          : [`The diagonal agrees: ${withDoubt(diagonal.value.value, diagonal.value.doubt)}.`]),
      ],
      result: { kind: square ? 'even' : 'rectangle', count: 4, circle, sides: { a: a.value, b: b.value } },
      search: square ? { circle: circle.value, holes: 4 } : {},
      block: flangeBlock(seen.typed.side, {
        outside: seen.outside,
        holes: { at, diameter: seen.hole },
        instrument: seen.typed.instrument,
      }),
    });
  });
}

function answered(
  pattern: Pattern,
  own: readonly Point[],
  { typed, hole, outside }: Seen,
  notes: readonly string[],
  isOff: boolean,
): Lookup<Answer> {
  const reach = 2 * Math.max(...own.map(({ x, y }) => Math.hypot(x, y))) + (hole?.value ?? 0);
  if (outside !== undefined && reach >= outside.value)
    return missing(
      `These holes reach ${mm(reach)} across, past the rim of ${mm(outside.value)}. Is the outside a diameter, and are all points in one unit?`,
    );
  const { circle, angles, residuals } = pattern;
  return found({
    title: pattern.sentence,
    lines: [
      `centre x ${tidy(pattern.centre.x)}, y ${tidy(pattern.centre.y)} +-${tidy(pattern.centreDoubt)} mm`,
      ...angles.map(
        (angle, index) =>
          `hole ${index + 1}: at ${tidy(angle, 2)} degrees, ${mm(residuals[index] ?? 0)} off its place${index === pattern.oddHole ? '   <- the odd one' : ''}`,
      ),
    ],
    notes: [...notes, ...pattern.notes, ...(circle === null ? [] : [`In full: circle ${told(circle, typed)}.`])],
    result: { ...pattern, points: own },
    search:
      circle === null || pattern.kind === 'rectangle'
        ? {}
        : { circle: circle.value, holes: pattern.count, ...(outside === undefined ? {} : { outside: outside.value }) },
    block: flangeBlock(typed.side, {
      outside,
      holes: { ...placed(pattern, own, isOff), diameter: hole },
      instrument: typed.instrument,
    }),
  });
}

/** Even holes as count and circle; anything else, or holes off the stated centre, as coordinates. */
function placed(pattern: Pattern, own: readonly Point[], isOff: boolean): BlockParts['holes'] {
  if (pattern.kind !== 'even' || pattern.circle === null || isOff) return { at: own };
  const step = 360 / pattern.count;
  // Any hole may be called the first: the mean of all, each turned back by whole steps to be near the first one given.
  const [start = 0] = pattern.angles;
  const near = pattern.angles.map((angle) => (turned(angle - start + step / 2) % step) - step / 2);
  const first = turned(start + near.reduce((total, one) => total + one, 0) / near.length);
  return { count: pattern.count, circle: { ...pattern.circle, basis: 'stated' }, first };
}
