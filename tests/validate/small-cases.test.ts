/** Cases that the other files step over: each by a hand sum or by what must grow with what. */
import { describe, expect, it } from 'vitest';
import { pocketDepth } from '../../src/validate/heads.ts';
import { tightening } from '../../src/validate/tightening.ts';
import { drawn } from './drawn-screws.ts';
import { type Case, findingOf, judge, prove } from './help.ts';

const cases: readonly Case[] = [
  // The data sheet of the kind that the job names: 115 degC at most, -40 at least. Only the sensor's own sheet is sure enough to fail.
  {
    what: 'hotter than its kind bears, with no data sheet of its own',
    code: 'sensor-temperature',
    about: 'heat at',
    patch: { duty: { temperature: { cold: '-20 degC', hot: '125 degC' } } },
    verdict: 'caution',
    value: 125,
    limit: 115,
    says: /sensor\.temperature/,
    cure: { sensor: { temperature: { least: -40, most: 150 } } },
  },
  {
    what: 'colder than its kind bears',
    code: 'sensor-temperature',
    about: 'cold at',
    patch: { duty: { temperature: { cold: '-50 degC', hot: '60 degC' } } },
    verdict: 'caution',
    value: -50,
    limit: -40,
  },
];

describe('small cases', () => {
  it.each(cases)('$code, $verdict: $what', prove);

  it('washers pull on the adapter too: it bursts sooner', () => {
    const safe = (washer: boolean) =>
      findingOf(judge({ adapter: { driving: { washer } } }), 'burst-adapter').value ?? 0;
    expect(safe(true)).toBeLessThan(safe(false));
    // Six washers of about 7 g on a part of kilograms: no more than a per cent.
    expect(safe(true) / safe(false)).toBeGreaterThan(0.97);
  });

  it('a countersink is as deep as its print says: M6, M8 and M12 of DIN 74 form F, 3.6, 4.6 and 6.9 mm', () => {
    const depth = (wide: number, hole: number) =>
      pocketDepth({
        kind: 'passing',
        diameter: hole,
        headFace: 'driven',
        head: { kind: 'countersink', diameter: wide, angle: 90 },
      } as Parameters<typeof pocketDepth>[0]);
    // The print rounds to 0.1 mm.
    expect(Math.abs(depth(13.7, 6.6) - 3.6)).toBeLessThan(0.06);
    expect(Math.abs(depth(18.3, 9) - 4.6)).toBeLessThan(0.06);
    expect(Math.abs(depth(27.2, 13.5) - 6.9)).toBeLessThan(0.06);
  });

  it('a torque that was typed comes from the job, one that was worked out from statics', () => {
    const source = (duty: object) => findingOf(judge({ duty: { torque: undefined, ...duty } }), 'design-torque').source;
    expect(source({ torque: '320 N.m' })).toBe('the job');
    expect(source({ engine: { torque: '240 N.m', ratios: [3.5] } })).toBe('statics');
  });

  it('a screw that does not reach its thread engages nothing, and strips at nothing', () => {
    const { joint } = drawn(
      { fastening: 'into_adapter', engagement: { has: -1 } },
      { adapterMaterial: { id: 'x', shearStrength: 100, shearRule: 'given', memory: false } },
    );
    const [finding] = tightening.run(joint);
    expect(finding).toMatchObject({ value: 0, verdict: 'fail' });
    expect(finding?.why).toContain('with 0.00 mm engaged');
  });
});
