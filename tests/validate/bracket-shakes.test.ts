/** Brackets drawn by hand at the limits of cutting, bending and shaking; sums on paper. mm, Hz, rpm */
import { describe, expect, it } from 'vitest';
import { bracketSheet } from '../../src/validate/bracket-sheet.ts';
import { bracketVibration } from '../../src/validate/bracket-vibration.ts';
import type { Check } from '../../src/validate/check.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

const bend = { angle: 90, direction: 'up', radius: 4, k: 0.43 };
const spec = (patch: Patch): Patch => ({ bracket: { spec: patch } });

describe('cutting, bending, shaking', () => {
  const { joint } = judge({
    sensor: { gap: 1 },
    bracket: {
      bolts: { size: 'M6', spacing: 60, from_axis: 82, along: 32 },
      sensor: { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } },
      firing: { cylinders: 6, speed: '3000 rpm', strokes: 2 },
    },
  });
  const about = (check: Check, code: string, ...patches: Patch[]) =>
    findingOf({ findings: check.run(bent(joint, ...patches)) }, code);

  it('the tightest bend counts, and the longest round for the holes beside it', () => {
    const bends = [
      { ...bend, radius: 4 },
      { ...bend, radius: 2.5 },
    ];
    expect(about(bracketSheet, 'bracket-bend-radius', spec({ bends })).value).toBe(2.5);
    const limit = (...radii: number[]) =>
      about(bracketSheet, 'bracket-hole-to-bend', spec({ bends: radii.map((radius) => ({ ...bend, radius })) }))
        .limit ?? 0;
    // The rule grows with the radius, one for one (a press maker's chart: so many thicknesses and the radius).
    expect(limit(4, 2.5) - limit(2.5, 2.5)).toBeCloseTo(1.5, 9);
    expect(limit(2.5, 4)).toBeCloseTo(limit(4, 2.5), 9);
  });

  it.each([
    // Half of a bend of radius 4 in sheet of 3, K 0.43: pi/4 x (4 + 0.43 x 3) = 4.155; the usual die of 25 bends 17.5 (a press maker's chart).
    [[10, 60], 'foot', 10, 1, /^Move the bolts farther from the sensor/],
    [[60, 10], 'arm', 10, 1, /^Give more bracket\.edge/],
    [[60, 5, 60], 'step between the bends', 5, 2, /^Move the bolts \(bracket\.bolts\) so that the step gets higher/],
    [[60, 60, 10], 'arm', 10, 1, /^Give more bracket\.edge/],
  ] as const)('straights of %o: the shortest is the %s', (straights, name, straight, halves, says) => {
    const bends = straights.slice(1).map(() => bend);
    const finding = about(bracketSheet, 'bracket-flange', spec({ straights, bends }));
    const half = (Math.PI / 4) * (4 + 0.43 * 3);
    expectSaid(finding, { verdict: 'caution', value: straight + halves * half, limit: 17.5, digits: 4 });
    expect(finding.title).toBe(`shortest flange of the bracket: the ${name}`);
    expect(finding.remedy).toMatch(says);
  });

  it('a flange of seven tenths of what the die bends drops into it', () => {
    const half = (Math.PI / 4) * (4 + 0.43 * 3);
    const at = (length: number) =>
      about(bracketSheet, 'bracket-flange', spec({ straights: [length - half, 60] })).verdict;
    expect([at(17.5), at(17.4), at(12.25), at(12.2)]).toEqual(['pass', 'caution', 'caution', 'fail']);
  });

  it('no die is asked where none bends it', () => {
    const codes = bracketSheet.run(bent(joint, { bracket: { die: null } })).map(({ code }) => code);
    expect(codes).not.toContain('bracket-flange');
    const flat = bracketSheet.run(bent(joint, spec({ bends: [] }))).map(({ code }) => code);
    expect(flat).toEqual(['bracket-web', 'bracket-hole']);
  });

  it('webs and holes against what the service cuts, in thicknesses: 3 mm sheet', () => {
    const holes = (gap: number) => [
      { kind: 'circle', x: 0, y: 0, r: 2, feature: 'a' },
      { kind: 'circle', x: 4 + gap, y: 0, r: 2, feature: 'b' },
    ];
    const at = (web: number, gap: number) =>
      about(bracketSheet, 'bracket-web', {
        job: { sheet: { web } },
        bracket: { part: { outside: { kind: 'circle', x: 0, y: 0, r: 200, feature: 'o' }, holes: holes(gap) } },
      });
    expectSaid(at(1.2, 3.6), { verdict: 'pass', value: 3.6, limit: 3.6 });
    expectSaid(at(0.2, 0.55), { verdict: 'fail', value: 0.55, limit: 0.6 });
    expect(at(1.2, 3.5).verdict).not.toBe('pass');
    const hole = (share: number, patch: Patch) =>
      about(bracketSheet, 'bracket-hole', { job: { sheet: { hole: share } } }, spec(patch));
    const sizes = (a: number, b: number, c: number | null) => ({
      foot: { hole: a },
      sensor: { bore: b, ear: c === null ? null : { hole: c } },
    });
    expectSaid(hole(2.2, sizes(6.6, 18, null)), { verdict: 'pass', value: 6.6, limit: 6.6 });
    expect(hole(1, sizes(6.6, 5, 7)).value).toBe(5);
    expect(hole(1, sizes(6.6, 18, 4.5)).value).toBe(4.5);
    expectSaid(hole(0.1, sizes(0.25, 18, null)), { verdict: 'fail', value: 0.25, limit: 0.3 });
  });

  const f = about(bracketVibration, 'bracket-firing').value ?? 0;
  const turning = (speed: number) => about(bracketVibration, 'bracket-shaft-orders', { job: { duty: { speed } } });
  it.each([
    // Twice a turn, and a quarter away from it (common practice).
    [2.5001, 'pass'],
    [2.4999, 'caution'],
    [2.0001, 'caution'],
    [1.9999, 'fail'],
  ] as const)('the bracket swings %f times a turn: %s', (times, verdict) =>
    expect(turning((60 * f) / times).verdict).toBe(verdict),
  );

  it('fails where the bracket swings below what shakes it, and asks for sheet that grows its frequency', () => {
    const limit = (speed: number) => (1.25 * 2 * speed) / 60;
    expect(turning(30 * f - 0.01).verdict).toBe('caution');
    expect(turning(30 * f + 0.01).verdict).toBe('fail');
    const speed = 36 * f;
    expectSaid(turning(speed), { verdict: 'fail', value: f, limit: limit(speed), digits: 4 });
    // 1.25 x 1.2 = 1.5 times as thick.
    expect(turning(speed).remedy).toContain('Use sheet of 4.5 mm');
  });

  it('an engine of two strokes fires every cylinder each turn, of four every other', () => {
    const fires = (engine: Patch) =>
      about(bracketVibration, 'bracket-firing', { job: { bracket: { firing: engine } } });
    expect(fires({}).limit).toBeCloseTo(1.25 * 6 * 50, 6);
    expect(fires({ strokes: 4 }).limit).toBeCloseTo(1.25 * 3 * 50, 6);
    expect(fires({ strokes: 4 }).why).toContain('fire 3.0 times a turn: up to 150 Hz');
    expect(about(bracketVibration, 'bracket-firing', { job: { bracket: { firing: undefined } } }).verdict).toBe(
      'not assessed',
    );
  });

  it('teeth in step with the bracket: a coil is tugged, unless that is slower than what counts', () => {
    const teeth = (sensor: Patch, speed: number) =>
      about(bracketVibration, 'bracket-tooth-rate', { job: { sensor, duty: { speed } } });
    // 60 teeth pass f times a second at f rpm.
    const coil = { kind: 'coil', crawl: undefined };
    expectSaid(teeth(coil, f - 0.01), { verdict: 'pass', value: f, limit: f - 0.01, digits: 4 });
    expectSaid(teeth(coil, f + 0.01), { verdict: 'caution', value: f, limit: f + 0.01, digits: 4 });
    expectSaid(teeth({ kind: undefined }, f + 0.01), { verdict: 'caution', value: f, limit: f + 0.01, digits: 4 });
    expectSaid(teeth({ kind: 'differential_hall' }, f + 0.01), { verdict: 'pass' });
    expectSaid(teeth({ ...coil, crawl: f + 0.005 }, f + 0.01), { verdict: 'pass' });
    expectSaid(teeth({ ...coil, crawl: f - 0.005 }, f + 0.01), {
      verdict: 'caution',
      value: f,
      limit: f + 0.01,
      digits: 4,
    });
    const codes = bracketVibration.run(bent(joint, { wheelSpec: null })).map(({ code }) => code);
    expect(codes).not.toContain('bracket-tooth-rate');
  });

  it('ten times gravity: g / (2 pi f)^2 against the tolerance, then the gap', () => {
    const sag = (10 * 9806.65) / (2 * Math.PI * f) ** 2;
    const at = (tolerance: number, nominal: number) =>
      about(bracketVibration, 'bracket-sag', { bracket: { gap: { tolerance, nominal } } });
    expectSaid(at(sag, 9), { verdict: 'pass', value: sag, limit: sag });
    expectSaid(at(sag - 1e-4, sag), { verdict: 'caution', value: sag, limit: sag - 1e-4 });
    expectSaid(at(sag - 1e-4, sag - 1e-5), { verdict: 'fail', value: sag, limit: sag - 1e-4 });
    // A quarter of it allowed: twice as thick.
    expect(at(sag / 4, sag / 2).remedy).toContain('Use sheet of 6.0 mm');
  });

  it('a flat tab of twenty thicknesses is a reed: after the last bend, or from the bolts on', () => {
    const tab = (patch: Patch) => about(bracketVibration, 'bracket-tab', spec(patch));
    expectSaid(tab({ straights: [99, 60] }), { verdict: 'pass', value: 60, limit: 60 });
    expectSaid(tab({ straights: [9, 60.1] }), { verdict: 'caution', value: 60.1, limit: 60 });
    expectSaid(tab({ bends: [], straights: [75], foot: { edge: 12 } }), { verdict: 'caution', value: 63, limit: 60 });
  });
});
