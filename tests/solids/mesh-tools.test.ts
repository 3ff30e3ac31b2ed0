import { describe, expect, it } from 'vitest';
import type { Mesh } from '../../src/model/mesh.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { seat } from '../../src/solids/seat.ts';
import { meshTurnedDirect } from '../../src/solids/turned-mesh.ts';
import { writeStlBinary } from '../../src/write/stl-binary.ts';
import { adapter } from './fixtures.ts';

/** A box by hand, corner at (x, y, z). */
function box(x: number, y: number, z: number, a: number, b: number, c: number): Mesh {
  const positions = Float64Array.from(
    [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) => [x + (i & 1 ? a : 0), y + (i & 2 ? b : 0), z + (i & 4 ? c : 0)]),
  );
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ] as const;
  return { positions, triangles: Uint32Array.from(quads.flatMap(([p, q, r, s]) => [p, q, r, p, r, s])) };
}

describe('sums over a mesh', () => {
  it('a box far from the origin: m (b2 + c2) / 12 about its centre (textbook)', () => {
    const { volume, mass, centre, inertia } = meshMass(box(100, -200, 300, 4, 6, 10), 0.5);
    expect(volume).toBeCloseTo(240, 9);
    expect(mass).toBeCloseTo(120, 9);
    expect(centre).toEqual([102, -197, 305]);
    expect(inertia.xx).toBeCloseTo(10 * (36 + 100), 6);
    expect(inertia.yy).toBeCloseTo(10 * (16 + 100), 6);
    expect(inertia.zz).toBeCloseTo(10 * (16 + 36), 6);
    expect(Math.abs(inertia.xy) + Math.abs(inertia.xz) + Math.abs(inertia.yz)).toBeLessThan(1e-6);
  });

  it('a tetrahedron on the axes: product of inertia a b V / 20 about the corner (textbook)', () => {
    const mesh = {
      positions: Float64Array.from([0, 0, 0, 3, 0, 0, 0, 4, 0, 0, 0, 5]),
      triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
    };
    const { volume, centre, inertia } = meshMass(mesh, 1);
    expect(volume).toBeCloseTo(10, 12);
    expect(inertia.xy).toBeCloseTo((3 * 4 * 10) / 20 - 10 * centre[0] * centre[1], 12);
    expect(inertia.xz).toBeCloseTo((3 * 5 * 10) / 20 - 10 * centre[0] * centre[2], 12);
  });

  it('an empty mesh has no box', () => {
    expect(() => meshBox({ positions: new Float64Array(0), triangles: new Uint32Array(0) })).toThrow(RangeError);
  });
});

describe('the check of a mesh', () => {
  const good = box(0, 0, 0, 1, 1, 1);

  it('passes a box, and the kernel agrees', async () => {
    expect(checkMesh(good)).toEqual({
      badEdges: 0,
      flatTriangles: 0,
      euler: 2,
      bodies: 1,
      voids: 0,
      genus: 0,
    });
    expect(await judge(good)).toMatchObject({ status: 'NoError', genus: 0, bodies: 1, volume: 1 });
  });

  it('finds a missing triangle, one turned over, one without area; the kernel does not take the open ones', async () => {
    const missing = { ...good, triangles: good.triangles.slice(3) };
    expect(checkMesh(missing).badEdges).toBe(3);
    expect((await judge(missing)).status).not.toBe('NoError');
    const turnedOver = { ...good, triangles: good.triangles.slice() };
    turnedOver.triangles.set([good.triangles[1] as number, good.triangles[0] as number]);
    expect(checkMesh(turnedOver).badEdges).toBeGreaterThan(0);
    expect((await judge(turnedOver)).status).not.toBe('NoError');
    const flat = { ...good, positions: good.positions.map((v, i) => (i % 3 === 0 ? 0 : v)) };
    expect(checkMesh(flat).flatTriangles).toBeGreaterThan(0);
  });

  it('counts two bodies, and tells a void from a body', async () => {
    const join = (a: Mesh, b: Mesh, inside: boolean): Mesh => {
      const shift = a.positions.length / 3;
      const t = [...b.triangles].map((i) => i + shift);
      return {
        positions: Float64Array.from([...a.positions, ...b.positions]),
        triangles: Uint32Array.from([...a.triangles, ...(inside ? t.toReversed() : t)]),
      };
    };
    const two = join(good, box(5, 0, 0, 1, 1, 1), false);
    expect(checkMesh(two)).toMatchObject({ badEdges: 0, bodies: 2, voids: 0, genus: 0 });
    expect(await judge(two)).toMatchObject({ bodies: 2, genus: 0 });
    const hollow = join(box(0, 0, 0, 9, 9, 9), box(3, 3, 3, 2, 2, 2), true);
    expect(checkMesh(hollow)).toMatchObject({ badEdges: 0, bodies: 1, voids: 1, genus: 0 });
  });
});

describe('on the printer bed', () => {
  const mesh = meshTurnedDirect(adapter()) as Mesh;

  it('the lowest point is at nought exactly, either way up, and nothing is turned inside out', () => {
    for (const flip of [false, true]) {
      const seated = seat(mesh, flip);
      expect(meshBox(seated)).toEqual({ min: [-60, -57, 0], max: [60, 57, 26] });
      expect(checkMesh(seated)).toMatchObject({ badEdges: 0, genus: 7, bodies: 1 });
      expect(meshMass(seated, 1).volume).toBeCloseTo(meshMass(mesh, 1).volume, 6);
    }
  });

  it('a flip is half a turn about x: the centre of mass goes from h above the bed to 26 - h', () => {
    const [up, down] = [meshMass(seat(mesh), 1).centre[2], meshMass(seat(mesh, true), 1).centre[2]];
    expect(up + down).toBeCloseTo(26, 9);
  });
});

describe('STL', () => {
  const mesh = meshTurnedDirect(adapter()) as Mesh;
  const bytes = writeStlBinary(mesh, 'adapter, millimetres');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

  it('has its header, its count and 50 bytes a triangle', () => {
    expect(new TextDecoder().decode(bytes.subarray(0, 80))).toBe('adapter, millimetres'.padEnd(80));
    expect(view.getUint32(80, true)).toBe(mesh.triangles.length / 3);
    expect(bytes.length).toBe(84 + 50 * (mesh.triangles.length / 3));
  });

  it('carries every corner to single precision, and normals that belong to them', () => {
    for (let t = 0; t < mesh.triangles.length / 3; t++) {
      const at = (k: number): number => view.getFloat32(84 + 50 * t + 4 * k, true);
      for (let k = 0; k < 9; k++) {
        const id = mesh.triangles[3 * t + Math.floor(k / 3)] as number;
        expect(at(3 + k)).toBe(Math.fround(mesh.positions[3 * id + (k % 3)] as number));
      }
      expect(Math.hypot(at(0), at(1), at(2))).toBeCloseTo(1, 5);
      expect(view.getUint16(84 + 50 * t + 48, true)).toBe(0);
    }
  });

  it('is the same each time, and refuses headers that would mislead a reader', () => {
    expect(writeStlBinary(mesh, 'adapter, millimetres')).toEqual(bytes);
    expect(() => writeStlBinary(mesh, 'solid adapter')).toThrow(RangeError);
    expect(() => writeStlBinary(mesh, 'x'.repeat(81))).toThrow(RangeError);
    expect(() => writeStlBinary(mesh, 'Ø')).toThrow(RangeError);
  });
});
