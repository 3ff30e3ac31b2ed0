/**
 * From facts to a joint: decides everything the job left open, builds both parts and places the screws.
 *
 * Order: fixings and registers first (they hang on nothing), then the wheel's place, outside and bore, then the thickness,
 * then the clocking, which needs every hole's final profile. Each decision is a file of its own.
 */
import { type Clocking, bestClocking, webAtClocking } from '../geometry/clocking.ts';
import { sheetMass } from '../geometry/contour.ts';
import { turnedMass } from '../geometry/turned-mass.ts';
import type { Joint } from '../job/joint.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import type { Assumption } from '../model/finding.ts';
import type { PartMaterial } from '../model/part.ts';
import { buildAdapter } from '../parts/adapter.ts';
import { groupDrillings, placedPositions } from '../parts/adapter-holes.ts';
import type { AdapterSpec, HoleGroupSpec } from '../parts/adapter-spec.ts';
import { buildToneWheel, toneWheelFaults, type ToneWheelSpec } from '../parts/tone-wheel.ts';
import { setupRunout } from '../standards/machining-practice.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { fasteningOf, type Fixing, fixingFor } from './fixing.ts';
import { sideGroups, threadOf, wheelGroup } from './hole-groups.ts';
import { boreFor, flatsFor, outsideFor } from './layout.ts';
import { registerFor } from './register.ts';
import { screwGroup, wheelScrews } from './screws.ts';
import { sharedPattern } from './shared-pattern.ts';
import { studyThickness, surroundings, type ThicknessInput } from './thickness.ts';
import { type Designed, designed, type Trouble } from './trouble.ts';
import { liftedMass, placeWheel, type WheelPlace, wheelHeight, wheelSpec } from './wheel.ts';

/** What a flange is taken to be made of when the job does not say: ordinary structural steel, the weaker guess. */
const usualFlangeMaterial = 'S355';

const partMaterial = ({ id, name, density }: Material): PartMaterial => ({ id, name, density });

/** What the design starts from. */
export interface DesignInput {
  readonly job: JobInput;
  readonly driving: ResolvedFlange;
  readonly driven: ResolvedFlange;
  /** What reading and resolving already assumed. */
  readonly assumptions: readonly Assumption[];
}

/** Collects troubles while letting the rest of the design go on as far as it can. */
class Ledger {
  readonly troubles: Trouble[] = [];
  readonly assumptions: Assumption[] = [];

  take<T>(result: Designed<T>): T | null {
    if (result.ok) return result.value;
    this.troubles.push(...result.troubles);
    return null;
  }

  material(path: string, id: string): Material | null {
    const lookup = findMaterial(id);
    if (lookup.ok) return lookup.value;
    this.troubles.push({ path, message: lookup.why });
    return null;
  }

  assume(path: string, value: string, from: string, memory = false): void {
    this.assumptions.push({ path, value, from, memory });
  }
}

interface Decided {
  readonly adapterMaterial: Material;
  readonly fixings: readonly Fixing[];
  readonly registers: AdapterSpec['registers'];
  readonly wheel: WheelPlace | null;
  readonly wheelMaterial: Material | null;
  readonly shared: number | null;
}

function decide(input: DesignInput, ledger: Ledger): Decided | null {
  const { job, driving, driven } = input;
  const flanges = { driving, driven };
  const adapterMaterial = ledger.material('adapter.material', job.adapter.material);
  const wheelMaterial = job.wheel ? ledger.material('wheel.material', job.wheel.material) : null;
  const both = fasteningOf(driving, job) === 'through' && fasteningOf(driven, job) === 'through';
  const shared = both ? sharedPattern(flanges) : null;

  const registers = { driving: ledger.take(registerFor(driving, job)), driven: ledger.take(registerFor(driven, job)) };
  if (!adapterMaterial) return null;
  const fixings: Fixing[] = [];
  for (const flange of shared === null ? [driving, driven] : [driving]) {
    const named = flange.material ?? usualFlangeMaterial;
    const flangeMaterial = ledger.material(`${flange.side}.material`, named);
    if (!flangeMaterial) continue;
    if (flange.material === null && flange.holes.kind === 'tapped') {
      ledger.assume(`${flange.side}.material`, named, 'default: decides the thread engagement, give the real one if you know it');
    }
    const other = flange.side === 'driving' ? driven : driving;
    const fixing = ledger.take(fixingFor({ flange, other, job, adapterMaterial, flangeMaterial, shared: shared !== null }));
    if (fixing) fixings.push(fixing);
  }
  const wanted = shared === null ? 2 : 1;
  if (fixings.length < wanted) return null;
  const wheel = job.wheel ? ledger.take(placeWheel(job.wheel, flanges, fixings, adapterMaterial, job.adapter)) : null;
  if (ledger.troubles.length > 0) return null;
  return { adapterMaterial, fixings, registers, wheel, wheelMaterial, shared };
}

function thicknessInput({ job, driving, driven }: DesignInput, made: Decided): ThicknessInput {
  return {
    wanted: job.adapter.thickness,
    web: job.adapter.web,
    chamfer: job.adapter.chamfer,
    fixings: made.fixings,
    flanges: { driving, driven },
    registers: made.registers,
    wheelSeat: made.wheel?.seat ?? null,
    wheelEngagement: made.wheel?.engagement.length ?? 0,
  };
}

