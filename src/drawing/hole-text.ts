/** Hole groups in words, as a fabricator reads them off a drawing. */
import type { Drilling, Feature, Profile } from '../model/part.ts';
import { atan2 } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import { angleText, diameterText, type LabelUnits, lengthText, limitsText } from './length-text.ts';
import { onCircleText, spacingLines } from './spacing-text.ts';
import { slopes } from './turned-profile.ts';

/** Major diameter of a thread designation in mm: "M10x1.5", "7/16-20 UNF", "0.375-24"; null when it cannot be read. */
export function majorOfThread(thread: string): number | null {
  const metric = /^M\s*(\d+(?:\.\d+)?)/i.exec(thread);
  if (metric) return Number(metric[1]);
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)/.exec(thread);
  if (fraction) return (Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])) * 25.4;
  const decimal = /^(\d*\.\d+)/.exec(thread);
  return decimal ? Number(decimal[1]) * 25.4 : null;
}

/** Pocket at one end of a through hole: its diameter and how deep it is, and whether it is a cone. */
function pocket(profile: Profile): { diameter: number; depth: number; cone: boolean; end: 'low' | 'high' } | null {
  const stretches = slopes(profile);
  const first = stretches[0];
  const last = stretches.at(-1);
  if (first === undefined || last === undefined || stretches.length < 2) return null;
  if (first.r0 > last.r1 + 1e-6)
    return {
      diameter: 2 * first.r0,
      depth: first.z1 - first.z0,
      cone: first.r0 - first.r1 > 1e-6,
      end: 'low',
    };
  if (last.r1 > first.r0 + 1e-6)
    return { diameter: 2 * last.r1, depth: last.z1 - last.z0, cone: last.r1 - last.r0 > 1e-6, end: 'high' };
  return null;
}

/** Depth of a blind hole's full diameter, mm; null for a hole that goes right through. */
function blindDepth(profile: Profile): number | null {
  const first = profile[0];
  const last = profile.at(-1);
  if (first === undefined || last === undefined || (first.r > 0 && last.r > 0)) return null;
  const full = slopes(profile).filter((s) => Math.abs(s.r1 - s.r0) < 1e-6);
  const open = last.r > 0 ? last.z : first.z;
  const floors = full.map((s) => (last.r > 0 ? s.z0 : s.z1));
  return floors.length > 0 ? Math.max(...floors.map((z) => Math.abs(open - z))) : null;
}

/** A few short lines: how many of what on which circle; how they stand; how they are made; whose screws use them. Holes as in the joint. */
export function holeGroupLines(feature: Feature, holes: readonly Drilling[], units: LabelUnits): string[] {
  const first = holes[0];
  if (first === undefined) return [feature.label];
  const narrowest =
    Math.min(
      ...slopes(first.profile)
        .flatMap((s) => [s.r0, s.r1])
        .filter((r) => r > 1e-6),
    ) * 2;
  const { limits } = feature;
  const isDowel = feature.purpose === 'dowel hole' && limits !== undefined;
  const zone = isDowel && limits.zone.length <= 4 ? ` ${limits.zone}` : '';
  const size = feature.thread ?? `${diameterText(narrowest, units, isDowel ? 3 : 1)}${zone}`;
  const lines = [`${holes.length} x ${size}${onCircleText(holes, units)}`, ...spacingLines(holes, units)];
  const depth = blindDepth(first.profile);
  const head = pocket(first.profile);
  if (feature.thread !== undefined) {
    lines.push(depth === null ? 'tapped right through' : `tapped, drill ${lengthText(depth, units, 1)} deep`);
  } else if (isDowel) {
    lines.push(limitsText(limits.lower, limits.upper, units));
    const at = withinTurn((atan2(first.y, first.x) * 180) / Math.PI);
    const how = depth === null ? 'right through' : `drill ${lengthText(depth, units, 1)} deep`;
    lines.push(`reamed, ${how}; first at ${angleText(at)}`);
  } else if (head?.cone) lines.push(`countersunk ${diameterText(head.diameter, units, 1)}`);
  else if (head)
    lines.push(`counterbore ${diameterText(head.diameter, units, 1)} x ${lengthText(head.depth, units, 1)} deep`);
  lines.push(feature.label);
  return lines;
}
