/**
 * Workshop drawings of the adapter and of the wheel, PDF and SVG. Made when they are asked for: a PDF loads its writer, and who cuts
 * from the bench needs the set-up sheets, not these.
 */
import { adapterSheets } from '../drawing/shop/adapter-sheets.ts';
import { moved } from '../drawing/shop/shapes.ts';
import { wheelSheets } from '../drawing/shop/wheel-sheets.ts';
import type { Joint } from '../job/joint.ts';
import type { Drawing } from '../model/drawing.ts';
import { writePdf } from '../write/pdf.ts';
import { writeSvg } from '../write/svg.ts';
import { type MadeFile, type Product, utf8, verdictWords } from './product.ts';
import { adapterToDraw, type DrawingWords, sheetChoice, wheelToDraw } from './shop-to-draw.ts';

/** Paper between two sheets of one SVG, mm. */
const apart = 10;
/** Pens a little stronger than on patterns: a drawing is read from farther away. */
const weight = 1.2;

/** Every part's sheets. */
export function drawingSheets(joint: Joint, words: DrawingWords): { part: 'adapter' | 'wheel'; sheets: Drawing[] }[] {
  const choice = sheetChoice(joint);
  const wheel = wheelToDraw(joint, words);
  return [
    { part: 'adapter', sheets: adapterSheets(adapterToDraw(joint, words), choice) },
    ...(wheel ? [{ part: 'wheel' as const, sheets: wheelSheets(wheel, choice) }] : []),
  ];
}

/** All sheets in one picture, the first on top. */
function oneUnderAnother(sheets: readonly Drawing[]): Drawing {
  const [first] = sheets as [Drawing];
  const high = first.box.yMax + apart;
  return {
    ...first,
    box: { ...first.box, yMin: first.box.yMin - (sheets.length - 1) * high },
    shapes: sheets.flatMap(({ shapes }, i) => moved(shapes, { x: 0, y: -i * high })),
  };
}

const partsOf = (joint: Joint) => (joint.wheelSpec ? (['adapter', 'wheel'] as const) : (['adapter'] as const));
const nameOf = (base: string, part: string, ending: string) => `${base}-${part}-drawing.${ending}`;

export const drawingFiles: Product = {
  kind: 'drawing',
  about: 'workshop drawings of the adapter and of the wheel, to scale, PDF and SVG',
  // A shop cuts from it.
  metal: true,
  applies: () => true,
  asked: ({ job }) => job.adapter.drawing !== undefined,
  names: ({ joint, base }) => partsOf(joint).flatMap((part) => ['pdf', 'svg'].map((end) => nameOf(base, part, end))),
  async make({ joint, base, revision, verdict, forced }) {
    const files: MadeFile[] = [];
    for (const { part, sheets } of drawingSheets(joint, { base, revision, warning: verdictWords(verdict, forced) })) {
      const pages = sheets.map((drawing) => ({
        width: drawing.box.xMax,
        height: drawing.box.yMax,
        weight,
        layers: [{ drawing, at: { x: 0, y: 0 }, clip: null }],
      }));
      const about = { title: `${joint.job.title}: ${part}`, subject: `Print at 100 %. Revision ${revision}` };
      files.push(
        { kind: 'drawing', name: nameOf(base, part, 'pdf'), bytes: await writePdf(pages, about) },
        {
          kind: 'drawing',
          name: nameOf(base, part, 'svg'),
          bytes: utf8(writeSvg(oneUnderAnother(sheets), { weight })),
        },
      );
    }
    return files;
  },
};
