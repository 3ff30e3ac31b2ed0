/** Metal under a screw head. mm. */

/**
 * Least web under a head as a share of the screw's diameter. Common practice. The sum behind it: the full preload of a class 10.9
 * screw shears a ring as wide as the head's bearing face. At 0.8 d that is 109 to 121 MPa for M8 to M12, a little over half of the
 * 205 MPa at which S355 yields in shear; at 0.5 d, which some shops allow, it is 174 to 194 MPa.
 */
export const webUnderHeadShare = 0.8;

/**
 * Least web under the head of a screw, mm: its share of the diameter, and never less than the least web of the part.
 * @param d nominal diameter of the screw, mm, > 0
 * @param web least web of the part, mm
 */
export function leastWebUnderHead(d: number, web: number): number {
  return Math.max(web, webUnderHeadShare * d);
}
