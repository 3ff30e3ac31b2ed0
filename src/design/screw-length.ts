/** Which standard length a screw takes: long enough to hold, short enough neither to bottom nor to stick out. */
import type { HeadKind } from '../standards/screw-heads.ts';
import { tan } from '../units/trig.ts';
import { blindPitches, mouthOf, standardFrom, tipInside } from './adapter-thread.ts';
import type { Fixing } from './fixing.ts';
import { pocketDepth } from './fixing.ts';

/** Threads that must show beyond a nut, in pitches. Common practice. */
const beyondNut = 2;

/** The span of lengths that works, in mm, measured as the screw's own standard measures it. */
export interface LengthSpan {
  /** From the plane the length is measured from to the first full thread of what holds it. */
  readonly grip: number;
  readonly least: number;
  /** Null when nothing known limits it. */
  readonly most: number | null;
  /** What a longer one would do. */
  readonly mostWhy: string;
  /** Full thread that there is to engage, mm; null when not known. A nut's thread is not counted here. */
  readonly thread: number | null;
}

/** What lies around a fixing once the thickness is known. */
export interface Surroundings {
  readonly thickness: number;
  readonly flangeThickness: number | null;
  readonly otherFlangeThickness: number | null;
  /** Outside diameter of the other flange, mm. */
  readonly otherOutside: number;
  /** Usable thread depth in the flange, mm; null when not known. */
  readonly flangeThreadDepth: number | null;
  readonly flangeThreadThrough: boolean;
  /** Free room behind the flange, mm; null when not known. */
  readonly behindFlange: number | null;
  /** Full thread depth in the adapter and whether it comes out on the other face. */
  readonly adapterThread: { readonly depth: number; readonly through: boolean } | null;
}

/** How far below the face the top of a flat head lies, mm. */
export function flatHeadSink(fixing: Fixing): number {
  const { pocket, head } = fixing;
  return pocket.kind === 'countersink' ? (pocket.diameter - head.dk) / 2 / tan((pocket.angle * Math.PI) / 360) : 0;
}

/** Length of shank inside the adapter, from the plane a screw's length is measured from, mm. */
function shankInAdapter(fixing: Fixing, thickness: number): number {
  if (fixing.pocket.kind === 'countersink') return thickness - flatHeadSink(fixing);
  return thickness - pocketDepth(fixing) + (fixing.washer?.thickness ?? 0);
}

/**
 * Span of screw lengths for a fixing, or null when a thickness that it needs is not known.
 * Lengths are under the head; a flat head's length counts the head (ISO 10642).
 */
export function lengthSpan(fixing: Fixing, around: Surroundings): LengthSpan | null {
  if (fixing.threadIn === 'flange') return spanIntoFlange(fixing, around);
  if (around.flangeThickness === null) return null;
  return fixing.threadIn === 'adapter'
    ? spanIntoAdapter(fixing, around, around.flangeThickness)
    : spanThrough(fixing, around, around.flangeThickness);
}

function spanIntoFlange(fixing: Fixing, around: Surroundings): LengthSpan {
  const grip = shankInAdapter(fixing, around.thickness);
  const least = grip + fixing.engagement.length;
  const { flangeThickness, flangeThreadDepth: depth } = around;
  if (around.flangeThreadThrough && flangeThickness !== null) {
    // A screw may stick out of a through hole as far as there is room, but only the flange's own metal holds it.
    const room = Math.max(0, (around.behindFlange ?? 0) - tipInside);
    const thread = Math.min(flangeThickness, depth ?? flangeThickness);
    return {
      grip,
      least,
      most: grip + flangeThickness + room,
      mostWhy: 'a longer one sticks out too far behind the flange',
      thread,
    };
  }
  const most = depth === null ? null : grip + depth - blindPitches * fixing.thread.pitch;
  return { grip, least, most, mostWhy: 'a longer one bottoms in the flange', thread: depth };
}

function spanIntoAdapter(fixing: Fixing, around: Surroundings, flangeThickness: number): LengthSpan {
  const mouth = mouthOf(fixing.thread);
  const face = flangeThickness + (fixing.washer?.thickness ?? 0);
  const grip = face + mouth;
  const own = around.adapterThread;
  const most = own === null ? null : face + own.depth - (own.through ? tipInside : blindPitches * fixing.thread.pitch);
  const mostWhy = own?.through ? 'a longer one pokes out of the far face' : 'a longer one bottoms in the adapter';
  return {
    grip,
    least: grip + fixing.engagement.length,
    most,
    mostWhy,
    thread: own === null ? null : own.depth - mouth,
  };
}

function spanThrough(fixing: Fixing, around: Surroundings, flangeThickness: number): LengthSpan | null {
  if (fixing.shared && around.otherFlangeThickness === null) return null;
  const washer = fixing.washer?.thickness ?? 0;
  const before = fixing.shared
    ? (around.otherFlangeThickness ?? 0) + around.thickness + washer
    : shankInAdapter(fixing, around.thickness);
  // A second washer lies under the nut.
  const grip = before + flangeThickness + washer;
  return {
    grip,
    least: grip + (fixing.nut?.height ?? 0) + beyondNut * fixing.thread.pitch,
    most: around.behindFlange === null ? null : before + flangeThickness + around.behindFlange - tipInside,
    mostWhy: 'a longer one has no room behind the flange',
    thread: null,
  };
}

/** The shortest standard length inside a span, or null. */
export function standardLengthIn(
  kind: HeadKind,
  size: string,
  span: Pick<LengthSpan, 'least' | 'most'>,
): number | null {
  const length = standardFrom(kind, size, span.least);
  return length !== null && (span.most === null || length <= span.most + 1e-9) ? length : null;
}
