/** How holes stand to each other, in words, where it is not the even spacing that everybody expects. */
import type { Point } from '../model/drawing.ts';
import { atan2, sin } from '../units/trig.ts';
import { shortLines } from './captions.ts';
import { angleText, diameterText, type LabelUnits, lengthText } from './length-text.ts';

/** Places nearer than this are taken as the same, mm: coordinates rounded to a hundredth still make one circle. */
const samePlace = 0.015;

/** More angles than this are not written out. */
const mostAngles = 8;

/** Bolt circle of a group: its diameter when all holes lie on one about the axis, else null. */
export function boltCircle(holes: readonly Point[]): number | null {
  const radii = holes.map((h) => Math.hypot(h.x, h.y));
  const r = radii[0];
  if (r === undefined || holes.length < 2 || r < 1e-6) return null;
  return radii.every((other) => Math.abs(other - r) < samePlace) ? 2 * r : null;
}

/** " on" and the bolt circle; nothing where there is none. */
export function onCircleText(holes: readonly Point[], units: LabelUnits): string {
  const circle = boltCircle(holes);
  return circle === null ? '' : ` on ${diameterText(circle, units)}`;
}

/**
 * Lines that say how holes stand, in words; none when they are evenly spaced on one circle, or single.
 * @param holes centres in the joint's coordinates, mm (not turned over), so that angles run from its zero
 */
export function spacingLines(holes: readonly Point[], units: LabelUnits): string[] {
  if (holes.length < 2) return [];
  const circle = boltCircle(holes);
  if (circle === null) return ['not on one circle'];
  const sameAngle = (2 * samePlace * 360) / (Math.PI * circle);
  const turn = (p: Point): number => {
    const degrees = (atan2(p.y, p.x) * 180) / Math.PI;
    // A hair below zero is zero, not 360.
    return degrees < -sameAngle / 2 ? degrees + 360 : Math.max(0, degrees);
  };
  const angles = holes.map(turn).sort((a, b) => a - b);
  const gaps = angles.map((a, i) => (angles[i + 1] ?? (angles[0] as number) + 360) - a);
  const same = (a: number | undefined, b: number | undefined): boolean => Math.abs((a ?? 0) - (b ?? 0)) < sameAngle;
  if (gaps.every((g) => same(g, 360 / holes.length))) return [];
  // Four holes on one circle whose gaps repeat crosswise stand at the corners of a rectangle.
  if (holes.length === 4 && same(gaps[0], gaps[2]) && same(gaps[1], gaps[3])) {
    const [long, short] = [gaps[0], gaps[1]]
      .map((g) => circle * sin(((g as number) * Math.PI) / 360))
      .sort((a, b) => b - a) as [number, number];
    return [`in a rectangle ${lengthText(long, units)} x ${lengthText(short, units)} apart`];
  }
  if (holes.length > mostAngles) return ['unevenly spaced'];
  return shortLines(`unevenly spaced, at ${angles.map(angleText).join(', ')}`, 44);
}
