import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { turnedMass } from '../../src/geometry/turned-mass.ts';
import type { TurnedPart } from '../../src/model/part.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { meshTurned, meshTurnedByBooleans, meshTurnedDirect } from '../../src/solids/turned-mesh.ts';
import { sidesFor } from '../../src/solids/turned-ring.ts';
import { adapter, drilling, profile, ringOf, turned } from './fixtures.ts';
import { anyPart } from './random-part.ts';

// Booleans are slow beside everything else here, and more so on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const closed = { badEdges: 0, flatTriangles: 0 };

function direct(part: TurnedPart, chordError?: number) {
  const mesh = meshTurnedDirect(part, chordError === undefined ? {} : { chordError });
  if (!mesh) throw new Error('the part is not laminar');
  return mesh;
}

/**
 * Most that facets within the chord error can take away: the error times the area of every turned wall, mm3.
 */
function chordBound(part: TurnedPart, chordError: number): number {
  const wall = (corners: readonly { readonly z: number; readonly r: number }[]): number =>
    corners.slice(1).reduce((sum, p, i) => {
      const q = corners[i] as { readonly z: number; readonly r: number };
      return sum + Math.PI * (p.r + q.r) * (p.z - q.z);
    }, 0);
  return chordError * [part.outer, ...part.drillings.map((d) => d.profile)].reduce((sum, p) => sum + wall(p), 0);
}

describe('an adapter', () => {
  const part = adapter();

  it('is one closed body with an opening for the bore and for each screw, by two counts', async () => {
    const mesh = direct(part);
    expect(checkMesh(mesh)).toMatchObject({ ...closed, bodies: 1, voids: 0, genus: 7 });
    expect(await judge(mesh)).toMatchObject({ status: 'NoError', bodies: 1, genus: 7 });
  });

  it('has the exact bounding box: rim, flats and spigot face', () => {
    expect(meshBox(direct(part))).toEqual({ min: [-60, -57, -3], max: [60, 57, 23] });
  });

  it.each([0.1, 0.01, 0.001])('agrees with the closed form within the chord error of %d mm', (chordError) => {
    const exact = turnedMass(part);
    const mesh = meshMass(direct(part, chordError), part.material.density);
    const bound = chordBound(part, chordError);
    expect(mesh.volume).toBeLessThan(exact.volume);
    expect(exact.volume - mesh.volume).toBeLessThan(bound);
    // What is missing lies on walls no further than 60 from the axis and 24 from the middle height.
    const missing = bound * part.material.density;
    expect(Math.abs(mesh.inertia.zz - exact.inertia.zz)).toBeLessThan(missing * 60 ** 2);
    expect(Math.abs(mesh.inertia.xx - exact.inertia.xx)).toBeLessThan(missing * (60 ** 2 + 24 ** 2));
    expect(Math.abs(mesh.inertia.yy - exact.inertia.yy)).toBeLessThan(missing * (60 ** 2 + 24 ** 2));
    expect(Math.abs(mesh.centre[2] - exact.centre[2]) * exact.mass).toBeLessThan(missing * 24);
    expect(mesh.mass * Math.hypot(mesh.centre[0], mesh.centre[1])).toBeLessThan(missing);
  });

  it('keeps every wall within the chord error, the outside not larger and the holes not smaller', () => {
    const { positions, triangles } = direct(part, 0.01);
    let [insideRim, outsideBore] = [Infinity, -Infinity];
    const radius = (i: number): number => Math.hypot(positions[3 * i] as number, positions[3 * i + 1] as number);
    const z = (i: number): number => positions[3 * i + 2] as number;
    for (let t = 0; t < triangles.length; t++) {
      const [a, b] = [triangles[t] as number, triangles[t % 3 === 2 ? t - 2 : t + 1] as number];
      if (z(a) !== z(b)) continue;
      const middle = Math.hypot(
        ((positions[3 * a] as number) + (positions[3 * b] as number)) / 2,
        ((positions[3 * a + 1] as number) + (positions[3 * b + 1] as number)) / 2,
      );
      if (z(a) === 22 && radius(a) > 59.999 && radius(b) > 59.999) {
        const onFlat =
          Math.abs(Math.abs(positions[3 * a + 1] as number) - 57) < 1e-9 &&
          Math.abs(positions[3 * a + 1] as number) === Math.abs(positions[3 * b + 1] as number);
        if (!onFlat) insideRim = Math.min(insideRim, middle);
      }
      if (z(a) === -3 && radius(a) < 21 && radius(b) < 21) {
        outsideBore = Math.max(outsideBore, radius(a));
        expect(middle).toBeGreaterThanOrEqual(20 - 1e-12);
      }
    }
    expect(insideRim).toBeGreaterThanOrEqual(60 - 0.01);
    expect(outsideBore).toBeLessThanOrEqual(20 + 0.01 + 1e-12);
    expect(outsideBore).toBeGreaterThan(20);
  });

  it('is the same to the last byte each time', () => {
    expect(direct(part)).toEqual(direct(part));
  });
});

