/**
 * The bolt-up position of a joint, from dial readings to the finding: the readings are taken off rigid bodies, each looking at its own face,
 * and the bodies are then put together in space. mm, degrees.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FlangeBody, stacked } from '../formulas/rigid-stack.ts';
import { expectSaid, findingOf, judge, type Patch } from './help.ts';

const radians = Math.PI / 180;
const eight = Array.from({ length: 8 }, (_, k) => 45 * k);

/** What a dial shows round a circle of 50 mm whose middle is off the axis; the driven flange is looked at from the other end. */
function readings({ off, face }: FlangeBody, side: 'driving' | 'driven', inside = false): Patch {
  const seen = (own: number) => (side === 'driven' ? 180 - own : own);
  const rim = eight.map((own) => {
    const a = (seen(own) - off.angle) * radians;
    const wall = off.size * Math.cos(a) + Math.sqrt(2500 - (off.size * Math.sin(a)) ** 2) - 50;
    return inside ? -wall : wall;
  });
  const high = eight.map((own) => face.high * Math.cos((seen(own) - face.angle) * radians));
  const read = inside ? { readings: rim, inside: true } : rim;
  return { runout: { rim: read, face: { readings: high, radius: 50 } } };
}

const flat = { high: 0, angle: 0 };
const body = (size: number, angle: number, face = flat): FlangeBody => ({ off: { size, angle }, face });
const straight = body(0, 0);

const rimOnly = (own: FlangeBody, side: 'driving' | 'driven'): Patch => {
  const { runout } = readings(own, side) as { runout: { rim: unknown } };
  return { runout: { rim: runout.rim } };
};
const rims = (driving: FlangeBody, driven: FlangeBody, ...more: Patch[]) =>
  judge({ driving: rimOnly(driving, 'driving'), driven: rimOnly(driven, 'driven') }, ...more);
const bolted = (driving: number, driven: number): Patch => ({
  adapter: { bolt_up: { driving: `${driving} deg`, driven: `${driven} deg` } },
});

/** Eight even readings of +-0.01 leave 2/8 x 0.01 x 2 / sin(22.5 deg) in their first harmonic, by hand; two flanges add as squares. */
const doubt = Math.SQRT2 * 0.25 * 0.01 * (2 / Math.sin(22.5 * radians));
const six = [0, 60, 120, 180, 240, 300];
const four = [0, 90, 180, 270];

