import { describe, expect, it, vi } from 'vitest';
import type { EngravedText, Engraving } from '../../src/model/engraving.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { engrave, textWidth } from '../../src/solids/engrave.ts';
import { judge } from '../../src/solids/manifold.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { penWidth, strokeText } from '../../src/solids/stroke-text.ts';
import { meshTurnedDirect } from '../../src/solids/turned-mesh.ts';
import { adapter, profile, turned } from './fixtures.ts';

vi.setConfig({ testTimeout: 60_000 });

function plain(): Mesh {
  return meshTurnedDirect(turned('disc', profile([0, 50], [20, 50]))) as Mesh;
}

const text = (more: Partial<EngravedText>): EngravedText => ({
  kind: 'text',
  text: 'I',
  surface: 'rim',
  angle: 0,
  radius: 50,
  z: 10,
  height: 6,
  depth: 0.8,
  ...more,
});

/** Centre of what an engraving took out of the plain disc, and how much, from the two meshes' sums. */
async function removed(...marks: Engraving[]) {
  const before = meshMass(plain(), 1);
  const mesh = await engrave(plain(), marks);
  const after = meshMass(mesh, 1);
  const volume = before.volume - after.volume;
  const at = ([0, 1, 2] as const).map(
    (k) => (before.volume * before.centre[k] - after.volume * after.centre[k]) / volume,
  );
  return { mesh, volume, at: at as [number, number, number] };
}

describe('an engraved adapter', () => {
  const marks: Engraving[] = [
    text({ text: 'FIT CHECK - DO NOT DRIVE', radius: 60, z: 11.5, height: 5, depth: 0.6 }),
    text({ text: 'demo 30 @ 90%', surface: 'bottom', angle: 90, radius: 34, z: 0, height: 4 }),
    { kind: 'index', angle: 180, radius: 60, zFrom: 0, zTo: 23, grooveRadius: 1 },
  ];

  it('stays one closed body with the same openings, and is lighter', async () => {
    const before = meshTurnedDirect(adapter()) as Mesh;
    const after = await engrave(before, marks);
    expect(checkMesh(after)).toMatchObject({ badEdges: 0, flatTriangles: 0, bodies: 1, voids: 0, genus: 7 });
    expect(await judge(after)).toMatchObject({ status: 'NoError', bodies: 1, genus: 7 });
    expect(meshMass(after, 1).volume).toBeLessThan(meshMass(before, 1).volume);
    expect(meshBox(after).min[0]).toBeGreaterThan(-60);
    expect(meshBox(after).max[2]).toBe(23);
  });

  it('is the same each time', async () => {
    const mesh = meshTurnedDirect(adapter()) as Mesh;
    expect(await engrave(mesh, marks)).toEqual(await engrave(mesh, marks));
  });
});

