/** Pictures as SVG files of their own. */
import { writeSvg } from '../write/svg.ts';
import { pictures } from './pictures.ts';
import { type Product, utf8 } from './product.ts';

export const previewFiles: Product = {
  kind: 'preview',
  about: 'pictures: faces, section, wheel and sensor, what is off centre and what pulls to one side, SVG',
  metal: false,
  applies: () => true,
  names: ({ joint, base }) => pictures(joint).map(({ name }) => `${base}-${name}.svg`),
  async make({ pictures: drawn, base, revision }) {
    return drawn().map(({ name, drawing }) => ({
      kind: 'preview',
      name: `${base}-${name}.svg`,
      bytes: utf8(
        writeSvg({ ...drawing, description: `${drawing.description} Revision ${revision}.` }, { standalone: true }),
      ),
    }));
  },
};
