/** Our meshes beside those of other libraries: volumes compared first, then time, as the number of holes or teeth grows. */
import { performance } from 'node:perf_hooks';
import type { TurnedPart } from '../src/model/part.ts';
import type { SheetPart } from '../src/model/sheet.ts';
import { adapterWith, volumeOf, wheelWith } from './parts.ts';
import { type Maker, makers } from './peers.ts';

export interface MeshRow {
  readonly part: string;
  /** By maker: best time of a few, ms, or why there is none. */
  readonly ms: ReadonlyMap<string, number | string>;
}

/** A mesh may miss the true volume by its facets only: this share. */
const volumeWithin = 2e-3;
/** A peer that is likely to take longer than this for a larger part is not asked, ms. */
const patience = 40_000;
/** A short time is the best of many. */
const runsFor = (ms: number): number => (ms < 50 ? 15 : ms < 500 ? 5 : ms < 3000 ? 2 : 0);

function timed({ make }: Maker, part: TurnedPart | SheetPart, truth: number): number | string {
  const once = (): number => {
    const start = performance.now();
    const made = make(part);
    const ms = performance.now() - start;
    const volume = made.volume();
    made.end?.();
    if (!(Math.abs(volume - truth) <= volumeWithin * truth))
      throw new Error(`volume off by ${((100 * (volume - truth)) / truth).toFixed(2)} %`);
    return ms;
  };
  try {
    let best = once();
    for (let run = runsFor(best); run > 0; run--) best = Math.min(best, once());
    return best;
  } catch (error) {
    return `no: ${error instanceof Error ? error.message : String(error)}`;
  }
}

const sizes = { adapter: [6, 60, 600], wheel: [10, 60, 360, 3600] } as const;
const builders = { adapter: adapterWith, wheel: wheelWith } as const;
const noun = { adapter: 'holes', wheel: 'teeth' } as const;

/** Every part by every maker. A volume that is off is an error of that maker, and is told instead of a time. */
export async function meshTable(): Promise<{ readonly makers: readonly string[]; readonly rows: readonly MeshRow[] }> {
  const all = await makers();
  const rows: MeshRow[] = [];
  for (const kind of ['adapter', 'wheel'] as const) {
    /** What each maker last took, and for what size. */
    const last = new Map<string, { readonly size: number; readonly ms: number }>();
    for (const size of sizes[kind]) {
      const part = builders[kind](size);
      const truth = volumeOf(part);
      const ms = new Map<string, number | string>();
      for (const maker of all) {
        const before = last.get(maker.name);
        // Booleans mostly grow faster than the number of tools.
        const expected = before ? before.ms * (size / before.size) ** 1.3 : 0;
        if (before && before.ms > 100 && expected > patience) {
          ms.set(maker.name, `not asked: too slow after ${before.size}`);
          continue;
        }
        const time = timed(maker, part, truth);
        if (typeof time === 'number') last.set(maker.name, { size, ms: time });
        ms.set(maker.name, time);
      }
      rows.push({ part: `${kind}, ${size} ${noun[kind]}`, ms });
    }
  }
  return { makers: all.map(({ name }) => name), rows };
}
