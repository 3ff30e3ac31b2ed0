/** Printable mock-ups as 3MF: the same meshes as the STL files, with their unit, names and settings. */
import type { Mesh } from '../model/mesh.ts';
import { warning } from '../parts/mock-up.ts';
import { write3mf } from '../write/3mf.ts';
import { adapterMockUpMesh, wheelMockUpMesh } from './mock-up.ts';
import { type MadeFile, type Making, type Product, verdictWords } from './product.ts';

const kind = '3mf';

/**
 * Settings for a piece that is measured and bolted up, not loaded. Common practice: walls of four lines, so that holes and registers are
 * solid round their edges, a coarse fill, no supports in pockets.
 */
const settings = { layer_height: '0.2', perimeters: '4', fill_density: '20%', support_material: '0' };

function packed(making: Making, part: 'adapter' | 'wheel', mesh: Mesh): MadeFile {
  const { joint, base, revision, verdict, forced } = making;
  const failed = verdictWords(verdict, forced);
  const words = [failed, warning, `revision ${revision}`].filter((word) => word !== '');
  const bytes = write3mf({
    title: `${joint.job.title}: ${part} mock-up`,
    description: words.join('; '),
    objects: [{ name: `${part} mock-up ${revision}`, partNumber: `${base}-${part}-mockup`, mesh, settings }],
  });
  return { kind, name: `${base}-${part}-mockup.3mf`, bytes };
}

export const packedMockUpFiles: Product = {
  kind,
  about: 'mock-ups to print, 3MF in mm with part names and settings',
  metal: false,
  applies: () => true,
  // The STL files hold the same bodies; nobody needs both unasked.
  asked: () => false,
  names: ({ joint, base }) =>
    ['adapter', ...(joint.wheelSpec ? ['wheel'] : [])].map((part) => `${base}-${part}-mockup.3mf`),
  async make(making) {
    const files = [packed(making, 'adapter', await adapterMockUpMesh(making))];
    const { wheelSpec } = making.joint;
    if (wheelSpec) files.push(packed(making, 'wheel', await wheelMockUpMesh(making, wheelSpec)));
    return files;
  },
};
