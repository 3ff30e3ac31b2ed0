/** A typed flange and its preset joined into one flange with every fact at hand, in adapter coordinates. */
import type { Measured } from './measured.ts';

export interface ResolvedRegister {
  readonly gender: 'male' | 'female';
  readonly diameter: Measured;
  readonly depth: Measured;
  /** Limits of the flange's own register as absolute diameters, mm: by its fit zone when stated, else value -+ doubt. */
  readonly limits: { readonly lower: number; readonly upper: number };
  /** Tolerance zone, null when none is stated. */
  readonly zone: string | null;
  /** Fillet radius at a male foot or chamfer at a female mouth, mm; 0 when not stated. */
  readonly corner: number;
}

export interface ResolvedHoles {
  /** In adapter coordinates: seen from the driven side, mm. In typed order. */
  readonly positions: readonly { readonly x: number; readonly y: number }[];
  /** Diameter of the circle through the centres, mm; null when they do not lie on one. */
  readonly circle: number | null;
  readonly kind: 'clear' | 'tapped';
  /** Clear holes: their size. Tapped holes: the thread's major diameter as its designation says. */
  readonly diameter: Measured;
  readonly thread: string | null;
  /** Usable depth of thread, mm; null when not stated. */
  readonly depth: number | null;
  readonly through: boolean;
}

export interface ResolvedFlange {
  readonly side: 'driving' | 'driven';
  readonly name: string;
  /** Id of the preset it started from. */
  readonly preset: string | null;
  readonly outside: Measured;
  readonly thickness: Measured | null;
  readonly register: ResolvedRegister | null;
  readonly holes: ResolvedHoles;
  /** Free bore in the middle, mm. */
  readonly bore: number | null;
  /** Total indicator readings, mm. */
  readonly runout: { readonly rim: number | null; readonly face: number | null };
  readonly material: string | null;
  /** Free room behind the flange, mm. */
  readonly behind: number | null;
  /** Key paths that rest on memory: "driven.holes.circle". */
  readonly memory: readonly string[];
  /** Source of the preset's figures. */
  readonly source: string | null;
}
