/** Torsion, balance by shape and teeth against the sensor: parts drawn by hand, sums on paper. mm, MPa, g.mm */
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/job/joint.ts';
import { balance } from '../../src/validate/balance.ts';
import { teeth } from '../../src/validate/teeth.ts';
import { torsion } from '../../src/validate/torsion.ts';
import { round } from './drawn-screws.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

const through = (radius: number) => [
  { z: 0, r: radius },
  { z: 20, r: radius },
];
const drillings = (feature: string, radius: number, at: readonly { x: number; y: number }[]) =>
  at.map(({ x, y }, i) => ({ id: `${feature}-${i + 1}`, feature, x, y, profile: through(radius) }));
const bore = drillings('bore', 20, [{ x: 0, y: 0 }]);
/** A disc of 100 x 20 with a bore of 40 and six holes of 10 on 70. */
const outline = (low: number, high: number) => [
  { z: 0, r: low },
  { z: 10, r: low },
  { z: 10, r: high },
  { z: 20, r: high },
];

describe('torsion of a disc', () => {
  const screws = (driving: number, driven: number) => [
    { side: 'driving', positions: round(4, driving) },
    { side: 'driven', positions: round(4, driven) },
  ];
  const made = (patch: Patch = {}, torque: number | undefined = 1000): Joint =>
    bent(
      {
        adapter: { outer: outline(50, 50), drillings: [...bore, ...drillings('holes', 5, round(6, 35))], flats: null },
        adapterSpec: { thickness: 20 },
        adapterMaterial: { name: 'metal', yieldStrength: 300, memory: false },
        screws: screws(35, 35),
        job: { duty: { torque, shock: 1 } },
      } as unknown as Joint,
      patch,
    );
  const said = (code: string, patch: Patch = {}, torque = 1000) =>
    findingOf({ findings: torsion.run(made(patch, torque)) }, code);
  const J = (R: number, r: number) => (Math.PI / 2) * (R ** 4 - r ** 4);

  it.each([
    // Rings that no hole cuts: 20 to 30, and 40 to the rim.
    ['even', 50, 50, 50],
    ['turned down above', 50, 45, 45],
    ['turned down below', 45, 50, 45],
  ] as const)('%s: the weakest stretch counts', (_, low, high, rim) => {
    const finding = said('torsion', { adapter: { outer: outline(low, high) } });
    expectSaid(finding, {
      verdict: 'pass',
      value: (1e6 * rim) / (J(30, 20) + J(rim, 40)),
      limit: 300 / Math.sqrt(3) / 1.5,
    });
    const [from, to] = low === high ? ['0.00', '20.00'] : low < high ? ['0.00', '10.00'] : ['10.00', '20.00'];
    if (low !== high) expect(finding.why).toContain(`${from} mm to ${to} mm above the driving face`);
  });

  it('holes that leave no ring are open', () => {
    const crowded = [
      ...bore,
      ...drillings('holes', 5, round(6, 25)),
      ...drillings('more', 5, round(6, 34)),
      ...drillings('most', 6, round(6, 45)),
    ];
    expect(said('torsion', { adapter: { drillings: crowded } })).toMatchObject({ verdict: 'not assessed' });
  });

  /** Arc that holes of radius `rho` on `at` leave of a cylinder of radius r, times its height of 20. */
  const left = (r: number, count: number, rho: number, at: number) => {
    const c = (r * r + at * at - rho * rho) / (2 * r * at);
    return 20 * r * Math.max(0, 2 * Math.PI - (Math.abs(c) < 1 ? count * 2 * Math.acos(c) : 0));
  };
  it.each([
    ['without holes the inner circle', 0],
    ['with eight the inner circle still', 8],
    ['with fourteen a cylinder beside the outer one', 14],
  ] as const)('sheared between circles of 60 and 80, %s', (_, count) => {
    const holes = drillings('holes', 5, round(count, 40));
    const finding = said('ring-shear', { adapter: { drillings: [...bore, ...holes] }, screws: screws(30, 40) });
    const looked = Array.from({ length: 61 }, (_one, i) => 30 + i / 6);
    const worst = Math.min(...looked.map((r) => r * left(r, count, 5, 40)));
    expect(worst < 30 * left(30, count, 5, 40) - 1).toBe(count === 14);
    expectSaid(finding, { verdict: 'pass', value: 1e6 / worst, limit: 300 / Math.sqrt(3) / 1.5, digits: 4 });
  });

  it('holes that leave no metal on a cylinder are open; circles within half a millimetre are one', () => {
    const all = { adapter: { drillings: [...bore, ...drillings('holes', 5, round(40, 40))] }, screws: screws(30, 40) };
    expect(said('ring-shear', all)).toMatchObject({
      verdict: 'not assessed',
      remedy: expect.stringContaining('see the webs'),
    });
    const codes = (patch: Patch) => torsion.run(made(patch)).map(({ code }) => code);
    expect(codes({ screws: screws(35, 35.5) })).toEqual(['torsion', 'ring-shear']);
    expect(codes({ screws: screws(35, 35.4) })).toEqual(['torsion']);
    expect(codes({ screws: [] })).toEqual(['torsion']);
  });

  it('holds to two thirds of the yield in shear, and is a caution up to it', () => {
    const per = said('torsion').value ?? 0;
    const hard = 300 / Math.sqrt(3);
    const at = (share: number) => said('torsion', {}, (1000 * share * hard) / per).verdict;
    expect([0.666, 0.667, 0.999, 1.001].map(at)).toEqual(['pass', 'caution', 'caution', 'fail']);
    expect(torsion.run(made({ job: { duty: { torque: undefined } } }))[0]?.remedy).toMatch(/^Give duty\.torque/);
  });
});

