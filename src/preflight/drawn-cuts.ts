/** What is cut, as corners and bulges, for a picture. mm. */
import type { Stretch } from '../geometry/contour-stretch.ts';
import type { DrawnCuts } from '../model/preflight.ts';
import { cos, sin, tan } from '../units/trig.ts';
import type { Chains } from './chain.ts';
import { mostDrawn } from './limits.ts';

/** Contours and loose lines; null where there are more stretches than a picture shows. */
export function drawnCuts({ loops, loose }: Pick<Chains, 'loops' | 'loose'>, unit: number): DrawnCuts | null {
  const all = [
    ...loops.map(({ stretches }) => ({ stretches, isClosed: true })),
    ...loose.map(({ stretches }) => ({ stretches, isClosed: false })),
  ];
  if (all.reduce((sum, { stretches }) => sum + stretches.length, 0) > mostDrawn) return null;
  return {
    unit,
    runs: all.map(({ stretches, isClosed }) => {
      const corners = stretches.flatMap(cornersOf);
      const last = stretches.at(-1);
      const end = isClosed || last === undefined ? [] : [{ x: last.x2, y: last.y2, bulge: 0 }];
      return { isClosed, corners: [...corners, ...end] };
    }),
  };
}

/** An arc of more than half a turn as two: a bulge is drawn well up to 1. */
function cornersOf(stretch: Stretch): { x: number; y: number; bulge: number }[] {
  const { x1, y1 } = stretch;
  if (stretch.kind === 'line') return [{ x: x1, y: y1, bulge: 0 }];
  if (Math.abs(stretch.sweep) < Math.PI) return [{ x: x1, y: y1, bulge: tan(stretch.sweep / 4) }];
  const [angle, bulge] = [stretch.start + stretch.sweep / 2, tan(stretch.sweep / 8)];
  const middle = { x: stretch.x + stretch.r * cos(angle), y: stretch.y + stretch.r * sin(angle), bulge };
  return [{ x: x1, y: y1, bulge }, middle];
}
