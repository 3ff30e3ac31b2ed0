/** What a tone wheel is made of, and the exact shape of one of its teeth. */
import type { PartMaterial } from '../model/part.ts';
import { atan2, sin } from '../units/trig.ts';
import { leastSpan } from './tooth-row.ts';

/**
 * Measures of a toothed wheel for a speed sensor, cut from sheet. mm and degrees.
 * Datum: the axis is the origin; angles run counter-clockwise from +x; the sheet lies from z = 0 to thickness.
 */
export interface ToneWheelSpec {
  readonly id: string;
  readonly name: string;
  readonly material: PartMaterial;
  readonly thickness: number;
  /** Equal positions round the wheel, 3 or more. "60-2" has 60. */
  readonly teeth: number;
  /**
   * Adjacent positions left out: 0 for a speed wheel, 2 for "60-2". They are the last ones before tooth
   * number 1.
   */
  readonly missing: number;
  /** Adjacent valleys that are filled, so that one tooth is as many places longer; it is the last one. Left out: none. */
  readonly wide?: number | undefined;
  /** 1: one more tooth of the same shape midway in the valley before tooth number 1. Left out: none. */
  readonly extra?: number | undefined;
  /** Diameter over the teeth, or of the closed rim. */
  readonly outside: number;
  /** Diameter at the bottom of the valleys, or at the inside of the windows. */
  readonly root: number;
  /**
   * Width of a closed rim outside of windows, so that the teeth are the bars between them; left out for open
   * teeth.
   */
  readonly rim?: number;
  /**
   * Tooth width over pitch, between 0 and 1: both along the outside circle, or with windows both along the
   * middle of the windows, where the sensor looks.
   */
  readonly ratio: number;
  /** `straight`: parallel to the tooth's own centre line. `radial`: pointing at the axis. */
  readonly flanks: 'straight' | 'radial';
  /** Round between flank and root circle, or in all four corners of a window; 0 for a sharp corner. */
  readonly rootRadius: number;
  /** Round between flank and outside circle; 0 for a sharp edge, and with windows. */
  readonly tipBreak: number;
  /** Bore diameter. */
  readonly bore: number;
  readonly screwHoles: {
    readonly diameter: number;
    readonly positions: readonly { readonly x: number; readonly y: number }[];
  } | null;
  /** Direction of the centre of tooth number 1. */
  readonly toothAngle: number;
  /** Width of the cut: the outside grows and the holes shrink by half of it. 0 for nominal contours. */
  readonly kerf: number;
}

/** A point by distance from the axis (mm) and angle from the tooth's centre line (radians). */
export interface PolarPoint {
  readonly r: number;
  readonly angle: number;
}

/**
 * The counter-clockwise half of a tooth, as seen along its centre line, from the tip to the valley. mm,
 * radians. The other half is its mirror image.
 */
export interface ToothShape {
  readonly outsideR: number;
  readonly rootR: number;
  /** The flank lies on a line at `flankOffset` to the left of a ray at the angle `flankAngle`. */
  readonly flankAngle: number;
  readonly flankOffset: number;
  readonly rootRadius: number;
  readonly tipBreak: number;
  /** Angle at which the arc of the tip ends. */
  readonly tipEnd: number;
  /** Where the flank begins (below the tip break) and where it ends (above the root round). */
  readonly flankTop: PolarPoint;
  readonly flankBottom: PolarPoint;
  /** Length of the flank between its rounds; negative where they overlap. */
  readonly flankLength: number;
  /** Angle at which the arc of the root begins. */
  readonly rootStart: number;
  /** Turn of the two rounds. */
  readonly tipBreakSweep: number;
  readonly rootRadiusSweep: number;
}

/** Angle from one tooth position to the next, radians. */
export function pitchAngle(spec: ToneWheelSpec): number {
  return (2 * Math.PI) / spec.teeth;
}

/** Angle from the middle of a tooth to its neighbour's across the narrowest valley: half a pitch beside an extra tooth. Radians. */
export const leastPitchAngle = (spec: ToneWheelSpec): number => leastSpan(spec) * pitchAngle(spec);

/** The circles between which teeth or windows lie: diameters, and the closed rim of a window wheel. mm. */
export type ToothBand = Pick<ToneWheelSpec, 'outside' | 'root' | 'rim'>;

/** Whether the teeth are bars between windows in a closed rim. */
export const hasWindows = ({ rim }: Pick<ToneWheelSpec, 'rim'>): boolean => rim !== undefined;

/** Radius at which teeth or windows end, mm: the tips, or the outside of the windows. */
export const toothTop = ({ outside, rim }: ToothBand): number => outside / 2 - (rim ?? 0);

/** Radial height of teeth or windows, mm. */
export const toothHeight = (band: ToothBand): number => toothTop(band) - band.root / 2;

/** Radius of the middle of teeth or windows, mm: where a sensor that looks along the axis stands. */
export const axialRadius = (band: ToothBand): number => (toothTop(band) + band.root / 2) / 2;

/** Radius at which widths are told, mm: the tips of open teeth, the middle of windows. */
export const widthRadius = (band: ToothBand): number => (hasWindows(band) ? axialRadius(band) : band.outside / 2);

/**
 * The shape of one open tooth in closed form. In the frame of the flank (its direction along x) the tip break is a
 * circle of radius b about (sqrt((R - b)^2 - (h - b)^2), h - b): inside the outside circle and below the
 * flank, touching both. The root round is a circle of radius f about (sqrt((q + f)^2 - (h + f)^2), h + f):
 * outside the root circle and above the flank. Source: tangent circles, plane geometry.
 *
 * A kerf offsets the whole outline: radii and flanks move out by half of it, tip rounds grow and root rounds
 * shrink by half of it (to a sharp corner at least). That is the exact offset curve, and it has the same
 * arcs. Cells are NaN where the geometry is impossible; `toneWheelFaults` says why.
 */
export function toothShape(spec: ToneWheelSpec, kerf = 0): ToothShape {
  const grow = kerf / 2;
  const half = (spec.ratio * pitchAngle(spec)) / 2;
  const flankAngle = spec.flanks === 'radial' ? half : 0;
  const flankOffset = (spec.flanks === 'radial' ? 0 : (spec.outside / 2) * sin(half)) + grow;
  const outsideR = spec.outside / 2 + grow;
  const rootR = spec.root / 2 + grow;
  const tipBreak = spec.tipBreak + grow;
  const rootRadius = Math.max(0, spec.rootRadius - grow);

  const breakY = flankOffset - tipBreak;
  const breakX = Math.sqrt((outsideR - tipBreak) ** 2 - breakY ** 2);
  const breakDirection = atan2(breakY, breakX);
  const roundY = flankOffset + rootRadius;
  const roundX = Math.sqrt((rootR + rootRadius) ** 2 - roundY ** 2);
  const roundDirection = atan2(roundY, roundX);
  const onFlank = (x: number): PolarPoint => ({
    r: Math.hypot(x, flankOffset),
    angle: flankAngle + atan2(flankOffset, x),
  });
  return {
    outsideR,
    rootR,
    flankAngle,
    flankOffset,
    rootRadius,
    tipBreak,
    tipEnd: flankAngle + breakDirection,
    flankTop: onFlank(breakX),
    flankBottom: onFlank(roundX),
    flankLength: breakX - roundX,
    rootStart: flankAngle + roundDirection,
    tipBreakSweep: tipBreak > 0 ? Math.PI / 2 - breakDirection : 0,
    rootRadiusSweep: rootRadius > 0 ? Math.PI / 2 - roundDirection : 0,
  };
}
