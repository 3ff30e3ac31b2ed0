/** A wheel whose outside was left open, told of where it grew beyond 1.25 times what it stands on (choice of this program). mm */
import { describe, expect, it } from 'vitest';
import { wheelSize } from '../../src/validate/wheel-size.ts';
import { drawn } from './drawn-screws.ts';
import { expectSaid, findingOf, type Patch } from './help.ts';

/** It stands on 160, so up to 200 nothing is said. */
const said = (outside: number, more: Patch = {}) =>
  findingOf(
    {
      findings: wheelSize.run(
        drawn({}, { wheelGrowth: { outside, start: 160, because: 'the sensor reads its teeth', ...more } }).joint,
      ),
    },
    'wheel-size',
  );

describe('the size of a wheel that was left open', () => {
  it.each([
    [160, 'pass'],
    [200, 'pass'],
    [200.01, 'caution'],
    [900, 'caution'],
  ] as const)('%f of 200: %s', (outside, verdict) => {
    expectSaid(said(outside), { verdict, value: outside, limit: 200 });
  });

  it('tells what it grew for where it did, and only there', () => {
    expect(said(200).why).toBe('The wheel came out at 200 mm; screws, adapter and flanges alone ask for 160 mm.');
    expect(said(210.5).why).toContain('came out at 210.5 mm');
    expect(said(210.5).why).toContain('It is that large because only then the sensor reads its teeth.');
  });

  it('names what would make it smaller, each with the size it then has and what that saves', () => {
    const smaller = [
      { key: 'wheel.teeth: 48', outside: 190 },
      { key: 'sensor.other: 1', outside: 205.25 },
    ];
    expect(said(220, { smaller }).remedy).toBe(
      'One change, and the wheel sized again with it: fewer teeth, which whatever counts them must be told (wheel.teeth: 48): 190 mm, 30 mm smaller; or a change (sensor.other: 1): 205.25 mm, 14.75 mm smaller. Or type wheel.outside, if there is room for it.',
    );
    expect(said(220, { smaller: [] }).remedy).toMatch(/^No single change .* Or type wheel\.outside/);
    // Nobody has looked yet.
    expect(said(220).remedy).toBe('Type wheel.outside, if there is room for it.');
  });

  it('says nothing of a wheel whose outside was typed', () => {
    expect(wheelSize.run(drawn({}, { wheelGrowth: null }).joint)).toEqual([]);
  });
});
