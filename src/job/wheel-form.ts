/** Where the teeth or the windows of the job's wheel lie, from the keys that were typed. mm. */
import { hasWindows, type ToneWheelSpec, type ToothBand } from '../parts/tone-wheel.ts';
import type { WheelInput } from './schema-wheel.ts';

/** What the parts of a wheel are called. */
export interface ToothWords {
  readonly tooth: string;
  readonly teeth: string;
  readonly valley: string;
  readonly valleys: string;
  /** What lies inside of them: "roots" of teeth. */
  readonly roots: string;
  /** What stands furthest out. */
  readonly tips: string;
}

const openWords: ToothWords = {
  tooth: 'tooth',
  teeth: 'teeth',
  valley: 'valley',
  valleys: 'valleys',
  roots: 'tooth roots',
  tips: 'tips',
};
const windowWords: ToothWords = {
  tooth: 'bar',
  teeth: 'bars',
  valley: 'window',
  valleys: 'windows',
  roots: 'windows',
  tips: 'rim',
};

/** Words for open teeth, or for bars and windows. */
export const toothWords = (spec: Pick<ToneWheelSpec, 'rim'>): ToothWords =>
  hasWindows(spec) ? windowWords : openWords;

/** The same for the wheel of a job; teeth where it has none. */
export const wordsOf = (wheel: Pick<WheelInput, 'form'> | undefined): ToothWords =>
  wheel?.form === 'windows' ? windowWords : openWords;

/** Narrowest rim that is chosen outside of windows, mm. Common practice: the sheet's thickness, and 3 mm at least. */
const leastRim = 3;

/** Width of the closed rim: as typed, else the sheet's thickness and 3 mm at least. */
export const rimOf = ({ rim, thickness }: Pick<WheelInput, 'rim' | 'thickness'>): number =>
  rim ?? Math.max(thickness, leastRim);

/** A wheel whose outside is a number, with a root or a height: as typed, or chosen. */
export type SizedWheel = Omit<WheelInput, 'outside'> & { readonly outside: number };

/** Least web between the roots and the screw holes, mm. Common practice: the sheet's thickness, and 3 mm at least. */
export const leastRootWeb = (thickness: number): number => Math.max(thickness, 3);

/** How far below the roots other steel must stay, mm. Common practice: several millimetres. */
export const belowRoots = 3;

/** Outside and root diameter, and the closed rim of a wheel with windows; no rim for open teeth. */
export function bandOf(
  wheel: Pick<SizedWheel, 'form' | 'outside' | 'root' | 'height' | 'rim' | 'thickness'>,
): ToothBand {
  const { outside } = wheel;
  const rim = wheel.form === 'windows' ? rimOf(wheel) : null;
  const root = wheel.root ?? outside - 2 * ((rim ?? 0) + (wheel.height ?? 0));
  return { outside, root, ...(rim === null ? {} : { rim }) };
}
