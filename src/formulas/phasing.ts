/**
 * Bolting two flanges up the way round that best cancels their run-out.
 *
 * The driving flange's register stands off its own axis by e1; the adapter's driven register may stand off its driving one by a; the
 * driven flange's register stands off its own shaft's axis by e2. Register on register, the driven shaft's axis ends at
 * e1 + a - e2 from the driving axis, a and e2 turned as their parts are bolted. So equal run-outs of two rims cancel with the high
 * spots together. A face that stands high by a slope s (mm in mm, towards its high spot) makes a wedge: wedges add, whichever part they
 * are of, and the driven axis leans by -(s1 + sa + s2). So equal run-outs of two faces cancel with the high spots opposite. The driving
 * face's lean also throws the far end of an adapter of thickness T aside, by -T s1.
 * Small angles; rigid parts; faces and registers that touch. Source: statics of stacked parts (geometry), the sum of directed links.
 */
import { atan } from '../units/trig.ts';
import { type Arrow, arrow, minus, noArrow, plus, scaled, sizeOf, times } from './arrows.ts';

/** One way round, degrees counter-clockwise seen from the driven side. */
export interface BoltUp {
  /** The adapter, with all that it carries, on the driving flange. */
  readonly driving: number;
  /** The driven flange on the adapter. */
  readonly driven: number;
}

/** Something that all three parts have, as it stands when nothing is turned. */
export interface ThreeParts {
  readonly driving: Arrow;
  readonly driven: Arrow;
  /** Left out where nobody measured it: then it adds doubt, but favours no way round. */
  readonly adapter?: Arrow | undefined;
}

export interface PhasingInput {
  /** How far each register's middle stands off its part's axis, mm; the adapter's: driven register against driving. */
  readonly offsets: ThreeParts;
  /** Slope of each face towards its high spot, mm in mm; the adapter's: towards its thickest place. Null when not known of both flanges. */
  readonly slopes: ThreeParts | null;
  /** Of the adapter, mm. */
  readonly thickness: number;
  /** How far from the driven face a lean still counts, mm, >= 0. */
  readonly arm: number;
  /** How far an off-centre figure may be wrong by the readings, mm, >= 0. */
  readonly doubt: number;
}

/** What one way round comes to. */
export interface Phased extends BoltUp {
  /** The driven axis off the driving axis at the driven face, mm, and its lean, mm in mm. */
  readonly offset: Arrow;
  readonly lean: Arrow;
  /** Sizes of both: mm, degrees. */
  readonly eccentricity: number;
  readonly tilt: number;
  /** The farthest that the driven axis runs off the driving one, from the face to the arm's end, mm. */
  readonly off: number;
}

export interface Phasing {
  /** Every way round, best first. */
  readonly ranked: readonly Phased[];
  readonly best: Phased;
  readonly worst: Phased;
  /** The way round that was asked about. */
  readonly chosen: Phased;
  /** What the best way is better by than the chosen one and than the worst one, mm. */
  readonly gain: number;
  readonly span: number;
  readonly doubt: number;
  /** What a difference must be greater than to be seen: the doubt, and no less than what is told, mm. */
  readonly seen: number;
  /** Whether the ways differ by more than can be seen. */
  readonly matters: boolean;
  /** Whether the best way is better than the chosen one by more than can be seen: only then is there a gain to tell of. */
  readonly pays: boolean;
}

/** Figures are told to a thousandth: half of it is not told at all, mm. */
const leastTold = 0.0005;

/** Ways that differ by less than this are equally good, mm. */
const tie = 1e-9;

/** What one way round comes to. */
export function phased({ offsets, slopes, thickness, arm }: PhasingInput, { driving, driven }: BoltUp): Phased {
  const withAdapter = arrow(1, driving);
  const withDriven = arrow(1, driving + driven);
  const onAdapter = ({ adapter }: ThreeParts): Arrow => times(withAdapter, adapter ?? noArrow);
  const thrown = slopes ? scaled(slopes.driving, -thickness) : noArrow;
  const onDriving = plus(plus(offsets.driving, thrown), onAdapter(offsets));
  const offset = minus(onDriving, times(withDriven, offsets.driven));
  const wedges = slopes ? plus(plus(slopes.driving, onAdapter(slopes)), times(withDriven, slopes.driven)) : noArrow;
  const lean = scaled(wedges, -1);
  // Distance from a fixed axis is greatest at one end of a straight line.
  const off = Math.max(sizeOf(offset), sizeOf(plus(offset, scaled(lean, arm))));
  return {
    driving,
    driven,
    offset,
    lean,
    eccentricity: sizeOf(offset),
    tilt: (atan(sizeOf(lean)) * 180) / Math.PI,
    off,
  };
}

/**
 * All ways round, ranked by how far the driven axis runs off. Of equally good ones the least lean, then the one that leaves the
 * adapter as it was chosen, then the smaller turn.
 * @param ways the turns that bring holes onto holes; at least one
 * @param chosen the way that is asked about
 */
export function phasing(input: PhasingInput, ways: readonly BoltUp[], chosen: BoltUp): Phasing {
  const moved = (way: BoltUp): number => (Math.abs(way.driving - chosen.driving) < 1e-6 ? 0 : 1);
  const ranked = ways
    .map((way) => phased(input, way))
    .sort((a, b) => {
      if (Math.abs(a.off - b.off) > tie) return a.off - b.off;
      if (Math.abs(a.tilt - b.tilt) > tie) return a.tilt - b.tilt;
      return moved(a) - moved(b) || a.driving - b.driving || a.driven - b.driven;
    });
  const [best, worst] = [ranked[0], ranked.at(-1)];
  if (!best || !worst) throw new Error('no way round was given');
  const own = phased(input, chosen);
  const span = worst.off - best.off;
  const { doubt } = input;
  const seen = Math.max(doubt, leastTold);
  const gain = own.off - best.off;
  return { ranked, best, worst, chosen: own, gain, span, doubt, seen, matters: span > seen, pays: gain > seen };
}
