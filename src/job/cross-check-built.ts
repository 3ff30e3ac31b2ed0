/** Checks of what was measured on finished parts that look at two keys at once. */
import { faceRunout, rimRunout } from '../measure/all.ts';
import type { Report } from './cross-check-words.ts';
import type { JobInput } from './schema.ts';
import { type DialTyped, isAround } from './schema-readings.ts';

function checkRim(dial: DialTyped | undefined, path: string, report: Report): void {
  if (!isAround(dial)) return;
  const read = rimRunout(dial);
  if (!read.ok) report(path, read.why);
}

function checkFace(dial: DialTyped | undefined, path: string, report: Report): void {
  if (!isAround(dial)) return;
  if (dial.inside) report(`${path}.inside`, 'A face is not read inside a bore. Delete inside.');
  if (dial.radius === undefined) {
    const message = 'Readings around a face need the radius they were taken at: { readings: [...], radius: 50 mm }.';
    report(path, message);
    return;
  }
  const read = faceRunout(dial, dial.radius);
  if (!read.ok) report(path, read.why);
}

/** Judge `built` against itself and against the sections that it speaks of. */
export function checkBuilt({ built, wheel }: Partial<JobInput>, report: Report): void {
  if (!built) return;
  checkRim(built.adapter?.runout?.register, 'built.adapter.runout.register', report);
  checkFace(built.adapter?.runout?.face, 'built.adapter.runout.face', report);
  checkRim(built.joint?.rim, 'built.joint.rim', report);
  checkFace(built.joint?.face, 'built.joint.face', report);
  for (const key of ['wheel', 'screws.wheel'] as const) {
    const typed = key === 'wheel' ? built.wheel : built.screws?.wheel;
    if (typed !== undefined && wheel === undefined) {
      report(
        `built.${key}`,
        `The job has no wheel, so nothing of one can be measured. Give wheel:, or delete built.${key}.`,
      );
    }
  }
}
