/** True-size paper patterns of both flanges and both faces of the adapter, a PDF for each size of paper. */
import { adapterPattern, flangePattern, type PaperPattern } from '../drawing/paper.ts';
import { type PaperName, sheetsOfPaper } from '../drawing/sheet-of-paper.ts';
import { emptyNumbers } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import { paperNames } from '../job/schema.ts';
import { writePdf } from '../write/pdf.ts';
import { type Product, verdictWords } from './product.ts';
import { discSpec } from './rings.ts';

/** The four patterns of a joint, in the order in which they are met along the shaft. */
export function paperPatterns(joint: Joint): PaperPattern[] {
  const { adapter, adapterSpec, job } = joint;
  const flange = (side: 'driving' | 'driven'): PaperPattern => {
    const { name, outside, bore, holes } = discSpec(joint[side]);
    const { register } = joint[side];
    return flangePattern(
      {
        side,
        name,
        outside,
        bore,
        register: register && { gender: register.gender, diameter: register.diameter.value },
        holes: {
          positions: holes.positions,
          diameter: holes.diameter,
          thread: joint[side].holes.thread,
          empty: emptyNumbers(joint[side].holes),
        },
        // The driven pattern is turned by the clocking, and its face is seen from the other end.
        zero: side === 'driving' ? 0 : 180 + adapterSpec.clocking,
      },
      job.units,
    );
  };
  const face = (side: 'driving' | 'driven') => adapterPattern(adapter, side, adapterSpec.clocking, job.units);
  return [flange('driving'), face('driving'), face('driven'), flange('driven')];
}

const papersOf = ({ job }: Joint): readonly PaperName[] => job.print.paper ?? paperNames;
const fileName = (base: string, paper: PaperName) => `${base}-paper-${paper}.pdf`;

export const paperFiles: Product = {
  kind: 'paper',
  about: 'true-size paper patterns of the flanges and of the adapter, PDF',
  metal: false,
  applies: () => true,
  asked: ({ job }) => job.print.paper !== undefined,
  names: ({ joint, base }) => papersOf(joint).map((paper) => fileName(base, paper)),
  async make({ joint, base, verdict, forced, revision }) {
    const patterns = paperPatterns(joint);
    const { title } = joint.job;
    const words = { title: `${title} (${revision})`, warning: verdictWords(verdict, forced) };
    const about = { title: `${title}: true-size patterns`, subject: `Print at 100 %. Revision ${revision}` };
    const make = async (paper: PaperName) => {
      const bytes = await writePdf(sheetsOfPaper(patterns, paper, words), about);
      return { kind: 'paper', name: fileName(base, paper), bytes };
    };
    return Promise.all(papersOf(joint).map(make));
  },
};
