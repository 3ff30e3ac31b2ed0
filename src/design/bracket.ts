/**
 * The bracket from where the sensor must sit and where it can be bolted.
 *
 * Worked out in the plane of its bends (see `BracketPlane`): the wheel's teeth are at q = 0, the ear's seat at q = gap + reach.
 */

import { kFromTrialBend } from '../formulas/bending.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import type { JobInput } from '../job/schema.ts';
import type { BracketInput } from '../job/schema-bracket.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import type { Assumption } from '../model/finding.ts';
import { type BracketSpec, bracketFaults, buildBracket } from '../parts/bracket.ts';
import { airDie, bendRule, kFactor, kFactorDin6935, kFactors, leastBendRadius } from '../standards/bend-practice.ts';
import { clearanceHole } from '../standards/clearance-holes.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { washerFor } from '../standards/washers.ts';
import { type Chain, chainFor } from './bracket-chain.ts';
import { bracketPlane } from './bracket-plane.ts';
import type { BracketPlace } from './bracket-turning.ts';
import { type Designed, designed, type Trouble, trouble } from './trouble.ts';

/** Gap that is taken where the job gives none: the middle of published settings, mm. */
const usualGap = 0.8;
/**
 * How far everything together may come out wrong before the gap is set, mm: bends, cut, measured places, the sensor itself.
 * Common practice; from memory.
 */
export const buildError = 1;
/** Least metal beside a hole where the job gives none, mm, and as a multiple of the thickness. Common practice. */
const leastEdge = 4;

export interface DesignedBracket {
  readonly bracket: Bracket;
  readonly assumptions: readonly Assumption[];
}

/** The bends' radius and K-factor, and the die they are made on. */
function bendsOf(input: BracketInput, material: Material): Designed<BendChoice> {
  const { thickness } = input;
  if (input.form === 'flat') return designed({ radius: 0, k: 0.5, radiusFrom: '', kFrom: '', die: null });
  const least = leastBendRadius(material, thickness);
  if (!least.ok) return trouble('bracket.material', `${least.why} Take sheet that bends (DC01, S235JR, 304, 6061-T6).`);
  const wanted = input.radius === 'auto' ? least.value.usual : input.radius;
  const die = airDie(thickness, input.radius === 'auto' ? wanted : 0);
  if (!die.ok) return trouble('bracket.thickness', die.why);
  const radius = input.radius === 'auto' ? die.value.r : input.radius;
  const radiusFrom =
    input.radius === 'auto'
      ? `what a die of ${die.value.V} mm leaves (16 % of its opening)`
      : 'given in bracket.radius';
  const [k, kFrom] = kOf(input, material, radius);
  if (!(k >= 0.1 && k <= 0.7))
    return trouble(
      'bracket.trial_bend',
      `The trial bend comes to a K-factor of ${k.toFixed(3)}; sheet bends between 0.3 and 0.5. Measure legs and radius again: legs to the outside, radius inside.`,
    );
  return designed({
    radius,
    k,
    radiusFrom,
    kFrom,
    die: { opening: die.value.V, leastFlange: die.value.b },
  });
}

interface BendChoice {
  readonly radius: number;
  readonly k: number;
  readonly radiusFrom: string;
  readonly kFrom: string;
  readonly die: Bracket['die'];
}

function kOf(input: BracketInput, { family }: Material, radius: number): [number, string] {
  const { thickness, k, trial_bend: trial } = input;
  if (trial) {
    const [a = 0, b = 0] = trial.legs;
    return [kFromTrialBend({ ...trial, legs: [a, b] }, thickness), 'your trial bend (bracket.trial_bend)'];
  }
  if (k === 'auto') {
    const row = kFactor(family, radius, thickness);
    return [row.ok ? row.value : 0.43, kFactors.edition];
  }
  if (k === 'DIN 6935') return [kFactorDin6935(radius, thickness), 'DIN 6935 (formula from memory)'];
  return [k, 'given in bracket.k'];
}

/** Widths, edges and holes: everything but the lengths along the strip. */
function sizesOf(input: BracketInput, bends: BendChoice, travel: number, side: 1 | -1): Designed<Sizes> {
  const { thickness, bolts, sensor } = input;
  const edge = input.edge === 'auto' ? Math.max(leastEdge, 2 * thickness) : input.edge;
  const bolt = clearanceHole(bolts.size);
  const washer = washerFor(bolts.size);
  if (!bolt.ok) return trouble('bracket.bolts.size', bolt.why);
  const ear = sensor.ear ? clearanceHole(sensor.ear.size) : null;
  if (ear && !ear.ok) return trouble('bracket.sensor.ear.size', ear.why);
  const hole = bolt.value.diameter;
  const bearing = Math.max(hole / 2 + edge, washer.ok ? washer.value.outside / 2 : 0);
  const earHole = ear?.ok ? ear.value.diameter : 0;
  const beside = sensor.bore / 2 + edge;
  const earReach = sensor.ear ? sensor.ear.distance + earHole / 2 + edge : 0;
  const across = sensor.ear?.towards === 'across' ? Math.max(beside, earReach) : beside;
  const needed = 2 * Math.max(across, sensor.ear ? earHole / 2 + edge : 0);
  let arm = input.width === 'auto' ? needed : input.width;
  let foot = Math.max(bolts.spacing + 2 * bearing, arm);
  // Relief cuts want room beside them; where there is none the strip has one width.
  const cut = bendRule('relief width', thickness, bends.radius).value;
  const least = 2 * (cut + Math.max(thickness, 2));
  if (input.form === 'flat' || foot - arm < least) {
    arm = foot;
  }
  foot = Math.max(foot, arm);
  const relief = arm < foot ? { width: cut, depth: bendRule('relief depth', thickness, bends.radius).value } : null;
  // The slots keep clear of the bend, of its relief cuts, and of the washer.
  const clear = bendRule('hole to bend', thickness, bends.radius).value;
  const tail = Math.max(bearing, hole / 2 + Math.max(clear, relief ? relief.depth + thickness : 0));
  return designed({
    footWidth: foot,
    footEdge: bearing + travel / 2,
    footTail: tail + travel / 2,
    hole,
    armWidth: arm,
    armEdge: sensor.ear?.towards === 'end' ? Math.max(beside, earReach) : beside,
    ear: sensor.ear ? { distance: sensor.ear.distance, hole: earHole, towards: sensor.ear.towards, side } : null,
    relief,
  });
}

