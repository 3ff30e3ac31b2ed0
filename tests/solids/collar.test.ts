/** Faces filled from coarse rings: nothing of the part may move, overlap or be missed. Expected areas: polygons, by the trigonometry. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TurnedPart } from '../../src/model/part.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshTurnedDirect } from '../../src/solids/turned-mesh.ts';
import { sidesFor } from '../../src/solids/turned-ring.ts';
import { drilling, profile, turned } from './fixtures.ts';

const thickness = 10;
const chordError = 0.01;

interface Hole {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

const plate = (outside: number, holes: readonly Hole[]): TurnedPart =>
  turned(
    'plate',
    profile([0, outside], [thickness, outside]),
    holes.map(({ x, y, r }, i) => drilling(`h${i}`, x, y, [0, r], [thickness, r])),
  );

/** Area of a regular polygon of so many sides in or round a circle. */
const inscribed = (r: number, sides: number) => (sides / 2) * r * r * Math.sin((2 * Math.PI) / sides);
const circumscribed = (r: number, sides: number) => sides * r * r * Math.tan(Math.PI / sides);

/** Signed areas of the triangles that lie in the plane z, as seen from above. */
function flatAreas(part: TurnedPart, z: number): number[] {
  const mesh = meshTurnedDirect(part, { chordError });
  if (!mesh) throw new Error('outlines cross');
  const { positions: p, triangles } = mesh;
  const areas: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const at = [0, 1, 2].map((k) => 3 * (triangles[t + k] as number)) as [number, number, number];
    if (at.some((i) => p[i + 2] !== z)) continue;
    const [ax, ay, bx, by, cx, cy] = at.flatMap((i) => [p[i], p[i + 1]]) as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    areas.push(((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / 2);
  }
  return areas;
}

function holdsTrue(outside: number, holes: readonly Hole[]): void {
  const part = plate(outside, holes);
  const face = holes.reduce(
    (area, { r }) => area - circumscribed(r, sidesFor(r, chordError, false)),
    inscribed(outside, sidesFor(outside, chordError, true)),
  );
  for (const [z, sign] of [
    [0, -1],
    [thickness, 1],
  ] as const) {
    const areas = flatAreas(part, z);
    // None turned over and all of it there: so none overlaps another.
    expect(Math.min(...areas.map((area) => sign * area))).toBeGreaterThan(0);
    expect(areas.reduce((sum, area) => sum + sign * area, 0)).toBeCloseTo(face, 6);
  }
  const health = checkMesh(meshTurnedDirect(part, { chordError }) as NonNullable<ReturnType<typeof meshTurnedDirect>>);
  expect(health).toMatchObject({ badEdges: 0, flatTriangles: 0, bodies: 1, voids: 0, genus: holes.length });
}

describe('a face with holes', () => {
  it.each([0.05, 0.1, 0.2, 1, 5, 40])('and %d mm between two of them, and to the rim', (web) => {
    const r = 8;
    holdsTrue(2 * r + 1.5 * web, [
      { x: r + web / 2, y: 0, r },
      { x: -r - web / 2, y: 0, r },
    ]);
  });

  it.each([0.1, 1, 10, 60])('about one middle: a bore that leaves %d mm all round', (web) => {
    holdsTrue(30 + web, [{ x: 0, y: 0, r: 30 }]);
  });

  it('of many sizes in any places', () => {
    const anyHole = fc.record({
      x: fc.double({ min: -90, max: 90, noNaN: true }),
      y: fc.double({ min: -90, max: 90, noNaN: true }),
      r: fc.double({ min: 1, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(anyHole, { maxLength: 25 }), (tried) => {
        const holes: Hole[] = [];
        for (const hole of tried) {
          const isClear = holes.every((h) => Math.hypot(h.x - hole.x, h.y - hole.y) > h.r + hole.r + 0.05);
          if (isClear && Math.hypot(hole.x, hole.y) + hole.r < 99.9) holes.push(hole);
        }
        holdsTrue(100, holes);
      }),
    );
  });
});
