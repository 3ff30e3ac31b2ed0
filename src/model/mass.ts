/** Mass properties of a body. mm, g, g.mm2. */
export interface MassProperties {
  /** mm3 */
  readonly volume: number;
  /** g */
  readonly mass: number;
  /** Centre of mass, mm. */
  readonly centre: readonly [number, number, number];
  /**
   * Inertia about the centre of mass, g.mm2: the moments xx, yy, zz and the products of inertia xy = integral of x y dm,
   * and so on (positive sign convention: the tensor's off-diagonal cells are -xy, -xz, -yz).
   */
  readonly inertia: {
    readonly xx: number;
    readonly yy: number;
    readonly zz: number;
    readonly xy: number;
    readonly xz: number;
    readonly yz: number;
  };
}
