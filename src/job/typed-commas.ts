/**
 * Commas as people type them: between readings, or as the decimal sign. What can mean one thing only is read so; everything else is
 * left as it was typed, for its reader to refuse with a sentence. Nothing is ever cut short.
 */

import { instrumentDoubt } from './measured.ts';

const number = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)`;
const plainNumber = new RegExp(`^${number}$`);
/** A number, and a unit of letters behind it. */
const numberWithUnit = new RegExp(`^${number}(?: ?[a-zA-Zµ°][a-zA-Zµ°./]*)?$`);

/** Readings with the instrument they were read with are a measured value, not a plain list. */
const namesInstrument = new RegExp(`\\s(?:${Object.keys(instrumentDoubt).join('|')})$`, 'i');

/**
 * The items of a plain list of numbers, as typed: "84.02, 83.98", "84.02; 83.98", "84.02 83.98" and "84.02,83.98". Behind a comma with a
 * space, or a semicolon, each may carry its unit.
 * @returns two items or more; null when the text is no such list, or when a comma in it may be a decimal sign ("62,05", "10,20,30")
 */
export function listedNumbers(typed: string): string[] | null {
  const text = typed.trim();
  if (/[[\]{}"'#]/.test(text) || namesInstrument.test(text)) return null;
  const parted = text.split(/\s*;\s*|\s*,\s+/);
  if (parted.length > 1) return parted.every((item) => numberWithUnit.test(item)) ? parted : null;
  const spaced = text.split(/\s+/);
  if (spaced.length > 1) return spaced.every((item) => plainNumber.test(item)) ? spaced : null;
  const tight = text.split(',');
  // With a point in every number, a comma can only stand between two.
  return tight.length > 1 && tight.every((item) => plainNumber.test(item) && item.includes('.')) ? tight : null;
}

/**
 * A sentence where a comma may be a decimal sign or part two readings; null where it can only be one. For readings that stand in a text
 * of their own, where a list by comma is read too.
 */
export function commaInDoubt(typed: string): string | null {
  for (const item of typed.trim().split(/\s*;\s*|\s*,\s+|\s+/)) {
    if (!/\d,\d/.test(item) || listedNumbers(item) !== null) continue;
    const shown = item.slice(0, 30);
    const [whole = '', ...rest] = item.split(',');
    const point = rest.length === 1 && !item.includes('.') ? `${whole}.${rest[0]}` : null;
    const readings = item.split(',').join(', ');
    return point === null
      ? `"${shown}": a decimal takes a point, and readings are parted by a comma and a space. Write ${readings.slice(0, 40)} if these are readings.`
      : `"${shown}": write ${point.slice(0, 40)} if the comma is the decimal sign, or ${readings.slice(0, 40)} if these are two readings.`;
  }
  return null;
}
