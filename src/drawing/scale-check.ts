/** Two bars to lay a rule against before a true-size print is trusted: 100 mm across, 4 in up. A printer may stretch one way only. */
import type { Point, Shape } from '../model/drawing.ts';

/** Lengths of the two bars, mm. */
export const scaleCheck = { across: 100, up: 4 * 25.4 } as const;

const tick = { end: 5, middle: 2.5, small: 1.5 };
const textSize = 2.4;

function ticks(count: number, pitch: number, at: (along: number, out: number) => Point): Shape[] {
  return Array.from({ length: count + 1 }, (_, i): Shape => {
    const reach = i === 0 || i === count ? tick.end : i * 2 === count ? tick.middle : tick.small;
    return { kind: 'line', pen: 'thin', from: at(i * pitch, 0), to: at(i * pitch, reach), feature: 'scale-check' };
  });
}

/** The 100 mm bar to the right of `start`, a tick each 10 mm, its words beneath. */
export function barAcross(start: Point): Shape[] {
  const at = (along: number, out: number): Point => ({ x: start.x + along, y: start.y + out });
  return [
    { kind: 'line', pen: 'thin', from: at(0, 0), to: at(scaleCheck.across, 0), feature: 'scale-check' },
    ...ticks(10, 10, at),
    {
      kind: 'text',
      at: at(scaleCheck.across / 2, -1.6 * textSize),
      text: '100 mm between the long ticks',
      size: textSize,
      align: 'middle',
      angle: 0,
    },
  ];
}

/** The 4 in bar upwards from `start`, a tick each inch, its words on the left, turned. */
export function barUp(start: Point): Shape[] {
  const at = (along: number, out: number): Point => ({ x: start.x + out, y: start.y + along });
  return [
    { kind: 'line', pen: 'thin', from: at(0, 0), to: at(scaleCheck.up, 0), feature: 'scale-check' },
    ...ticks(4, 25.4, at),
    {
      kind: 'text',
      at: at(scaleCheck.up / 2, -0.9 * textSize),
      text: '4 in (101.6 mm) between the long ticks',
      size: textSize,
      align: 'middle',
      angle: 90,
    },
  ];
}
