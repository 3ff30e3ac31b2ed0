/** Does the adapter or the wheel fly apart? */
import { discStress, greatestStress, meanHoopStress, speedAtStress, type TurningDisc } from '../formulas/burst.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { screwMasses } from '../rotor/screw-body.ts';
import type { Material } from '../standards/materials.ts';
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
}

const radiusOf = ({ x, y }: { readonly x: number; readonly y: number }) => Math.hypot(x, y);

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
  const mass = spec.ratio * Math.PI * (tip * tip - root * root) * spec.thickness * material.density;
  const { screwHoles } = spec;
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
    holes: screwHoles
      ? [{ radius: Math.min(...screwHoles.positions.map(radiusOf)), diameter: screwHoles.diameter }]
      : [],
    hangs: `its teeth (${mass.toFixed(0)} g) hang on the root`,
  };
}

function judgeRotor(joint: Joint, { id, disc, material, holes, hangs }: Rotor): Finding {
  const common = {
    code: `burst-${id}`,
    feature: id === 'adapter' ? 'body' : 'wheel-outline',
    title: `safe speed of the ${id}`,
    source: sourced(
      'turning disc of even thickness (Timoshenko, Shigley); 3 at holes; bursts near 0.85 of the tensile strength; 1.2 of overspeed',
      true,
    ),
  };
  const inside = holes.filter(({ radius }) => radius > disc.inner && radius < disc.outer);
  const peaks = [greatestStress(disc, 1), ...inside.map(({ radius }) => holeFactor * discStress(disc, 1, radius).hoop)];
  const widest = Math.max(0, ...inside.map(({ diameter }) => diameter));
  const net = Math.min(widest, 0.9 * (disc.outer - disc.inner));
  const yields = speedAtStress(material.yieldStrength, Math.max(...peaks));
  const bursts = speedAtStress(burstShare * material.tensileStrength, meanHoopStress(disc, 1, net));
  const safe = Math.min(yields, bursts);
  const why = `${material.name} as an even disc; ${hangs}. The worst spot yields at ${yields.toFixed(0)} rpm, the whole bursts at about ${bursts.toFixed(0)} rpm.`;
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
