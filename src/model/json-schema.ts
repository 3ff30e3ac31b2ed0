/** The job's JSON Schema as its fields and sentences are read by. Pure data. */

/** The part of a JSON Schema that fields are made of. */
export interface JsonSchema {
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly (string | number | boolean)[];
  readonly anyOf?: readonly JsonSchema[];
  readonly pattern?: string;
  readonly maxLength?: number;
  readonly default?: unknown;
  /** What a list holds. */
  readonly items?: JsonSchema;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
}

/** The section that a key may hold, if it may hold one. */
export const sectionOf = (of: JsonSchema): JsonSchema | undefined =>
  of.properties ? of : of.anyOf?.find((option) => option.properties !== undefined);

/** A value that may be a section too, but reads better as one field: readings, a measured size, a fit. */
export function isMeasured(of: JsonSchema): boolean {
  const keys = of.anyOf && sectionOf(of)?.properties;
  return keys?.readings !== undefined || keys?.clearance !== undefined;
}

/** The schema of a key; undefined where the job has no such key. Places in a list are not followed. */
export function schemaAt(schema: JsonSchema, path: readonly string[]): JsonSchema | undefined {
  let at: JsonSchema | undefined = schema;
  for (const key of path) {
    const keys: JsonSchema['properties'] = at && sectionOf(at)?.properties;
    // What every object has by itself ("constructor") is no key of a job.
    at = keys && Object.hasOwn(keys, key) ? keys[key] : undefined;
  }
  return at;
}
