/** The adapter's own register on one face: opposite gender, a stated fit, and room so that the faces meet first. */
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import type { RegisterSpec } from '../parts/adapter-spec.ts';
import { toleranceLimits } from '../standards/iso286.ts';
import { type Designed, designed, trouble } from './trouble.ts';

/** How much deeper a recess is than the spigot in it, mm. Common practice; the DIN flange pair 2.3 in 2.5 leaves 0.2 and more. */
export const seatingRoom = 0.3;
/** Usual fits of the adapter's own register: a recess H7, a spigot h6 (ISO 286). Common practice for a locating fit. */
const usualFit = { female: 'H7', male: 'h6' } as const;
/** Lead chamfer of a spigot, and undercut of its foot, mm. Common practice; on a low spigot they take at most these shares of its height. */
const lead = { size: 0.5, share: 0.2 };
const undercut = { width: 0.8, depth: 0.3, share: 0.25 };
/** A mouth chamfer clears the fillet at the foot of the mating spigot by this much, mm. Common practice. */
const filletRoom = 0.2;

/**
 * Register for one side, or null when the flange has none or the job wants none.
 * @returns troubles when the fit zone is unknown or of the wrong kind
 */
export function registerFor(flange: ResolvedFlange, job: JobInput): Designed<RegisterSpec | null> {
  const wanted = job.adapter[flange.side].register;
  const mate = flange.register;
  if (wanted === 'none' || !mate) return designed(null);

  const own = wanted === 'auto' ? {} : wanted;
  const path = `adapter.${flange.side}.fit`;
  const gender = mate.gender === 'male' ? 'female' : 'male';
  const given = own.fit ?? job.adapter[flange.side].fit;
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
  // Without a known fit zone the mate's limits are the reading and its doubt; the register is made to go together even then.
  const toGoTogether = gender === 'female' ? mate.limits.upper : mate.limits.lower;
  const diameter = own.diameter ?? (mate.zone === null ? Math.round(toGoTogether * 1000) / 1000 : mate.diameter.value);
  const limits = toleranceLimits(diameter, zone);
  if (!limits.ok) return trouble(path, limits.why);

  const depth = own.depth ?? (gender === 'female' ? mate.depth.value + seatingRoom : Math.max(mate.depth.value - seatingRoom, mate.depth.value * 0.6));
  const rounded = Math.round(depth * 100) / 100;
  const common = {
    diameter,
    depth: rounded,
    limits: { lower: diameter + limits.value.lower, upper: diameter + limits.value.upper, zone },
    at: flange.holes.circle !== null && diameter > flange.holes.circle ? ('rim' as const) : ('inner' as const),
  };
  if (gender === 'female') {
    return designed({ ...common, gender, chamfer: Math.min(Math.max(lead.size, mate.corner + filletRoom), rounded * 0.8), undercut: null });
  }
  const foot = common.at === 'rim' ? null : { width: Math.min(undercut.width, rounded * undercut.share), depth: undercut.depth };
  return designed({ ...common, gender, chamfer: Math.min(lead.size, rounded * lead.share), undercut: foot });
}
