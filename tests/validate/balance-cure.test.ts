/** Corrections that balance: what the sentence says is taken off the part in thin slices, and must undo its pull. mm, g.mm */
import { describe, expect, it } from 'vitest';
import { sizeOf } from '../../src/formulas/arrows.ts';
import type { Profile } from '../../src/model/part.ts';
import { pullOf } from '../../src/rotor/unbalance.ts';
import { adapterCorrection, freeDepth, rimHole } from '../../src/validate/balance-cure.ts';
import { findingOf, type Judged, judge, type Patch } from './help.ts';

/** Three holes where four would be even: the metal of the fourth is the heavy side. */
const lopsided: Patch = {
  driven: {
    holes: {
      count: undefined,
      circle: undefined,
      at: [
        [54, 0],
        [0, 54],
        [-54, 0],
      ],
    },
  },
  adapter: { thickness: 20 },
};
const noWheel: Patch = { wheel: undefined, sensor: undefined };

const radiusAt = (outer: Profile, z: number): number => {
  for (let i = 1; i < outer.length; i++) {
    const [a, b] = [outer[i - 1], outer[i]];
    if (a && b && z >= a.z && z < b.z) return a.r + ((b.r - a.r) * (z - a.z)) / (b.z - a.z);
  }
  return 0;
};

/** First moment of the metal beyond a plane, of the outside alone, by adding up strips. */
function beyondPlane({ joint }: Judged, plane: number): number {
  const { outer, material } = joint.adapter;
  const [low, high] = [Math.min(...outer.map(({ z }) => z)), Math.max(...outer.map(({ z }) => z))];
  const [layers, strips] = [2000, 400];
  let sum = 0;
  for (let layer = 0; layer < layers; layer++) {
    const R = radiusAt(outer, low + ((layer + 0.5) * (high - low)) / layers);
    for (let i = 0; R > plane && i < strips; i++) {
      const x = plane + ((i + 0.5) * (R - plane)) / strips;
      sum += 2 * Math.sqrt(R * R - x * x) * x * ((R - plane) / strips);
    }
  }
  return (sum * material.density * (high - low)) / layers;
}

const numbers = (pattern: RegExp, text: string) => (pattern.exec(text) ?? []).slice(1).map(Number);

describe('what is milled off', () => {
  it.each([
    ['a plain outside with chamfers', noWheel],
    ['a shoulder for the wheel, that a flat does not reach', {}],
  ])('undoes the pull of the holes: %s', (_, patch) => {
    const made = judge(lopsided, patch);
    const said = adapterCorrection(made.joint);
    const [depth = Number.NaN] = numbers(/mill a flat ([\d.]+) mm deep/, said);
    const rim = Math.max(...made.joint.adapter.outer.map(({ r }) => r));
    const pull = sizeOf(pullOf(made.joint.adapterMass));
    // The depth is told to a hundredth of a millimetre.
    expect(beyondPlane(made, rim - depth) / pull).toBeGreaterThan(0.97);
    expect(beyondPlane(made, rim - depth) / pull).toBeLessThan(1.03);
  });

  it('stays clear of what lies behind the rim, and of the vise flats', () => {
    // Seven holes evenly, of which the one that is missing leaves its two neighbours near the heavy side.
    const near: Patch = { ...noWheel, adapter: { thickness: 20, outside: 122.5 } };
    expect(adapterCorrection(judge(lopsided, noWheel).joint)).toContain('mill a flat');
    // A web of 20 mm leaves no room at all.
    const { joint } = judge(lopsided, near);
    const wide = { ...joint, job: { ...joint.job, adapter: { ...joint.job.adapter, web: 20 } } };
    expect(adapterCorrection(wide)).not.toMatch(/mill|drill/);
    expect(adapterCorrection(wide)).toMatch(/^Take [\d.]+ g off the rim at/);
    const heavy = Number(/at ([\d.]+) degrees/.exec(adapterCorrection(joint))?.[1]);
    const flat = { across: 2 * 58, angle: heavy };
    expect(adapterCorrection({ ...joint, adapterSpec: { ...joint.adapterSpec, flats: flat } })).not.toMatch(
      /mill|drill/,
    );
    const aside = { across: 2 * 58, angle: heavy + 90 };
    expect(adapterCorrection({ ...joint, adapterSpec: { ...joint.adapterSpec, flats: aside } })).toMatch(/mill|drill/);
  });
});

describe('a flat beside a hole', () => {
  /*
   * An outside of 120, M10 mouths (10 across) on 108, a web of 3: metal to keep to 54 + 8 = 62, beyond the rim. A flat h wide each way
   * takes 2/3 h^3 rho t: 12 g.mm of 20 mm (less two chamfers of 1) at most 2 x 5.1; a hole 15 degrees aside begins 54 sin 15 - 8 = 5.98 off.
   */
  const { joint } = judge(noWheel, { adapter: { thickness: 20, outside: 120 } });
  const said = (at: number) => {
    const [mass, off] = [joint.adapterMass.mass, 12 / joint.adapterMass.mass];
    const angle = (at * Math.PI) / 180;
    return adapterCorrection(joint, {
      ...joint.adapterMass,
      mass,
      centre: [off * Math.cos(angle), off * Math.sin(angle), 10],
    });
  };
  it.each([
    [-15, true],
    [0, false],
    [15, true],
  ])('%d degrees from it: %s', (aside, isClear) => {
    expect(said(joint.clocking.angle + aside).includes('mill a flat')).toBe(isClear);
  });
});

