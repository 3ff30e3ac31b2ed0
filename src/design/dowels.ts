/** A side's dowels before they are placed: the pin, the fit of both its holes, how long it is and how deep it goes. */
import { clearanceRange, type Limits } from '../formulas/fit.ts';
import { howMade, largestReamer, makeToFit } from '../formulas/made-to-fit.ts';
import type { DowelFit } from '../job/joint-dowels.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import { type DowelsInput, dowelHoleGrade } from '../job/schema-dowels.ts';
import { type DowelPin, dowelPin, thickestDowelPin } from '../standards/dowel-pins.ts';
import { standardTolerance, toleranceLimits } from '../standards/iso286.ts';
import { drillPointHeight } from '../standards/tap-depth.ts';
import type { Fixing } from './fixing.ts';
import { madeToFit } from './register.ts';
import { type Designed, designed, trouble } from './trouble.ts';

/** Usual zone of a dowel hole: a pin m6 goes in with a light press. Common practice. */
const usualZone = 'H7';
/** Least clearance of a pin in a hole that it slides into, mm. Common practice. */
const slide = 0.005;
/** Wanted length of a pin: this many diameters, half in each part. Common practice: 1 to 1.5 diameters in each. */
const usualLength = 3;
/** A pin stays this far below the free end of its hole, mm: below a flange's back, an adapter's far face, above a hole's bottom. */
export const pinRoom = 0.5;
/** A reamer cuts its full size this far short of the drilled depth, mm. Common practice: its lead. */
const reamerLead = (d: number) => Math.max(2, 0.3 * d);

/** Everything about a side's dowels but where they stand. */
export interface DowelPlan {
  readonly side: 'driving' | 'driven';
  readonly wish: DowelsInput;
  readonly pin: DowelPin;
  readonly fits: { readonly adapter: DowelFit; readonly flange: DowelFit };
}

/** What `dowels: auto` means. */
export const autoDowels: DowelsInput = {
  size: 'auto',
  count: 2,
  circle: 'auto',
  first: 'auto',
  length: 'auto',
  fit: 'auto',
  reamed: 'together',
};

/** The dowels that a side's job asks for; null for none. */
export function dowelsAsked(job: JobInput, side: 'driving' | 'driven'): DowelsInput | null {
  const asked = job.adapter[side].dowels;
  return asked === undefined || asked === 'none' ? null : asked === 'auto' ? autoDowels : asked;
}

/** The thickest pin no thicker than the screws that still sits one diameter deep in a flange whose thickness is known. */
function usualPin({ side, thickness }: ResolvedFlange, major: number): Designed<DowelPin> {
  const first = thickestDowelPin(major);
  if (!first.ok) return trouble(`adapter.${side}.dowels.size`, `The screws are thinner than any pin. ${first.why}`);
  let pin = first.value;
  while (thickness !== null && thickness.value < pin.d + pin.chamfer + pinRoom) {
    const thinner = thickestDowelPin(pin.d - 0.5);
    if (!thinner.ok) break;
    pin = thinner.value;
  }
  return designed(pin);
}

const tidy = (size: number) => Number(size.toFixed(6));
const toleranceOf = (size: number) => (grade: number) => {
  const tolerance = standardTolerance(size, grade);
  return tolerance.ok ? tolerance.value : Number.POSITIVE_INFINITY;
};

/** A reamer cuts over its size by about this much, mm. Common practice. */
const overSize = 0.004;

/** The reamer in whole hundredths for a hole: one whose over-size still lies within the limits where there is one. mm. */
function reamerFor({ lower, upper }: Limits): number | null {
  const hundredths = [upper - overSize, upper].map((size) => Math.floor(size * 100 + 1e-6) / 100);
  return hundredths.find((size) => size >= lower - 1e-9) ?? null;
}

/** A hole's limits with its clearance on the pin and the way of making it. */
function fitOf(pin: DowelPin, limits: Limits, zone: string): DowelFit {
  const { least, greatest } = clearanceRange(limits, pin.limits);
  const tolerance = tidy(limits.upper - limits.lower);
  const isUsual = tidy(limits.lower - pin.d) === 0 && tolerance >= tidy(toleranceOf(pin.d)(dowelHoleGrade));
  const way = howMade('hole', tolerance, toleranceOf(pin.d), isUsual ? pin.d : undefined);
  const reamer = reamerFor(limits);
  const reach = !isUsual && way.grade !== null && way.grade >= dowelHoleGrade && pin.d <= largestReamer;
  const byHundredths = {
    method:
      reamer !== null
        ? `drilled 0.2 to 0.3 under size and reamed ${reamer.toFixed(2)} (reamers are sold in hundredths)`
        : 'drilled 0.2 to 0.3 under size and opened with an adjustable reamer',
    gauge: 'plug gauge, or a pin of known size',
  };
  return {
    limits: { ...limits, zone },
    least: tidy(least),
    greatest: tidy(greatest),
    method: reach ? byHundredths.method : way.method,
    gauge: reach ? byHundredths.gauge : way.gauge,
    source: way.source,
  };
}

