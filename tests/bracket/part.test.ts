/** The blank, its fold and its mesh: exact shapes, random brackets, volumes in closed form. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import '../seed.ts';
import { bendAllowance, flatLength } from '../../src/formulas/bending.ts';
import { contourFaults, faceMoments, leastGap, pointInContour } from '../../src/geometry/contour.ts';
import { bendZones, foldOf } from '../../src/geometry/fold.ts';
import type { SheetPart } from '../../src/model/sheet.ts';
import { bendTable } from '../../src/parts/bend-table.ts';
import { type BracketSpec, blankLength, bracketFaults, buildBracket, sensorAt } from '../../src/parts/bracket.ts';
import { gapCardProfile, gapCardWords, gapSteps } from '../../src/parts/gap-card.ts';
import { roundedPolygon } from '../../src/parts/rounded-corners.ts';
import { meshFolded } from '../../src/solids/folded-mesh.ts';
import { cardBody, meshGapCard } from '../../src/solids/gap-card-mesh.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { angleSpec, anyBracket } from './specs.ts';

const distance = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((v, i) => v - (b[i] ?? 0)));

describe('the blank', () => {
  it('is one simple line with every hole inside it', () => {
    fc.assert(
      fc.property(anyBracket, (spec) => {
        const part = buildBracket(spec);
        expect(contourFaults(part.outside)).toEqual([]);
        expect(faceMoments(part).area).toBeGreaterThan(0);
        part.holes.forEach((hole, i) => {
          expect(contourFaults(hole)).toEqual([]);
          const at = hole.kind === 'circle' ? hole : (hole.vertices[0] as { x: number; y: number });
          expect(pointInContour(part.outside, at.x, at.y)).toBe(true);
          for (const other of [part.outside, ...part.holes.slice(0, i)])
            expect(leastGap(hole, other).gap).toBeGreaterThan(0);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('has the area of its pieces, by hand, with sharp corners', () => {
    const part = buildBracket({ ...angleSpec, corner: 0, sensor: { bore: 18.2, ear: null } });
    // Foot to its shoulders 36.8 x 78.6, arm to 86.71 x 62.6, two relief cuts: 4 to 5.5 mm from the shoulder with a round end.
    const length = 38.3 + 40.1 + (Math.PI / 2) * (4 + 0.43 * 3);
    const cut = (36.8 - 31.3 - 1.5) * 3 + (Math.PI * 1.5 ** 2) / 2;
    const slots = 2 * (5 * 6.6 + Math.PI * 3.3 ** 2);
    const area = 36.8 * 78.6 + (length - 36.8) * 62.6 - 2 * cut - slots - Math.PI * 9.1 ** 2;
    expect(faceMoments(part).area).toBeCloseTo(area, 8);
    expect(blankLength(angleSpec)).toBeCloseTo(length, 12);
  });

  it('may leave less metal between two cuts than the chord error: folded, they are drawn finer', () => {
    const part = buildBracket({ ...angleSpec, sensor: { bore: 18.2, ear: null } });
    const beside = { kind: 'circle' as const, feature: 'beside', x: sensorAt(angleSpec), y: 9.1 + 3 + 0.03, r: 3 };
    const mesh = meshFolded({ ...part, holes: [...part.holes, beside] }, { chordError: 0.05 });
    expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, bodies: 1, genus: part.holes.length + 1 });
  });

  it('allows for the width of the cut on every side alike', () => {
    const [drawn, cut] = [buildBracket(angleSpec), buildBracket({ ...angleSpec, kerf: 0.3 })];
    expect(leastGap(drawn.outside, cut.outside).gap).toBeCloseTo(0.15, 6);
    drawn.holes.forEach((hole, i) => {
      expect(leastGap(hole, cut.holes[i] as (typeof cut.holes)[number]).gap).toBeCloseTo(0.15, 6);
    });
    expect(cut.bends).toEqual(drawn.bends);
  });

  it('says why it cannot be drawn', () => {
    const faults = (change: Partial<BracketSpec>) => bracketFaults({ ...angleSpec, ...change }).join(' ');
    expect(faults({})).toBe('');
    expect(faults({ straights: [38, -1] })).toMatch(/Straight 2 has no length/);
    expect(faults({ straights: [16, 40.1] })).toMatch(/slots run out/);
    expect(faults({ straights: [24, 40.1] })).toMatch(/relief cuts run into the slots/);
    expect(faults({ sensor: { bore: 40, ear: null } })).toMatch(/bore runs out/);
    expect(faults({ foot: { ...angleSpec.foot, spacing: 75 } })).toMatch(/bolt holes run out/);
    expect(faults({ bends: [], straights: [80] })).toMatch(/one width/);
    expect(() => buildBracket({ ...angleSpec, straights: [16, 40] })).toThrow(/slots/);
  });

  it('rounds corners as far as there is room', () => {
    const square = [
      { x: 0, y: 0, r: 9 },
      { x: 10, y: 0, r: 9 },
      { x: 10, y: 10, r: 9 },
      { x: 0, y: 10, r: 9 },
    ];
    // Each takes half an edge: a circle of radius 5, quarter turns of bulge tan(22.5 degrees).
    const vertices = roundedPolygon(square);
    expect(vertices).toHaveLength(4);
    for (const { bulge } of vertices) expect(bulge).toBeCloseTo(Math.tan(Math.PI / 8), 12);
  });
});

describe('the bend table', () => {
  it('gives legs to the outside from which the blank comes out again', () => {
    fc.assert(
      fc.property(anyBracket, (spec) => {
        const table = bendTable(spec);
        expect(flatLength(table.legs, spec.bends, spec.thickness)).toBeCloseTo(table.blank.length, 8);
        expect(table.rows.map(({ at }) => at)).toEqual((buildBracket(spec).bends ?? []).map(({ from }) => from.x));
      }),
    );
  });
});

describe('the fold', () => {
  it('keeps every distance within a flat, and the length of the neutral fibre', () => {
    fc.assert(
      fc.property(anyBracket, fc.double({ min: 0, max: 1, noNaN: true }), (spec, share) => {
        const part = buildBracket(spec);
        const fold = foldOf(part);
        const length = blankLength(spec);
        const zones = bendZones(part);
        const bounds = [0, ...zones.flatMap(({ from, to }) => [from, to]), length];
        for (let i = 0; i < bounds.length; i += 2) {
          const [from, to] = [bounds[i] as number, bounds[i + 1] as number];
          const x = from + share * (to - from);
          const [a, b] = [fold(from + 1e-9, 0, 0), fold(x, 7, spec.thickness)];
          expect(distance(a, b)).toBeCloseTo(Math.hypot(x - from, 7, spec.thickness), 6);
        }
        // Chords of the neutral fibre round each bend: the sum comes to the blank's own length.
        zones.forEach((zone, i) => {
          const bend = spec.bends[i] as BracketSpec['bends'][number];
          const height = bend.direction === 'up' ? spec.thickness * (1 - bend.k) : spec.thickness * bend.k;
          const at = (k: number) => fold(zone.from + ((zone.to - zone.from) * k) / 400, 0, height);
          let sum = 0;
          for (let k = 0; k < 400; k++) sum += distance(at(k), at(k + 1));
          expect(sum / bendAllowance(bend, spec.thickness)).toBeCloseTo(1, 4);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('turns an L of 90 degrees where it should, by hand', () => {
    const fold = foldOf(buildBracket(angleSpec));
    // Up: the end of the arm stands 40.1 mm over the bend, the face z = t towards the foot. Axis at x 38.3, z 7; r 4.
    const end = fold(blankLength(angleSpec), 5, 3);
    [38.3 + 4, 5, 7 + 40.1].forEach((value, i) => {
      expect(end[i]).toBeCloseTo(value, 9);
    });
    const outside = fold(blankLength(angleSpec), 0, 0);
    [38.3 + 7, 0, 7 + 40.1].forEach((value, i) => {
      expect(outside[i]).toBeCloseTo(value, 9);
    });
    const down = foldOf(buildBracket({ ...angleSpec, bends: [{ angle: 90, direction: 'down', radius: 4, k: 0.43 }] }));
    // Down: axis at z = -4; the face z = 0 is the inner one.
    expect(down(blankLength(angleSpec), 0, 0)[0]).toBeCloseTo(38.3 + 4, 9);
    expect(down(blankLength(angleSpec), 0, 0)[2]).toBeCloseTo(-4 - 40.1, 9);
  });

  it('will not fold what it cannot', () => {
    const part = buildBracket(angleSpec);
    const bend = part.bends?.[0];
    if (!bend) throw new Error('bent');
    const slanted: SheetPart = { ...part, bends: [{ ...bend, to: { x: bend.to.x + 1, y: bend.to.y } }] };
    expect(() => foldOf(slanted)).toThrow(/along y/);
    expect(() => foldOf({ ...part, bends: [bend, { ...bend, id: 'again' }] })).toThrow(/overlap/);
    const holed: SheetPart = {
      ...part,
      holes: [{ kind: 'circle', feature: 'stray', x: bend.from.x, y: 0, r: 2 }],
    };
    expect(() => meshFolded(holed)).toThrow(/stray lies in a bend/);
  });
});

/**
 * Volume of the folded solid in closed form. Flats keep theirs; a bend of angle A has A t (r + t / 2) for each mm of width, where the
 * blank has A t (r + K t): the two agree for K = 0.5 only, because the blank's neutral fibre lies inside the middle.
 */
