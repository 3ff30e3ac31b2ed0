/** Safe speed of adapter and wheel, by hand from the job to the finding. */
import { describe, expect, it } from 'vitest';
import { screwMasses } from '../../src/rotor/screw-body.ts';
import { burst } from '../../src/validate/burst.ts';
import { findingOf, judge, type Patch } from './help.ts';

const about = (patch: Patch, code: string) => findingOf({ findings: burst.run(judge(patch).joint) }, code);
const near = (value: number | null, hand: number, share = 0.01) =>
  expect(Math.abs((value ?? Number.NaN) / hand - 1)).toBeLessThan(share);

describe('safe speed', () => {
  it('of the wheel: hoop stress at its screw holes, three times, at the yield of DC01', () => {
    const { joint } = judge({});
    const spec = joint.wheelSpec;
    if (!spec?.screwHoles) throw new Error('no wheel');
    // Shigley eq. 3-55 and Lame, written out in metres.
    const [a, b] = [spec.bore / 2000, spec.root / 2000];
    const hole = Math.hypot(spec.screwHoles.positions[0]?.x ?? 0, spec.screwHoles.positions[0]?.y ?? 0) / 1000;
    const tip = spec.outside / 2000;
    const teeth = 0.4 * Math.PI * (tip ** 2 - b ** 2) * 0.003 * 7850;
    const pull = (teeth * ((b + tip) / 2)) / (2 * Math.PI * b * 0.003);
    const own = (7850 * 3.3) / 8;
    const hoop = (r: number) =>
      own * (a * a + b * b + (a * b) ** 2 / r ** 2 - (1.9 / 3.3) * r * r) +
      ((pull * b * b) / (b * b - a * a)) * (1 + (a / r) ** 2);
    const worst = Math.max(hoop(a), 3 * hoop(hole));
    const finding = about({}, 'burst-wheel');
    near(finding.value, (Math.sqrt(200e6 / worst) * 30) / Math.PI, 1e-3);
    expect(finding).toMatchObject({ verdict: 'pass', limit: 1.2 * 2600 });
  });

  it('of the adapter: its screws pull at its rim, three times the hoop stress at the holes nearest the axis', () => {
    const { joint } = judge({ adapter: { thickness: 20 } });
    const moment = joint.screws.reduce((sum, { count, positions: [p], ...rest }) => {
      const { screw, nut, washer } = screwMasses({ count, positions: p ? [p] : [], ...rest });
      return sum + count * (screw + (nut ?? 0) + (washer ?? 0)) * Math.hypot(p?.x ?? 0, p?.y ?? 0);
    }, 0);
    // Shigley eq. 3-55 and Lame in metres: bore 27, rim 154, holes on 84; kg m = 1e6 g.mm.
    const [a, b, r] = [(joint.adapterSpec.bore ?? 0) / 2000, joint.adapterSpec.outside / 2000, 0.042];
    const pull = moment / 1e6 / (2 * Math.PI * b * 0.02);
    const hoop =
      ((7850 * 3.3) / 8) * (a * a + b * b + (a * b) ** 2 / r ** 2 - (1.9 / 3.3) * r * r) +
      ((pull * b * b) / (b * b - a * a)) * (1 + (a / r) ** 2);
    near(
      about({ adapter: { thickness: 20 } }, 'burst-adapter').value,
      (Math.sqrt(355e6 / (3 * hoop)) * 30) / Math.PI,
      1e-8,
    );
  });

  it('of a wheel whose rim spans three missing bars: three times hoop and bending at a corner of a window', () => {
    const patch: Patch = {
      wheel: { form: 'windows', teeth: 36, missing: 3, ratio: 0.5, outside: 190, rim: 5, height: 8, root_radius: 1 },
      sensor: { direction: 'axial' },
    };
    // In metres, at 1 rad/s: rim from 0.09 to 0.095, bars from 0.082 to 0.09, sheet of 3, DC01.
    const [a, b, r, w, t, rho] = [0.09, 0.095, 0.0925, 0.005, 0.003, 7850];
    const bars = (33 / 36) * 0.5 * Math.PI * (a * a - 0.082 ** 2) * t * rho;
    // Free ring (Shigley eq. 3-55) with the bars as dead mass; a beam of four pitches that bears its own load, q s^2 / 8 (Roark).
    const hoop = ((rho * 3.3) / 8) * (a * a + 2 * b * b - (1.9 / 3.3) * a * a) + (bars * 0.086) / (2 * Math.PI * t * w);
    const bending = (6 / (t * w * w)) * ((rho * t * w * r * (4 * ((2 * Math.PI * r) / 36)) ** 2) / 8);
    const hand = (Math.sqrt(200e6 / (3 * (hoop + bending))) * 30) / Math.PI;
    near(about(patch, 'burst-wheel').value, hand, 1e-6);
  });

  it('cautions inside the overspeed and fails at the speed itself', () => {
    const safe = about({}, 'burst-wheel').value ?? 0;
    const at = (share: number) => about({ duty: { speed: `${Math.round(share * safe)} rpm` } }, 'burst-wheel').verdict;
    expect([0.8, 0.9, 1.1].map(at)).toEqual(['pass', 'caution', 'fail']);
  });

  it('is open without a speed', () => {
    for (const code of ['burst-adapter', 'burst-wheel']) {
      const open = about({ duty: undefined }, code);
      expect(open.verdict).toBe('not assessed');
      expect(open.remedy).toContain('duty.speed');
    }
  });

  it('of an aluminium adapter is higher than of a steel one as weak', () => {
    const speed = (material: string) => about({ adapter: { material } }, 'burst-adapter').value ?? 0;
    // Yield 276 at 2.7 g/cm3 against 250 at 7.85.
    expect(speed('6061-T6')).toBeGreaterThan(1.2 * speed('A36'));
  });
});
