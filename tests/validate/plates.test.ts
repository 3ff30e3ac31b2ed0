/** The plates under the screws: joints drawn by hand, sums written out. mm, N, MPa */
import { describe, expect, it } from 'vitest';
import { flangeBending } from '../../src/validate/flange-bending.ts';
import { drawn, round, shape } from './drawn-screws.ts';
import { expectSaid, findingOf, type Patch } from './help.ts';

describe('the plates under the screws', () => {
  const said = (code: string, patch: Patch = {}, of: Patch = {}) =>
    findingOf({ findings: flangeBending.run(drawn(patch, of).joint) }, code);

  it.each([
    // 2 d + 12 t of the thinner plate (rule of pressure-vessel flanges).
    ['the flange of 14 under an adapter of 20', {}, 16 + 12 * 14],
    ['a flange that is not measured', { driving: { thickness: null } }, 16 + 12 * 20],
    ['a thinner adapter', { adapterSpec: { thickness: 10 } }, 16 + 12 * 10],
  ] as const)('distance of screws: %s', (_, of, limit) => {
    const finding = said('bolt-pitch-driving', {}, of);
    expectSaid(finding, { verdict: 'pass', value: 50 * Math.SQRT2, limit });
    expect(finding.source).toContain('(from memory)');
    expect(finding.why.includes('the flange is not measured')).toBe(limit === 16 + 12 * 20);
  });

  it('wider apart is a caution, with the plate that would do; a single screw and the wheel are not asked', () => {
    // Two on 300 stand 300 apart: (300 - 16) / 12 = 23.67.
    const finding = said('bolt-pitch-driving', { positions: round(2, 150) });
    expectSaid(finding, { verdict: 'caution', value: 300, limit: 184 });
    expect(finding.remedy).toContain('at least 23.7 mm');
    const codes = (patch: Patch) => flangeBending.run(drawn(patch).joint).map(({ code }) => code);
    expect(codes({ positions: round(1, 50) })).not.toContain('bolt-pitch-driving');
    expect(codes({ side: 'wheel' })).not.toContain('bolt-pitch-wheel');
  });

  it.each([
    ['surface', {}, 13, 20],
    ['counterbore', { head: { kind: 'counterbore', diameter: 15, depth: 8 }, diameter: 9 }, 13, 12],
    // A cone of 19 on a hole of 9 is 5 deep and spreads from 14; from there to its small end there are 2.5 more.
    ['countersink', { head: { kind: 'countersink', diameter: 19, angle: 90 }, diameter: 9 }, 14, 15 + 2.5],
    [
      'flat countersink',
      { head: { kind: 'countersink', diameter: 19, angle: 120 }, diameter: 9 },
      14,
      20 - 2.5 / Math.sqrt(3),
    ],
  ] as const)('shear under a head on a %s: F / (pi D t) against the yield in shear', (kind, hole, d, web) => {
    const isFlat = kind.includes('countersink');
    const patch = isFlat
      ? { head: { kind: 'flat' }, tightening: { seats: [{ under: 'head', part: 'adapter', face: 19, inner: 9 }] } }
      : {};
    const finding = said('head-web-shear-driving', patch, 'head' in hole ? shape(hole.head) : {});
    const hard = 300 / Math.sqrt(3);
    expectSaid(finding, { verdict: 'pass', value: 24_000 / (Math.PI * d * web), limit: hard / 1.5, digits: 4 });
  });

  it('a web too thin for its preload names the metal that is missing; none at all fails', () => {
    const at = (depth: number) =>
      said('head-web-shear-driving', {}, shape({ kind: 'counterbore', diameter: 15, depth }));
    const hard = 300 / Math.sqrt(3);
    // 24 kN on 13 pi: 5.09 mm at 115.5 MPa, 3.39 at 173.2.
    const needs = 24_000 / (Math.PI * 13 * (hard / 1.5));
    expect(at(20 - 5.1).verdict).toBe('pass');
    expect(at(20 - 5).verdict).toBe('caution');
    expect(at(20 - 3.4).verdict).toBe('caution');
    expect(at(20 - 3.35).verdict).toBe('fail');
    expect(at(20 - 4).remedy).toContain(`${(Math.ceil((needs - 4) * 10) / 10).toFixed(1)} mm thicker`);
    expect(at(20)).toMatchObject({ verdict: 'fail', value: Number.POSITIVE_INFINITY });
    expect(at(21).verdict).toBe('fail');
  });

  it('bends where the metal reaches farther on one side: 6 F e / (b t^2)', () => {
    // Head 13 on 20 of adapter: VDI 2230-1 0.348 + 0.013 ln(20/13) + 0.193 ln(30/13) = 0.515; spread 13 + 40 x 0.515 = 33.6.
    const tangent = 0.348 + 0.013 * Math.log(20 / 13) + 0.193 * Math.log(30 / 13);
    const spread = 13 + 40 * tangent;
    // 15 outwards of the 16.8 that it spreads to; 20 inwards is more than enough.
    const offset = (spread / 2 - 15) / 2;
    const finding = said('plate-bending-driving');
    expectSaid(finding, { verdict: 'pass', value: (6 * 24_000 * offset) / (spread * 400), limit: 200, digits: 4 });
    // A rim nearer to the screws: 5 outwards only.
    const near = said('plate-bending-driving', {}, { driving: { outside: { value: 110 } } });
    const thin = 0.348 + 0.013 * Math.log(20 / 13);
    const wide = 13 + 40 * thin;
    expect(near.value).toBeCloseTo((6 * 24_000 * ((wide / 2 - 5) / 2)) / (wide * 400), 4);
    // Twelve on 100 share the metal: no wider than 25.88.
    const crowded = said(
      'plate-bending-driving',
      { positions: round(12, 50) },
      { driving: { outside: { value: 110 } } },
    );
    expect(crowded.value).toBeCloseTo((6 * 24_000 * ((wide / 2 - 5) / 2)) / (100 * Math.sin(Math.PI / 12) * 400), 4);
  });

  it('is not assessed where nothing is known of torque or thickness', () => {
    expect(said('plate-bending-driving', { tightening: { preload: null } }).remedy).toContain('note beside the screws');
    expect(said('plate-bending-driving', {}, { driving: { outside: { value: 50 } } }).verdict).toBe('not assessed');
    const unknown = said(
      'plate-bending-driven',
      { side: 'driven', fastening: 'into_adapter' },
      { driven: { thickness: null } },
    );
    expect(unknown.remedy).toMatch(/^Give driving\.thickness and driven\.thickness/);
    const codes = (patch: Patch, of: Patch = {}) => flangeBending.run(drawn(patch, of).joint).map(({ code }) => code);
    expect(codes({ tightening: { preload: null } })).not.toContain('head-web-shear-driving');
    expect(codes({}, { adapterSpec: { groups: [] } })).not.toContain('head-web-shear-driving');
    expect(
      codes({ tightening: { seats: [{ under: 'head', part: 'driving flange', face: 13, inner: 9 }] } }),
    ).not.toContain('head-web-shear-driving');
  });
});
