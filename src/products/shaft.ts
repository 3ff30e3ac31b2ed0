/** The shaft's papers: the order sheet for the shop with its sketch, and the angle sheet. */
import { lineView } from '../drawing/line-view.ts';
import { shaftView } from '../drawing/shaft-view.ts';
import type { Joint } from '../job/joint.ts';
import { angleSheet, angleSheetHtml } from '../report/shaft-angles.ts';
import { shaftOrder, shaftOrderHtml } from '../report/shaft-order.ts';
import { writeSvg } from '../write/svg.ts';
import { type MadeFile, type Product, utf8, verdictWords } from './product.ts';
import { lineToDraw, shaftToDraw } from './shaft-to-draw.ts';

const kind = 'shaft';
const orderNames = (base: string) => [`${base}-shaft-order.html`, `${base}-shaft-order.svg`];
const angleName = (base: string) => `${base}-shaft-angles.html`;

const file = (name: string, text: string): MadeFile => ({ kind, name, bytes: utf8(text) });

const hasOrder = (joint: Joint): boolean => shaftToDraw(joint) !== null;
const hasAngles = (joint: Joint): boolean => lineToDraw(joint) !== null;

export const shaftFiles: Product = {
  kind,
  about: 'order sheet for the shaft shop with its sketch, and the angle sheet with what to shim',
  metal: false,
  applies: (joint) => hasOrder(joint) || hasAngles(joint),
  names: ({ joint, base }) => [
    ...(hasOrder(joint) ? orderNames(base) : []),
    ...(hasAngles(joint) ? [angleName(base)] : []),
  ],
  async make({ joint, verdict, forced, base, revision }) {
    const { units } = joint.job;
    const title = `${joint.job.title} (revision ${revision})`;
    const order = shaftOrder(joint, units);
    const shaft = shaftToDraw(joint);
    const sheet = angleSheet(joint);
    const line = lineToDraw(joint);
    const [page, sketch] = orderNames(base) as [string, string];
    const drawn = shaft ? shaftView(shaft) : null;
    return [
      ...(order && drawn
        ? [
            file(
              page,
              shaftOrderHtml(order, title, writeSvg(drawn, { standalone: false }), verdictWords(verdict, forced)),
            ),
            file(sketch, writeSvg({ ...drawn, description: `${drawn.description} Revision ${revision}.` })),
          ]
        : []),
      ...(sheet && line
        ? [file(angleName(base), angleSheetHtml(sheet, title, writeSvg(lineView(line), { standalone: false })))]
        : []),
    ];
  },
};
