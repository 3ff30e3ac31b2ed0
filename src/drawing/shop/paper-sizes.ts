/** Sheets of drawing paper, lying, and the scales that drawings are made to. mm. */
import type { Box } from '../text-size.ts';
import type { ShopPaperName } from './to-draw.ts';

/**
 * Sizes: ISO 216 for A4 and A3, ASME Y14.1 A and B for Letter and Tabloid. Room to the frame: ISO 5457 (20 mm at the filing edge, 10 mm
 * elsewhere); half an inch on the inch sizes, common practice.
 */
export const shopPapers: Readonly<
  Record<ShopPaperName, { name: string; width: number; height: number; left: number; edge: number }>
> = {
  a4: { name: 'A4', width: 297, height: 210, left: 20, edge: 10 },
  a3: { name: 'A3', width: 420, height: 297, left: 20, edge: 10 },
  letter: { name: 'Letter', width: 279.4, height: 215.9, left: 12.7, edge: 12.7 },
  tabloid: { name: 'Tabloid', width: 431.8, height: 279.4, left: 12.7, edge: 12.7 },
};

export const shopPaperNames = ['a4', 'a3', 'letter', 'tabloid'] as const;

/** The drawing's frame on a paper. */
export function frameOf(paper: ShopPaperName): Box {
  const { width, height, left, edge } = shopPapers[paper];
  return { xMin: left, yMin: edge, xMax: width - edge, yMax: height - edge };
}

/** Scales of ISO 5455, largest first: paper mm for one mm of the part. */
export const standardScales: readonly number[] = [10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20];

/** "2:1", "1:5". */
export const scaleText = (scale: number): string => (scale >= 1 ? `${scale}:1` : `1:${Math.round(1 / scale)}`);
