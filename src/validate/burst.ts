/** Does the adapter or the wheel fly apart? */

import {
  type BarredRim,
  barredRimStress,
  discStress,
  greatestStress,
  hungMass,
  meanHoopStress,
  speedAtStress,
  type TurningDisc,
} from '../formulas/burst.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { hasWindows, leastSpan, type ToneWheelSpec, toothMeasures, toothTop } from '../parts/tone-wheel.ts';
import { screwMasses } from '../rotor/screw-body.ts';
import type { Material } from '../standards/materials.ts';
import { hypot } from '../units/hypot.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { sourced } from './words.ts';

/** Overspeed that rotors are tried at: 1.2 times the highest speed (IEC 60034-1 for machines, from memory). */
const overspeed = 1.2;
/** Stress at the edge of a hole over the stress beside it: 3 in plain tension, the worst case. Timoshenko. */
const holeFactor = 3;
/** Share of the tensile strength that the mean hoop stress may reach before a tough disc bursts. Common practice, from memory. */
const burstShare = 0.85;

interface Rotor {
  readonly id: 'adapter' | 'wheel';
  readonly disc: TurningDisc;
  readonly material: Material;
  /** Holes in the disc: radius of their centres and diameter, mm. */
  readonly holes: readonly { readonly radius: number; readonly diameter: number }[];
  readonly hangs: string;
  /** Windows: the rim that bars carry. */
  readonly rim?: BarredRim;
}

const radiusOf = ({ x, y }: { readonly x: number; readonly y: number }) => hypot(x, y);

/** Screws, nuts and washers of a group, g. */
function hardwareMass(group: ScrewGroup): number {
  const { screw, nut, washer } = screwMasses(group);
  return group.count * (screw + (nut ?? 0) + (washer ?? 0));
}

function adapterRotor(joint: Joint): Rotor {
  const { adapterSpec: spec, adapterMaterial: material, screws } = joint;
  const loads = screws.map((group) => ({
    mass: hardwareMass(group),
    radius: Math.max(...group.positions.map(radiusOf)),
  }));
  const mass = loads.reduce((sum, load) => sum + load.mass, 0);
  const moment = loads.reduce((sum, load) => sum + load.mass * load.radius, 0);
  return {
    id: 'adapter',
    material,
    disc: {
      inner: (spec.bore ?? 0) / 2,
      outer: spec.outside / 2,
      thickness: spec.thickness,
      density: material.density,
      nu: material.poissonsRatio,
      rim: mass > 0 ? { mass, radius: moment / mass } : undefined,
    },
    holes: spec.groups.map(({ positions, shape }) => ({
      radius: Math.min(...positions.map(radiusOf)),
      diameter: shape.kind === 'tapped' ? shape.major : shape.diameter,
    })),
    hangs: `all screws (${mass.toFixed(0)} g) hang on its rim`,
  };
}

function wheelRotor({ wheelSpec: spec, wheelMaterial: material }: Joint): Rotor | null {
  if (!spec || !material) return null;
  const [root, tip] = [spec.root / 2, spec.outside / 2];
  const mass = toothShare(spec) * Math.PI * (tip * tip - root * root) * spec.thickness * material.density;
  const { screwHoles } = spec;
  const holes = screwHoles
    ? [{ radius: Math.min(...screwHoles.positions.map(radiusOf)), diameter: screwHoles.diameter }]
    : [];
  if (hasWindows(spec)) return windowRotor(spec, material, holes);
  return {
    id: 'wheel',
    material,
    disc: {
      inner: spec.bore / 2,
      outer: root,
      thickness: spec.thickness,
      density: material.density,
      nu: material.poissonsRatio,
      rim: { mass, radius: (root + tip) / 2 },
    },
    holes,
    hangs: `its teeth (${mass.toFixed(0)} g${asSolid(spec)}) hang on the root`,
  };
}

/** Share of the ring of teeth that counts as steel. A wide tooth loads its own side: then the ring counts as solid all round. */
const toothShare = ({ ratio, teeth, wide = 0, extra = 0 }: ToneWheelSpec): number =>
  wide > 0 ? 1 : ratio * (1 + extra / teeth);
const asSolid = ({ wide = 0 }: ToneWheelSpec): string => (wide > 0 ? ', counted as a solid ring for the wide one' : '');

