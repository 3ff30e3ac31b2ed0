/** Which thread is it? From the diameter over the crests and the pitch, with the threads that are easily taken for it. mm. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { threadLimits } from '../standards/thread-limits.ts';
import { allThreads, type Thread } from '../standards/threads.ts';
import { mm, tidy } from './words.ts';

export interface ThreadReading {
  /** Over the crests of a screw, or across the crests inside a tapped hole, mm. */
  readonly diameter: number;
  /** Half-width of that reading, mm. */
  readonly doubt: number;
  /** A screw reads a little under its major diameter; a tapped hole is read at its minor diameter. */
  readonly of: 'screw' | 'hole';
  /** Pitch, mm (25.4 / threads per inch), and its half-width; left out when not measured. */
  readonly pitch?: number | undefined;
  readonly pitchDoubt?: number | undefined;
}

export interface ThreadCandidate {
  readonly thread: Thread;
  /** What the diameter should read, least and greatest, by the usual class (6g or 6H, 2A or 2B); nominal when not tabled. */
  readonly expected: { readonly min: number; readonly max: number };
  /** How far outside of that the reading is, mm; 0 when inside. */
  readonly diameterMiss: number;
  /** Reading less pitch, mm; null when no pitch was measured. */
  readonly pitchMiss: number | null;
  /** True when both lie within their doubts. */
  readonly fits: boolean;
  /** 0 is perfect; 1 for each doubt that a reading misses by. */
  readonly distance: number;
}

/** Two threads that start into each other and then bind or strip. */
export interface ThreadTwin {
  readonly a: Thread;
  readonly b: Thread;
  /** Difference of the major diameters, b less a. */
  readonly diameter: number;
  /** Difference of the pitches over ten of them, b less a. */
  readonly overTen: number;
  readonly sentence: string;
}

/** A thread gauge tells pitches apart to about this, mm; ten pitches by caliper do better. Common practice. */
export const gaugeDoubt = 0.04;

/** Diameters and ten pitches nearer together than these are easily taken for each other, mm. Common practice. */
const alike = { diameter: 0.8, overTen: 2.5 } as const;

/**
 * Threads of the tables that come nearest to a reading, best first. A worn or plated thread reads a tenth off: that much is
 * forgiven on the diameter before it counts as a misfit (common practice). Misses: a reading that is no size at all.
 */
export function identifyThread(reading: ThreadReading, most = 5): Lookup<ThreadCandidate[]> {
  const { diameter, doubt, pitch, pitchDoubt = gaugeDoubt } = reading;
  if (!(diameter > 0) || (pitch !== undefined && !(pitch > 0)))
    return missing('A thread has a diameter and a pitch above 0.');
  if (pitch !== undefined && pitch > diameter / 2)
    return missing(
      `A pitch of ${mm(pitch)} does not go on a thread of ${mm(diameter)}: was the length of ten pitches, or threads per inch, typed as the pitch?`,
    );
  const worn = doubt + 0.1;
  const candidates = allThreads().map((thread): ThreadCandidate => {
    const expected = expectedReading(thread, reading.of);
    const diameterMiss = Math.max(0, expected.min - diameter, diameter - expected.max);
    const pitchMiss = pitch === undefined ? null : pitch - thread.pitch;
    const fits = diameterMiss <= worn && (pitchMiss === null || Math.abs(pitchMiss) <= pitchDoubt);
    // The middle of the limits breaks ties between threads that both hold the reading.
    const middle = Math.abs(diameter - (expected.min + expected.max) / 2);
    const distance = diameterMiss / worn + Math.abs(pitchMiss ?? 0) / pitchDoubt + 0.1 * middle;
    return { thread, expected, diameterMiss, pitchMiss, fits, distance };
  });
  return found(candidates.sort((a, b) => a.distance - b.distance).slice(0, most));
}

function expectedReading(thread: Thread, of: 'screw' | 'hole'): { min: number; max: number } {
  const limits = threadLimits(thread);
  if (limits.ok) return of === 'screw' ? limits.value.d : limits.value.D1;
  const size = of === 'screw' ? thread.d : thread.D1;
  return { min: size, max: size };
}

/** Threads near `thread` in diameter and pitch, nearest first: the ones that start by hand and are wrong. */
export function threadTwins(thread: Thread): ThreadTwin[] {
  return allThreads()
    .filter((other) => other.designation !== thread.designation)
    .map((other) => twinOf(thread, other))
    .filter(({ diameter, overTen }) => Math.abs(diameter) <= alike.diameter && Math.abs(overTen) <= alike.overTen)
    .sort((a, b) => nearness(a) - nearness(b));
}

function nearness({ diameter, overTen }: ThreadTwin): number {
  return Math.abs(diameter) / alike.diameter + Math.abs(overTen) / alike.overTen;
}

/** How two threads differ: major diameter, and length over ten pitches. */
export function twinOf(a: Thread, b: Thread): ThreadTwin {
  const diameter = b.d - a.d;
  const overTen = 10 * (b.pitch - a.pitch);
  const same = Math.abs(overTen) < 0.005;
  const pitches = same
    ? 'the pitch is the same, so only the diameter tells them apart'
    : `ten pitches are ${tidy(10 * b.pitch, 2)} against ${tidy(10 * a.pitch, 2)} mm, ${tidy(Math.abs(overTen), 2)} mm ${overTen > 0 ? 'longer' : 'shorter'}`;
  const diameters =
    Math.abs(diameter) < 5e-4
      ? 'the diameter is the same'
      : `its diameter is ${mm(Math.abs(diameter))} ${diameter > 0 ? 'larger' : 'smaller'}`;
  return { a, b, diameter, overTen, sentence: `${b.designation} is not ${a.designation}: ${pitches}; ${diameters}.` };
}
