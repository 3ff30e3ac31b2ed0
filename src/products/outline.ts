/** The wheel's outline for the cutting service, in every flavour the job asks for. */
import { buildToneWheel } from '../parts/tone-wheel.ts';
import { dxfFlavour } from '../write/dxf.ts';
import { type MadeFile, type Product, utf8, verdictWords } from './product.ts';

export const outlineFile: Product = {
  kind: 'outline',
  about: 'wheel outline for laser cutting, DXF in mm',
  metal: true,
  applies: (joint) => joint.wheelSpec !== null,
  names: ({ joint, base }) => joint.job.sheet.flavour.map((id) => `${base}-wheel${dxfFlavour(id).suffix}`),
  async make({ joint, base, verdict, forced, revision }) {
    if (!joint.wheelSpec) return [];
    const kerf = joint.job.sheet.kerf === 'service' ? 0 : joint.job.sheet.kerf;
    // A bore that is turned later is cut undersize.
    const bore = joint.wheelSpec.bore - (joint.wheelBore?.stock ?? 0);
    const part = buildToneWheel({ ...joint.wheelSpec, kerf, bore });
    const failed = verdictWords(verdict, forced);
    const files: MadeFile[] = [];
    for (const id of joint.job.sheet.flavour) {
      const flavour = dxfFlavour(id);
      const text = await flavour.write(part);
      // Group 999 is a comment: readers of the drawing pass it over, people who open the file see it first.
      const comment = `999\nrevision ${revision}\n`;
      const bytes = utf8(`${failed ? `999\n${failed}\n` : ''}${comment}${text}`);
      files.push({ kind: 'outline', name: `${base}-wheel${flavour.suffix}`, bytes });
    }
    return files;
  },
};
