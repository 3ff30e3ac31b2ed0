/** STL, by a writer whose packages are loaded when it is first used: most runs only judge. */
import type { Mesh } from '../model/mesh.ts';

/** Binary STL of a mesh, in mm: see `writeStlBinary`, which also says what the header may be. */
export async function writeStl(mesh: Mesh, header?: string): Promise<Uint8Array> {
  const { writeStlBinary } = await import('./stl-binary.ts');
  return writeStlBinary(mesh, header);
}
