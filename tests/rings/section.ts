/** A binary STL cut at a height, read without any of the program's own code: what is left is a heap of straight segments. */

export type Segment = readonly [x0: number, y0: number, x1: number, y1: number];

/** Segments in which the triangles of a binary STL meet the plane z = height. No corner may lie in that plane. */
export function sectionOf(stl: Uint8Array, height: number): Segment[] {
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  const segments: Segment[] = [];
  for (let t = 0; t < view.getUint32(80, true); t++) {
    const corner = (k: number) =>
      [0, 1, 2].map((c) => view.getFloat32(84 + 50 * t + 12 + 12 * k + 4 * c, true)) as [number, number, number];
    const corners = [corner(0), corner(1), corner(2)];
    const cuts = corners.flatMap((a, k) => {
      const b = corners[(k + 1) % 3] as [number, number, number];
      if (a[2] > height === b[2] > height) return [];
      const share = (height - a[2]) / (b[2] - a[2]);
      return [[a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])] as const];
    });
    const [from, to] = cuts;
    if (from && to) segments.push([from[0], from[1], to[0], to[1]]);
  }
  return segments;
}

/** Distance of a segment from a point. */
export function distanceTo([x0, y0, x1, y1]: Segment, x: number, y: number): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const along = Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x0 + along * dx - x, y0 + along * dy - y);
}

/** Loops of a section: its segments gathered end to end, each with the box of its corners. */
export function loopsOf(
  segments: readonly Segment[],
): { segments: Segment[]; xMin: number; xMax: number; yMin: number; yMax: number }[] {
  const key = (x: number, y: number) => `${Math.round(x * 2e3)},${Math.round(y * 2e3)}`;
  const at = new Map<string, Segment[]>();
  for (const s of segments) {
    for (const k of [key(s[0], s[1]), key(s[2], s[3])]) at.set(k, [...(at.get(k) ?? []), s]);
  }
  const left = new Set(segments);
  const loops = [];
  while (left.size > 0) {
    const [first] = left as Iterable<Segment>;
    const heap = [first as Segment];
    const loop: Segment[] = [];
    left.delete(first as Segment);
    while (heap.length > 0) {
      const s = heap.pop() as Segment;
      loop.push(s);
      for (const next of [...(at.get(key(s[0], s[1])) ?? []), ...(at.get(key(s[2], s[3])) ?? [])]) {
        if (left.delete(next)) heap.push(next);
      }
    }
    const xs = loop.flatMap((s) => [s[0], s[2]]);
    const ys = loop.flatMap((s) => [s[1], s[3]]);
    loops.push({
      segments: loop,
      xMin: Math.min(...xs),
      xMax: Math.max(...xs),
      yMin: Math.min(...ys),
      yMax: Math.max(...ys),
    });
  }
  return loops;
}
