/** Why the windows of a tone wheel cannot be drawn as asked. */
import { sin } from '../units/trig.ts';
import { LEAST_LAND, lengthWords as mm, noRoomForExtra, SLACK } from './tone-wheel-limits.ts';
import {
  hasWindows,
  leastPitchAngle,
  pitchAngle,
  type ToneWheelSpec,
  toothHeight,
  toothTop,
  widthRadius,
} from './tone-wheel-tooth.ts';
import { largestCorner, windowShape } from './tone-wheel-window.ts';

/** The closed rim and the height that it leaves for the windows; empty for open teeth. */
export function rimFaults(spec: ToneWheelSpec): string[] {
  const { rim, outside, root, tipBreak } = spec;
  if (!hasWindows(spec) || rim === undefined) return [];
  if (!(rim > 0) || !Number.isFinite(rim)) {
    return [`rim: ${mm(rim)} must be more than 0 mm. Is a number or a unit missing?`];
  }
  if (toothHeight(spec) < LEAST_LAND) {
    return [
      `rim: ${mm(rim)} leaves no window between its inside of ${mm(outside - 2 * rim)} and the inside of the windows ` +
        `of ${mm(root)}, both diameters. Allowed: less than ${mm((outside - root) / 2)}. Is the rim a diameter?`,
    ];
  }
  if (tipBreak > 0) {
    return [
      `tipBreak: ${mm(tipBreak)} is for open teeth: windows have no tips. Use 0; rootRadius rounds their corners.`,
    ];
  }
  return [];
}

/** The bars, the windows and their corners. For a spec whose rim has no fault. */
export function windowFaults(spec: ToneWheelSpec): string[] {
  const sharp = windowShape({ ...spec, rootRadius: 0 });
  const meet = sharp.flankOffset / sin(pitchAngle(spec) / 2 - sharp.flankAngle);
  if (sharp.innerR - meet < SLACK) {
    return [
      `root: ${mm(spec.root)} is too deep: straight flanks of neighbouring bars meet at ${mm(2 * meet)} diameter, and ` +
        'the window closes. Allowed: a larger inside of the windows. Is the bar-to-pitch ratio too large, or would ' +
        'radial flanks do?',
    ];
  }
  const bar = spec.ratio * pitchAngle(spec) * (spec.flanks === 'radial' ? sharp.innerR : widthRadius(spec));
  const window = (pitchAngle(spec) - 2 * sharp.innerStart) * sharp.innerR;
  if (Math.min(bar, window) < LEAST_LAND) {
    return [
      `ratio: ${spec.ratio} with ${spec.teeth} windows leaves a bar of ${mm(bar)} and a window of ${mm(window)}; ` +
        `each must keep ${mm(LEAST_LAND)} at least, or the windows overlap. Is the number of teeth right?`,
    ];
  }
  if ((spec.extra ?? 0) > 0) {
    const middle = leastPitchAngle(spec) / 2 - sharp.flankAngle;
    const narrow = (leastPitchAngle(spec) - 2 * sharp.innerStart) * sharp.innerR;
    if (!(middle > 0) || sharp.innerR - sharp.flankOffset / sin(middle) < SLACK || narrow < LEAST_LAND) {
      return [noRoomForExtra('bar', bar, 'window', window)];
    }
  }
  const limit = largestCorner(spec);
  if (spec.rootRadius > limit + SLACK) {
    const beside = (spec.extra ?? 0) > 0 ? ', and halved by the extra bar' : '';
    const size = `${mm(window)} wide inside${beside} and ${mm(toothTop(spec) - spec.root / 2)} high`;
    return [
      `rootRadius: ${mm(spec.rootRadius)} does not fit the corners of the window, which is ${size}. ` +
        `Allowed: up to ${mm(limit)}. Is it a diameter?`,
    ];
  }
  return [];
}
