/** The adapter's own register on one face: opposite gender, a stated fit, and room so that the faces meet first. */
import { clearanceRange } from '../formulas/fit.ts';
import { howMade, makeToFit } from '../formulas/made-to-fit.ts';
import type { Joint, RegisterFit } from '../job/joint.ts';
import type { ResolvedFlange, ResolvedRegister } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import type { MadeToMateInput } from '../job/schema-adapter.ts';
import type { RegisterSpec } from '../parts/adapter-spec.ts';
import { standardTolerance, toleranceLimits } from '../standards/iso286.ts';
import { found, type Lookup } from '../standards/table.ts';
import { outermost } from './layout.ts';
import { type Designed, designed, trouble } from './trouble.ts';

/** How much deeper a recess is than the spigot in it, mm. Common practice; the DIN flange pair 2.3 in 2.5 leaves 0.2 and more. */
export const seatingRoom = 0.3;
/** The least of that room that is left when the mate's depth is doubtful, mm. Common practice. */
const leastSeatingRoom = 0.1;
/** A spigot is never lower than this share of its recess. */
const leastSpigotShare = 0.6;
/** Usual fits of the adapter's own register: a recess H7, a spigot h6 (ISO 286). Common practice for a locating fit. */
const usualFit = { female: 'H7', male: 'h6' } as const;
/** Grade of the tolerance of a register made to its mate, when none is asked for. */
const usualGrade = 6;
/** What stands in place of a tolerance zone where the limits were made to the mate. */
export const madeToFit = 'to fit';
/** Lead chamfer of a spigot, and undercut of its foot, mm. Common practice; on a low spigot they take at most these shares of its height. */
const lead = { size: 0.5, share: 0.2 };
const undercut = { width: 0.8, depth: 0.3, share: 0.25 };
/** A mouth chamfer clears the fillet at the foot of the mating spigot by this much, mm. Common practice. */
const filletRoom = 0.2;

/**
 * Nominal diameter of the adapter's register: the mate's own nominal where a drawing states its zone and the two zones go together,
 * else the size at which this zone just goes together with the mate at its worst, to the safe side of a micrometre.
 */
function diameterFor(mate: ResolvedRegister, gender: 'male' | 'female', zone: string): Lookup<number> {
  const nominal = mate.diameter.value;
  const deviations = toleranceLimits(nominal, zone);
  if (!deviations.ok) return deviations;
  const isRecess = gender === 'female';
  const goesTogether = isRecess
    ? nominal + deviations.value.lower >= mate.limits.upper - 1e-9
    : nominal + deviations.value.upper <= mate.limits.lower + 1e-9;
  if (mate.zone !== null && goesTogether) return found(nominal);
  // A zone that is loose or tight by itself keeps its character: only the mate's own limits are made up for.
  const micrometres = 1000 * (isRecess ? mate.limits.upper : mate.limits.lower);
  return found((isRecess ? Math.ceil(micrometres - 1e-6) : Math.floor(micrometres + 1e-6)) / 1000);
}

/** Nominal diameter and limits of the adapter's register. */
interface Sized {
  readonly diameter: number;
  readonly limits: RegisterSpec['limits'];
}

/** Limits of a tolerance zone on a diameter that is given, or suits the mate. */
function sizedByZone(
  mate: ResolvedRegister,
  gender: 'male' | 'female',
  zone: string,
  given: number | undefined,
  path: string,
): Designed<Sized> {
  const isHole = /^[A-Z]/.test(zone);
  if (isHole !== (gender === 'female')) {
    return trouble(
      path,
      gender === 'female'
        ? `The adapter has a recess here, so its fit is a capital-letter hole zone such as H7, not "${zone}".`
        : `The adapter has a spigot here, so its fit is a small-letter shaft zone such as h6, not "${zone}".`,
    );
  }
  const chosen = given === undefined ? diameterFor(mate, gender, zone) : found(given);
  if (!chosen.ok) return trouble(path, chosen.why);
  const diameter = chosen.value;
  const limits = toleranceLimits(diameter, zone);
  if (!limits.ok) return trouble(path, limits.why);
  const { lower, upper } = limits.value;
  return designed({ diameter, limits: { lower: tidy(diameter + lower), upper: tidy(diameter + upper), zone } });
}

/**
 * Limits made to the mate as it was measured, its doubt counted. The nominal is the limit nearest to the mate, as with H and h.
 * @param given diameter asked for beside it: the mate and a diameter cannot both decide
 */
