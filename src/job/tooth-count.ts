/**
 * Which tooth counts the wheel may have: what the controller expects, held against sensor, rim and sheet, ranked.
 *
 * The wheel's outside, tooth height and ratio stay as typed: what changes with the count is the width of teeth and valleys, the
 * frequency, and what the controller then reads. Where the outside is left open, each count is judged on the one that it needs.
 */
import { readingError, toothFrequency } from '../formulas/pulses.ts';
import type { Verdict } from '../model/finding.ts';
import {
  closestPlaces,
  hasWindows,
  pulseCount,
  type ToneWheelSpec,
  toneWheelFaults,
  toothMeasures,
} from '../parts/tone-wheel.ts';
import { sheetLimit } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { type PulsesWanted, pulsesWanted } from './pulses-wanted.ts';
import type { JobInput } from './schema.ts';
import { outsideRange } from './schema-wheel.ts';
import { type SensorNeeds, sensorNeeds } from './sensor-needs.ts';
import { demandVerdict, narrowestCut, toothDemands } from './tooth-demands.ts';
import { bandOf, type SizedWheel } from './wheel-form.ts';
import { marksOf } from './wheel-mark.ts';

/** One count, its teeth, and what comes of it. mm. */
export interface ToothCandidate {
  readonly teeth: number;
  /** Outside of the wheel that it was judged on. */
  readonly outside: number;
  readonly tooth: number;
  readonly valley: number;
  readonly pitch: number;
  readonly verdict: Verdict;
  /** What speaks against it, worst first; empty for a pass. */
  readonly reasons: readonly string[];
  /** How far the reading is out when nothing is changed in the controller, as a share; null where nothing is expected. */
  readonly error: number | null;
  /** The number to enter, and how far the reading is out then; null where it cannot be entered. */
  readonly enter: { readonly number: number; readonly error: number } | null;
}

export type CountJob = Pick<JobInput, 'wheel' | 'sensor' | 'duty'>;

/** The wheel at the size that a count needs; null where no size will do. */
export type SizeFor = (teeth: number) => SizedWheel | null;

/** A wheel whose outside is known is the same for every count. */
const asTyped = (wheel: CountJob['wheel']): SizeFor => {
  const sized = wheel && typeof wheel.outside === 'number' ? { ...wheel, outside: wheel.outside } : null;
  return () => sized;
};

/** Counts that wheels of the trade have; offered where the controller can be told. */
const usualCounts = [12, 16, 24, 30, 32, 36, 40, 44, 48, 60, 72, 96, 100, 120];

/** Fewest and most tooth places that are looked at. */
const fewest = 3;
const most = 3600;

/** A reading within this of the truth is as good as tyres let it be, as a share. Common practice. */
export const asGoodAsTyres = 0.01;
/** Beyond this a reading that cannot be put right is of no use: UN Regulation 39 allows a speedometer 10 % and 4 km/h. */
export const noUse = 0.1;

/** Errors that differ by less than this are alike: a tyre wears by more. */
const alikeError = 0.001;

const rankOf: Readonly<Record<Verdict, number>> = { pass: 0, 'not assessed': 1, caution: 2, fail: 3 };
const percent = (share: number) => `${(100 * Math.abs(share)).toFixed(2)} %`;
const mm = (value: number) => `${value.toFixed(2)} mm`;

/** The wheel with so many teeth, as an outline that can be measured; its bore and screws do not matter here. */
export function outlineOf(wheel: SizedWheel, teeth: number): ToneWheelSpec {
  const band = bandOf(wheel);
  return {
    id: 'wheel',
    name: '',
    material: { id: '', name: '', density: 1 },
    thickness: wheel.thickness,
    teeth,
    ...marksOf(wheel),
    ...band,
    ratio: wheel.ratio,
    flanks: wheel.flanks,
    rootRadius: wheel.root_radius,
    tipBreak: wheel.tip_break,
    bore: band.root / 2,
    screwHoles: null,
    toothAngle: 0,
    kerf: 0,
  };
}

interface Objection {
  readonly verdict: Verdict;
  readonly why: string;
}

