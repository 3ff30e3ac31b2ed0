/** How deep the adapter's own threads are cut: as deep as a standard screw asks for, blind where the metal allows. */
import type { HeadKind } from '../standards/screw-heads.ts';
import { standardLengths } from '../standards/screw-lengths.ts';
import { blindTap } from '../standards/tap-depth.ts';
import type { Thread } from '../standards/threads.ts';

/** A screw's tip stays this far inside the face it points at, mm. Common practice. */
export const tipInside = 0.5;
/** A screw stops this many pitches short of the end of a blind thread. Common practice: the last turns are not full. */
export const blindPitches = 1;
/** Room for a screw whose length is not known yet, mm: screws of these sizes come in steps of 5 mm. */
const lengthStep = 5;

/** What a tapped hole must take. */
export interface ThreadNeed {
  readonly thread: Thread;
  readonly head: HeadKind;
  /** Full threads that must be engaged, mm. */
  readonly engagement: number;
  /** What the screw passes before it reaches the adapter, mm; null when a flange's thickness is not known. */
  readonly grip: number | null;
  /** Screw length asked for, mm; null to take a standard one. */
  readonly length: number | null;
}

/** Depth of full thread and of the drill; drill depth null: right through. */
export interface TappedDepth {
  readonly threadDepth: number;
  readonly drillDepth: number | null;
}

/** Height of a tapped hole's mouth chamfer, mm: drilled out to the major diameter at 45 degrees. Its turns do not count. */
export function mouthOf({ d, tapDrill }: Thread): number {
  return (d - tapDrill) / 2;
}

/** Least thickness that holds this thread when it is cut right through, mm. */
export function leastThreadRoom(need: Pick<ThreadNeed, 'thread' | 'engagement'>): number {
  return mouthOf(need.thread) + need.engagement + tipInside;
}

/** The shortest standard length of at least `least` mm, or null. */
export function standardFrom(head: HeadKind, size: string, least: number): number | null {
  const lengths = standardLengths(head, size);
  return lengths.ok ? (lengths.value.lengths.find((length) => length >= least - 1e-9) ?? null) : null;
}

/** Full thread that the screw wants, mm from the face: its own reach and the turns at the end that are not full. */
export function threadWanted({ thread, head, engagement, grip, length }: ThreadNeed): number {
  const holding = mouthOf(thread) + engagement;
  const spare = blindPitches * thread.pitch;
  if (grip === null) return holding + lengthStep + spare;
  const screw = length ?? standardFrom(head, thread.size, grip + holding);
  return Math.max(holding, screw === null ? holding + lengthStep : screw - grip) + spare;
}

/** Depth of the drill's point when the thread is cut blind, mm; null when no run-out is tabled for the pitch. */
export function blindTip(need: ThreadNeed): number | null {
  const blind = blindTap(need.thread, threadWanted(need));
  return blind.ok ? blind.value.tip : null;
}

/**
 * Depths of a tapped hole: blind where the drill's point leaves a floor of the least web, else right through.
 * @param room metal under the mouth, mm
 * @param asked full thread depth asked for, mm; null: what the screw wants
 */
export function tappedDepth(need: ThreadNeed, room: number, web: number, asked: number | null = null): TappedDepth {
  const threadDepth = asked ?? threadWanted(need);
  const blind = blindTap(need.thread, threadDepth);
  return blind.ok && blind.value.tip + web <= room
    ? { threadDepth, drillDepth: blind.value.drill }
    : { threadDepth: room, drillDepth: null };
}
