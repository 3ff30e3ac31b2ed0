/** Adapters of every kind at random: valid profiles, rightly tagged, closed meshes, mirror images of one another; odd ones do not throw. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnedMass } from '../../src/geometry/turned-mass.ts';
import type { Profile } from '../../src/model/part.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec, HoleGroupSpec } from '../../src/parts/adapter-spec.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshMass } from '../../src/solids/mesh-mass.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { anyAdapter } from '../geometry/random-adapters.ts';
import { drivenScrews, drivingScrews, onCircle, plainSpec, recess, spigot } from './specs.ts';

const ascends = (profile: Profile) =>
  profile.every((p, i) => Number.isFinite(p.z) && p.r >= 0 && (i === 0 || p.z >= (profile[i - 1] as { z: number }).z));

/** Tag of the stretch that begins at a corner. */
const tagAt = (profile: Profile, z: number, r: number) =>
  profile.find((p) => Math.abs(p.z - z) < 1e-9 && Math.abs(p.r - r) < 1e-9)?.of;

const seat = (face: 'driving' | 'driven', height = 3) =>
  ({ face, diameter: 120, height, limits: { lower: 120, upper: 120, zone: 'h7' } }) as const;

describe('any adapter', () => {
  it('has profiles that a lathe can follow, a positive volume, and comes out the same again', () => {
    fc.assert(
      fc.property(anyAdapter, (spec) => {
        const part = buildAdapter(spec);
        for (const profile of [part.outer, ...part.drillings.map((d) => d.profile)])
          expect(ascends(profile)).toBe(true);
        expect(turnedMass(part).volume).toBeGreaterThan(0);
        expect(buildAdapter(structuredClone(spec))).toEqual(part);
        const known = part.features.map((f) => f.id);
        for (const { of } of part.outer) expect(known).toContain(of);
      }),
      { numRuns: 400, seed: 1 },
    );
  });

  it('gives a closed mesh', async () => {
    await fc.assert(
      fc.asyncProperty(anyAdapter, async (spec) => {
        const mesh = await meshTurned(buildAdapter(spec), { chordError: 0.05 });
        expect(checkMesh(mesh)).toMatchObject({ badEdges: 0 });
        expect(meshMass(mesh, 1).volume).toBeGreaterThan(0);
        expect((await judge(mesh)).status).toBe('NoError');
      }),
      { numRuns: 40, seed: 2, endOnFailure: true },
    );
  });

  it('with driving and driven exchanged is its mirror image', () => {
    const over = { driving: 'driven', driven: 'driving', wheel: 'wheel' } as const;
    fc.assert(
      fc.property(anyAdapter, (given) => {
        const spec = { ...given, clocking: 0 };
        const mirrored: AdapterSpec = {
          ...spec,
          registers: { driving: spec.registers.driven, driven: spec.registers.driving },
          wheelSeat: spec.wheelSeat && { ...spec.wheelSeat, face: over[spec.wheelSeat.face] },
          groups: spec.groups.map(({ shape, side, ...group }) => ({
            ...group,
            side: over[side],
            shape:
              shape.kind === 'passing'
                ? { ...shape, headFace: over[shape.headFace] }
                : { ...shape, face: over[shape.face] },
          })),
        };
        const [part, image] = [buildAdapter(spec), buildAdapter(mirrored)];
        const turned = (profile: Profile) => [...profile].reverse().map(({ z, r }) => [spec.thickness - z, r]);
        const plain = (profile: Profile) => profile.map(({ z, r }) => [z, r]);
        const close = (a: number[][], b: number[][]) => {
          expect(b).toHaveLength(a.length);
          for (const [i, v] of a.flat().entries()) expect(b.flat()[i]).toBeCloseTo(v, 9);
        };
        close(turned(part.outer), plain(image.outer));
        expect(image.drillings).toHaveLength(part.drillings.length);
        for (const drilling of part.drillings) {
          const twin = image.drillings.find((d) => d.id === exchanged(drilling.id));
          close(turned(drilling.profile), plain(twin?.profile ?? []));
        }
        const [mass, other] = [turnedMass(part), turnedMass(image)];
        expect(other.volume).toBeCloseTo(mass.volume, 4);
        expect(other.centre[2]).toBeCloseTo(spec.thickness - mass.centre[2], 6);
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  const exchanged = (id: string) =>
    id === 'driving-register' ? 'driven-register' : id === 'driven-register' ? 'driving-register' : id;
});

describe('odd adapters are built all the same', () => {
  const thin = (more: Partial<AdapterSpec>): AdapterSpec => ({ ...plainSpec, thickness: 5, groups: [], ...more });
  const flatHeads: HoleGroupSpec = {
    ...drivingScrews,
    shape: { kind: 'passing', diameter: 9, headFace: 'driven', head: { kind: 'countersink', diameter: 24, angle: 90 } },
  };
  const cases: [string, AdapterSpec][] = [
    ['recesses that meet', thin({ registers: { driving: recess(62, 4), driven: recess(50, 3) } })],
    [
      'recesses that meet, without a bore',
      thin({ bore: null, registers: { driving: recess(62, 4), driven: recess(50, 3) } }),
    ],
    ['a recess deeper than the part', thin({ registers: { driving: recess(62, 9), driven: null } })],
    ['a bore as wide as a recess', thin({ bore: 62, registers: { driving: recess(62, 2), driven: null } })],
    ['a bore wider than a spigot', thin({ bore: 62, registers: { driving: spigot(56, 2), driven: null } })],
    ['chamfers that meet', thin({ chamfer: 4, registers: { driving: null, driven: null } })],
    ['a seat as high as the part', thin({ wheelSeat: seat('driven', 5) })],
    ['a countersink deeper than the part', thin({ groups: [flatHeads] })],
    ['a counterbore deeper than the part', thin({ groups: [drivingScrews] })],
    ['a thread deeper than the part', thin({ groups: [drivenScrews] })],
    [
      'an undercut wider than its spigot is high',
      thin({ registers: { driving: null, driven: { ...spigot(56, 0.5), undercut: { width: 0.8, depth: 0.3 } } } }),
    ],
    [
      'a mouth chamfer deeper than its recess',
      thin({ registers: { driving: { ...recess(62, 0.4), chamfer: 1 }, driven: null } }),
    ],
    ['holes that break out of the rim', thin({ groups: [{ ...drivingScrews, positions: onCircle(4, 126) }] })],
  ];
  it.each(cases)('%s', async (_, spec) => {
    const part = buildAdapter(spec);
    for (const profile of [part.outer, ...part.drillings.map((d) => d.profile)]) expect(ascends(profile)).toBe(true);
    const mesh = await meshTurned(part, { chordError: 0.05 });
    expect(checkMesh(mesh).badEdges).toBe(0);
    expect(meshMass(mesh, 1).volume).toBeGreaterThan(0);
  });

  it('a countersink deeper than the part ends on the far face, where its cone has come to (90 degrees: 12 - 5 = 7)', () => {
    const [hole] = buildAdapter(
      thin({ groups: [flatHeads], registers: { driving: null, driven: null } }),
    ).drillings.filter((d) => d.feature === flatHeads.id);
    expect(hole?.profile.map(({ z, r }) => [z, Math.round(r * 1e9) / 1e9])).toEqual([
      [0, 7],
      [5, 12],
    ]);
  });
});

describe('stretches know their feature', () => {
  it('spigot: groove, wall and lead chamfer; the face beside it is the body', () => {
    const { outer } = buildAdapter({ ...plainSpec, registers: { driving: spigot(56, 2.5), driven: spigot(60, 2) } });
    for (const [z, r] of [
      [20, 29.7],
      [20.8, 29.7],
      [20.8, 30],
      [21.5, 30],
    ] as const)
      expect(tagAt(outer, z, r)).toBe('driven-register');
    // A corner tags the stretch that follows it: from the end of the chamfer down to the foot.
    for (const [z, r] of [
      [-2.5, 27.5],
      [-2, 28],
      [-0.8, 28],
      [-0.8, 27.7],
    ] as const)
      expect(tagAt(outer, z, r)).toBe('driving-register');
    for (const [z, r] of [
      [0, 27.7],
      [0, 64],
      [1, 65],
      [19, 65],
      [20, 64],
    ] as const)
      expect(tagAt(outer, z, r)).toBe('body');
  });

  it('wheel seat: its step and its wall, on either face', () => {
    const high = buildAdapter({ ...plainSpec, groups: [], wheelSeat: seat('driven') }).outer;
    expect([tagAt(high, 17, 64), tagAt(high, 17, 60), tagAt(high, 20, 59)]).toEqual([
      'wheel-seat',
      'wheel-seat',
      'body',
    ]);
    const low = buildAdapter({ ...plainSpec, groups: [], wheelSeat: seat('driving') }).outer;
    expect([tagAt(low, 0, 59), tagAt(low, 1, 60), tagAt(low, 3, 60), tagAt(low, 3, 64)]).toEqual([
      'wheel-seat',
      'wheel-seat',
      'wheel-seat',
      'body',
    ]);
  });

  it('recesses and the bore between them', () => {
    const [bore] = buildAdapter({
      ...plainSpec,
      registers: { driving: recess(62, 4), driven: recess(58, 3) },
    }).drillings;
    const tag = (z: number, r: number) => tagAt(bore?.profile ?? [], z, r);
    expect([tag(0.5, 31), tag(4, 31), tag(4, 15), tag(17, 15), tag(17, 29)]).toEqual([
      'driving-register',
      'driving-register',
      'bore',
      'driven-register',
      'driven-register',
    ]);
  });
});

describe('through openings are counted by the genus of the mesh', () => {
  const genus = async (spec: AdapterSpec) =>
    (await judge(await meshTurned(buildAdapter(spec), { chordError: 0.05 }))).genus;
  const through: HoleGroupSpec =
    drivenScrews.shape.kind === 'tapped'
      ? { ...drivenScrews, shape: { ...drivenScrews.shape, drillDepth: null } }
      : drivenScrews;
  const raised = { ...recess(122, 2), at: 'rim' } as const;
  const stepped = { ...spigot(122, 2), at: 'rim', undercut: null } as const;

  it.each<[string, AdapterSpec, number]>([
    ['bore, six through, four blind', plainSpec, 7],
    ['bore, six and four through', { ...plainSpec, groups: [drivingScrews, through] }, 11],
    ['no bore', { ...plainSpec, bore: null, groups: [drivingScrews, through] }, 10],
    [
      'a raised ring below',
      { ...plainSpec, groups: [drivingScrews, through], registers: { driving: raised, driven: null } },
      11,
    ],
    [
      'a raised ring on each side, no bore',
      { ...plainSpec, bore: null, groups: [through], registers: { driving: raised, driven: raised } },
      4,
    ],
    [
      'a turned-down rim on each side',
      { ...plainSpec, groups: [through], registers: { driving: stepped, driven: stepped } },
      5,
    ],
    [
      'holes on the step of a turned-down rim',
      {
        ...plainSpec,
        groups: [{ ...through, positions: onCircle(4, 114) }],
        registers: { driving: { ...stepped, diameter: 100 }, driven: null },
      },
      5,
    ],
    [
      'screws that come out of a wide spigot',
      { ...plainSpec, groups: [drivingScrews], registers: { driving: null, driven: spigot(110, 3) } },
      7,
    ],
    [
      'wheel screws through, on the seat of either face',
      {
        ...plainSpec,
        outside: 150,
        wheelSeat: seat('driving'),
        groups: [
          {
            ...through,
            side: 'wheel',
            positions: onCircle(3, 134),
            shape: { ...through.shape, face: 'driving' } as HoleGroupSpec['shape'],
          },
        ],
      },
      4,
    ],
  ])('%s', async (_, spec, openings) => {
    expect(await genus(spec)).toBe(openings);
  });
});
