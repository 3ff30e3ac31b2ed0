/** Safe speed of parts drawn by hand: a ring of a metal with round numbers, in metres, kilograms and pascals. */
import { describe, expect, it } from 'vitest';
import type { Joint, ScrewGroup } from '../../src/job/joint.ts';
import { screwMasses } from '../../src/rotor/screw-body.ts';
import { burst } from '../../src/validate/burst.ts';
import { drawn, round } from './drawn-screws.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

const metal = { name: 'metal', density: 0.008, poissonsRatio: 0.3, yieldStrength: 300, tensileStrength: 600 };

/** Stresses at 1 rad/s of an even ring with a dead mass on its rim, Pa (Shigley eq. 3-55, Lame; half of the ring held by its section). */
function ring(a: number, b: number, t: number, dead = 0, at = b) {
  const own = (8000 * 3.3) / 8;
  const pull = (dead * at) / (2 * Math.PI * b * t);
  const lame = a > 0 ? (r: number) => 1 + (a / r) ** 2 : () => 1;
  const hoop = (r: number) =>
    own * (a * a + b * b + (a > 0 ? ((a * b) / r) ** 2 : 0) - (1.9 / 3.3) * r * r) +
    ((pull * b * b) / (b * b - a * a)) * lame(r);
  const mean = (net = 0) => ((8000 * (b ** 3 - a ** 3)) / 3 + (dead * at) / (2 * Math.PI * t)) / (b - a - net);
  return { hoop, mean };
}
const rpmAt = (strength: number, unit: number) => (Math.sqrt((strength * 1e6) / unit) * 30) / Math.PI;

/** Ring 100 to 200, 20 thick, without holes or screws. */
const plain = (patch: Patch = {}): Joint =>
  ({
    adapterSpec: { bore: 100, outside: 200, thickness: 20, groups: [], ...patch },
    adapterMaterial: metal,
    screws: [],
    wheelSpec: null,
    wheelMaterial: null,
    job: { duty: { speed: 1000 } },
  }) as unknown as Joint;
const holes = (radius: number, diameter: number, kind = 'passing') => ({
  groups: [{ positions: [...round(3, radius), { x: radius + 10, y: 0 }], shape: { kind, diameter, major: diameter } }],
});
const adapter = (joint: Joint) => findingOf({ findings: burst.run(joint) }, 'burst-adapter');

