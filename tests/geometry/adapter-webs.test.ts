import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allWebs } from '../../src/geometry/web-pairs.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec } from '../../src/parts/adapter-spec.ts';
import { plainSpec, recess, spigot } from '../parts/specs.ts';
import { nearest, patchesOf } from './brute-force.ts';
import { anyAdapter, ring } from './random-adapters.ts';

const gaps = (spec: AdapterSpec) => allWebs(buildAdapter(spec));
const gap = (spec: AdapterSpec, a: string, b: string) => gaps(spec).find((web) => web.a === a && web.b === b)?.gap;

describe('webs of adapters', () => {
  it('between holes are the least distance of points strewn over both walls in space', () => {
    let pairs = 0;
    fc.assert(
      fc.property(anyAdapter, (spec) => {
        const part = buildAdapter(spec);
        const holes = part.drillings.filter((d) => d.x !== 0 || d.y !== 0);
        // One pair of each kind is enough: first of one group against all of the other.
        const [first] = holes;
        for (const web of allWebs(part)) {
          const other = holes.find((d) => d.id === web.b);
          if (!first || web.a !== first.id || !other || other.feature === first.feature || web.gap <= 0) continue;
          pairs++;
          const found = nearest(patchesOf(first.profile, first.x, first.y), patchesOf(other.profile, other.x, other.y));
          expect(found).toBeGreaterThanOrEqual(web.gap - 1e-9);
          expect(found - web.gap).toBeLessThan(0.02);
        }
      }),
      { numRuns: 12, seed: 5, endOnFailure: true },
    );
    expect(pairs).toBeGreaterThan(25);
  });

  it('are finite and the same for the same part turned over', () => {
    const over = { driving: 'driven', driven: 'driving', wheel: 'wheel' } as const;
    fc.assert(
      fc.property(anyAdapter, (spec) => {
        const turned: AdapterSpec = {
          ...spec,
          clocking: 0,
          registers: { driving: spec.registers.driven, driven: spec.registers.driving },
          wheelSeat: spec.wheelSeat && { ...spec.wheelSeat, face: over[spec.wheelSeat.face] },
          groups: spec.groups.map(({ shape, ...group }) => ({
            ...group,
            shape:
              shape.kind === 'passing'
                ? { ...shape, headFace: over[shape.headFace] }
                : { ...shape, face: over[shape.face] },
          })),
        };
        const [up, down] = [gaps({ ...spec, clocking: 0 }), gaps(turned)].map((all) =>
          all.map(({ gap: g }) => g).sort((a, b) => a - b),
        );
        expect(up?.every(Number.isFinite)).toBe(true);
        expect(down).toHaveLength(up?.length ?? 0);
        for (const [i, g] of (up ?? []).entries()) expect(down?.[i]).toBeCloseTo(g, 8);
      }),
      { numRuns: 150, seed: 6 },
    );
  });
});

describe('webs that only an adapter shows (plane geometry by hand)', () => {
  it('the ring between two recesses that the bore joins', () => {
    const spec = { ...plainSpec, groups: [], registers: { driving: recess(62, 4), driven: recess(58, 3) } };
    expect(gap(spec, 'bore', 'bore')).toBeCloseTo(20 - 4 - 3, 12);
  });

  it('recesses deeper than the part, with and without a bore: as deep as they meet', () => {
    for (const bore of [30, null]) {
      const spec = {
        ...plainSpec,
        bore,
        groups: [],
        thickness: 6,
        registers: { driving: recess(62, 4), driven: recess(58, 3) },
      };
      expect(gap(spec, 'driving-register', 'driven-register')).toBeCloseTo(-1, 12);
    }
  });

  it('screws on a smaller circle than the spigot they come out of are drilled through it, and the bore is their neighbour', () => {
    const [screws] = plainSpec.groups;
    if (!screws) throw new Error('the plain spec has screws');
    const spec = {
      ...plainSpec,
      bore: 20,
      registers: { driving: null, driven: spigot(110, 3) },
      groups: [{ ...screws, positions: ring(6, 35) }],
    };
    const [hole] = buildAdapter(spec).drillings.filter((d) => d.feature === 'driving-screws');
    expect(hole?.profile.at(-1)).toMatchObject({ z: 23, r: 7.5 });
    expect(gap(spec, 'bore', 'driving-screws-1')).toBeCloseTo(35 - 7.5 - 10.5, 12);
    // The rim of the spigot's chamfer is 12 off; the metal under the heads is thinner.
    expect(gap(spec, 'driving-screws-1', 'outside')).toBeCloseTo(Math.min(54.5 - 42.5, 20 - 8.6), 12);
  });

  it('screws whose pockets reach half under the spigot cut into it', () => {
    const [screws] = plainSpec.groups;
    if (!screws) throw new Error('the plain spec has screws');
    const spec = { ...plainSpec, registers: { driving: null, driven: spigot(80, 3) }, groups: [screws] };
    // Pocket from 42 - 7.5 = 34.5 outwards, spigot to 40.
    expect(gap(spec, 'driving-screws-1', 'outside')).toBeCloseTo(34.5 - 40, 12);
  });

  it('holes inside a raised rim register have no web to the floor that they open on', () => {
    const raised = { ...recess(118, 2), at: 'rim' } as const;
    const spec = { ...plainSpec, registers: { driving: raised, driven: null } };
    // Beside it the bore, 19 off; above the floor the counterbore, 20 - 8.6.
    expect(gap(spec, 'bore', 'driving-screws-1')).toBeCloseTo(Math.min(42 - 7.5 - 15.5, 20 - 8.6), 12);
    expect(gap(spec, 'driving-screws-1', 'outside')).toBeCloseTo(64 - 49.5, 12);
  });

  it('a through thread beside a turned-down rim ends on its step', () => {
    const stepped = { ...spigot(96, 4), at: 'rim', undercut: null } as const;
    const screws = plainSpec.groups[1];
    if (screws?.shape.kind !== 'tapped') throw new Error('the plain spec has tapped holes');
    const through = { ...screws, shape: { ...screws.shape, drillDepth: null } };
    const spec = { ...plainSpec, groups: [through], registers: { driving: stepped, driven: null } };
    const hole = buildAdapter(spec).drillings.find((d) => d.id === 'driven-screws-1');
    expect(hole?.profile[0]).toMatchObject({ z: 4, r: 4.25 });
    // 54 from the axis, mouth of 10 on the chamfered driven face: 64 - 59.
    expect(gap(spec, 'driven-screws-1', 'outside')).toBeCloseTo(5, 12);
  });
});
