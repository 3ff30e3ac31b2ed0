/** Blocks that read quantities: numbers with units and ranges. */
import type { Dimension } from '../units/dimensions.ts';
import { dimensions } from '../units/dimensions.ts';
import { parseQuantity } from '../units/quantity.ts';
import { shownValue } from './errors.ts';
import type { Answer } from './field.ts';
import { accept, field, refuse } from './field.ts';
import { didYouMean, orList, wordAmong } from './word-fields.ts';

/** Length unit of a bare number. */
export type JobUnits = 'mm' | 'in';

/** Range in internal units. `above` excludes its end, `least` and `most` include theirs. */
export interface Range {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
}

/** The unit ranges are told in, and how many internal units it is worth. */
function tellingUnit(dimension: Dimension): { readonly name: string; readonly worth: number } {
  if (dimension === 'mass') return { name: ' kg', worth: 1000 };
  if (dimension === 'ratio') return { name: '', worth: 1 };
  return { name: ` ${dimensions[dimension].bareUnit}`, worth: 1 };
}

/** A range as words: "2 to 600 mm", "more than 0 mm". */
export function rangeInWords(range: Range, dimension: Dimension): string {
  const { name, worth } = tellingUnit(dimension);
  const { above, least, most } = range;
  if (above !== undefined && most !== undefined) return `more than ${above / worth} and at most ${most / worth}${name}`;
  if (above !== undefined) return `more than ${above / worth}${name}`;
  if (least !== undefined && most !== undefined) return `${least / worth} to ${most / worth}${name}`;
  if (least !== undefined) return `at least ${least / worth}${name}`;
  return most === undefined ? 'any' : `at most ${most / worth}${name}`;
}

function isInside(value: number, { above = -Infinity, least = -Infinity, most = Infinity }: Range): boolean {
  return value > above && value >= least && value <= most;
}

/** Read one quantity and hold it to its range, in internal units. */
export function readQuantity(typed: unknown, dimension: Dimension, range: Range, units: JobUnits): Answer<number> {
  const bareUnit = dimension === 'length' ? units : dimensions[dimension].bareUnit;
  const quantity = parseQuantity(typed, dimension, bareUnit);
  const words = rangeInWords(range, dimension);
  if (!quantity.ok) return refuse(quantity.why, { allowed: words });
  if (isInside(quantity.value, range)) return accept(quantity.value);
  const { name, worth } = tellingUnit(dimension);
  const converted =
    quantity.unit === dimensions[dimension].bareUnit
      ? ''
      : `, which is ${Number((quantity.value / worth).toPrecision(5))}${name}`;
  const got = `${typeof typed === 'number' ? typed : shownValue(typed)}${quantity.bare && typeof typed === 'number' ? ` ${quantity.unit}` : ''}`;
  const hint = unitSlip(quantity.typed, quantity.bare, dimension, range, units);
  return refuse(
    `Must be ${words}; got ${got.trim()}${converted}.${hint === '' ? '' : ` ${hint}`}`,
    hint === '' ? { allowed: words } : { allowed: words, hint },
  );
}

/** A bare length that would be in range in the other unit was probably meant so. */
function unitSlip(typed: number, bare: boolean, dimension: Dimension, range: Range, units: JobUnits): string {
  if (!bare) return '';
  if (dimension === 'mass' && isInside(typed, range)) return `If that is grams, write ${typed} g.`;
  if (dimension !== 'length') return '';
  const other = units === 'mm' ? 'in' : 'mm';
  const value = units === 'mm' ? typed * 25.4 : typed;
  if (!isInside(value, range)) return '';
  return `If that is ${units === 'mm' ? 'inches' : 'millimetres'}, write ${typed} ${other} (a bare length in this job is in ${units === 'mm' ? 'millimetres' : 'inches'}; see units).`;
}

/** JSON Schema of a quantity: a number, or text that starts like one. Ranges stay in words, for units may be typed. */
function quantityMeta(
  dimension: Dimension,
  range: Range,
  about: string,
  words: readonly string[] = [],
): Record<string, unknown> {
  const row = dimensions[dimension];
  const unitNames = row.units.map((unit) => unit.name).filter((name) => name !== '1');
  const bare =
    dimension === 'length' ? "the job's units (mm or in)" : row.bareUnit === '1' ? 'a plain number' : row.bareUnit;
  const description = `${about} A bare number is in ${bare}; units that may be written: ${unitNames.join(', ')}. Range: ${rangeInWords(range, dimension)}.`;
  const positive = (range.above ?? -1) >= 0 ? { exclusiveMinimum: 0 } : (range.least ?? -1) >= 0 ? { minimum: 0 } : {};
  const text = { type: 'string', pattern: quantityPattern };
  const shapes = [...(words.length > 0 ? [{ enum: [...words] }] : []), { type: 'number', ...positive }, text];
  return { description, anyOf: shapes };
}

/** Starts like a number or a fraction, diameter sign allowed; the reader is stricter. */
export const quantityPattern = '^\\s*[ØøΦ⌀]?\\s*[+\\-−]?\\s*(\\d|\\.\\d|[½¼¾⅛⅜⅝⅞]).*$';

/** Blocks bound to what a bare length means. */
export function fieldsIn(units: JobUnits) {
  const quantity = (dimension: Dimension, range: Range, about: string) =>
    field((typed) => readQuantity(typed, dimension, range, units), quantityMeta(dimension, range, about));

  /** A word out of `words`, or a quantity. */
  const quantityOr = <W extends string>(words: readonly W[], dimension: Dimension, range: Range, about: string) =>
    field(
      (typed): Answer<number | W> => {
        const word = wordAmong(typed, words);
        if (word !== null) return accept(word);
        if (typeof typed === 'string' && /^\s*[a-z][a-z _]*$/i.test(typed)) {
          return refuse(
            `"${shownValue(typed)}" is not known here; write ${orList(words)}, or ${dimensions[dimension].noun}.${didYouMean(typed, words)}`,
            {
              allowed: `${words.join(', ')}, or ${rangeInWords(range, dimension)}`,
            },
          );
        }
        return readQuantity(typed, dimension, range, units);
      },
      quantityMeta(dimension, range, about, words),
    );

  return {
    units,
    quantity,
    quantityOr,
    length: (range: Range, about: string) => quantity('length', range, about),
    lengthOr: <W extends string>(words: readonly W[], range: Range, about: string) =>
      quantityOr(words, 'length', range, about),
    angle: (about: string) => quantity('angle', fullTurn, about),
    angleOr: <W extends string>(words: readonly W[], about: string) => quantityOr(words, 'angle', fullTurn, about),
  };
}

export type Fields = ReturnType<typeof fieldsIn>;

const fullTurn: Range = { least: -360, most: 360 };
