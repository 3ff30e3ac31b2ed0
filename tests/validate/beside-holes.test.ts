/** What holes and heads stand beside: parts drawn by hand, each room a subtraction. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import type { Joint, ScrewGroup } from '../../src/job/joint.ts';
import { heads, pocketDepth, webUnderHead } from '../../src/validate/heads.ts';
import { thinnestTowards } from '../../src/validate/outside-of-holes.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

describe('which part of the outside a hole comes nearest to', () => {
  /** A disc of 100 x 20 with one hole of 10. */
  const through = [
    { z: 0, r: 5 },
    { z: 20, r: 5 },
  ];
  const nearest = (at: number, spec: Patch, profile: readonly { z: number; r: number }[] = through) =>
    thinnestTowards(
      {
        adapter: { drillings: [{ id: 'hole', feature: 'holes', x: 0, y: -at, profile }] },
        adapterSpec: {
          outside: 100,
          thickness: 20,
          registers: { driving: null, driven: null },
          wheelSeat: null,
          ...spec,
        },
      } as unknown as Joint,
      'hole',
    );
  const spigot = (diameter: number, at = 'inner') => ({
    registers: { driving: { gender: 'male', at, diameter }, driven: null },
  });
  const rim = { kind: 'rim', side: null, name: 'the rim' };
  const driving = { kind: 'spigot', side: 'driving', name: 'the driving spigot' };

  it.each([
    // At 40 there are 50 - 40 - 5 = 5 to the rim.
    ['nothing else there', 40, {}, rim],
    ['a spigot of 64 inside it: 40 - 32 - 5 = 3', 40, spigot(64), driving],
    ['a spigot of 58: 6', 40, spigot(58), rim],
    ['a spigot of 96 whose edge it comes near from inside: 48 - 40 - 5 = 3', 40, spigot(96), driving],
    ['a spigot of 120 that goes far over it: 15', 40, spigot(120), rim],
    [
      'a recess is not the outside',
      40,
      { registers: { driving: { gender: 'female', at: 'inner', diameter: 64 }, driven: null } },
      rim,
    ],
    [
      'a rim turned down to 96: 3',
      40,
      spigot(96, 'rim'),
      { kind: 'step', side: 'driving', name: 'the step of the driving register' },
    ],
    [
      'a ring round the face is not a step',
      40,
      { registers: { driving: { gender: 'female', at: 'rim', diameter: 96 }, driven: null } },
      rim,
    ],
    [
      'a wheel seat of 92: 1',
      40,
      { wheelSeat: { face: 'driven', diameter: 92 } },
      { kind: 'wheel seat', side: 'driven', name: 'the wheel seat' },
    ],
  ] as const)('%s', (_, at, spec, said) => expect(nearest(at, spec)).toEqual(said));

  // At 30 there are 15 to the rim, 30 - 25.5 - 5 = -0.5 to a spigot of 51.
  const fromDriven = (end: number) => [
    { z: end, r: 0 },
    { z: end + 3, r: 5 },
    { z: 20, r: 5 },
  ];
  const fromDriving = (end: number) => [
    { z: 0, r: 5 },
    { z: end - 3, r: 5 },
    { z: end, r: 0 },
  ];
  it.each([
    ['a blind hole that ends 8 above the driving face', {}, fromDriven(8), 'the driving face'],
    ['one that ends 16 above it', {}, fromDriven(16), 'the rim'],
    ['one that ends 13 deep: 7 to the driven face', {}, fromDriving(13), 'the driven face'],
    ['one that ends 4 deep: 16', {}, fromDriving(4), 'the rim'],
    [
      'a blind hole does not cut the spigot on the face that it does not reach',
      spigot(51),
      fromDriven(8),
      'the driving face',
    ],
    [
      'nor does one that opens into a recess, below the face',
      spigot(51),
      [
        { z: 1, r: 5 },
        { z: 20, r: 5 },
      ],
      'the rim',
    ],
    [
      'a seat on the face that it does not reach',
      { wheelSeat: { face: 'driven', diameter: 61 } },
      fromDriving(13),
      'the driven face',
    ],
    [
      'a seat that it stops 1 below',
      { wheelSeat: { face: 'driven', diameter: 61 } },
      [
        { z: 0, r: 5 },
        { z: 19, r: 5 },
      ],
      'the rim',
    ],
    // A pocket of 18 on the driven face: 50 - 30 - 9 = 11 to the rim; on the driving face the hole is 10 wide: 30 - 14 - 5 = 11 would be nearer with 9.
    [
      'a spigot counts with the hole on its own face',
      spigot(27),
      [
        { z: 0, r: 5 },
        { z: 10, r: 9 },
        { z: 20, r: 9 },
      ],
      'the rim',
    ],
  ] as const)('%s', (_, spec, profile, name) => expect(nearest(30, spec, profile).name).toBe(name));

  it('a step counts with the widest of the hole: a pocket of 18 leaves 48 - 30 - 9 = 9', () => {
    const wide = [
      { z: 0, r: 5 },
      { z: 20, r: 9 },
    ];
    expect(nearest(30, spigot(96, 'rim'), wide).name).toBe('the step of the driving register');
  });

  it('blind holes name the face that they come near to, with its side', () => {
    expect(nearest(30, {}, fromDriven(8))).toMatchObject({ kind: 'far face', side: 'driving' });
    expect(nearest(30, {}, fromDriving(13))).toMatchObject({ kind: 'far face', side: 'driven' });
  });

  it('what is no hole of the part has only an outside', () =>
    expect(thinnestTowards({ adapter: { drillings: [] } } as unknown as Joint, 'x')).toEqual({
      kind: 'rim',
      side: null,
      name: 'the outside',
    }));
});

