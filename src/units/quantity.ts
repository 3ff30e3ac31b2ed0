/** From what somebody typed to a number in the project's own units. With `dimensions.ts`, the only place where inches exist. */
import type { Dimension } from './dimensions.ts';
import { dimensions, foldUnit } from './dimensions.ts';
import { nearestWord } from './near.ts';

export type { Dimension } from './dimensions.ts';

/** A quantity read, in the internal unit (mm, N.m, rpm, degrees, grams, degC, 1, MPa), or a whole sentence saying why not. */
export type Quantity =
  | {
      readonly ok: true;
      readonly value: number;
      /** Canonical name of the unit it was typed in: "in". */
      readonly unit: string;
      /** The number as typed, before conversion. */
      readonly typed: number;
      /** True when the unit was left to the default. */
      readonly bare: boolean;
    }
  | { readonly ok: false; readonly why: string };

const longestText = 60;

/**
 * Read a quantity. Text is a decimal number (or a fraction, for lengths) and an optional unit; a bare number is in
 * `bareUnit`, else in the dimension's usual unit. Angles also take degrees, minutes and seconds, ratios also a:b.
 * Any finite size is read: ranges are the caller's business. Errors: a sentence, never a throw.
 */
export function parseQuantity(typed: unknown, dimension: Dimension, bareUnit?: string): Quantity {
  const row = dimensions[dimension];
  if (typeof typed === 'number') return inUnit(typed, bareUnit ?? row.bareUnit, dimension, true);
  if (typeof typed !== 'string') return no(`Expected ${row.noun}, such as ${row.example}.`);
  const text = tidy(typed);
  if (text === '') return no(`There is no value here; expected ${row.noun}, such as ${row.example}.`);
  if (text.length > longestText)
    return no(
      `This text is too long for ${row.noun} (over ${longestText} characters); write for example ${row.example}.`,
    );
  const angle = dimension === 'angle' ? degreesMinutes(text) : null;
  if (angle !== null) return angle;
  const proportion = dimension === 'ratio' ? proportionOf(text) : null;
  if (proportion !== null) return proportion;
  return numberAndUnit(text, dimension, bareUnit);
}

