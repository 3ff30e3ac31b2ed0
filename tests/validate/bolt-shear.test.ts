/** The second line: screws in shear and holes in bearing, by hand after EN 1993-1-8. */
import { describe, expect, it } from 'vitest';
import { expectSaid, findingOf, judge, type Patch } from './help.ts';

const thick: Patch = { adapter: { thickness: 20 } };
const torque = (value: string): Patch => ({ duty: { torque: value } });

/** Half of the screws bear: T / (n/2 x R), kN. */
const force = (T: number, n: number, R: number) => T / (0.5 * n * R);

describe('screws in shear', () => {
  // M8 36.6 mm2, M10 58.0 mm2 (ISO 898-1), 10.9 thread in the plane: 0.5 x 1000 A / 1.25.
  it('carry the sound joint many times over', () => {
    expectSaid(findingOf(judge(), 'bolt-shear-driving'), {
      verdict: 'pass',
      value: force(320, 6, 42),
      limit: 14.64,
      digits: 1,
    });
    expectSaid(findingOf(judge(), 'bolt-shear-driven'), {
      verdict: 'pass',
      value: force(320, 4, 54),
      limit: 23.2,
      digits: 1,
    });
  });

  it('are a caution where friction stands before them, and a failure where nothing is known of it', () => {
    const over = findingOf(judge(torque('2500 N.m')), 'bolt-shear-driving');
    expectSaid(over, { verdict: 'caution', value: force(2500, 6, 42), limit: 14.64, digits: 1 });
    // 19.84 / 14.64 x 6 = 8.1
    expect(over.remedy).toContain('(9 of these)');
    const slippery: Patch = { adapter: { material: '6061-T6' }, driving: { material: '6061-T6' } };
    expect(findingOf(judge(torque('2500 N.m'), slippery), 'bolt-shear-driving').verdict).toBe('fail');
    expect(findingOf(judge(slippery), 'bolt-shear-driving').verdict).toBe('pass');
  });

  it('bear on their shank where the thread does not reach the plane', () => {
    // Socket screws through both flanges: head behind the driven flange of 9, adapter 60, driving flange 14.
    const both: Patch = {
      wheel: undefined,
      driving: {
        outside: 128,
        holes: { count: 6, circle: 108, diameter: 10.4, thread: undefined, depth: undefined },
        behind: 60,
      },
      driven: { holes: { count: 6, circle: 108, diameter: 10.4 }, behind: 60 },
      adapter: {
        thickness: 60,
        driving: { fastening: 'through', head: 'socket' },
        driven: { fastening: 'through', head: 'socket' },
      },
    };
    const judged = judge(both);
    // M10 shank 78.54 mm2: 0.6 x 1000 x 78.54 / 1.25; the thread begins 2 x 10 + 12 before the tip (ISO 4762).
    expect(findingOf(judged, 'bolt-shear-driven')).toMatchObject({ verdict: 'pass', limit: expect.closeTo(37.7, 1) });
    expect(findingOf(judged, 'bolt-shear-driven').why).toContain('The shank lies in the plane');
    expect(findingOf(judged, 'bolt-shear-driving')).toMatchObject({ verdict: 'pass', limit: expect.closeTo(23.2, 1) });
  });

  it('need a torque', () => {
    for (const code of ['bolt-shear-driving', 'bearing-driven']) {
      const finding = findingOf(judge({ duty: { torque: undefined } }), code);
      expectSaid(finding, { verdict: 'not assessed' });
      expect(finding.remedy).toMatch(/^Give duty\.torque/);
    }
  });
});

describe('walls of the holes', () => {
  it('are judged in the weaker part, one diameter deep', () => {
    // Adapter S355, hole 9, 11 mm to the recess of 62: k1 = 2.8 x 11/9 - 1.7 = 1.72, one row 1.5: 1.5 x 470 x 8 x 8 / 1.25.
    const finding = findingOf(judge(thick), 'bearing-driving');
    expectSaid(finding, { verdict: 'pass', value: force(320, 6, 42), limit: 36.096, digits: 2 });
    expect(finding.why).toContain('The adapter');
  });

  it('count the hole with the least metal beside it: one of six drawn in to 40, 8.995 mm from the recess of 62.01', () => {
    const [half, high] = [21, 42 * Math.sin(Math.PI / 3)];
    const at = [
      [42, 0],
      [half, high],
      [-half, high],
      [-40, 0],
      [-half, -high],
      [half, -high],
    ];
    const drawnIn: Patch = { driving: { holes: { count: undefined, circle: undefined, at } } };
    const k1 = (2.8 * 8.995) / 9 - 1.7;
    expect(findingOf(judge(thick, drawnIn), 'bearing-driving').limit).toBeCloseTo((k1 * 470 * 64) / 1250, 4);
  });

  it('count the thin flange, whose thickness must be known', () => {
    const driven = (patch: Patch) => findingOf(judge(thick, patch), 'bearing-driven');
    // Flange 9 thick, hole 10.4, 10 mm to its rim: k1 = 2.8 x 10/10.4 - 1.7 = 0.9923: x 470 x 10 x 9 / 1.25.
    expectSaid(driven({}), {
      verdict: 'pass',
      value: force(320, 4, 54),
      limit: (0.992308 * 470 * 90) / 1250,
      digits: 2,
    });
    const unknown = driven({ driven: { thickness: undefined } });
    expectSaid(unknown, { verdict: 'not assessed' });
    expect(unknown.remedy).toContain('driven.thickness');
  });

  it('give way in soft metal under a great torque', () => {
    const soft: Patch = { adapter: { material: '6061-T6', thickness: 20 } };
    expect(findingOf(judge(soft, torque('4000 N.m')), 'bearing-driving').verdict).toBe('caution');
  });
});

describe('a face whose dowels hold it alone', () => {
  const pins = { count: 2, reamed: 'together' };
  const judged = (torque: string, patch: Patch = {}) =>
    judge({ duty: { torque } }, { adapter: { driving: { dowels: pins } } }, patch);

  it('does not slip onto its screws: nothing is left to judge on them', () => {
    const held = judged('40 N.m');
    expect(findingOf(held, 'dowel-shear-driving').verdict).toBe('pass');
    for (const code of ['bolt-shear-driving', 'bearing-driving'])
      expect(findingOf(held, code)).toMatchObject({ verdict: 'pass', value: null, remedy: '' });
  });

  it('is judged as ever where they do not, or where the torque goes to and fro', () => {
    for (const made of [judged('4000 N.m'), judged('40 N.m', { duty: { reversing: true } })])
      expect(findingOf(made, 'bolt-shear-driving').value).not.toBeNull();
    expect(findingOf(judged('4000 N.m'), 'dowel-shear-driving').verdict).not.toBe('pass');
  });

  it('is judged as ever where the pins are not sure to bear first: their holes made apart', () => {
    const apart = judged('40 N.m', { adapter: { driving: { dowels: { reamed: 'separately' } } } });
    expect(findingOf(apart, 'dowel-shear-driving').verdict).toBe('pass');
    expect(findingOf(apart, 'bolt-shear-driving').value).not.toBeNull();
  });
});
