/** Millimetres in one inch, exact since 1959. Inch standards are kept in inches here and leave in millimetres. */
export const mmPerInch = 25.4;

/** Newton per square millimetre in one ksi. */
export const mpaPerKsi = 6.894757;

/** Inches to millimetres, rounded to a micrometre: finer digits in a converted inch figure are noise. */
export function inchesToMm(inches: number): number {
  return Math.round(inches * mmPerInch * 1000) / 1000;
}
