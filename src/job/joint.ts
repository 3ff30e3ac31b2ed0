/** The whole joint, decided and built: what checks, drawings and reports read. */
import type { HoleBeside } from '../formulas/ring-cut.ts';
import type { Assumption } from '../model/finding.ts';
import type { MassProperties } from '../model/mass.ts';
import type { TurnedPart } from '../model/part.ts';
import type { SheetPart } from '../model/sheet.ts';
import type { TriedChange } from '../model/tried.ts';
import type { AdapterSpec } from '../parts/adapter-spec.ts';
import type { ToneWheelSpec } from '../parts/tone-wheel.ts';
import type { Material } from '../standards/materials.ts';
import type { BuiltFacts } from './built-facts.ts';
import type { Bracket } from './joint-bracket.ts';
import type { Dowels } from './joint-dowels.ts';
import type { ResolvedFlange } from './resolve-flange.ts';
import type { JobInput } from './schema.ts';
import type { SizedWheel } from './wheel-form.ts';

/** How the two patterns' best relative angle was found. */
export interface ClockingStudy {
  readonly mode: 'auto' | 'given';
  /** Chosen angle of the driven pattern, degrees. */
  readonly angle: number;
  /** Smallest web between a driving and a driven feature at that angle, mm; null when nothing can meet. */
  readonly web: number | null;
  /** Best web any angle can give, and an angle that gives it. */
  readonly best: { readonly angle: number; readonly web: number | null };
}

/** Each demand that the thickness must meet, mm, greatest first. */
export interface ThicknessStudy {
  readonly mode: 'auto' | 'given';
  readonly thickness: number;
  /** Least thickness that satisfies every demand, before rounding up. */
  readonly least: number;
  readonly demands: readonly { readonly what: string; readonly side: string; readonly least: number }[];
}

export type Fastening = 'into_flange' | 'into_adapter' | 'through';

/** What a head or a nut presses on. */
export interface PressedSeat {
  readonly under: 'head' | 'nut';
  /** "adapter", "driving flange", "wheel", and its material's name. */
  readonly part: string;
  readonly material: string;
  /** The torque is held down to what this seat bears: aluminium. */
  readonly soft: boolean;
  /** Bearing diameter of the head or nut itself, mm; and the ring on the part, washer counted. */
  readonly face: number;
  readonly outer: number;
  readonly inner: number;
  /** Other holes of the flange near the ring, or under it, at the screw that they leave least; left out where none is near. */
  readonly beside?: readonly HoleBeside[];
  /** Pressure that the part bears, MPa, or null; what it rests on, or why there is none. */
  readonly limit: number | null;
  readonly how: string;
  readonly source: string;
  /** Pressure, MPa, at the preload that the class usually gets. */
  readonly usual: number;
}

/** How hard a screw is tightened. Null numbers: none is given, and the note says why. */
export interface Tightened {
  /** N.m */
  readonly torque: number | null;
  /** Greatest preload, kN, and what is left of it after the scatter of a torque wrench. */
  readonly preload: number | null;
  readonly leastPreload: number | null;
  /** Friction in thread and under the head that the torque is for. */
  readonly friction: number;
  readonly note: string;
  /** Left out where nothing is known of them. */
  readonly seats?: readonly PressedSeat[];
  /** Share of the usual preload, where a soft part holds it down, and what that is. */
  readonly heldDown?: { readonly share: number; readonly by: string };
  /** What the same torque pulls at both ends of the friction class that this friction lies in, kN; left out without a torque. */
  readonly spread?: {
    readonly class: string;
    readonly from: number;
    readonly to: number;
    readonly most: number;
    readonly least: number;
    /** Whether the most is past the screw's yield point, pulled and twisted. */
    readonly yields: boolean;
  };
}

/** Drills by their shop names for a group's holes in the adapter, empty where no drill lies within the hole's limits. */
export interface DrillNames {
  /** Of the thread's own system: "8.5 mm", "letter I, 6.91 mm"; and of the other one. */
  readonly drill: string;
  readonly orDrill: string;
}

/** Clearance of a register, mm on the diameter (negative: interference), and how a shop reaches the adapter's half. */
export interface RegisterFit {
  readonly least: number;
  readonly greatest: number;
  readonly method: string;
  readonly gauge: string;
  readonly source: string;
}

/** How a wheel whose outside was left open came by its size. mm. */
export interface WheelGrowth {
  readonly outside: number;
  /** What it would be for screws, adapter and flanges alone. */
  readonly start: number;
  /** What set the size: "the sensor finds a pitch of 5 mm". */
  readonly because: string;
  /** One change each that makes it smaller, and how large the wheel then comes out, smallest first; left out where none was looked for. */
  readonly smaller?: readonly { readonly key: string; readonly outside: number }[];
}

/** A wheel's bore that is turned to its register after cutting: limits as diameters, clearance on the register, how it is reached. */
export interface WheelBore extends RegisterFit {
  readonly limits: { readonly lower: number; readonly upper: number; readonly zone: string };
  /** Metal left in the cut bore, mm on the diameter. */
  readonly stock: number;
}

