/** Thermal clearance worked by hand from published expansion coefficients. */

/** Expansion of aluminium 6061 (23.6e-6/K: three data sheets) and of low-carbon steel (11.7e-6/K: handbook). */
export const alphaAluminium = 23.6e-6;
export const alphaSteel = 11.7e-6;

/** dc = d (alpha_recess - alpha_spigot) dT, mm. By hand: 11.9e-6 x 75 x 80 = 0.0714. Tolerance half of the last digit. */
export const openingTruths = [
  {
    what: 'aluminium recess on a steel spigot, 75 mm, 80 K warmer',
    recess: alphaAluminium,
    spigot: alphaSteel,
    d: 75,
    dT: 80,
    dc: 0.0714,
    half: 5e-5,
  },
  {
    what: 'steel recess on an aluminium spigot, 75 mm, 80 K warmer',
    recess: alphaSteel,
    spigot: alphaAluminium,
    d: 75,
    dT: 80,
    dc: -0.0714,
    half: 5e-5,
  },
  {
    what: 'aluminium recess on a steel spigot, 100 mm, 50 K colder',
    recess: alphaAluminium,
    spigot: alphaSteel,
    d: 100,
    dT: -50,
    dc: -0.0595,
    half: 5e-5,
  },
] as const;
