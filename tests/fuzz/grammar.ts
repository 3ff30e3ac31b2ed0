/**
 * Job data by chance, grown from the job file's own JSON Schema: a key that is added there is reached here without a line being
 * written. Ranges of quantities stand in the schema's descriptions and are read from them.
 */
import type { Chance } from './chance.ts';

/** The part of JSON Schema that the job file uses. */
export interface Schema {
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly description?: string;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly maxLength?: number;
}

/** A way from the top to a key; `[]` steps into a list. */
export type KeyPath = readonly string[];

export interface Growing {
  readonly chance: Chance;
  /** Values that were seen under each key's name in jobs that people wrote. */
  readonly seen: Readonly<Record<string, readonly unknown[]>>;
  /** Share of values that are out of their range or of the wrong kind. */
  readonly wild: number;
  /** Share of optional keys that are typed. */
  readonly fullness: number;
}

/** Every key path of a schema. */
export function keyPaths(schema: Schema, path: KeyPath = []): KeyPath[] {
  const inner = Object.entries(schema.properties ?? {}).flatMap(([key, child]) => [
    [...path, key],
    ...keyPaths(child, [...path, key]),
  ]);
  const ways = (schema.anyOf ?? []).flatMap((way) => keyPaths(way, path));
  const items = schema.items === undefined ? [] : keyPaths(schema.items, [...path, '[]']);
  const unique = new Map([...inner, ...ways, ...items].map((found) => [found.join('.'), found]));
  return [...unique.values()];
}

const junk: readonly unknown[] = [
  null,
  true,
  false,
  '',
  ' ',
  [],
  {},
  [[]],
  { x: 1 },
  0,
  -1,
  -0,
  1e308,
  -1e308,
  5e-324,
  1e-12,
  2 ** 53 + 2,
  '1e999',
  '0x10',
  '1/0',
  '1/3',
  '-5 mm',
  '1,5',
  '12 furlong',
  'auto',
  'none',
  '<b>&"\'',
  'ÅÖ漢字',
  'a'.repeat(300),
  Array(100).fill(1),
];

/** Range of a quantity as its description tells it, and its unit. */
function toldRange(description: string): { low: number; high: number; unit: string; whole: boolean } | null {
  const told =
    /Range: (?:more than )?(-?[\d.]+) (?:and at most|to) (-?[\d.]+)(?: ([^\s.]+(?:\.[^\s.]+)*))?\.(?:\s|$)/.exec(
      description,
    );
  if (told) return { low: Number(told[1]), high: Number(told[2]), unit: told[3] ?? '', whole: false };
  const counted = /Whole number, (-?\d+) to (-?\d+)/.exec(description);
  return counted ? { low: Number(counted[1]), high: Number(counted[2]), unit: '', whole: true } : null;
}

function numberIn(chance: Chance, low: number, high: number): number {
  const way = chance.share();
  if (way < 0.06) return low;
  if (way < 0.12) return high;
  // Small values as often as large ones: sizes of one part lie within a decade.
  const value =
    low >= 0 && high / Math.max(low, 1e-3) > 20 && way < 0.7
      ? Math.max(low, 1e-3) * (high / Math.max(low, 1e-3)) ** chance.share()
      : low + (high - low) * chance.share();
  return Number(value.toPrecision(chance.whole(1, 6)));
}

const nearby = (chance: Chance, value: number) => Number((value * (0.7 + 0.6 * chance.share())).toPrecision(5));

