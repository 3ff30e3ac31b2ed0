/** Hatching as lines, so that paper and screen show the same. mm of paper. */
import type { Point, Shape } from '../../model/drawing.ts';
import { line } from './shapes.ts';

/** Lines at 45 degrees inside closed loops (even-odd), `spacing` mm apart. */
export function hatching(loops: readonly (readonly Point[])[], spacing = 2.4): Shape[] {
  // Along the hatch u = x + y stays put across it as v = y - x grows; each line is one v.
  const edges = loops.flatMap((loop) => loop.map((a, i) => [a, loop[(i + 1) % loop.length] ?? a] as const));
  const vs = edges.flatMap(([a]) => [a.y - a.x]);
  if (vs.length === 0) return [];
  const step = spacing * Math.SQRT2;
  const out: Shape[] = [];
  for (let k = Math.ceil(Math.min(...vs) / step); k * step < Math.max(...vs); k++) {
    // A hair off the round figure, so that no line runs through a corner.
    const v = k * step + 1.234e-4;
    const us = edges
      .flatMap(([a, b]) => {
        const [va, vb] = [a.y - a.x - v, b.y - b.x - v];
        if (va < 0 === vb < 0) return [];
        const t = va / (va - vb);
        return [a.x + a.y + t * (b.x + b.y - a.x - a.y)];
      })
      .sort((p, q) => p - q);
    for (let i = 0; i + 1 < us.length; i += 2) {
      const [from, to] = [us[i] as number, us[i + 1] as number];
      if (to - from < 0.3) continue;
      out.push(line({ x: (from - v) / 2, y: (from + v) / 2 }, { x: (to - v) / 2, y: (to + v) / 2 }, 'hatch'));
    }
  }
  return out;
}
