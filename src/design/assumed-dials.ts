/** The doubt of a dial where the job gives none: one graduation, counted wherever a dial was read. */
import { instrumentDoubt } from '../job/measured.ts';
import type { JobInput } from '../job/schema.ts';
import { isAround } from '../job/schema-readings.ts';
import type { Assumption } from '../model/finding.ts';

/** A line for each place where a dial was read and nobody said how far that is to be trusted. */
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
  const why = (key: string) =>
    `doubt of a dial, one graduation, common practice: it counts, as doubt of the dial, in every link that was read with it; ${key} gives another`;
  return Object.entries(dials).flatMap(([path, dial]): Assumption[] => {
    if (dial === undefined || (typeof dial === 'object' && dial.doubt !== undefined)) return [];
    const good = `good to +-${instrumentDoubt.dial} mm`;
    const name = path.split('.').at(-1);
    return isAround(dial)
      ? [{ path, value: `each reading ${good}`, from: why(`${name}: { readings, doubt }`), memory: false }]
      : [{ path, value: `total reading ${good}`, from: why(`${name}: 0.03 +-0.005`), memory: false }];
  });
}
