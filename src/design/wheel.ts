/** Where the wheel sits, what centres it, and the screws that hold it. */
import type { WheelBore } from '../job/joint.ts';
import type { JobInput } from '../job/schema.ts';
import { heldOnContour } from '../job/schema-sheet.ts';
import { bandOf, type SizedWheel } from '../job/wheel-form.ts';
import { marksOf } from '../job/wheel-mark.ts';
import type { MassProperties } from '../model/mass.ts';
import type { WheelSeatSpec } from '../parts/adapter-spec.ts';
import type { ToneWheelSpec } from '../parts/tone-wheel.ts';
import { clearanceHole } from '../standards/clearance-holes.ts';
import { toleranceLimits } from '../standards/iso286.ts';
import type { Material } from '../standards/materials.ts';
import { type ScrewHead, screwHead } from '../standards/screw-heads.ts';
import { type LeastEngagement, leastEngagement } from '../standards/thread-engagement.ts';
import { findThread, type Thread } from '../standards/threads.ts';
import { cos, sin } from '../units/trig.ts';
import type { ThreadNeed } from './adapter-thread.ts';
import type { Fixing } from './fixing.ts';
import { type AdapterFlanges, fixingRadius, outermost } from './layout.ts';
import { type Designed, designed, type Trouble, trouble } from './trouble.ts';
import { clearanceAsCut, wheelBoreFor } from './wheel-bore.ts';

export type WheelInput = NonNullable<JobInput['wheel']>;

const mm = (value: number) => `${Number(value.toFixed(3))} mm`;

/** Room between a flange's rim and the wheel's register, diametral mm. Common practice: the flange must go in freely. */
const flangeRoom = 1;
/** Fit of the adapter's shoulder for the wheel (ISO 286). Common practice: a close sliding fit. */
const seatZone = 'h7';

/** The wheel's place on the joint, before the adapter's outside is known. */
export interface WheelPlace {
  readonly face: 'driving' | 'driven';
  /** Null when the wheel is centred on a flange's rim and lies flat on the adapter's face. */
  readonly seat: WheelSeatSpec | null;
  /** Diameter that centres the wheel and its limits. */
  readonly register: {
    readonly diameter: number;
    readonly lower: number;
    readonly upper: number;
    readonly what: string;
  };
  readonly bore: number;
  /** Limits of the bore where it is turned to the register; null: as cut. */
  readonly turned: WheelBore | null;
  readonly thread: Thread;
  readonly head: ScrewHead;
  readonly hole: number;
  /** What the screws hold in. */
  readonly parent: Material;
  readonly engagement: LeastEngagement;
  readonly circle: number;
  readonly count: number;
  /** Thickness of the sheet. */
  readonly sheet: number;
  /** Full thread depth asked for in the adapter, mm; null: what the engagement needs. */
  readonly threadDepth: number | null;
  /** Angle of the first screw; null: the angle that leaves most metal. */
  readonly first: number | null;
  /** Least outside diameter of the adapter that carries the screws. */
  readonly outsideNeeded: number;
}