function foldedVolume(spec: BracketSpec): number {
  const bends = spec.bends.map(
    ({ angle, k }) => ((angle * Math.PI) / 180) * spec.thickness ** 2 * (0.5 - k) * spec.arm.width,
  );
  return faceMoments(buildBracket(spec)).area * spec.thickness + bends.reduce((a, b) => a + b, 0);
}

describe('the folded mesh', () => {
  it('is closed, one body, with an opening for every hole, and its volume in closed form', () => {
    fc.assert(
      fc.property(anyBracket, (spec) => {
        const part = buildBracket(spec);
        const mesh = meshFolded(part, { chordError: 0.005 });
        expect(checkMesh(mesh)).toMatchObject({
          badEdges: 0,
          flatTriangles: 0,
          bodies: 1,
          voids: 0,
          genus: part.holes.length,
        });
        const { volume } = meshMass(mesh, 1);
        // Chords on every arc: less than 0.005 mm off along a perimeter of some hundred mm.
        expect(Math.abs(volume / foldedVolume(spec) - 1)).toBeLessThan(0.003);
      }),
      { numRuns: 80 },
    );
  });

  it('has the blank’s own volume for K = 0.5', () => {
    const spec: BracketSpec = { ...angleSpec, bends: [{ angle: 90, direction: 'up', radius: 4, k: 0.5 }] };
    const flat = faceMoments(buildBracket(spec)).area * 3;
    expect(meshMass(meshFolded(buildBracket(spec), { chordError: 1e-4 }), 1).volume / flat).toBeCloseTo(1, 4);
  });

  it('passes the judge of meshes, and stands where the fold says', async () => {
    const mesh = meshFolded(buildBracket(angleSpec));
    expect(await judge(mesh)).toMatchObject({ status: 'NoError', bodies: 1, genus: 4 });
    // Outside leg of the arm: 40.1 + r + t over the foot's lower face; 38.3 + r + t along it.
    const box = meshBox(mesh);
    expect(box.max[2]).toBeCloseTo(47.1, 6);
    expect(box.max[0]).toBeCloseTo(45.3, 2);
    expect(sensorAt(angleSpec)).toBeCloseTo(blankLength(angleSpec) - 15.1, 12);
  });
});

