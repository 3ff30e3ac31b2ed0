/** What is known of a flange while its job is still being typed: whatever can be read, whether the job is whole or not. */
import { findThread } from '../standards/threads.ts';
import { parseJobText } from './document.ts';
import { isMap } from './field.ts';
import type { FlangePreset } from './flange-presets.ts';
import { circleOf, type HolePosition, patternOf } from './hole-pattern.ts';
import type { Measured } from './measured.ts';
import { fieldsIn, type JobUnits } from './quantity-fields.ts';
import type { HolesInput, RegisterInput } from './schema-flange.ts';
import { flangeSchema, holesSchema, registerSchema } from './schema-flange.ts';

export interface FlangeSoFar {
  readonly side: 'driving' | 'driven';
  readonly units: JobUnits;
  readonly name: string | null;
  /** Diameters, mm. */
  readonly outside: number | null;
  readonly register: { readonly diameter: number; readonly gender: 'male' | 'female' | null } | null;
  readonly bore: number | null;
  readonly circle: number | null;
  /** Looking at the flange's own face, mm. */
  readonly holes: readonly HolePosition[];
  /** Diameter of a hole, mm, and how it is called. */
  readonly hole: { readonly diameter: number; readonly words: string } | null;
  /** The pattern that fills in what is not typed. */
  readonly pattern: string | null;
}

interface Block {
  safeParse(data: unknown): { readonly success: boolean; readonly data?: unknown };
}

/** Keys of a section that can be read, each by itself. */
function readable<T>(shape: Readonly<Record<string, Block>>, data: unknown): Partial<T> {
  if (!isMap(data)) return {};
  const read: Record<string, unknown> = {};
  for (const [key, block] of Object.entries(shape)) {
    if (!Object.hasOwn(data, key)) continue;
    const answer = block.safeParse(data[key]);
    if (answer.success && answer.data !== undefined) read[key] = answer.data;
  }
  return read as Partial<T>;
}

interface Plain {
  readonly from?: string;
  readonly name?: string;
  readonly outside?: Measured;
  readonly bore?: number;
}

const blocksIn = (units: JobUnits) => {
  const fields = fieldsIn(units);
  return { flange: flangeSchema(fields), register: registerSchema(fields), holes: holesSchema(fields) };
};
/** Built when first asked for: a half-typed job asks with every key. */
const built = new Map<JobUnits, ReturnType<typeof blocksIn>>();

function blocksFor(units: JobUnits): ReturnType<typeof blocksIn> {
  const blocks = built.get(units) ?? blocksIn(units);
  built.set(units, blocks);
  return blocks;
}

function soFar(
  side: 'driving' | 'driven',
  data: unknown,
  units: JobUnits,
  presets: readonly FlangePreset[],
): FlangeSoFar | null {
  if (!isMap(data)) return null;
  const blocks = blocksFor(units);
  const { from, name, outside, bore } = readable<Plain>(blocks.flange.shape, data);
  const preset = presets.find(({ id }) => id === from);
  const register = readable<RegisterInput>(blocks.register.shape, data.register);
  const holes = readable<HolesInput>(blocks.holes.shape, data.holes);
  const known: HolesInput = {
    ...(preset?.holes && holes.count === undefined && holes.at === undefined && holes.angles === undefined
      ? { count: preset.holes.count }
      : {}),
    ...(preset?.holes && circleOf(holes) === null && holes.at === undefined
      ? { circle: { value: preset.holes.circle, doubt: 0, basis: 'catalogue' as const } }
      : {}),
    ...holes,
  };
  const thread = known.thread ?? (known.diameter === undefined ? preset?.holes?.thread : undefined);
  const major = thread === undefined ? null : findThread(thread);
  const clear = known.diameter?.value ?? preset?.holes?.diameter ?? null;
  const diameter = register.diameter?.value ?? preset?.register?.diameter ?? null;
  const found: FlangeSoFar = {
    side,
    units,
    name: name ?? null,
    outside: outside?.value ?? preset?.outside ?? null,
    register:
      data.register === 'none' || diameter === null
        ? null
        : { diameter, gender: register.gender ?? preset?.register?.gender ?? null },
    bore: bore ?? preset?.bore ?? null,
    circle: circleOf(known),
    holes: patternOf(known) ?? [],
    hole:
      thread !== undefined && major?.ok
        ? { diameter: major.value.d, words: thread }
        : clear === null
          ? null
          : { diameter: clear, words: 'clear' },
    pattern: preset?.id ?? null,
  };
  const isNothing =
    found.outside === null && found.register === null && found.circle === null && found.holes.length === 0;
  return isNothing ? null : found;
}

/**
 * The flanges of a job text as far as they can be read, driving first; those of which no size is known are left out, and so are keys that
 * cannot be read. Empty where the text itself cannot.
 * @param presets known patterns, for `from`
 */
export function flangesSoFar(text: string, presets: readonly FlangePreset[]): FlangeSoFar[] {
  const { data, faults } = parseJobText(text);
  if (faults.length > 0 || !isMap(data)) return [];
  const units = data.units === 'in' ? 'in' : 'mm';
  return (['driving', 'driven'] as const).flatMap((side) => soFar(side, data[side], units, presets) ?? []);
}
