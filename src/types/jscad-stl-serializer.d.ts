/** The serializer ships no types; this is the part of it that is used. */
declare module '@jscad/stl-serializer/CSGToStlb.js' {
  import type { Geom3 } from '@jscad/modeling/src/geometries/types';

  /** Header (80 bytes), number of triangles (4), triangles (50 each). */
  export function serializeBinary(
    objects: readonly Geom3[],
    options: { readonly statusCallback?: (status: { readonly progress: number }) => void },
  ): [ArrayBuffer, ArrayBuffer, ArrayBuffer];
}
