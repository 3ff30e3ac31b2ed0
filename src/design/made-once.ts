/**
 * Ways of holding a joint that differ in their screws alone often come out with the same adapter or the same wheel. What is worked out from a
 * specification is then made once, and is one and the same part in all of them: whatever is kept by part is known in all of them, too.
 */

const known = new WeakMap<object, Map<string, unknown>>();

/**
 * What `make` makes, once for equal specifications.
 * @param search what all ways of one search have in common and no other job has; forgotten with it
 * @param what kind of thing is made: equal specifications of two kinds are two things
 * @param spec plain data, numbers finite, that decide what is made, and nothing besides them does
 */
export function madeOnce<T>(search: object, what: string, spec: unknown, make: () => T): T {
  const things = known.get(search) ?? new Map<string, unknown>();
  known.set(search, things);
  // Finite numbers are written alike only where they are the same to the last bit.
  const key = `${what} ${JSON.stringify(spec)}`;
  if (things.has(key)) return things.get(key) as T;
  const thing = make();
  things.set(key, thing);
  return thing;
}