describe('sides of a circle', () => {
  it.each([0.5, 4, 60, 500])('keep radius %d within 0.01 mm on either side, in multiples of four', (r) => {
    const [inside, outside] = [sidesFor(r, 0.01, true), sidesFor(r, 0.01, false)];
    expect([inside % 4, outside % 4]).toEqual([0, 0]);
    expect(r - r * Math.cos(Math.PI / inside)).toBeLessThanOrEqual(0.01);
    expect(r / Math.cos(Math.PI / outside) - r).toBeLessThanOrEqual(0.01);
  });

  it('need a positive chord error', () => {
    expect(() => meshTurnedDirect(adapter(), { chordError: 0 })).toThrow(/more than 0/);
    expect(() => meshTurnedDirect(adapter(), { chordError: Number.NaN })).toThrow(/more than 0/);
  });
});

describe('shapes at the edge', () => {
  const flats = (across: number, angle = 0) => ({ flats: { feature: 'flats', across, angle } });
  const bore = drilling('bore', 0, 0, [-9, 10], [40, 10]);
  const cases: [string, TurnedPart, { bodies?: number; voids?: number; genus: number }][] = [
    ['a plain disc', turned('p', profile([0, 30], [9, 30])), { genus: 0 }],
    ['a cone to a point', turned('p', profile([0, 30], [9, 0])), { genus: 0 }],
    [
      'a blind hole with a flat bottom, closed or left open',
      turned('p', profile([0, 30], [9, 30]), [
        drilling('a', 10, 0, [4, 0], [4, 5], [9, 5]),
        drilling('b', -10, 0, [4, 5], [9, 5]),
      ]),
      { genus: 0 },
    ],
    [
      'a cavity that nothing opens',
      turned('p', profile([0, 30], [9, 30]), [drilling('v', 5, 5, [3, 0], [4, 4], [5, 4], [6, 0])]),
      { voids: 1, genus: 0 },
    ],
    [
      'a spigot smaller than the flats',
      turned('p', profile([0, 20], [5, 20], [5, 30], [9, 30]), [bore], flats(50)),
      { genus: 1 },
    ],
    [
      'a step that the flats cut at both radii',
      turned('p', profile([0, 28], [5, 28], [5, 30], [9, 30]), [bore], flats(50, 33)),
      { genus: 1 },
    ],
    [
      'a step that just reaches the flats',
      turned('p', profile([0, 25], [5, 25], [5, 30], [9, 30]), [bore], flats(50, 33)),
      { genus: 1 },
    ],
    [
      'a step on flats with holes in its crescents',
      turned(
        'p',
        profile([0, 50], [5, 50], [5, 30], [9, 30]),
        [bore, ...ringOf('h', 2, 40, 90, [-1, 3], [20, 3])],
        flats(50),
      ),
      { genus: 3 },
    ],
    [
      'a chamfer that leaves the flats',
      turned('p', profile([0, 30], [5, 30], [9, 22]), [bore], flats(50, 90)),
      { genus: 1 },
    ],
    ['a cone of which the flats leave a blade', turned('p', profile([0, 30], [20, 5]), [], flats(4, 45)), { genus: 0 }],
    [
      'a hole that opens in a recess and in a shoulder',
      turned('p', profile([0, 30], [5, 30], [5, 15], [9, 15]), [
        drilling('recess', 0, 0, [0, 26], [2, 26]),
        drilling('h', 21, 0, [-5, 3], [40, 3]),
        bore,
      ]),
      { genus: 2 },
    ],
    [
      'two rings on one axis',
      turned('p', profile([0, 30], [9, 30]), [drilling('wide', 0, 0, [4, 40], [5, 40])]),
      { bodies: 2, genus: 0 },
    ],
    [
      'two points that meet',
      turned('p', profile([0, 30], [9, 30]), [drilling('glass', 0, 0, [0, 4], [4, 0], [9, 4])]),
      { genus: 0 },
    ],
  ];

  it.each(cases)('%s', async (_, part, expected) => {
    const mesh = direct(part, 0.02);
    expect(checkMesh(mesh)).toMatchObject({ ...closed, bodies: 1, voids: 0, ...expected });
    expect((await judge(mesh)).status).toBe('NoError');
    const exact = turnedMass(part).volume;
    const { volume } = meshMass(mesh, 1);
    expect(volume).toBeLessThanOrEqual(exact * (1 + 1e-12));
    expect(exact - volume).toBeLessThan(chordBound(part, 0.02) + 1e-9);
  });

  it('a part that is all hole is an empty mesh', () => {
    const part = turned('p', profile([0, 30], [9, 30]), [drilling('wide', 0, 0, [-1, 40], [10, 40])]);
    expect(direct(part).triangles).toHaveLength(0);
  });
});

