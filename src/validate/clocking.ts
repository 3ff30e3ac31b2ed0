/** Is the chosen clocking a good one? */
import { type Check, judged } from './check.ts';
import { mm } from './words.ts';

export const clocking: Check = {
  id: 'clocking',
  title: 'Clocking',
  source: 'exact optimum over all angles',
  run({ clocking: study, job }) {
    if (study.web === null || study.best.web === null) return [];
    return [
      judged(
        {
          code: 'clocking',
          feature: 'driven-screws',
          title: `web between the two patterns at ${study.angle.toFixed(3)} degrees`,
          unit: 'mm',
          why: `The best any angle gives is ${mm(study.best.web)}, at ${study.best.angle.toFixed(3)} degrees.`,
          cure: `Use clocking: auto, or ${study.best.angle.toFixed(3)} degrees.`,
          source: 'geometry: exact optimum over all angles',
        },
        study.web,
        // A worse angle is only worth a word where it costs metal that is needed.
        { limit: Math.min(study.best.web, job.adapter.web), sense: 'at least', worst: 'caution' },
      ),
    ];
  },
};
