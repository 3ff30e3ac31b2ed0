/** Angles round a whole turn. */

/** The same angle within one turn: degrees, from 0 up to and without 360, also where a hair below 0 would round to it. */
export const withinTurn = (degrees: number): number => ((degrees % 360) + 360) % 360;
