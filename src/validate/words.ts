/** Numbers as findings say them. */

/** Millimetres with two decimals: "12.50 mm"; three when asked. */
export function mm(value: number, decimals = 2): string {
  const text = value.toFixed(decimals);
  return `${Number(text) === 0 ? text.replace('-', '') : text} mm`;
}

/** The word for one or many. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Marks a source that rests on memory. */
export function sourced(source: string, memory: boolean): string {
  return memory ? `${source} (from memory)` : source;
}
