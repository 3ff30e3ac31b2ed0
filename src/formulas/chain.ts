/**
 * A chain of small shifts across the axis: each link pushes the next axis aside by some size, towards some side.
 *
 * Valid for: shifts that are small beside the parts (thousandths against tens of millimetres), so that they add as vectors. Any
 * unit, the same for all links: mm for eccentricity, mm per mm for tilt. Three answers: the worst that can happen, the usual
 * root of the sum of squares, and what chance makes of it. Left out: links that hang together (one bad set-up that spoils two).
 */
import { cos, sin } from '../units/trig.ts';
import { type Arrow, arrow, noArrow, plus, sizeOf } from './arrows.ts';
import { chanceFrom } from './chance.ts';

/** One link of the chain. */
export interface Link {
  readonly id: string;
  /** In trade words: "driving register fit". */
  readonly what: string;
  /** The shift lies between these two sizes, >= 0; equal where the size is known. */
  readonly least: number;
  readonly most: number;
  /**
   * Root mean square of a shift that is itself the sum of many small ones, so that its greatest is far from usual; left out where
   * every size up to the greatest is as likely. Angle not known.
   */
  readonly usual?: number;
  /** Towards which angle it pushes, degrees; null: any. */
  readonly angle: number | null;
  /** Where a dial stood highest, degrees; left out where none told. What is held there pushes the other way, and an axis leans away from it. */
  readonly high?: number;
  /**
   * Half-width of the doubt of what was read, >= 0. Of a shift with a known angle: how far the arrow's tip may be from where it is drawn. Of one
   * without: the greatest size has it in already, and is told in two parts.
   */
  readonly doubt: number;
  /** Where the size comes from: "dial readings", "fit limits", "usual for the set-up". */
  readonly source: string;
  /** True where that rests on memory. */
  readonly memory: boolean;
  /** What to do to make it smaller, a clause without its full stop; empty where that is done already and nothing is left. */
  readonly cure: string;
}

/** What a chain comes to. */
export interface Stack {
  /** Nothing can be further off than this. */
  readonly worst: number;
  /** Root of the sum of squares: the known arrows added as arrows, all else as independent. */
  readonly likely: number;
  /** The sum of the links whose angle is known. */
  readonly known: Arrow;
}

/** Sum of the links whose angle is known, as an arrow. */
function knownArrow(links: readonly Link[]): Arrow {
  return links.reduce((sum, { angle, most }) => (angle === null ? sum : plus(sum, arrow(most, angle))), noArrow);
}

/** How far a link may stray from its arrow: its whole size where the angle is not known, else its doubt. */
export const stray = ({ angle, most, doubt }: Link) => (angle === null ? most : doubt);

/**
 * Worst and likely sum of a chain. Worst: the known arrows, and every other link at its greatest in the same direction. Likely: root
 * of the sum of squares of the same parts. Source: vector sum; statistical stacking of independent errors, common practice.
 */
export function stackOf(links: readonly Link[]): Stack {
  const known = knownArrow(links);
  const sum = sizeOf(known);
  return {
    worst: links.reduce((total, link) => total + stray(link), sum),
    likely: Math.hypot(sum, ...links.map((link) => link.usual ?? stray(link))),
    known,
  };
}

/**
 * Mean of the squared sum, when every link is thrown as `scatterOf` throws it: independent arrows of even direction add by their
 * squares. Closed form: |known|^2 + sum of (a^2 + a b + b^2)/3 for a size even between a and b, usual^2 for a sum of many, and doubt^2/2
 * for a disc of doubt.
 */
export function meanSquareOf(links: readonly Link[]): number {
  const { x, y } = knownArrow(links);
  return links.reduce(
    (sum, { angle, least, most, doubt, usual }) => {
      if (usual !== undefined) return sum + usual * usual;
      return sum + (angle === null ? (least * least + least * most + most * most) / 3 : (doubt * doubt) / 2);
    },
    x * x + y * y,
  );
}

/** How a chain comes out over many makings. */
export interface Scatter {
  /** Sizes of the sum, smallest first. Costs a sort: the other two do without. */
  sizes(): Float64Array;
  /** The size that this share of makings stays within; share 0 to 1. */
  within(share: number): number;
  /** Share of makings whose sum is no larger than a limit, 0 to 1. */
  chanceOf(limit: number): number;
}

/** Throws enough for a chance to within half a per cent (one standard error at 50 %). */
export const usualRuns = 10_000;

