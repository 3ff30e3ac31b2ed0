/** Which standard length a screw takes: long enough to hold, short enough neither to bottom nor to stick out. */
import type { HeadKind } from '../standards/screw-heads.ts';
import { standardLengths } from '../standards/screw-lengths.ts';
import type { Fixing } from './fixing.ts';
import { pocketDepth } from './fixing.ts';

/** A screw's tip stays this far inside the face it points at, mm. Common practice. */
export const tipInside = 0.5;
/** A screw stops this many pitches short of the end of a blind thread. Common practice: the last turns are not full. */
const blindPitches = 1;
/** Threads that must show beyond a nut, in pitches. Common practice. */
const beyondNut = 2;

/** The span of lengths that works, in mm, measured as the screw's own standard measures it. */
export interface LengthSpan {
  /** From the plane the length is measured from to the first thread of what holds it. */
  readonly grip: number;
  readonly least: number;
  /** Null when nothing known limits it. */
  readonly most: number | null;
  /** What a longer one would do. */
  readonly mostWhy: string;
}

/** What lies around a fixing once the thickness is known. */
export interface Surroundings {
  readonly thickness: number;
  readonly flangeThickness: number | null;
  readonly otherFlangeThickness: number | null;
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
  return pocket.kind === 'countersink' ? (pocket.diameter - head.dk) / 2 / Math.tan((pocket.angle * Math.PI) / 360) : 0;
}

/**
 * Span of screw lengths for a fixing, or null when a thickness that it needs is not known.
 * Lengths are under the head; a flat head's length counts the head (ISO 10642).
 */
export function lengthSpan(fixing: Fixing, around: Surroundings): LengthSpan | null {
  const { engagement, thread } = fixing;
  const washer = fixing.washer?.thickness ?? 0;
  const inAdapter =
    fixing.pocket.kind === 'countersink'
      ? around.thickness - flatHeadSink(fixing)
      : around.thickness - pocketDepth(fixing) + washer;

  if (fixing.threadIn === 'flange') {
    const least = inAdapter + engagement.length;
    if (around.flangeThreadThrough && around.flangeThickness !== null) {
      const most = inAdapter + around.flangeThickness + Math.max(0, (around.behindFlange ?? 0) - tipInside);
      return { grip: inAdapter, least, most, mostWhy: 'a longer one sticks out behind the flange' };
    }
    const depth = around.flangeThreadDepth;
    return {
      grip: inAdapter,
      least,
      most: depth === null ? null : inAdapter + depth - blindPitches * thread.pitch,
      mostWhy: 'a longer one bottoms in the flange',
    };
  }
  if (around.flangeThickness === null) return null;
  if (fixing.threadIn === 'adapter') {
    const grip = around.flangeThickness + washer;
    const own = around.adapterThread;
    const most = own === null ? null : grip + (own.through ? around.thickness - tipInside : own.depth - blindPitches * thread.pitch);
    const mostWhy = own?.through ? 'a longer one pokes out of the far face' : 'a longer one bottoms in the adapter';
    return { grip, least: grip + engagement.length, most, mostWhy };
  }
  const nut = fixing.nut?.height ?? 0;
  const others = fixing.shared ? (around.otherFlangeThickness ?? Number.NaN) + around.thickness + washer : inAdapter;
  if (Number.isNaN(others)) return null;
  const grip = others + around.flangeThickness;
  return {
    grip,
    least: grip + nut + beyondNut * thread.pitch,
    most: around.behindFlange === null ? null : grip + around.behindFlange - tipInside,
    mostWhy: 'a longer one has no room behind the flange',
  };
}

/** The shortest standard length inside a span, or null. */
export function standardLengthIn(kind: HeadKind, size: string, span: LengthSpan): number | null {
  const lengths = standardLengths(kind, size);
  if (!lengths.ok) return null;
  const tolerance = 1e-9;
  return (
    lengths.value.lengths.find((l) => l >= span.least - tolerance && (span.most === null || l <= span.most + tolerance)) ?? null
  );
}
