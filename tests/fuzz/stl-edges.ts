/** Open edges of a binary STL, read by its published layout and nothing else. */

/** Edges that do not meet exactly one other edge running the other way, corners compared bit for bit; -1 where a number is not finite. */
export function openEdges(stl: Uint8Array): number {
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  const count = view.getUint32(80, true);
  const edges = new Map<string, number>();
  const corner = (at: number): string | null => {
    const place = [0, 4, 8].map((step) => view.getFloat32(at + step, true) + 0);
    return place.every(Number.isFinite) ? place.join() : null;
  };
  for (let triangle = 0; triangle < count; triangle++) {
    const at = 84 + 50 * triangle + 12;
    const corners = [corner(at), corner(at + 12), corner(at + 24)];
    for (const [from, to] of [
      [corners[0], corners[1]],
      [corners[1], corners[2]],
      [corners[2], corners[0]],
    ]) {
      if (from === null || to === null) return -1;
      const back = `${to}|${from}`;
      const waiting = edges.get(back) ?? 0;
      if (waiting > 1) edges.set(back, waiting - 1);
      else if (waiting === 1) edges.delete(back);
      else edges.set(`${from}|${to}`, (edges.get(`${from}|${to}`) ?? 0) + 1);
    }
  }
  return edges.size;
}
