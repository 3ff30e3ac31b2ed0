/**
 * Holes of a sheet in STEP, read back by gmsh's OpenCASCADE: those that stand free, and those that meet each other or the edge. Volumes are held
 * against plane geometry: rectangle, circle, half circle, and the lens of two circles (2 r^2 acos(d / 2r) - d / 2 sqrt(4 r^2 - d^2)).
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { solidOfSheet } from '../../src/geometry/solid-of-part.ts';
import type { Contour, ContourVertex } from '../../src/model/sheet.ts';
import type { RawStep } from '../../src/model/solid.ts';
import { stepTexts } from '../../src/solids/step.ts';
import { finishStep } from '../../src/write/step.ts';
import { wheel } from '../solids/fixtures.ts';
import { lastName, type Read, readStep } from './read-step.ts';

const folder = mkdtempSync(join(tmpdir(), 'step-windows-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const thickness = 2;
const corner = (x: number, y: number): ContourVertex => ({ x, y, bulge: 0 });
const path = (corners: readonly (readonly [number, number])[]): Contour => {
  return { kind: 'path', feature: 'sheet', vertices: corners.map(([x, y]) => corner(x, y)) };
};
const circle = (x: number, y: number, r: number): Contour => ({ kind: 'circle', feature: 'hole', x, y, r });
const plate = path([
  [-50, -30],
  [50, -30],
  [50, 30],
  [-50, 30],
]);
const square = [
  [0, 0],
  [8, 0],
  [8, 8],
  [0, 8],
] as const;
/** Two circles of radius r whose centres are d apart, as one area. */
const union = (r: number, d: number) =>
  2 * Math.PI * r * r - (2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d));

const sheets: readonly (readonly [name: string, holes: readonly Contour[], cut: number])[] = [
  ['no hole', [], 0],
  ['free holes', [circle(-20, 0, 10), circle(20, 0, 5)], Math.PI * 125],
  ['a window gone round to the left', [path(square)], 64],
  ['a window gone round to the right', [path(square.toReversed())], 64],
  ['two holes that meet', [circle(-6, 0, 10), circle(6, 0, 10)], union(10, 12)],
  ['a hole over the edge', [circle(50, 0, 10)], (Math.PI * 100) / 2],
  ['a hole within a hole', [circle(0, 0, 10), circle(1, 1, 4)], Math.PI * 100],
  ['a hole round a hole', [circle(1, 1, 4), circle(0, 0, 10)], Math.PI * 100],
  ['a hole beside the sheet', [circle(80, 0, 10), circle(0, 0, 3)], Math.PI * 9],
  ['holes a hundredth apart', [circle(-10.005, 0, 10), circle(10.005, 0, 10)], 2 * Math.PI * 100],
];

const parts = sheets.map(([name, holes]) => ({
  name,
  solid: solidOfSheet({ ...wheel(), thickness, outside: plate, holes }),
  colour: '#8899aa',
  places: [{ name, x: 0, y: 0, z: 0, turnedOver: false }],
}));
const [raw] = await stepTexts([{ assembly: { name: 'sheets', parts }, tree: true }]);
const file = join(folder, 'sheets.step');
writeFileSync(
  file,
  finishStep(raw as RawStep, {
    fileName: 'sheets.step',
    description: ['made by a test'],
    parts: ['sheets', ...sheets.map(([name]) => name)].map((name) => {
      return { name, number: name, description: '', revision: '', colour: name === 'sheets' ? null : '#8899aa' };
    }),
  }),
);
const read = readStep([file], []).files[file] as readonly Read[];

describe('a sheet in STEP', () => {
  it.each(sheets)('with %s has the volume of plane geometry', (name, _, cut) => {
    const found = read.find((one) => lastName(one) === name) as Read;
    expect(Math.abs(found.volume - thickness * (6000 - cut))).toBeLessThan(1e-5);
  });

  it('has a face for each wall and two for its sides, and no more', () => {
    const faces = (name: string) => read.find((one) => lastName(one) === name)?.faces.length;
    expect(faces('free holes')).toBe(4 + 2 + 2);
    expect(faces('a window gone round to the right')).toBe(4 + 4 + 2);
  });
});
