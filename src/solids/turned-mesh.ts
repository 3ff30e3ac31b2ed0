/**
 * Mesh of a turned part, built directly: walls ring by ring, and caps filled height by height. No booleans.
 *
 * Facets: the outside is never larger than the true part, holes are never smaller, and no facet is further
 * from the true surface than the chord error. Where outlines cross, the direct way is not open and booleans
 * take over.
 */
import { type Facets, nestingOf } from '../geometry/nesting.ts';
import { curvesOf, type TurnedCurves } from '../geometry/turned-curves.ts';
import type { Mesh } from '../model/mesh.ts';
import type { TurnedPart } from '../model/part.ts';
import { cos } from '../units/trig.ts';
import { aloneFamily, meshFamily, type RingedCurve } from './ring-family.ts';
import { holeRings, largestRadius, outerRings, sidesFor } from './turned-ring.ts';

export interface MeshOptions {
  /** Largest distance of a facet from the true surface, mm; more than 0. */
  readonly chordError?: number;
}

/** Chord error when none is asked for, mm. */
export const CHORD_ERROR = 0.01;

/**
 * Least web between two polygons that is built directly, mm. Thinner ones would not outlive the rounding of
 * an STL file.
 */
const MARGIN = 1e-3;

/**
 * Closed mesh of a turned part, without its engravings. Direct where outlines keep clear of one another, else
 * by booleans. Throws a RangeError on a profile that is not one (see `curvesOf`) or a chord error that is not
 * positive.
 */
export async function meshTurned(part: TurnedPart, options: MeshOptions = {}): Promise<Mesh> {
  return meshTurnedDirect(part, options) ?? (await meshTurnedByBooleans(part, options));
}

/**
 * The same by booleans alone, from the same facets: slower, right for outlines that cross, and a check on the
 * direct way.
 */
export async function meshTurnedByBooleans(part: TurnedPart, options: MeshOptions = {}): Promise<Mesh> {
  const { subtractMeshes } = await import('./manifold.ts');
  const chordError = options.chordError ?? CHORD_ERROR;
  const curves = curvesOf(part);
  const { outer, holes } = ringed(curves, chordError);
  const body = meshFamily(aloneFamily(outer, curves.flats, chordError));
  return subtractMeshes(
    body,
    holes.map((hole) => meshFamily(aloneFamily(hole, null, chordError))),
  );
}

/** The same without booleans: null when outlines cross, touch, or come nearer than their facets allow. */
export function meshTurnedDirect(part: TurnedPart, options: MeshOptions = {}): Mesh | null {
  const chordError = options.chordError ?? CHORD_ERROR;
  const curves = curvesOf(part);
  const { outer, holes, facets } = ringed(curves, chordError);
  const { slabs, crossing } = nestingOf(curves, facets);
  if (crossing) return null;
  return meshFamily({ outer, holes, flats: curves.flats, slabs, chordError });
}

function ringed(
  curves: TurnedCurves,
  chordError: number,
): { outer: RingedCurve; holes: RingedCurve[]; facets: Facets } {
  const sides = sidesFor(largestRadius(curves.outer), chordError, true);
  const holeSides = curves.drillings.map((c) => sidesFor(largestRadius(c), chordError, false));
  return {
    outer: { curve: curves.outer, rings: outerRings(sides, curves.flats) },
    holes: curves.drillings.map((curve, i) => ({
      curve,
      rings: holeRings(curve.x, curve.y, holeSides[i] as number),
    })),
    facets: {
      outerInside: cos(Math.PI / sides),
      holeOutside: holeSides.map((n) => 1 / cos(Math.PI / n)),
      margin: MARGIN,
    },
  };
}
