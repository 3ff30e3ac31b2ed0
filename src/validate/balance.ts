/** Unbalance that the parts carry by their shape alone. */
import { permissibleUnbalance, twoPlaneUnbalance } from '../formulas/balance.ts';
import { profileMass } from '../geometry/turned-mass.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import type { MassProperties } from '../model/mass.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { type Check, judged, notAssessed } from './check.ts';

interface Spinning {
  readonly id: string;
  readonly feature: string;
  readonly name: string;
  readonly mass: MassProperties;
  readonly low: number;
  readonly high: number;
  readonly blame: string;
}

/** The hole group of the adapter that pulls hardest to one side, in words. */
function spoiler(joint: Joint): string {
  const { adapter } = joint;
  const pulls = adapter.features.flatMap((feature) => {
    const taken = adapter.drillings
      .filter((d) => d.feature === feature.id)
      .map((d) => ({ d, mass: profileMass(d.profile, adapter.material.density).mass }));
    const x = taken.reduce((sum, { d, mass }) => sum + mass * d.x, 0);
    const y = taken.reduce((sum, { d, mass }) => sum + mass * d.y, 0);
    return taken.length > 0 ? [{ label: feature.label, pull: Math.hypot(x, y) }] : [];
  });
  const worst = pulls.reduce((a, b) => (b.pull > a.pull ? b : a), { label: '', pull: 0 });
  return worst.pull > 1e-6 ? `Most of it comes from: ${worst.label} (${worst.pull.toFixed(1)} g.mm).` : 'Its holes and flats are symmetrical.';
}

function spinning(joint: Joint): Spinning[] {
  const z = joint.adapter.outer.map((point) => point.z);
  const parts: Spinning[] = [
    {
      id: 'adapter',
      feature: 'body',
      name: 'adapter',
      mass: joint.adapterMass,
      low: Math.min(...z),
      high: Math.max(...z),
      blame: spoiler(joint),
    },
  ];
  if (joint.wheel && joint.wheelMass && joint.wheelZ !== null) {
    const missing = joint.wheelSpec?.missing ?? 0;
    parts.push({
      id: 'wheel',
      feature: 'wheel-outline',
      name: 'wheel',
      mass: joint.wheelMass,
      low: joint.wheelZ,
      high: joint.wheelZ + joint.wheel.thickness,
      blame: missing > 0 ? `The ${missing} missing teeth leave one side light.` : 'Its teeth and holes are symmetrical.',
    });
  }
  return parts;
}

function judgePart(part: Spinning, joint: Joint): Finding[] {
  const { duty } = joint.job;
  const { mass, name } = part;
  const [cx, cy] = mass.centre;
  const own = mass.mass * Math.hypot(cx, cy);
  const common = { feature: part.feature, source: 'ISO 21940-11; textbook two-plane statics' };
  if (duty?.speed === undefined) {
    return [
      notAssessed({
        ...common,
        code: `balance-${part.id}`,
        title: `balance of the ${name} by shape`,
        why: `Its shape alone is ${own.toFixed(2)} g.mm out. ${part.blame} How much is allowed hangs on the speed.`,
        missing: 'Give duty.speed: the highest speed this shaft ever turns.',
      }),
    ];
  }
  const grade = must(balanceGrade(duty.grade));
  const allowed = permissibleUnbalance(mass.mass, grade.G, duty.speed);
  const planes = twoPlaneUnbalance(mass, part.low, part.high);
  const worstPlane = Math.max(Math.hypot(planes.low.x, planes.low.y), Math.hypot(planes.high.x, planes.high.y));
  const at = `${grade.name} at ${duty.speed} rpm`;
  return [
    judged(
      {
        ...common,
        code: `balance-${part.id}`,
        title: `static unbalance of the ${name} by shape`,
        unit: 'g.mm',
        why: `A perfectly made ${name} of ${(mass.mass / 1000).toFixed(3)} kg, against ${at}. ${part.blame}`,
        cure: 'Make the pattern symmetrical, add an opposite flat or hole, or drill the heavy side.',
      },
      own,
      { limit: allowed, sense: 'at most' },
    ),
    judged(
      {
        ...common,
        code: `couple-${part.id}`,
        title: `unbalance of the ${name} in its worse end plane`,
        unit: 'g.mm',
        why: `Static and couple unbalance together, split into the two end planes; each may carry half of ${at}.`,
        cure: 'Put equal holes on both faces, or correct in two planes.',
      },
      worstPlane,
      { limit: allowed / 2, sense: 'at most' },
    ),
  ];
}

export const balance: Check = {
  id: 'balance',
  title: 'Balance by shape',
  source: 'ISO 21940-11',
  run: (joint) => spinning(joint).flatMap((part) => judgePart(part, joint)),
};
