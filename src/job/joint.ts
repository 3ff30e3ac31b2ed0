/** The whole joint, decided and built: what checks, drawings and reports read. */
import type { Assumption } from '../model/finding.ts';
import type { MassProperties } from '../model/mass.ts';
import type { TurnedPart } from '../model/part.ts';
import type { SheetPart } from '../model/sheet.ts';
import type { AdapterSpec } from '../parts/adapter-spec.ts';
import type { ToneWheelSpec } from '../parts/tone-wheel.ts';
import type { Material } from '../standards/materials.ts';
import type { ResolvedFlange } from './resolve-flange.ts';
import type { JobInput } from './schema.ts';

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
  /** Longest screw that neither bottoms nor pokes out, and the shortest that engages enough, mm. */
  readonly lengths: { readonly least: number; readonly most: number | null; readonly mostWhy: string };
}

export interface Joint {
  readonly job: JobInput;
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
  readonly screws: readonly ScrewGroup[];
  readonly clocking: ClockingStudy;
  readonly thickness: ThicknessStudy;
  /** Total indicator reading between the two registers after the part is turned over, mm. */
  readonly turnOver: { readonly tir: number; readonly from: string };
  readonly assumptions: readonly Assumption[];
}
