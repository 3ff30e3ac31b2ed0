import type { HeadKind } from './screw-heads.ts';
import type { Thread } from './threads.ts';

/** How much of a screw under its head is surely plain shank. */
export interface Shank {
  /** mm; 0 where the thread runs to the head. */
  readonly length: number;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * Least plain shank of a screw of nominal length `length`, mm: l - b - 5 P, b the thread length: 2 d + 12 mm (socket and countersunk
 * heads, ISO 4762, ISO 10642, up to 125 mm; longer ones have more thread), 2 D + 1/2 in (ASME B18.3). Hexagon screws to ISO 4017 and
 * button heads are threaded to the head. Source: those standards, from memory.
 */
export function shankOf(
  kind: HeadKind,
  { system, d, pitch }: Pick<Thread, 'system' | 'd' | 'pitch'>,
  length: number,
): Shank {
  const inch = system === 'unified';
  const source = inch
    ? 'ASME B18.3 thread lengths'
    : kind === 'flat'
      ? 'ISO 10642 thread lengths'
      : 'ISO 4762 thread lengths';
  if (kind === 'hex' || kind === 'button' || length > 125)
    return { length: 0, source: 'threaded to the head', memory: true };
  const threaded = 2 * d + (inch ? 12.7 : 12);
  return { length: Math.max(0, length - threaded - 5 * pitch), source, memory: true };
}