describe('outlines that cross', () => {
  const lens = (r: number, d: number): number =>
    2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d);

  it('two holes that overlap: plate less both, plus the lens they share (textbook)', async () => {
    const part = turned('p', profile([0, 40], [10, 40]), [
      drilling('a', 15, 0, [0, 6], [10, 6]),
      drilling('b', 23, 0, [0, 6], [10, 6]),
    ]);
    expect(meshTurnedDirect(part)).toBeNull();
    const mesh = await meshTurned(part, { chordError: 0.001 });
    expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, bodies: 1, genus: 1 });
    expect((await judge(mesh)).status).toBe('NoError');
    const exact = 10 * (Math.PI * 1600 - 2 * Math.PI * 36 + lens(6, 8));
    const { volume } = meshMass(mesh, 1);
    expect(Math.abs(exact - volume)).toBeLessThan(chordBound(part, 0.001));
  });

  it('a half hole in the rim leaves a plate without openings', async () => {
    const part = turned('p', profile([0, 40], [10, 40]), [drilling('a', 40, 0, [0, 6], [10, 6])]);
    const mesh = await meshTurned(part);
    expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, bodies: 1, genus: 0 });
    expect(meshBox(mesh).min[0]).toBe(-40);
    // Lens of circles of radius 40 and 6 a distance 40 apart (textbook).
    const half = 36 / 80;
    const a = 36 * Math.acos(3 / 40) + 1600 * Math.acos(1 - half / 40) - 0.5 * Math.sqrt(6 * 74 * 6 * 86);
    expect(Math.abs(meshMass(mesh, 1).volume - 10 * (Math.PI * 1600 - a))).toBeLessThan(chordBound(part, 0.01));
  });

  it('a step that all but touches the flats is left to booleans too', async () => {
    const part = turned('p', profile([0, 30], [5, 30], [5, 24.9995], [9, 24.9995]), [], {
      flats: { feature: 'f', across: 50, angle: 0 },
    });
    expect(meshTurnedDirect(part)).toBeNull();
    expect(checkMesh(await meshTurned(part))).toMatchObject({ badEdges: 0, bodies: 1, genus: 0 });
  });

  it('a web thinner than the facets allow is left to booleans, not torn', async () => {
    const part = turned('p', profile([0, 40], [10, 40]), [
      drilling('a', 15, 0, [0, 6], [10, 6]),
      drilling('b', 27.004, 0, [0, 6], [10, 6]),
    ]);
    expect(meshTurnedDirect(part)).toBeNull();
    expect(checkMesh(await meshTurned(part))).toMatchObject({ badEdges: 0, bodies: 1 });
  });
});

describe('any part at all', () => {
  it('is closed, agrees with booleans of the same facets, and where laminar with the closed form', async () => {
    let laminar = 0;
    await fc.assert(
      fc.asyncProperty(anyPart, async (part) => {
        const options = { chordError: 0.2 };
        const cut = await meshTurnedByBooleans(part, options);
        const cutHealth = checkMesh(cut);
        expect(cutHealth.badEdges).toBe(0);
        const mesh = meshTurnedDirect(part, options);
        if (!mesh || mesh.triangles.length === 0) return;
        laminar++;
        const health = checkMesh(mesh);
        expect(health).toMatchObject({
          ...closed,
          genus: cutHealth.genus,
          bodies: cutHealth.bodies,
          voids: cutHealth.voids,
        });
        const exact = turnedMass(part).volume;
        const { volume } = meshMass(mesh, 1);
        expect(Math.abs(volume - meshMass(cut, 1).volume)).toBeLessThan(1e-4 * exact);
        expect(volume).toBeLessThanOrEqual(exact * (1 + 1e-9));
        expect(exact - volume).toBeLessThan(chordBound(part, 0.2) + 1e-9);
      }),
      { numRuns: 300, seed: 20 },
    );
    expect(laminar).toBeGreaterThan(100);
  });

  it('where laminar, centre and inertia of a fine mesh agree with the closed form', () => {
    fc.assert(
      fc.property(anyPart, (part) => {
        const mesh = meshTurnedDirect(part, { chordError: 0.002 });
        if (!mesh || mesh.triangles.length === 0) return;
        const exact = turnedMass(part);
        const found = meshMass(mesh, part.material.density);
        const missing = chordBound(part, 0.002) * part.material.density + 1e-9;
        // No wall is further than 100 from the centre of mass.
        for (const k of [0, 1, 2] as const) {
          expect(Math.abs(found.centre[k] - exact.centre[k]) * exact.mass).toBeLessThan(missing * 100);
        }
        for (const k of ['xx', 'yy', 'zz', 'xy', 'xz', 'yz'] as const) {
          expect(Math.abs(found.inertia[k] - exact.inertia[k])).toBeLessThan(missing * 2e4);
        }
      }),
      { numRuns: 150, seed: 7 },
    );
  });
});
