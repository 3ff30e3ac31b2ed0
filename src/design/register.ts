/** The adapter's own register on one face: opposite gender, a stated fit, and room so that the faces meet first. */
import type { ResolvedFlange, ResolvedRegister } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import type { RegisterSpec } from '../parts/adapter-spec.ts';
import { toleranceLimits } from '../standards/iso286.ts';
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

/**
 * Register for one side, or null when the flange has none or the job wants none.
 * @returns troubles when the fit zone is unknown or of the wrong kind
 */
export function registerFor(flange: ResolvedFlange, job: JobInput): Designed<RegisterSpec | null> {
  const wanted = job.adapter[flange.side].register;
  const mate = flange.register;
  if (wanted === 'none' || !mate) return designed(null);

  const own = wanted === 'auto' ? {} : wanted;
  const gender = mate.gender === 'male' ? 'female' : 'male';
  const given = own.fit ?? job.adapter[flange.side].fit;
  const path = `adapter.${flange.side}${own.fit === undefined ? '' : '.register'}.fit`;
  const zone = given === 'auto' ? usualFit[gender] : given;
  const isHole = /^[A-Z]/.test(zone);
  if (isHole !== (gender === 'female')) {
    return trouble(
      path,
      gender === 'female'
        ? `The adapter has a recess here, so its fit is a capital-letter hole zone such as H7, not "${zone}".`
        : `The adapter has a spigot here, so its fit is a small-letter shaft zone such as h6, not "${zone}".`,
    );
  }
  const chosen = own.diameter === undefined ? diameterFor(mate, gender, zone) : found(own.diameter);
  if (!chosen.ok) return trouble(path, chosen.why);
  const diameter = chosen.value;
  const limits = toleranceLimits(diameter, zone);
  if (!limits.ok) return trouble(path, limits.why);

  const at = diameter / 2 > outermost(flange) ? ('rim' as const) : ('inner' as const);
  const common = {
    diameter,
    depth: own.depth ?? depthFor(mate, (gender === 'female') === (at === 'inner')),
    limits: { lower: tidy(diameter + limits.value.lower), upper: tidy(diameter + limits.value.upper), zone },
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

/** Drops binary noise: limits are whole micrometres of an exact nominal. */
function tidy(size: number): number {
  return Number(size.toFixed(6));
}
