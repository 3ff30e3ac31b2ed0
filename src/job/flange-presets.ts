/** Known flange patterns: read from their YAML texts, found by id, searched by what was measured. */
import { z } from 'zod';
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { nearestWord } from '../units/near.ts';
import { thread, zone } from './codes.ts';
import { parseJobText } from './document.ts';
import { pathText, printable } from './errors.ts';
import { isMap } from './field.ts';
import { fieldsIn } from './quantity-fields.ts';
import { flangeRanges } from './schema-flange.ts';
import { choice, whole, words, yesNo } from './word-fields.ts';

const mm = fieldsIn('mm');

const presetSchema = z.strictObject({
  id: words(60, ''),
  family: words(120, ''),
  title: words(200, ''),
  outside: mm.length(flangeRanges.outside, '').optional(),
  thickness: mm.length(flangeRanges.thickness, '').optional(),
  register: z
    .strictObject({
      gender: choice(['male', 'female'], ''),
      diameter: mm.length(flangeRanges.register, ''),
      depth: mm.length(flangeRanges.registerDepth, '').optional(),
      fit: zone('').optional(),
      corner: mm.length({ least: 0, most: 20 }, '').optional(),
    })
    .optional(),
  holes: z
    .strictObject({
      count: whole(2, 72, ''),
      circle: mm.length(flangeRanges.circle, ''),
      first: mm.angle('').optional(),
      diameter: mm.length(flangeRanges.hole, '').optional(),
      thread: thread('').optional(),
      depth: mm.length({ least: 1, most: 200 }, '').optional(),
      through: yesNo('').optional(),
    })
    .optional(),
  bore: mm.length({ least: 1, most: 600 }, '').optional(),
  runout: z
    .strictObject({
      rim: mm.length({ least: 0, most: 5 }, '').optional(),
      face: mm.length({ least: 0, most: 5 }, '').optional(),
    })
    .optional(),
  source: words(600, ''),
  /** Key paths inside the record that no source confirms; a section's path covers all of it. */
  memory: z.array(z.string().max(60)),
  note: words(1000, '').optional(),
  /** Why no adapter is made for this flange; absent when one may be. */
  unsuitable: words(400, '').optional(),
});

/** One known pattern; lengths in mm. */
export type FlangePreset = z.output<typeof presetSchema>;

/** One text of records and the name to blame it by. */
export interface PresetText {
  readonly file: string;
  readonly text: string;
}

/** Two patterns that are easily taken for each other; ids may leave out -companion and -shaft. */
const nearMissSchema = z.strictObject({
  a: z.string(),
  b: z.string(),
  circles: z.tuple([z.number(), z.number()]),
  counts: z.tuple([z.number(), z.number()]),
  mismatch: z.number(),
});

export type NearMissPair = z.output<typeof nearMissSchema>;

/**
 * The patterns of all texts, in order. Each text is a list of records; pairs of near misses among them are passed over.
 * Presets are shipped with the program, so a bad one is a bug: it throws, naming file, line and key.
 */
export function parseFlangePresets(texts: readonly PresetText[]): FlangePreset[] {
  const presets = texts.flatMap((text) => recordsOf(text, presetSchema, (record) => !isNearMiss(record)));
  const ids = presets.map((preset) => preset.id.toLowerCase());
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice !== undefined) throw new Error(`The flange preset "${twice}" is there twice.`);
  return presets;
}

/** The near-miss pairs of all texts, in order; throws on a bad one. */
export function parseNearMisses(texts: readonly PresetText[]): NearMissPair[] {
  return texts.flatMap((text) => recordsOf(text, nearMissSchema, isNearMiss));
}

function isNearMiss(record: unknown): boolean {
  return isMap(record) && 'a' in record && 'b' in record;
}

function recordsOf<S extends z.ZodType>(
  { file, text }: PresetText,
  schema: S,
  belongs: (record: unknown) => boolean,
): z.output<S>[] {
  const document = parseJobText(text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n'));
  const [fault] = document.faults;
  if (fault !== undefined) throw new Error(`${file}:${document.lines.linePos(fault.offset).line} ${fault.message}`);
  if (!Array.isArray(document.data)) throw new Error(`${file}: must be a list of records.`);
  return document.data.flatMap((record: unknown, index) => {
    if (!belongs(record)) return [];
    const read = schema.safeParse(record);
    if (read.success) return [read.data];
    const [issue] = read.error.issues;
    const steps = [index, ...((issue?.path ?? []) as (string | number)[])];
    const known = steps
      .map((_, count) => document.places.get(pathText(steps.slice(0, steps.length - count))))
      .find((place) => place !== undefined);
    throw new Error(
      `${file}:${document.lines.linePos(known?.key ?? 0).line} ${pathText(steps)}: ${issue?.message ?? 'unreadable'}`,
    );
  });
}

/** A pattern by its id; case does not matter. A miss names the nearest ids and how to list them. */
export function findPreset(presets: readonly FlangePreset[], id: string): Lookup<FlangePreset> {
  const key = id.trim().toLowerCase();
  const preset = presets.find((candidate) => candidate.id.toLowerCase() === key);
  if (preset !== undefined) return found(preset);
  const ids = presets.map((candidate) => candidate.id);
  const longer = ids.filter((candidate) => candidate.toLowerCase().startsWith(`${key}-`));
  const shown = printable(id, 40);
  if (longer.length > 0) return missing(`There is no flange pattern "${shown}"; did you mean ${longer.join(' or ')}?`);
  const near = nearestWord(key, ids);
  const sizes = alikeFromTheStart(key, ids).slice(0, 8);
  const hint = near !== null ? ` Did you mean ${near}?` : sizes.length > 0 ? ` Similar: ${sizes.join(', ')}.` : '';
  return missing(`There is no flange pattern "${shown}".${hint} List them with: flangewright flanges.`);
}

/** Ids that share the longest beginning with what was typed, at least its first three letters. */
function alikeFromTheStart(key: string, ids: readonly string[]): string[] {
  for (let length = key.length; length >= 3; length--) {
    const alike = ids.filter((id) => id.toLowerCase().startsWith(key.slice(0, length)));
    if (alike.length > 0) return alike;
  }
  return [];
}
