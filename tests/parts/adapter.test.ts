/** The adapter generator: volumes by hand sums, openings counted, meshes closed, nothing random. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnedMass } from '../../src/geometry/turned-mass.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec } from '../../src/parts/adapter-spec.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshMass } from '../../src/solids/mesh-mass.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { drivenScrews, drivingScrews, onCircle, plainSpec, recess, spigot } from './specs.ts';

/** Volume of a cylinder and of a frustum, by the schoolbook. */
const cylinder = (d: number, h: number) => (Math.PI / 4) * d * d * h;
const frustum = (d1: number, d2: number, h: number) => ((Math.PI * h) / 12) * (d1 * d1 + d1 * d2 + d2 * d2);

/** A plain spec's parts, summed by hand. */
const rim = cylinder(130, 18) + 2 * frustum(128, 130, 1);
const foot = cylinder(55.4, 0.8);
const spigotVolume = foot + cylinder(56, 2.5 - 0.8 - 0.5) + frustum(56, 55, 0.5);
const recessVolume = cylinder(62, 3.5) + frustum(63, 62, 0.5);
/** Bore from the recess's floor to the spigot's end, its upper edge broken 0.5. */
const boreVolume = cylinder(30, 20 + 2.5 - 4 - 0.5) + frustum(30, 31, 0.5);
const counterboredHole = cylinder(15, 8.6) + cylinder(9, 20 - 8.6);
const point = frustum(8.5, 0, 4.25 / Math.tan((59 * Math.PI) / 180));
const tappedHole = frustum(10, 8.5, 0.75) + cylinder(8.5, 14 - 0.75) + point;

describe('the adapter by hand sums', () => {
  it('recess, spigot, bore, counterbores and blind threads', () => {
    const sum = rim + spigotVolume - recessVolume - boreVolume - 6 * counterboredHole - 4 * tappedHole;
    expect(turnedMass(buildAdapter(plainSpec)).volume).toBeCloseTo(sum, 6);
  });

  it('without a bore the recess is blind', () => {
    const sum = rim + spigotVolume - recessVolume - 6 * counterboredHole - 4 * tappedHole;
    expect(turnedMass(buildAdapter({ ...plainSpec, bore: null })).volume).toBeCloseTo(sum, 6);
  });

  it('a wheel seat turns the rim down', () => {
    const seat = { face: 'driven', diameter: 124, height: 3, limits: { lower: 124, upper: 124, zone: 'h7' } } as const;
    const body = cylinder(130, 20 - 3 - 2) + 2 * frustum(128, 130, 1) + cylinder(124, 2) + frustum(124, 122, 1);
    const sum = body + spigotVolume - recessVolume - boreVolume - 6 * counterboredHole - 4 * tappedHole;
    expect(turnedMass(buildAdapter({ ...plainSpec, wheelSeat: seat })).volume).toBeCloseTo(sum, 6);
  });

  it('flats take two circular segments', () => {
    const bare: AdapterSpec = { ...plainSpec, chamfer: 0, groups: [], flats: { across: 124, angle: 90 } };
    const half = Math.acos(62 / 65);
    const segment = 65 * 65 * (half - Math.sin(half) * Math.cos(half));
    const sum = cylinder(130, 20) - 2 * segment * 20 + spigotVolume - recessVolume - boreVolume;
    expect(turnedMass(buildAdapter(bare)).volume).toBeCloseTo(sum, 5);
  });

  it('a countersink is a frustum on its face', () => {
    const flat = {
      ...drivingScrews,
      shape: {
        kind: 'passing',
        diameter: 9,
        headFace: 'driven',
        head: { kind: 'countersink', diameter: 18.3, angle: 90 },
      },
    } as const;
    const hole = frustum(18.3, 9, 4.65) + cylinder(9, 20 - 4.65);
    const sum = rim + spigotVolume - recessVolume - boreVolume - 6 * hole;
    expect(turnedMass(buildAdapter({ ...plainSpec, groups: [flat] })).volume).toBeCloseTo(sum, 6);
  });

  it('a rim register: a male one is the rim turned down, a female one a raised ring', () => {
    const step = { ...spigot(120, 2), at: 'rim', undercut: null } as const;
    const ring = { ...recess(120, 2), at: 'rim' } as const;
    const bare: AdapterSpec = { ...plainSpec, groups: [], bore: null, chamfer: 0 };
    const stepped = buildAdapter({ ...bare, registers: { driving: null, driven: step } });
    expect(turnedMass(stepped).volume).toBeCloseTo(cylinder(130, 18) + cylinder(120, 2), 6);
    const ringed = buildAdapter({ ...bare, registers: { driving: null, driven: ring } });
    const hollow = cylinder(120, 1.5) + frustum(120, 121, 0.5);
    expect(turnedMass(ringed).volume).toBeCloseTo(cylinder(130, 22) - hollow, 6);
  });
});

