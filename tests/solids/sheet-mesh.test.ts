import { describe, expect, it } from 'vitest';
import type { SheetPart } from '../../src/model/sheet.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { steel, wheel } from './fixtures.ts';

describe('a toothed wheel', () => {
  it('is one closed body with an opening for the bore and for each screw, by two counts', async () => {
    const mesh = meshSheet(wheel());
    expect(checkMesh(mesh)).toEqual({
      badEdges: 0,
      flatTriangles: 0,
      euler: -12,
      bodies: 1,
      voids: 0,
      genus: 7,
    });
    expect(await judge(mesh)).toMatchObject({ status: 'NoError', bodies: 1, genus: 7 });
  });

  it('has the volume of its sectors less its holes, within the chord error', () => {
    // Half of each pitch is a sector of the outside radius, half of the root radius (textbook).
    const face = (Math.PI * (80 ** 2 + 74 ** 2)) / 2 - Math.PI * (30 ** 2 + 6 * 4.25 ** 2);
    const round = Math.PI * (80 + 74) + 2 * Math.PI * (30 + 6 * 4.25);
    for (const chordError of [0.1, 0.01, 0.001]) {
      const { volume, centre, inertia } = meshMass(meshSheet(wheel(), { chordError }), steel.density);
      expect(volume).toBeLessThan(face * 5);
      expect(face * 5 - volume).toBeLessThan(round * 5 * chordError);
      expect(centre[2]).toBeCloseTo(2.5, 9);
      const polar =
        (Math.PI * (80 ** 4 + 74 ** 4)) / 4 -
        (Math.PI * 30 ** 4) / 2 -
        6 * Math.PI * 4.25 ** 2 * (4.25 ** 2 / 2 + 45 ** 2);
      const exact = polar * 5 * steel.density;
      expect(Math.abs(inertia.zz - exact)).toBeLessThan(round * 5 * chordError * steel.density * 80 ** 2);
    }
  });

  it('stands between z = 0 and its thickness', () => {
    const box = meshBox(meshSheet(wheel()));
    expect([box.min[2], box.max[2]]).toEqual([0, 5]);
    expect(box.max[0]).toBe(80);
  });
});

describe('contours as they come', () => {
  const square = (clockwise: boolean, half: number) => {
    const corners = [
      [-half, -half],
      [0, -half],
      [half, -half],
      [half, half],
      [-half, half],
    ] as const;
    const vertices = corners.map(([x, y]) => ({ x, y, bulge: 0 }));
    return {
      kind: 'path' as const,
      feature: 'square',
      vertices: clockwise ? vertices.toReversed() : vertices,
    };
  };
  const plate = (part: Partial<SheetPart>): SheetPart => ({
    ...wheel(),
    outside: square(false, 20),
    holes: [],
    ...part,
  });

  it('may run either way and carry needless corners', () => {
    for (const [a, b] of [
      [false, false],
      [true, false],
      [false, true],
    ] as const) {
      const mesh = meshSheet(plate({ outside: square(a, 20), holes: [square(b, 10)] }));
      expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, flatTriangles: 0, bodies: 1, genus: 1 });
      expect(meshMass(mesh, 1).volume).toBeCloseTo((1600 - 400) * 5, 9);
    }
  });

  it.each([0.03, 0.002])(
    'may leave less metal between two cuts, %s mm, than the chord error: they are drawn finer',
    (web) => {
      const hole = (x: number) => ({ kind: 'circle' as const, feature: `h${x}`, x, y: 0, r: 6 });
      const mesh = meshSheet(plate({ holes: [hole(-6 - web / 2), hole(6 + web / 2)] }), { chordError: 0.05 });
      expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, bodies: 1, genus: 2 });
      const exact = (1600 - 2 * Math.PI * 36) * 5;
      expect(meshMass(mesh, 1).volume).toBeLessThan(exact);
      expect(meshMass(mesh, 1).volume).toBeGreaterThan(exact - 2 * 2 * Math.PI * 6 * 5 * 0.05);
    },
  );

  it('are refused when a hole breaks out', () => {
    expect(() => meshSheet(plate({ holes: [{ kind: 'circle', feature: 'h', x: 20, y: 0, r: 4 }] }))).toThrow(
      /cannot be filled/,
    );
  });
});