/** A value for a key of a schema. `key` is its name, `about` the description that holds for it. */
export function grow(schema: Schema, growing: Growing, key = '', about = '', depth = 0): unknown {
  const { chance, seen, wild, fullness } = growing;
  if (chance.happens(wild)) return chance.pick(junk);
  // A size inside a measured value has the range of the whole.
  const description = `${schema.description ?? ''} ${toldRange(schema.description ?? '') ? '' : about}`.trim();
  const known = Object.hasOwn(seen, key) ? (seen[key] ?? []) : [];
  if (schema.const !== undefined) return schema.const;
  if (schema.enum) return chance.pick(schema.enum);
  if (schema.anyOf) {
    const scalar = known.filter((value) => typeof value !== 'object');
    if (scalar.length > 0 && chance.happens(0.3)) {
      const value = chance.pick(scalar);
      return typeof value === 'number' && chance.happens(0.7) ? nearby(chance, value) : value;
    }
    return grow(chance.pick(schema.anyOf), growing, key, description, depth);
  }
  if (schema.properties) {
    // The first key of a section is the one it is there for.
    const keys = Object.entries(schema.properties).filter(
      ([name], index) =>
        schema.required?.includes(name) ||
        chance.happens(depth > 0 && index === 0 ? 0.9 : fullness / (1 + 0.3 * depth)),
    );
    return Object.fromEntries(keys.map(([name, child]) => [name, grow(child, growing, name, description, depth + 1)]));
  }
  const types = typeof schema.type === 'string' ? [schema.type] : (schema.type ?? ['number']);
  const type = chance.pick(types);
  if (type === 'boolean') return chance.happens(0.5);
  if (type === 'array') {
    const least = schema.minItems ?? 0;
    const count = chance.whole(least, Math.min(schema.maxItems ?? least + 4, least + 5));
    return Array.from({ length: count }, () => grow(schema.items ?? {}, growing, key, description, depth + 1));
  }
  const range = toldRange(description);
  if (type === 'integer') return chance.whole(schema.minimum ?? range?.low ?? 0, schema.maximum ?? range?.high ?? 99);
  if (type === 'number') {
    const numbers = known.filter((value) => typeof value === 'number');
    if (numbers.length > 0 && chance.happens(0.5)) return nearby(chance, chance.pick(numbers));
    const value = numberIn(chance, range?.low ?? schema.minimum ?? -10, range?.high ?? schema.maximum ?? 100);
    return range?.whole ? Math.round(value) : value;
  }
  if (schema.pattern !== undefined || range !== null) {
    return `${numberIn(chance, range?.low ?? 0, range?.high ?? 100)} ${range?.unit ?? ''}`.trim();
  }
  const words = known.filter((value) => typeof value === 'string');
  const told = description
    .split(/[\s,;:{}()[\]]+/)
    .map((word) => word.replace(/\.$/, ''))
    .filter((word) => word !== '');
  const pool = words.length > 0 && chance.happens(0.5) ? words : told;
  return (pool.length > 0 ? String(chance.pick(pool)) : 'x').slice(0, schema.maxLength ?? 200);
}

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** `data` with a grown value at one key path; sections on the way are made where they are not there, with the keys they cannot do without. */
export function graft(schema: Schema, path: KeyPath, data: unknown, growing: Growing, key = ''): unknown {
  const [step, ...rest] = path;
  if (step === undefined && typeof data === 'number' && growing.chance.happens(0.6))
    return nearby(growing.chance, data);
  if (step === undefined)
    return grow(schema, { ...growing, fullness: Math.max(growing.fullness, 0.4) }, key, schema.description);
  const ways = [schema, ...(schema.anyOf ?? [])].filter((way) =>
    step === '[]'
      ? way.items !== undefined && leads(way.items, rest)
      : way.properties?.[step] !== undefined && leads(way.properties[step], rest),
  );
  if (ways.length === 0) return grow(schema, growing, key, schema.description);
  const way = growing.chance.pick(ways);
  if (step === '[]') {
    const list =
      Array.isArray(data) && data.length > 0
        ? [...data]
        : Array.from({ length: Math.max(1, way.minItems ?? 1) }, () => undefined);
    const items = way.items ?? {};
    const at = growing.chance.whole(0, list.length - 1);
    return list.map((item, index) =>
      index === at ? graft(items, rest, item, growing, key) : (item ?? grow(items, growing, key, schema.description)),
    );
  }
  const section: Record<string, unknown> = isMap(data) ? { ...data } : {};
  // A plain size becomes a measured one with more to say.
  if (way.properties?.value !== undefined && !isMap(data) && step !== 'value' && step !== 'readings')
    section.value = typeof data === 'number' ? data : grow(way.properties.value, growing, key, schema.description);
  for (const name of way.required ?? []) {
    if (!Object.hasOwn(section, name) && name !== step)
      section[name] = grow(way.properties?.[name] ?? {}, growing, name);
  }
  const child = way.properties?.[step] ?? {};
  const about = toldRange(child.description ?? '')
    ? child.description
    : `${child.description ?? ''} ${schema.description ?? ''}`;
  section[step] = graft(
    { ...child, ...(about === undefined ? {} : { description: about }) },
    rest,
    section[step],
    growing,
    step,
  );
  return section;
}

/** Whether a schema has a way along a path. */
function leads(schema: Schema, path: KeyPath): boolean {
  const [step, ...rest] = path;
  if (step === undefined) return true;
  return [schema, ...(schema.anyOf ?? [])].some((way) => {
    const child = step === '[]' ? way.items : way.properties?.[step];
    return (
      (child !== undefined && leads(child, rest)) || (way !== schema && way.anyOf !== undefined && leads(way, path))
    );
  });
}

/** Values under each key's name in the jobs given. */
export function valuesSeen(jobs: readonly unknown[]): Record<string, unknown[]> {
  const seen: Record<string, unknown[]> = {};
  const visit = (key: string, value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) visit(key, item);
    else if (isMap(value)) for (const [name, inner] of Object.entries(value)) visit(name, inner);
    else seen[key] = [...(seen[key] ?? []), value];
  };
  for (const job of jobs) visit('', job);
  return seen;
}
