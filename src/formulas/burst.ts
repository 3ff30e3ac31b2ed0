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

/** A closed rim that bars hold to a hub, with windows between them. mm, g. */
export interface BarredRim {
  /** Inner and outer radius of the rim, and its thickness, mm. */
  readonly inner: number;
  readonly outer: number;
  readonly thickness: number;
  /** g/mm3 */
  readonly density: number;
  /** Poisson's ratio. */
  readonly nu: number;
  /** One bar: its mass, g, the radius of its centre and its least width, mm. */
  readonly bar: { readonly mass: number; readonly radius: number; readonly width: number };
  /** Equal places round the rim, and neighbouring ones without a bar. */
  readonly places: number;
  readonly missing: number;
  /** The shortest span between two bars, places; left out: 1. */
  readonly shortest?: number;
  /** All bars together, g; left out: those that are there, all alike. */
  readonly barMass?: number;
}

/** Mass of all bars that hang on a rim, g. */
export const hungMass = ({ bar, places, missing, barMass }: BarredRim): number =>
  barMass ?? (places - missing) * bar.mass;

/** Stresses in rim and bars, MPa: each the worst of its kind. */
export interface BarredRimStress {
  /** Hoop stress of the rim alone, with all bars hanging on it. */
  readonly hoop: number;
  /** Bending of the rim between bars. */
  readonly bending: number;
  /** Pull and bending in the bar that carries most. */
  readonly pull: number;
  readonly barBending: number;
}

/**
 * Upper bounds of what a turning rim with windows bears. Each part is loaded as if the others gave nothing: the rim turns free with the
 * bars as dead mass on it (so that the hub holds nothing); a beam of the rim, straight from bar to bar, carries its own outward load
 * q = rho t w omega^2 r as if there were no hoop; each bar pulls its share of the whole rim inwards. Between even bars no end of the beam
 * turns, so it bends by q s^2 / 12; over missing bars its ends may turn, so q s^2 / 8, the most that a beam of that span bends by
 * anywhere, and so beside a shorter span; a bar between two spans takes what they differ by. Sources: beam tables (Roark, Timoshenko); the disc above. Left out:
 * the round corners (see the factor at the caller), bending across the sheet, heat.
 */
export function barredRimStress(rim: BarredRim, omega: number): BarredRimStress {
  const { inner, outer, thickness: t, density, nu, bar, places, missing, shortest = 1 } = rim;
  const isEven = missing === 0 && shortest === 1;
  const w = outer - inner;
  const r = (inner + outer) / 2;
  const square = omega * omega * perMegapascal;
  const load = density * t * w * square * r;
  const pitch = (2 * Math.PI * r) / places;
  const joined = (missing + 1) * pitch;
  const moment = isEven ? (load * pitch ** 2) / 12 : (load * joined ** 2) / 8;
  const uneven = isEven ? 0 : (load * (joined ** 2 - (shortest * pitch) ** 2)) / 12;
  const ring = { inner, outer, thickness: t, density, nu };
  const held = missing === 0 ? pitch : (pitch + joined) / 2;
  return {
    hoop: greatestStress(ring, omega) + (hungMass(rim) * bar.radius * square) / (2 * Math.PI * t * w),
    bending: (6 * moment) / (t * w * w),
    pull: (load * held + bar.mass * bar.radius * square) / (bar.width * t),
    barBending: (6 * uneven) / (t * bar.width ** 2),
  };
}

/** Revolutions per minute at which a stress that grows with the square of the speed reaches a limit. `unit`: stress at 1 rad/s. */
export function speedAtStress(limit: number, unit: number): number {
  return (Math.sqrt(limit / unit) * 30) / Math.PI;
}