describe('phasing, from the dial to the bolt-up', () => {
  it('is what the bodies do, for every way round of six holes and four', () => {
    const angle = fc.integer({ min: 0, max: 359 });
    const face = fc.record({ high: fc.double({ min: 0, max: 0.04, noNaN: true }), angle });
    const flange = fc.record({
      off: fc.record({ size: fc.double({ min: 0.005, max: 0.09, noNaN: true }), angle }),
      face,
    });
    const turns = fc.tuple(fc.constantFrom(...six), fc.constantFrom(...four));
    fc.assert(
      fc.property(flange, flange, turns, fc.boolean(), (driving, driven, [a, b], inside) => {
        const made = judge(
          { driving: readings(driving, 'driving'), driven: readings(driven, 'driven', inside) },
          bolted(a, b),
        );
        const { clocking, adapterSpec } = made.joint;
        const off = (one: number, two: number) => {
          const parts = { driving, driven, adapter: straight, thickness: adapterSpec.thickness };
          const put = stacked(parts, { driving: one, driven: two + clocking.angle });
          // From the face to the radius of the driven flange, 128 / 2.
          return Math.max(
            ...([0, 64] as const).map((z) => Math.hypot(...(put([0, 0, z]).slice(0, 2) as [number, number]))),
          );
        };
        const finding = findingOf(made, 'phasing');
        expect(Math.abs((finding.value ?? 0) - off(a, b))).toBeLessThan(5e-4);
        const all = six.flatMap((one) => four.map((two) => off(one, two)));
        const best = Math.min(...all);
        const said = /(\d\.\d+) mm to (\d\.\d+) mm off centre/.exec(finding.why);
        expect(Math.abs(Number(said?.[1]) - best)).toBeLessThan(1.1e-3);
        expect(Math.abs(Number(said?.[2]) - Math.max(...all))).toBeLessThan(1.1e-3);
        expect(finding.verdict).toBe((finding.value ?? 0) <= (finding.limit ?? 0) ? 'pass' : 'caution');
        if (finding.verdict === 'pass') return;
        // The remedy, done to the bodies, gives the best.
        const to = /bolt_up: \{ (?:driving: ([\d.]+) deg, )?driven: ([\d.]+) deg \}/.exec(finding.remedy);
        expect(Math.abs(off(Number(to?.[1] ?? 0), Number(to?.[2])) - best)).toBeLessThan(5e-4);
        const then = judge(
          { driving: readings(driving, 'driving'), driven: readings(driven, 'driven', inside) },
          bolted(Number(to?.[1] ?? 0), Number(to?.[2])),
        );
        expect(findingOf(then, 'phasing').verdict).toBe('pass');
      }),
      { numRuns: 25 },
    );
  });

  it('cautions when the high spots stand opposite, and says how to turn: 0.05 + 0.04 becomes 0.05 - 0.04', () => {
    const { clocking } = judge().joint;
    // High in the joint at 30 degrees; the driven flange's at 210 as drawn.
    const made = rims(body(0.05, 30), body(0.04, 210 - clocking.angle));
    const finding = findingOf(made, 'phasing');
    expectSaid(finding, { verdict: 'caution', value: 0.09, limit: 0.01 + doubt, digits: 3 });
    expect(finding.remedy).toContain(
      'Write adapter.bolt_up: { driven: 180 deg }. It brings 0.090 mm down to 0.010 mm.',
    );
    expect(finding.remedy).toContain(
      "The rims' high spots then stand at 30 degrees (driving) and 30 degrees (driven);",
    );
    // Hole 1 of the driven flange, typed at 0 degrees of its own face, is drawn at 180 plus the clocking.
    expect(finding.remedy).toContain(
      `its hole 1 stands at ${clocking.angle} degrees. Angles: from the adapter's index mark`,
    );
    expectSaid(findingOf(rims(body(0.05, 30), body(0.04, 210 - clocking.angle), bolted(0, 180)), 'phasing'), {
      verdict: 'pass',
      value: 0.01,
      limit: 0.01 + doubt,
      digits: 3,
    });
  });

  it('turns the adapter where only that helps', () => {
    const { clocking } = judge().joint;
    // The driven flange's turns of 90 alone miss by 60 or 30; the adapter's of 60 meets.
    const finding = findingOf(rims(body(0.05, 60), body(0.05, -clocking.angle)), 'phasing');
    expectSaid(finding, { verdict: 'caution', value: 0.05, limit: doubt, digits: 3 });
    expect(finding.remedy).toMatch(/^Turn the adapter .* hole 1 stands at 300 degrees\. Leave the driven flange/);
    expect(finding.remedy).toContain('adapter.bolt_up: { driving: 60 deg, driven: 0 deg }');
  });

  it('takes a bore read from inside as high where its middle is not', () => {
    const { clocking } = judge().joint;
    const driven = body(0.05, 30 - clocking.angle);
    const { runout } = readings(driven, 'driven', true) as { runout: { rim: { readings: number[] } } };
    const of = (rim: unknown) =>
      findingOf(judge({ driving: rimOnly(body(0.05, 30), 'driving'), driven: { runout: { rim } } }), 'phasing');
    expect(of(runout.rim).value).toBeCloseTo(0, 4);
    // The same readings taken for a rim's: the other way round.
    expect(of(runout.rim.readings).value).toBeCloseTo(0.1, 4);
  });

  it('says when any way is as good as another', () => {
    const finding = findingOf(rims(body(0.05, 0), body(0.005, 0)), 'phasing');
    // 0.045 to 0.055 by all ways, less than the doubt of 0.018.
    expect(finding.verdict).toBe('pass');
    expect(finding.why).toMatch(/any way is as good as another/);
  });

  it.each([45, 30, 100])(
    'refuses a driven flange turned by %i degrees on four holes, and lists what fits',
    (driven) => {
      const finding = findingOf(judge(bolted(0, driven)), 'phasing');
      expectSaid(finding, { verdict: 'fail' });
      expect(finding.remedy).toBe('Write one of them as adapter.bolt_up.driven: 0, 90, 180, 270.');
      expect(findingOf(judge(bolted(0, 90)), 'phasing').verdict).toBe('not assessed');
    },
  );

  it('takes a turn the other way round, and a whole turn', () => {
    expect(findingOf(judge(bolted(-60, -90)), 'phasing').verdict).toBe('not assessed');
    expect(findingOf(judge(bolted(360, 0)), 'phasing').verdict).toBe('not assessed');
  });

  it('asks for directions where only total readings are known', () => {
    const finding = findingOf(
      judge({ driving: { runout: { rim: 0.05 } }, driven: { runout: { rim: 0.03 } } }),
      'phasing',
    );
    expectSaid(finding, { verdict: 'not assessed' });
    // Half a total reading is the eccentricity: 0.025 + 0.015 and 0.025 - 0.015.
    expect(finding.why).toMatch(/add up to 0\.040 mm off centre or leave 0\.010 mm/);
    expect(finding.remedy).toMatch(/^Give driving\.runout\.rim and driven\.runout\.rim as dial readings/);
    const half = judge({ driving: rimOnly(body(0.05, 0), 'driving'), driven: { runout: undefined } });
    expect(findingOf(half, 'phasing').remedy).toMatch(/^Give driven\.runout\.rim as/);
  });

  it('says nothing where no dial was put on either flange', () => {
    const { findings } = judge({ driving: { runout: undefined }, driven: { runout: undefined } });
    expect(findings.filter(({ code }) => code === 'phasing')).toEqual([]);
  });

  it('has nothing to choose where uneven holes meet one way only', () => {
    const uneven = (circle: number, angles: number[]) => ({ count: undefined, circle, angles });
    const made = judge({
      wheel: undefined,
      sensor: undefined,
      driving: { holes: uneven(84, [0, 55, 120, 180, 240, 300]) },
      driven: { holes: uneven(108, [0, 80, 180, 270]) },
    });
    expect(findingOf(made, 'phasing').verdict).toBe('pass');
    expect(findingOf(made, 'phasing').why).toMatch(/one way only/);
  });

  it('refuses a face read inside a bore', () => {
    expect(() => judge({ driven: { runout: { face: { readings: [0, 0, 0], radius: 40, inside: true } } } })).toThrow(
      'driven.runout.face.inside: A face is not read inside a bore.',
    );
  });
});

describe('angles that are told', () => {
  it('a whole turn is none: a high spot at 359.97 degrees is told at 0', () => {
    // Turned so that the two rims add up; which way round is best is told with where the high spots then stand.
    const told = six.flatMap((turn) => {
      const finding = findingOf(rims(body(0.09, 359.97), body(0.09, 0.02), bolted(turn, 0)), 'phasing');
      return finding.verdict === 'caution' ? [finding.remedy] : [];
    });
    expect(told.length).toBeGreaterThan(0);
    for (const remedy of told) {
      expect(remedy).toMatch(/at 0 degrees/);
      expect(remedy).not.toMatch(/\b360 degrees/);
    }
  });
});
