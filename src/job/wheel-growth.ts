/** When a wheel whose outside was left open has grown so much that its owner should hear of it. */
import type { WheelGrowth } from './joint.ts';

/**
 * A wheel is told of where it comes out more than this many times as large as its screws, the adapter and the flanges ask for. Held against
 * a flange it would say little: seat, screws and teeth alone make an ordinary wheel 1.3 to 1.5 times its flange. Choice of this program.
 */
export const mostGrowth = 1.25;

/** The outside up to which nothing is said, mm. */
export const quietUpTo = ({ start }: WheelGrowth): number => mostGrowth * start;

/** Whether the wheel has grown beyond it. */
export const hasGrown = (growth: WheelGrowth): boolean => growth.outside > quietUpTo(growth) + 1e-9;
