/**
 * Binary STL.
 *
 * The serializer's front door snaps coordinates to a grid and cuts triangles anew, which moves corners by up
 * to 0.0002 mm. Its binary writer is called directly, so that corners come out as they went in, rounded to
 * single precision.
 */
import modeling from '@jscad/modeling';
import binary from '@jscad/stl-serializer/CSGToStlb.js';
import type { Mesh } from '../model/mesh.ts';

/**
 * Binary STL of a mesh, in mm. The same mesh gives the same bytes.
 *
 * @param header up to 80 characters of plain ASCII for the file's header; the rest is blanks. Must not start
 * with `solid`, which would make readers take the file for text: a RangeError is thrown then, and for longer
 * or other text.
 */
export function writeStlBinary(mesh: Mesh, header = 'binary STL, millimetres'): Uint8Array {
  if (!/^[\x20-\x7e]{0,80}$/.test(header) || /^solid/i.test(header)) {
    throw new RangeError('an STL header is at most 80 plain characters and does not start with "solid"');
  }
  const { geom3, poly3 } = modeling.geometries;
  // Rounded here already, so that the normals belong to the corners as written.
  const fround = (value: number | undefined): number => Math.fround(value as number);
  const corner = (i: number): [number, number, number] => {
    const at = 3 * (mesh.triangles[i] as number);
    return [fround(mesh.positions[at]), fround(mesh.positions[at + 1]), fround(mesh.positions[at + 2])];
  };
  const polygons = [];
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    polygons.push(poly3.create([corner(t), corner(t + 1), corner(t + 2)]));
  }
  const [, count, triangles] = binary.serializeBinary([geom3.create(polygons)], {});
  const bytes = new Uint8Array(84 + triangles.byteLength).fill(0x20, 0, 80);
  bytes.set(new TextEncoder().encode(header));
  bytes.set(new Uint8Array(count), 80);
  bytes.set(new Uint8Array(triangles), 84);
  return bytes;
}
