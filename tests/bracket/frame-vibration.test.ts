/** The bracket as a beam: against closed forms, published eigenvalues, and a small finite-element frame of its own. */
import { describe, expect, it } from 'vitest';
import {
  type FramePoint,
  type FrameStrip,
  frameFrequencies,
  rectangleTorsion,
  tipFlexibility,
} from '../../src/formulas/frame-vibration.ts';

const strip: FrameStrip = { youngsModulus: 210_000, shearModulus: 80_769, width: 40, thickness: 3, density: 0.00785 };
const EI = (210_000 * 40 * 27) / 12;
const perLength = 0.00785 * 40 * 3 * 1e-6;
const straight = (length: number): FramePoint[] => [
  { p: 0, q: 0 },
  { p: length, q: 0 },
];

describe('static give', () => {
  it('is L^3 / 3EI for a cantilever, in and across the plane', () => {
    const { inPlane, across } = tipFlexibility(straight(70), strip);
    expect(inPlane).toBeCloseTo(70 ** 3 / (3 * EI), 12);
    expect(across).toBeCloseTo(70 ** 3 / ((3 * 210_000 * 3 * 40 ** 3) / 12), 12);
  });

  it('is the textbook sum for an L: arm, foot turned by the arm, foot twisted', () => {
    // Foot a upright, arm b sideways. Along q: b^3 / 3EI + a b^2 / EI; along p: a^3 / 3EI; both: a^2 b / 2EI.
    const [a, b] = [30, 45];
    const path = [
      { p: 0, q: 0 },
      { p: 0, q: a },
      { p: b, q: a },
    ];
    const [qq, pp, pq] = [(b ** 3 / 3 + a * b * b) / EI, a ** 3 / 3 / EI, (a * a * b) / 2 / EI];
    const largest = (qq + pp) / 2 + Math.hypot((qq - pp) / 2, pq);
    const { inPlane, across } = tipFlexibility(path, strip);
    expect(inPlane).toBeCloseTo(largest, 12);
    const edgewise = (210_000 * 3 * 40 ** 3) / 12;
    const twist = 80_769 * rectangleTorsion(40, 3);
    expect(across).toBeCloseTo((a ** 3 + b ** 3) / (3 * edgewise) + (a * b * b) / twist, 12);
  });

  it('takes the torsion constant of the handbooks: square 0.1406 a^4, ten to one 0.312 b h^3 (textbook)', () => {
    // The series is a fit for narrow shapes: 1 % at a square, 0.1 % at ten to one.
    expect(rectangleTorsion(10, 10) / 10 ** 4).toBeCloseTo(0.1406, 2);
    expect(rectangleTorsion(100, 10) / (100 * 1000)).toBeCloseTo(0.312, 3);
  });
});

describe('lowest frequency of a cantilever', () => {
  // Published roots of the frequency equation: k in k / (2 pi) sqrt(EI / (m L^4)) by end mass over beam mass.
  it.each([
    [0, 3.516],
    [1, 1.5573],
  ])('lies just under the exact one with %f times its own mass at the end', (ratio, k) => {
    const length = 80;
    const exact = (k / (2 * Math.PI)) * Math.sqrt(EI / (perLength * length ** 4));
    const { inPlane } = frameFrequencies(straight(length), strip, ratio * perLength * 1e6 * length);
    expect(inPlane).toBeLessThanOrEqual(exact * 1.0001);
    expect(inPlane).toBeGreaterThan(exact * 0.98);
  });

  it('is sqrt(3EI / m L^3) when the strip weighs nothing', () => {
    const { inPlane } = frameFrequencies(straight(80), { ...strip, density: 0 }, 60);
    expect(inPlane).toBeCloseTo(Math.sqrt((3 * EI) / (60e-6 * 80 ** 3)) / (2 * Math.PI), 6);
  });
});

/**
 * A frame of straight beam elements, three movements a node (two shifts and a turn), consistent masses, clamped at the first node.
 * Lowest frequency by inverse iteration. Nothing of it is shared with the formulas.
 */
