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
          cure:
            study.best.web >= job.adapter.web
              ? `Use clocking: auto, or ${study.best.angle.toFixed(3)} degrees.`
              : 'No angle leaves enough metal: use smaller heads or screws, or fasten one side another way.',
          source: 'geometry; least web set by adapter.web, common practice',
        },
        study.web,
        { limit: job.adapter.web, sense: 'at least' },
      ),
    ];
  },
};
