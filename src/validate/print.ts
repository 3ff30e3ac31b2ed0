/** Does the mock-up go on the printer's bed? */
import { type Check, judged } from './check.ts';
import { mm } from './words.ts';

/** Room for a brim, mm. Common practice. */
const brim = 5;

export const print: Check = {
  id: 'print',
  title: 'Printing the mock-up',
  source: 'geometry',
  run({ job, adapterSpec, wheelSpec }) {
    const { bed } = job.print;
    if (!bed) return [];
    const widest = Math.max(adapterSpec.outside, wheelSpec?.outside ?? 0);
    const side = Math.min(...bed);
    return [
      judged(
        {
          code: 'fits-the-bed',
          feature: 'body',
          title: 'room left on the print bed',
          unit: 'mm',
          why: `The widest part is ${mm(widest)}, the bed's short side ${mm(side)}.`,
          cure: 'Print it elsewhere, or cut it in half in the slicer and glue it: a mock-up carries no load.',
          source: 'geometry; 5 mm for a brim is common practice',
        },
        side - widest,
        { limit: brim, sense: 'at least', worst: 'caution' },
      ),
    ];
  },
};
