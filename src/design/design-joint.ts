/**
 * From facts to a joint: decides everything the job left open, builds both parts and places the screws.
 *
 * Order: fixings and registers first (they hang on nothing), then the wheel's place, the thickness, outside and bore, then the
 * clocking, which needs every hole's final profile, and last the flats, which keep clear of them. Each decision is a file of its own.
 */
import { sheetMass } from '../geometry/contour.ts';
import { turnedMass } from '../geometry/turned-mass.ts';
import type { Joint } from '../job/joint.ts';
import { materialOfFlange, type ResolvedFlange } from '../job/resolve-flange.ts';
import type { JobInput } from '../job/schema.ts';
import { countMissing } from '../job/tooth-count.ts';
import type { Assumption } from '../model/finding.ts';
import type { PartMaterial } from '../model/part.ts';
import { buildAdapter } from '../parts/adapter.ts';
import { placedPositions } from '../parts/adapter-holes.ts';
import type { AdapterSpec } from '../parts/adapter-spec.ts';
import { buildToneWheel, type ToneWheelSpec } from '../parts/tone-wheel.ts';
import { setupRunout } from '../standards/machining-practice.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { withBracket } from './bracket-on-joint.ts';
import { clockingOf, drillingsOf, wheelClocking } from './clocking-choice.ts';
import { dowelsOf, outsideForDowels, withGivenDowels, withOpenDowels } from './dowel-place.ts';
import { type DowelPlan, planDowels } from './dowels.ts';
import { type Fixing, fasteningOf, fixingFor } from './fixing.ts';
import { flatsAcross, flatsFor } from './flats.ts';
import { sideGroups, threadOf, wheelGroup } from './hole-groups.ts';
import { impossibleSizes } from './impossible.ts';
import { type AdapterFlanges, boreFor, outsideFor } from './layout.ts';
import { madeOnce } from './made-once.ts';
import { fitted, registerFor } from './register.ts';
import { screwGroup, wheelScrews } from './screws.ts';
import { sharedPattern, sharedTroubles } from './shared-pattern.ts';
import { studyThickness, surroundings, type ThicknessInput } from './thickness.ts';
import { withDrills } from './tightening-drills.ts';
import type { Designed, Trouble } from './trouble.ts';
import { liftedMass, placeWheel, type WheelPlace, wheelHeight, wheelSpec, wheelThread } from './wheel.ts';
import { type RoundNeighbour, sizeWheel } from './wheel-size.ts';
import { deepThread, wheelTroubles } from './wheel-troubles.ts';

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
  readonly dowels: readonly DowelPlan[];
}

function decide(input: DesignInput, ledger: Ledger): Decided | null {
  const { job, driving, driven } = input;
  const flanges = { driving, driven };
  const adapterMaterial = ledger.material('adapter.material', job.adapter.material);
  const wheelMaterial = job.wheel ? ledger.material('wheel.material', job.wheel.material) : null;
  const both = fasteningOf(driving, job) === 'through' && fasteningOf(driven, job) === 'through';
  const shared = both ? sharedPattern(flanges, job.adapter.clocking === 'auto' ? null : job.adapter.clocking) : null;
  if (shared !== null) ledger.troubles.push(...sharedTroubles(job.adapter));

  const registers = { driving: ledger.take(registerFor(driving, job)), driven: ledger.take(registerFor(driven, job)) };
  if (!adapterMaterial) return null;
  for (const flange of [driving, driven]) {
    if (flange.material !== null) continue;
    const from = 'default: decides thread engagement, torque and what heat does; give the real one if you know it';
    ledger.assume(`${flange.side}.material`, materialOfFlange(flange), from);
  }
  const fixings: Fixing[] = [];
  for (const flange of shared === null ? [driving, driven] : [driving]) {
    const flangeMaterial = ledger.material(`${flange.side}.material`, materialOfFlange(flange));
    if (!flangeMaterial) continue;
    const other = flange.side === 'driving' ? driven : driving;
    const fixing = ledger.take(
      fixingFor({ flange, other, job, adapterMaterial, flangeMaterial, shared: shared !== null }),
    );
    if (fixing) fixings.push(fixing);
  }
  const wanted = shared === null ? 2 : 1;
  if (fixings.length < wanted) return null;
  const dowels = [driving, driven].flatMap((flange) => {
    const fixing = fixings.find(({ side }) => side === flange.side) ?? fixings[0];
    const plan = fixing ? ledger.take(planDowels(flange, job, fixing)) : null;
    return plan ? [plan] : [];
  });
  const uncounted = job.wheel?.teeth === 'auto' ? countMissing(job) : null;
  if (uncounted) ledger.troubles.push(uncounted);
  const wheel = job.wheel
    ? ledger.take(placeWheel(job.wheel, flanges, fixings, adapterMaterial, job.adapter, job.sheet))
    : null;
  if (ledger.troubles.length > 0) return null;
  return { adapterMaterial, fixings, registers, wheel, wheelMaterial, shared, dowels };
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
    wheelThread: made.wheel && wheelThread(made.wheel),
  };
}

