/** Finished parts: what was measured takes the place of the drawing, and the verdict is one a machinist acts on. */
import { describe, expect, it } from 'vitest';
import { stackOf } from '../../src/formulas/chain.ts';
import { asBuilt } from '../../src/inspect/as-built.ts';
import { characteristicsOf } from '../../src/inspect/characteristics.ts';
import { judgeSize, overall } from '../../src/inspect/disposition.ts';
import { linksTo } from '../../src/rotor/links.ts';
import { tiltLinks } from '../../src/rotor/tilt.ts';
import { unbalanceLinks } from '../../src/rotor/unbalance.ts';
import { errorsOf, findingOf, judge, type Patch } from '../validate/help.ts';

const built = (given: Patch): Patch => ({ built: given });
const size = (value: number, doubt = 0.002) => ({ value, doubt });

/*
 * The sound joint: a recess for the driving spigot of 62 +-0.01, H7 on 62.01 (62.010 to 62.040), and a spigot for the driven recess of
 * 60 H7, h6 on 60 (59.981 to 60.000). ISO 286-2: H7 30, h6 19 micrometres over 50 to 80.
 */
const drawn = judge();
/** Some failing check. */
const finding = findingOf(drawn, 'concentricity');
const verdictOn = (given: Patch) => findingOf(judge(built(given)), 'built-verdict');
const sizesOn = (given: Patch) => judge(built(given)).findings.filter(({ code }) => code === 'built-size');

describe('one size', () => {
  it.each([
    { what: 'recess within', side: 'driving', value: 62.025, says: 'accept', verdict: 'pass' },
    { what: 'recess too small: 0.005 under', side: 'driving', value: 62.005, says: 'rework', verdict: 'fail' },
    { what: 'spigot too large: 0.012 over', side: 'driven', value: 60.012, says: 'rework', verdict: 'fail' },
    {
      what: 'recess 0.010 too large: nothing to turn off, but it still passes',
      side: 'driving',
      value: 62.05,
      says: 'use as it is',
      verdict: 'caution',
    },
    {
      what: 'spigot 2 too small: another size was measured',
      side: 'driven',
      value: 57.9,
      says: 'look into it',
      verdict: 'caution',
    },
    {
      what: 'recess 1.5 too large',
      side: 'driving',
      value: 63.6,
      says: 'look into it',
      verdict: 'caution',
    },
    { what: 'radius typed', side: 'driving', value: 31.01, says: 'look into it', verdict: 'caution' },
    {
      what: 'nearer to its limit than the doubt',
      side: 'driving',
      value: 62.011,
      says: 'measure again',
      verdict: 'caution',
    },
    // A caliper good to 0.03 cannot tell any of these from a good part, and none of them from a bad one.
    {
      what: 'too small by a caliper',
      side: 'driving',
      value: 62.005,
      doubt: 0.03,
      says: 'measure again',
      verdict: 'caution',
    },
    {
      what: 'too large by a caliper',
      side: 'driving',
      value: 62.05,
      doubt: 0.03,
      says: 'measure again',
      verdict: 'caution',
    },
    {
      what: 'the very middle by a caliper',
      side: 'driving',
      value: 62.025,
      doubt: 0.03,
      says: 'measure again',
      verdict: 'caution',
    },
    {
      what: 'too large by more than the doubt',
      side: 'driven',
      value: 60.031,
      doubt: 0.03,
      says: 'rework',
      verdict: 'fail',
    },
  ])('$what: $says', ({ side, value, doubt, says, verdict }) => {
    const given = { adapter: { [side]: { register: size(value, doubt) } } };
    const [finding] = sizesOn(given);
    expect(finding?.why).toMatch(new RegExp(`Verdict: ${says}\\.$`));
    expect(finding?.verdict).toBe(verdict);
  });

  it('says how much to take off: from what brings it just within to what it must not pass', () => {
    const [recess] = sizesOn({ adapter: { driving: { register: size(62.005) } } });
    expect(recess?.remedy).toBe(
      'Bore the driving register, recess: take off 0.005 mm to 0.035 mm, to 62.010 mm to 62.040 mm.',
    );
    const [spigot] = sizesOn({ adapter: { driven: { register: size(60.012) } } });
    expect(spigot?.remedy).toContain('take off 0.012 mm to 0.031 mm, to 59.981 mm to 60.000 mm');
  });

  it('asks about a radius', () => {
    const [finding] = sizesOn({ adapter: { driving: { register: size(31.01) } } });
    expect(finding?.remedy).toMatch(/about half of 62\.010 mm: was a radius typed/);
  });

  it('scraps what no longer works: a spigot 0.17 loose fails the register check', () => {
    const given = { adapter: { driven: { register: size(59.71) } } };
    const [finding] = sizesOn({ ...given });
    // Loose by 0.29 to 0.32: beyond the 0.3 at which a register centres nothing.
    expect(finding?.why).toMatch(/Verdict: scrap\.$/);
    expect(finding?.remedy).toMatch(/Make it again, or bush it/);
    expect(verdictOn(given).title).toBe('the finished parts: scrap');
  });

  it('points at scales that say something else than the drawing', () => {
    const mass = drawn.joint.adapterMass.mass;
    const heavy = sizesOn({ adapter: { mass: `${mass * 1.05} g` } })[0];
    expect(heavy?.verdict).toBe('caution');
    expect(heavy?.remedy).toMatch(/Was the right part weighed/);
    expect(sizesOn({ adapter: { mass: `${mass * 1.01} g` } })[0]?.verdict).toBe('pass');
  });

  it('says by how little it is out before it asks for a finer instrument', () => {
    const [finding] = sizesOn({ adapter: { driving: { register: size(62.05, 0.03) } } });
    expect(finding?.remedy).toMatch(
      /^Out by 0\.010 mm, which is less than its doubt of 0\.030 mm: measure again with a finer/,
    );
  });

  it('never says rework, use as it is or scrap of what the doubt may still bring within', () => {
    for (const characteristic of characteristicsOf(drawn.joint)) {
      if (characteristic.unit === 'g') continue;
      for (const value of [characteristic.upper + 0.01, characteristic.lower - 0.01]) {
        const found = { value, doubt: 0.011, with: 'test' };
        expect(judgeSize({ ...characteristic, found }, [finding]).disposition).toBe('measure again');
      }
    }
  });

  it('never says accept outside the limits, whatever the doubt', () => {
    for (const characteristic of characteristicsOf(drawn.joint)) {
      for (const doubt of [0, 0.001, 0.05]) {
        for (const beyond of [0.001, 0.01, 0.3]) {
          for (const value of [characteristic.upper + beyond, characteristic.lower - beyond]) {
            const found = { value, doubt, with: 'test' };
            expect(judgeSize({ ...characteristic, found }, []).disposition).not.toBe('accept');
          }
        }
      }
    }
  });
});

