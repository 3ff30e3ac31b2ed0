/** Is the adapter thick enough for everything that goes into it? */
import { thicknessLimits } from '../inspect/characteristics.ts';
import { type Check, judged } from './check.ts';
import { atLeast, mm } from './words.ts';

export const thickness: Check = {
  id: 'thickness',
  title: 'Thickness',
  source: 'sum of the demands; each demand has its own source',
  run(joint) {
    const { thickness: study } = joint;
    const { lower, raised } = thicknessLimits(joint);
    const held =
      raised && joint.job.built === undefined
        ? ` On drawing and record its lower limit is that least, ${mm(study.thickness - lower, 3)} below ${mm(study.thickness)}, not what the general tolerance would allow.`
        : '';
    const governs = study.demands.find((demand) => demand.least === study.least);
    return [
      judged(
        {
          code: 'thickness',
          feature: 'body',
          title: 'thickness of the adapter',
          unit: 'mm',
          why: `The least that works is ${mm(study.least)}${governs ? `, set by: ${governs.what} (${governs.side})` : ''}.${held}`,
          cure: `Make the adapter ${mm(study.least - study.thickness)} thicker (adapter.thickness: ${atLeast(study.least)}), or leave it on auto.`,
          source: 'sum of head depth, web under heads, thread engagement and register depth; common practice',
        },
        study.thickness,
        { limit: study.least, sense: 'at least' },
      ),
    ];
  },
};
