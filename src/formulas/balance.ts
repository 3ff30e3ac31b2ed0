/** Balance sums of ISO 21940-11 for a rigid part turning about z. g, mm, rpm. */
import type { MassProperties } from '../model/mass.ts';

/**
 * Permissible specific unbalance e_per = G / omega, in micrometres.
 * @param G balance quality grade, mm/s, > 0
 * @param rpm highest service speed, > 0
 * Source: ISO 21940-11, as explained in a balancing-machine maker's article; e_per[um] = 9549.3 G / n.
 */
export function permissibleSpecificUnbalance(G: number, rpm: number): number {
  return (1000 * G * 60) / (2 * Math.PI * rpm);
}

/**
 * Permissible residual unbalance U_per = m e_per, in g.mm.
 * @param mass g
 */
export function permissibleUnbalance(mass: number, G: number, rpm: number): number {
  return (mass / 1000) * permissibleSpecificUnbalance(G, rpm);
}

/** A pair of unbalance vectors, g.mm, in two planes across the axis. */
export interface TwoPlanes {
  readonly low: { readonly x: number; readonly y: number };
  readonly high: { readonly x: number; readonly y: number };
}

/**
 * Split a part's static and couple unbalance into two planes at heights zLow and zHigh.
 *
 * The first moments S = m (cx, cy) and the products of inertia about the axis M = integral of (x, y) z dm are both kept:
 * U_high = (M - zLow S) / (zHigh - zLow), U_low = S - U_high. Statics; textbook rigid-rotor balancing.
 * @param mass properties in the same coordinates as the planes
 */
export function twoPlaneUnbalance(mass: MassProperties, zLow: number, zHigh: number): TwoPlanes {
  const [cx, cy, cz] = mass.centre;
  const static_ = { x: mass.mass * cx, y: mass.mass * cy };
  const moment = { x: mass.inertia.xz + static_.x * cz, y: mass.inertia.yz + static_.y * cz };
  const span = zHigh - zLow;
  const high = { x: (moment.x - zLow * static_.x) / span, y: (moment.y - zLow * static_.y) / span };
  return { low: { x: static_.x - high.x, y: static_.y - high.y }, high };
}

/** Centrifugal force of an unbalance, N. U in g.mm. F = U omega^2 / 10^6 (textbook). */
export function centrifugalForce(unbalance: number, rpm: number): number {
  const omega = (rpm * 2 * Math.PI) / 60;
  return unbalance * 1e-6 * omega * omega;
}
