/** Reading SVG with a reader of its own: Python's XML parser. */
import { spawnSync } from 'node:child_process';

export interface SvgElement {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

const script = `
import sys, json, xml.etree.ElementTree as T
root = T.fromstring(sys.stdin.buffer.read())
print(json.dumps([{'tag': e.tag.split('}')[-1], 'attributes': e.attrib, 'text': e.text or ''} for e in root.iter()]))
`;

/** Every element of a document, parsed by Python. Throws when it is not well-formed, or when there is no python3. */
export function parseXml(text: string): SvgElement[] {
  const run = spawnSync('python3', ['-c', script], { input: text, encoding: 'utf8', maxBuffer: 1e8 });
  if (run.error) throw new Error(`python3 is needed to read the pictures back: ${run.error.message}`);
  if (run.status !== 0) throw new Error(`not well-formed: ${run.stderr}`);
  return JSON.parse(run.stdout) as SvgElement[];
}

/** Numbers that a writer must never write, found in a text; colours such as #e6f0e4 are not numbers. */
export const badNumbers = (text: string): string[] =>
  text.replace(/#[0-9a-f]{3,6}\b/g, '').match(/NaN|undefined|Infinity|(?<![\w.])-0(?![\d.])|\d[eE][-+]?\d/g) ?? [];
