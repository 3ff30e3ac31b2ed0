/** Hole centres from the circles and points of a DXF drawing, in its ASCII form. */
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import { listed } from '../units/sentence.ts';
import type { Point } from './circle-fit.ts';
import { dxfGroups, dxfUnits } from './dxf-groups.ts';
import { mm, tidy } from './words.ts';

/** A circle drawn, or a point (diameter 0), mm. */
export interface DrawnHole extends Point {
  readonly diameter: number;
}

export interface DrawnHoles {
  readonly holes: readonly DrawnHole[];
  /** What was left out, and how the unit was settled. */
  readonly notes: readonly string[];
}

interface Entity {
  readonly type: string;
  readonly values: ReadonlyMap<number, string>;
}

/**
 * The holes of a drawing: circles of one diameter (`wanted`, mm, or the diameter that most circles have), or its points when it
 * has no circles. Reads CIRCLE and POINT entities of model space by the tagged-text rules of the published DXF reference; a
 * mirrored plane (extrusion 0, 0, -1) is turned back. Blocks are not opened. A drawing without a unit is taken in `units`.
 */
export function holesFromDxf(text: string, units: 'mm' | 'in', wanted?: number): Lookup<DrawnHoles> {
  if (text.startsWith('AutoCAD Binary DXF'))
    return missing('This is a binary DXF; save it again as an ASCII (text) DXF.');
  const tags = tagsOf(text);
  if (!tags.ok) return tags;
  const entities = entitiesOf(tags.value);
  if (entities === null) return missing('There is no ENTITIES section in this file: is it a DXF?');
  const { size, note } = unitOf(tags.value, units);
  const drawn: DrawnHole[] = [];
  const others = new Map<string, number>();
  for (const { type, values } of entities) {
    if (type !== 'CIRCLE' && type !== 'POINT') {
      others.set(type, (others.get(type) ?? 0) + 1);
      continue;
    }
    const number = (code: number) => Number(values.get(code) ?? Number.NaN);
    const x = number(10) * ((values.get(230) ?? '1').trim().startsWith('-') ? -1 : 1);
    const hole = { x: x * size, y: number(20) * size, diameter: type === 'POINT' ? 0 : 2 * number(40) * size };
    if (!Object.values(hole).every(Number.isFinite))
      return missing(`A ${type} in this DXF has no proper centre or radius.`);
    drawn.push({ x: tidy(hole.x, 9), y: tidy(hole.y, 9), diameter: tidy(hole.diameter, 9) });
  }
  const notes = [note, ...othersNote(others)];
  const circles = drawn.filter(({ diameter }) => diameter > 0);
  if (circles.length === 0) {
    if (drawn.length < 2)
      return missing(
        `There are no circles and ${drawn.length === 0 ? 'no points' : 'only one point'} in this DXF.${othersNote(
          others,
        )
          .map((word) => ` ${word}`)
          .join('')}`,
      );
    return found({ holes: drawn, notes });
  }
  return andPick(circles, notes, wanted);
}

function andPick(
  circles: readonly DrawnHole[],
  notes: readonly string[],
  wanted: number | undefined,
): Lookup<DrawnHoles> {
  const groups = new Map<number, DrawnHole[]>();
  for (const circle of circles) {
    const key = [...groups.keys()].find((diameter) => Math.abs(diameter - circle.diameter) < 0.05) ?? circle.diameter;
    groups.set(key, [...(groups.get(key) ?? []), circle]);
  }
  const sorted = [...groups].sort(([, a], [, b]) => b.length - a.length);
  const told = listed(sorted.map(([diameter, members]) => `${members.length} of ${mm(diameter)}`));
  if (wanted !== undefined) {
    const match = sorted.find(([diameter]) => Math.abs(diameter - wanted) <= 0.3);
    return match === undefined
      ? missing(`No circle in this DXF is ${mm(wanted)} across; there are ${told}.`)
      : found({ holes: match[1], notes });
  }
  const [first, second] = sorted;
  if (first === undefined || first[1].length < 2)
    return missing(
      `No two circles in this DXF are of one size (${told}), so which are the bolt holes? Say their diameter with --hole.`,
    );
  if (second !== undefined && second[1].length === first[1].length)
    return missing(`Which circles are the bolt holes? There are ${told}. Say their diameter with --hole.`);
  return found({
    holes: first[1],
    notes:
      sorted.length > 1
        ? [...notes, `Circles in the drawing: ${told}. The ones of ${mm(first[0])} were taken.`]
        : notes,
  });
}

/** Groups as pairs. */
function tagsOf(text: string): Lookup<{ code: number; value: string }[]> {
  return andThen(dxfGroups(text), ({ codes, values }) =>
    values.length === 0
      ? missing('This file is empty.')
      : found(values.map((value, i) => ({ code: codes[i] as number, value }))),
  );
}

function entitiesOf(tags: readonly { code: number; value: string }[]): Entity[] | null {
  const start = tags.findIndex(
    (tag, index) => tag.code === 2 && tag.value.trim() === 'ENTITIES' && tags[index - 1]?.value.trim() === 'SECTION',
  );
  if (start < 0) return null;
  const entities: { type: string; values: Map<number, string> }[] = [];
  for (const { code, value } of tags.slice(start + 1)) {
    if (code === 0 && value.trim() === 'ENDSEC') break;
    if (code === 0) entities.push({ type: value.trim(), values: new Map() });
    else if (!entities.at(-1)?.values.has(code)) entities.at(-1)?.values.set(code, value);
  }
  // 67 = 1 marks paper space: title blocks and views, not the part.
  return entities.filter(({ values }) => values.get(67)?.trim() !== '1');
}

function unitOf(tags: readonly { code: number; value: string }[], units: 'mm' | 'in'): { size: number; note: string } {
  const at = tags.findIndex(({ code, value }) => code === 9 && value.trim() === '$INSUNITS');
  const size = dxfUnits[Number(tags[at + 1]?.value)]?.mm;
  if (at < 0 || size === undefined)
    return {
      size: units === 'in' ? 25.4 : 1,
      note: `The drawing does not say its unit; taken as ${units === 'in' ? 'inches' : 'millimetres'}.`,
    };
  return { size, note: `The drawing's unit is ${tidy(size, 6)} mm.` };
}

function othersNote(others: ReadonlyMap<string, number>): string[] {
  const told = [...others].map(([type, count]) => `${count} ${type.slice(0, 20)}`);
  if (told.length === 0) return [];
  const inside = others.has('INSERT') ? ' Circles inside a block (INSERT) are not seen: explode it first.' : '';
  return [`Left out: ${listed(told)}.${inside}`];
}
