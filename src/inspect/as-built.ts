/** The joint as it was really made: what was measured takes the place of the limits it was drawn with. mm, g. */
import { fitted } from '../design/register.ts';
import { turnedMass } from '../geometry/turned-mass.ts';
import { builtFacts } from '../job/built-facts.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Measured } from '../job/measured.ts';
import type { MassProperties } from '../model/mass.ts';
import { buildAdapter } from '../parts/adapter.ts';
import { turned } from '../parts/adapter-holes.ts';
import type { AdapterSpec, HoleGroupSpec, RegisterSpec } from '../parts/adapter-spec.ts';
import { type Characteristic, characteristicsOf } from './characteristics.ts';
import { isSlip } from './disposition.ts';

/** What stands in place of a tolerance zone where a size was measured. */
export const asMeasuredZone = 'as measured';

const limitsOf = ({ value, doubt }: Measured) => ({ lower: value - doubt, upper: value + doubt, zone: asMeasuredZone });

function realRegister(
  register: RegisterSpec | null,
  built: { readonly register?: Measured | undefined; readonly depth?: Measured | undefined } | undefined,
): RegisterSpec | null {
  if (!register || !built) return register;
  return {
    ...register,
    ...(built.register ? { diameter: built.register.value, limits: limitsOf(built.register) } : {}),
    ...(built.depth ? { depth: built.depth.value } : {}),
  };
}

type Place = { readonly x: number; readonly y: number };

/** The found places in the order of the drawn ones: each drawn hole takes the nearest. Counts differ: the drawn ones stay. */
function inOrder(drawn: readonly Place[], found: readonly Place[]): readonly Place[] {
  if (drawn.length !== found.length) return drawn;
  const left = [...found];
  return drawn.map((place) => {
    const off = (p: Place) => Math.hypot(p.x - place.x, p.y - place.y);
    const nearest = left.reduce((a, b) => (off(b) < off(a) ? b : a));
    left.splice(left.indexOf(nearest), 1);
    return nearest;
  });
}

/** Where the holes of each side really are; left out where nobody measured them, or they are no places of this part. */
type Places = { readonly [side in 'driving' | 'driven']?: readonly Place[] | undefined };

function realGroups(spec: AdapterSpec, joint: Joint, found: Places): HoleGroupSpec[] {
  return spec.groups.map((group) => {
    const places = group.side === 'wheel' ? undefined : found[group.side];
    if (!places || !joint.screws.some((screws) => screws.id === group.id)) return group;
    // The driven pattern is drawn in its own clocking.
    const back = group.side === 'driven' ? -spec.clocking : 0;
    return {
      ...group,
      positions: inOrder(
        group.positions,
        places.map((place) => turned(place, back)),
      ),
    };
  });
}

/** Screws stay those that were bought: a thicker part takes their engagement, a thinner one gives it. */
function realScrews(screws: ScrewGroup, found: Places, thicker: number): ScrewGroup {
  const places = screws.side === 'wheel' ? undefined : found[screws.side];
  const positions = places ? inOrder(screws.positions, places) : screws.positions;
  const spans = screws.fastening !== 'into_adapter' && screws.side !== 'wheel';
  if (!spans || thicker === 0) return { ...screws, positions };
  const { has } = screws.engagement;
  return {
    ...screws,
    positions,
    grip: screws.grip + thicker,
    headZ: screws.points === -1 ? screws.headZ + thicker : screws.headZ,
    engagement: { ...screws.engagement, has: has === null ? null : has - thicker },
    lengths: {
      ...screws.lengths,
      least: screws.lengths.least + thicker,
      most: screws.lengths.most === null ? null : screws.lengths.most + thicker,
    },
  };
}

/** Mass properties of a shape that weighs something else than its drawing says: the whole tensor in proportion. */
function weighed(mass: MassProperties, grams: number | undefined): MassProperties {
  if (grams === undefined || mass.mass <= 0) return mass;
  const share = grams / mass.mass;
  const { xx, yy, zz, xy, xz, yz } = mass.inertia;
  return {
    ...mass,
    mass: grams,
    inertia: { xx: xx * share, yy: yy * share, zz: zz * share, xy: xy * share, xz: xz * share, yz: yz * share },
  };
}

/**
 * The joint with everything that `built` says in it: sizes with the doubt of their measuring, places of holes, masses, dial readings.
 * What was not measured stays as it was drawn. Null when the job has no `built`.
 * @param leftOut sizes that are not taken as measured but as drawn: slips of the pen, unless something else is asked for
 */
export function asBuilt(joint: Joint, leftOut: (size: Characteristic) => boolean = isSlip): Joint | null {
  const { built } = joint.job;
  if (!built) return null;
  const facts = builtFacts(built);
  const asDrawn = new Set(
    characteristicsOf(joint)
      .filter(leftOut)
      .map(({ id }) => id),
  );
  const trusted = <T>(id: string, size: T | undefined): T | undefined => (asDrawn.has(id) ? undefined : size);
  const { adapter: own, wheel } = built;
  const drawn = joint.adapterSpec;
  const sizesOf = (side: 'driving' | 'driven') => ({
    register: trusted(`${side}-register`, own?.[side]?.register),
    depth: trusted(`${side}-depth`, own?.[side]?.depth),
  });
  const sized: AdapterSpec = {
    ...drawn,
    thickness: trusted('thickness', own?.thickness)?.value ?? drawn.thickness,
    outside: trusted('outside', own?.outside)?.value ?? drawn.outside,
    bore: drawn.bore === null ? null : (trusted('bore', own?.bore)?.value ?? drawn.bore),
    registers: {
      driving: realRegister(drawn.registers.driving, sizesOf('driving')),
      driven: realRegister(drawn.registers.driven, sizesOf('driven')),
    },
  };
  const places: Places = {
    driving: trusted('driving-holes', own?.driving?.holes),
    driven: trusted('driven-holes', own?.driven?.holes),
  };
  const spec: AdapterSpec = { ...sized, groups: realGroups(sized, joint, places) };
  const adapter = buildAdapter(spec);
  const bore = trusted('wheel-bore', wheel?.bore);
  const wheelBore: Joint['wheelBore'] = bore
    ? {
        limits: limitsOf(bore),
        least: bore.value - bore.doubt - (joint.wheelRegister?.upper ?? 0),
        greatest: bore.value + bore.doubt - (joint.wheelRegister?.lower ?? 0),
        method: 'as made',
        gauge: 'as measured',
        source: 'measured on the finished wheel',
        stock: 0,
      }
    : (joint.wheelBore ?? null);
  const thicker = spec.thickness - drawn.thickness;
  return fitted({
    ...joint,
    adapterSpec: spec,
    adapter,
    adapterMass: weighed(turnedMass(adapter), own?.mass),
    wheelBore,
    wheelMass: joint.wheelMass && weighed(joint.wheelMass, wheel?.mass),
    screws: joint.screws.map((screws) => realScrews(screws, places, thicker)),
    thickness: { ...joint.thickness, thickness: spec.thickness },
    turnOver: facts?.register ? { tir: facts.register.tir, from: 'measured on the finished adapter' } : joint.turnOver,
    asMeasured: facts ?? undefined,
  });
}