/** What sensor, rim, sheet and speed say against a count. */
function objections(spec: ToneWheelSpec, needs: SensorNeeds | null, { duty, sensor }: CountJob): Objection[] {
  const sizes = toothMeasures(spec);
  const said: Objection[] = [];
  if (needs) {
    for (const demand of toothDemands(sizes, spec, needs)) {
      const verdict = demandVerdict(demand);
      if (verdict === 'pass') continue;
      said.push({
        verdict,
        why: `${demand.title} ${mm(demand.value)}, the sensor wants ${demand.sense} ${mm(demand.need.value)}`,
      });
    }
  }
  const pole = sensor?.pole;
  if (pole !== undefined && sizes.toothChord < pole - 1e-6)
    said.push({
      verdict: 'fail',
      why: `${hasWindows(spec) ? 'bar' : 'tooth'} ${mm(sizes.toothChord)} narrower than the pole of ${mm(pole)}`,
    });
  const slot = must(sheetLimit('slot', spec.thickness));
  const narrowest = narrowestCut(sizes);
  if (narrowest < slot.usual - 1e-6) {
    const verdict = narrowest < slot.loosest - 1e-6 ? 'fail' : 'caution';
    said.push({
      verdict,
      why: `narrowest ${hasWindows(spec) ? 'bar or window' : 'tooth or valley'} ${mm(narrowest)}, the sheet wants ${mm(slot.usual)}`,
    });
  }
  const fastest = duty?.speed === undefined ? null : toothFrequency(closestPlaces(spec), duty.speed);
  const limits = [
    { what: 'the sensor', limit: needs?.of('frequencyMost')?.value },
    { what: 'the controller', limit: sensor?.controller?.most },
  ];
  for (const { what, limit } of limits) {
    if (fastest === null || limit === undefined || fastest <= limit) continue;
    said.push({ verdict: 'fail', why: `${fastest.toFixed(0)} Hz at top speed, ${what} reads up to ${limit} Hz` });
  }
  return said;
}

/** What is typed into the controller for a count, and how far the reading is out then. */
function entry(made: number, wanted: PulsesWanted, expects: NonNullable<CountJob['sensor']>['expects']) {
  if (expects?.adjustable === false) return null;
  const exact = made * wanted.perUnit;
  const number = expects?.whole === false ? Number(exact.toPrecision(6)) : Math.max(1, Math.round(exact));
  return { number, error: readingError(exact, number) };
}

/** A reading that cannot be put right in the controller. */
function misreading(error: number): Objection[] {
  const size = Math.abs(error);
  if (size <= asGoodAsTyres) return [];
  const why = `${percent(error)} ${error > 0 ? 'fast' : 'slow'}, and the controller cannot be told`;
  return [{ verdict: size > noUse ? 'fail' : 'caution', why }];
}

/** One count held against everything; null where its teeth cannot be drawn at all. */
export function toothCandidate(job: CountJob, teeth: number, sizeFor = asTyped(job.wheel)): ToothCandidate | null {
  const { sensor } = job;
  if (job.wheel && pulseCount({ ...job.wheel, teeth }) < 1) return null;
  const wheel = sizeFor(teeth);
  if (!wheel) return null;
  const spec = outlineOf(wheel, teeth);
  if (toneWheelFaults(spec).length > 0) return null;
  const { toothChord, valleyChord, pitch } = toothMeasures(spec);
  const wanted = pulsesWanted(job);
  const made = pulseCount(spec);
  const error = wanted?.ok ? readingError(made, wanted.value.perTurn) : null;
  const enter = wanted?.ok ? entry(made, wanted.value, sensor?.expects) : null;
  const said = [
    ...objections(spec, sensor ? sensorNeeds(sensor) : null, job),
    ...(error !== null && enter === null ? misreading(error) : []),
  ].sort((a, b) => rankOf[b.verdict] - rankOf[a.verdict]);
  return {
    teeth,
    outside: wheel.outside,
    tooth: toothChord,
    valley: valleyChord,
    pitch,
    verdict: said[0]?.verdict ?? 'pass',
    reasons: said.map(({ why }) => why),
    error,
    enter,
  };
}

