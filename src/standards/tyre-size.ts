/** Tyre sizes as printed on the wall: the free diameter they stand for, and how far one turn rolls. mm. */
import { mmPerInch } from './inch.ts';
import type { Lookup } from './table.ts';
import { found, missing } from './table.ts';

/** Width/aspect, construction letters, rim in inches: 205/65R16, LT245/75 R16 120S, 100/90-18. Width in mm, aspect in per cent. */
const metric =
  /^(?:P|LT|ST|T)?\s*(\d{2,3})\s*\/\s*(\d{2,3})\s*(?:Z?R|B|D|-|\s)\s*(\d{1,2}(?:\.5)?)(?:\s?C|\s?LT)?(?:\s+\S.*)?$/i;
/** Diameter x width, rim, all in inches: 31x10.50R15. */
const flotation =
  /^(?:LT)?\s*(\d{2}(?:\.\d+)?)\s*[x×]\s*(\d{1,2}(?:\.\d+)?)\s*(?:R|-|\s)\s*(\d{1,2}(?:\.5)?)(?:\s?LT)?(?:\s+\S.*)?$/i;

/**
 * Free diameter of a new tyre off the ground, mm: rim + 2 x width x aspect, or the diameter that is printed.
 * Source: the metric size designation of ISO 4000-1; valid for widths 60 to 500 mm, aspects 20 to 100 %, rims 6 to 30 in.
 * A miss says how to write one, or to measure instead.
 */
export function freeDiameter(size: string): Lookup<number> {
  const text = size.trim();
  const inMetric = text.length > 40 ? null : metric.exec(text);
  if (inMetric) {
    const [width = 0, aspect = 0, rim = 0] = inMetric.slice(1, 4).map(Number);
    const isKnown = width >= 60 && width <= 500 && aspect >= 20 && aspect <= 100 && rim >= 6 && rim <= 30;
    if (!isKnown) return missing(`No tyre is ${width} mm wide with ${aspect} % on a ${rim} in rim; read it again.`);
    return found(mmPerInch * rim + (2 * width * aspect) / 100);
  }
  const inInches = text.length > 40 ? null : flotation.exec(text);
  if (inInches) {
    const [diameter = 0, width = 0, rim = 0] = inInches.slice(1, 4).map(Number);
    if (diameter <= rim || width < 4)
      return missing(`No tyre is ${diameter} in across on a ${rim} in rim; read it again.`);
    return found(mmPerInch * diameter);
  }
  return missing(
    'A tyre size is written 205/65R16 or 31x10.50R15. For one without an aspect (165R13, 6.00-16) push the wheel one turn and write tyre: { rolled: 2050 mm }.',
  );
}

/**
 * Rolled circumference over the free diameter of a radial tyre: 3.05, so 0.97 of the free circumference. Rule of the tyre makers'
 * yearbooks, from memory; a laden or worn tyre rolls up to some per cent less.
 */
export const rolledOverDiameter = 3.05;

/** How far the rolled circumference of a size may be from that rule, as a share. Common practice. */
export const tyreDoubt = 0.02;

/** Rolled circumference of a tyre size, mm. */
export function rolledCircumference(size: string): Lookup<number> {
  const free = freeDiameter(size);
  return free.ok ? found(rolledOverDiameter * free.value) : free;
}