describe('the gap card', () => {
  it('has a thin, a right and a thick step, and leaves out what cannot be printed', () => {
    expect(gapSteps(0.8, 0.3).map(({ thickness }) => Number(thickness.toFixed(6)))).toEqual([0.5, 0.8, 1.1]);
    expect(gapSteps(0.5, 0.3).map(({ use }) => use)).toEqual(['sets', 'stops']);
    expect(gapCardWords(gapSteps(0.8, 0.3))).toEqual(['0.50 GOES', '0.80 SETS', '1.10 STOPS']);
  });

  it('is a closed body of the volume of its stairs, with its words cut in', async () => {
    const { corners, grip } = gapCardProfile(gapSteps(0.8, 0.3));
    // Steps of 14 mm, a grip of 42 mm, 1.2 mm over the thickest step; 22 mm wide.
    const volume = 22 * (14 * (0.5 + 0.8 + 1.1) + 42 * 2.3);
    const body = cardBody({ corners, width: 22 });
    expect(checkMesh(body)).toMatchObject({ badEdges: 0, bodies: 1, genus: 0 });
    expect(meshMass(body, 1).volume).toBeCloseTo(volume, 6);
    const words = gapCardWords(gapSteps(0.8, 0.3));
    const card = await meshGapCard({ corners, width: 22, grip: { ...grip, length: 42 }, words });
    expect(checkMesh(card)).toMatchObject({ badEdges: 0, bodies: 1 });
    const cut = volume - meshMass(card, 1).volume;
    expect(cut).toBeGreaterThan(10);
    expect(cut).toBeLessThan(0.5 * 42 * 22);
    // The words stay on the grip: where the steps are, the card has its own height.
    const low: number[] = [];
    for (let i = 0; i < card.positions.length; i += 3)
      if ((card.positions[i] as number) < 41.9) low.push(card.positions[i + 2] as number);
    for (const z of low) expect([0, 0.5, 0.8, 1.1].some((step) => Math.abs(step - z) < 1e-5)).toBe(true);
  });
});
