/** The size of the wheel, and its count of teeth, where the job leaves them open: the least that everything allows. mm. */
import type { Joint, WheelGrowth } from '../job/joint.ts';
import type { JobInput } from '../job/schema.ts';
import { outsideRange } from '../job/schema-wheel.ts';
import { chooseTeeth } from '../job/tooth-count.ts';
import { belowRoots, leastRootWeb, type SizedWheel, wordsOf } from '../job/wheel-form.ts';
import { type ChosenHeight, chosenHeight, heightsToTry } from '../job/wheel-height.ts';
import { againstHeight, type OutsideNeed, type RootNeed, sizedAs, wheelSizing } from '../job/wheel-size.ts';
import type { Assumption } from '../model/finding.ts';
import { type Designed, designed, trouble } from './trouble.ts';
import type { WheelInput, WheelPlace } from './wheel.ts';

/** A job whose wheel has an outside and a root or a height, as numbers. */
export interface SizedUp {
  readonly wheel: SizedWheel;
  readonly teeth: number;
  /** What was chosen, and why. */
  readonly assumptions: readonly Assumption[];
  /** How much of the size the teeth have asked for; left out where the outside was typed. */
  readonly growth?: WheelGrowth;
}

/** Something round that stands beside the wheel: the adapter, a flange. */
export interface RoundNeighbour {
  readonly name: string;
  readonly diameter: number;
}

/** What of the wheel's place its size hangs on: its screws' circle, holes and heads, mm. */
export type ScrewRing = Pick<WheelPlace, 'circle' | 'hole'> & { readonly head: Pick<WheelPlace['head'], 'dk'> };

const mm = (value: number) => `${Number(value.toFixed(2))} mm`;

/** What the wheel carries and what stands beside it, by the root that each asks for: the same demands as the checks have. */
function rootNeeds(
  { form, thickness }: WheelInput,
  { circle, hole, head }: ScrewRing,
  { web: leastWeb }: JobInput['sheet'],
  round: readonly RoundNeighbour[],
): RootNeed[] {
  const { roots } = wordsOf({ form });
  const web = Math.max(leastRootWeb(thickness), leastWeb * thickness);
  const [widest] = [...round].sort((a, b) => b.diameter - a.diameter);
  return [
    {
      what: `the screw heads (on a circle of ${mm(circle)}) lie ${mm(belowRoots)} below the ${roots}`,
      root: circle + head.dk + 2 * belowRoots,
    },
    { what: `a web of ${mm(web)} is left between the screw holes and the ${roots}`, root: circle + hole + 2 * web },
    ...(widest
      ? [
          {
            what: `the ${widest.name} (${mm(widest.diameter)}) lies ${mm(belowRoots)} below the ${roots}`,
            root: widest.diameter + 2 * belowRoots,
          },
        ]
      : []),
  ];
}

/** What sets the size, and what would set it next. */
function reason([first, second]: readonly OutsideNeed[]): string {
  const next =
    second?.least == null
      ? ''
      : second.least === first?.least
        ? `; and ${second.what}`
        : `; next, from ${second.least} mm on, ${second.what}`;
  return `auto: the least whole mm at which ${first?.what ?? ''}${next}`;
}

/**
 * The height that is taken of the one that was chosen. On a typed outside higher teeth reach further in: where that is in the way of something that
 * a lower one leaves room for, what is in hand for the cut gives way first.
 */
function heightTaken(
  job: JobInput,
  wheel: WheelInput,
  roots: readonly RootNeed[],
  chosen: ChosenHeight,
): { readonly height: number; readonly assumption: Assumption } {
  const { outside, teeth } = wheel;
  const count = teeth === 'auto' ? null : teeth;
  const against = (height: number) =>
    outside === 'auto' ? new Set<string>() : againstHeight({ ...wheel, outside, height }, job, roots, count);
  const anyway = against(chosen.least);
  const lost = (height: number) => [...against(height)].find((what) => !anyway.has(what));
  const height = heightsToTry(chosen).find((one) => lost(one) === undefined) ?? chosen.least;
  const { inHand, from, memory } = chosen;
  const cut = `${mm(inHand)} for the cut, half of it at each edge`;
  const hand =
    height === chosen.value
      ? `, and ${cut}`
      : `. There is no room for ${cut}: on this outside it would no longer be so that ${lost(chosen.value) ?? ''}`;
  const why = `auto: ${from}${inHand === 0 ? '' : hand}`;
  return { height, assumption: { path: 'wheel.height', value: mm(height), from: why, memory } };
}

