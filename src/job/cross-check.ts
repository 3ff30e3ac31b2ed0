/** Checks that look at two keys at once, or at how a number was typed. They answer slips of the pen, not engineering. */
import { checkBuilt } from './cross-check-built.ts';
import { checkFlangeInput } from './cross-check-flange.ts';
import { checkWheel } from './cross-check-wheel.ts';
import type { Report } from './cross-check-words.ts';
import { isHalfOf, radiusQuestion, round, size } from './cross-check-words.ts';
import { isMap } from './field.ts';
import type { AdapterInput, FlangeInput, JobInput } from './schema.ts';
import { wordAmong } from './word-fields.ts';

/** Slowest speed and smallest torque that need no unit to be believed. Common practice: shafts turn faster and carry more. */
const leastBareSpeed = 50;
const leastBareTorque = 2;

/** Judge the sections that were read; `data` is what was typed. */
export function crossCheck(job: Partial<JobInput>, data: unknown, report: Report): void {
  checkDuty(job, data, report);
  if (job.driving !== undefined) checkFlangeInput(job.driving, 'driving', report);
  if (job.driven !== undefined) checkFlangeInput(job.driven, 'driven', report);
  if (job.adapter !== undefined) {
    checkAdapter(job.adapter, report);
    for (const side of ['driving', 'driven'] as const) {
      const flange = job[side];
      if (flange !== undefined) checkAdapterAgainstFlange(job.adapter, flange, side, report);
    }
  }
  if (job.wheel !== undefined) {
    const typed = isMap(data) && isMap(data.wheel) ? data.wheel.outside : undefined;
    checkWheel(job.wheel, job, report, typed === undefined || wordAmong(typed, ['auto']) !== null);
  }
  checkBuilt(job, report);
}

function checkDuty(job: Partial<JobInput>, data: unknown, report: Report): void {
  const typed = isMap(data) && isMap(data.duty) ? data.duty : {};
  const { speed, torque } = job.duty ?? {};
  if (speed !== undefined && speed < leastBareSpeed && isBare(typed.speed)) {
    const thousands = speed * 1000 <= 100_000 ? `; for ${speed * 1000} rpm write ${speed * 1000}` : '';
    report(
      'duty.speed',
      `${speed} rpm is slower than any driveline turns${thousands}. If it is meant, write the unit: ${speed} rpm.`,
      { value: String(typed.speed) },
    );
  }
  if (torque !== undefined && torque < leastBareTorque && isBare(typed.torque)) {
    report(
      'duty.torque',
      `${torque} N.m is less than a hand can turn; for kilonewton metres write ${torque} kN.m. If it is meant, write the unit: ${torque} N.m.`,
      {
        value: String(typed.torque),
      },
    );
  }
}

/** Typed without a unit. */
function isBare(typed: unknown): boolean {
  return typeof typed === 'number' || (typeof typed === 'string' && /^[\s\d.+-]*$/.test(typed));
}

function checkAdapter(adapter: AdapterInput, report: Report): void {
  const { outside, bore, flats, thickness } = adapter;
  if (typeof outside === 'number') {
    if (typeof bore === 'number' && bore >= outside)
      report('adapter.bore', `The bore (${size(bore)}) is not smaller than the outside (${size(outside)}).`);
    if (typeof flats === 'number' && flats >= outside) {
      report(
        'adapter.flats',
        `The flats (${size(flats)} across) lie outside of the part (${size(outside)}); they must be nearer together than its diameter.`,
      );
    }
  }
  if (typeof thickness === 'number' && adapter.chamfer * 2 >= thickness) {
    report(
      'adapter.chamfer',
      `Two chamfers of ${size(adapter.chamfer)} leave no rim on a part ${size(thickness)} thick.`,
    );
  }
}

function checkAdapterAgainstFlange(
  adapter: AdapterInput,
  flange: FlangeInput,
  side: 'driving' | 'driven',
  report: Report,
): void {
  const own = adapter[side].register;
  if (typeof own === 'object' && own.diameter !== undefined && typeof flange.register === 'object') {
    const mate = flange.register.diameter?.value;
    if (mate !== undefined && isHalfOf(own.diameter, mate))
      report(
        `adapter.${side}.register.diameter`,
        `${radiusQuestion(own.diameter, mate)} The ${side} flange's register is ${size(mate)}.`,
      );
  }
  const circle = flange.holes?.circle?.value;
  if (typeof adapter.outside === 'number' && circle !== undefined && adapter.outside <= circle) {
    const hint =
      2 * adapter.outside > circle + 5
        ? ` Did you type the radius? Twice ${round(adapter.outside)} is ${size(2 * adapter.outside)}.`
        : '';
    report(
      'adapter.outside',
      `The adapter (${size(adapter.outside)}) is smaller than the ${side} flange's bolt circle (${size(circle)}).${hint}`,
    );
  }
}