describe('safe speed of a ring', () => {
  it.each([
    ['yields at its bore', {}, ring(0.05, 0.1, 0.02).hoop(0.05)],
    ['a full disc yields in the middle', { bore: null }, ring(0, 0.1, 0.02).hoop(0)],
    ['three times as much at the edge of its innermost holes', holes(70, 10), 3 * ring(0.05, 0.1, 0.02).hoop(0.07)],
    ['tapped ones too', holes(70, 10, 'tapped'), 3 * ring(0.05, 0.1, 0.02).hoop(0.07)],
    ['holes on the edge of the bore are none in the disc', holes(50, 10), ring(0.05, 0.1, 0.02).hoop(0.05)],
    ['nor are those on the rim', holes(100, 10), ring(0.05, 0.1, 0.02).hoop(0.05)],
  ] as const)('%s', (_, patch, unit) => {
    expectSaid(adapter(plain(patch)), { verdict: 'pass', value: rpmAt(300, unit), limit: 1200, digits: 4 });
  });

  it.each([
    // 0.85 of the tensile strength in the mean, holes and all (common practice).
    ['a thin one bursts before it yields', { bore: 180 }, ring(0.09, 0.1, 0.02).mean()],
    [
      'a hole as wide as the ring leaves a tenth of it',
      { bore: 180, ...holes(95, 30) },
      ring(0.09, 0.1, 0.02).mean(0.009),
    ],
    ['a hole takes its width away', { bore: 180, ...holes(95, 8) }, ring(0.09, 0.1, 0.02).mean(0.008)],
  ] as const)('%s', (_, patch, mean) => {
    const tough = { adapterMaterial: { yieldStrength: 3000, tensileStrength: 310 } };
    const finding = adapter(bent(plain(patch), tough));
    expect(finding.value).toBeCloseTo(rpmAt(0.85 * 310, mean), 4);
    expect(finding.why).toContain(`the whole bursts at about ${rpmAt(0.85 * 310, mean).toFixed(0)} rpm`);
  });

  it('passes up to 1.2 of the highest speed, is a caution up to that speed, and tells the speed that would do', () => {
    const safe = rpmAt(300, ring(0.05, 0.1, 0.02).hoop(0.05));
    const at = (speed: number) => adapter(bent(plain(), { job: { duty: { speed } } }));
    expect(at(safe / 1.2 - 0.001).verdict).toBe('pass');
    expect(at(safe / 1.2 + 0.001).verdict).toBe('caution');
    expect(at(safe - 0.001).verdict).toBe('caution');
    expect(at(safe + 0.001).verdict).toBe('fail');
    expect(at(safe).source).toContain('(from memory)');
    expect(at(safe).remedy).toContain(`never turn faster than ${Math.floor(safe / 1.2)} rpm`);
  });

  it('screws, nuts and washers hang on its rim at the circle that they stand on, the farthest of each group', () => {
    const group = (patch: Patch) =>
      drawn({ head: { kind: 'hex', diameter: 14, height: 5.3 }, grip: 20, count: 4, ...patch }).screws;
    const [bare, full] = [
      group({ positions: round(4, 80) }),
      group({
        positions: [...round(3, 70), { x: 85, y: 0 }],
        washer: { outside: 16, thickness: 2 },
        nut: { height: 6.8, acrossFlats: 13 },
      }),
    ];
    const weight = (of: ScrewGroup) => {
      const { screw, nut, washer } = screwMasses(of);
      return (4 * (screw + (nut ?? 0) + (washer ?? 0))) / 1000;
    };
    // A nut of 13 weighs about 5 g, a washer of 16 x 2 about 2 g (trade catalogues, roughly): both count.
    expect(weight(full) / weight(bare)).toBeGreaterThan(1.15);
    const dead = weight(bare) + weight(full);
    const at = (weight(bare) * 0.08 + weight(full) * 0.085) / dead;
    const finding = adapter({ ...plain(), screws: [bare, full] } as Joint);
    expect(finding.value).toBeCloseTo(rpmAt(300, ring(0.05, 0.1, 0.02, dead, at).hoop(0.05)), 4);
    expect(finding.why).toContain(`(${(1000 * dead).toFixed(0)} g)`);
    expect(adapter(plain()).why).toContain('(0 g)');
  });
});

