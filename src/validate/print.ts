/** Does the mock-up go on the printer's bed? */
import { type Check, judged } from './check.ts';
import { mm } from './words.ts';

export const print: Check = {
  id: 'print',
  title: 'Printing the mock-up',
  source: 'geometry',
  run({ job, adapterSpec, wheelSpec }) {
    const { bed } = job.print;
    if (!bed) return [];
    const widest = Math.max(adapterSpec.outside, wheelSpec?.outside ?? 0);
    const side = Math.min(bed[0] as number, bed[1] as number);
    return [
      judged(
        {
          code: 'fits-the-bed',
          feature: 'body',
          title: 'room left on the print bed',
          unit: 'mm',
          why: `The widest part is ${mm(widest)}, the bed's short side ${mm(side)}.`,
          cure: 'Print elsewhere, or print the halves and glue them: a mock-up carries no load.',
          source: 'geometry; 5 mm for a brim is common practice',
        },
        side - widest,
        { limit: 5, sense: 'at least', hard: 0, worst: 'caution' },
      ),
    ];
  },
};
