/** One operation of the route as plain data. Words are those of the bench; sizes in mm. */
import type { DrillingPlan } from './drilling-plan.ts';
import type { WorkFace } from './hole-table.ts';
import type { TurningCut } from './turning-cuts.ts';

/** A size to stop at: its number is its line in the inspection record. */
export interface ShopSize {
  readonly number: number;
  readonly id: string;
  readonly part: 'adapter' | 'wheel';
  readonly what: string;
  readonly lower: number;
  readonly upper: number;
  readonly unit: 'mm' | 'g';
  readonly gauge: string;
  readonly mend: 'too large' | 'too small' | 'never';
  readonly verb: string;
}

export interface Operation {
  /** 10, 20, ...: room between for what a shop adds. */
  readonly number: number;
  readonly title: string;
  readonly machine: 'saw' | 'lathe' | 'mill' | 'bench';
  /** Side that is up, or towards the tool; null where that makes no difference. */
  readonly face: WorkFace | null;
  readonly held: readonly string[];
  readonly zero: readonly string[];
  /** What the dial runs on, and the reading to reach. */
  readonly indicate: readonly string[];
  readonly steps: readonly string[];
  readonly measure: readonly ShopSize[];
  readonly off: readonly string[];
  /** Speeds and feeds of turning to start from. */
  readonly cuts: readonly TurningCut[];
  readonly plan: DrillingPlan | null;
}

/** An operation before it has its place in the route. */
export type Unnumbered = Omit<Operation, 'number'>;

/** What most operations have none of. */
export const nothing: Pick<Operation, 'face' | 'zero' | 'indicate' | 'measure' | 'off' | 'cuts' | 'plan'> = {
  face: null,
  zero: [],
  indicate: [],
  measure: [],
  off: [],
  cuts: [],
  plan: null,
};

/** What is done where nothing more can be taken off. */
const whenToStop =
  'Off with metal left: take off half of what is missing, cold, and measure again. Where it says stop: enter what you found under built: in the job and run check before more is cut. It tells what can be saved.';

/** The sizes of the adapter to stop at, by their ids in the inspection record. */
export function sizesOf(sizes: readonly ShopSize[], ids: readonly string[]): Pick<Operation, 'measure' | 'off'> {
  const measure = sizes.filter(({ id, part }) => part === 'adapter' && ids.includes(id));
  return { measure, off: measure.length > 0 ? [whenToStop] : [] };
}
