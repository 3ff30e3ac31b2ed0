/** What can still be judged of a job that does not read as a whole, so that all its mistakes are told at once. */
import { z } from 'zod';
import { isMap } from './field.ts';

/**
 * The part of `data` that `schema` reads: whole sections where they are sound; of others, the sound keys, and
 * the default of an unsound one. A section that
 * lacks a key it always needs is left out, except the outermost, which is always a map.
 */
export function salvage(schema: z.ZodObject, data: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return soundKeys(schema, data).kept;
}

function soundKeys(
  schema: z.ZodObject,
  data: Readonly<Record<string, unknown>>,
): { kept: Record<string, unknown>; complete: boolean } {
  const kept: Record<string, unknown> = {};
  let complete = true;
  for (const [key, part] of Object.entries(schema.shape) as [string, z.ZodType][]) {
    const value = soundPart(part, Object.hasOwn(data, key) ? data[key] : undefined);
    if (value !== undefined) kept[key] = value;
    else if (part._zod.optin !== 'optional') complete = false;
  }
  return { kept, complete };
}

function soundPart(schema: z.ZodType, data: unknown): unknown {
  const read = schema.safeParse(data);
  if (read.success) return read.data;
  const inner = withoutDefault(schema);
  if (inner instanceof z.ZodObject && isMap(data)) {
    const { kept, complete } = soundKeys(inner, data);
    if (complete) return kept;
  }
  // A bad value of a key with a default: judge the rest as if it had been left out.
  const left = schema.safeParse(undefined);
  return left.success ? left.data : undefined;
}

function withoutDefault(schema: z.ZodType): z.ZodType {
  return schema instanceof z.ZodOptional || schema instanceof z.ZodPrefault
    ? withoutDefault(schema.unwrap() as z.ZodType)
    : schema;
}