describe('safe speed of a wheel', () => {
  const joint = judge({}).joint;
  const spec: Patch = {
    bore: 120,
    root: 160,
    outside: 170,
    ratio: 0.4,
    teeth: 50,
    missing: 0,
    thickness: 4,
    screwHoles: null,
  };
  const wheel = (patch: Patch = {}) =>
    findingOf(
      { findings: burst.run(bent(joint, { wheelSpec: { ...spec, ...patch }, wheelMaterial: { ...metal } })) },
      'burst-wheel',
    );
  const teeth = (share: number) => share * Math.PI * (0.085 ** 2 - 0.08 ** 2) * 0.004 * 8000;
  const unit = (share: number) => ring(0.06, 0.08, 0.004, teeth(share), 0.0825);

  it.each([
    ['four tenths of the ring are teeth', {}, 0.4],
    ['an extra one is one fiftieth more', { extra: 1 }, 0.4 * 1.02],
    ['a wide one counts as a ring of steel', { wide: 1 }, 1],
  ] as const)('%s', (_, patch, share) => {
    const finding = wheel(patch);
    expect(finding.value).toBeCloseTo(rpmAt(300, unit(share).hoop(0.06)), 4);
    expect(finding.why).toContain(`its teeth (${(1000 * teeth(share)).toFixed(0)} g`);
    expect(finding.why.includes('counted as a solid ring')).toBe(share === 1);
  });

  it('screw holes: three times the hoop stress at the innermost', () => {
    const screwHoles = { diameter: 6, positions: [...round(3, 70), { x: 66, y: 0 }] };
    expect(wheel({ screwHoles }).value).toBeCloseTo(rpmAt(300, 3 * unit(0.4).hoop(0.066)), 4);
  });

  it('is told only where there is one, with its metal', () => {
    const codes = (patch: Patch) => burst.run(bent(joint, patch)).map(({ code }) => code);
    expect(codes({})).toEqual(['burst-adapter', 'burst-wheel']);
    expect(codes({ wheelSpec: null })).toEqual(['burst-adapter']);
    expect(codes({ wheelMaterial: null })).toEqual(['burst-adapter']);
  });

  // Windows from 80 to 85 in a rim to 91: the hub carries bars and rim as dead mass.
  const windowed = (patch: Patch = {}) => wheel({ outside: 182, rim: 6, ...patch });
  const shell = Math.PI * (0.091 ** 2 - 0.085 ** 2) * 0.004 * 8000;
  it.each([
    ['bars', {}, 0.4],
    ['two of fifty missing', { missing: 2 }, 0.4 * 0.96],
    ['an extra one', { extra: 1 }, 0.4 * 1.02],
    ['a wide one counts as a ring', { wide: 1 }, 1],
  ] as const)('hub of a wheel with windows: %s', (_, patch, share) => {
    const said = windowed(patch);
    expect(said.why).toContain(`its bars and its rim (${(1000 * (teeth(share) + shell)).toFixed(0)} g`);
    expect(said.why.includes('counted as a solid ring')).toBe(share === 1);
  });

  it.each([
    ['bars', {}, 0.4],
    ['a wide one counts as a ring', { wide: 1 }, 1],
  ] as const)('a thin hub that carries a wide rim is the worst spot: %s', (_, patch, share) => {
    // A hub of 79 to 80, a rim of 85 to 105: what hangs on the hub stands at the middle of its masses.
    const wide = Math.PI * (0.105 ** 2 - 0.085 ** 2) * 0.004 * 8000;
    const bars = teeth(share);
    const hub = ring(0.079, 0.08, 0.004, bars + wide, (bars * 0.0825 + wide * 0.095) / (bars + wide));
    const said = windowed({ outside: 210, rim: 20, bore: 158, ...patch });
    expect(said.why).toContain('The worst spot, the hub, yields');
    expect(said.value).toBeCloseTo(rpmAt(300, hub.hoop(0.079)), 3);
  });

  it('hub, rim and bars by hand where bars are many and all there', () => {
    const bars = teeth(0.4);
    // Free ring with the bars on it; even bars: q s^2 / 12; each bar holds its pitch of the rim (Roark, Timoshenko).
    const [r, w, t] = [0.088, 0.006, 0.004];
    const hoop = ring(0.085, 0.091, t).hoop(0.085) + (bars * 0.0825) / (2 * Math.PI * t * w);
    const pitch = (2 * Math.PI * r) / 50;
    const load = 8000 * t * w * r;
    const bending = (6 * load * pitch ** 2) / 12 / (t * w * w);
    const hub = ring(0.06, 0.08, t, bars + shell, (bars * 0.0825 + shell * 0.088) / (bars + shell)).hoop(0.06);
    // Bars 0.4 of a pitch at the middle of the windows, with radial flanks or parallel ones narrower at one end: their share is small here.
    expect(Math.max(hub, 3 * (hoop + bending))).toBe(3 * (hoop + bending));
    expect(windowed().value).toBeCloseTo(rpmAt(300, 3 * (hoop + bending)), 3);
    expect(windowed().why).toContain('The worst spot, the rim at a corner of a window, yields');
  });
});
