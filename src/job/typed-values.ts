/** What stands at each key of a job file, as it was typed: what the page shows in its fields. */
import { isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import { parseJobText } from './document.ts';

/** Source of each value by its path ("driving.holes.circle"); sections on several lines are left out, their keys are not. */
export type TypedValues = Readonly<Record<string, string>>;

/** The values of a job text as typed; empty where the text cannot be read. */
export function typedValues(text: string): TypedValues {
  const { document, faults } = parseJobText(text);
  if (faults.length > 0 || document === null) return {};
  const values: Record<string, string> = Object.create(null);
  const walk = (node: unknown, path: string): void => {
    const range = (node as Node | null)?.range;
    if (range && path !== '') {
      const source = text.slice(range[0], range[1]).trim();
      // Quotes are how the file keeps odd words; a field shows the words.
      if (isScalar(node) && typeof node.value === 'string') values[path] = node.value;
      else if (!isMap(node) || node.flow === true) values[path] = source.replace(/\s*\n\s*/g, ' ');
    }
    if (isMap(node)) {
      for (const { key, value } of node.items as Pair[]) {
        const name = isScalar(key) ? String(key.value) : '';
        walk(value, path === '' ? name : `${path}.${name}`);
      }
    } else if (isSeq(node)) {
      for (const [i, item] of node.items.entries()) walk(item, `${path}[${i}]`);
    }
  };
  walk(document.contents, '');
  return { ...values };
}