/** One set of equal screws, placed. z values in adapter coordinates. */
export interface ScrewGroup {
  readonly id: string;
  readonly side: 'driving' | 'driven' | 'wheel';
  readonly label: string;
  readonly fastening: Fastening;
  readonly count: number;
  /** Designation, e.g. "M10". */
  readonly thread: string;
  readonly major: number;
  readonly pitch: number;
  readonly class: '8.8' | '10.9' | '12.9';
  readonly head: {
    readonly kind: 'socket' | 'flat' | 'button' | 'hex';
    readonly diameter: number;
    readonly height: number;
    readonly standard: string;
  };
  readonly washer: { readonly outside: number; readonly thickness: number } | null;
  readonly nut: { readonly height: number; readonly acrossFlats: number } | null;
  /** Where each screw stands, clocking applied. */
  readonly positions: readonly { readonly x: number; readonly y: number }[];
  /** Plane under the head (for a flat head: the plane of its top), and which way the shank points along z. */
  readonly headZ: number;
  readonly points: 1 | -1;
  readonly seat: 'sunk' | 'surface' | 'outside';
  /** Nominal length, mm (whole screw for a flat head). Null when no standard length fits. */
  readonly length: number | null;
  /** Material clamped between head and first thread, mm. */
  readonly grip: number;
  /** Thread engagement reached and needed, mm. */
  readonly engagement: {
    readonly has: number | null;
    readonly needs: number;
    readonly rule: string;
    readonly memory: boolean;
  };
  readonly tightening: Tightened;
  /** Drills for the holes in the adapter; left out where none were looked up. */
  readonly drills?: DrillNames;
  /** Longest screw that neither bottoms nor pokes out, and the shortest that engages enough, mm. */
  readonly lengths: { readonly least: number; readonly most: number | null; readonly mostWhy: string };
}

/** Another way of making the same joint that passes every check, and what it trades against the one chosen. */
export interface Alternative {
  /** How each side is held, in words. */
  readonly what: string;
  /** What to write in the job to have it: "adapter: { driven: { fastening: through } }". */
  readonly keys: string;
  /** Adapter thickness, mm, mass, g, and inertia about the axis, g.mm2. */
  readonly thickness: number;
  readonly mass: number;
  readonly inertia: number;
  /** The same less those of the chosen design; and pockets, threads and worked faces more or less than it has. */
  readonly than: {
    readonly thickness: number;
    readonly mass: number;
    readonly inertia: number;
    readonly pockets: number;
    readonly threads: number;
    readonly faces: number;
  };
  /** Cautions that it has and the chosen one has not, and the other way round: the names of the findings. */
  readonly cautions: readonly string[];
  readonly spares: readonly string[];
}

/** Why no way of making a joint passes. */
export interface Impossible {
  /** Facts, each a sentence. Each of them fails every way by itself, unless they only do so together. */
  readonly facts: readonly string[];
  readonly together: boolean;
  /** The smallest change that was found to make a joint possible, a sentence; null when none of those tried does. */
  readonly nearest: string | null;
  /** Ways that cannot even be drawn, and what stands in their way most often, a sentence; left out where there is none. */
  readonly undrawn?: string;
}

/** What came of trying every way that the job leaves open. */
export interface Alternatives {
  /** Ways that were looked at. */
  readonly tried: number;
  /** The chosen one, in words. */
  readonly chosen: string;
  /** Why it is not the usual way; empty when it is. */
  readonly because: string;
  /** Up to four others that pass, each of another kind, best first. */
  readonly others: readonly Alternative[];
  /** Null when the chosen one passes. */
  readonly impossible: Impossible | null;
}

/** A job whose wheel has its size in numbers, typed or chosen. */
export type SizedJob = Omit<JobInput, 'wheel'> & { readonly wheel?: SizedWheel | undefined };

export interface Joint {
  readonly job: SizedJob;
  readonly driving: ResolvedFlange;
  readonly driven: ResolvedFlange;
  readonly adapterSpec: AdapterSpec;
  readonly adapterMaterial: Material;
  readonly adapter: TurnedPart;
  readonly adapterMass: MassProperties;
  readonly wheelSpec: ToneWheelSpec | null;
  readonly wheelMaterial: Material | null;
  readonly wheel: SheetPart | null;
  readonly wheelMass: MassProperties | null;
  /** z of the wheel's lower face in adapter coordinates. */
  readonly wheelZ: number | null;
  /** What centres the wheel, and its limits, mm. */
  readonly wheelRegister: {
    readonly diameter: number;
    readonly lower: number;
    readonly upper: number;
    readonly what: string;
  } | null;
  /** Null where the bore stays as cut; left out where nothing was worked out. */
  readonly wheelBore?: WheelBore | null;
  /** How its outside was chosen; left out where it was typed. */
  readonly wheelGrowth?: WheelGrowth;
  readonly screws: readonly ScrewGroup[];
  /** What the registers come to; null where a side has none, left out where nothing was worked out. */
  readonly fits?: { readonly driving: RegisterFit | null; readonly driven: RegisterFit | null };
  /** Dowel pins between adapter and flanges; left out where the job asks for none. */
  readonly dowels?: Dowels;
  /** What holds the sensor; left out where the job asks for none. */
  readonly bracket?: Bracket;
  readonly clocking: ClockingStudy;
  readonly thickness: ThicknessStudy;
  /** Total indicator reading between the two registers after the part is turned over, mm. */
  readonly turnOver: { readonly tir: number; readonly from: string };
  readonly assumptions: readonly Assumption[];
  /** Dial readings of the finished parts, on a joint as it was built; left out on one as it was drawn. */
  readonly asMeasured?: BuiltFacts | undefined;
  /** Other ways that were tried; left out when nothing was searched. */
  readonly alternatives?: Alternatives;
  /** Remedies that were tried; left out where none were. */
  readonly tried?: readonly TriedChange[];
}