function sizedToMate(
  mate: ResolvedRegister,
  gender: 'male' | 'female',
  wanted: MadeToMateInput,
  given: number | undefined,
  side: string,
): Designed<Sized> {
  const path = `adapter.${side}.fit`;
  if (given !== undefined) {
    return trouble(
      `adapter.${side}.register.diameter`,
      `A register made to the measured mate (${path}) takes its diameter from the mate: leave out one of the two.`,
    );
  }
  const usual = standardTolerance(mate.diameter.value, usualGrade);
  if (wanted.tolerance === undefined && !usual.ok) return trouble(path, usual.why);
  const { limits } = makeToFit({
    make: gender === 'female' ? 'recess' : 'spigot',
    mate: mate.limits,
    wanted:
      wanted.interference === undefined
        ? { leastClearance: wanted.clearance ?? 0 }
        : { greatestInterference: wanted.interference },
    tolerance: wanted.tolerance ?? (usual.ok ? usual.value : 0),
  });
  return designed({
    diameter: gender === 'female' ? limits.lower : limits.upper,
    limits: { ...limits, zone: madeToFit },
  });
}

/**
 * Register for one side, or null when the flange has none or the job wants none.
 * @returns troubles when the fit zone is unknown or of the wrong kind, or a diameter is asked for beside a fit made to the mate
 */
export function registerFor(flange: ResolvedFlange, job: JobInput): Designed<RegisterSpec | null> {
  const { side } = flange;
  const wanted = job.adapter[side].register;
  const mate = flange.register;
  if (wanted === 'none' || !mate) return designed(null);

  const own = wanted === 'auto' ? {} : wanted;
  const gender = mate.gender === 'male' ? 'female' : 'male';
  const given = own.fit ?? job.adapter[side].fit;
  const path = `adapter.${side}${own.fit === undefined ? '' : '.register'}.fit`;
  const sized =
    typeof given === 'object'
      ? sizedToMate(mate, gender, given, own.diameter, side)
      : sizedByZone(mate, gender, given === 'auto' ? usualFit[gender] : given, own.diameter, path);
  if (!sized.ok) return sized;
  const { diameter, limits } = sized.value;

  const at = diameter / 2 > outermost(flange) ? ('rim' as const) : ('inner' as const);
  const common = {
    diameter,
    depth: own.depth ?? depthFor(mate, (gender === 'female') === (at === 'inner')),
    limits,
    at,
  };
  if (gender === 'female') {
    const mouth = Math.max(lead.size, mate.corner === 0 ? 0 : mate.corner + filletRoom);
    return designed({ ...common, gender, chamfer: Math.min(mouth, common.depth * 0.8), undercut: null });
  }
  const foot =
    common.at === 'rim'
      ? null
      : { width: Math.min(undercut.width, common.depth * undercut.share), depth: undercut.depth };
  return designed({ ...common, gender, chamfer: Math.min(lead.size, common.depth * lead.share), undercut: foot });
}

/**
 * Depth of the adapter's own register so that the bolting faces meet first, hundredths of a mm. Inside the bolts it is the spigot that
 * must stop short of the recess's floor. On the rim the bolting faces lie inside the register, and it is the ring that must stop short
 * of the step round it: a step is turned deeper than the flange's ring is high, a ring lower than the flange's boss.
 * @param isDeeper true for a recess inside the bolts and for a step on the rim
 */
function depthFor({ depth }: ResolvedRegister, isDeeper: boolean): number {
  const room = Math.max(seatingRoom, depth.doubt + leastSeatingRoom);
  if (isDeeper) return Math.ceil((depth.value + room) * 100 - 1e-6) / 100;
  // A shallow recess still gets a spigot that can be turned and measured.
  return Math.floor(Math.max(depth.value - room, depth.value * leastSpigotShare) * 100 + 1e-6) / 100;
}

/**
 * What a side's register comes to: least and greatest clearance (mm, diametral; the doubt of the mate counted), and how a shop
 * reaches the adapter's limits. Null where either half has none, or both have one gender.
 */
export function registerFit(own: RegisterSpec | null, mate: ResolvedRegister | null): RegisterFit | null {
  if (!own || !mate || own.gender === mate.gender) return null;
  const isRecess = own.gender === 'female';
  const { least, greatest } = isRecess
    ? clearanceRange(own.limits, mate.limits)
    : clearanceRange(mate.limits, own.limits);
  const { method, gauge, source } = howMade(
    isRecess ? 'hole' : 'shaft',
    tidy(own.limits.upper - own.limits.lower),
    (grade) => {
      const tolerance = standardTolerance(own.diameter, grade);
      return tolerance.ok ? tolerance.value : Number.POSITIVE_INFINITY;
    },
  );
  return { least: tidy(least), greatest: tidy(greatest), method, gauge, source };
}

/** The joint with what both of its registers come to. */
export function fitted(joint: Joint): Joint {
  const { driving, driven } = joint.adapterSpec.registers;
  return {
    ...joint,
    fits: {
      driving: registerFit(driving, joint.driving.register),
      driven: registerFit(driven, joint.driven.register),
    },
  };
}

/** Drops binary noise: limits are whole micrometres of an exact nominal. */
function tidy(size: number): number {
  return Number(size.toFixed(6));
}
