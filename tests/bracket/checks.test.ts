/** What is said of a bracket: each verdict with numbers worked out by hand, cures applied, and jobs that cannot be drawn. */
import { describe, expect, it } from 'vitest';
import { boxGap } from '../../src/geometry/box-gap.ts';
import { type BracketSpec, blankLength } from '../../src/parts/bracket.ts';
import { errorsOf, expectSaid, findingOf, judge, type Patch, prove } from '../validate/help.ts';

/**
 * An angle over the sound job's wheel (outside 178, root 169, 3 mm thick), gap 1: the ear's seat lies 26 mm over the teeth, the bolts
 * 82 - 89 = 7 mm under them, their face 32 mm beside.
 */
const bracket: Patch = {
  bolts: { size: 'M6', spacing: 60, from_axis: 82, along: 32 },
  sensor: { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } },
  firing: { cylinders: 4, speed: '4000 rpm' },
};
const held: Patch = { sensor: { gap: 1 }, bracket };
const turned = (patch: Patch): Patch => ({ ...held, bracket: { ...bracket, ...patch } });
const made = (...patches: Patch[]) => {
  const { joint } = judge(held, ...patches);
  if (!joint.bracket) throw new Error('no bracket');
  return joint.bracket;
};

describe('what is designed', () => {
  it('an angle: foot and arm from where the bolts and the teeth are', () => {
    const { spec, plane, setting } = made();
    // Radius 4 from a 25 mm die. Foot: 26 - 3 - 4 + 7 = 26 over the bolts; arm: 32 - 3 - 4 = 25 to the sensor.
    expect(spec.bends).toEqual([{ angle: 90, direction: 'up', radius: 4, k: 0.43 }]);
    // Metal beside a hole: 6 mm (twice the sheet); hole 6.6; slots 2 x (1 + 1) mm long.
    expect(spec.foot.travel).toBe(4);
    expect(spec.foot.edge).toBeCloseTo(3.3 + 6 + 2, 9);
    expect(spec.straights[0]).toBeCloseTo(spec.foot.edge + 26, 9);
    expect(spec.straights[1]).toBeCloseTo(25 + 9.1 + 6, 9);
    expect(setting).toBe('slots');
    // Folded: the arm's upper face is the ear's seat, the foot's outer one the face for the bolts.
    const [ps, qs] = [plane.profile.map(({ p }) => p), plane.profile.map(({ q }) => q)];
    expect(Math.max(...qs)).toBeCloseTo(26, 9);
    expect(Math.max(...ps)).toBeCloseTo(32, 9);
    expect(Math.min(...ps)).toBeCloseTo(-(9.1 + 6), 9);
  });

  it('an angle bolted above: it hangs from its foot', () => {
    const { spec, plane } = made({ bracket: { bolts: { from_axis: 150 } } });
    // 150 - 89 - 26 - 4 = 31 mm from bolts to bend.
    expect(spec.bends[0]?.direction).toBe('down');
    expect(spec.straights[0]).toBeCloseTo(spec.foot.edge + 31, 9);
    expect(Math.max(...plane.profile.map(({ p }) => p))).toBeCloseTo(32, 9);
  });

  it('a plate: its stand-offs fill what is left', () => {
    const { spec, packing } = made(turned({ form: 'flat', bolts: { spacing: 60, from_axis: 100, along: 40 } }));
    // Underside 23 mm over the teeth, pad 11 mm over them.
    expect(packing).toBeCloseTo(12, 9);
    expect(blankLength(spec)).toBeCloseTo(spec.foot.edge + 40 + spec.arm.edge, 9);
  });

  it.each([
    ['offset', 85, 26 - (85 - 89 + 1 + 3), 'down'],
    ['offset', 140, 26 - (140 - 89 + 1 + 3), 'up'],
  ])('an %s bolted at %i mm: a step of %f mm', (form, from, rise, first) => {
    const { spec, plane } = made(turned({ form, bolts: { spacing: 60, from_axis: from, along: 75 } }));
    // Two bends of 90 degrees take 2 r + t = 11 mm of the step.
    expect(spec.straights[1]).toBeCloseTo(Math.abs(rise) - 11, 9);
    expect(spec.bends.map(({ direction }) => direction)).toEqual(first === 'up' ? ['up', 'down'] : ['down', 'up']);
    const qs = plane.profile.map(({ q }) => q);
    // The foot's underside lies on 1 mm of shims, the sensor's seat where it should.
    expect([Math.min(...qs), Math.max(...qs)]).toEqual(
      rise > 0
        ? [expect.closeTo(from - 89 + 1, 6), expect.closeTo(26, 6)]
        : [expect.closeTo(23, 6), expect.closeTo(from - 89 + 4, 6)],
    );
  });

  it('a low step: bends of less than 90 degrees', () => {
    // Step 26 - (107 - 89 + 1 + 3) = 4 mm: at 45 degrees the bends take 11 (1 - cos 45) = 3.22, 0.78 / sin 45 = 1.10 is left.
    const patch = turned({ form: 'offset', bolts: { spacing: 60, from_axis: 107, along: 75 } });
    const spec = made(patch, { bracket: { angle: '45 deg' } }).spec;
    expect(spec.straights[1]).toBeCloseTo((4 - 11 * (1 - Math.SQRT1_2)) / Math.SQRT1_2, 9);
    // Left open, the steepest that the die reaches, else the flattest that is listed.
    expect(made(patch).spec.bends[0]?.angle).toBe(30);
  });

  it('a channel: the arm runs back over the foot', () => {
    const { spec, plane } = made(turned({ form: 'channel', bolts: { spacing: 60, from_axis: 70, along: 45 } }));
    // From 70 - 89 + 1 = -18 up to 26: 44 mm, less 2 (r + t) = 14.
    expect(spec.straights[1]).toBeCloseTo(30, 9);
    expect(Math.min(...plane.profile.map(({ p }) => p))).toBeCloseTo(-(9.1 + 6), 9);
  });

  it('an axial sensor: heights along the shaft, distances out from it', () => {
    // Mean radius of the teeth (178 + 169) / 4 = 86.75; bolts 10 mm before the face that is read, 45 mm farther out.
    const patch = turned({ form: 'flat', bolts: { spacing: 60, from_axis: 86.75 + 45, along: 10 } });
    const { packing, spec } = made(patch, { sensor: { direction: 'axial' } });
    expect(packing).toBeCloseTo(23 - 10, 9);
    expect(blankLength(spec)).toBeCloseTo(spec.foot.edge + 45 + spec.arm.edge, 9);
  });

  it('a trial bend beats the table', () => {
    // Legs 30 + 40 from 64.31: K 0.43 (by hand, see the bending test); 64.0: 0.31 / (pi / 2) / 3 = 0.0658 less.
    const k = (flat: number) => made({ bracket: { trial_bend: { flat, legs: [30, 40], radius: 4 } } }).spec.bends[0]?.k;
    expect(k(64.31)).toBeCloseTo(0.43, 3);
    expect(k(64)).toBeCloseTo(0.43 - 0.31 / (Math.PI / 2) / 3, 3);
  });
});

