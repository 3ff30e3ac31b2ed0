/** prusa-slicer as an outside reader of meshes: does it find anything to mend, and how many layers does it cut? */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';

export interface Sliced {
  /** Everything it said. */
  readonly said: string;
  readonly layers: number;
}

/**
 * Walls of one line and nothing between them: every layer of the mesh is cut and joined to loops, which is what is asked about; how a
 * printer would fill them costs ten times as long and says nothing of the mesh.
 */
export const loopsOnly = [
  ['--perimeter-generator', 'classic'],
  ['--perimeters', '1'],
  ['--fill-density', '0'],
  ['--top-solid-layers', '0'],
  ['--bottom-solid-layers', '0'],
  ['--resolution', '0.1'],
].flat();

/**
 * Slice an STL file on a bed of 300 mm.
 * @param layer height of all layers, mm
 * @throws when the program is missing, or ends with a fault
 */
export function slice(stl: string, layer = 0.3): Sliced {
  const gcode = `${stl}.gcode`;
  const bed = ['--bed-shape', '0x0,300x0,300x300,0x300', '--center', '150,150'];
  const height = ['--layer-height', String(layer), '--first-layer-height', String(layer)];
  const args = ['--export-gcode', ...bed, ...height, ...loopsOnly, stl, '--output', gcode];
  const { error, status, stdout, stderr } = spawnSync('prusa-slicer', args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (error) throw new Error(`prusa-slicer cannot be run: ${error.message}. It is a Debian package of that name.`);
  const said = stdout + stderr;
  if (status !== 0) throw new Error(`prusa-slicer ended with ${status}: ${said}`);
  const layers = readFileSync(gcode, 'utf8').match(/^;LAYER_CHANGE/gm)?.length ?? 0;
  rmSync(gcode);
  return { said, layers };
}
