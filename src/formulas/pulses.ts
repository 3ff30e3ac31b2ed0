/**
 * Pulses that a toothed wheel makes, and what a controller that expects another number makes of them.
 *
 * A controller knows nothing but pulses: it divides what it counts by the number it was given. So it shows made / expected times
 * the truth. Source: definition; arithmetic. Valid for any positive numbers; what slips between tyre and road is left out.
 */

/** Millimetres in a kilometre and in a mile (5280 ft of 12 in, exact). */
export const mmPerKm = 1e6;
export const mmPerMile = 5280 * 12 * 25.4;

/**
 * Pulses over a distance on the road: teeth x turns of the shaft in a wheel turn / rolled circumference.
 * @param teeth teeth that pass in one turn of the shaft
 * @param axle turns of the shaft in one turn of the road wheels
 * @param rolled how far one turn of the wheels rolls, mm
 * @param distance mm
 */
export function pulsesOver(teeth: number, axle: number, rolled: number, distance: number): number {
  return (teeth * axle * distance) / rolled;
}

/** Pulses in a turn of the shaft that make so many over a distance; the other way round of `pulsesOver`. */
export function pulsesForTurn(pulses: number, axle: number, rolled: number, distance: number): number {
  return (pulses * rolled) / (axle * distance);
}

/** By how much a reading is out, as a share: plus reads fast. made and expected in the same unit. */
export function readingError(made: number, expected: number): number {
  return made / expected - 1;
}

/** Pulses a second: f = N n / 60, n in rpm. */
export function toothFrequency(teeth: number, rpm: number): number {
  return (teeth * rpm) / 60;
}

/** Speed of shaft in rpm at which the teeth pass so many times a second. */
export function rpmAtFrequency(teeth: number, hertz: number): number {
  return (60 * hertz) / teeth;
}

/** Speed of the tips, m/s: pi D n / 60000, D in mm, n in rpm. */
export function tipSpeed(diameter: number, rpm: number): number {
  return (Math.PI * diameter * rpm) / 60_000;
}

/** Speed of shaft in rpm at which the tips run so many m/s. */
export function rpmAtTipSpeed(diameter: number, speed: number): number {
  return (60_000 * speed) / (Math.PI * diameter);
}

/** Road speed in km/h at a speed of the shaft, rpm. */
export function roadSpeed(rpm: number, axle: number, rolled: number): number {
  return ((rpm / axle) * rolled * 60) / mmPerKm;
}