describe('what the checks say', () => {
  it('all is well with the sound bracket', () => {
    const { findings } = judge(held);
    const said = findings.filter(({ code }) => code.startsWith('bracket-'));
    expect(said.map(({ verdict }) => verdict)).toEqual(said.map(() => 'pass'));
    expect(said.map(({ code }) => code)).toEqual([
      'bracket-gap-closes',
      'bracket-gap-opens',
      'bracket-clearance',
      'bracket-ear-nut',
      'bracket-own-foot',
      'bracket-socket',
      'bracket-bend-radius',
      'bracket-flange',
      'bracket-hole-to-bend',
      'bracket-web',
      'bracket-hole',
      'bracket-sag',
      'bracket-tab',
      'bracket-shaft-orders',
      'bracket-tooth-rate',
      'bracket-firing',
    ]);
    const at = (code: string) => findingOf({ findings }, code);
    expectSaid(at('bracket-gap-closes'), { verdict: 'pass', value: -1, limit: 0 });
    expectSaid(at('bracket-gap-opens'), { verdict: 'pass', value: 3, limit: 2.2 });
    // Nut 5.2 and two threads of 1 mm under the sheet: 26 - 3 - 7.2.
    expectSaid(at('bracket-ear-nut'), { verdict: 'pass', value: 15.8, limit: 2 });
    // Bore: 25 - 9.1 mm to the bend, and half of its 8.3095 mm.
    expectSaid(at('bracket-hole-to-bend'), { verdict: 'pass', value: 15.9 + 8.3095 / 2, limit: 10, digits: 3 });
  });

  it('short slots cannot set the gap', () =>
    prove({
      what: 'slot',
      code: 'bracket-gap-closes',
      patch: { ...held, bracket: { ...bracket, slot: 1 } },
      verdict: 'caution',
      value: 0.5,
      limit: 0,
      says: /4 mm long \(bracket\.slot: 4 mm\)/,
      cure: { bracket: { slot: 4 } },
    }));

  it('round holes cannot set it at all', () =>
    prove({
      what: 'slot',
      code: 'bracket-gap-opens',
      patch: { ...held, bracket: { ...bracket, slot: 0 } },
      verdict: 'fail',
      value: 1,
      limit: 2.2,
      cure: { bracket: { slot: 'auto' } },
    }));

  it('a foot beside the wheel', () =>
    prove({
      // 1.5 mm sheet, inner face 5.3 - 1.5 = 3.8 mm beside the middle of a 3 mm wheel: 2.3 mm.
      what: 'near',
      code: 'bracket-clearance',
      patch: {
        ...held,
        bracket: {
          bolts: { spacing: 30, from_axis: 96, along: 5.3 },
          sensor: { bore: 4, reach: 25 },
          thickness: 1.5,
          slot: 0,
        },
      },
      about: 'wheel',
      verdict: 'caution',
      value: 2.3,
      limit: 3,
      says: /0\.7 mm away/,
    }));

  it('a pad that is too high for a plate', () =>
    prove({
      // Pad 24 mm over the teeth, underside of the plate 23.
      what: 'pad',
      code: 'bracket-packing',
      patch: turned({ form: 'flat', bolts: { spacing: 60, from_axis: 113, along: 40 } }),
      verdict: 'fail',
      value: -1,
      limit: 1,
      says: /form: offset/,
    }));

  it('tight bends crack', () =>
    prove({
      what: 'radius',
      code: 'bracket-bend-radius',
      patch: { ...held, bracket: { ...bracket, radius: 2 } },
      verdict: 'caution',
      value: 2,
      limit: 3,
      cure: { bracket: { radius: 3 } },
    }));

  it('hard aluminium at the same radius breaks', () =>
    prove({
      what: 'material',
      code: 'bracket-bend-radius',
      patch: { ...held, bracket: { ...bracket, material: '7075-T6', radius: 4 } },
      verdict: 'fail',
      value: 4,
      limit: 24,
    }));

  it('a step that the die cannot hold', () =>
    prove({
      // Step 26 - (95 - 89 + 4) = 16: web 5 mm and both halves of two bends of 8.3095 mm: 13.31 against 17.5.
      what: 'step',
      code: 'bracket-flange',
      patch: turned({ form: 'offset', angle: '90 deg', bolts: { spacing: 60, from_axis: 95, along: 75 } }),
      verdict: 'caution',
      value: 5 + 8.3095,
      limit: 17.5,
      digits: 3,
      says: /step gets higher/,
    }));

  it('slots too near the bend', () => {
    // Seat 26, bolts at 10: 26 - 3 - 4 - 10 = 9 to the bend; less 2 + 3.3 of slot, plus half a bend of 8.3095.
    const wide: Patch = { ...bracket, width: 90, bolts: { spacing: 60, from_axis: 99, along: 32 } };
    prove({
      what: 'hole',
      code: 'bracket-hole-to-bend',
      patch: { ...held, bracket: wide },
      verdict: 'caution',
      value: 9 - 5.3 + 8.3095 / 2,
      limit: 10,
      digits: 3,
    });
  });

  it('thin sheet with a heavy sensor swings with the engine; the cure stops it', () => {
    const thin: Patch = {
      ...held,
      bracket: { ...bracket, thickness: 1, sensor: { ...(bracket.sensor as Patch), mass: '400 g' } },
    };
    const finding = findingOf(judge(thin), 'bracket-firing');
    expect(finding.verdict).toBe('fail');
    // Four cylinders of a four-stroke fire twice a turn: 133.33 Hz at 4000 rpm, and a quarter more.
    expect(finding.limit).toBeCloseTo((4000 / 30) * 1.25, 6);
    const said = /Use sheet of ([\d.]+) mm/.exec(finding.remedy)?.[1];
    expect(findingOf(judge(thin, { bracket: { thickness: Number(said) } }), 'bracket-firing').verdict).toBe('pass');
    const shaft = findingOf(judge(thin), 'bracket-shaft-orders');
    expect(shaft.limit).toBeCloseTo(((2 * 2600) / 60) * 1.25, 6);
  });

  it('a coil is tugged by its teeth, a Hall sensor hardly', () => {
    const coil = findingOf(judge(held, { sensor: { kind: 'coil' } }), 'bracket-tooth-rate');
    expect(coil.verdict).toBe('caution');
    // 60 teeth at 2600 rpm.
    expect(coil.limit).toBeCloseTo(2600, 6);
    expectSaid(findingOf(judge(held), 'bracket-tooth-rate'), { verdict: 'pass' });
  });

  it('what is not given is not assessed', () => {
    const silent = judge(held, { bracket: { firing: undefined }, duty: { speed: undefined } });
    expect(findingOf(silent, 'bracket-firing').verdict).toBe('not assessed');
    expect(findingOf(silent, 'bracket-shaft-orders').remedy).toMatch(/duty\.speed/);
    expect(
      findingOf(judge(held, { bracket: { sensor: { ear: { size: '3/8-16 UNC' } } } }), 'bracket-ear-nut').verdict,
    ).toBe('pass');
  });

  it('a flat plate is asked for stand-offs and no bends', () => {
    const { findings } = judge(turned({ form: 'flat', bolts: { spacing: 60, from_axis: 100, along: 40 } }));
    const codes = findings.filter(({ code }) => code.startsWith('bracket-')).map(({ code }) => code);
    expect(codes).toContain('bracket-packing');
    expect(codes).not.toContain('bracket-bend-radius');
  });
});

