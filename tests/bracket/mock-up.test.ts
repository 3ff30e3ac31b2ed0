/** The bracket's mock-up: what its foot says, clear of its holes, cut in as deep as it should be. */
import { describe, expect, it } from 'vitest';
import type { Mesh } from '../../src/model/mesh.ts';
import { buildBracket } from '../../src/parts/bracket.ts';
import { bracketMockUp, footText } from '../../src/parts/bracket-mock-up.ts';
import { bracketMockUpMesh } from '../../src/products/bracket.ts';
import { textWidth } from '../../src/solids/engrave.ts';
import { meshFolded } from '../../src/solids/folded-mesh.ts';
import { judge } from '../validate/help.ts';
import { angleSpec } from './specs.ts';

/** Volume by the divergence theorem, and whether every edge is met once each way. */
function measured({ positions, triangles }: Mesh): { volume: number; closed: boolean; xMin: number } {
  let volume = 0;
  const edges = new Map<string, number>();
  const at = (i: number) => [positions[3 * i], positions[3 * i + 1], positions[3 * i + 2]] as [number, number, number];
  for (let t = 0; t < triangles.length; t += 3) {
    const ids = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
    const [a, b, c] = ids.map(at) as [[number, number, number], [number, number, number], [number, number, number]];
    volume +=
      (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) /
      6;
    for (const [i, k] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      const [from, to] = [ids[i], ids[k]];
      const key = from < to ? `${from} ${to}` : `${to} ${from}`;
      edges.set(key, (edges.get(key) ?? 0) + (from < to ? 1 : -1));
    }
  }
  let xMin = Infinity;
  for (let i = 0; i < positions.length; i += 3) xMin = Math.min(xMin, positions[i] as number);
  return { volume, closed: [...edges.values()].every((n) => n === 0), xMin };
}

describe('words on the foot', () => {
  it('stand between the bolt holes, short of the relief cuts', () => {
    const laid = footText(angleSpec, ['FIT CHECK', 'DO NOT DRIVE'], textWidth);
    expect(laid.map(({ text }) => text)).toEqual(['FIT CHECK', 'DO NOT DRIVE']);
    for (const { text, x, height, depth } of laid) {
      // Holes of 6.6 on 60: 53.4 between them, 2 mm kept on both sides.
      expect(textWidth(text, height)).toBeLessThanOrEqual(49.4 + 1e-9);
      expect(x - height / 2).toBeGreaterThanOrEqual(2 - 1e-9);
      // The relief cuts stand at 31.3 of the middle, wide of the words: the bend alone bounds them, at 38.3.
      expect(x + height / 2).toBeLessThanOrEqual(38.3 - 2 + 1e-9);
      expect(depth).toBeCloseTo(0.6, 9);
    }
    // The first line is the upper one: read with the free end below.
    expect(laid[0]?.x).toBeGreaterThan(laid[1]?.x ?? Infinity);
  });

  it('are left out where nobody could read them', () => {
    const narrow = { ...angleSpec, foot: { ...angleSpec.foot, spacing: 20 } };
    expect(footText(narrow, ['FIT CHECK', 'DO NOT DRIVE'], textWidth)).toEqual([]);
  });

  it('widen the holes by the allowance, and keep those that have no room', () => {
    expect(bracketMockUp(angleSpec, 0.3).sensor.bore).toBeCloseTo(18.5, 9);
    expect(bracketMockUp(angleSpec, 200)).toBe(angleSpec);
  });

  it('are cut in, and leave the mesh closed', async () => {
    const { joint } = judge({
      sensor: { gap: 1 },
      bracket: {
        bolts: { size: 'M6', spacing: 60, from_axis: 82, along: 32 },
        sensor: { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } },
      },
    });
    if (!joint.bracket) throw new Error('no bracket');
    const { spec } = joint.bracket;
    const making = {
      joint,
      findings: [],
      verdict: 'pass',
      revision: 'AB12',
      base: 'x',
      pictures: () => [],
      forced: false,
    } as const;
    const cut = measured(await bracketMockUpMesh(making, spec));
    const plain = measured(meshFolded(buildBracket(bracketMockUp(spec, joint.job.print.holes))));
    expect([cut.closed, plain.closed]).toEqual([true, true]);
    expect(cut.xMin).toBeCloseTo(plain.xMin, 3);
    // Letters take a few per cent of the foot's area times their depth: more than nothing, less than a tenth of it.
    const lost = plain.volume - cut.volume;
    expect(lost).toBeGreaterThan(0.6 * 20);
    expect(lost).toBeLessThan(0.6 * 0.25 * 53 * 38);
  });
});
