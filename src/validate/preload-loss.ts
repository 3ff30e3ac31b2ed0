/** Does enough preload stay, and does heat overload the screw or its seat? */

import { bearingArea } from '../formulas/head-pressure.ts';
import { workingStress } from '../formulas/preload.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { propertyClass } from '../standards/property-classes.ts';
import { findThread } from '../standards/threads.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { type ClampForce, leastClampForce } from './clamp-force.ts';
import { clampedParts, screwSteel, whyNoStack } from './clamped.ts';
import { atLeast, mm, plain } from './words.ts';

/** Half of what the wrench surely gives should stay; without any the screw turns loose. Common practice. */
const stays = 0.5;
/** Growth that differs by less is alike for a joint, 1/K: the figures are not better known. */
const alike = 2e-6;
/** Clamped length from which settling costs little, in diameters. Common practice. */
const slender = 3;

const kN = (value: number) => `${plain(value, 1)} kN`;

const source = 'VDI 2230-1: tightening factor, embedding (roughness Rz 10 to 40, loads across the screw), resilience';

/**
 * The least preload against half of what the wrench surely gives. The wheel's screws carry no torque and are locked, so there the re-torque
 * after the first run is counted on: thin sheet settles away all that a short screw can stretch.
 */
function judgeLeast(joint: Joint, group: ScrewGroup, force: ClampForce): Finding {
  const { side, thread, major } = group;
  const { preload, leastPreload } = group.tightening;
  const retorqued = side === 'wheel' ? force.settles : 0;
  const value = force.left + retorqued;
  const sum = force.steps.map(({ what, kN: change }) => `${what} ${plain(change, 1)}`).join(', ');
  const again =
    retorqued > 0 ? ' The re-torque after the first run brings the settling back, and is counted on here: do it.' : '';
  const thicker =
    side === 'wheel'
      ? ''
      : `adapter.thickness: ${atLeast(joint.adapterSpec.thickness + slender * major - force.clamped)}, `;
  return judged(
    {
      code: `preload-${side}`,
      feature: group.id,
      title: `least preload left in the ${thread} screws, ${side} side${retorqued > 0 ? ', once tightened again' : ''}`,
      unit: 'kN',
      why: `${sum} kN: ${((100 * Math.max(0, force.left)) / (preload ?? 1)).toFixed(0)} % of the assembly preload stays. ${mm(force.clamped, 1)} clamped, ${(force.clamped / major).toFixed(1)} d.${again}`,
      cure: `Clamp more length: ${mm(slender * major, 0)} here, ${slender} d (${thicker}washers, spacers), make the parts of one metal, or count on the re-torque after the first run.`,
      source: `${source}; half of the least assembly preload should stay: common practice`,
    },
    value,
    { limit: stays * (leastPreload ?? 0), sense: 'at least', hard: 0 },
  );
}

/** Heat on a joint of unlike metals. */
function judgeHeat(joint: Joint, group: ScrewGroup, force: ClampForce): Finding[] {
  const { side, thread: name, class: cls, id, tightening } = group;
  const parts = clampedParts(joint, group) ?? [];
  const common = {
    code: `preload-hot-${side}`,
    feature: id,
    title: `${name} screws cold and hot, ${side} side`,
    source: `${source}; thermal expansion of screw and parts`,
  };
  if (!force.heat) {
    const unlike = parts.filter(({ alpha }) => Math.abs(alpha - screwSteel.thermalExpansion) > alike);
    if (unlike.length === 0) return [];
    const why = `Screw and ${unlike.map((part) => part.name).join(' and ')} grow unlike, so the preload changes with heat.`;
    const missing = 'Give duty.temperature: { cold: -20 degC, hot: 80 degC }, the coldest and hottest the joint gets.';
    return [notAssessed({ ...common, why, missing })];
  }
  const thread = findThread(name);
  const strength = propertyClass(cls, group.major);
  if (!thread.ok || !strength.ok) return [];
  const { yieldStrength } = strength.value;
  const stress = workingStress(
    thread.value,
    1000 * force.greatest,
    1000 * (tightening.preload ?? 0),
    tightening.friction,
  );
  const change = (value: number) => `${value >= 0 ? '+' : ''}${plain(value, 1)} kN`;
  const temperature = joint.job.duty?.temperature;
  const why = `Preload ${change(force.heat.cold)} at ${temperature?.cold ?? 20} degC, ${change(force.heat.hot)} at ${temperature?.hot ?? 20} degC; at most ${kN(force.greatest)}, with half the torsion of tightening left.`;
  const cure = `Take stronger screws, or make the adapter of the flange's metal (adapter.material), so that all grow alike.`;
  const screw = judged(
    { ...common, title: `stress in the ${name} screws, cold or hot, ${side} side`, unit: 'MPa', why, cure },
    stress,
    { limit: yieldStrength, sense: 'at most' },
  );
  const seats = (tightening.seats ?? []).flatMap((seat) => {
    if (seat.limit === null) return [];
    const pressure = (1000 * force.greatest) / bearingArea(seat);
    return [
      judged(
        {
          ...common,
          code: `${seat.under}-pressure-hot-${side}`,
          title: `pressure under the ${name} ${seat.under}s, cold or hot, ${side} side`,
          unit: 'MPa',
          why: `${why} ${seat.material} bears ${seat.limit.toFixed(0)} MPa (${seat.how}).`,
          cure: `Put hardened washers under the ${seat.under}s (adapter.${side}.washer: true), or tighten to ${Math.floor((100 * seat.limit) / pressure)} % of the torque.`,
          source: seat.source,
        },
        pressure,
        { limit: seat.limit, sense: 'at most', hard: 1.2 * seat.limit },
      ),
    ];
  });
  return [screw, ...seats];
}

export const preloadLoss: Check = {
  id: 'preload-loss',
  title: 'Preload that stays',
  source: 'VDI 2230-1',
  run: (joint) =>
    joint.screws.flatMap((group) => {
      const force = leastClampForce(joint, group);
      if (force.ok) return [judgeLeast(joint, group, force.value), ...judgeHeat(joint, group, force.value)];
      const missing =
        group.tightening.preload === null
          ? 'It follows from the torque: see the note beside the screws.'
          : whyNoStack(joint, group).missing;
      return [
        notAssessed({
          code: `preload-${group.side}`,
          feature: group.id,
          title: `least preload left in the ${group.thread} screws, ${group.side} side`,
          why: force.why,
          missing,
          source,
        }),
      ];
    }),
};
