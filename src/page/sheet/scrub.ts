/** A number in a field turned up and down by key or by drag: everything follows while it moves. */

/** The leading number of a typed value, and how finely it was typed. */
function parts(typed: string): { readonly number: number; readonly rest: string; readonly decimals: number } | null {
  const read = /^\s*(-?\d+(?:\.(\d+))?)(.*)$/s.exec(typed);
  if (!read?.[1] || /^\s*[/:]/.test(read[3] ?? '')) return null;
  return { number: Number(read[1]), rest: read[3] ?? '', decimals: read[2]?.length ?? 0 };
}

/** A typed value with its number moved by so many steps; null where it has none. Whole numbers move by one, others by a tenth. */
export function stepped(typed: string, steps: number, isFine = false): string | null {
  const read = parts(typed);
  if (!read || steps === 0) return null;
  const decimals = Math.max(read.decimals, isFine ? 1 : 0);
  const step = decimals === 0 ? 1 : 0.1;
  return `${(read.number + steps * step).toFixed(Math.max(decimals, step < 1 ? 1 : 0))}${read.rest}`;
}
