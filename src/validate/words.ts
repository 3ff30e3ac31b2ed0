/** Numbers as findings say them. */
import { steadyFixed } from '../units/steady.ts';

/** Millimetres with two decimals: "12.50 mm"; three when asked. */
export function mm(value: number, decimals = 2): string {
  return `${plain(value, decimals)} mm`;
}

/** Millimetres rounded up to the next tenth, as a bench works: what is asked for is then enough. "2.4 mm" */
export function atLeast(value: number): string {
  return `${Number((Math.ceil(value * 10 - 1e-6) / 10).toFixed(1))} mm`;
}

/** Degrees without trailing zeros: "15 degrees", "7.125 degrees". */
export function angle(degrees: number): string {
  return `${Number(plain(degrees, 3))} degrees`;
}

/** The one way in which angles of a joint are told: where they start, which way they run, and from where that is seen. */
export const fromIndex = "from the adapter's index mark, counter-clockwise seen from the driven side";

/** Fixed decimals without a minus zero. */
export function plain(value: number, decimals: number): string {
  const text = steadyFixed(value, decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** A number that is held against "at least": rounded down, so that what falls short never reads as if it did not. */
export const roundedDown = (value: number, decimals: number): string =>
  plain(Math.floor(value * 10 ** decimals + 1e-6) / 10 ** decimals, decimals);

/** The word for one or many. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Marks a source that rests on memory. */
export function sourced(source: string, memory: boolean): string {
  return memory ? `${source} (from memory)` : source;
}