/** Design and build the whole joint. All troubles come back at once. */
export function designJoint(input: DesignInput): Designed<Joint> {
  const { job, driving, driven } = input;
  const flanges = { driving, driven };
  const ledger = new Ledger();
  const made = decide(input, ledger);
  if (!made) return { ok: false, troubles: ledger.troubles };

  const { web } = job.adapter;
  const forThickness = thicknessInput(input, made);
  const thickness = studyThickness(forThickness);
  const outside =
    job.adapter.outside === 'auto'
      ? outsideFor(made.fixings, flanges, made.registers, { web, chamfer: job.adapter.chamfer }, made.wheel?.outsideNeeded ?? 0)
      : job.adapter.outside;
  const bore =
    job.adapter.bore === 'none' ? null : job.adapter.bore === 'auto' ? boreFor(made.fixings, flanges, made.registers, web) : job.adapter.bore;
  const across = job.adapter.flats === 'none' ? null : job.adapter.flats === 'auto' ? flatsFor(outside) : job.adapter.flats;

  const sketch: AdapterSpec = {
    id: 'adapter',
    name: job.adapter.name ?? 'adapter',
    material: partMaterial(made.adapterMaterial),
    thickness: thickness.thickness,
    outside,
    chamfer: job.adapter.chamfer,
    bore,
    flats: across === null ? null : { across, angle: 90 },
    registers: made.registers,
    clocking: 0,
    groups: sideGroups(made.fixings, flanges, thickness.thickness, web),
    wheelSeat: made.wheel?.seat ?? null,
  };

  const drillings = (spec: AdapterSpec, side: string) =>
    spec.groups.filter((group) => group.side === side).flatMap((group) => groupDrillings(spec, group));
  const fixed = drillings(sketch, 'driving');
  const moving = drillings(sketch, 'driven');
  const best: Clocking = made.shared === null ? bestClocking(fixed, moving) : { angle: made.shared, web: null };
  const angle = job.adapter.clocking === 'auto' ? best.angle : job.adapter.clocking;
  const clocked: AdapterSpec = { ...sketch, clocking: angle };

  const wheelFirst = wheelClocking(clocked, made.wheel, web);
  const groups: HoleGroupSpec[] = made.wheel
    ? [...clocked.groups, wheelGroup(made.wheel, clocked.thickness, web, wheelFirst)]
    : [...clocked.groups];
  const spec: AdapterSpec = { ...clocked, groups };
  const adapter = buildAdapter(spec);

  const positions = (id: string) => {
    const group = spec.groups.find((candidate) => candidate.id === id);
    return group ? placedPositions(spec, group) : [];
  };
  const screws = made.fixings.map((fixing) =>
    screwGroup(fixing, surroundings(fixing, forThickness, spec.thickness), positions(`${fixing.side}-screws`)),
  );
  const outline =
    job.wheel && made.wheel && made.wheelMaterial ? wheelSpec(job.wheel, made.wheel, made.wheelMaterial, wheelFirst) : null;
  const faults = outline ? toneWheelFaults(outline) : [];
  if (faults.length > 0) return { ok: false, troubles: faults.map((message) => ({ path: 'wheel', message })) };
  const wheel = outline && made.wheel ? buildWheel(outline, made.wheel, spec) : null;
  const method = setupRunout(job.adapter.setup);
  return designed({
    job,
    driving,
    driven,
    adapterSpec: spec,
    adapterMaterial: made.adapterMaterial,
    adapter,
    adapterMass: turnedMass(adapter),
    wheelSpec: outline,
    wheelMaterial: wheel ? made.wheelMaterial : null,
    wheel: wheel?.part ?? null,
    wheelMass: wheel?.mass ?? null,
    wheelZ: wheel?.z ?? null,
    wheelRegister: made.wheel?.register ?? null,
    screws: wheel ? [...screws, wheel.screws] : screws,
    clocking: {
      mode: job.adapter.clocking === 'auto' ? 'auto' : 'given',
      angle,
      web: made.shared === null ? webAtClocking(fixed, moving, angle) : null,
      best,
    },
    thickness,
    turnOver:
      job.adapter.runout !== undefined
        ? { tir: job.adapter.runout, from: 'given in the job' }
        : { tir: method.tir, from: `usual for "${job.adapter.setup}" (${method.source})` },
    assumptions: [...input.assumptions, ...ledger.assumptions],
  });
}

/** The wheel's screws go where they leave the adapter most metal, or where the job puts them. */
function wheelClocking(spec: AdapterSpec, place: WheelPlace | null, web: number): number {
  if (!place) return 0;
  if (place.first !== null) return place.first;
  const group = wheelGroup(place, spec.thickness, web, 0);
  const others = spec.groups.flatMap((other) => groupDrillings(spec, other));
  return bestClocking(others, groupDrillings(spec, group)).angle;
}

/** The wheel cut, weighed, and set on the adapter with its screws. */
function buildWheel(outline: ToneWheelSpec, place: WheelPlace, spec: AdapterSpec) {
  const part = buildToneWheel(outline);
  const z = wheelHeight(place, spec.thickness, outline.thickness);
  const seatZ = place.face === 'driven' ? z : z + outline.thickness;
  const thread = threadOf(spec, 'wheel-screws') ?? { depth: 0, through: false };
  const screws = wheelScrews(place, outline.thickness, seatZ, thread, outline.screwHoles?.positions ?? []);
  return { part, mass: liftedMass(sheetMass(part), z), z, screws };
}
