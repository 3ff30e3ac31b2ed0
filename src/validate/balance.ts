/** Unbalance that the parts carry by their shape alone, and the hole group that spoils the symmetry. */

import { permissibleUnbalance, twoPlaneUnbalance } from '../formulas/balance.ts';
import { profileMass } from '../geometry/turned-mass.ts';
import type { Joint } from '../job/joint.ts';
import { toothWords } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import type { MassProperties } from '../model/mass.ts';
import { markOf, type ToneWheelSpec } from '../parts/tone-wheel.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { hypot } from '../units/hypot.ts';
import { adapterCorrection, wheelCorrection } from './balance-cure.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { plural } from './words.ts';

/** A hole group's pull to one side, g.mm, and what one of its holes pulls. */
interface Pull {
  readonly id: string;
  readonly label: string;
  readonly pull: number;
  readonly one: number;
}

/** A group counts as symmetrical up to this share of one of its holes. Common practice. */
const symmetricalShare = 0.05;

/** How hard each group of off-axis holes pulls. Statics: each hole takes its mass away at its own place. */
function pulls({ adapter }: Joint): Pull[] {
  return adapter.features.flatMap((feature) => {
    const taken = adapter.drillings
      .filter((d) => d.feature === feature.id && hypot(d.x, d.y) > 0)
      .map((d) => ({ ...d, mass: profileMass(d.profile, adapter.material.density).mass }));
    if (taken.length === 0) return [];
    const x = taken.reduce((sum, d) => sum + d.mass * d.x, 0);
    const y = taken.reduce((sum, d) => sum + d.mass * d.y, 0);
    const one = Math.max(...taken.map((d) => d.mass * hypot(d.x, d.y)));
    return [{ id: feature.id, label: feature.label, pull: hypot(x, y), one }];
  });
}

const worstPull = (joint: Joint) => pulls(joint).reduce<Pull | null>((a, b) => (a && a.pull >= b.pull ? a : b), null);

