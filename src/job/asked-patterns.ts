/** Which known patterns come near what was typed of a flange: the question as a person asks it, and the answer in words. */
import { fieldValue } from './edit.ts';
import type { FlangePreset, NearMissPair } from './flange-presets.ts';
import { alikeWords, holesWords, registerWords, trustWords } from './pattern-words.ts';
import { fieldsIn, type JobUnits, type Range } from './quantity-fields.ts';
import { flangeRanges } from './schema-flange.ts';
import { measured } from './schema-measured.ts';
import { type FlangeSearch, farthestMatch, searchPresets } from './search-presets.ts';
import { commaInDoubt, listedNumbers } from './typed-commas.ts';

/** As typed in fields: a size may be readings, or carry its unit, doubt or instrument. Blank: not measured. */
export interface TypedFlange {
  readonly circle: string;
  readonly holes: string;
  readonly outside: string;
  readonly register: string;
}

/** A pattern that comes near. */
export interface NearPattern {
  readonly id: string;
  readonly title: string;
  /** Its own sizes, mm. */
  readonly sizes: string;
  /** What differs from what was measured. */
  readonly differences: readonly string[];
  /** How far it can be trusted, what is taken for it by mistake, where it comes from. */
  readonly notes: readonly string[];
  /** Why no adapter is made for it; null where one may be. */
  readonly unsuitable: string | null;
}

export type AskedPatterns =
  | {
      readonly ok: true;
      readonly near: readonly NearPattern[];
      /** False where even the nearest is another flange; true where nothing was typed. */
      readonly isOne: boolean;
    }
  | { readonly ok: false; readonly why: string };

type Size = { readonly ok: true; readonly value: number | undefined } | { readonly ok: false; readonly why: string };

function sizeOf(name: string, typed: string, range: Range, units: JobUnits): Size {
  if (typed.trim() === '') return { ok: true, value: undefined };
  const doubt = commaInDoubt(typed);
  if (doubt !== null) return { ok: false, why: `${name}: ${doubt}` };
  const list = listedNumbers(typed);
  const value = fieldValue(list ? `[${list.join(', ')}]` : typed);
  if (!value.ok) return { ok: false, why: `${name}: ${value.why}` };
  const read = measured(fieldsIn(units), range, '').safeParse(value.data);
  if (read.success) return { ok: true, value: read.data.value };
  return { ok: false, why: `${name}: ${read.error.issues[0]?.message ?? 'this is no size.'}` };
}

const mostHoles = 72;

/** Lengths are told to the hundredth: nobody's flange is known closer. */
const hundredths = (mm: number) => Number(mm.toFixed(2));

/**
 * Known patterns near what was typed, the nearest first; all of them by name where nothing was.
 * @param units what a bare number is in
 * @param most how many, where something was typed
 * @returns a sentence that names the field where one cannot be read
 */
export function askedPatterns(
  typed: TypedFlange,
  units: JobUnits,
  presets: readonly FlangePreset[],
  nearMisses: readonly NearMissPair[],
  most = 6,
): AskedPatterns {
  const sizes = {
    circle: sizeOf('bolt circle', typed.circle, flangeRanges.circle, units),
    outside: sizeOf('outside', typed.outside, flangeRanges.outside, units),
    register: sizeOf('register', typed.register, flangeRanges.register, units),
  };
  const search: { -readonly [key in keyof FlangeSearch]: FlangeSearch[key] } = {};
  for (const key of ['circle', 'outside', 'register'] as const) {
    const size = sizes[key];
    if (!size.ok) return size;
    if (size.value !== undefined) search[key] = hundredths(size.value);
  }
  if (typed.holes.trim() !== '') {
    const count = Number(typed.holes);
    if (!Number.isInteger(count) || count < 2 || count > mostHoles)
      return { ok: false, why: `holes: count them, 2 to ${mostHoles}; got ${typed.holes.trim().slice(0, 30)}.` };
    search.holes = count;
  }
  const isAsked = Object.keys(search).length > 0;
  const near = searchPresets(presets, search, isAsked ? most : presets.length);
  return {
    ok: true,
    isOne: !isAsked || (near[0]?.distance ?? Number.POSITIVE_INFINITY) <= farthestMatch,
    near: near.map(({ preset, differences }) => ({
      id: preset.id,
      title: `${preset.title} (${preset.family})`,
      sizes: [
        preset.outside === undefined ? 'outside not known' : `outside ${preset.outside}`,
        registerWords(preset),
        holesWords(preset),
      ].join('; '),
      differences,
      notes: [
        trustWords(preset),
        ...alikeWords(preset, nearMisses),
        ...(preset.note ? [preset.note] : []),
        `source: ${preset.source}`,
      ],
      unsuitable: preset.unsuitable ?? null,
    })),
  };
}