/** The sound joint, and its driving screws with some things changed: M8 on 84, heads in pockets of 15 x 8.6 in the driven face. */
const { joint } = judge({ wheel: undefined, sensor: undefined });
const group = (patch: Patch, side = 'driving', of = joint): Joint =>
  bent(of, {
    screws: of.screws
      .filter((screws) => screws.side === side)
      .map((screws) => bent(screws as unknown as Joint, patch) as unknown as ScrewGroup),
  });
type Passing = Parameters<typeof webUnderHead>[2];
const pocket = (depth: number, face: 'driving' | 'driven' = 'driven') =>
  ({ kind: 'passing', diameter: 9, headFace: face, head: { kind: 'counterbore', diameter: 15, depth } }) as Passing;

describe('metal under heads', () => {
  it('pockets: as deep as they are bored, as their cone goes in, or none', () => {
    expect(pocketDepth(pocket(8.6))).toBe(8.6);
    const cone = (angle: number) =>
      pocketDepth({ ...pocket(0), head: { kind: 'countersink', diameter: 19, angle } } as Passing);
    // (19 - 9) / 2 = 5 over the tangent of half the angle: 1 at 90, sqrt(3) at 120 degrees.
    expect(cone(90)).toBeCloseTo(5, 9);
    expect(cone(120)).toBeCloseTo(5 / Math.sqrt(3), 9);
    expect(pocketDepth({ ...pocket(0), head: { kind: 'surface' } } as Passing)).toBe(0);
  });

  const screws = joint.screws.find(({ side }) => side === 'driving') as ScrewGroup;
  const web = (
    register: Patch | null,
    hole = pocket(8),
    of: ScrewGroup = screws,
    face: 'driving' | 'driven' = 'driving',
  ) =>
    webUnderHead(
      {
        adapterSpec: { thickness: 20, registers: { driving: null, driven: null, [face]: register } },
      } as unknown as Joint,
      of,
      hole,
    );
  // Screws on 84: the pocket reaches in to 42 - 7.5 = 34.5.
  const recess = (diameter: number, chamfer = 0.5) => ({ gender: 'female', at: 'inner', diameter, chamfer, depth: 4 });

  it('a recess takes its depth away where it reaches under the pocket, mouth counted', () => {
    expect(web(null)).toBe(12);
    expect(web(recess(68.1))).toBe(8);
    expect(web(recess(68.1, 0))).toBe(12);
    // Met exactly, nothing of it lies under the pocket.
    expect(web(recess(68, 0.5))).toBe(12);
    expect(web({ ...recess(68.1), gender: 'male' })).toBe(12);
    expect(web({ ...recess(68.1), at: 'rim' })).toBe(12);
  });

  it('it is the recess of the face that the screws go out of', () => {
    expect(web(recess(68.1), pocket(8), screws, 'driven')).toBe(12);
    expect(web(recess(68.1), pocket(8, 'driving'), screws, 'driven')).toBe(8);
    expect(web(recess(68.1), pocket(8, 'driving'))).toBe(12);
  });

  it('of uneven circles the screw nearest to the axis counts', () => {
    const uneven = { ...screws, positions: [...screws.positions, { x: 40, y: 0 }] };
    expect(web(recess(66))).toBe(12);
    // 40 - 7.5 = 32.5, inside of 33.5.
    expect(web(recess(66), pocket(8), uneven)).toBe(8);
  });

  it('heads on a face reach as far as they are wide', () => {
    const flat = { ...pocket(0), head: { kind: 'surface' } } as Passing;
    const head = (diameter: number) => ({ ...screws, head: { ...screws.head, diameter }, washer: null });
    expect(web(recess(69), flat, head(14))).toBe(20);
    expect(web(recess(69), flat, head(14.1))).toBe(20 - 4);
  });
});

describe('heads in pockets of the driving face', () => {
  const { thickness } = joint.adapterSpec;
  it('are counted down from that face', () => {
    // Drawn from the other side: heads of 8 that press 8.6 below the driving face, pointing at the driven one.
    const spec = joint.adapterSpec.groups.map((one) =>
      one.side === 'driving' ? { ...one, shape: pocket(8.6, 'driving') } : one,
    );
    const turned = bent(group({ headZ: 8.6, points: 1, head: { height: 8 } }), { adapterSpec: { groups: spec } });
    const finding = findingOf({ findings: heads.run(turned) }, 'head-below-face');
    expectSaid(finding, { verdict: 'pass', value: 0.6, limit: 0 });
    expect(finding.title).toContain('driving face');
  });

  it('from the driven face the other way', () => {
    const finding = findingOf(
      { findings: heads.run(group({ headZ: thickness - 8.6, head: { height: 8 } })) },
      'head-below-face',
    );
    expectSaid(finding, { verdict: 'pass', value: 0.6, limit: 0 });
  });

  it('a washer no wider than its head is not named', () => {
    const said = (outside: number) =>
      findingOf(
        { findings: heads.run(group({ head: { diameter: 13 }, washer: { outside, thickness: 1.6 } })) },
        'head-in-pocket',
      );
    expect(said(13).title).toContain('heads');
    expectSaid(said(13), { verdict: 'pass', value: 2, limit: 0.1 });
    expect(said(14).title).toContain('washers');
    expectSaid(said(14), { verdict: 'pass', value: 1, limit: 0.1 });
  });
});
