/**
 * The ways of holding each side that the job leaves open and the flanges' holes allow. What the job says is never overridden: only
 * keys on `auto` are filled in. The first choice is always the usual one, with every key left as it stands.
 */

import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import { screwHead } from '../standards/screw-heads.ts';
import { allThreads, type Thread } from '../standards/threads.ts';
import { washerFor } from '../standards/washers.ts';
import { hypot } from '../units/hypot.ts';
import type { DesignInput } from './design-joint.ts';
import { screwForHole } from './pick-screw.ts';
import { sharedPattern } from './shared-pattern.ts';

type SideInput = JobInput['adapter']['driving'];
type SideName = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

/** What a search starts from. */
export interface SearchInput extends DesignInput {
  /** Key paths that were typed: what a default stands for is not a wish. */
  readonly given: ReadonlySet<string>;
}

/** One way of holding a side: the keys that are filled in where the job says auto. */
export interface Way {
  readonly set: Partial<Pick<SideInput, 'fastening' | 'screw' | 'head' | 'seat' | 'washer' | 'class' | 'dowels'>>;
  /** How many sizes the screw is thinner than the one that fills the flange's hole. */
  readonly thinner: number;
}

/** A way for each side. */
export interface Choice {
  readonly driving: Way;
  readonly driven: Way;
  /** Sizes by which the screws are thinner than their holes allow, both sides together. */
  readonly thinner: number;
  /** How the wheel's bore is finished, where it is not left as it is cut. */
  readonly wheel?: { readonly fit: string };
}

/** Keys that say what becomes of the wheel's bore, or that make it matter no more. */
const boreKeys = ['fit', 'clearance', 'bore', 'set_true'];

/** Whether the job leaves open how the wheel's bore is finished. */
export const mayTurnWheel = (given: ReadonlySet<string>): boolean => !boreKeys.some((key) => given.has(`wheel.${key}`));

/** Thinner screws than the one that fills the hole are tried down to this many sizes. */
const sizesDown = 2;
/** A head or nut must still bear on this much metal all round a flange's hole, mm. Common practice. */
const leastBearing = 1;
/** Second choice sizes (ISO 261): nobody stocks them. */
const seldomStocked = new Set(['M7', 'M14', 'M18', 'M22']);

const untouched: Way = { set: {}, thinner: 0 };

/** The usual way: every key as it stands. */
export const usualChoice: Choice = { driving: untouched, driven: untouched, thinner: 0 };

/** A choice without what the job has typed: what it says is never overridden. */
export function stillOpen(choice: Choice, given: ReadonlySet<string>): Choice {
  const open = (side: SideName): Way => ({
    ...choice[side],
    set: Object.fromEntries(Object.entries(choice[side].set).filter(([key]) => !given.has(`adapter.${side}.${key}`))),
  });
  const { wheel, ...sideways } = choice;
  const turned = wheel && mayTurnWheel(given) ? { wheel } : {};
  return { ...sideways, driving: open('driving'), driven: open('driven'), ...turned };
}

/** Diameter on which a screw of this size bears round a hole: its hexagon head's, or its washer's; 0 where none is tabled. */
function bearing(thread: Thread, washer: boolean): number {
  if (washer) {
    const found = washerFor(thread.size);
    return found.ok ? found.value.outside : 0;
  }
  const head = screwHead('hex', thread.size);
  return head.ok ? (head.value.dw ?? head.value.s ?? head.value.dk) : 0;
}

/** A screw for a hole, and whether it needs a washer to bear on the metal round it. */
export interface ScrewForHole {
  readonly thread: Thread;
  readonly washer: boolean;
}

/**
 * The screw that fills a hole, and the next thinner ones of its kind that still bear on the metal round it.
 * @param hole diameter, mm
 * @param mayAddWashers false where the job says that there are none
 */
export function screwsForHole(hole: number, mayAddWashers: boolean): ScrewForHole[] {
  const full = screwForHole(hole);
  if (full === null) return [];
  const least = hole + 2 * leastBearing;
  const thinner = allThreads()
    .filter(({ system, series, d, size }) => {
      const isKin = system === full.system && series === full.series;
      return isKin && d < full.d && !seldomStocked.has(size);
    })
    .sort((a, b) => b.d - a.d)
    .slice(0, sizesDown)
    .map((thread) => ({ thread, washer: bearing(thread, false) < least }))
    .filter(({ thread, washer }) => !washer || (mayAddWashers && bearing(thread, true) >= least));
  return [{ thread: full, washer: false }, ...thinner];
}

/** True where heads may stand on the face, clear of the other flange's rim: only there does sinking them make a difference. */
function mayStandFree(flange: ResolvedFlange, other: ResolvedFlange): boolean {
  const nearest = Math.min(...flange.holes.positions.map(({ x, y }) => hypot(x, y)));
  return other.outside.value / 2 < nearest - flange.holes.diameter.value / 2;
}

/**
 * Heads in the adapter: what is usual, then the flat one, then a sunk one where the usual may stand on the face. Thinner screws
 * take the usual head only.
 */
