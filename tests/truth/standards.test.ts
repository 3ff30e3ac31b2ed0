import { describe, expect, it } from 'vitest';
import { clearanceHole } from '../../src/standards/clearance-holes.ts';
import { counterboreFor } from '../../src/standards/counterbores.ts';
import { mmPerInch } from '../../src/standards/inch.ts';
import { toleranceLimits } from '../../src/standards/iso286.ts';
import { findMaterial } from '../../src/standards/materials.ts';
import { propertyClass } from '../../src/standards/property-classes.ts';
import { screwHead } from '../../src/standards/screw-heads.ts';
import { must } from '../../src/standards/table.ts';
import { leastEngagement } from '../../src/standards/thread-engagement.ts';
import { threadLimits } from '../../src/standards/thread-limits.ts';
import { findThread } from '../../src/standards/threads.ts';
import { fitTruths, limitTruths } from './standards-fits.truth.ts';
import {
  bearingAreaTruths,
  counterboreTruths,
  headPressureTruths,
  loadTruths,
  materialTruths,
  softAluminiumEngagement,
} from './standards-screws.truth.ts';
import {
  basicDiameterTruths,
  equalStrengthTruths,
  inchStressAreaTruths,
  shearAreaTruths,
  stressAreaTruths,
  threadLimitTruths,
  unc2bTruths,
} from './standards-threads.truth.ts';

const micrometres = (mm: number) => mm * 1000;
const thread = (designation: string) => must(findThread(designation));

describe('ISO 286 limits as published', () => {
  it('has the 93 published limits', () => expect(limitTruths).toHaveLength(93));

  it.each(limitTruths)('$what ($source)', ({ size, zone, lower, upper }) => {
    const limits = must(toleranceLimits(size, zone));
    expect(micrometres(limits.lower)).toBeCloseTo(lower, 6);
    expect(micrometres(limits.upper)).toBeCloseTo(upper, 6);
  });

  it.each(fitTruths)('$what ($source)', ({ size, hole, shaft, least, most }) => {
    const inside = must(toleranceLimits(size, hole));
    const outside = must(toleranceLimits(size, shaft));
    expect(micrometres(inside.lower - outside.upper)).toBeCloseTo(least, 6);
    expect(micrometres(inside.upper - outside.lower)).toBeCloseTo(most, 6);
  });
});

describe('threads as published', () => {
  it.each(basicDiameterTruths)('$thread basic diameters ($source)', (truth) => {
    const found = thread(truth.thread);
    expect(Math.abs(found.d2 - truth.d2)).toBeLessThan(0.0011);
    expect(Math.abs(found.D1 - truth.D1)).toBeLessThan(0.0011);
    expect(Math.abs(found.d3 - truth.d3)).toBeLessThan(0.0011);
  });

  it.each(stressAreaTruths)('$thread stress area ($source)', ({ thread: name, As }) => {
    expect(Math.abs(thread(name).stressArea / As - 1)).toBeLessThan(0.005);
  });

  it.each(inchStressAreaTruths)('$thread stress area ($source)', ({ thread: name, At, halfDigit }) => {
    const { d, pitch, stressArea } = thread(name);
    const byFormula = (Math.PI / 4) * ((d - 0.9743 * pitch) / mmPerInch) ** 2;
    expect(Math.abs(byFormula - At)).toBeLessThan(halfDigit * 1.2);
    expect(Math.abs(stressArea / mmPerInch ** 2 - At)).toBeLessThan(halfDigit);
  });

  it.each(threadLimitTruths)('$thread 6g/6H limits ($source)', ({ thread: name, limits }) => {
    const { d, d2, D1, D2 } = must(threadLimits(thread(name)));
    const ours: Readonly<Record<string, number>> = {
      dmax: d.max,
      dmin: d.min,
      d2max: d2.max,
      d2min: d2.min,
      D1max: D1.max,
      D2max: D2.max,
    };
    for (const [which, printed] of Object.entries(limits)) {
      expect(Math.abs((ours[which] ?? Number.NaN) - printed), which).toBeLessThan(0.00101);
    }
  });

  // ASn = pi Le/P dmin (P/2 + (dmin - D2max)/sqrt 3), ASs = pi Le/P D1max (P/2 + (d2min - D1max)/sqrt 3): FED-STD-H28.
  it.each(shearAreaTruths)(
    '$thread shear areas from our limits ($source)',
    ({ thread: name, Le, internal, external }) => {
      const { d, d2, D1, D2 } = must(threadLimits(thread(name)));
      const P = thread(name).pitch;
      const ASn = ((Math.PI * Le) / P) * d.min * (P / 2 + (d.min - D2.max) / Math.sqrt(3));
      const ASs = ((Math.PI * Le) / P) * D1.max * (P / 2 + (d2.min - D1.max) / Math.sqrt(3));
      expect(Math.abs(ASn / internal - 1)).toBeLessThan(0.001);
      expect(Math.abs(ASs / external - 1)).toBeLessThan(0.001);
    },
  );

  // Le = 2 At / (pi Kn (1/2 + n (Es - Kn)/sqrt 3)), Kn = D1 max, Es = d2 min: FED-STD-H28.
  it.each(equalStrengthTruths)('$thread equal-strength engagement ($source)', ({ thread: name, Le }) => {
    const { d2, D1 } = must(threadLimits(thread(name)));
    const { pitch, stressArea } = thread(name);
    const ours = (2 * stressArea) / (Math.PI * D1.max * (0.5 + (d2.min - D1.max) / (pitch * Math.sqrt(3))));
    expect(Math.abs(ours / mmPerInch / Le - 1)).toBeLessThan(0.03);
  });

  it.each(unc2bTruths)('$thread 2B limits ($source)', ({ thread: name, D2max, D1max }) => {
    const { D1, D2 } = must(threadLimits(thread(name)));
    expect(Math.abs(D2.max / mmPerInch - D2max)).toBeLessThan(0.00011);
    expect(Math.abs(D1.max / mmPerInch - D1max)).toBeLessThan(0.00055);
  });
});