/** The adapter with everything but its clocking, wheel screws and flats. */
function sketchOf(
  { job, driving, driven }: DesignInput,
  made: Decided,
  forThickness: ThicknessInput,
  thickness: number,
): AdapterSpec {
  const flanges = { driving, driven };
  const { web, chamfer, outside, bore } = job.adapter;
  const needed = Math.max(made.wheel?.outsideNeeded ?? 0, outsideForDowels(made.dowels, web, chamfer));
  return {
    id: 'adapter',
    name: job.adapter.name ?? 'adapter',
    material: partMaterial(made.adapterMaterial),
    thickness,
    outside: outside === 'auto' ? outsideFor(made.fixings, flanges, made.registers, { web, chamfer }, needed) : outside,
    chamfer,
    bore: bore === 'none' ? null : bore === 'auto' ? boreFor(made.fixings, flanges, made.registers, web) : bore,
    flats: null,
    registers: made.registers,
    clocking: 0,
    groups: sideGroups(forThickness, thickness),
    wheelSeat: made.wheel?.seat ?? null,
  };
}

/** Flats are cut last, clear of every hole; an outside that was left open grows where they would leave no land. */
function withFlats(spec: AdapterSpec, asked: JobInput['adapter']): AdapterSpec {
  if (asked.flats === 'none') return spec;
  const drillings = drillingsOf(spec);
  if (asked.flats !== 'auto') return { ...spec, flats: flatsAcross(drillings, asked.flats, asked.web) };
  const { across, angle, outside } = flatsFor(drillings, spec.outside, asked.web);
  if (asked.outside === 'auto') return { ...spec, outside: Math.max(spec.outside, outside), flats: { across, angle } };
  return { ...spec, flats: { across: Math.min(across, spec.outside - (outside - across)), angle } };
}

