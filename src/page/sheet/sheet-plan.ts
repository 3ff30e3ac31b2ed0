/** How the sheet is laid out: its sections, the keys shown first, and which part of the job's schema becomes which field. Pure. */
import { isMeasured, type JsonSchema, schemaAt, sectionOf } from '../../model/json-schema.ts';

/** Sections in the order of the work, and the keys of each that are shown before more lines are asked for. */
export const sections: readonly { readonly key: string; readonly title: string; readonly first: readonly string[] }[] =
  [
    {
      key: 'driving',
      title: 'Driving flange, as measured',
      first: ['from', 'name', 'outside', 'thickness', 'register', 'holes', 'runout', 'material', 'behind'],
    },
    {
      key: 'driven',
      title: 'Driven flange, as measured',
      first: ['from', 'name', 'outside', 'thickness', 'register', 'holes', 'runout', 'material', 'behind'],
    },
    { key: 'duty', title: 'What it must carry', first: ['torque', 'shock', 'reversing', 'speed', 'grade'] },
    { key: 'adapter', title: 'Adapter', first: ['name', 'material', 'thickness', 'clocking', 'outside', 'bore'] },
    {
      key: 'wheel',
      title: 'Toothed wheel',
      first: ['teeth', 'form', 'outside', 'height', 'ratio', 'thickness', 'material', 'fit', 'set_true'],
    },
    { key: 'sensor', title: 'Sensor', first: ['kind', 'gap', 'pole', 'was'] },
    { key: 'bracket', title: 'Bracket', first: [] },
    { key: 'shaft', title: 'Propeller shaft', first: ['mass'] },
    { key: 'print', title: 'Printer', first: ['holes', 'registers'] },
    { key: 'sheet', title: 'Cutting service', first: ['tolerance', 'kerf', 'flavour'] },
    { key: 'built', title: 'Finished parts, as measured', first: ['adapter', 'wheel', 'joint'] },
  ];

/** Keys inside a section of a section that are shown at once. */
const firstWithin: Readonly<Record<string, readonly string[]>> = {
  register: ['gender', 'diameter', 'depth', 'corner'],
  holes: ['count', 'circle', 'chord', 'diameter', 'thread', 'depth'],
  runout: ['rim', 'face'],
  was: ['teeth', 'ratio'],
};

/** Keys of the section at a path that are shown at once; none named: all. */
export function firstKeys(path: readonly (string | number)[]): readonly string[] {
  const key = String(path.at(-1));
  return (path.length === 1 ? sections.find((section) => section.key === key)?.first : firstWithin[key]) ?? [];
}

/** Letters that a field shows in one line. */
const oneLine = 20;

/** Whether what stands in a field may be longer than its line: readings, a title, a note. Then the field grows with it. */
export const growsLong = (of: JsonSchema): boolean =>
  isMeasured(of) || (of.maxLength ?? 0) > oneLine || (of.anyOf ?? [of]).some(({ type }) => type === 'array');

/** The part of a key's path that has a field or a group of its own on the sheet: a measured value is one field with all its keys. */
export function fieldPath(schema: JsonSchema, path: readonly string[]): readonly string[] {
  for (let length = 1; length < path.length; length++) {
    const of = schemaAt(schema, path.slice(0, length));
    if (!of || !sectionOf(of) || isMeasured(of) || !schemaAt(schema, path.slice(0, length + 1)))
      return path.slice(0, length);
  }
  return path;
}

/** Words that a key may take instead of its own keys: which ones, or an example where any text may stand; undefined where none may. */
export function wordForm(of: JsonSchema): { readonly words: readonly string[]; readonly example: string } | undefined {
  const others = of.anyOf?.filter(({ properties }) => properties === undefined) ?? [];
  const words = others.flatMap((option) => option.enum ?? []).map(String);
  const isFree = others.some(({ type }) => type === 'string');
  if (words.length === 0 && !isFree) return undefined;
  const example = /such as [^\s,;]+/.exec(of.description ?? '')?.[0] ?? 'not said';
  return { words: isFree ? [] : words, example: words.length > 0 ? `may be ${words.join(' or ')}` : example };
}

/** Words that a key may take; empty where any value may be typed. */
export function choices(of: JsonSchema): readonly string[] {
  // A schema may name a word twice, as text and as number; what is no word at all is left out.
  if (of.enum) return [...new Set(of.enum.filter((word) => word !== null).map(String))];
  const isFlag = of.type === 'boolean' || of.anyOf?.some(({ type }) => type === 'boolean');
  return isFlag ? ['true', 'false'] : [];
}