describe('balance by shape', () => {
  const features = [
    { id: 'bore', label: 'centre bore' },
    { id: 'holes', label: 'the six holes' },
    { id: 'other', label: 'the other holes' },
  ];
  /** 1000 g, 0.01 off towards y, its middle 5 above a face of 0 to 20. */
  const mass = { mass: 1000, centre: [0, 0.01, 5], inertia: { xz: 0, yz: 0 } };
  const made = (drilled: readonly unknown[], duty: Patch = { speed: 3000, grade: 'G6.3' }, patch: Patch = {}): Joint =>
    bent(
      {
        adapter: { outer: outline(50, 50), drillings: [...bore, ...drilled], features, material: { density: 0.008 } },
        adapterSpec: {
          outside: 100,
          bore: 40,
          flats: null,
          registers: { driving: null, driven: null },
          material: { density: 0.008 },
        },
        adapterMass: mass,
        wheel: null,
        wheelMass: null,
        wheelSpec: null,
        wheelZ: null,
        job: { adapter: { web: 3, chamfer: 0 }, duty },
      } as unknown as Joint,
      patch,
    );
  const said = (code: string, joint: Joint) => findingOf({ findings: balance.run(joint) }, code);
  // A hole of 10 through 20 takes 0.008 x 25 pi x 20 = 12.566 g.
  const one = 0.008 * Math.PI * 25 * 20;

  it.each([
    // A twentieth of one hole counts as even (common practice).
    [
      'opposite holes at 40 and 38',
      [
        { x: 40, y: 0 },
        { x: -38, y: 0 },
      ],
      2,
      40,
      'pass',
    ],
    [
      'at 40 and 37.9',
      [
        { x: 40, y: 0 },
        { x: -37.9, y: 0 },
      ],
      2.1,
      40,
      'caution',
    ],
    ['three of four', round(4, 40).slice(0, 3), 40, 40, 'caution'],
    ['four', round(4, 40), 0, 40, 'pass'],
  ] as const)('%s', (_, at, pull, farthest, verdict) => {
    expectSaid(said('symmetry', made(drillings('holes', 5, at))), {
      verdict,
      value: pull * one,
      limit: 0.05 * farthest * one,
      digits: 4,
    });
  });

  it('names the group that pulls most, and blames it', () => {
    const two = [
      ...drillings('holes', 5, round(4, 40).slice(0, 3)),
      ...drillings('other', 6, round(4, 40).slice(0, 3)),
    ];
    const uneven = made(two);
    expect(said('symmetry', uneven).why).toContain('the other holes');
    expect(said('balance-adapter', uneven).why).toContain('Most of it comes from: the other holes.');
    expect(said('balance-adapter', made(drillings('holes', 5, round(4, 40)))).why).toContain(
      'holes and flats are symmetrical',
    );
    expect(balance.run(made([])).map(({ code }) => code)).toEqual(['balance-adapter', 'couple-adapter']);
    expect(said('balance-adapter', made([])).why).toContain('symmetrical');
  });

  it('U = m G / omega (ISO 21940-11); each end plane may carry half', () => {
    // 1000 g at G 6.3 and 3000 rpm: 1000 x 6.3 / 314.16 = 20.05 g.mm; it carries 10, 7.5 of it at the driving end.
    const U = (1000 * 6.3) / ((3000 * 2 * Math.PI) / 60);
    expectSaid(said('balance-adapter', made([])), { verdict: 'pass', value: 10, limit: U, digits: 4 });
    expectSaid(said('couple-adapter', made([])), { verdict: 'pass', value: 7.5, limit: U / 2, digits: 4 });
    const fast = (patch: Patch = {}) => said('couple-adapter', made([], { speed: 9000, grade: 'G6.3' }, patch));
    expectSaid(fast(), { verdict: 'fail', value: 7.5, limit: U / 6, digits: 4 });
    expect(fast().remedy).toContain('The driving end is the worse');
    expect(fast({ adapterMass: { centre: [0, 0.01, 15] } }).remedy).toContain('The driven end is the worse');
    // A product of inertia of 400 over a span of 20 adds 20 to the one end and takes it from the other.
    expect(fast({ adapterMass: { inertia: { xz: 0, yz: 400 } } }).value).toBeCloseTo(22.5, 6);
    const open = balance.run(made([], { speed: undefined, grade: 'G6.3' }));
    expect(open.map(({ verdict }) => verdict)).toEqual(['not assessed', 'not assessed']);
    expect(open[0]?.why).toContain('10.00 g.mm out');
  });
});