function headsInAdapter(wish: SideInput, isFree: boolean, thinner: number): Way['set'][] {
  if (thinner > 0) return [{}];
  const flat = wish.head === 'auto' && wish.seat !== 'surface' && !wish.washer ? [{ head: 'flat' as const }] : [];
  const isSinkable = wish.head === 'auto' || wish.head === 'socket';
  const sunk = isFree && wish.seat === 'auto' && isSinkable ? [{ seat: 'sunk' as const }] : [];
  return [{}, ...flat, ...sunk];
}

/** The screws of a side as ways: none to choose where they are typed or the flange is tapped. */
function screwWays(hole: number, wish: SideInput, mayAddWashers: boolean): Way[] {
  if (wish.screw !== 'auto') return [untouched];
  const sizes = screwsForHole(hole, mayAddWashers || wish.washer);
  if (sizes.length === 0) return [untouched];
  return sizes.map(({ thread, washer }, i) => ({
    set: i === 0 ? {} : { screw: thread.designation, ...(washer && !wish.washer ? { washer } : {}) },
    thinner: i,
  }));
}

/** Ways of holding one side, the usual one first. */
function waysFor(side: SideName, { job, given, ...flanges }: SearchInput): Way[] {
  const flange = flanges[side];
  const wish = job.adapter[side];
  const isFree = mayStandFree(flange, flanges[side === 'driving' ? 'driven' : 'driving']);
  const isTapped = flange.holes.kind === 'tapped';
  const open = isTapped ? (['into_flange'] as const) : (['into_adapter', 'through'] as const);
  const fastenings = wish.fastening !== 'auto' ? [wish.fastening] : open;
  const screws = isTapped ? [untouched] : screwWays(flange.holes.diameter.value, wish, mayAdd(given, side));
  return fastenings.flatMap((fastening, f) => {
    const held = wish.fastening !== 'auto' || f === 0 ? {} : { fastening };
    return screws.flatMap(({ set, thinner }) => {
      const heads = fastening === 'into_adapter' ? [{}] : headsInAdapter(wish, isFree, thinner);
      return heads.map((head) => ({ set: { ...held, ...set, ...head }, thinner }));
    });
  });
}

const isThrough = (way: Way, wish: SideInput) => (way.set.fastening ?? wish.fastening) === 'through';

/** One set of bolts through both flanges: what one side was told holds for the other too. */
function sharedChoices({ driving, driven, job, given }: SearchInput): Choice[] {
  const asked = job.adapter;
  const hole = Math.min(driving.holes.diameter.value, driven.holes.diameter.value);
  const typed = sides.map((side) => asked[side]).find(({ screw }) => screw !== 'auto')?.screw;
  const head = sides.map((side) => asked[side]).find((side) => side.head !== 'auto')?.head;
  const bolts = screwWays(hole, asked.driving, mayAdd(given, 'driving') && mayAdd(given, 'driven'));
  const ways: Way[] = typed === undefined ? bolts : [{ set: { screw: typed }, thinner: 0 }];
  return ways.map(({ set, thinner }) => {
    const filled = (side: SideName): Way => {
      const { screw, ...rest } = set;
      const held = asked[side].fastening === 'auto' ? { fastening: 'through' as const } : {};
      const size = screw !== undefined && asked[side].screw === 'auto' ? { screw } : {};
      return { set: { ...held, ...size, ...rest, ...(head && asked[side].head === 'auto' ? { head } : {}) }, thinner };
    };
    return { driving: filled('driving'), driven: filled('driven'), thinner };
  });
}

/** Washers may be added where the job says nothing of them. */
const mayAdd = (given: ReadonlySet<string>, side: SideName) => !given.has(`adapter.${side}.washer`);

/**
 * Every combination of ways, the usual one first, then by how much thinner the screws are; within that in one fixed order.
 * @returns one choice only where the job leaves nothing open
 */
export function choicesFor(input: SearchInput): Choice[] {
  const { adapter } = input.job;
  const isOnePattern = sharedPattern(input, adapter.clocking === 'auto' ? null : adapter.clocking) !== null;
  const mayShare = sides.every((side) => ['auto', 'through'].includes(adapter[side].fastening));
  const ofDriven = waysFor('driven', input);
  const apart = waysFor('driving', input).flatMap((driving) =>
    ofDriven
      // On one pattern, bolts on both sides are the same bolts.
      .filter((driven) => !(isOnePattern && isThrough(driving, adapter.driving) && isThrough(driven, adapter.driven)))
      .map((driven) => ({ driving, driven, thinner: driving.thinner + driven.thinner })),
  );
  const shared = isOnePattern && mayShare ? sharedChoices(input) : [];
  const others = [...apart, ...shared].filter(
    ({ driving, driven }) => Object.keys(driving.set).length + Object.keys(driven.set).length > 0,
  );
  return [usualChoice, ...others.sort((a, b) => a.thinner - b.thinner)];
}

/** The job with a choice filled in. */
export function withChoice(job: JobInput, { driving, driven, wheel: turned }: Choice): JobInput {
  const { adapter, wheel } = job;
  return {
    ...job,
    ...(turned && wheel ? { wheel: { ...wheel, fit: turned.fit } } : {}),
    adapter: {
      ...adapter,
      driving: { ...adapter.driving, ...driving.set },
      driven: { ...adapter.driven, ...driven.set },
    },
  };
}