describe('screws, holes and strengths as published', () => {
  it.each(bearingAreaTruths)('$size $kind bearing area', ({ size, kind, area, tolerance }) => {
    const { dw = Number.NaN } = must(screwHead(kind, size));
    const hole = must(clearanceHole(size, 'medium')).diameter;
    expect(Math.abs(((Math.PI / 4) * (dw ** 2 - hole ** 2)) / area - 1)).toBeLessThan(tolerance);
  });

  it.each(headPressureTruths)('$what pressure under the head', ({ size, kind, preload, pressure, tolerance }) => {
    const { dw = Number.NaN } = must(screwHead(kind, size));
    const hole = must(clearanceHole(size, 'medium')).diameter;
    expect(Math.abs(preload / ((Math.PI / 4) * (dw ** 2 - hole ** 2)) / pressure - 1)).toBeLessThan(tolerance);
  });

  it.each(counterboreTruths)('$size counterbore', ({ size, diameter, depth }) => {
    expect(must(counterboreFor(size))).toMatchObject({ diameter, depth });
  });

  it.each(loadTruths)('$what ($source)', ({ thread: name, cls, load, newtons, tolerance }) => {
    const { stressArea, d } = thread(name);
    const { proofStress, tensileStrength } = must(propertyClass(cls, d));
    const ours = stressArea * (load === 'proof' ? proofStress : tensileStrength);
    expect(Math.abs(ours / newtons - 1)).toBeLessThan(tolerance);
  });

  it('M8 ISO 10642 head height follows from its cone: (17.92 - 8)/2 = 4.96 (dimension table of the standard)', () => {
    const { k, dk, d, coneAngle = Number.NaN } = must(screwHead('flat', 'M8'));
    expect(dk).toBe(17.92);
    expect((dk - d) / 2 / Math.tan((coneAngle / 2) * (Math.PI / 180))).toBeCloseTo(4.96, 6);
    expect(k).toBe(4.96);
  });

  it.each(materialTruths)('$what ($source)', ({ id, field, expected, tolerance }) => {
    expect(Math.abs(must(findMaterial(id))[field] - expected)).toBeLessThanOrEqual(tolerance);
  });

  it('engagement in soft aluminium is not shorter than a handbook example works out', () => {
    const { thread: name, cls, shearStrength, length } = softAluminiumEngagement;
    const soft = { ...must(findMaterial('6061-T6')), tensileStrength: shearStrength / 0.6, shearStrength };
    expect(must(leastEngagement(thread(name), soft, cls)).length).toBeGreaterThanOrEqual(length);
  });
});