/** Design and build the whole joint. All troubles come back at once. */
export function designJoint(input: DesignInput): Designed<Joint> {
  const { job, driving, driven } = input;
  const ledger = new Ledger();
  const made = decide(input, ledger);
  if (!made) return { ok: false, troubles: ledger.troubles };

  const forThickness = thicknessInput(input, made);
  const thickness = studyThickness(forThickness);
  const flanges = { driving, driven };
  const { web } = job.adapter;
  const sketch = sketchOf(input, made, forThickness, thickness.thickness);
  const given = withGivenDowels(sketch, made.dowels, flanges, web);
  // The resolved flange is one object in all ways of a search, and goes with it: what is made once is kept by it.
  const clocking = clockingOf(driving, given.spec, job.adapter.clocking, made.shared);
  const turnedSketch = { ...given, spec: { ...given.spec, clocking: clocking.angle } };
  const { spec: clocked, placed } = withOpenDowels(turnedSketch, made.dowels, flanges, web);
  const wheelFirst = wheelClocking(driving, clocked, made.wheel, web);
  const drilled: AdapterSpec = made.wheel
    ? {
        ...clocked,
        groups: [...clocked.groups, wheelGroup(made.wheel, clocked.thickness, web, wheelFirst)],
      }
    : clocked;
  const spec = withFlats(drilled, job.adapter);
  const { wheel: asked, ...wheelless } = job;
  const sized =
    asked && made.wheel
      ? ledger.take(sizeWheel({ ...job, wheel: asked }, made.wheel, roundNeighbours(spec, flanges)))
      : null;
  const outline =
    sized && made.wheel && made.wheelMaterial
      ? wheelSpec(sized.wheel, sized.teeth, made.wheel, made.wheelMaterial, wheelFirst)
      : null;
  const troubles = [
    ...impossibleSizes(spec),
    ...ledger.troubles,
    ...(made.wheel ? deepThread(made.wheel, spec.thickness) : []),
    ...(outline && sized && made.wheel ? wheelTroubles(outline, sized.wheel, made.wheel) : []),
  ];
  if (troubles.length > 0) return { ok: false, troubles };

  const { adapter, adapterMass } = madeOnce(driving, 'adapter', spec, () => {
    const part = buildAdapter(spec);
    return { adapter: part, adapterMass: turnedMass(part) };
  });
  const positions = (id: string) =>
    spec.groups.filter((group) => group.id === id).flatMap((group) => placedPositions(spec, group));
  const screws = made.fixings.map((fixing) =>
    screwGroup(fixing, surroundings(fixing, forThickness, spec.thickness), positions(`${fixing.side}-screws`)),
  );
  const wheel =
    outline && made.wheel && made.wheelMaterial
      ? buildWheel(driving, outline, made.wheel, spec, made.wheelMaterial)
      : null;
  const method = setupRunout(job.adapter.setup);
  const dowels = dowelsOf(placed, flanges, spec);
  const joint: Joint = {
    job: sized ? { ...job, wheel: sized.wheel } : wheelless,
    driving,
    driven,
    adapterSpec: spec,
    adapterMaterial: made.adapterMaterial,
    adapter,
    adapterMass,
    wheelSpec: outline,
    wheelMaterial: wheel ? made.wheelMaterial : null,
    wheel: wheel?.part ?? null,
    wheelMass: wheel?.mass ?? null,
    wheelZ: wheel?.z ?? null,
    wheelRegister: made.wheel?.register ?? null,
    wheelBore: made.wheel?.turned ?? null,
    ...(sized?.growth ? { wheelGrowth: sized.growth } : {}),
    screws: wheel ? [...screws, wheel.screws] : screws,
    ...(dowels ? { dowels } : {}),
    clocking,
    thickness,
    turnOver:
      job.adapter.runout !== undefined
        ? { tir: job.adapter.runout, from: 'given in the job' }
        : { tir: method.tir, from: `usual for "${job.adapter.setup}" (${method.source})` },
    assumptions: [...input.assumptions, ...ledger.assumptions, ...(sized?.assumptions ?? [])],
  };
  return withBracket(withDrills(fitted(joint)));
}

/** What the wheel's roots have to clear. */
export const roundNeighbours = (
  spec: Pick<AdapterSpec, 'outside'>,
  { driving, driven }: AdapterFlanges,
): RoundNeighbour[] => [
  { name: 'adapter', diameter: spec.outside },
  ...[driving, driven].map(({ side, outside }) => ({ name: `${side} flange`, diameter: outside.value })),
];

/** The wheel cut, weighed, and set on the adapter with its screws. */
function buildWheel(search: object, outline: ToneWheelSpec, place: WheelPlace, spec: AdapterSpec, material: Material) {
  const { part, mass } = madeOnce(search, 'wheel', outline, () => {
    const cut = buildToneWheel(outline);
    return { part: cut, mass: sheetMass(cut) };
  });
  const z = wheelHeight(place, spec.thickness, outline.thickness);
  const seatZ = place.face === 'driven' ? z : z + outline.thickness;
  const thread = threadOf(spec, 'wheel-screws') ?? { depth: 0, through: false };
  const screws = wheelScrews(place, seatZ, thread, material, outline.screwHoles?.positions ?? []);
  return { part, mass: liftedMass(mass, z), z, screws };
}
