/** Tools between the legs, the sensor beside its own foot, and the side of the ear: numbers worked out by hand. */
import { describe, expect, it } from 'vitest';
import { earAt } from '../../src/parts/bracket.ts';
import { bracketInJoint } from '../../src/products/bracket-solids.ts';
import { toLeg } from '../../src/validate/bracket-room.ts';
import { expectSaid, findingOf, judge, type Patch } from '../validate/help.ts';

/** Over the sound job's wheel (outside 178, root 169, 3 mm thick), gap 1: the ear's seat lies 26 mm over the teeth. */
const bracket: Patch = {
  bolts: { size: 'M6', spacing: 60, from_axis: 82, along: 32 },
  sensor: { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } },
};
const judged = (patch: Patch, sensor: Patch = { gap: 1 }) => judge({ sensor, bracket: { ...bracket, ...patch } });
const codes = (patch: Patch) => judged(patch).findings.map(({ code }) => code);

describe('tools', () => {
  it('a leg beside the bolts: on the round of its bend, and above it', () => {
    // Radius 4: 1.6 mm up the round stands sqrt(16 - 2.4^2) = 3.2 mm beyond its start; above it the leg stands at 4.
    expect(toLeg(10, 4, 90, 1.6)).toBeCloseTo(13.2, 9);
    expect(toLeg(10, 4, 90, 9)).toBeCloseTo(14, 9);
    // At 45 degrees the round ends 4 (1 - cos 45) = 1.172 up and 4 sin 45 = 2.828 out; then one out for each up.
    expect(toLeg(10, 4, 45, 1.17157 + 1)).toBeCloseTo(10 + 2.8284 + 1, 3);
  });

  it('a socket beside the arm of an angle', () => {
    // 26 mm from bolts to bend (see the other tests), washer 1.6 (ISO 7089): leg at 29.2; slots 4 long; socket 1.5 x 10 + 1 = 16.
    expectSaid(findingOf(judged({}), 'bracket-socket'), { verdict: 'pass', value: 29.2 - 2 - 8, limit: 0.5 });
    // Bolts 8 mm under the bend's start: 8 + 3.2 - 2 - 8 = 1.2; 7 mm: 0.2. Seat 26 - 3 - 4 = 19 over the teeth.
    const at = (run: number) =>
      findingOf(judged({ bolts: { size: 'M6', spacing: 90, from_axis: 89 + 19 - run, along: 32 } }), 'bracket-socket');
    expectSaid(at(8), { verdict: 'pass', value: 1.2, limit: 0.5 });
    const tight = at(7);
    expectSaid(tight, { verdict: 'caution', value: 0.2, limit: 0.5 });
    expect(tight.remedy).toContain('0.3 mm farther');
  });

  it('a spanner under the arm of a channel', () => {
    const low = (from: number): Patch => ({
      form: 'channel',
      bolts: { size: 'M6', spacing: 60, from_axis: from, along: 45 },
    });
    // Shims on the pad 98 - 89 + 1 = 10 up: 26 - 10 - 2 x 3 = 10 mm between foot and arm; washer 1.6, head 4 (ISO 4017, nominal).
    const tight = findingOf(judged(low(98)), 'bracket-under-arm');
    expectSaid(tight, { verdict: 'caution', value: 10 - 1.6 - 4, limit: 4 + 3 });
    expectSaid(findingOf(judged(low(70)), 'bracket-under-arm'), {
      verdict: 'pass',
      value: 38 - 1.6 - 4,
      limit: 7,
    });
    // Without an ear the arm is 18.2 + 2 x 6 = 30.2 wide; a socket on bolts 60 apart reaches in to 22 of the middle: it stays clear.
    const narrow = { ...low(98), sensor: { bore: 18.2, reach: 25, mass: '70 g' } };
    expect(codes(narrow)).not.toContain('bracket-under-arm');
    expect(codes(narrow)).toContain('bracket-socket');
  });

  it('heads on the far side of a step down have no leg beside them', () => {
    const step = (from: number): Patch => ({
      form: 'offset',
      bolts: { size: 'M6', spacing: 60, from_axis: from, along: 75 },
    });
    // Bolted low, the step goes up beside the heads; bolted high, it goes down, away from them.
    expect(codes(step(85))).toContain('bracket-socket');
    expect(codes(step(140))).not.toContain('bracket-socket');
  });
});

describe('the sensor beside its own foot', () => {
  it('the end of a foot that a channel brings back under the arm', () => {
    const near = (along: number) =>
      findingOf(
        judged({ form: 'channel', bolts: { size: 'M6', spacing: 60, from_axis: 98, along } }),
        'bracket-own-foot',
      );
    // Foot: 3.3 + 6 + 2 = 11.3 from the bolts to its end; nose 9.1 from the axis.
    expectSaid(near(45), { verdict: 'pass', value: 45 - 11.3 - 9.1, limit: 1 });
    expectSaid(near(21.1), { verdict: 'caution', value: 0.7, limit: 1 });
    const into = near(20.8);
    expectSaid(into, { verdict: 'fail', value: 0.4, limit: 1 });
    expect(into.remedy).toContain('0.6 mm farther');
    // Turned round altogether, the foot lies across the sensor: nothing is left.
    expectSaid(near(15), { verdict: 'fail', value: 0, limit: 1 });
  });

  it('what stands out behind the ear, beside a foot that it hangs from', () => {
    const hung = (sensor: Patch) =>
      findingOf(
        judged({
          bolts: { size: 'M6', spacing: 60, from_axis: 150, along: 32 },
          sensor: { bore: 18.2, reach: 25, ear: { distance: 22, size: 'M6' }, ...sensor },
        }),
        'bracket-own-foot',
      );
    // Inner face of the foot 32 - 3 = 29 from the sensor's axis, from 4 mm (the bend) over the ear upwards.
    expectSaid(hung({}), { verdict: 'pass', value: Math.hypot(29 - 9.1, 4), limit: 1 });
    expectSaid(hung({ behind: 35 }), { verdict: 'pass', value: 29 - 9.1, limit: 1 });
    expect(hung({}).why).toContain('bracket.sensor.behind');
  });
});

describe('the side of the ear', () => {
  it.each([
    ['driving', 'radial'],
    ['driven', 'radial'],
    ['driving', 'axial'],
    ['driven', 'axial'],
  ])('from the %s side, %s: counter-clockwise seen from the driven side', (towards, direction) => {
    const out = direction === 'radial' ? { from_axis: 100, along: 40 } : { from_axis: 86.75 + 45, along: 10 };
    const { joint } = judged(
      { form: 'flat', towards, bolts: { size: 'M6', spacing: 60, ...out } },
      { gap: 1, direction },
    );
    const [own] = bracketInJoint(joint);
    const axes = own?.places[0]?.axes;
    const ear = joint.bracket && earAt(joint.bracket.spec);
    if (!axes || !ear) throw new Error('no bracket in the joint');
    // The blank's y is z x x; at the sensor (x of the joint) counter-clockwise is the joint's y.
    const across = axes.z[2] * axes.x[0] - axes.z[0] * axes.x[2];
    expect(across * ear.y).toBeCloseTo(22, 9);
  });
});
