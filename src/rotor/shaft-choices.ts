/** Stock tubes held against what a shaft must do, ranked: what would do in place of the tube in the job. */

import { type TubeSize, tubeBuckling, tubeSection } from '../formulas/shaft-tube.ts';
import { shearYield, torsionStress } from '../formulas/torsion.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { goodShare, weldedShare } from '../standards/shaft-speed-rules.ts';
import { priceWords, type ShaftTubeRow, shaftTubes } from '../standards/shaft-tubes.ts';
import { must } from '../standards/table.ts';
import { criticalSpeed, type ShaftToBend, shaftMass } from './shaft-whirl.ts';

/** Safety against yielding in shear under the peak torque, and against buckling. Common practice. */
export const torsionSafety = 1.5;
/** Buckling of a real tube with its dents and ovality is taken to come at this share of the theory's. Common practice. */
const bucklingShare = 0.5;

/** Greatest shear stress in a tube under a torque, MPa. @param torque N.m */
export function tubeStress(size: TubeSize, torque: number): number {
  return torsionStress(torque, [{ inside: tubeSection(size).inside / 2, outside: size.outside / 2 }]);
}

export interface TubeStrength {
  /** Shear stress at which the tube gives, MPa. */
  readonly gives: number;
  readonly how: 'yields' | 'yields beside the weld' | 'buckles';
}

/** What a welded tube bears in torsion: yield in shear, less beside a weld in hardened aluminium, or the buckling of its wall. */
export function tubeStrength(size: TubeSize, metal: Material): TubeStrength {
  const isSoftened = metal.family === 'aluminium';
  const yields = shearYield(metal.yieldStrength) * (isSoftened ? weldedShare : 1);
  const buckles = bucklingShare * tubeBuckling(size, metal.youngsModulus, metal.poissonsRatio);
  return buckles < yields
    ? { gives: buckles, how: 'buckles' }
    : { gives: yields, how: isSoftened ? 'yields beside the weld' : 'yields' };
}

export interface TubeChoice {
  readonly row: ShaftTubeRow;
  readonly metal: Material;
  /** What its price class means. */
  readonly price: string;
  /** rpm, and the share of it that the duty speed is. */
  readonly critical: number;
  readonly share: number;
  /** Mass of tube and forks, g. */
  readonly mass: number;
  /** Share of what it bears under the design torque with its safety; null when no torque is known. */
  readonly torsion: number | null;
}

/**
 * Stock tubes that stay below 65 % of their critical speed at `speed` in this shaft's length and ends, and bear the torque: the least
 * price class first, then the lightest.
 * @param torque design torque, N.m, or null
 */
export function tubesThatDo(shaft: ShaftToBend, speed: number, torque: number | null): TubeChoice[] {
  return shaftTubes.rows
    .flatMap((row): TubeChoice[] => {
      const metal = must(findMaterial(row.material));
      const size = { outside: row.outside, wall: row.wall };
      const torsion =
        torque === null ? null : (torsionSafety * tubeStress(size, torque)) / tubeStrength(size, metal).gives;
      if (torsion !== null && torsion > 1) return [];
      const tried = { ...shaft, size, metal };
      const critical = criticalSpeed(tried);
      if (speed > goodShare * critical) return [];
      return [
        {
          row,
          metal,
          price: priceWords[row.price],
          critical,
          share: speed / critical,
          mass: shaftMass(tried),
          torsion,
        },
      ];
    })
    .sort((a, b) => a.row.price - b.row.price || a.mass - b.mass);
}

/** The same shaft made of another tube. */
export function madeOf(shaft: ShaftToBend, { row, metal }: Pick<TubeChoice, 'row' | 'metal'>): ShaftToBend {
  return { ...shaft, metal, size: { outside: row.outside, wall: row.wall } };
}