function finiteElements(path: readonly FramePoint[], endMass: number, elements = 12): number {
  const nodes: FramePoint[] = [path[0] as FramePoint];
  path.slice(1).forEach((to, i) => {
    const from = path[i] as FramePoint;
    for (let k = 1; k <= elements; k++)
      nodes.push({ p: from.p + ((to.p - from.p) * k) / elements, q: from.q + ((to.q - from.q) * k) / elements });
  });
  const size = 3 * nodes.length;
  const zeros = () => Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const [K, M] = [zeros(), zeros()];
  const EA = 210_000 * 40 * 3;
  for (let n = 0; n + 1 < nodes.length; n++) {
    const [a, b] = [nodes[n] as FramePoint, nodes[n + 1] as FramePoint];
    const L = Math.hypot(b.p - a.p, b.q - a.q);
    const [c, s] = [(b.p - a.p) / L, (b.q - a.q) / L];
    const e = EI / L ** 3;
    const x = EA / L;
    const k = [
      [x, 0, 0, -x, 0, 0],
      [0, 12 * e, 6 * e * L, 0, -12 * e, 6 * e * L],
      [0, 6 * e * L, 4 * e * L * L, 0, -6 * e * L, 2 * e * L * L],
      [-x, 0, 0, x, 0, 0],
      [0, -12 * e, -6 * e * L, 0, 12 * e, -6 * e * L],
      [0, 6 * e * L, 2 * e * L * L, 0, -6 * e * L, 4 * e * L * L],
    ];
    const w = (perLength * L) / 420;
    const m = [
      [140 * w, 0, 0, 70 * w, 0, 0],
      [0, 156 * w, 22 * L * w, 0, 54 * w, -13 * L * w],
      [0, 22 * L * w, 4 * L * L * w, 0, 13 * L * w, -3 * L * L * w],
      [70 * w, 0, 0, 140 * w, 0, 0],
      [0, 54 * w, 13 * L * w, 0, 156 * w, -22 * L * w],
      [0, -13 * L * w, -3 * L * L * w, 0, -22 * L * w, 4 * L * L * w],
    ];
    const t = [
      [c, s, 0, 0, 0, 0],
      [-s, c, 0, 0, 0, 0],
      [0, 0, 1, 0, 0, 0],
      [0, 0, 0, c, s, 0],
      [0, 0, 0, -s, c, 0],
      [0, 0, 0, 0, 0, 1],
    ];
    const at = (matrix: number[][], i: number, j: number) => matrix[i]?.[j] ?? 0;
    for (let i = 0; i < 6; i++)
      for (let j = 0; j < 6; j++) {
        let [ks, ms] = [0, 0];
        for (let u = 0; u < 6; u++)
          for (let v = 0; v < 6; v++) {
            const turn = at(t, u, i) * at(t, v, j);
            ks += turn * at(k, u, v);
            ms += turn * at(m, u, v);
          }
        (K[3 * n + i] as number[])[3 * n + j] = at(K, 3 * n + i, 3 * n + j) + ks;
        (M[3 * n + i] as number[])[3 * n + j] = at(M, 3 * n + i, 3 * n + j) + ms;
      }
  }
  for (const i of [size - 3, size - 2]) (M[i] as number[])[i] = (M[i]?.[i] ?? 0) + endMass * 1e-6;
  const free = Array.from({ length: size - 3 }, (_, i) => i + 3);
  const times = (matrix: number[][], v: readonly number[]) =>
    free.map((i) => free.reduce((sum, j, n) => sum + (matrix[i]?.[j] ?? 0) * (v[n] ?? 0), 0));
  const solve = (right: readonly number[]): number[] => {
    const rows = free.map((i, n) => [...free.map((j) => K[i]?.[j] ?? 0), right[n] ?? 0]);
    const count = rows.length;
    for (let i = 0; i < count; i++) {
      const pivot = rows
        .slice(i)
        .reduce((best, row, n) => (Math.abs(row[i] ?? 0) > Math.abs(rows[best]?.[i] ?? 0) ? i + n : best), i);
      [rows[i], rows[pivot]] = [rows[pivot] as number[], rows[i] as number[]];
      const top = rows[i] as number[];
      for (let r = i + 1; r < count; r++) {
        const row = rows[r] as number[];
        const f = (row[i] ?? 0) / (top[i] as number);
        if (f !== 0)
          for (let cell = i; cell <= count; cell++) row[cell] = (row[cell] as number) - f * (top[cell] as number);
      }
    }
    const out = new Array<number>(count).fill(0);
    for (let i = count - 1; i >= 0; i--) {
      const row = rows[i] as number[];
      const rest = out.reduce((sum, value, j) => (j > i ? sum + value * (row[j] as number) : sum), 0);
      out[i] = ((row[count] as number) - rest) / (row[i] as number);
    }
    return out;
  };
  let shape = free.map((_, i) => 1 + (i % 3));
  let square = 0;
  for (let turn = 0; turn < 12; turn++) {
    const next = solve(times(M, shape));
    const dot = (a: readonly number[], b: readonly number[]) =>
      a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
    square = dot(next, times(K, next)) / dot(next, times(M, next));
    const largest = Math.max(...next.map(Math.abs));
    shape = next.map((value) => value / largest);
  }
  return Math.sqrt(square) / (2 * Math.PI);
}

describe('bent strips against finite elements', () => {
  it('trusts the elements: a bare cantilever gives the published 3.516', () => {
    const exact = (3.516 / (2 * Math.PI)) * Math.sqrt(EI / (perLength * 80 ** 4));
    expect(finiteElements(straight(80), 0) / exact).toBeCloseTo(1, 3);
  });

  const shapes: Readonly<Record<string, FramePoint[]>> = {
    angle: [
      { p: 0, q: 0 },
      { p: 0, q: 35 },
      { p: -40, q: 35 },
    ],
    offset: [
      { p: 0, q: 0 },
      { p: -20, q: 0 },
      { p: -20, q: 25 },
      { p: -60, q: 25 },
    ],
    channel: [
      { p: 0, q: 0 },
      { p: 15, q: 0 },
      { p: 15, q: 40 },
      { p: -35, q: 40 },
    ],
  };
  it.each(Object.entries(shapes).flatMap(([name, path]) => [0, 60, 250].map((mass) => ({ name, path, mass }))))(
    '$name with $mass g: never above them, and at most 12 % below',
    ({ path, mass }) => {
      const elements = finiteElements(path, mass);
      const { inPlane } = frameFrequencies(path, strip, mass);
      expect(inPlane).toBeLessThanOrEqual(elements * 1.001);
      expect(inPlane).toBeGreaterThan(elements * 0.88);
    },
  );
});
