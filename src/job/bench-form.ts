/** A value of a job file as it is said at the bench: readings by comma, a size with its doubt and its instrument. */
import { isMap, isSeq, type Pair } from 'yaml';
import { legalKeys, takesList } from './legal-keys.ts';
import { listedNumbers } from './typed-commas.ts';
import { keyName } from './yaml-key.ts';

/** Source of a plain value as it stands in the text; null for anything else. */
type SourceOf = (node: unknown) => string | null;

/** "84.02, 83.98, 84.00"; null where the list is not read back from that. */
function listForm(node: unknown, sourceOf: SourceOf): string | null {
  if (!isSeq(node)) return null;
  const items = node.items.map(sourceOf);
  const form = items.join(', ');
  const again = listedNumbers(form);
  return again?.length === items.length && again.every((item, i) => item === items[i]) ? form : null;
}

/** Keys of a measured value that can be said in a line. */
const sayable = ['value', 'readings', 'doubt', 'instrument'];

/** "62.00 ±0.01 micrometer" or "60.02, 60.03 micrometer"; null where the value says more than that. */
function measuredForm(node: unknown, sourceOf: SourceOf): string | null {
  if (!isMap(node)) return null;
  const parts = new Map((node.items as Pair[]).map(({ key, value }) => [keyName(key) ?? '', value]));
  if (![...parts.keys()].every((key) => sayable.includes(key))) return null;
  const said = (key: string) => (parts.has(key) ? sourceOf(parts.get(key)) : '');
  const [value, doubt, instrument] = [said('value'), said('doubt'), said('instrument')];
  if (value === null || doubt === null || instrument === null) return null;
  if (parts.has('readings')) {
    const readings = listForm(parts.get('readings'), sourceOf);
    const isPlain = readings !== null && /^[\d., ]+$/.test(readings);
    return isPlain && value === '' && doubt === '' && instrument !== '' ? `${readings} ${instrument}` : null;
  }
  if (value === '') return null;
  return `${value}${doubt === '' ? '' : ` ±${doubt}`}${instrument === '' ? '' : ` ${instrument}`}`;
}

/**
 * How a list of numbers, or a measured value in braces, is said at the bench. Typed into its field again it means the same.
 * @param node the value in the file's document
 * @param path of its key, such as ["driving", "outside"]
 * @param sourceOf text of a plain value, null for any other node
 * @returns null where its own spelling in the file is the only one
 */
export function benchForm(node: unknown, path: readonly (string | number)[], sourceOf: SourceOf): string | null {
  if (isMap(node)) return legalKeys(path).includes('readings') ? measuredForm(node, sourceOf) : null;
  return takesList(path) ? listForm(node, sourceOf) : null;
}