/**
 * Side of the blank on which an ear across the strip points counter-clockwise, seen from the driven side. The plane of the bends turns
 * over with the side the bracket comes from, and with a sensor that looks along the shaft: y of the blank is n x e in each.
 */
const earSide = (towards: BracketInput['towards'], direction: 'radial' | 'axial'): 1 | -1 =>
  (towards === 'driving') === (direction === 'radial') ? 1 : -1;

interface Sizes {
  readonly footWidth: number;
  readonly footEdge: number;
  readonly footTail: number;
  readonly hole: number;
  readonly armWidth: number;
  readonly armEdge: number;
  readonly ear: BracketSpec['sensor']['ear'];
  readonly relief: BracketSpec['relief'];
}

/** Travel of the slots: an angle must come from touching the teeth to the far end of the gap; others only find the teeth's middle. */
function travelOf(input: BracketInput, gap: number): number {
  if (input.slot !== 'auto') return input.slot;
  const each = input.form === 'angle' ? Math.max(gap, input.tolerance) + buildError : 2 * buildError;
  return Math.ceil(2 * each);
}

/** The gap that is set: as given, else the usual one of the sensor's kind, else of all. */
function gapOf(job: JobInput): { gap: number; assumptions: Assumption[] } {
  const known = job.sensor ? sensorNeeds(job.sensor).gap : null;
  if (known?.isGiven) return { gap: known.value, assumptions: [] };
  const gap = known?.value ?? usualGap;
  const from = known
    ? "the usual one of the sensor's kind"
    : 'the middle of published settings (0.8 +/- 0.1 to 0.3 mm)';
  return {
    gap,
    assumptions: [
      { path: 'sensor.gap', value: `${gap} mm`, from: `${from}; the bracket is made for it`, memory: false },
    ],
  };
}

/** Designs the bracket of a job that has one, over a wheel that has its place. */
export function designBracket(job: JobInput, place: BracketPlace | null): Designed<DesignedBracket> {
  const input = job.bracket;
  if (!input) throw new Error('This job has no bracket.');
  if (!place)
    return trouble('bracket', 'A bracket holds the sensor over a wheel: give the section wheel, or delete this one.');
  const material = findMaterial(input.material);
  if (!material.ok) return trouble('bracket.material', material.why);
  const bends = bendsOf(input, material.value);
  if (!bends.ok) return bends;
  const { gap, assumptions } = gapOf(job);
  const travel = travelOf(input, gap);
  const direction = job.sensor?.direction ?? 'radial';
  const sizes = sizesOf(input, bends.value, travel, earSide(input.towards, direction));
  if (!sizes.ok) return sizes;
  const chain = chainFor({ input, gap, direction, bend: bends.value, sizes: sizes.value, wheel: place.wheel });
  if (!chain.ok) return chain;
  const spec = specOf(input, material.value, sizes.value, chain.value, travel);
  const faults = bracketFaults(spec);
  if (faults.length > 0) return { ok: false, troubles: faultTroubles(faults) };
  const { form } = input;
  const setting = form === 'angle' ? 'slots' : form === 'flat' ? 'stand-offs' : 'shims';
  return designed({
    bracket: {
      spec,
      part: buildBracket(spec),
      material: material.value,
      plane: bracketPlane(spec, chain.value, input, direction, place),
      gap: { nominal: gap, tolerance: input.tolerance, build: buildError },
      setting,
      packing: chain.value.packing,
      kFrom: bends.value.kFrom,
      radiusFrom: bends.value.radiusFrom,
      die: bends.value.die,
    },
    assumptions,
  });
}

function faultTroubles(faults: readonly string[]): Trouble[] {
  return faults.map((fault) => ({
    path: 'bracket',
    message: `The bracket cannot be drawn: ${fault} Look at bracket.bolts, bracket.form and the sensor's reach.`,
  }));
}

function specOf(input: BracketInput, material: Material, sizes: Sizes, chain: Chain, travel: number): BracketSpec {
  const { id, name, density } = material;
  return {
    id: 'bracket',
    name: input.name ?? 'sensor bracket',
    material: { id, name, density },
    thickness: input.thickness,
    bends: chain.bends,
    straights: chain.straights,
    foot: {
      width: sizes.footWidth,
      edge: sizes.footEdge,
      spacing: input.bolts.spacing,
      hole: sizes.hole,
      travel,
    },
    arm: { width: sizes.armWidth, edge: sizes.armEdge },
    sensor: { bore: input.sensor.bore, ear: sizes.ear },
    relief: sizes.relief,
    corner: input.corner,
  };
}
