/** Does the adapter itself carry the torque? By hand. */
import { describe, expect, it } from 'vitest';
import { expectSaid, findingOf, judge, type Patch } from './help.ts';

// Thickness, outside and bore as drawn: 16.5, 128 and 26 mm. Pockets 15 mm on 84 mm, 8.6 deep; clear holes 9; M10 threads on 108.
const drawn: Patch = { adapter: { thickness: 16.5, outside: 128, bore: 26 } };
const torque = (value: string): Patch => ({ duty: { torque: value } });
const J = (R: number, r: number) => (Math.PI / 2) * (R ** 4 - r ** 4);
// At the driven face the rim is chamfered 1 mm; pockets and thread mouths (10 mm) leave rings to 69 and from 118 mm.
const stress = (T: number, rim: number) => (1000 * T * rim) / (J(34.5, 13) + J(rim, 59));
const shear = 355 / Math.sqrt(3);

describe('torsion of the adapter', () => {
  it('counts the rings that no hole cuts at the worst height', () => {
    const { joint, findings } = judge(drawn, { wheel: undefined });
    expect(joint.adapterSpec).toMatchObject({ outside: 128, bore: 26, chamfer: 1 });
    const finding = findingOf({ findings }, 'torsion');
    expectSaid(finding, { verdict: 'pass', value: stress(320, 63), limit: shear / 1.5, digits: 3 });
    expect(finding.why).toContain('diameter 26.0 to 69.0 and 118.0 to 126.0 mm');
  });

  it('is a caution up to the yield point, and fails beyond', () => {
    const at = (T: string) => findingOf(judge(drawn, { wheel: undefined }, torque(T)), 'torsion');
    const yields = shear / stress(1, 63);
    expect(at(`${0.99 * (yields / 1.5)} N.m`).verdict).toBe('pass');
    expect(at(`${1.01 * (yields / 1.5)} N.m`).verdict).toBe('caution');
    const broken = at(`${1.01 * yields} N.m`);
    expect(broken.verdict).toBe('fail');
    expect(broken.remedy).toContain('adapter.material');
  });

  it('needs a torque', () => {
    const { findings } = judge({ duty: { torque: undefined } });
    const finding = findingOf({ findings }, 'torsion');
    expectSaid(finding, { verdict: 'not assessed' });
    expect(finding.remedy).toMatch(/^Give duty\.torque/);
    expect(findings.some(({ code }) => code === 'ring-shear')).toBe(false);
  });

  it('leaves a section without an uncut ring open', () => {
    // At the driven face: bore 57.4, pockets of 15 on 72, thread mouths of 10 on 96, rim 106: 28.5 to 43.5, 43 to 53.
    const crowded: Patch = {
      wheel: undefined,
      driving: { holes: { circle: 72 } },
      driven: { holes: { circle: 96 } },
      adapter: { bore: 57.4, outside: 106, clocking: 15 },
    };
    const finding = findingOf(judge(crowded), 'torsion');
    expectSaid(finding, { verdict: 'not assessed' });
    expect(finding.why).toMatch(/leave no ring uncut/);
  });
});

describe('shear between the bolt circles', () => {
  it('is worst on the inner circle, through its holes and pockets', () => {
    // A circle of 84 through six holes of 9 (7.9 deep) and six pockets of 15 (8.6 deep): each hole takes out 4 asin(a/84).
    const left = (a: number) => 2 * Math.PI - 6 * 4 * Math.asin(a / 84);
    const area = 42 * (left(4.5) * 7.9 + left(7.5) * 8.6);
    const finding = findingOf(judge(drawn, { wheel: undefined }), 'ring-shear');
    expectSaid(finding, { verdict: 'pass', value: 320_000 / (42 * area), limit: shear / 1.5, digits: 2 });
  });

  it('does not arise where both circles are one', () => {
    const { findings } = judge({
      driving: { outside: 128, holes: { circle: 108 } },
      wheel: undefined,
      driven: { holes: { count: 6 } },
      adapter: { clocking: 30 },
    });
    expect(findings.some(({ code }) => code === 'torsion')).toBe(true);
    expect(findings.some(({ code }) => code === 'ring-shear')).toBe(false);
  });
});
