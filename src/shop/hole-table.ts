/**
 * Every hole of the adapter as the bench works it: where it stands seen from the side it is worked from, and what is cut there in
 * which order. Drawing, set-up sheets and drilling program read this one table. mm, degrees.
 *
 * Datum: the middle of the indicating bore, and the face of that side. Seen from the driven side, x runs to the right through the index
 * mark. Turned over like a page of a book, the index mark comes to lie on the left: seen from the driving side, x is mirrored once.
 */
import type { Joint } from '../job/joint.ts';
import { placedPositions } from '../parts/adapter-holes.ts';
import type { HoleGroupSpec, HoleShape } from '../parts/adapter-spec.ts';
import { atan2 } from '../units/trig.ts';

export type WorkFace = 'driving' | 'driven';

/** One cut of a hole. Depths from the face the hole opens on, to the full diameter; null: right through. */
export type Cut =
  | { readonly op: 'spot'; readonly diameter: number }
  | { readonly op: 'drill'; readonly diameter: number; readonly depth: number | null; readonly point: number }
  | { readonly op: 'counterbore'; readonly diameter: number; readonly depth: number }
  | { readonly op: 'countersink'; readonly diameter: number; readonly angle: number }
  | { readonly op: 'ream'; readonly diameter: number; readonly depth: number | null; readonly zone: string }
  | { readonly op: 'tap'; readonly thread: string; readonly depth: number | null };

/** One hole of a set. */
export interface HolePlace {
  /** Letter of the set and number of the hole: "A1". */
  readonly tag: string;
  /** Id of the drilling in the part model. */
  readonly drilling: string;
  /** Seen from the side it is worked from. */
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Counter-clockwise from x, 0 up to 360. */
  readonly angle: number;
}

/** Equal holes that are worked in one go. */
export interface HoleSet {
  readonly letter: string;
  readonly group: string;
  readonly side: HoleGroupSpec['side'];
  /** In trade words: "driving screws, M8". */
  readonly what: string;
  readonly from: WorkFace;
  /** How far below the face of that side the holes open: a wheel's screws stand on the step of its seat. */
  readonly below: number;
  readonly cuts: readonly Cut[];
  readonly holes: readonly HolePlace[];
}

/** Spot drills are run to about this wide, or as wide as the hole; common practice: a chamfer's width more than the drill. */
const spotOver = 0.5;
/** Dowel holes are drilled this much under size before the reamer. Common practice: 0.2 to 0.3 mm. */
const reamerStock = 0.25;
/** Point of a common drill, degrees. */
const commonPoint = 118;

/** The face that a hole is worked from: where its head, or its screw, goes in. */
export const workFaceOf = (shape: HoleShape): WorkFace => (shape.kind === 'passing' ? shape.headFace : shape.face);

/** The cuts of a hole in the order in which they are made. */
export function cutsOf(shape: HoleShape): Cut[] {
  if (shape.kind === 'passing') {
    const { head, diameter } = shape;
    const through: Cut[] = [
      { op: 'spot', diameter: diameter + spotOver },
      { op: 'drill', diameter, depth: null, point: commonPoint },
    ];
    if (head.kind === 'counterbore')
      return [...through, { op: 'counterbore', diameter: head.diameter, depth: head.depth }];
    return head.kind === 'countersink'
      ? [...through, { op: 'countersink', diameter: head.diameter, angle: head.angle }]
      : through;
  }
  if (shape.kind === 'dowel') {
    const { diameter, drillDepth, pointAngle, limits } = shape;
    return [
      { op: 'spot', diameter },
      { op: 'drill', diameter: diameter - reamerStock, depth: drillDepth, point: pointAngle },
      { op: 'ream', diameter, depth: drillDepth, zone: limits.zone },
    ];
  }
  return [
    // The spot is run out to the thread's major diameter: the mouth of the thread.
    { op: 'spot', diameter: shape.major },
    { op: 'drill', diameter: shape.tapDrill, depth: shape.drillDepth, point: shape.pointAngle },
    { op: 'tap', thread: shape.thread, depth: shape.drillDepth === null ? null : shape.threadDepth },
  ];
}

const tidy = (value: number) => Number(value.toFixed(6)) + 0;

/** A place in adapter coordinates, seen from a side. */
export function seenFrom(
  face: WorkFace,
  { x, y }: { readonly x: number; readonly y: number },
): { x: number; y: number } {
  return face === 'driven' ? { x: tidy(x), y: tidy(y) } : { x: tidy(-x), y: tidy(y) };
}

function placesOf(joint: Joint, group: HoleGroupSpec, from: WorkFace, letter: string): HolePlace[] {
  const places = placedPositions(joint.adapterSpec, group).map((position, i) => {
    const { x, y } = seenFrom(from, position);
    const angle = (atan2(y, x) * 180) / Math.PI;
    return {
      drilling: `${group.id}-${i + 1}`,
      x,
      y,
      radius: tidy(Math.hypot(x, y)),
      angle: tidy(angle < -1e-9 ? angle + 360 : Math.max(0, angle)),
    };
  });
  // The table runs round the circle, so that the read-out never crosses the part.
  return places
    .sort((a, b) => a.angle - b.angle || a.radius - b.radius)
    .map((place, i) => ({ tag: `${letter}${i + 1}`, ...place }));
}

const sideWords = { driving: 'driving screws', driven: 'driven screws', wheel: 'wheel screws' } as const;

/** Every set of holes of the adapter, lettered in order: those worked from the driving side first. */
export function holeSets(joint: Joint): HoleSet[] {
  const { groups, wheelSeat } = joint.adapterSpec;
  const ordered = [...groups].sort(
    (a, b) => Number(workFaceOf(a.shape) === 'driven') - Number(workFaceOf(b.shape) === 'driven'),
  );
  return ordered.map((group, i) => {
    const letter = String.fromCharCode(65 + i);
    const from = workFaceOf(group.shape);
    const thread = joint.screws.find(({ id }) => id === group.id)?.thread ?? '';
    const what =
      group.shape.kind === 'dowel'
        ? `${group.side} dowels`
        : `${sideWords[group.side]}${thread === '' ? '' : `, ${thread}`}`;
    const below = group.side === 'wheel' && wheelSeat?.face === from ? wheelSeat.height : 0;
    return {
      letter,
      group: group.id,
      side: group.side,
      what,
      from,
      below,
      cuts: cutsOf(group.shape),
      holes: placesOf(joint, group, from, letter),
    };
  });
}