describe('what is drilled', () => {
  it('undoes the pull: cylinder and point by hand, the drill as long as it is told', () => {
    const made = judge(lopsided, noWheel, { adapter: { outside: 160 } });
    const said = adapterCorrection(made.joint);
    const [d = 0, height = 0, depth = 0] = numbers(
      /drill ([\d.]+) mm into the rim there, ([\d.]+) mm above the driving face and ([\d.]+) mm deep/,
      said,
    );
    const rim = made.joint.adapterSpec.outside / 2;
    const area = (Math.PI / 4) * d * d;
    const point = d / 2 / Math.tan((59 * Math.PI) / 180);
    const { density } = made.joint.adapterSpec.material;
    const moment = density * area * (depth * (rim - depth / 2) + (point / 3) * (rim - depth - point / 4));
    expect(moment / sizeOf(pullOf(made.joint.adapterMass))).toBeGreaterThan(0.97);
    expect(moment / sizeOf(pullOf(made.joint.adapterMass))).toBeLessThan(1.03);
    expect(height).toBeCloseTo(10, 9);
  });

  it('is the point alone where that takes a tenth too much at most, and nothing where it takes more', () => {
    const { joint } = judge(noWheel, { adapter: { thickness: 20, outside: 160 } });
    // The smallest drill, 5 mm at 118 degrees: a cone as high as 2.5 / tan 59 degrees, its centre a quarter of that from its mouth.
    const high = 2.5 / Math.tan((59 * Math.PI) / 180);
    const point = ((0.00785 * Math.PI * 2.5 ** 2 * high) / 3) * (80 - high / 4);
    expect(rimHole(joint, point / 1.05, 200)).toEqual({ diameter: 5, depth: 0, height: 10 });
    expect(rimHole(joint, point / 1.15, 200)).toBeNull();
  });

  it('stands in the middle of the rim that is there, not of the shoulder', () => {
    const { joint } = judge(lopsided);
    // The wheel's shoulder is as high as the sheet is thick, 3 mm, on the driven face: 17 of 20 mm are left.
    expect(joint.adapterSpec.wheelSeat?.face).toBe('driven');
    expect(rimHole(joint, 20, joint.clocking.angle + 300)?.height).toBeCloseTo(8.5, 9);
  });

  it('ends a web before the hole in its way: from the rim to the mouth of an M10 at 54', () => {
    const { joint } = judge(noWheel);
    const at = joint.clocking.angle;
    // A mouth of 10 across, a drill of 6, a web of 3: head on, the drill's edge is not nearer than its middle.
    expect(freeDepth(joint, at, 6, 3)).toBeCloseTo(joint.adapterSpec.outside / 2 - 54 - (5 + 3 + 3), 9);
  });
});

describe('what is said of a wheel that pulls to one side', () => {
  // Two of 36 open teeth, or bars, at 6000 rpm and G 6.3: far above what is allowed; all of them are even by symmetry.
  const fast: Patch = { duty: { speed: '6000 rpm', grade: 'G6.3' }, wheel: { teeth: 36, height: 8, thickness: 5 } };
  const open: Patch = { wheel: { missing: 2 } };
  const windows: Patch = {
    wheel: { missing: 2, form: 'windows', outside: 200, height: 9 },
    sensor: { direction: 'axial' },
  };
  it.each([
    ['teeth', open],
    ['bars', windows],
  ])('names its own cause: missing %s, and no second face to make alike', (word, patch) => {
    const made = judge(fast, patch);
    for (const code of ['balance-wheel', 'couple-wheel']) {
      const finding = findingOf(made, code);
      expect(finding.verdict).toBe('fail');
      expect(finding.remedy).toMatch(/^Take [\d.]+ g off below the/);
      expect(finding.remedy).toContain(`Or keep all ${word} (wheel.missing: 0), if the controller needs no mark.`);
      expect(finding.remedy).not.toMatch(/make both faces alike|make the pattern symmetrical/);
      expect(findingOf(judge(fast, patch, { wheel: { missing: 0 } }), code).verdict, 'after the cure').toBe('pass');
    }
    // Cut straight through, each face carries half: half of the pull against half of what is allowed.
    const [whole, half] = ['balance-wheel', 'couple-wheel'].map((code) => findingOf(made, code));
    expect(half?.value).toBeCloseTo((whole?.value ?? 0) / 2, 3);
  });

  it('leaves the adapter its own words', () => {
    const made = judge(lopsided, { duty: { speed: '6000 rpm', grade: 'G6.3' } });
    expect(findingOf(made, 'couple-adapter').remedy).toMatch(/make both faces alike\. The (driving|driven) end/);
  });
});
