/** The doubt of dial readings: a job has no key for it, so what one reading is good for is counted wherever a dial was read around the turn. */
import { instrumentDoubt } from '../job/measured.ts';
import type { JobInput } from '../job/schema.ts';
import type { Assumption } from '../model/finding.ts';

/** A line for each place where a dial was read around the turn; none for a total indicator reading, which is taken as it stands. */
export function assumedDials({ driving, driven, built }: JobInput): Assumption[] {
  const dials = {
    'driving.runout.rim': driving.runout?.rim,
    'driving.runout.face': driving.runout?.face,
    'driven.runout.rim': driven.runout?.rim,
    'driven.runout.face': driven.runout?.face,
    'built.adapter.runout.register': built?.adapter?.runout?.register,
    'built.adapter.runout.face': built?.adapter?.runout?.face,
    'built.joint.rim': built?.joint?.rim,
    'built.joint.face': built?.joint?.face,
  };
  return Object.entries(dials).flatMap(([path, dial]) =>
    typeof dial === 'object'
      ? [
          {
            path,
            value: `each reading good to +-${instrumentDoubt.dial} mm`,
            from: 'doubt of a dial, common practice: it counts, as doubt of the dial, in every link that was read with it',
            memory: false,
          },
        ]
      : [],
  );
}
