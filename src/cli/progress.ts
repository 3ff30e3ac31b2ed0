/** A progress bar on standard error, drawn only where somebody watches. */
import { performance } from 'node:perf_hooks';
import type { Io } from './io.ts';

export interface Progress {
  /** @param done of the whole, counted from 0 */
  readonly at: (done: number) => void;
  /** Wipes the bar. */
  readonly end: () => void;
}

const wide = 24;
/** No more often than this, ms. */
const every = 100;

/** Seconds as people say them: "45 s", "2 min 10 s", "3 h 05 min". */
export function timeText(seconds: number): string {
  const s = Math.max(0, Math.round(seconds));
  if (s < 60) return `${s} s`;
  if (s < 3600) return `${Math.floor(s / 60)} min ${String(s % 60).padStart(2, '0')} s`;
  return `${Math.floor(s / 3600)} h ${String(Math.floor((s % 3600) / 60)).padStart(2, '0')} min`;
}

/** One line of the bar. @param perSecond speed so far; 0 while nothing is known */
export function barText(done: number, whole: number, perSecond: number): string {
  const share = whole === 0 ? 1 : done / whole;
  const full = Math.round(share * wide);
  const left = perSecond > 0 && done < whole ? `, ${timeText((whole - done) / perSecond)} left` : '';
  return `[${'#'.repeat(full)}${'.'.repeat(wide - full)}] ${Math.floor(100 * share)} % ${done} of ${whole}${left}`;
}

/** @param from where it starts: what was done earlier says nothing of the speed now */
export function progressBar(io: Io, from: number, whole: number): Progress {
  if (io.isWatched !== true) return { at: () => undefined, end: () => undefined };
  const start = performance.now();
  let last = -every;
  return {
    at: (done) => {
      const now = performance.now();
      if (now - last < every && done < whole) return;
      last = now;
      const seconds = (now - start) / 1000;
      io.err(`\r\x1b[K${barText(done, whole, seconds > 0 ? (done - from) / seconds : 0)}`);
    },
    end: () => io.err('\r\x1b[K'),
  };
}
