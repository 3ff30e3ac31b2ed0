/** What sensors need: published targets pass their own rules, data sheets stand before usual figures, memory only cautions. */
import { describe, expect, it } from 'vitest';
import { type SensorInput, sensorNeeds } from '../../src/job/sensor-needs.ts';
import { demandVerdict, toothDemands } from '../../src/job/tooth-demands.ts';
import { toothMeasures } from '../../src/parts/tone-wheel.ts';
import { sensorKinds, toothRules } from '../../src/standards/tooth-rules.ts';
import { wheelSpec } from '../sheet/specs.ts';

const sensor = (keys: Partial<SensorInput>): SensorInput => ({ direction: 'radial', ...keys });

function verdicts(keys: Partial<SensorInput>, wheel: Parameters<typeof wheelSpec>[0]): Record<string, string> {
  const spec = wheelSpec({ screwHoles: null, bore: 20, ...wheel });
  const demands = toothDemands(toothMeasures(spec), spec, sensorNeeds(sensor(keys)));
  return Object.fromEntries(demands.map((demand) => [demand.code, demandVerdict(demand)]));
}

describe('published targets', () => {
  // Reference target of a gear-tooth sensor data sheet: 60 places, 120 across, tooth and valley 3, depth 3, face 6.
  it('takes the reference target of a differential Hall', () => {
    const said = verdicts(
      { kind: 'differential_hall' },
      { teeth: 60, outside: 120, root: 114, ratio: 0.5, thickness: 6, rootRadius: 0, tipBreak: 0, flanks: 'radial' },
    );
    expect(new Set(Object.values(said))).toEqual(new Set(['pass']));
    expect(Object.keys(said)).toContain('tooth-pitch');
  });

  // Crank-wheel page of an engine-control manual: 60-2 from 100 across, teeth 2.7 of 6 degrees, 3.5 high, 5 thick; 36-2 from 95.3.
  it.each([
    { teeth: 60, outside: 100, root: 93, ratio: 2.7 / 6 },
    { teeth: 36, outside: 95.3, root: 85.3, ratio: 4.45 / 10 },
  ])('takes the crank wheel with $teeth places for a coil', (wheel) => {
    const said = verdicts({ kind: 'coil' }, { ...wheel, missing: 2, thickness: 5, rootRadius: 0, flanks: 'radial' });
    expect(new Set(Object.values(said))).toEqual(new Set(['pass']));
  });

  // Least outside for tooth and valley of 2: N (t + v) / pi = 76.3944 for 60 (the data sheet's minima).
  it('fails just under the smallest wheel that the minima allow', () => {
    const at = (outside: number) =>
      verdicts(
        { kind: 'differential_hall', tooth: 2, valley: 2, spacing: 1.5 },
        { teeth: 60, outside, root: outside - 6, ratio: 0.5, thickness: 3, rootRadius: 0, flanks: 'radial' },
      );
    // Widths are measured straight across, so the least wheel is larger than along the arc by (pi / 120)^2 / 6.
    expect(at(76.3944 * 1.0003)).toMatchObject({
      'tooth-width': 'pass',
      'valley-width': 'pass',
      'tooth-pitch': 'pass',
    });
    expect(at(76.3944 * 0.999)).toMatchObject({ 'tooth-width': 'fail', 'valley-width': 'fail' });
  });
});

describe('data sheet and memory', () => {
  it('only cautions where a figure is from memory', () => {
    const said = verdicts(
      { kind: 'hall' },
      { teeth: 60, outside: 178, root: 169, ratio: 0.5, thickness: 3, rootRadius: 0.5 },
    );
    expect(said).toMatchObject({ 'valley-width': 'caution', 'wheel-thickness': 'caution', 'tooth-height': 'caution' });
  });

  it('lets the data sheet stand before the usual figure, and fails what misses it', () => {
    const wheel = { teeth: 60, outside: 178, root: 169, ratio: 0.5, thickness: 3, rootRadius: 0.5 };
    expect(verdicts({ kind: 'hall', valley: 3, thickness: 3, height: 3 }, wheel)).toMatchObject({
      'valley-width': 'pass',
      'wheel-thickness': 'pass',
      'tooth-height': 'pass',
    });
    expect(verdicts({ kind: 'hall', valley: 4.7 }, wheel)).toMatchObject({ 'valley-width': 'fail' });
  });

  it('asks no thickness and no height of a wheel seen from the side', () => {
    const from = (direction: 'radial' | 'axial') => sensorNeeds(sensor({ kind: 'differential_hall', direction }));
    expect(from('axial').of('thickness')).toBeNull();
    expect(from('axial').of('height')).toBeNull();
    expect(from('axial').of('tooth')?.value).toBe(2);
    expect(from('radial').of('thickness')?.value).toBe(3);
    expect(
      sensorNeeds(sensor({ kind: 'differential_hall', direction: 'axial', thickness: 2 })).of('thickness'),
    ).toEqual({
      value: 2,
      isOwn: true,
      memory: false,
      source: "the sensor's own data sheet",
    });
  });

  it('asks a pitch of twice the spacing', () => {
    expect(sensorNeeds(sensor({ kind: 'differential_hall', spacing: 1.5 })).of('pitch')).toMatchObject({
      value: 3,
      isOwn: true,
    });
    for (const { spacing, pitch } of toothRules.rows) if (spacing !== null) expect(pitch).toBe(2 * spacing);
  });

  it('takes the usual gap, or the middle of the data sheet', () => {
    expect(sensorNeeds(sensor({ kind: 'coil' })).gap).toEqual({ value: 0.8, isGiven: false });
    expect(sensorNeeds(sensor({ kind: 'coil', gap: 1 })).gap).toEqual({ value: 1, isGiven: true });
    expect(sensorNeeds(sensor({ gap_range: { least: 0.4, most: 1.4 } })).gap).toMatchObject({ isGiven: false });
    expect(sensorNeeds(sensor({ gap_range: { least: 0.4, most: 1.4 } })).gap?.value).toBeCloseTo(0.9, 12);
    expect(sensorNeeds(sensor({})).gap).toBeNull();
  });

  it('has a title, a source and a sane order of figures for every kind', () => {
    expect(toothRules.rows.map(({ sensor: kind }) => kind)).toEqual([...sensorKinds]);
    for (const row of toothRules.rows) {
      expect(row.source).not.toBe('');
      if (row.gapLeast !== null && row.gapMost !== null && row.gap !== null) {
        expect(row.gap).toBeGreaterThan(row.gapLeast);
        expect(row.gap).toBeLessThan(row.gapMost);
      }
      expect(row.coldest ?? 0).toBeLessThan(row.hottest ?? 0);
      if (row.recalled.length > 1) expect(row.memory).toBe(true);
    }
  });
});
