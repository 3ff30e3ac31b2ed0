/** Plain data with one value in another's place. */
import { isMap } from './field.ts';

/** A way from the top to a key: names, and places in lists. */
export type EditPath = readonly (string | number)[];

/**
 * Data with one value put in; everything beside the path is shared with the data it came from. Where a section is missing it is made.
 * @param value undefined takes the key out
 */
export function withValue(data: unknown, [key, ...rest]: EditPath, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(data)) return data.map((item, i) => (i === key ? withValue(item, rest, value) : item));
  const map = isMap(data) ? data : {};
  const { [key]: now, ...others } = map;
  if (rest.length === 0 && value === undefined) return others;
  return { ...map, [key]: withValue(Object.hasOwn(map, key) ? now : undefined, rest, value) };
}