/** Throws of one seed: the direction of each as cosine and sine, and an even number for its size. */
interface Throws {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  readonly number: Float64Array;
}

/** Directions cost most of a throw, and every chain starts from the same ones: they are kept for the seed that was asked for last. */
let kept: { readonly seed: number; readonly throws: Throws } | null = null;

/** More than this many throws are not kept: 24 bytes each. */
const mostKept = 400_000;

function throwsOf(seed: number, count: number): Throws {
  if (kept?.seed === seed && kept.throws.number.length >= count) return kept.throws;
  const chance = chanceFrom(seed);
  const throws = {
    cos: new Float64Array(count),
    sin: new Float64Array(count),
    number: new Float64Array(count),
  };
  for (let i = 0; i < count; i++) {
    const turn = 2 * Math.PI * chance();
    throws.cos[i] = cos(turn);
    throws.sin[i] = sin(turn);
    throws.number[i] = chance();
  }
  if (count <= mostKept) kept = { seed, throws };
  return throws;
}

/**
 * Throw the chain many times: a link without a known angle takes any angle and any size between its two alike; a known one lies
 * anywhere in the disc of its doubt alike. The same seed gives the same answer. Source: Monte Carlo by definition.
 * @param runs whole number, 1 or more
 */
export function scatterOf(links: readonly Link[], seed = 1, runs = usualRuns): Scatter {
  const known = knownArrow(links);
  const loose = links.filter((link) => stray(link) > 0);
  const { cos, sin, number } = throwsOf(seed, runs * loose.length);
  const [x, y] = [new Float64Array(runs).fill(known.x), new Float64Array(runs).fill(known.y)];
  const size = new Float64Array(runs);
  for (const [k, link] of loose.entries()) {
    // A stretch of throws for each link: read in order, they come through the processor's caches.
    const from = k * runs;
    size.set(number.subarray(from, from + runs));
    throwSizes(link, size);
    for (let run = 0; run < runs; run++) {
      const shift = size[run] as number;
      x[run] = (x[run] as number) + shift * (cos[from + run] as number);
      y[run] = (y[run] as number) + shift * (sin[from + run] as number);
    }
  }
  // Squares order as sizes do, and are cheaper.
  const squares = size;
  for (let run = 0; run < runs; run++) squares[run] = (x[run] as number) ** 2 + (y[run] as number) ** 2;
  return {
    sizes: () => squares.map(Math.sqrt).sort(),
    within: (share) => Math.sqrt(smallest(squares, Math.min(runs, Math.max(1, Math.ceil(share * runs))))),
    chanceOf: (limit) => {
      let count = 0;
      for (let run = 0; run < runs; run++) if (Math.sqrt(squares[run] as number) <= limit) count++;
      return count / runs;
    },
  };
}

/** Even numbers from 0 up to 1, turned in place into sizes of a link. A loop for each kind: this is where the time goes. */
function throwSizes({ angle, least, most, doubt, usual }: Link, numbers: Float64Array): void {
  const count = numbers.length;
  if (usual !== undefined) {
    // Many small arrows add up to a bell in the plane, whose distance from the middle is spread by Rayleigh's law.
    for (let i = 0; i < count; i++)
      numbers[i] = Math.min(most, usual * Math.sqrt(-Math.log(1 - (numbers[i] as number))));
  } else if (angle === null) {
    for (let i = 0; i < count; i++) numbers[i] = least + (most - least) * (numbers[i] as number);
  } else {
    // The root spreads points evenly over a disc.
    for (let i = 0; i < count; i++) numbers[i] = doubt * Math.sqrt(numbers[i] as number);
  }
}

/**
 * The value that `count` of the numbers are no larger than, count from 1 to their number. Puts the numbers into another order: sorting
 * them all would cost more than throwing them. Method: quickselect (C. A. R. Hoare, Algorithm 65, 1961).
 */
function smallest(numbers: Float64Array, count: number): number {
  const wanted = count - 1;
  let [low, high] = [0, numbers.length - 1];
  while (low < high) {
    const middle = numbers[(low + high) >> 1] as number;
    let [i, j] = [low, high];
    while (i <= j) {
      while ((numbers[i] as number) < middle) i++;
      while ((numbers[j] as number) > middle) j--;
      if (i > j) break;
      const swapped = numbers[i] as number;
      numbers[i++] = numbers[j] as number;
      numbers[j--] = swapped;
    }
    if (wanted <= j) high = j;
    else if (wanted >= i) low = i;
    else break;
  }
  return numbers[wanted] as number;
}