describe('the parts together', () => {
  it('accepts good parts, and says what was not measured', () => {
    const finding = verdictOn({ adapter: { driving: { register: size(62.025) }, driven: { register: size(59.99) } } });
    expect(finding.verdict).toBe('pass');
    expect(finding.title).toBe('the finished parts: accept');
    expect(finding.why).toMatch(/^2 of \d+ sizes measured; not yet: depth of the driving recess/);
  });

  it('accepts no more than so far while a register is not measured', () => {
    const one = verdictOn({ adapter: { thickness: size(drawn.joint.adapterSpec.thickness, 0.01) } });
    expect(one.verdict).toBe('caution');
    expect(one.title).toBe('the finished parts: accept so far');
    expect(one.remedy).toMatch(/^Measure driving register, recess, driven register, spigot too/);
    const other = verdictOn({ adapter: { driving: { register: size(62.025) } } });
    expect(other.remedy).toMatch(/^Measure driven register, spigot too/);
  });

  it('scraps nothing for the sake of a size that can still be reworked', () => {
    // A spigot 0.06 too large does not go in; turned down, the recess 0.01 too large does no harm.
    const given = { adapter: { driving: { register: size(62.05) }, driven: { register: size(60.06) } } };
    const says = sizesOn(given).map(({ why }) => /Verdict: (.*)\.$/.exec(why)?.[1]);
    expect(says).toEqual(['use as it is', 'rework']);
    const whole = verdictOn(given);
    expect(whole.title).toBe('the finished parts: rework');
    expect(whole.verdict).toBe('fail');
    expect(whole.remedy).toMatch(/^Turn the driven register, spigot: take off 0\.060 mm to 0\.079 mm/);
  });

  it('is not assessed while nothing is measured', () => {
    expect(verdictOn({ by: 'bench 2' }).verdict).toBe('not assessed');
    expect(overall([])).toBe('not measured');
  });

  it('says nothing at all without built', () => {
    expect(drawn.findings.filter(({ code }) => code.startsWith('built'))).toEqual([]);
    expect(asBuilt(drawn.joint)).toBeNull();
  });
});

