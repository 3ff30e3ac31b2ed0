/** The windows of a wheel as its pictures and drawings name them. */
import type { WindowsToDraw } from '../drawing/wheel-view.ts';
import { type ToneWheelSpec, toothMeasures } from '../parts/tone-wheel.ts';

/** Undefined for open teeth. `pole`: width of the sensor's face, mm, or null. */
export function windowsToDraw(spec: ToneWheelSpec, pole: number | null): WindowsToDraw | undefined {
  if (spec.rim === undefined) return undefined;
  const { toothChord, valleyChord } = toothMeasures(spec);
  return { rim: spec.rim, corner: spec.rootRadius, bar: toothChord, window: valleyChord, pole };
}
