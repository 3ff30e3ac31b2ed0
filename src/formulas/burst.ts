/**
 * Stresses in a turning disc of even thickness. mm, g/mm3, rad/s, MPa, grams.
 *
 * Valid for: thin elastic discs (thickness up to about half the radius: a thick one is up to 10 % worse at its middle), free at bore and rim
 * but for a dead mass round the rim. Left out: changes of thickness, holes (see the factor at the caller), bolts that hold the disc
 * together, heat. Source: Timoshenko, Shigley eq. 3-55, Roark: rotating discs; the rim by Lame's equations.
 */

/** g/(mm s2) are pascals. */
const perMegapascal = 1e-6;

/** A disc with the mass that hangs on its rim: teeth, screws. */
export interface TurningDisc {
  /** Bore radius a, mm; 0 for a full disc. */
  readonly inner: number;
  /** Rim radius b, mm, > a. */
  readonly outer: number;
  readonly thickness: number;
  /** g/mm3 */
  readonly density: number;
  /** Poisson's ratio. */
  readonly nu: number;
  /** Mass spread round the rim that carries nothing, g, and the radius of its centre, mm. */
  readonly rim?: { readonly mass: number; readonly radius: number } | undefined;
}

/** Outward pull of the dead rim on the disc's edge, MPa: M w^2 r / (2 pi b t). */
export function rimPull({ outer, thickness, rim }: TurningDisc, omega: number): number {
  if (!rim) return 0;
  return (rim.mass * rim.radius * omega * omega * perMegapascal) / (2 * Math.PI * outer * thickness);
}

/**
 * Radial and hoop stress at a radius, MPa: the disc's own
 * sr = rho w^2 (3 + nu)/8 (a^2 + b^2 - a^2 b^2/r^2 - r^2),
 * st = rho w^2 (3 + nu)/8 (a^2 + b^2 + a^2 b^2/r^2 - (1 + 3 nu)/(3 + nu) r^2), and Lame's for the rim's pull.
 * @param r inner <= r <= outer, mm; the centre of a full disc is 0
 */
export function discStress(
  disc: TurningDisc,
  omega: number,
  r: number,
): { readonly radial: number; readonly hoop: number } {
  const { inner: a, outer: b, density, nu } = disc;
  const own = (density * omega * omega * perMegapascal * (3 + nu)) / 8;
  // A full disc has no bore term, at its centre least of all.
  const [ratio, bore] = a > 0 ? [(a / r) ** 2, a * a] : [0, 0];
  const lame = (rimPull(disc, omega) * b * b) / (b * b - bore);
  return {
    radial: own * (bore + b * b - ratio * b * b - r * r) + lame * (1 - ratio),
    hoop: own * (bore + b * b + ratio * b * b - ((1 + 3 * nu) / (3 + nu)) * r * r) + lame * (1 + ratio),
  };
}

/** Greatest stress in the disc, MPa: the hoop stress at the bore, or at the centre of a full disc. */
export function greatestStress(disc: TurningDisc, omega: number): number {
  return discStress(disc, omega, disc.inner).hoop;
}

/**
 * Mean hoop stress over a section through the axis, MPa: what holds one half to the other,
 * [rho w^2 (b^3 - a^3)/3 + M w^2 r/(2 pi t)] / (b - a - holes). A tough disc bursts when it nears the tensile strength.
 * @param holes width that holes take out of one side of the section, mm, below b - a
 */
export function meanHoopStress(
  { inner: a, outer: b, thickness, density, rim }: TurningDisc,
  omega: number,
  holes = 0,
): number {
  const own = (density * (b ** 3 - a ** 3)) / 3;
  const dead = rim ? (rim.mass * rim.radius) / (2 * Math.PI * thickness) : 0;
  return ((own + dead) * omega * omega * perMegapascal) / (b - a - holes);
}

/** Revolutions per minute at which a stress that grows with the square of the speed reaches a limit. `unit`: stress at 1 rad/s. */
export function speedAtStress(limit: number, unit: number): number {
  return (Math.sqrt(limit / unit) * 30) / Math.PI;
}
