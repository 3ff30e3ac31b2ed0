/** A triangle mesh with shared vertices; positions in mm, triangles counter-clockwise seen from outside. */
export interface Mesh {
  /** x, y, z of each vertex in turn. */
  readonly positions: Float64Array;
  /** Three vertex numbers a triangle. */
  readonly triangles: Uint32Array;
}
