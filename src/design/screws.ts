/** Screws in place: where each head stands, which way it points, which standard length it has. */
import type { ScrewGroup } from '../job/joint.ts';
import { coveringFlange } from '../job/tool-access.ts';
import type { Material } from '../standards/materials.ts';
import { blindPitches, mouthOf, tipInside } from './adapter-thread.ts';
import type { Fixing } from './fixing.ts';
import { pocketDepth } from './fixing.ts';
import { flatHeadSink, type LengthSpan, lengthSpan, type Surroundings, standardLengthIn } from './screw-length.ts';
import { tightened } from './tightening.ts';
import type { WheelPlace } from './wheel.ts';

type Side = Fixing['side'];
interface Placed {
  readonly headZ: number;
  readonly points: 1 | -1;
}

/** Where a fixing's head bears and which way the shank points. */
function placeHead(fixing: Fixing, around: Surroundings): Placed {
  const { thickness, flangeThickness, otherFlangeThickness } = around;
  const towards: Record<Side, 1 | -1> = { driving: -1, driven: 1 };
  const behind = (side: Side, flange: number | null) =>
    side === 'driving' ? -(flange ?? 0) : thickness + (flange ?? 0);
  const washer = fixing.washer?.thickness ?? 0;
  if (fixing.shared) return { headZ: behind('driven', otherFlangeThickness) + washer, points: -1 };
  if (fixing.seat === 'outside') {
    const points = fixing.side === 'driving' ? 1 : -1;
    return { headZ: behind(fixing.side, flangeThickness) - points * washer, points };
  }
  // Heads on the adapter's far face, screws pointing at their own flange.
  const points = towards[fixing.side];
  const sunk = fixing.pocket.kind === 'countersink' ? flatHeadSink(fixing) : pocketDepth(fixing) - washer;
  return { headZ: fixing.side === 'driving' ? thickness - sunk : sunk, points };
}

const standards = {
  socket: { metric: 'ISO 4762', unified: 'ASME B18.3' },
  flat: { metric: 'ISO 10642', unified: 'ASME B18.3' },
  button: { metric: 'ISO 7380-1', unified: 'ASME B18.3' },
  hex: { metric: 'ISO 4017', unified: 'ASME B18.2.1' },
} as const;

/** Thread that a screw of this length really holds in: no more than there is. Null where a nut holds it or the length is not known. */
function engaged(span: LengthSpan | null, length: number | null): number | null {
  if (span === null || length === null) return null;
  return Math.min(length - span.grip, span.thread ?? Number.POSITIVE_INFINITY);
}

const ruleOf = ({ factor, row, source }: Fixing['engagement']) => `${factor} d in ${row} (${source})`;

/** A fixing's screws, placed, with their length if one can be known. */
export function screwGroup(
  fixing: Fixing,
  around: Surroundings,
  positions: readonly { x: number; y: number }[],
): ScrewGroup {
  const span = lengthSpan(fixing, around);
  const standard = span ? standardLengthIn(fixing.head.kind, fixing.thread.size, span) : null;
  const length = fixing.length ?? standard;
  const { side, seat } = fixing;
  const thread = fixing.thread.designation;
  const head = {
    kind: fixing.head.kind,
    diameter: fixing.head.dk,
    height: fixing.head.k,
    standard: standards[fixing.head.kind][fixing.thread.system],
  };
  const under = fixing.shared
    ? null
    : coveringFlange({ side, seat, positions, thread, head }, () => around.otherOutside);
  return {
    id: `${side}-screws`,
    side,
    label: fixing.shared
      ? 'through bolts of both flanges'
      : `${fixing.side} flange ${fixing.fastening === 'through' ? 'bolts' : 'screws'}`,
    fastening: fixing.fastening,
    count: positions.length,
    thread,
    major: fixing.thread.d,
    pitch: fixing.thread.pitch,
    class: fixing.class,
    head,
    washer: fixing.washer && { outside: fixing.washer.outside, thickness: fixing.washer.thickness },
    nut: fixing.nut && { height: fixing.nut.height, acrossFlats: fixing.nut.acrossFlats },
    positions,
    ...placeHead(fixing, around),
    seat,
    length,
    grip: span?.grip ?? 0,
    engagement: {
      has: fixing.threadIn === 'nut' ? null : engaged(span, length),
      needs: fixing.engagement.length,
      rule: ruleOf(fixing.engagement),
      memory: fixing.engagement.memory,
    },
    tightening: tightened({
      thread: fixing.thread,
      head: fixing.head,
      hole: fixing.bearingHoles.head,
      nut: fixing.nut && fixing.bearingHoles.nut !== null ? { ...fixing.nut, hole: fixing.bearingHoles.nut } : null,
      friction: fixing.friction,
      class: fixing.class,
      under,
      seats: fixing.seats,
      parent: fixing.parent && { material: fixing.parent, engaged: engaged(span, length) },
    }),
    lengths: {
      least: span?.least ?? 0,
      most: span?.most ?? null,
      mostWhy: span?.mostWhy ?? 'flange thickness not known',
    },
  };
}

/** The wheel's screws: button heads on the wheel, thread in the adapter. */
export function wheelScrews(
  place: WheelPlace,
  seatZ: number,
  tapped: { readonly depth: number; readonly through: boolean },
  material: Material,
  positions: readonly { x: number; y: number }[],
): ScrewGroup {
  const { thread, head, engagement, sheet } = place;
  const towards = place.face === 'driven' ? 1 : -1;
  const mouth = mouthOf(thread);
  const span: LengthSpan = {
    grip: sheet + mouth,
    least: sheet + mouth + engagement.length,
    most: sheet + tapped.depth - (tapped.through ? tipInside : blindPitches * thread.pitch),
    mostWhy: tapped.through ? 'a longer one pokes out of the far face' : 'a longer one bottoms in the adapter',
    thread: tapped.depth - mouth,
  };
  const length = standardLengthIn('button', thread.size, span);
  return {
    id: 'wheel-screws',
    side: 'wheel',
    label: 'wheel screws',
    fastening: 'into_adapter',
    count: positions.length,
    thread: thread.designation,
    major: thread.d,
    pitch: thread.pitch,
    class: '8.8',
    head: { kind: 'button', diameter: head.dk, height: head.k, standard: standards.button[thread.system] },
    washer: null,
    nut: null,
    positions,
    headZ: seatZ + towards * sheet,
    points: towards === 1 ? -1 : 1,
    seat: 'surface',
    length,
    grip: span.grip,
    engagement: {
      has: engaged(span, length),
      needs: engagement.length,
      rule: ruleOf(engagement),
      memory: engagement.memory,
    },
    tightening: tightened({
      thread,
      head,
      hole: place.hole,
      nut: null,
      friction: null,
      class: '8.8',
      seats: [{ under: 'head', part: 'wheel', material, hole: place.hole, washer: null }],
      parent: { material: place.parent, engaged: engaged(span, length) },
    }),
    lengths: { least: span.least, most: span.most, mostWhy: span.mostWhy },
  };
}
