/**
 * Two weights of fixed mass turned until together they make the wanted correction: band clamps on a shaft.
 *
 * The two and their sum are a triangle with sides u1, u2 and U. By the law of cosines the first stands off the wanted direction by
 * acos((U^2 + u1^2 - u2^2) / (2 U u1)), the second by the like angle on the other side; for equal clamps both are acos(U / (2 u)).
 * Source: geometry.
 */
import { hypot } from '../units/hypot.ts';
import { acos, cos, sin } from '../units/trig.ts';

export type ClampSetting =
  | {
      readonly kind: 'set';
      /** Degrees each clamp's head is turned from the wanted direction: the first counter-clockwise, the second clockwise. */
      readonly turns: readonly [number, number];
      /** How much the sum grows when both heads are moved one degree towards the wanted direction, g. */
      readonly gramsPerDegree: number;
    }
  /** The wanted correction is more than both side by side: each must weigh at least `least`, g. */
  | { readonly kind: 'too light'; readonly least: number }
  /** Clamps of different masses cannot make so small a sum; `least` is the smallest they make, g. */
  | { readonly kind: 'too unlike'; readonly least: number };

/**
 * Angles for two clamps.
 * @param wanted size of the correction, g, >= 0; with 0 equal clamps stand opposite each other
 * @param masses what each head weighs more than the plain band, g, > 0
 */
export function setClamps(wanted: number, masses: readonly [number, number]): ClampSetting {
  const [one, two] = masses;
  if (wanted > one + two) return { kind: 'too light', least: wanted / 2 };
  if (wanted < Math.abs(one - two)) return { kind: 'too unlike', least: Math.abs(one - two) };
  const turn = (own: number, other: number) => {
    // Equal clamps and nothing wanted: opposite each other, whichever way.
    if (wanted === 0) return 90;
    const cosine = (wanted * wanted + own * own - other * other) / (2 * wanted * own);
    return (acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI;
  };
  const turns = [turn(one, two), turn(two, one)] as const;
  const sum = (less: number) => {
    const [first, second] = turns.map((degrees) => ((degrees - less) * Math.PI) / 180) as [number, number];
    return hypot(one * cos(first) + two * cos(second), one * sin(first) - two * sin(second));
  };
  return { kind: 'set', turns, gramsPerDegree: sum(1) - wanted };
}