/** Fit of the holes in the adapter: H7, the zone asked for, or made to the pin. */
function adapterFit(pin: DowelPin, { fit }: DowelsInput, side: string): Designed<DowelFit> {
  const path = `adapter.${side}.dowels.fit`;
  if (typeof fit === 'object') {
    const { limits } = makeToFit({
      make: 'recess',
      mate: pin.limits,
      wanted:
        fit.interference === undefined
          ? { leastClearance: fit.clearance ?? 0 }
          : { greatestInterference: fit.interference },
      tolerance: fit.tolerance ?? toleranceOf(pin.d)(dowelHoleGrade),
    });
    return designed(fitOf(pin, limits, madeToFit));
  }
  const zone = fit === 'auto' ? usualZone : fit;
  if (!/^[A-Z]/.test(zone)) {
    return trouble(
      path,
      `A dowel sits in a hole, so its fit is a capital-letter hole zone such as H7, not "${zone}"; the pin itself is m6.`,
    );
  }
  const limits = toleranceLimits(pin.d, zone);
  if (!limits.ok) return trouble(path, limits.why);
  const { lower, upper } = limits.value;
  return designed(fitOf(pin, { lower: tidy(pin.d + lower), upper: tidy(pin.d + upper) }, zone));
}

/** Fit of the holes in the flange: as measured, of the same reamer, or slid into. */
function flangeFit(pin: DowelPin, { flange, reamed }: DowelsInput, inAdapter: DowelFit): DowelFit {
  if (flange) {
    const limits = { lower: tidy(flange.value - flange.doubt), upper: tidy(flange.value + flange.doubt) };
    const { least, greatest } = clearanceRange(limits, pin.limits);
    const there = { method: 'holes that are there', gauge: 'as measured', source: 'measured' };
    return { limits: { ...limits, zone: 'as measured' }, least: tidy(least), greatest: tidy(greatest), ...there };
  }
  if (reamed === 'together') return inAdapter;
  const tolerance = toleranceOf(pin.d)(dowelHoleGrade);
  const { limits } = makeToFit({ make: 'recess', mate: pin.limits, wanted: { leastClearance: slide }, tolerance });
  return fitOf(pin, limits, madeToFit);
}

/** Keys of holes that the flange has already: where they stand cannot be chosen, and they cannot be reamed with the adapter. */
function wishTrouble({ flange, circle, first, reamed }: DowelsInput, side: string): Designed<null> {
  if (!flange) return designed(null);
  const path = `adapter.${side}.dowels`;
  if (circle === 'auto' || first === 'auto') {
    const key = circle === 'auto' ? 'circle' : 'first';
    return trouble(
      `${path}.${key}`,
      `The ${side} flange has its dowel holes already (${path}.flange), so say where they stand: give circle and first.`,
    );
  }
  if (reamed === 'together') {
    return trouble(
      `${path}.reamed`,
      `The ${side} flange has its dowel holes already (${path}.flange), so they are not reamed together with the adapter. Write reamed: separately, or leave out flange.`,
    );
  }
  return designed(null);
}

/**
 * The dowels of a side, or null when the job asks for none.
 * @param fixing the screws that hold the side: a pin is no thicker than they are
 */
export function planDowels(flange: ResolvedFlange, job: JobInput, fixing: Fixing): Designed<DowelPlan | null> {
  const { side } = flange;
  const wish = dowelsAsked(job, side);
  if (!wish) return designed(null);
  const told = wishTrouble(wish, side);
  if (!told.ok) return told;
  if (wish.size === 'auto' && wish.flange) {
    return trouble(
      `adapter.${side}.dowels.size`,
      `The ${side} flange has dowel holes of ${wish.flange.value} mm: say which pin goes in (size: ${Math.floor(wish.flange.value + 0.05)} mm).`,
    );
  }
  const found = wish.size === 'auto' ? usualPin(flange, fixing.thread.d) : listedPin(wish.size, side);
  if (!found.ok) return found;
  const pin = found.value;
  const adapter = adapterFit(pin, wish, side);
  if (!adapter.ok) return adapter;
  return designed({ side, wish, pin, fits: { adapter: adapter.value, flange: flangeFit(pin, wish, adapter.value) } });
}

function listedPin(size: number, side: string): Designed<DowelPin> {
  const pin = dowelPin(size);
  return pin.ok ? designed(pin.value) : trouble(`adapter.${side}.dowels.size`, pin.why);
}

/** How a pin lies in its two holes, mm. */
export interface DowelLength {
  readonly length: number;
  readonly isStandard: boolean;
  readonly inside: { readonly adapter: number; readonly flange: number };
}

/** A pin of this length: half in the flange, as far as that is thick, the rest in the adapter, as far as that is. */
function laid(length: number, inFlange: number, inAdapter: number): DowelLength['inside'] {
  const adapter = Math.min(length - Math.min(length / 2, inFlange), inAdapter);
  return { adapter: tidy(adapter), flange: tidy(length - adapter) };
}

/**
 * Length of the pins: as asked for, or the longest standard length up to 3 diameters that neither part is too thin for; the
 * shortest there is where every one is too long.
 */
export function dowelLength({ pin, wish }: DowelPlan, flange: ResolvedFlange, thickness: number): DowelLength {
  const inFlange = flange.thickness === null ? Number.POSITIVE_INFINITY : flange.thickness.value - pinRoom;
  const inAdapter = thickness - pinRoom;
  const lay = (length: number) => ({
    length,
    isStandard: pin.lengths.includes(length),
    inside: laid(length, inFlange, inAdapter),
  });
  if (wish.length !== 'auto') return lay(wish.length);
  const fitting = pin.lengths.filter(
    (length) => length <= usualLength * pin.d + 1e-9 && lay(length).inside.flange <= inFlange + 1e-9,
  );
  return lay(fitting.at(-1) ?? (pin.lengths[0] as number));
}

/** Full depth of a blind hole for a pin that goes this deep, mm, and the depth of its drill's point; both from the face. */
export function blindDowelHole({ d }: DowelPin, inAdapter: number): { readonly full: number; readonly tip: number } {
  const full = Math.ceil((inAdapter + pinRoom + reamerLead(d)) * 2 - 1e-9) / 2;
  return { full, tip: full + drillPointHeight(d) };
}
