/** What a caliper or a sensor finds on the teeth of a tone wheel. */
import { asin, sin } from '../units/trig.ts';
import {
  hasWindows,
  leastPitchAngle,
  pitchAngle,
  type ToneWheelSpec,
  toothHeight,
  toothShape,
  widthRadius,
} from './tone-wheel-tooth.ts';
import { largestCorner, windowShape } from './tone-wheel-window.ts';
import { pulseCount } from './tooth-row.ts';

/**
 * Nominal measures of the teeth, mm unless said otherwise. "Arc" is along a circle, "chord" straight across.
 * With windows a tooth is a bar and a valley is a window, and what is told of the outside circle is told of
 * the circle through the middle of the windows, where the sensor looks.
 */
export interface ToothMeasures {
  /** Teeth that are there: pulses in a turn. */
  readonly present: number;
  /** Angle from tooth to tooth, degrees. */
  readonly pitchDegrees: number;
  /** Pitch along the outside circle: pi D / N. */
  readonly pitch: number;
  /** Tooth along and across the outside circle, as if its edges were sharp. */
  readonly toothArc: number;
  readonly toothChord: number;
  /** Tooth across the root circle, without its root rounds. */
  readonly toothRootChord: number;
  /** Valley along and across the outside circle, edges sharp. */
  readonly valleyArc: number;
  readonly valleyChord: number;
  /** Valley along the root circle from flank to flank, without its root rounds. */
  readonly valleyRootArc: number;
  /** Root diameter to outside diameter, on one side; with windows their radial height. */
  readonly height: number;
  /** Arc left at the tip between its two breaks; with windows at their outside, between two corners. */
  readonly tipLand: number;
  /** Plain arc left at the bottom of a valley between its two rounds. */
  readonly rootLand: number;
  /** Flank left between the tip break and the root round. */
  readonly flank: number;
  /**
   * Tooth-free angle at the missing positions, from flank to flank on the outside circle, degrees; 0 when
   * none miss.
   */
  readonly missingDegrees: number;
  /**
   * Where the mark of a position makes them differ from the ordinary ones: pitch and valley beside an extra tooth, and the arc of a
   * wide tooth. Else alike.
   */
  readonly leastPitch: number;
  readonly leastValleyChord: number;
  readonly leastValleyRootArc: number;
  readonly mostToothArc: number;
  /** Largest root round that fits the valley and the flank, and largest tip break that leaves a tip. */
  readonly largestRootRadius: number;
  readonly largestTipBreak: number;
}

/**
 * Measures of the nominal teeth (kerf not counted).
 * Source: circle geometry; the pitch is the definition. Valid for a spec that has no fault.
 */
export function toothMeasures(spec: ToneWheelSpec): ToothMeasures {
  if (hasWindows(spec)) return windowMeasures(spec);
  const shape = toothShape(spec);
  const pitch = pitchAngle(spec);
  const least = leastPitchAngle(spec);
  const half = (spec.ratio * pitch) / 2;
  const { outsideR, rootR, flankAngle, flankOffset } = shape;
  const sharpRoot = flankAngle + asin(flankOffset / rootR);
  const toothArc = 2 * half * outsideR;
  return {
    present: pulseCount(spec),
    pitchDegrees: 360 / spec.teeth,
    pitch: pitch * outsideR,
    toothArc,
    toothChord: 2 * outsideR * sin(half),
    toothRootChord: 2 * rootR * sin(sharpRoot),
    valleyArc: pitch * outsideR - toothArc,
    valleyChord: 2 * outsideR * sin(pitch / 2 - half),
    valleyRootArc: (pitch - 2 * sharpRoot) * rootR,
    height: outsideR - rootR,
    tipLand: 2 * shape.tipEnd * outsideR,
    rootLand: (pitch - 2 * shape.rootStart) * rootR,
    flank: shape.flankLength,
    missingDegrees: spec.missing === 0 ? 0 : (((spec.missing + 1) * pitch - 2 * half) * 180) / Math.PI,
    leastPitch: least * outsideR,
    leastValleyChord: 2 * outsideR * sin(least / 2 - half),
    leastValleyRootArc: (least - 2 * sharpRoot) * rootR,
    mostToothArc: toothArc + (spec.wide ?? 0) * pitch * outsideR,
    largestRootRadius: largestRootRadius(spec),
    largestTipBreak: largestTipBreak(spec),
  };
}

/** The same of bars and windows. */
function windowMeasures(spec: ToneWheelSpec): ToothMeasures {
  const shape = windowShape(spec);
  const pitch = pitchAngle(spec);
  const least = leastPitchAngle(spec);
  const half = (spec.ratio * pitch) / 2;
  const r = widthRadius(spec);
  const { outerR, innerR, flankAngle, flankOffset } = shape;
  const sharpRoot = flankAngle + asin(flankOffset / innerR);
  return {
    present: pulseCount(spec),
    pitchDegrees: 360 / spec.teeth,
    pitch: pitch * r,
    toothArc: 2 * half * r,
    toothChord: 2 * r * sin(half),
    toothRootChord: 2 * innerR * sin(sharpRoot),
    valleyArc: (pitch - 2 * half) * r,
    valleyChord: 2 * r * sin(pitch / 2 - half),
    valleyRootArc: (pitch - 2 * sharpRoot) * innerR,
    height: toothHeight(spec),
    tipLand: (pitch - 2 * shape.outerStart) * outerR,
    rootLand: (pitch - 2 * shape.innerStart) * innerR,
    flank: shape.flankLength,
    missingDegrees: spec.missing === 0 ? 0 : (((spec.missing + 1) * pitch - 2 * half) * 180) / Math.PI,
    leastPitch: least * r,
    leastValleyChord: 2 * r * sin(least / 2 - half),
    leastValleyRootArc: (least - 2 * sharpRoot) * innerR,
    mostToothArc: (2 * half + (spec.wide ?? 0) * pitch) * r,
    largestRootRadius: largestCorner(spec),
    largestTipBreak: 0,
  };
}

/**
 * Largest root round of open teeth. Two limits: in the narrowest valley, the round whose centre lies on its middle line
 * (full round), (q + f) sin g = h + f with g the angle from flank to middle line; on the flank, the round
 * that reaches the tip break.
 */
export function largestRootRadius(spec: ToneWheelSpec): number {
  const { rootR, flankAngle, flankOffset, flankTop } = toothShape(spec);
  const toMiddle = sin(leastPitchAngle(spec) / 2 - flankAngle);
  const inValley = (rootR * toMiddle - flankOffset) / (1 - toMiddle);
  const onFlank = (flankTop.r ** 2 - rootR ** 2) / (2 * (rootR - flankOffset));
  return Math.min(inValley, onFlank);
}

/**
 * Largest tip break of open teeth. Two limits: at the tip, the break whose centre lies on the tooth's centre line; on the
 * flank, the break that reaches the root round.
 */
export function largestTipBreak(spec: ToneWheelSpec): number {
  const { outsideR, flankAngle, flankOffset, flankBottom } = toothShape(spec);
  const slope = sin(flankAngle);
  const atTip = (outsideR * slope + flankOffset) / (1 + slope);
  const onFlank = (outsideR ** 2 - flankBottom.r ** 2) / (2 * (outsideR - flankOffset));
  return Math.min(atTip, onFlank);
}