describe('where and how deep', () => {
  it('an I is a bar of the pen with round ends: (height - pen) pen + pi pen2 / 4, times the depth', async () => {
    const { volume, at } = await removed(text({}));
    const pen = penWidth(6);
    const area = (6 - pen) * pen + (Math.PI * pen * pen) / 4;
    // The pen's ends have 16 sides and the rim 0.01 mm of facets; the rest is exact.
    expect(volume / (area * 0.8)).toBeGreaterThan(0.96);
    expect(volume / (area * 0.8)).toBeLessThan(1.005);
    expect(at[0]).toBeCloseTo(49.6, 1);
    expect(at[1]).toBeCloseTo(0, 3);
    expect(at[2]).toBeCloseTo(10, 3);
  });

  it('reads from left to right and upright: rim from outside, faces with the letters up towards the rim', async () => {
    // A full stop after an I moves the ink's weight to the left end of the text; L has its foot at the right,
    // and below.
    for (const [surface, z, radius] of [
      ['rim', 10, 50],
      ['top', 20, 30],
      ['bottom', 0, 30],
    ] as const) {
      const stop = await removed(text({ text: 'I      .', surface, z, radius, angle: 90 }));
      // At 90 degrees a reader outside the rim or below faces +x to the left; one above has +x to the right.
      const left = surface === 'top' ? -1 : 1;
      expect(Math.sign(stop.at[0])).toBe(left);
      const below = await removed(text({ text: '_', surface, z, radius, angle: 90 }));
      if (surface === 'rim') expect(below.at[2]).toBeLessThan(8);
      else expect(below.at[1]).toBeLessThan(28);
    }
  });

  it('keeps its depth on faces and on the rim', async () => {
    const top = await engrave(plain(), [text({ text: 'O', surface: 'top', z: 20, radius: 30 })]);
    const floors = new Set<number>();
    for (let i = 2; i < top.positions.length; i += 3) floors.add(Math.round((top.positions[i] as number) * 1e4) / 1e4);
    expect([...floors].sort((a, b) => a - b)).toEqual([0, 19.2, 20]);
    const rim = await engrave(plain(), [text({ text: 'HEE', height: 8 })]);
    const { positions } = rim;
    let deepest = Infinity;
    for (let i = 0; i < positions.length; i += 3) {
      if ((positions[i + 2] as number) % 20 > 1)
        deepest = Math.min(deepest, Math.hypot(positions[i] as number, positions[i + 1] as number));
    }
    expect(deepest).toBeGreaterThan(49.2 - 0.025);
    expect(deepest).toBeLessThan(49.2 + 1e-4);
  });

  it('an index groove is a half round along the rim at its angle', async () => {
    const { volume, at, mesh } = await removed({
      kind: 'index',
      angle: 90,
      radius: 50,
      zFrom: 0,
      zTo: 20,
      grooveRadius: 1.5,
    });
    // Lens of circles of radius 1.5 and 50 whose centres are 50 apart (textbook).
    const [r, R] = [1.5, 50];
    const lens =
      r * r * Math.acos(r / (2 * R)) +
      R * R * Math.acos(1 - (r * r) / (2 * R * R)) -
      0.5 * Math.sqrt(r * r * (2 * R - r) * (2 * R + r));
    expect(Math.abs(volume / (lens * 20) - 1)).toBeLessThan(0.02);
    expect(at[0]).toBeCloseTo(0, 4);
    expect(at[1]).toBeGreaterThan(49);
    expect(at[2]).toBeCloseTo(10, 4);
    expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, bodies: 1, genus: 0 });
  });
});

describe('letters', () => {
  const ascii = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i));

  it('every printable character cuts something and leaves one closed body', async () => {
    const empty = meshMass(plain(), 1).volume;
    for (const c of ascii) {
      const mesh = await engrave(plain(), [text({ text: c, surface: 'top', z: 20, radius: 25 })]);
      expect(checkMesh(mesh), c).toMatchObject({ badEdges: 0, bodies: 1, voids: 0, genus: 0 });
      expect(meshMass(mesh, 1).volume, c).toBeLessThan(empty);
    }
  });

  it('what the font lacks becomes a question mark; nothing cuts nothing', async () => {
    expect(strokeText('Ø', 5)).toEqual(strokeText('?', 5));
    expect(strokeText('a\nb', 5)).toEqual(strokeText('a?b', 5));
    const mesh = plain();
    expect(await engrave(mesh, [text({ text: '' }), text({ text: '   ' })])).toBe(mesh);
    expect(textWidth('  ', 5)).toBe(0);
  });

  it('capitals stand as tall as asked, pen included, and the width is that of the ink', () => {
    for (const height of [2, 5, 12]) {
      const { strokes, pen, width } = strokeText('HIE', height);
      const ys = strokes.flat().map((p) => p[1]);
      const xs = strokes.flat().map((p) => p[0]);
      expect(Math.max(...ys) - Math.min(...ys) + pen).toBeCloseTo(height, 9);
      expect(Math.max(...xs) - Math.min(...xs) + pen).toBeCloseTo(width, 9);
      expect(Math.max(...xs)).toBeCloseTo(-Math.min(...xs), 9);
      expect(pen).toBeGreaterThanOrEqual(0.6);
    }
  });

  it('refuses sizes that are none', async () => {
    await expect(engrave(plain(), [text({ height: 0 })])).rejects.toThrow(RangeError);
    await expect(engrave(plain(), [text({ depth: -1 })])).rejects.toThrow(RangeError);
    await expect(engrave(plain(), [text({ radius: Number.NaN })])).rejects.toThrow(RangeError);
    await expect(
      engrave(plain(), [{ kind: 'index', angle: 0, radius: 50, zFrom: 5, zTo: 5, grooveRadius: 1 }]),
    ).rejects.toThrow(RangeError);
  });
});
