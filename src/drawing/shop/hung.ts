/** What hangs from the diameters of the section: the datum, and frames that say how true other diameters run to it. mm of paper. */
import type { Point, Shape } from '../../model/drawing.ts';
import { arrowHead } from '../dimension.ts';
import { line } from './shapes.ts';
import { toleranceText } from './size-text.ts';
import { balloon, balloonRadius, datum, frameHeight, toleranceFrame, toleranceWidth } from './symbols.ts';
import type { AdapterToDraw, SizeToDraw } from './to-draw.ts';

/** A tolerance frame with its balloon. The corner at `at` is the lower left one; with `end`, the lower right one, the balloon then on the left. */
export function framed(
  kind: 'run-out' | 'position',
  size: Pick<SizeToDraw, 'upper'> & { readonly number: number | null },
  letter: string,
  at: Point,
  { title }: Pick<AdapterToDraw, 'title'>,
  align: 'start' | 'end' = 'start',
): Shape[] {
  // A zone round a place is as wide as twice the way that a hole may stray.
  const value =
    kind === 'position'
      ? `\u00d8${toleranceText(2 * size.upper, title.units)}`
      : toleranceText(size.upper, title.units);
  const width = toleranceWidth(value);
  const left = align === 'start' ? at.x : at.x - width;
  const beside = 0.8 + balloonRadius;
  return [
    ...toleranceFrame(kind, value, letter, { x: left, y: at.y }),
    ...(size.number === null
      ? []
      : balloon(size.number, {
          x: align === 'start' ? left + width + beside : left - beside,
          y: at.y + frameHeight / 2,
        })),
  ];
}

/** An upright dimension of a diameter: where it stands, how long it is, and on which side of the part (-1: left). */
export interface ColumnPlace {
  readonly x: number;
  readonly across: number;
  readonly way: -1 | 1;
}

/** Run-outs, by the diameter that each of them is of. */
const runouts = [
  ['driven-register', 'register-runout'],
  ['wheel-seat', 'wheel-seat-runout'],
] as const;

const pitch = frameHeight + 2.4;

/**
 * Datum A and the run-outs to it, each under its own diameter.
 * @param datumId the diameter that is the datum
 * @param low height at which the first of them hangs, under the part
 * @returns what is drawn, and the height under which nothing hangs
 */
export function hungUnder(
  drawn: AdapterToDraw,
  columns: ReadonlyMap<string, ColumnPlace>,
  datumId: string,
  low: number,
): { readonly shapes: readonly Shape[]; readonly end: number } {
  const base = columns.get(datumId);
  const shapes: Shape[] = base ? datum('A', { x: base.x, y: -base.across / 2 }, low) : [];
  const hung = runouts.flatMap(([id, sizeId]) => {
    const column = columns.get(id);
    const size = drawn.sizes.find((one) => one.id === sizeId);
    return column && size && id !== datumId ? [{ ...column, size }] : [];
  });
  let end = low - frameHeight;
  for (const { x, across, way, size } of hung) {
    // A frame reaches outwards: it hangs lower than whatever hangs further out.
    const further = [...hung, ...(base ? [base] : [])].filter((one) => one.way === way && way * (one.x - x) > 1e-6);
    const top = low - pitch * further.length;
    shapes.push(
      line({ x, y: -across / 2 }, { x, y: top }),
      arrowHead({ x, y: -across / 2 }, 90, 2.2),
      ...framed('run-out', size, 'A', { x: x - way * 3, y: top - frameHeight }, drawn, way === 1 ? 'start' : 'end'),
    );
    end = Math.min(end, top - frameHeight);
  }
  return { shapes, end };
}