/** Decide the wheel's seat, bore and screw circle. */
export function placeWheel(
  wheel: WheelInput,
  flanges: AdapterFlanges,
  fixings: readonly Fixing[],
  adapterMaterial: Material,
  { web, chamfer }: Pick<JobInput['adapter'], 'web' | 'chamfer'>,
  sheet: JobInput['sheet'],
): Designed<WheelPlace> {
  const troubles: Trouble[] = [];
  const thread = findThread(wheel.screws.size);
  const head = screwHead('button', wheel.screws.size);
  const hole = clearanceHole(wheel.screws.size, 'medium');
  for (const lookup of [thread, head, hole])
    if (!lookup.ok) troubles.push({ path: 'wheel.screws.size', message: lookup.why });
  if (!thread.ok || !head.ok || !hole.ok) return { ok: false, troubles: troubles.slice(0, 1) };
  const engagement = leastEngagement(thread.value, adapterMaterial, '8.8');
  if (!engagement.ok) return trouble('wheel.screws.size', engagement.why);

  const face = wheel.on === 'adapter' ? wheel.face : wheel.on;
  const flange = flanges[face];
  // The register must lie outside whatever this face carries: the flange and every pocket or hole that opens here.
  const onFace = fixings.map((f) => 2 * (outermost(flanges[f.side]) + fixingRadius(f) + web + chamfer));
  const widest = Math.max(flange.outside.value + flangeRoom, ...onFace);

  const { value: rim, doubt } = flange.outside;
  const cut = heldOnContour(sheet, wheel.thickness);
  let register: WheelPlace['register'];
  let seat: WheelSeatSpec | null = null;
  if (wheel.on === 'adapter') {
    // A shoulder is h: it is at most as large as it is called.
    const clearance = clearanceAsCut(wheel.clearance, { diameter: 0, lower: 0, upper: 0 }, cut);
    const diameter = wheel.bore === 'auto' ? Math.ceil(widest - 1e-9) : wheel.bore - clearance;
    const limits = toleranceLimits(diameter, seatZone);
    if (!limits.ok) return trouble('wheel.bore', limits.why);
    if (diameter < rim - doubt && wheel.thickness > wheel.shoulder) {
      return trouble(
        'wheel.bore',
        `The bore (${mm(diameter + clearance)}) is smaller than the ${face} flange (${mm(rim)}) that has to lie inside it. Use auto, or ${mm(Math.ceil(widest + clearance))} or more.`,
      );
    }
    const bounds = { lower: diameter + limits.value.lower, upper: diameter + limits.value.upper };
    seat = { face, diameter, height: wheel.shoulder, limits: { ...bounds, zone: seatZone } };
    register = { diameter, ...bounds, what: `the adapter's ${seatZone} shoulder` };
  } else {
    if (wheel.bore !== 'auto' && wheel.bore < rim - doubt) {
      return trouble(
        'wheel.bore',
        `The bore (${mm(wheel.bore)}) does not go over the ${face} flange's rim (${mm(rim)}). Use auto: the rim and wheel.clearance.`,
      );
    }
    register = { diameter: rim, lower: rim - doubt, upper: rim + doubt, what: `the ${face} flange's rim` };
  }
  const turned = wheelBoreFor(wheel, register);
  if (!turned.ok) return turned;
  const asCut = wheel.bore === 'auto' ? register.diameter + clearanceAsCut(wheel.clearance, register, cut) : wheel.bore;
  const bore = turned.value?.limits.lower ?? asCut;
  const sheetWeb = Math.max(web, wheel.thickness);
  const headRoom = Math.max(head.value.dk / 2, hole.value.diameter / 2 + sheetWeb);
  const circle =
    wheel.screws.circle === 'auto'
      ? Math.ceil((Math.max(bore, register.diameter) + 2 * headRoom) * 2 - 1e-9) / 2
      : wheel.screws.circle;
  return designed({
    face,
    seat,
    register,
    bore,
    turned: turned.value,
    thread: thread.value,
    head: head.value,
    hole: hole.value.diameter,
    parent: adapterMaterial,
    engagement: engagement.value,
    circle,
    count: wheel.screws.count,
    sheet: wheel.thickness,
    threadDepth: wheel.screws.depth === 'auto' ? null : wheel.screws.depth,
    first: wheel.screws.first === 'auto' ? null : wheel.screws.first,
    outsideNeeded: circle + thread.value.d + 2 * (web + chamfer),
  });
}

/** What the wheel's tapped holes must take: button heads on the sheet. */
export function wheelThread(place: WheelPlace): ThreadNeed {
  return { thread: place.thread, head: 'button', engagement: place.engagement.length, grip: place.sheet, length: null };
}

/** Regular positions on a circle, the first at an angle in degrees. */
export function onCircle(count: number, circle: number, first: number): { x: number; y: number }[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = ((first + (i * 360) / count) * Math.PI) / 180;
    return { x: (circle / 2) * cos(angle), y: (circle / 2) * sin(angle) };
  });
}

/** The wheel's outline measures from the job and its place. */
export function wheelSpec(
  wheel: SizedWheel,
  teeth: number,
  place: WheelPlace,
  material: Material,
  first: number,
): ToneWheelSpec {
  return {
    id: 'wheel',
    name: wheel.name ?? `${teeth}-${wheel.form === 'windows' ? 'window' : 'tooth'} wheel`,
    material: { id: material.id, name: material.name, density: material.density },
    thickness: wheel.thickness,
    teeth,
    ...marksOf(wheel),
    ...bandOf(wheel),
    ratio: wheel.ratio,
    flanks: wheel.flanks,
    rootRadius: wheel.root_radius,
    tipBreak: wheel.tip_break,
    bore: place.bore,
    screwHoles: { diameter: place.hole, positions: onCircle(place.count, place.circle, first) },
    toothAngle: wheel.tooth,
    // Nominal: the width of the cut is put in when the outline is written, so that masses and checks speak of the part.
    kerf: 0,
  };
}

/** z of the wheel's lower face in adapter coordinates. */
export function wheelHeight(place: WheelPlace, adapterThickness: number, sheet: number): number {
  const seat = place.seat?.height ?? 0;
  return place.face === 'driven' ? adapterThickness - seat : seat - sheet;
}

/** A wheel's mass properties moved from its own coordinates to the adapter's. */
export function liftedMass(mass: MassProperties, z: number): MassProperties {
  const [x, y, own] = mass.centre;
  return { ...mass, centre: [x, y, own + z] };
}
