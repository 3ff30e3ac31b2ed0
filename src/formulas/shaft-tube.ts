/** A tube as a shaft: section, critical speed, torsion. mm, MPa, g/mm3, rpm, N.m. */
import { hypot } from '../units/hypot.ts';
import { polarMoment } from './torsion.ts';

/** A plain tube, mm: 0 < wall <= outside/2. */
export interface TubeSize {
  readonly outside: number;
  readonly wall: number;
}

export interface TubeSection {
  /** mm2 */
  readonly area: number;
  /** Second moment of area about a diameter, mm4; the polar one is twice that. */
  readonly moment: number;
  readonly inside: number;
}

/** Area and second moment of a tube: pi/4 (D^2 - d^2), pi/64 (D^4 - d^4). Textbook. */
export function tubeSection({ outside, wall }: TubeSize): TubeSection {
  const inside = Math.max(0, outside - 2 * wall);
  return {
    inside,
    area: (Math.PI / 4) * (outside ** 2 - inside ** 2),
    moment: polarMoment({ inside: inside / 2, outside: outside / 2 }) / 2,
  };
}

/** What of a metal bends a tube. */
export interface TubeMetal {
  /** E, MPa */
  readonly youngsModulus: number;
  /** g/mm3 */
  readonly density: number;
}

/**
 * Lowest critical speed of a bare tube between two pins, rpm: 60 pi/(2 L^2) sqrt(E I/(rho A)). Textbook (Euler-Bernoulli beam).
 * Left out: shear, which lowers it by about 1 % at L = 17 D; soft ends and forks, which lower it too.
 * @param length from pin to pin, mm
 */
export function pinnedCriticalSpeed(size: TubeSize, { youngsModulus, density }: TubeMetal, length: number): number {
  const { area, moment } = tubeSection(size);
  // g/mm3 to tonne/mm3, so that MPa and mm give seconds.
  return ((30 * Math.PI) / length ** 2) * Math.sqrt((youngsModulus * moment) / ((density / 1e6) * area));
}

/** The same by the trade's constant, rpm: C sqrt(D^2 + d^2)/L^2. @param constant C for rpm and mm */
export function handbookCriticalSpeed(size: TubeSize, constant: number, length: number): number {
  return (constant * hypot(size.outside, tubeSection(size).inside)) / length ** 2;
}

/** Length at which a shaft whose critical speed falls with the square of the length reaches `speed`: L sqrt(n_c/n). mm, rpm */
export function lengthForSpeed(length: number, criticalSpeed: number, speed: number): number {
  return length * Math.sqrt(criticalSpeed / speed);
}

/**
 * Share of a hollow round section that counts in shear: 6 (1+v) (1+m^2)^2 / ((7+6v) (1+m^2)^2 + (20+12v) m^2), m = d/D.
 * Cowper 1966 (from memory). 0.89 for a solid bar, 0.53 for a thin tube, both at v = 0.3.
 */
export function shearShare(size: TubeSize, poissonsRatio: number): number {
  const m = (tubeSection(size).inside / size.outside) ** 2;
  const v = poissonsRatio;
  const wide = (1 + m) ** 2;
  return (6 * (1 + v) * wide) / ((7 + 6 * v) * wide + (20 + 12 * v) * m);
}

/** Twist of a tube under a torque, degrees: T L/(G J). Textbook. @param torque N.m @param shearModulus MPa */
export function tubeTwist(size: TubeSize, torque: number, length: number, shearModulus: number): number {
  return ((1000 * torque * length) / (shearModulus * 2 * tubeSection(size).moment)) * (180 / Math.PI);
}

/**
 * Shear stress at which a long thin tube buckles in torsion, MPa: E/(3 sqrt2 (1-v^2)^(3/4)) (t/r)^(3/2), r to the middle of the wall.
 * Timoshenko and Gere, Theory of elastic stability (from memory). Real tubes with dents reach less of it: the check takes its share.
 */
export function tubeBuckling({ outside, wall }: TubeSize, youngsModulus: number, poissonsRatio: number): number {
  const share = wall / ((outside - wall) / 2);
  return (youngsModulus / (3 * Math.SQRT2 * (1 - poissonsRatio ** 2) ** 0.75)) * share ** 1.5;
}
