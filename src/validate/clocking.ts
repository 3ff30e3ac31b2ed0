/** Is the chosen clocking a good one? How much metal is left is the webs' business; this says whether turning would help. */
import { type Check, judged, stated } from './check.ts';
import { angle, mm } from './words.ts';

export const clocking: Check = {
  id: 'clocking',
  title: 'Clocking',
  source: 'exact optimum over all angles',
  run({ clocking: study, job }) {
    const { best } = study;
    const common = {
      code: 'clocking',
      feature: 'driven-screws',
      unit: 'mm',
      source: 'geometry: exact optimum over all angles',
    };
    if (study.web === null || best.web === null) {
      const why = 'The same bolts run through both flanges: the two patterns fall on each other at this angle.';
      return [stated({ ...common, title: `clocking ${angle(study.angle)}`, why, cure: '' }, 'pass')];
    }
    return [
      judged(
        {
          ...common,
          title: `web between the two patterns at ${angle(study.angle)}`,
          why: `The best any angle gives is ${mm(best.web)}, at ${angle(best.angle)}.`,
          cure: `Turn the driven pattern (adapter.clocking: auto), or type ${best.angle.toFixed(3)}.${best.web < job.adapter.web ? ' That is better, but still not enough.' : ''}`,
        },
        study.web,
        // A worse angle is only worth a word where it costs metal that is needed.
        { limit: Math.min(best.web, job.adapter.web), sense: 'at least', worst: 'caution' },
      ),
    ];
  },
};