/** The joint with the job as it was typed, but for the size of its wheel: what is chosen stays a number. */
export function asTyped(joint: Joint, job: JobInput): Joint {
  const { wheel } = joint.job;
  const { wheel: _, ...wheelless } = job;
  // Keys stay in their order: the revision is made of them. How the bore is finished stands on the joint.
  const fit = job.wheel?.fit;
  return { ...joint, job: wheel ? { ...job, wheel: fit === undefined ? wheel : { ...wheel, fit } } : wheelless };
}

/**
 * The least outside of a wheel that is left open, for a count that is known, mm; null where none is enough or its outside is typed. The same sum as
 * sizeWheel's, without its reasons.
 */
export function leastOutside(
  job: JobInput & { readonly wheel: WheelInput },
  place: ScrewRing,
  round: readonly RoundNeighbour[],
  teeth: number,
): number | null {
  const { wheel } = job;
  if (wheel.outside !== 'auto') return null;
  const roots = rootNeeds(wheel, place, job.sheet, round);
  const height = wheel.root === undefined && wheel.height === undefined ? chosenHeight(wheel, job).value : wheel.height;
  return wheelSizing({ ...wheel, ...(height === undefined ? {} : { height }) }, job, roots).least(teeth);
}

/**
 * Decide what the job leaves open of the wheel's size and count.
 * @param round what stands beside the wheel, the adapter among it
 * @returns troubles where no outside is enough, or no count can be chosen
 */
export function sizeWheel(
  job: JobInput & { readonly wheel: WheelInput },
  place: ScrewRing,
  round: readonly RoundNeighbour[],
): Designed<SizedUp> {
  const assumptions: Assumption[] = [];
  let { wheel } = job;
  const roots = rootNeeds(wheel, place, job.sheet, round);
  if (wheel.root === undefined && wheel.height === undefined) {
    const { height, assumption } = heightTaken(job, wheel, roots, chosenHeight(wheel, job));
    wheel = { ...wheel, height };
    assumptions.push(assumption);
  }
  const { outside } = wheel;
  const sizing = outside === 'auto' ? wheelSizing(wheel, job, roots) : null;
  const sizeFor = (count: number): SizedWheel | null => {
    const least = outside === 'auto' ? (sizing?.least(count) ?? null) : outside;
    return least === null ? null : sizedAs(wheel, least);
  };
  let teeth = wheel.teeth === 'auto' ? 0 : wheel.teeth;
  if (wheel.teeth === 'auto') {
    const choice = chooseTeeth(job, sizeFor);
    if (!choice.ok) return trouble(choice.path, choice.message);
    teeth = choice.teeth;
    assumptions.push({ path: 'wheel.teeth', value: String(teeth), from: choice.from, memory: false });
  }
  let sized = sizeFor(teeth);
  const needs = sizing?.needs(teeth) ?? [];
  const unmet = sized ? [] : needs.filter(({ least }) => least === null);
  // No size cures what cannot be drawn on any wheel: the faults of the largest say at which key it lies.
  if (unmet.length > 0 && unmet.every(({ isDrawing }) => isDrawing)) sized = sizedAs(wheel, outsideRange.most);
  if (!sized) {
    const words = wordsOf(wheel);
    return trouble(
      'wheel.outside',
      `No outside up to ${mm(outsideRange.most)} is enough for ${teeth} ${words.teeth}: it would have to be larger before ${unmet[0]?.what ?? 'everything is met'}. Use fewer ${words.teeth}, or type wheel.outside and see what the checks say.`,
    );
  }
  if (sizing)
    assumptions.push({
      path: 'wheel.outside',
      value: mm(sized.outside),
      from: reason(needs),
      memory: false,
    });
  const [first] = needs;
  const growth =
    sizing && first ? { growth: { outside: sized.outside, start: sizing.start, because: first.what } } : {};
  return designed({ wheel: sized, teeth, assumptions, ...growth });
}
