/** Drawing symbols, made of lines so that no font can lose them: balloons, tolerance frames, datums, roughness, projection. mm of paper. */
import type { Point, Shape } from '../../model/drawing.ts';
import { atan2, tan } from '../../units/trig.ts';
import { arrowHead } from '../dimension.ts';
import { textWidth } from '../text-size.ts';
import { cap, line, polyline, rectangle, text } from './shapes.ts';

export const balloonRadius = 2.7;

const ring = (centre: Point, r: number, pen: 'thin' | 'dimension' | 'outline' = 'thin'): Shape => ({
  kind: 'circle',
  pen,
  fill: 'none',
  centre,
  r,
});

/** The number of a size in the inspection record, in a circle. */
export const balloon = (number: number, centre: Point): Shape[] => [
  ring(centre, balloonRadius),
  text(String(number), { x: centre.x, y: centre.y - 0.95 }, 1.9, { align: 'middle' }),
];

export const frameHeight = 5.6;

/** Symbols of ISO 1101. */
export type ToleranceKind = 'run-out' | 'position';

function toleranceSign(kind: ToleranceKind, { x, y }: Point): Shape[] {
  if (kind === 'position') {
    return [
      ring({ x, y }, 1.3, 'dimension'),
      line({ x: x - 2.1, y }, { x: x + 2.1, y }),
      line({ x, y: y - 2.1 }, { x, y: y + 2.1 }),
    ];
  }
  const tip = { x: x + 1.3, y: y + 1.7 };
  return [line({ x: x - 1.3, y: y - 1.7 }, tip), arrowHead(tip, (atan2(3.4, 2.6) * 180) / Math.PI, 1.6)];
}

/** Width of a tolerance frame. */
export const toleranceWidth = (value: string): number => 6.4 + textWidth(value, cap.size) + 2 + 5;

/** A tolerance frame, its lower left corner at `at`: symbol, value, datum. */
export function toleranceFrame(kind: ToleranceKind, value: string, datum: string, at: Point): Shape[] {
  const ends = [6.4, 6.4 + textWidth(value, cap.size) + 2];
  const width = toleranceWidth(value);
  const base = at.y + (frameHeight - cap.size) / 2;
  return [
    rectangle({ xMin: at.x, yMin: at.y, xMax: at.x + width, yMax: at.y + frameHeight }, 'dimension'),
    ...ends.map((x) => line({ x: at.x + x, y: at.y }, { x: at.x + x, y: at.y + frameHeight })),
    ...toleranceSign(kind, { x: at.x + 3.2, y: at.y + frameHeight / 2 }),
    text(value, { x: at.x + 7.4, y: base }, cap.size),
    text(datum, { x: at.x + width - 2.5, y: base }, cap.size, { align: 'middle' }),
  ];
}

/** A datum letter hanging from `tip`: filled triangle, a line down to `to`, the letter in its box (ISO 5459). */
export function datum(letter: string, tip: Point, to: number): Shape[] {
  const half = 2.6;
  return [
    polyline([tip, { x: tip.x - 1.5, y: tip.y - 2.4 }, { x: tip.x + 1.5, y: tip.y - 2.4 }], 'dimension', true, 'screw'),
    line({ x: tip.x, y: tip.y - 2.4 }, { x: tip.x, y: to }),
    rectangle({ xMin: tip.x - half, xMax: tip.x + half, yMin: to - 2 * half, yMax: to }, 'dimension'),
    text(letter, { x: tip.x, y: to - half - cap.size / 2 }, cap.size, { align: 'middle' }),
  ];
}

/** A surface from which metal must be taken, its foot at `at`, with what it is to reach (ISO 1302). */
export function roughness(words: string, at: Point): Shape[] {
  const { x, y } = at;
  const [low, high] = [2.6, 5.4];
  const lean = tan(Math.PI / 6);
  return [
    polyline(
      [
        { x: x - low * lean, y: y + low },
        { x, y },
        { x: x + high * lean, y: y + high },
        { x: x + high * lean + textWidth(words, cap.table) + 1.2, y: y + high },
      ],
      'dimension',
    ),
    line({ x: x - low * lean, y: y + low }, { x: x + low * lean, y: y + low }),
    text(words, { x: x + high * lean + 0.6, y: y + high - 0.7 - cap.table * 1.05 }, cap.table),
  ];
}

/** First or third angle: a cone cut off, from the side and from its small end (ISO 5456-2). About 21 mm wide, `at` its middle. */
export function projectionSymbol(angle: 'first' | 'third', { x, y }: Point): Shape[] {
  const [small, large, half] = [1.6, 3.2, 3.2];
  const side = angle === 'first' ? x - 5 : x + 5;
  const end = angle === 'first' ? x + 5 : x - 5;
  // The small end looks left in both: the round view is what an eye on the left sees.
  return [
    polyline(
      [
        { x: side - half, y: y - small },
        { x: side + half, y: y - large },
        { x: side + half, y: y + large },
        { x: side - half, y: y + small },
      ],
      'outline',
      true,
    ),
    ring({ x: end, y }, small, 'outline'),
    ring({ x: end, y }, large, 'outline'),
    line({ x: side - half - 1.4, y }, { x: side + half + 1.4, y }, 'centre'),
    line({ x: end - large - 1.4, y }, { x: end + large + 1.4, y }, 'centre'),
    line({ x: end, y: y - large - 1.2 }, { x: end, y: y + large + 1.2 }, 'centre'),
  ];
}
