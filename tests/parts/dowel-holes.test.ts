/** Dowel holes in the printed mock-up and on the pictures. */
import { describe, expect, it } from 'vitest';
import { holeGroupLines } from '../../src/drawing/hole-text.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec } from '../../src/parts/adapter-spec.ts';
import { printedSpec } from '../../src/parts/mock-up.ts';
import { onCircle, plainSpec } from './specs.ts';

const spec: AdapterSpec = {
  ...plainSpec,
  groups: [
    {
      id: 'driven-dowels',
      side: 'driven',
      label: 'dowel holes on the driven side, for pins 8 m6',
      positions: onCircle(2, 96),
      shape: {
        kind: 'dowel',
        diameter: 8,
        limits: { lower: 8, upper: 8.015, zone: 'H7' },
        face: 'driven',
        drillDepth: 14,
        pointAngle: 118,
      },
    },
  ],
  clocking: 25,
};

describe('dowel holes', () => {
  it('are printed wider by the allowance of holes, as deep as they are', () => {
    const [plain, printed] = [spec, printedSpec(spec, { holes: 0.3, registers: 0.2 })].map(
      (one) => buildAdapter(one).drillings.find(({ feature }) => feature === 'driven-dowels')?.profile,
    );
    const widest = (profile: typeof plain) => Math.max(...(profile ?? []).map(({ r }) => r));
    expect(widest(plain)).toBe(4);
    expect(widest(printed)).toBeCloseTo(4.15, 9);
    const full = (profile: typeof plain) => (profile ?? []).filter(({ r }) => r > 0).map(({ z }) => z);
    expect(full(printed)).toEqual(full(plain));
    expect(full(plain)).toEqual([spec.thickness - 14, spec.thickness]);
  });

  it('are labelled with zone, limits, depth and where the first one is', () => {
    const part = buildAdapter(spec);
    const feature = part.features.find(({ id }) => id === 'driven-dowels');
    if (!feature) throw new Error('no feature');
    expect(feature).toMatchObject({ purpose: 'dowel hole', side: 'driven', limits: { zone: 'H7' } });
    const holes = part.drillings.filter((drilling) => drilling.feature === feature.id);
    expect(holeGroupLines(feature, holes, 'mm')).toEqual([
      '2 x \u00d88.000 H7 on \u00d896.00',
      '8.000 to 8.015',
      'reamed, drill 14.0 deep; first at 25.00\u00b0',
      'dowel holes on the driven side, for pins 8 m6',
    ]);
    // 8.000 and 8.015 mm are 0.31496 and 0.31555 in: limits are rounded inwards.
    expect(holeGroupLines(feature, holes, 'in')[1]).toContain('[0.3150 to 0.3155 in]');
  });
});
