/** How much of a file is looked at, so that a hostile one costs seconds and not hours, and how near is "the same place". */

/** Larger files are refused, bytes. A wheel of 3600 teeth in short lines is 4 MB. */
export const mostBytes = 64 * 1024 * 1024;

/** Entities, blocks opened included, and stretches of all of them together. */
export const mostEntities = 200_000;
export const mostStretches = 500_000;

/** Stretches that a picture of the drawing shows. */
export const mostDrawn = 50_000;

/** Blocks within blocks. */
export const deepestBlock = 16;

/** Ends nearer than this, mm, are joined into one contour. Common practice: importers join gaps under 0.01 mm. */
export const joinWithin = 0.01;

/** Two curves that run together within this, mm, are one curve drawn twice. */
export const sameWithin = 0.005;

/** Common run, mm, from which two curves count as lying on one another. */
export const leastOverlap = 0.02;

/** Stretches shorter than this, mm, make a machine stutter (common practice). */
export const tinyLength = 0.01;

/** A spline or an ellipse is followed by lines that stay within this, mm. */
export const curveWithin = 0.002;

/** Cuts nearer than this, mm, are one thick line drawn as two: no web is that narrow. The narrowest published laser kerf. */
export const narrowestKerf = 0.1;

/** No drawing of a part has a number beyond this; such a number is damage. */
export const wildNumber = 1e9;

/** What is left of one check's looking at pairs of stretches. */
export interface Budget {
  left: number;
}

/** Pairs that one check passes over: about half a second. */
export const fullBudget = (): Budget => ({ left: 100_000_000 });
