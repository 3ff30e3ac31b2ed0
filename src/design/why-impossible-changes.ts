/** What could give way where nothing passes: sizes that were typed, and what a shop may still decide. */
import { holesThere, usedOf, usesOf } from '../job/hole-pattern.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import { autoDowels } from './dowels.ts';
import type { SearchInput } from './options.ts';
import { type Candidate, saying } from './rank.ts';
import { mmText, screwsOf } from './search-words.ts';

type Side = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

/** One thing that could give way. */
export interface Change {
  /** As it follows "the nearest that works is": "a web of 1.6 mm". */
  readonly words: string;
  /** What to write, or empty where the flange itself would have to change. */
  readonly key: string;
  /** Beginnings of the codes that it can do something about. */
  readonly helps: readonly string[];
  readonly apply: (input: SearchInput) => SearchInput;
}

/** A thinner web than this is not proposed, mm. Common practice: it breaks away under the drill. */
const leastWeb = 1;

const metal = ['web-', 'wall-'];
const heads = ['head', 'room-'];
const lengths = ['thread-engagement', 'screw-length', 'bolt-reaches-nut'];
const registers = ['register-', 'faces-seat-first'];

const withAdapter = (input: SearchInput, patch: Partial<JobInput['adapter']>): SearchInput => ({
  ...input,
  job: { ...input.job, adapter: { ...input.job.adapter, ...patch } },
});
/** What is changed counts as typed: a way that was chosen before does not speak for it any more. */
const withSide = (input: SearchInput, side: Side, patch: Partial<JobInput['adapter'][Side]>): SearchInput => ({
  ...withAdapter(input, { [side]: { ...input.job.adapter[side], ...patch } }),
  given: new Set([...input.given, ...Object.keys(patch).map((key) => `adapter.${side}.${key}`)]),
});
const withFlange = (input: SearchInput, side: Side, patch: Partial<ResolvedFlange>): SearchInput => ({
  ...input,
  [side]: { ...input[side], ...patch },
});

/** A change of one key of the adapter. */
function adapterChange<K extends keyof JobInput['adapter']>(
  key: K,
  value: JobInput['adapter'][K] & (string | number),
  words: string,
  helps: readonly string[],
): Change {
  const unit = typeof value === 'number' ? ' mm' : '';
  return {
    words,
    key: `adapter.${key}: ${value}${unit}`,
    helps,
    apply: (input) => withAdapter(input, { [key]: value }),
  };
}

/** A change of one key of a side. */
function sideChange<K extends keyof JobInput['adapter']['driving']>(
  side: Side,
  key: K,
  value: JobInput['adapter']['driving'][K] & string,
  words: string,
  helps: readonly string[],
): Change {
  return {
    words,
    key: `adapter.${side}.${key}: ${value}`,
    helps,
    apply: (input) => withSide(input, side, { [key]: value }),
  };
}

/** Keys of a side that may have been typed, what they hold up, and what they are called. */
const sideKeys = [
  ['register', "the adapter's own register", [...registers, ...metal]],
  ['fit', 'the fit of the register', registers],
  ['length', 'the length of the screws', [...lengths, ...heads]],
  ['seat', 'the seat of the heads', [...metal, ...heads, 'thickness']],
  ['head', 'the kind of head', [...metal, ...heads, ...lengths, 'thickness']],
  ['screw', 'the screw', [...metal, ...heads, ...lengths, 'holes-clear', 'thickness']],
  ['fastening', 'the fastening', [...metal, ...heads, ...lengths, 'holes-clear', 'thickness']],
] as const;

/** What was typed where the program would have chosen: left open again. */
export function loosened({ job }: SearchInput): Change[] {
  const { adapter } = job;
  const sizes = [
    adapterChange('clocking', 'auto', 'the clocking left open', ['web-between-holes', 'clocking']),
    adapterChange('thickness', 'auto', 'the thickness left open', [...metal, ...lengths, 'thickness', 'head-']),
    adapterChange('outside', 'auto', 'the outside diameter left open', ['wall-', 'wheel']),
    adapterChange('bore', 'auto', 'the bore left open', ['wall-']),
  ].filter((change) => adapter[change.key.slice('adapter.'.length, -': auto'.length) as 'bore'] !== 'auto');
  const flats = adapter.flats === 'none' ? [] : [adapterChange('flats', 'none', 'no vise flats', ['wall-to-flats'])];
  const ofSides = sides.flatMap((side) =>
    sideKeys
      .filter(([key]) => adapter[side][key] !== 'auto' && adapter[side][key] !== 'none')
      .map(([key, words, helps]) => sideChange(side, key, 'auto', `${words} left open on the ${side} side`, helps)),
  );
  const ofDowels = sides
    .filter((side) => typeof adapter[side].dowels === 'object')
    .map((side) =>
      sideChange(side, 'dowels', 'auto', `the dowels left open on the ${side} side`, [...metal, 'dowel-']),
    );
  return [...sizes, ...flats, ...ofSides, ...ofDowels];
}

/** Least metal that a way leaves between features, mm; no more than what is asked for. */
function leastMetal({ findings }: Candidate, asked: number): number {
  const isMetal = (code: string) => metal.some((start) => code.startsWith(start)) && code !== 'web-under-head';
  return Math.min(asked, ...findings.flatMap(({ code, value }) => (isMetal(code) && value !== null ? [value] : [])));
}

