/** Does the adapter itself carry the torque: twisted at its thinnest section, and sheared from one bolt circle to the other? */

import { cylinderStress, shearYield, torsionStress, uncutRings } from '../formulas/torsion.ts';
import { cylinderArea, type Section, sectionsBetween } from '../geometry/turned-sections.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { screwsOfFace } from '../rotor/joint-face.ts';
import { hypot } from '../units/hypot.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { torqueInWords, torqueMissing, torqueOf } from './duty-torque.ts';
import { mm, plain, sourced } from './words.ts';

/** Safety against yielding under the peak torque. Common practice. */
const safety = 1.5;
/** Cylinders looked at from one bolt circle to the other. */
const cylinders = 60;
/** Bolt circles nearer than this have no ring between them, mm. */
const same = 0.5;

const source = 'textbook torsion; von Mises; a safety of 1.5 on yield is common practice';

/** Statement, limits and verdict that both sums share. */
function against(
  joint: Joint,
  common: { code: string; title: string },
  stress: number,
  why: string,
  cure: string,
): Finding {
  const { yieldStrength, name, memory } = joint.adapterMaterial;
  const hard = shearYield(yieldStrength);
  return judged(
    {
      ...common,
      feature: 'body',
      unit: 'MPa',
      why: `${why} ${name} yields in shear at ${plain(hard, 0)} MPa.`,
      cure,
      source: sourced(source, memory),
    },
    stress,
    { limit: hard / safety, sense: 'at most', hard },
  );
}

/** Stress where the section is weakest, counting only rings that no hole cuts: the holes' surroundings are a reserve. */
function twisted(joint: Joint, sections: readonly Section[], torque: number, words: string): Finding {
  const common = { code: 'torsion', title: 'torsion of the adapter at its thinnest section' };
  const stresses = sections.map((section) => {
    const rings = uncutRings({ inside: 0, outside: section.outside }, section.holes);
    return { section, rings, stress: rings.length === 0 ? null : torsionStress(torque, rings) };
  });
  const broken = stresses.find(({ stress }) => stress === null);
  if (broken) {
    const why = `At a height of ${mm(broken.section.z0)} holes leave no ring uncut.`;
    const missing = 'Part the holes: see the webs. Or have the section worked out by someone who can.';
    return notAssessed({ ...common, feature: 'body', why, missing, source });
  }
  const worst = stresses.reduce((a, b) => ((b.stress ?? 0) > (a.stress ?? 0) ? b : a));
  const rings = worst.rings
    .map(({ inside, outside }) => `${plain(2 * inside, 1)} to ${plain(2 * outside, 1)}`)
    .join(' and ');
  const why = `Under ${words}, ${mm(worst.section.z0)} to ${mm(worst.section.z1)} above the driving face only the rings that no hole cuts are counted: diameter ${rings} mm.`;
  const cure =
    'Take a stronger material (adapter.material), a larger outside (adapter.outside) or a smaller bore (adapter.bore).';
  return against(joint, common, worst.stress ?? 0, why, cure);
}

/** Stress on the weakest cylinder that the torque crosses on its way from one bolt circle to the other. */
function crossed(joint: Joint, sections: readonly Section[], torque: number, words: string): Finding[] {
  const radii = (['driving', 'driven'] as const).flatMap((side) =>
    (screwsOfFace(joint, side)?.positions ?? []).map(({ x, y }) => hypot(x, y)),
  );
  const [from, to] = [Math.min(...radii), Math.max(...radii)];
  if (radii.length === 0 || to - from < same) return [];
  const common = { code: 'ring-shear', title: 'shear of the adapter between the bolt circles' };
  const looked = Array.from({ length: cylinders + 1 }, (_, i) => {
    const radius = from + ((to - from) * i) / cylinders;
    return { radius, area: cylinderArea(sections, radius) };
  });
  const worst = looked.reduce((a, b) => (b.radius * b.area < a.radius * a.area ? b : a));
  if (worst.area <= 0) {
    const why = `At a diameter of ${mm(2 * worst.radius)} holes and rim leave no metal.`;
    return [notAssessed({ ...common, feature: 'body', why, missing: 'Part the holes: see the webs.', source })];
  }
  const why = `${words} passes from ${plain(2 * from, 1)} to ${plain(2 * to, 1)} mm; at ${plain(2 * worst.radius, 1)} mm the holes leave ${plain(worst.area, 0)} mm2 of metal.`;
  const cure = 'Make the adapter thicker (adapter.thickness) or take a stronger material (adapter.material).';
  return [against(joint, common, cylinderStress(torque, worst.radius, worst.area), why, cure)];
}

function judge(joint: Joint): Finding[] {
  const torque = torqueOf(joint);
  if (!torque) {
    const why = 'The stress hangs on the torque.';
    const common = { code: 'torsion', feature: 'body', title: 'torsion of the adapter at its thinnest section' };
    return [notAssessed({ ...common, why, missing: torqueMissing, source })];
  }
  const sections = sectionsBetween(joint.adapter, 0, joint.adapterSpec.thickness);
  const words = torqueInWords(torque);
  return [twisted(joint, sections, torque.value, words), ...crossed(joint, sections, torque.value, words)];
}

export const torsion: Check = {
  id: 'torsion',
  title: 'Torsion of the adapter',
  source: 'textbook torsion; von Mises',
  run: judge,
};