function numberAndUnit(text: string, dimension: Dimension, bareUnit: string | undefined): Quantity {
  const row = dimensions[dimension];
  const match = /^([+-]?)(?:(\d+)[ -]+(\d+)\/(\d+)|(\d+)\/(\d+)|((?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?))(.*)$/i.exec(text);
  if (match === null) return no(noNumber(text, dimension));
  const [, sign, whole, over, under, plainOver, plainUnder, decimal, rest = ''] = match;
  const slip = slipAfterNumber(text, rest);
  if (slip !== null) return no(slip);
  let size: number;
  if (decimal !== undefined) {
    size = Number(decimal);
  } else {
    if (!row.fractions)
      return no(`Fractions are read for lengths only; write ${row.noun} as a decimal number, such as ${row.example}.`);
    if (Number(under ?? plainUnder) === 0) return no(`The fraction in "${shown(text)}" divides by zero.`);
    size = whole === undefined ? Number(plainOver) / Number(plainUnder) : Number(whole) + Number(over) / Number(under);
  }
  const signed = sign === '-' ? -size : size;
  const unitText = rest.trim();
  if (unitText === '') return inUnit(signed, bareUnit ?? row.bareUnit, dimension, true);
  return inUnit(signed, unitText, dimension, false);
}

function inUnit(typed: number, unitText: string, dimension: Dimension, bare: boolean): Quantity {
  const row = dimensions[dimension];
  if (Number.isNaN(typed)) return no(`This is not a number; write ${row.noun}, such as ${row.example}.`);
  if (!Number.isFinite(typed)) return no(`This number is infinite; write ${row.noun}, such as ${row.example}.`);
  const folded = foldUnit(unitText);
  const unit = row.units.find((candidate) => candidate.spellings.includes(folded));
  if (unit === undefined) return no(unknownUnit(unitText, dimension));
  const value = withoutNoise(typed, unit.times, unit.plus);
  if (!Number.isFinite(value)) return no('This number is too large to be real.');
  return { ok: true, value: value + 0, unit: unit.name, typed, bare };
}

/** Converted, and rounded to 15 figures: 7/16 in is 11.1125 mm, not 11.112499999999999. */
function withoutNoise(typed: number, times: number, plus: number): number {
  return times === 1 && plus === 0 ? typed : Number((typed * times + plus).toPrecision(15));
}

/** 12°30', 12° 30' 15", 12d30m, 12d30m15s: null when the text is not of that kind. */
function degreesMinutes(text: string): Quantity | null {
  const match =
    /^([+-]?)(\d+) ?(?:°|º|˚|d|deg) ?(\d+(?:\.\d+)?) ?(?:'|′|’|m|min)(?: ?(\d+(?:\.\d+)?) ?(?:"|″|”|''|s|sec))?$/i.exec(
      text,
    );
  if (match === null) return null;
  const [, sign, degrees, minutes, seconds = '0'] = match;
  if (Number(minutes) >= 60 || Number(seconds) >= 60)
    return no(`Minutes and seconds of "${shown(text)}" must be below 60.`);
  const size = Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
  const value = sign === '-' ? -size : size;
  if (!Number.isFinite(value)) return no('This number is too large to be real.');
  return { ok: true, value, unit: 'deg', typed: value, bare: false };
}

/** 2:1 or 41:11; null when the text is not of that kind. */
function proportionOf(text: string): Quantity | null {
  const match = /^(\d+\.?\d*|\.\d+) ?: ?(\d+\.?\d*|\.\d+)$/.exec(text);
  if (match === null) return null;
  const value = Number(match[1]) / Number(match[2]);
  if (!Number.isFinite(value)) return no(`The ratio "${shown(text)}" divides by zero.`);
  return { ok: true, value, unit: '1', typed: value, bare: false };
}

/** What people type between a number and its unit that needs a better answer than "unknown unit". */
function slipAfterNumber(text: string, rest: string): string | null {
  if (/^,\d/.test(rest)) {
    return /^[+-]?\d{1,3}(,\d{3})+(\.|$| )/.test(text) && !/^[+-]?0/.test(text)
      ? `Use a point for decimals and nothing between thousands: ${text.replaceAll(',', '')}, or ${text.replace(',', '.')} if the comma was meant as the decimal sign.`
      : `Use a point for decimals, not a comma: ${text.replace(/(\d),(?=\d)/g, '$1.')}.`;
  }
  if (/^ ?[,;]$/.test(rest)) return 'Something is missing behind the comma; decimals take a point.';
  if (/^ ?[,;] ?[+-]?[.\d]/.test(rest))
    return `"${shown(text)}" is more than one number; one is wanted here, or, where readings may be repeated, a list such as [57.02, 57.04].`;
  if (/^x[0-9a-f]/i.test(rest)) return `Hexadecimal numbers are not read; write "${shown(text)}" as a decimal number.`;
  if (/^[\d.]*\.\d/.test(rest))
    return `"${shown(text)}" has two points; a number has one, and nothing between thousands.`;
  if (/^_\d/.test(rest)) return 'Write numbers without anything between thousands.';
  if (/^ ?(±|\+\/-|\+-)/.test(rest))
    return `Write the doubt as a key of its own: { value: ${text.split(/±|\+/)[0]?.trim()}, doubt: ... }.`;
  if (/^ ?(-|\.\.|–|to\b) ?\d/.test(rest))
    return `"${shown(text)}" looks like a range; write one number, or a list of repeated readings such as [57.02, 57.04].`;
  return null;
}

function noNumber(text: string, dimension: Dimension): string {
  const row = dimensions[dimension];
  if (/^[+-]?\.?nan$/i.test(text)) return `This is not a number; write ${row.noun}, such as ${row.example}.`;
  if (/^[+-]?\.?inf(inity)?$/i.test(text)) return `This number is infinite; write ${row.noun}, such as ${row.example}.`;
  return `"${shown(text)}" does not start with a number; expected ${row.noun}, such as ${row.example}.`;
}

function unknownUnit(unitText: string, dimension: Dimension): string {
  const row = dimensions[dimension];
  const names = row.units.map((unit) => unit.name).filter((name) => name !== '1');
  // A thousandth of a millimetre in one country's spelling, and what the size was read with at every bench: a thousand times apart.
  if (dimension === 'length' && /^micrometers?$/.test(foldUnit(unitText)))
    return 'A micrometer is what it was measured with, not a unit: write the size in mm. Thousandths of a millimetre are um.';
  const owner = (Object.keys(dimensions) as Dimension[]).find((other) =>
    dimensions[other].units.some((unit) => unit.spellings.includes(foldUnit(unitText))),
  );
  if (owner !== undefined) {
    return `"${shown(unitText)}" is the unit of ${dimensions[owner].noun}, but ${row.noun} belongs here; allowed units: ${names.join(', ')}.`;
  }
  const spellings = row.units.flatMap((unit) => unit.spellings).filter((spelling) => spelling.length > 1);
  const near = nearestWord(foldUnit(unitText), spellings);
  const nearUnit = row.units.find((unit) => near !== null && unit.spellings.includes(near));
  const hint = nearUnit === undefined ? '' : ` Did you mean ${nearUnit.name}?`;
  return `"${shown(unitText)}" is not a unit of ${row.noun.replace(/^an? /, '')} known here; allowed: ${names.join(', ')}.${hint}`;
}

/** One kind of space, minus and fraction; a leading diameter sign dropped. */
function tidy(text: string): string {
  if (text.length > 4 * longestText) return text.trim().slice(0, 4 * longestText);
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${sign.normalize('NFKC')}`)
    .replace(/⁄/g, '/')
    .replace(/[−‒]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^[ØøΦ⌀] ?(?=\d|\.)/, '');
}

/** Typed text fit for a sentence: printable and short. */
function shown(text: string): string {
  const printable = text.replace(/[^\P{C}]/gu, '?');
  return printable.length > 40 ? `${printable.slice(0, 37)}...` : printable;
}

function no(why: string): Quantity {
  return { ok: false, why };
}
