/** The wheel's bore, when it is turned to its register after cutting: limits by a tolerance zone, or made to the register. mm. */
import { clearanceRange, type Limits } from '../formulas/fit.ts';
import { howMade, makeToFit } from '../formulas/made-to-fit.ts';
import type { WheelBore } from '../job/joint.ts';
import type { WheelInput } from '../job/schema-wheel.ts';
import { standardTolerance, toleranceLimits } from '../standards/iso286.ts';
import { madeToFit } from './register.ts';
import { type Designed, designed, trouble } from './trouble.ts';

/** Grade of a bore made to its register when no tolerance is asked for: a light last cut. */
const usualGrade = 8;

/** Clearance of a bore as cut where the job leaves it open, at least, mm on the diameter: what a hand slides on. Common practice. */
const leastClearance = 0.05;

/**
 * How much larger than its register a bore is drawn that stays as it is cut, mm on the diameter: the clearance that was typed, or what makes
 * the smallest bore that the service may cut go over the largest register.
 * @param register nominal diameter and limits of what centres the wheel, absolute diameters
 * @param cut what the service holds on a contour, plus or minus mm
 */
export function clearanceAsCut(
  wanted: WheelInput['clearance'],
  register: Limits & { readonly diameter: number },
  cut: number,
): number {
  return wanted === 'auto' ? tidy(Math.max(leastClearance, register.upper - register.diameter + cut)) : wanted;
}

const tidy = (size: number) => Number(size.toFixed(6));

/**
 * Limits of a turned wheel bore, and what they come to on the register.
 * @param register nominal diameter and limits of what centres the wheel, absolute diameters
 * @returns null when the bore stays as it is cut (wheel.fit: auto); troubles on a shaft zone, or beside a given wheel.bore
 */
export function wheelBoreFor(
  wheel: Pick<WheelInput, 'fit' | 'bore' | 'stock'>,
  register: Limits & { readonly diameter: number },
): Designed<WheelBore | null> {
  if (wheel.fit === 'auto') return designed(null);
  if (wheel.bore !== 'auto') {
    return trouble(
      'wheel.bore',
      'A bore turned to its register (wheel.fit) takes its diameter from the register: leave out wheel.bore or wheel.fit.',
    );
  }
  const limits = limitsFor(wheel.fit, register);
  if (!limits.ok) return limits;
  const { lower, upper, zone } = limits.value;
  const { least, greatest } = clearanceRange({ lower, upper }, register);
  const toleranceOf = (grade: number) => {
    const tolerance = standardTolerance(register.diameter, grade);
    return tolerance.ok ? tolerance.value : Number.POSITIVE_INFINITY;
  };
  const { method, gauge, source } = howMade('hole', tidy(upper - lower), toleranceOf);
  return designed({
    limits: { lower, upper, zone },
    least: tidy(least),
    greatest: tidy(greatest),
    method,
    gauge,
    source,
    stock: wheel.stock,
  });
}

function limitsFor(
  fit: Exclude<WheelInput['fit'], 'auto'>,
  register: Limits & { readonly diameter: number },
): Designed<Limits & { readonly zone: string }> {
  if (typeof fit === 'string') {
    if (!/^[A-Z]/.test(fit)) {
      return trouble(
        'wheel.fit',
        `The wheel has a bore, so its fit is a capital-letter hole zone such as H8, not "${fit}".`,
      );
    }
    // A rim that was only measured may be larger than it read: the zone starts where the bore goes over it all the same.
    const nominal = Math.max(register.diameter, Math.ceil(register.upper * 1000 - 1e-6) / 1000);
    const zone = toleranceLimits(nominal, fit);
    if (!zone.ok) return trouble('wheel.fit', zone.why);
    const { lower, upper } = zone.value;
    return designed({ lower: tidy(nominal + lower), upper: tidy(nominal + upper), zone: fit });
  }
  const usual = standardTolerance(register.diameter, usualGrade);
  if (fit.tolerance === undefined && !usual.ok) return trouble('wheel.fit', usual.why);
  const { limits } = makeToFit({
    make: 'recess',
    mate: register,
    wanted:
      fit.interference === undefined
        ? { leastClearance: fit.clearance ?? 0 }
        : { greatestInterference: fit.interference },
    tolerance: fit.tolerance ?? (usual.ok ? usual.value : 0),
  });
  return designed({ ...limits, zone: madeToFit });
}
