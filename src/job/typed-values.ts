/** What stands at each key of a job file, as its field on the page shows it. */
import { isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import { benchForm } from './bench-form.ts';
import { parseJobText } from './document.ts';
import { keyName } from './yaml-key.ts';

/** Each value by its path ("driving.holes.circle"); sections on several lines are left out, their keys are not. */
export type TypedValues = Readonly<Record<string, string>>;

/** The values of a job text as typed, lists and measured values as they are said at the bench; empty where the text cannot be read. */
export function typedValues(text: string): TypedValues {
  const { document, faults } = parseJobText(text);
  if (faults.length > 0 || document === null) return {};
  const values: Record<string, string> = Object.create(null);
  const sourceOf = (node: unknown): string | null => {
    if (!isScalar(node) || !node.range) return null;
    // Quotes are how the file keeps odd words; a field shows the words.
    return typeof node.value === 'string' ? node.value : text.slice(node.range[0], node.range[1]).trim();
  };
  /** As it is written; a list on lines of its own in one pair of brackets. Null where that is a section on several lines. */
  const inOneLine = (node: unknown): string | null => {
    if (isSeq(node) && node.flow !== true) {
      const items = node.items.map(inOneLine);
      return items.includes(null) ? null : `[${items.join(', ')}]`;
    }
    if ((isMap(node) && node.flow !== true) || !(node as Node | null)?.range) return null;
    const [from, to] = (node as Node).range ?? [0, 0];
    return text
      .slice(from, to)
      .trim()
      .replace(/\s*\n\s*/g, ' ');
  };
  const walk = (node: unknown, path: readonly (string | number)[], name: string): void => {
    if (name !== '') {
      const said = sourceOf(node) ?? benchForm(node, path, sourceOf) ?? inOneLine(node);
      if (said !== null) values[name] = said;
    }
    if (isMap(node)) {
      for (const { key, value } of node.items as Pair[]) {
        const own = keyName(key) ?? '';
        walk(value, [...path, own], name === '' ? own : `${name}.${own}`);
      }
    } else if (isSeq(node)) {
      for (const [i, item] of node.items.entries()) walk(item, [...path, i], `${name}[${i}]`);
    }
  };
  walk(document.contents, [], '');
  return { ...values };
}
