/** Cuts the marks of a part into its mesh: text on the rim or on a face, and the index groove. */
import type { EngravedText, Engraving, IndexMark } from '../model/engraving.ts';
import type { Mesh } from '../model/mesh.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import type { Prism } from './manifold.ts';
import { type StrokePoint, strokeText } from './stroke-text.ts';

export { textWidth } from './stroke-text.ts';

/**
 * How far a cutting tool starts outside the surface, mm: more than facets stand off, less than neighbouring
 * steps.
 */
const CLEAR = 0.2;

/** A groove runs this far past its ends, mm, so that it opens cleanly where it ends at a face. */
const RUN_OUT = 0.01;

/** How far the floor of letters wrapped round a rim may be off its depth, mm. */
const FLOOR_ERROR = 0.02;

/** Sides of the round end of a pen stroke, and of a groove. */
const ROUND = 16;

/**
 * The mesh with its marks cut in; the same mesh when there is nothing to cut. Closed meshes stay closed. The
 * marks are placed as `Engraving` says; whether they fit there is for the part's maker to see to
 * (`textWidth`). Coordinates come back in single precision. Throws a RangeError on sizes that are not
 * positive, an Error when the mesh is not closed.
 */
export async function engrave(mesh: Mesh, engravings: readonly Engraving[]): Promise<Mesh> {
  const tools = engravings.flatMap((e) => (e.kind === 'text' ? textTool(e) : groove(e)));
  if (tools.length === 0) return mesh;
  const { cutPrisms } = await import('./manifold.ts');
  return cutPrisms(mesh, tools);
}

/**
 * Text runs along u and stands up along v; w points out of the surface. (u, v, w) is right-handed on each
 * surface.
 */
function textTool(e: EngravedText): Prism[] {
  needPositive(e.radius, 'radius');
  needPositive(e.depth, 'depth');
  const { strokes, pen } = strokeText(e.text, e.height);
  if (strokes.length === 0) return [];
  const start = (e.angle * Math.PI) / 180;
  const place = (u: number, v: number, w: number): [number, number, number] => {
    if (e.surface === 'rim') {
      const a = start + u / e.radius;
      return [(e.radius + w) * cos(a), (e.radius + w) * sin(a), e.z + v];
    }
    const top = e.surface === 'top';
    const a = start + (top ? -u : u) / e.radius;
    return [(e.radius + v) * cos(a), (e.radius + v) * sin(a), e.z + (top ? w : -w)];
  };
  const longestEdge = e.surface === 'rim' ? Math.sqrt(8 * e.radius * FLOOR_ERROR) : Infinity;
  return [{ outlines: strokes.flatMap((s) => widened(s, pen / 2)), from: -e.depth, to: CLEAR, longestEdge, place }];
}

function groove(e: IndexMark): Prism[] {
  needPositive(e.radius, 'radius');
  needPositive(e.grooveRadius, 'groove radius');
  if (!(e.zTo > e.zFrom)) throw new RangeError(`an index groove must run upwards, not from ${e.zFrom} to ${e.zTo}`);
  const a = (e.angle * Math.PI) / 180;
  const [c, s] = [cos(a), sin(a)];
  const outline: StrokePoint[] = Array.from({ length: 2 * ROUND }, (_, k) => {
    const t = (Math.PI * (k + 0.5)) / ROUND;
    return [e.grooveRadius * cos(t), e.grooveRadius * sin(t)];
  });
  return [
    {
      outlines: [outline],
      from: e.zFrom - RUN_OUT,
      to: e.zTo + RUN_OUT,
      longestEdge: Infinity,
      place: (u, v, z) => [(e.radius + u) * c - v * s, (e.radius + u) * s + v * c, z],
    },
  ];
}

/**
 * Round-ended outlines of each piece of a stroke, counter-clockwise; together they are the widened stroke.
 */
export function widened(stroke: readonly StrokePoint[], half: number): StrokePoint[][] {
  const outlines: StrokePoint[][] = [];
  for (const [i, [x0, y0]] of stroke.entries()) {
    const next = stroke[i + 1];
    if (!next && stroke.length > 1) break;
    const [x1, y1] = next ?? [x0, y0];
    const along = atan2(y1 - y0, x1 - x0);
    const end = (x: number, y: number, from: number): StrokePoint[] =>
      Array.from({ length: ROUND / 2 + 1 }, (_, k) => {
        const t = from + (2 * Math.PI * k) / ROUND;
        return [x + half * cos(t), y + half * sin(t)];
      });
    outlines.push([...end(x1, y1, along - Math.PI / 2), ...end(x0, y0, along + Math.PI / 2)]);
  }
  return outlines;
}

function needPositive(value: number, name: string): void {
  if (!(value > 0) || !Number.isFinite(value))
    throw new RangeError(`an engraving needs a positive ${name}, not ${value}`);
}
