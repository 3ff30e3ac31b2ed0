/** Hole centres from a table of coordinates, as a read-out or a scan gives them. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { parseQuantity } from '../units/quantity.ts';
import type { Point } from './circle-fit.ts';

/** More rows than this are no bolt pattern. */
const mostRows = 1000;

/**
 * Points in mm from text with one point a line: x and y, parted by comma, semicolon, tab or spaces. A first line of names may
 * say which columns are x and y; lines that start with # are passed over; a value may carry its unit, a bare one is in `units`.
 * Misses name the line.
 */
export function pointsFromCsv(text: string, units: 'mm' | 'in'): Lookup<Point[]> {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n?|\n/)
    .map((line, index) => ({ text: line.trim(), number: index + 1 }))
    .filter((line) => line.text !== '' && !line.text.startsWith('#'));
  if (lines.length === 0) return missing('There are no points in this file: one a line, x,y.');
  if (lines.length > mostRows)
    return missing(
      `This file has ${lines.length} rows; a bolt pattern has a few. Is it a whole scan? Give the hole centres only.`,
    );
  const [head] = lines;
  const cells = cellsOf(head?.text ?? '');
  const names = cells.map((cell) =>
    cell
      .toLowerCase()
      .replace(/["']/g, '')
      .replace(/[([].*$/, '')
      .trim(),
  );
  // A row of numbers with a slip among them names nothing.
  const count = (of: RegExp) => names.filter((name) => of.test(name)).length;
  const isHead = count(/^[a-z_]/) > count(/^[+-]?\.?\d/);
  const [x, y] = isHead ? [names.indexOf('x'), names.indexOf('y')] : [0, 1];
  if (isHead && (x < 0 || y < 0))
    return missing(`The first line names the columns ${quoted(cells.join(', '))}; two of them must be x and y.`);
  const points: Point[] = [];
  for (const line of isHead ? lines.slice(1) : lines) {
    const row = cellsOf(line.text);
    const pair: number[] = [];
    for (const [axis, column] of [
      ['x', x],
      ['y', y],
    ] as const) {
      const cell = row[column];
      if (cell === undefined || cell === '')
        return missing(`Line ${line.number} has no ${axis}: ${quoted(line.text)}. Write one point a line, x,y.`);
      const value = parseQuantity(cell.replace(/["']/g, ''), 'length', units);
      if (!value.ok) return missing(`Line ${line.number}: ${value.why}`);
      pair.push(value.value);
    }
    points.push({ x: pair[0] ?? 0, y: pair[1] ?? 0 });
  }
  return points.length === 0 ? missing('There are names of columns in this file but no points.') : found(points);
}

/** As much of a line as a sentence bears. */
const quoted = (text: string): string => (text.length > 40 ? `"${text.slice(0, 37)}"...` : `"${text}"`);

/** A semicolon or tab parts cells wherever there is one, so that a decimal comma may stand in them; then commas; then spaces. */
function cellsOf(line: string): string[] {
  if (/[;\t]/.test(line)) return line.split(/[;\t]/).map((cell) => cell.trim().replace(/^([+-]?\d+),(\d+)/, '$1.$2'));
  if (line.includes(',')) return line.split(',').map((cell) => cell.trim());
  return line.split(/\s+/);
}