describe('the adapter as a mesh', () => {
  it('has as many through openings as it has through holes', async () => {
    // Bore and six screw holes go through; the four threads are blind.
    const judged = await judge(await meshTurned(buildAdapter(plainSpec)));
    expect(judged).toMatchObject({ genus: 7, bodies: 1 });
  });

  const spec: fc.Arbitrary<AdapterSpec> = fc
    .record({
      thickness: fc.integer({ min: 17, max: 40 }),
      outside: fc.integer({ min: 128, max: 160 }),
      bore: fc.constantFrom(null, 20, 30),
      across: fc.constantFrom(null, 124),
      low: fc.constantFrom(null, recess(62, 4), spigot(50, 3)),
      high: fc.constantFrom(null, recess(60, 3), spigot(56, 2.5)),
      clocking: fc.constantFrom(45, 15, 30.5),
      through: fc.boolean(),
    })
    .map((s) => ({
      ...plainSpec,
      thickness: s.thickness,
      outside: s.outside,
      bore: s.bore,
      flats: s.across === null ? null : { across: s.across, angle: 90 },
      registers: { driving: s.low, driven: s.high },
      clocking: s.clocking,
      groups: [
        drivingScrews,
        s.through && drivenScrews.shape.kind === 'tapped'
          ? { ...drivenScrews, shape: { ...drivenScrews.shape, drillDepth: null, threadDepth: s.thickness } }
          : drivenScrews,
      ],
    }));

  it('is closed, one body, and weighs what the closed form says', async () => {
    await fc.assert(
      fc.asyncProperty(spec, async (one) => {
        const part = buildAdapter(one);
        const mesh = await meshTurned(part);
        expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, flatTriangles: 0, bodies: 1 });
        const exact = turnedMass(part).volume;
        // Holes outside their circle and rims inside theirs by 0.01 mm at most: the mesh is a little light, never heavy.
        const { volume } = meshMass(mesh, 1);
        expect(volume).toBeLessThanOrEqual(exact);
        expect(volume).toBeGreaterThan(exact * 0.998);
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  it('is the same every time', () => {
    expect(buildAdapter(plainSpec)).toEqual(buildAdapter(structuredClone(plainSpec)));
  });
});

describe('what the adapter says of itself', () => {
  it('names every feature that a stretch or a drilling belongs to', () => {
    const part = buildAdapter(plainSpec);
    const known = new Set(part.features.map((feature) => feature.id));
    for (const drilling of part.drillings) expect(known).toContain(drilling.feature);
    for (const { of } of [...part.outer, ...part.drillings.flatMap((d) => d.profile)]) {
      if (of !== undefined) expect(known).toContain(of);
    }
  });

  it('turns the driven pattern by the clocking, counter-clockwise seen from the driven side', () => {
    const first = buildAdapter(plainSpec).drillings.find((d) => d.id === 'driven-screws-1');
    expect(first).toMatchObject({ x: expect.closeTo(54 * Math.SQRT1_2, 9), y: expect.closeTo(54 * Math.SQRT1_2, 9) });
    const driving = buildAdapter(plainSpec).drillings.find((d) => d.id === 'driving-screws-1');
    expect(driving).toMatchObject(onCircle(6, 84)[0] ?? {});
  });
});
