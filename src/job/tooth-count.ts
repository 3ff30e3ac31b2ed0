/**
 * Which tooth counts the wheel may have: what the controller expects, held against sensor, rim and sheet, ranked.
 *
 * The wheel's outside, tooth height and ratio stay as typed: what changes with the count is the width of teeth and valleys, the
 * frequency, and what the controller then reads.
 */
import { readingError, toothFrequency } from '../formulas/pulses.ts';
import type { Verdict } from '../model/finding.ts';
import { hasWindows, type ToneWheelSpec, toneWheelFaults, toothMeasures } from '../parts/tone-wheel.ts';
import { sheetLimit } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { type PulsesWanted, pulsesWanted } from './pulses-wanted.ts';
import type { JobInput } from './schema.ts';
import type { WheelInput } from './schema-wheel.ts';
import { type SensorNeeds, sensorNeeds } from './sensor-needs.ts';
import { demandVerdict, toothDemands } from './tooth-demands.ts';
import { bandOf } from './wheel-form.ts';

/** One count, its teeth, and what comes of it. mm. */
export interface ToothCandidate {
  readonly teeth: number;
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
function outlineOf(wheel: WheelInput, teeth: number): ToneWheelSpec {
  const band = bandOf(wheel);
  return {
    id: 'wheel',
    name: '',
    material: { id: '', name: '', density: 1 },
    thickness: wheel.thickness,
    teeth,
    missing: wheel.missing,
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
  const narrowest = Math.min(sizes.toothRootChord, sizes.toothChord, sizes.valleyRootArc, sizes.valleyChord);
  if (narrowest < slot.usual - 1e-6) {
    const verdict = narrowest < slot.loosest - 1e-6 ? 'fail' : 'caution';
    said.push({
      verdict,
      why: `narrowest ${hasWindows(spec) ? 'bar or window' : 'tooth or valley'} ${mm(narrowest)}, the sheet wants ${mm(slot.usual)}`,
    });
  }
  const fastest = duty?.speed === undefined ? null : toothFrequency(spec.teeth, duty.speed);
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
export function toothCandidate(job: CountJob, teeth: number): ToothCandidate | null {
  const { wheel, sensor } = job;
  if (!wheel || teeth <= wheel.missing) return null;
  const spec = outlineOf(wheel, teeth);
  if (toneWheelFaults(spec).length > 0) return null;
  const { toothChord, valleyChord, pitch } = toothMeasures(spec);
  const wanted = pulsesWanted(job);
  const made = teeth - wheel.missing;
  const error = wanted?.ok ? readingError(made, wanted.value.perTurn) : null;
  const enter = wanted?.ok ? entry(made, wanted.value, sensor?.expects) : null;
  const said = [
    ...objections(spec, sensor ? sensorNeeds(sensor) : null, job),
    ...(error !== null && enter === null ? misreading(error) : []),
  ].sort((a, b) => rankOf[b.verdict] - rankOf[a.verdict]);
  return {
    teeth,
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
 * to be changed. Empty where nothing is expected.
 */
export function toothCandidates(job: CountJob): ToothCandidate[] {
  const wanted = pulsesWanted(job);
  if (!job.wheel || !wanted?.ok) return [];
  const places = wanted.value.perTurn + job.wheel.missing;
  const near = [places, 2 * places, places / 2].flatMap((middle) =>
    [-2, -1, 0, 1, 2].map((step) => Math.round(middle) + step),
  );
  const canBeTold = job.sensor?.expects?.adjustable !== false;
  const counts = new Set([...near, ...(canBeTold ? usualCounts : [])]);
  return [...counts]
    .filter((count) => count >= fewest && count <= most)
    .sort((a, b) => a - b)
    .flatMap((count) => toothCandidate(job, count) ?? [])
    .sort((a, b) => rankOf[a.verdict] - rankOf[b.verdict] || left(a) - left(b) || unchanged(a) - unchanged(b));
}

export type ToothChoice =
  | { readonly ok: true; readonly teeth: number; readonly from: string }
  | { readonly ok: false; readonly path: string; readonly message: string };

/** The count of `wheel.teeth: auto`, with its reason; or what is missing. */
export function chooseTeeth(job: CountJob): ToothChoice {
  const wanted = pulsesWanted(job);
  if (wanted === null) {
    const message =
      'auto needs to know what the controller expects: give sensor.expects: { pulses: 60, per: shaft }, or sensor.was: { teeth: 44, ratio: 1 } and sensor.axle.';
    return { ok: false, path: 'wheel.teeth', message };
  }
  if (!wanted.ok) return { ok: false, path: 'wheel.teeth', message: `auto is not enough yet. ${wanted.missing}` };
  const [best] = toothCandidates(job);
  if (!best) {
    const per = Number(wanted.value.perTurn.toPrecision(4));
    const message = `The controller expects ${per} pulses in a turn of this shaft; no count near that can be drawn on a wheel of ${job.wheel?.outside} mm. Give a count, or a larger wheel.outside.`;
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