describe('the sums with real numbers', () => {
  it('takes the fit as measured: (62.025 + 0.002 - 61.99)/2 instead of (62.040 - 61.99)/2', () => {
    const { joint } = judge(built({ adapter: { driving: { register: size(62.025) } } }));
    const real = asBuilt(joint);
    const seat = real && linksTo(real, 'adapter').find(({ id }) => id === 'driving-seat');
    expect(seat?.most).toBeCloseTo((62.027 - 61.99) / 2, 9);
    expect(seat?.least).toBeCloseTo((62.023 - 62.01) / 2, 9);
  });

  it('takes the screws that were bought into a part that came out thicker or thinner: 0.15 of engagement either way', () => {
    const group = ({ screws }: typeof drawn.joint) => screws.find(({ fastening }) => fastening === 'into_flange');
    const { thickness } = drawn.joint.adapterSpec;
    for (const thicker of [0.15, -0.15]) {
      const real = asBuilt(judge(built({ adapter: { thickness: size(thickness + thicker) } })).joint);
      const [was, is] = [group(drawn.joint), real ? group(real) : undefined];
      expect((is?.engagement.has ?? 0) - (was?.engagement.has ?? 0)).toBeCloseTo(-thicker, 9);
      expect((is?.grip ?? 0) - (was?.grip ?? 0)).toBeCloseTo(thicker, 9);
      expect((is?.lengths.least ?? 0) - (was?.lengths.least ?? 0)).toBeCloseTo(thicker, 9);
    }
  });

  it('takes the run-out of the two registers with its direction', () => {
    const readings = Array.from({ length: 12 }, (_, i) =>
      Number((0.008 * Math.cos(((30 * i - 40) * Math.PI) / 180)).toFixed(4)),
    );
    const { joint } = judge(built({ adapter: { runout: { register: readings } } }));
    const real = asBuilt(joint);
    const link = real && linksTo(real, 'shaft').find(({ id }) => id === 'turn-over');
    expect(link?.most).toBeCloseTo(0.008, 4);
    expect(link?.angle).toBeCloseTo(40, 0);
    // Inside a bore the dial reads high where the middle is not.
    const inside = asBuilt(judge(built({ adapter: { runout: { register: { readings, inside: true } } } })).joint);
    expect(inside && linksTo(inside, 'shaft').find(({ id }) => id === 'turn-over')?.angle).toBeCloseTo(220, 0);
  });

  it('lets one dial on the joint as bolted up take the place of the chain before it', () => {
    const { joint } = judge(built({ joint: { rim: 0.03 } }));
    const real = asBuilt(joint);
    // 0.015 as bolted up and half a graduation of the dial, and the driven flange's own 0.010.
    expect(real && stackOf(linksTo(real, 'shaft')).worst).toBeCloseTo(0.015 + 0.005 + 0.01, 9);
    const leaning = asBuilt(judge(built({ joint: { face: 0.02 } })).joint);
    expect(leaning && stackOf(tiltLinks(leaning)).worst).toBeCloseTo(0.03 / 128, 9);
    // Read with a finer dial.
    const finely = asBuilt(judge(built({ joint: { rim: '0.03 +-0.002', face: '0.02 +-0.002' } })).joint);
    expect(finely && stackOf(linksTo(finely, 'shaft')).worst).toBeCloseTo(0.015 + 0.001 + 0.01, 9);
    expect(finely && stackOf(tiltLinks(finely)).worst).toBeCloseTo(0.022 / 128, 9);
  });

  it("points at a run-out that nothing on the parts can cause: 0.30, against 0.0695 and half of the dial's 0.01", () => {
    const finding = findingOf(judge(built({ joint: { rim: 0.3 } })), 'built-runout');
    expect(finding.verdict).toBe('caution');
    expect(finding.value).toBeCloseTo(0.15, 9);
    expect(finding.limit).toBeCloseTo(0.01 + 0.025 + 0.01 + 0.0245 + 0.005, 9);
    expect(finding.remedy).toMatch(/burr/);
    expect(findingOf(judge(built({ joint: { rim: 0.05 } })), 'built-runout').verdict).toBe('pass');
  });

  it('does not blame the parts for a run-out of the driving flange that nobody read', () => {
    const unread = judge(built({ joint: { rim: 0.3 } }), { driving: { runout: undefined } });
    expect(findingOf(unread, 'built-runout').why).toMatch(/own run-out was not given .*: give driving\.runout\.rim\.$/);
    expect(findingOf(judge(built({ joint: { rim: 0.3 } })), 'built-runout').why).not.toMatch(/not given/);
  });

  it('leaves places out of the sums that are no places of this part: inches typed as millimetres', () => {
    const inches = drawn.joint.screws
      .find(({ side }) => side === 'driven')
      ?.positions.map(({ x, y }) => [x / 25.4, y / 25.4]);
    const made = judge(built({ adapter: { driven: { holes: inches } } }));
    expect(asBuilt(made.joint)?.screws).toEqual(made.joint.screws);
    expect(asBuilt(made.joint)?.adapterMass.mass).toBeCloseTo(made.joint.adapterMass.mass, 6);
    const place = made.findings.find(({ title }) => title.startsWith('driven holes'));
    expect(place?.verdict).toBe('caution');
    expect(place?.remedy).toMatch(/wrong unit/);
  });

  it('weighs a part by its scales, shape in proportion', () => {
    const mass = drawn.joint.adapterMass;
    const real = asBuilt(judge(built({ adapter: { mass: `${mass.mass * 1.01} g` } })).joint);
    expect(real?.adapterMass.mass).toBeCloseTo(mass.mass * 1.01, 3);
    expect((real?.adapterMass.inertia.zz ?? 0) / mass.inertia.zz).toBeCloseTo(1.01, 6);
  });

  it('moves the holes to where they are, and sees what that does to balance', () => {
    const { joint } = drawn;
    const holes = joint.screws.find(({ side }) => side === 'driven')?.positions.map(({ x, y }) => [x + 0.1, y]) ?? [];
    const made = judge(built({ adapter: { driven: { holes } } }));
    const real = asBuilt(made.joint);
    // Four holes moved by 0.1 take their metal away off the middle: U = 0.1 x what they took.
    const taken = (real?.adapterMass.mass ?? 0) * Math.abs(real?.adapterMass.centre[0] ?? 0);
    const drilling = joint.adapter.drillings.filter(({ feature }) => feature === 'driven-screws');
    const volume = drilling.reduce((sum, { profile }) => {
      let v = 0;
      for (let i = 1; i < profile.length; i++) {
        const [a, b] = [profile[i - 1], profile[i]];
        if (a && b) v += (Math.PI / 3) * (b.z - a.z) * (a.r * a.r + a.r * b.r + b.r * b.r);
      }
      return sum + v;
    }, 0);
    expect(taken).toBeCloseTo(0.1 * volume * joint.adapter.material.density, 4);
    const place = made.findings.find(({ title }) => title.startsWith('driven holes'));
    expect(place?.value).toBeCloseTo(0.1, 6);
  });

  it('takes screws as weighed instead of a guess: 1 g more on one of six pulls 42 g.mm that way', () => {
    const { joint } = drawn;
    const group = joint.screws.find(({ side }) => side === 'driving');
    const weights = group?.positions.map((_, i) => (i === 0 ? '16 g' : '15 g')) ?? [];
    const made = judge(built({ screws: { driving: weights } })).joint;
    const link = unbalanceLinks(made).find(({ id }) => id === 'weighed-screws');
    expect(link?.most).toBeCloseTo(42, 9);
    const first = group?.positions[0];
    expect(link?.angle).toBeCloseTo((Math.atan2(first?.y ?? 0, first?.x ?? 1) * 180) / Math.PI, 9);
  });
});

describe('slips of the pen', () => {
  it.each([
    [{ wheel: { bore: 100 } }, { wheel: undefined, sensor: undefined }, 'built.wheel', /has no wheel/],
    [{ adapter: { runout: { face: [0, 0.01, 0.02, 0.01] } } }, {}, 'built.adapter.runout.face', /need the radius/],
    [{ adapter: { driving: { holes: [[1, 2], [3]] } } }, {}, 'built.adapter.driving.holes[1]', /two numbers/],
    [{ adapter: { driving: { holes: 'six' } } }, {}, 'built.adapter.driving.holes', /list of 2 to 72/],
    [{ adaptor: {} }, {}, 'built.adaptor', /adapter/],
  ] as const)('%j', (given, more, path, message) => {
    const errors = errorsOf(more as Patch, built(given as unknown as Patch));
    expect(errors.map((error) => error.path)).toContain(path);
    expect(errors.map((error) => error.message).join(' ')).toMatch(message);
  });
});