/** The way that leaves most metal; of equal ones the first. */
export function roomiest(candidates: readonly Candidate[], asked: number): Candidate | undefined {
  return candidates.reduce<Candidate | undefined>(
    (best, one) => (best && leastMetal(best, asked) >= leastMetal(one, asked) ? best : one),
    undefined,
  );
}

/** The least web of the way that leaves most, in whole tenths of a mm; null when there is none, or enough. */
function reachableWeb(candidates: readonly Candidate[], asked: number): number | null {
  const best = roomiest(candidates, asked);
  const web = best ? Math.floor(leastMetal(best, asked) * 10 + 1e-6) / 10 : 0;
  return web >= leastWeb && web < asked ? web : null;
}

/** A thread in the flange that is deep enough for any standard screw. */
function deeperThread({ driving, driven }: SearchInput, side: Side, { joint }: Candidate): Change[] {
  const { holes } = side === 'driving' ? driving : driven;
  const group = screwsOf(joint, side);
  if (holes.kind !== 'tapped' || holes.depth === null || !group) return [];
  // A standard screw may be up to 5 mm longer than it need be, and stops a turn short of the end.
  const depth = Math.ceil(group.engagement.needs + 5 + group.pitch);
  if (depth <= holes.depth) return [];
  return [
    {
      words: `threads ${depth} mm deep in the ${side} flange, where its metal allows it`,
      key: `${side}.holes.depth: ${depth} mm`,
      helps: lengths,
      apply: (input) => withFlange(input, side, { holes: { ...input[side].holes, depth } }),
    },
  ];
}

/** With fewer screws than this a face is not held all round. Common practice. */
const fewestScrews = 3;

/** Screws in only some of the holes of an even pattern, evenly spaced: what a shop does where two patterns meet. Most screws first. */
function fewerHoles(input: SearchInput): Change[] {
  const ofSides = sides.flatMap((side) => {
    const typed = input.job[side].holes;
    const { holes } = input[side];
    if (typed?.at !== undefined || typed?.angles !== undefined) return [];
    const all = holesThere(holes);
    return usesOf(all.length)
      .filter((use) => use >= fewestScrews && use < holes.positions.length)
      .map((use) => ({ side, all, use }));
  });
  return ofSides
    .sort((a, b) => b.use - a.use)
    .map(({ side, all, use }) => ({
      words: `screws in only ${use} of the ${all.length} ${side} holes`,
      key: `${side}.holes.use: ${use}`,
      helps: ['web-between-holes', 'clocking'],
      apply: (known) => withFlange(known, side, { holes: { ...known[side].holes, ...usedOf(all, use) } }),
    }));
}

/** Pins that are tried where two are too few; more than six there are never. */
const morePins = [3, 4, 6] as const;

/** More dowels, reamed together so that they share the torque: what holds a face that friction does not, where it works one way. */
function moreDowels(input: SearchInput): Change[] {
  if (input.job.duty?.reversing) return [];
  return sides
    .filter((side) => typeof input.job.adapter[side].dowels !== 'object')
    .flatMap((side) =>
      morePins.map((count) => ({
        words: `${count} dowels on the ${side} side, reamed together`,
        key: `adapter.${side}.dowels: { count: ${count}, reamed: together }`,
        helps: [`grip-${side}`],
        apply: (known: SearchInput) => withSide(known, side, { dowels: { ...autoDowels, count, reamed: 'together' } }),
      })),
    );
}

const noWheel: Change = {
  words: 'no wheel on this joint',
  key: 'no wheel section',
  helps: [...metal, 'wheel', 'sheet', 'tooth', 'heads-clear-wheel', 'screw-length'],
  apply: (input) => {
    const { wheel: _, ...job } = input.job;
    return { ...input, job };
  },
};

/**
 * What a shop could still decide otherwise, mildest first.
 * @param ranked the ways that fail, best first; at least one
 */
export function givingWay(input: SearchInput, ranked: readonly Candidate[]): Change[] {
  const { adapter, wheel } = input.job;
  const [best] = ranked;
  if (!best) return [];
  const web = reachableWeb(ranked, adapter.web);
  const weaker = sides
    .filter((side) => adapter[side].class !== '8.8')
    .map((side) => sideChange(side, 'class', '8.8', `class 8.8 screws on the ${side} side`, lengths));
  const bare = sides
    .filter((side) => input[side].register !== null && adapter[side].register !== 'none')
    .map((side) =>
      sideChange(
        side,
        'register',
        'none',
        `no register on the ${side} side (dowel it with adapter.${side}.dowels: auto, or set it true with a dial)`,
        [...registers, ...metal],
      ),
    );
  return [
    ...weaker,
    ...(web === null ? [] : [adapterChange('web', web, `a web of ${mmText(web)}`, metal)]),
    ...(adapter.bore === 'none' ? [] : [adapterChange('bore', 'none', 'no centre bore', ['wall-to-bore'])]),
    ...sides.flatMap((side) => deeperThread(input, side, best)),
    ...fewerHoles(input),
    ...moreDowels(input),
    ...bare,
    ...(wheel === undefined ? [] : [noWheel]),
  ];
}

/** Only the changes that can do something about what fails. */
export function helpful(changes: readonly Change[], failing: Candidate): Change[] {
  const codes = saying(failing, 'fail').map(({ code }) => code);
  return changes.filter(({ helps }) => codes.some((code) => helps.some((start) => code.startsWith(start))));
}
