/** Parallel pins: what is published of them elsewhere, and every row built as a hole and measured. */
import { describe, expect, it } from 'vitest';
import { turnedMass } from '../../src/geometry/turned-mass.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec } from '../../src/parts/adapter-spec.ts';
import { judge } from '../../src/solids/manifold.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { dowelPin, dowelPinLengths, dowelPins, thickestDowelPin } from '../../src/standards/dowel-pins.ts';
import { toleranceLimits } from '../../src/standards/iso286.ts';
import { must } from '../../src/standards/table.ts';
import { onCircle, plainSpec } from '../parts/specs.ts';

// m6 as a pin dealer's page prints it from ISO 286, and H7 as the tables of ISO 286-2 have it; micrometres.
const published = [
  { d: 3, m6: [2, 8], H7: [0, 10] },
  { d: 4, m6: [4, 12], H7: [0, 12] },
  { d: 6, m6: [4, 12], H7: [0, 12] },
  { d: 8, m6: [6, 15], H7: [0, 15] },
  { d: 10, m6: [6, 15], H7: [0, 15] },
  { d: 12, m6: [7, 18], H7: [0, 18] },
  { d: 16, m6: [7, 18], H7: [0, 18] },
  { d: 20, m6: [8, 21], H7: [0, 21] },
] as const;

describe('limits of pins and their holes', () => {
  it.each(published)('$d mm: m6 $m6, H7 $H7', ({ d, m6, H7 }) => {
    const { limits } = must(dowelPin(d));
    expect(limits.lower).toBeCloseTo(d + m6[0] / 1000, 9);
    expect(limits.upper).toBeCloseTo(d + m6[1] / 1000, 9);
    const hole = must(toleranceLimits(d, 'H7'));
    expect([hole.lower, hole.upper].map((deviation) => Math.round(1000 * deviation))).toEqual([...H7]);
  });
});

describe('the table', () => {
  // A dealer's reprint of ASME B18.8.2 gives a 1/4 in pin 6400 lbf: 130 ksi, 899 MPa, for carbon or alloy steel. 550 HV, the softest that
  // ISO 8734 allows, is a tensile strength of about 1795 MPa (ISO 18265, from memory); six tenths of it are 1077 MPa.
  it('has breaking loads of one shear strength, between what is published of other pins and of their hardness', () => {
    const strengths = dowelPins.rows.map(({ d, shear }) => (1000 * shear) / ((Math.PI / 4) * d ** 2));
    expect(Math.min(...strengths)).toBeGreaterThan(899);
    expect(Math.max(...strengths)).toBeLessThan(1077);
    expect(Math.max(...strengths) / Math.min(...strengths)).toBeLessThan(1.02);
  });

  it('lists lengths that are in the row of lengths, and starts and ends with the row', () => {
    for (const { d, shortest, longest } of dowelPins.rows) {
      const { lengths } = must(dowelPin(d));
      expect([lengths[0], lengths.at(-1)]).toEqual([shortest, longest]);
      for (const length of lengths) expect(dowelPinLengths).toContain(length);
    }
  });

  it('names the sizes when there is none', () => {
    expect(dowelPin(7)).toMatchObject({ ok: false, why: expect.stringContaining('3, 4, 5, 6, 8, 10, 12, 16, 20') });
    expect(thickestDowelPin(2)).toMatchObject({ ok: false, why: expect.stringContaining('3 mm') });
    expect(must(thickestDowelPin(9.5)).d).toBe(8);
    expect(must(thickestDowelPin(20)).d).toBe(20);
  });
});

describe('every size built', () => {
  const holed = (d: number, drillDepth: number | null): AdapterSpec => ({
    ...plainSpec,
    bore: null,
    thickness: 60,
    groups: [
      {
        id: 'driving-dowels',
        side: 'driving',
        label: 'dowel holes',
        positions: onCircle(2, 84),
        shape: {
          kind: 'dowel',
          diameter: d,
          limits: { lower: d, upper: d, zone: 'H7' },
          face: 'driving',
          drillDepth,
          pointAngle: 118,
        },
      },
    ],
  });

  it.each(dowelPins.rows.map(({ d }) => d))('%d mm: through and blind holes weigh what they should', async (d) => {
    const solid = turnedMass(buildAdapter({ ...plainSpec, bore: null, thickness: 60, groups: [] })).volume;
    const area = (Math.PI / 4) * d ** 2;
    const through = buildAdapter(holed(d, null));
    expect(solid - turnedMass(through).volume).toBeCloseTo(2 * area * 60, 3);
    // A cone of 118 degrees is (d / 2) / tan 59 high and holds a third of its cylinder.
    const cone = (area * (d / 2 / Math.tan((59 * Math.PI) / 180))) / 3;
    const blind = buildAdapter(holed(d, 25));
    expect(solid - turnedMass(blind).volume).toBeCloseTo(2 * (area * 25 + cone), 3);
    expect(await judge(await meshTurned(through, { chordError: 0.02 }))).toMatchObject({ status: 'NoError', genus: 2 });
    expect(await judge(await meshTurned(blind, { chordError: 0.02 }))).toMatchObject({ status: 'NoError', genus: 0 });
    expect(through.features.find(({ purpose }) => purpose === 'dowel hole')).toMatchObject({ diameter: d });
  });
});