describe('what of a wheel pulls to one side', () => {
  const { joint } = judge({ duty: { speed: '2600 rpm' } });
  const why = (wheel: Patch) =>
    findingOf({ findings: balance.run(bent(joint, { wheelSpec: wheel })) }, 'balance-wheel').why;
  it.each([
    [{}, 'Its teeth and holes are symmetrical.'],
    [{ rim: 5 }, 'Its bars and holes are symmetrical.'],
    [{ missing: 1 }, 'The gap of 1 missing tooth leaves that side light.'],
    [{ missing: 2 }, 'The gap of 2 missing teeth leaves that side light.'],
    [{ missing: 2, rim: 5 }, 'The gap of 2 missing bars leaves that side light.'],
    [{ wide: 1 }, 'The wide tooth, 2 places long, makes that side heavy.'],
    [{ extra: 1 }, 'The extra tooth makes that side heavy.'],
  ] as const)('%o', (wheel, words) => expect(why(wheel)).toContain(words));
});

describe('teeth against a data sheet', () => {
  const { joint } = judge({});
  const said = (code: string, sensor: Patch) =>
    findingOf({ findings: teeth.run(bent(joint, { job: { sensor: { kind: undefined, ...sensor } } })) }, code);

  it('too narrow: so many teeth would do, in proportion to what is wanted', () => {
    const tooth = said('tooth-width', { tooth: 5 });
    expect(tooth.verdict).toBe('fail');
    expect(tooth.remedy).toContain(`(at most ${Math.floor((60 * (tooth.value ?? 0)) / 5)} here)`);
    expect(tooth.remedy).toContain('or a larger ratio.');
    const valley = said('valley-width', { valley: 9 });
    expect(valley.remedy).toContain(`(at most ${Math.floor((60 * (valley.value ?? 0)) / 9)} here)`);
    expect(valley.remedy).toContain('or a smaller ratio.');
    // Three teeth at the least.
    expect(said('tooth-width', { tooth: 500 }).remedy).toContain('(at most 3 here)');
    expect(said('tooth-width', { tooth: tooth.value ?? 0 }).verdict).toBe('pass');
  });

  it('too low, too thin, too wide', () => {
    // 4.5 high, 3 thick.
    expectSaid(said('tooth-height', { height: 5 }), { verdict: 'fail', value: 4.5, limit: 5 });
    expect(said('tooth-height', { height: 5 }).remedy).toContain('0.50 mm higher');
    expectSaid(said('tooth-height', { height: 4.5 }), { verdict: 'pass', value: 4.5, limit: 4.5 });
    expectSaid(said('wheel-thickness', { thickness: 3.5 }), { verdict: 'fail', value: 3, limit: 3.5 });
    expect(said('wheel-thickness', { thickness: 3.5 }).remedy).toContain('sheet of 3.50 mm');
    expect(said('tooth-width-most', { tooth_most: 2 }).remedy).toMatch(/^Use more teeth or a smaller ratio/);
  });

  it('a pole as wide as the tooth is seen whole; without a kind or a figure nothing is judged', () => {
    const width = said('tooth-width', { tooth: 1 }).value ?? 0;
    expect(said('tooth-covers-pole', { pole: width }).verdict).toBe('pass');
    expect(said('tooth-covers-pole', { pole: width + 0.01 }).verdict).toBe('fail');
    expect(said('tooth-size', {}).remedy).toMatch(/^Give sensor\.kind/);
    const codes = (sensor: Patch) =>
      teeth.run(bent(joint, { job: { sensor: { kind: undefined, ...sensor } } })).map(({ code }) => code);
    expect(codes({ tooth: 1 })).not.toContain('tooth-size');
    expect(codes({ spacing: 1 })).not.toContain('tooth-size');
    expect(said('tooth-size', { height: 4 }).remedy).toMatch(/^Type what the sensor's data sheet asks for/);
    const without = teeth.run(bent(joint, { wheelMaterial: null })).map(({ code }) => code);
    expect(without).not.toContain('wheel-magnetic');
    expect(teeth.run(bent(joint, { wheelSpec: null }))).toEqual([]);
    const plastic = teeth.run(bent(joint, { wheelMaterial: { magnetic: false } }));
    expect(findingOf({ findings: plastic }, 'wheel-magnetic').verdict).toBe('fail');
  });
});
