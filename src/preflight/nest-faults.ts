/** What is odd about how contours lie in one another: islands, holes beside their part, several parts. mm. */
import type { Place } from '../model/preflight.ts';
import type { FaultLog } from './fault-log.ts';
import { short } from './fault-log.ts';
import type { Nested } from './nest.ts';

/** A contour beside the part that is smaller than this share of it is no part of its own. */
const crumb = 0.05;

/** `crossed`: contours that cross others; about their place nothing can be said. */
export function noteNesting(
  contours: readonly Nested[],
  crossed: ReadonlySet<number>,
  unit: number,
  log: FaultLog,
): void {
  const outsides = contours.flatMap((nested, i) => (nested.depth === 0 && !crossed.has(i) ? [{ nested, i }] : []));
  const largest = outsides.reduce((most, { nested }) => Math.max(most, nested.area), 0);
  const placeOf = ({ loop }: Nested): Place | null => {
    const [place] = loop.places;
    const [first] = loop.stretches;
    return place && first ? { ...place, x: first.x1 / unit, y: first.y1 / unit } : null;
  };
  const withHoles = new Set(contours.filter(({ depth }) => depth > 0).map(({ part }) => part));
  let parts = 0;
  for (const { nested, i } of outsides) {
    const { contour } = nested.loop;
    if (contour.kind === 'circle' && nested.area < crumb * largest && !withHoles.has(i)) {
      log.add('dxf-hole-outside', placeOf(nested), `diameter ${short(2 * contour.r)} mm`);
      continue;
    }
    parts += 1;
    if (parts > 1) log.add('dxf-several-parts', placeOf(nested), `part ${parts}`);
  }
  for (const [i, nested] of contours.entries()) {
    if (nested.depth > 1 && !crossed.has(i))
      log.add('dxf-island', placeOf(nested), `${nested.depth} contours around it`);
  }
}