describe('what cannot be drawn is said at the key that cures it', () => {
  it.each<[string, Patch, string, RegExp]>([
    ['no wheel', { ...held, wheel: undefined, sensor: undefined }, 'bracket', /give the section wheel/],
    [
      'bolts on the teeth',
      turned({ bolts: { spacing: 60, from_axis: 82, along: -4 } }),
      'bracket.bolts.along',
      /beyond the middle/,
    ],
    [
      'face too near',
      turned({ bolts: { spacing: 60, from_axis: 82, along: 0.5 }, edge: 1, sensor: { bore: 4, reach: 25 } }),
      'bracket.bolts.along',
      /too near/,
    ],
    [
      'bolts level with the seat',
      turned({ bolts: { spacing: 60, from_axis: 113, along: 32 } }),
      'bracket.bolts.from_axis',
      /level/,
    ],
    [
      'no step',
      turned({ form: 'offset', bolts: { spacing: 60, from_axis: 110.9, along: 75 } }),
      'bracket.bolts.from_axis',
      /too low/,
    ],
    [
      'no room for a channel',
      turned({ form: 'channel', bolts: { spacing: 60, from_axis: 110, along: 45 } }),
      'bracket.bolts.from_axis',
      /channel/,
    ],
    [
      'offset too short',
      turned({ form: 'offset', bolts: { spacing: 60, from_axis: 85, along: 25 } }),
      'bracket.bolts.along',
      /channel/,
    ],
    [
      'sensor in the bend',
      turned({ form: 'offset', bolts: { spacing: 60, from_axis: 85, along: 30 } }),
      'bracket',
      /runs into the bend/,
    ],
    ['iron', { ...held, bracket: { ...bracket, material: 'EN-GJS-500-7' } }, 'bracket.material', /not bent/],
    [
      'a wrong trial bend',
      { ...held, bracket: { ...bracket, trial_bend: { flat: 80, legs: [30, 40], radius: 4 } } },
      'bracket.trial_bend',
      /Measure/,
    ],
  ])('%s', (_, patch, path, message) => {
    const errors = errorsOf(patch);
    expect(errors.map((error) => error.path)).toContain(path);
    expect(errors.map((error) => error.message).join('\n')).toMatch(message);
  });
});

describe('distance to a box', () => {
  const box = { pMin: -1, pMax: 1, qMin: -Infinity, qMax: 0 };
  const square = (p: number, q: number) => [
    { p, q },
    { p: p + 2, q },
    { p: p + 2, q: q + 2 },
    { p, q: q + 2 },
  ];
  it('is plain geometry', () => {
    expect(boxGap(square(4, -5), box)).toBe(3);
    expect(boxGap(square(4, 4), box)).toBe(5);
    expect(boxGap(square(-1, 2), box)).toBe(2);
    expect(boxGap(square(0, -9), box)).toBe(0);
    // An edge that slants past the corner (1, 0): from (3, 0) to (1, 2), sqrt 2 away.
    expect(
      boxGap(
        [
          { p: 3, q: 0 },
          { p: 1, q: 2 },
          { p: 3, q: 2 },
        ],
        box,
      ),
    ).toBeCloseTo(Math.SQRT2, 12);
  });
});

it('specs know their blank', () => {
  const spec: BracketSpec = made().spec;
  expect(blankLength(spec)).toBeGreaterThan(80);
});
