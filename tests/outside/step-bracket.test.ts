/**
 * Folded brackets as exact solids, read back by gmsh: volumes against areas and sectors worked out by hand, boxes against the mesh, and
 * where bracket and sensor stand over the wheel.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import '../seed.ts';
import { faceMoments } from '../../src/geometry/contour.ts';
import { bendZones } from '../../src/geometry/fold.ts';
import { solidOfSheet } from '../../src/geometry/solid-of-part.ts';
import type { RawStep } from '../../src/model/solid.ts';
import { type BracketSpec, buildBracket } from '../../src/parts/bracket.ts';
import { stepFiles } from '../../src/products/step.ts';
import { meshFolded } from '../../src/solids/folded-mesh.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { stepTexts } from '../../src/solids/step.ts';
import { finishStep } from '../../src/write/step.ts';
import { angleSpec, anyBracket } from '../bracket/specs.ts';
import { judge } from '../validate/help.ts';
import { lastName, type Read, readStep } from './read-step.ts';

const folder = mkdtempSync(join(tmpdir(), 'step-bracket-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string) => join(folder, name);

/** A strip that is bent right back runs into itself: then it is no longer the sum of its pieces. */
const runsClear = ({ bends }: BracketSpec) =>
  Math.abs(bends.reduce((sum, { angle, direction }) => sum + (direction === 'up' ? angle : -angle), 0)) < 150;

const brackets: readonly (readonly [string, BracketSpec])[] = [
  ['an angle', angleSpec],
  ...fc
    .sample(anyBracket, 24)
    .filter((spec) => spec.bends.length > 0 && runsClear(spec))
    .slice(0, 8)
    .map((spec, i) => [`random bracket ${i + 1}`, spec] as const),
];
const placed = brackets.map(([name, spec]) => {
  const places = [{ name, x: 0, y: 0, z: 0, turnedOver: false }];
  return { name, solid: solidOfSheet(buildBracket(spec)), colour: '#8899aa', places };
});
const [raw] = await stepTexts([{ assembly: { name: 'brackets', parts: placed }, tree: true }]);
const text = finishStep(raw as RawStep, {
  fileName: 'brackets.step',
  description: [],
  parts: ['brackets', ...brackets.map(([name]) => name)].map((name) => {
    return { name, number: name, description: '', revision: '', colour: name === 'brackets' ? null : '#8899aa' };
  }),
});
writeFileSync(at('brackets.step'), text);

/** Over the sound job's wheel (outside 178, root 169): bolts 82 from the axis, 32 beside the teeth, nose of 25, gap 1. */
const looking = (direction: string, towards: string, bolts: object, form = 'angle') =>
  judge({
    sensor: { gap: 1, direction },
    bracket: {
      form,
      towards,
      bolts: { size: 'M6', spacing: 60, ...bolts },
      sensor: { bore: 18.2, reach: 25, ear: { distance: 22, size: 'M6' } },
    },
  });
const jobs = {
  radial: looking('radial', 'driven', { from_axis: 82, along: 32 }),
  'radial-driving': looking('radial', 'driving', { from_axis: 82, along: 32 }),
};
for (const [base, { joint, findings }] of Object.entries(jobs)) {
  const making = {
    joint,
    findings,
    base,
    revision: 'RTEST1',
    verdict: 'pass',
    forced: false,
    pictures: () => [],
  } as const;
  for (const { name, bytes } of await stepFiles.make(making)) writeFileSync(at(name), bytes);
}
const sensor = 'sensor, as far as the job tells';
const pairs = [
  ['bracket', 'wheel'],
  ['bracket', sensor],
  [sensor, 'wheel'],
] as const;
const joints = Object.keys(jobs).map((base) => at(`${base}-joint.step`));
const answer = readStep(
  [at('brackets.step'), ...joints],
  joints.flatMap((file) => pairs.map(([a, b]) => [file, a, b] as const)),
);

describe.each(brackets)('%s', (name, spec) => {
  const solid = answer.files[at('brackets.step')]?.find((one) => lastName(one) === name) as Read;
  const part = buildBracket(spec);
  const { thickness: t } = part;

  it('has the volume of its straights and of the sectors of its bends', () => {
    // Every bend lies in the arm, which is a strip of one width.
    const bends = bendZones(part).reduce((sum, { from, to, turn, radius: r }) => {
      const sector = (Math.abs(turn) / 2) * ((r + t) ** 2 - r ** 2);
      return sum + spec.arm.width * (sector - (to - from) * t);
    }, 0);
    const want = faceMoments(part).area * t + bends;
    expect(Math.abs(solid.volume / want - 1)).toBeLessThan(1e-9);
  });

  it('agrees with the mesh within its chord bound, and is made of planes and cylinders', () => {
    const mesh = meshFolded(part);
    const bound = 0.01 * solid.faces.reduce((sum, { kind, area }) => sum + (kind === 'Plane' ? 0 : area), 0);
    expect(Math.abs(meshMass(mesh, 1).volume - solid.volume)).toBeLessThan(bound);
    const { min, max } = meshBox(mesh);
    for (const [i, value] of [...min, ...max].entries()) {
      expect(Math.abs((solid.box[i] as number) - value)).toBeLessThan(0.0101);
    }
    expect(solid.faces.filter(({ kind }) => kind !== 'Plane' && kind !== 'Cylinder')).toEqual([]);
  });

  it('has both walls of every bend', () => {
    const radii = solid.faces.flatMap(({ radius }) => (radius === undefined ? [] : [radius]));
    for (const { radius } of spec.bends) {
      expect(radii.some((found) => Math.abs(found - radius) < 1e-6)).toBe(true);
      expect(radii.some((found) => Math.abs(found - radius - t) < 1e-6)).toBe(true);
    }
  });
});

describe.each(Object.entries(jobs))('a bracket in the joint, %s', (base, { joint }) => {
  const file = at(`${base}-joint.step`);
  const find = (name: string) => answer.files[file]?.find((one) => lastName(one) === name) as Read;
  const middle = (joint.wheelZ as number) + (joint.wheel?.thickness as number) / 2;
  const way = base.endsWith('driving') ? -1 : 1;

  it('the sensor looks at the middle of the teeth across the gap', () => {
    const { box } = find(sensor);
    expect(box[0]).toBeCloseTo(178 / 2 + 1, 5);
    // Nose and ear are as wide one way as the other.
    expect(((box[2] as number) + (box[5] as number)) / 2).toBeCloseTo(middle, 5);
  });

  it('the foot lies with its outer face where the bolts are', () => {
    const { box } = find('bracket');
    expect(way === 1 ? box[5] : box[2]).toBeCloseTo(middle + way * 32, 5);
    // The ear's seat: 1 of gap and 25 of nose over the teeth.
    expect(box[3]).toBeCloseTo(178 / 2 + 26, 5);
  });

  it('nothing runs into anything', () => {
    expect(answer.apart[file]).toHaveLength(pairs.length);
    for (const volume of answer.apart[file] ?? []) expect(volume).toBeLessThan(1e-3);
  });
});