function symmetry(joint: Joint): Finding[] {
  const worst = worstPull(joint);
  if (!worst) return [];
  return [
    judged(
      {
        code: 'symmetry',
        feature: worst.id,
        title: 'pull of the most lopsided group of holes',
        unit: 'g.mm',
        why: `This is the group that spoils the symmetry most: ${worst.label}. One of its holes takes ${worst.one.toFixed(1)} g.mm away.`,
        cure: 'Drill the holes that are missing to an even pattern, or the same hole opposite, if the flange allows it. Else correct it: see balance.',
        source: 'statics; a twentieth of one hole counts as even, common practice',
      },
      worst.pull,
      { limit: symmetricalShare * worst.one, sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** What of the wheel's shape pulls to one side. */
function wheelBlame(spec: ToneWheelSpec | null): string {
  const words = toothWords(spec ?? {});
  const mark = spec && markOf(spec);
  if (!mark) return `Its ${words.teeth} and holes are symmetrical.`;
  if (mark.kind === 'missing')
    return `The gap of ${plural(mark.count, `missing ${words.tooth}`, `missing ${words.teeth}`)} leaves that side light.`;
  const what = mark.kind === 'wide' ? `wide ${words.tooth}, ${mark.count + 1} places long,` : `extra ${words.tooth}`;
  return `The ${what} makes that side heavy.`;
}

/** What of the wheel's shape could be left out instead of being corrected. */
function wheelInstead(spec: ToneWheelSpec | null): string {
  const words = toothWords(spec ?? {});
  const mark = spec && markOf(spec);
  if (!mark) return 'Or make the pattern symmetrical.';
  const all =
    mark.kind === 'missing'
      ? `keep all ${words.teeth} (wheel.missing: 0)`
      : `leave the mark out (wheel.${mark.kind}: 0)`;
  return `Or ${all}, if the controller needs no mark.`;
}

interface Spinning {
  readonly id: 'adapter' | 'wheel';
  readonly feature: string;
  readonly mass: MassProperties;
  readonly low: number;
  readonly high: number;
  readonly blame: string;
  /** What to take off, and where. */
  readonly correction: () => string;
  /** What would cure it at its cause: its static unbalance, and what it does to its two ends. */
  readonly instead: string;
  readonly coupleCure: (worseEnd: string) => string;
}

function spinning(joint: Joint): Spinning[] {
  const z = joint.adapter.outer.map((point) => point.z);
  const worst = worstPull(joint);
  const isEven = !worst || worst.pull <= symmetricalShare * worst.one;
  const parts: Spinning[] = [
    {
      id: 'adapter',
      feature: 'body',
      mass: joint.adapterMass,
      low: Math.min(...z),
      high: Math.max(...z),
      blame: isEven ? 'Its holes and flats are symmetrical.' : `Most of it comes from: ${worst.label}.`,
      correction: () => adapterCorrection(joint),
      instead: 'Or make the pattern symmetrical.',
      coupleCure: (worseEnd) =>
        `Have it balanced in two planes, or make both faces alike. The ${worseEnd} end is the worse.`,
    },
  ];
  if (joint.wheel && joint.wheelMass && joint.wheelZ !== null) {
    parts.push({
      id: 'wheel',
      feature: 'wheel-outline',
      mass: joint.wheelMass,
      low: joint.wheelZ,
      high: joint.wheelZ + joint.wheel.thickness,
      blame: wheelBlame(joint.wheelSpec),
      correction: () => wheelCorrection(joint),
      instead: wheelInstead(joint.wheelSpec),
      coupleCure: () =>
        `${wheelCorrection(joint)}. ${wheelInstead(joint.wheelSpec)} A sheet that is cut straight through pulls at both its faces alike: what evens it out in one plane does so here.`,
    });
  }
  return parts;
}

function judgePart(part: Spinning, joint: Joint): Finding[] {
  const { duty } = joint.job;
  const { mass, id } = part;
  const own = mass.mass * hypot(mass.centre[0], mass.centre[1]);
  const source = 'ISO 21940-11; textbook two-plane statics';
  const balanced = {
    feature: part.feature,
    source,
    code: `balance-${id}`,
    title: `static unbalance of the ${id} by shape`,
  };
  const coupled = {
    feature: part.feature,
    source,
    code: `couple-${id}`,
    title: `unbalance of the ${id} in its worse end plane`,
  };
  if (duty?.speed === undefined) {
    const missing = 'Give duty.speed: the highest speed this shaft ever turns.';
    const why = `Its shape alone is ${own.toFixed(2)} g.mm out. ${part.blame} How much is allowed hangs on the speed.`;
    return [
      notAssessed({ ...balanced, why, missing }),
      notAssessed({ ...coupled, why: 'How much each end plane may carry hangs on the speed.', missing }),
    ];
  }
  const grade = must(balanceGrade(duty.grade));
  const allowed = permissibleUnbalance(mass.mass, grade.G, duty.speed);
  const planes = twoPlaneUnbalance(mass, part.low, part.high);
  const inPlane = [planes.low, planes.high].map(({ x, y }) => hypot(x, y));
  const at = `${grade.name} at ${duty.speed} rpm`;
  return [
    judged(
      {
        ...balanced,
        unit: 'g.mm',
        why: `A perfectly made ${id} of ${(mass.mass / 1000).toFixed(3)} kg, against ${at}. ${part.blame}`,
        cure: `${part.correction()}. ${part.instead}`,
      },
      own,
      { limit: allowed, sense: 'at most' },
    ),
    judged(
      {
        ...coupled,
        unit: 'g.mm',
        why: `Static and couple unbalance together, split into the two end planes; each may carry half of ${at}.`,
        cure: part.coupleCure((inPlane[0] as number) > (inPlane[1] as number) ? 'driving' : 'driven'),
      },
      Math.max(...inPlane),
      { limit: allowed / 2, sense: 'at most' },
    ),
  ];
}

export const balance: Check = {
  id: 'balance',
  title: 'Balance by shape',
  source: 'ISO 21940-11',
  run: (joint) => [...symmetry(joint), ...spinning(joint).flatMap((part) => judgePart(part, joint))],
};