/** How far out the reading stays at best, told or not, in steps that matter; and how far it is when nothing is changed. */
const left = ({ enter, error }: ToothCandidate) =>
  Math.round(Math.min(Math.abs(enter?.error ?? Number.POSITIVE_INFINITY), Math.abs(error ?? 0)) / alikeError);
const unchanged = ({ error }: ToothCandidate) => Math.abs(Math.log1p(error ?? 0));

/**
 * Counts round what the controller expects, best first: those that pass, then by what is left of the error, then by how little has
 * to be changed, then the smaller wheel. Empty where nothing is expected.
 * @param sizeFor the wheel for each count; left out: the job's own, whose outside is known
 */
export function toothCandidates(job: CountJob, sizeFor = asTyped(job.wheel)): ToothCandidate[] {
  const wanted = pulsesWanted(job);
  if (!job.wheel || !wanted?.ok) return [];
  const places = wanted.value.perTurn - pulseCount({ ...job.wheel, teeth: 0 });
  const near = [places, 2 * places, places / 2].flatMap((middle) =>
    [-2, -1, 0, 1, 2].map((step) => Math.round(middle) + step),
  );
  const canBeTold = job.sensor?.expects?.adjustable !== false;
  const counts = new Set([...near, ...(canBeTold ? usualCounts : [])]);
  return [...counts]
    .filter((count) => count >= fewest && count <= most)
    .sort((a, b) => a - b)
    .flatMap((count) => toothCandidate(job, count, sizeFor) ?? [])
    .sort(
      (a, b) =>
        rankOf[a.verdict] - rankOf[b.verdict] ||
        left(a) - left(b) ||
        unchanged(a) - unchanged(b) ||
        a.outside - b.outside,
    );
}

export type ToothChoice =
  | { readonly ok: true; readonly teeth: number; readonly from: string }
  | { readonly ok: false; readonly path: string; readonly message: string };

type NoChoice = Extract<ToothChoice, { ok: false }>;

/** What `wheel.teeth: auto` still has to be told; null where it is enough. */
export function countMissing(job: CountJob): NoChoice | null {
  const wanted = pulsesWanted(job);
  if (wanted?.ok) return null;
  const message =
    wanted === null
      ? 'auto needs to know what the controller expects: give sensor.expects: { pulses: 60, per: shaft }, or sensor.was: { teeth: 44, ratio: 1 } and sensor.axle.'
      : `auto is not enough yet. ${wanted.missing}`;
  return { ok: false, path: 'wheel.teeth', message };
}

/**
 * The count of `wheel.teeth: auto`, with its reason; or what is missing.
 * @param sizeFor as for `toothCandidates`
 */
export function chooseTeeth(job: CountJob, sizeFor = asTyped(job.wheel)): ToothChoice {
  const wanted = pulsesWanted(job);
  if (!wanted?.ok) return countMissing(job) ?? { ok: false, path: 'wheel.teeth', message: 'auto is not enough yet.' };
  const [best] = toothCandidates(job, sizeFor);
  if (!best) {
    const per = Number(wanted.value.perTurn.toPrecision(4));
    const outside = job.wheel?.outside;
    const where = typeof outside === 'number' ? `a wheel of ${outside} mm` : `any wheel up to ${outsideRange.most} mm`;
    const message = `The controller expects ${per} pulses in a turn of this shaft; no count near that can be drawn on ${where}. Give a count${typeof outside === 'number' ? ', or a larger wheel.outside' : ''}.`;
    return { ok: false, path: 'wheel.teeth', message };
  }
  const { teeth, error, enter, verdict, reasons } = best;
  const expected = `${wanted.value.asTold}, so ${Number(wanted.value.perTurn.toPrecision(5))} in a turn of this shaft`;
  const reads =
    Math.abs(error ?? 0) < 5e-5 ? 'nothing has to be changed' : `${percent(error ?? 0)} out when nothing is changed`;
  const after = enter && Math.abs(error ?? 0) >= 5e-5 ? `, ${percent(enter.error)} after entering ${enter.number}` : '';
  const against = verdict === 'pass' ? '' : `; ${reasons[0]}`;
  return { ok: true, teeth, from: `auto: the controller expects ${expected}; ${reads}${after}${against}` };
}