/** A wheel with windows: its hub carries bars and rim as dead mass, and rim and bars are held against the same limits by themselves. */
function windowRotor(spec: ToneWheelSpec, material: Material, holes: Rotor['holes']): Rotor {
  const [root, top, outer] = [spec.root / 2, toothTop(spec), spec.outside / 2];
  const { thickness, teeth: places, missing } = spec;
  const sheet = thickness * material.density;
  const bar = {
    mass: (spec.ratio * Math.PI * (top * top - root * root) * sheet) / places,
    radius: (root + top) / 2,
    width: Math.min(toothMeasures(spec).toothChord, toothMeasures(spec).toothRootChord),
  };
  const isMarked = (spec.wide ?? 0) > 0 || (spec.extra ?? 0) > 0;
  const solid = toothShare(spec) * Math.PI * (top * top - root * root) * sheet;
  const bars = isMarked ? solid : (places - missing) * bar.mass;
  const ring = Math.PI * (outer * outer - top * top) * sheet;
  const radius = (bars * bar.radius + (ring * (top + outer)) / 2) / (bars + ring);
  const common = { thickness, density: material.density, nu: material.poissonsRatio };
  return {
    id: 'wheel',
    material,
    disc: { ...common, inner: spec.bore / 2, outer: root, rim: { mass: bars + ring, radius } },
    holes,
    hangs: `its bars and its rim (${(bars + ring).toFixed(0)} g${asSolid(spec)}) hang on the hub, the rim also bears itself and its bars alone, and bends from bar to bar as a straight beam`,
    rim: {
      ...common,
      inner: top,
      outer,
      bar,
      places,
      missing,
      ...(isMarked ? { barMass: bars, shortest: leastSpan(spec) } : {}),
    },
  };
}

/** Peaks and means that rim and bars add, MPa at 1 rad/s, with where each is. */
function rimStresses(rim: BarredRim | undefined) {
  if (!rim) return { peaks: [], means: [] };
  const { hoop, bending, pull, barBending } = barredRimStress(rim, 1);
  const { inner, outer, thickness, density, nu, bar } = rim;
  const hung = { mass: hungMass(rim), radius: bar.radius };
  return {
    // Round corners stand at both ends of every bar.
    peaks: [
      { where: 'the rim at a corner of a window', stress: holeFactor * (hoop + bending) },
      { where: 'a bar at its corners', stress: holeFactor * (pull + barBending) },
    ],
    means: [meanHoopStress({ inner, outer, thickness, density, nu, rim: hung }, 1), pull],
  };
}

function judgeRotor(joint: Joint, { id, disc, material, holes, hangs, rim }: Rotor): Finding {
  const common = {
    code: `burst-${id}`,
    feature: id === 'adapter' ? 'body' : 'wheel-outline',
    title: `safe speed of the ${id}`,
    source: sourced(
      `turning disc of even thickness (Timoshenko, Shigley); ${rim ? 'free ring, and beam between bars (Timoshenko, Roark); 3 at holes and at corners of windows' : '3 at holes'}; bursts near 0.85 of the tensile strength; 1.2 of overspeed`,
      true,
    ),
  };
  const inside = holes.filter(({ radius }) => radius > disc.inner && radius < disc.outer);
  const around = rimStresses(rim);
  const hub = [greatestStress(disc, 1), ...inside.map(({ radius }) => holeFactor * discStress(disc, 1, radius).hoop)];
  const peaks = [{ where: 'the hub', stress: Math.max(...hub) }, ...around.peaks];
  const worst = peaks.reduce((a, b) => (b.stress > a.stress ? b : a));
  const widest = Math.max(0, ...inside.map(({ diameter }) => diameter));
  const net = Math.min(widest, 0.9 * (disc.outer - disc.inner));
  const yields = speedAtStress(material.yieldStrength, worst.stress);
  const mean = Math.max(meanHoopStress(disc, 1, net), ...around.means);
  const bursts = speedAtStress(burstShare * material.tensileStrength, mean);
  const safe = Math.min(yields, bursts);
  const why = `${material.name} as an even disc; ${hangs}. The worst spot${rim ? `, ${worst.where},` : ''} yields at ${yields.toFixed(0)} rpm, the whole bursts at about ${bursts.toFixed(0)} rpm.`;
  const speed = joint.job.duty?.speed;
  if (speed === undefined) {
    return notAssessed({ ...common, why, missing: 'Give duty.speed: the highest speed this shaft ever turns.' });
  }
  return judged(
    {
      ...common,
      unit: 'rpm',
      why,
      cure: `Make the ${id} smaller or of stronger metal (${id}.material), or never turn faster than ${Math.floor(safe / overspeed)} rpm (duty.speed).`,
    },
    safe,
    { limit: overspeed * speed, sense: 'at least', hard: speed },
  );
}

export const burst: Check = {
  id: 'burst',
  title: 'Safe speed',
  source: 'Timoshenko; Shigley; common practice',
  run: (joint) => {
    const wheel = wheelRotor(joint);
    return [adapterRotor(joint), ...(wheel ? [wheel] : [])].map((rotor) => judgeRotor(joint, rotor));
  },
};
