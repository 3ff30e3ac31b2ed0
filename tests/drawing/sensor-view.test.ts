/** The sensor over the teeth: sizes as cut, gaps as the findings say. */
import { describe, expect, it } from 'vitest';
import { gapLineScale } from '../../src/drawing/gap-line.ts';
import { sensorScale, sensorView } from '../../src/drawing/sensor-view.ts';
import type { Shape } from '../../src/model/drawing.ts';
import { pictures } from '../../src/products/pictures.ts';
import { sensorToDraw } from '../../src/products/sensor-to-draw.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { findingOf, judge, type Patch } from '../validate/help.ts';
import { expectApart, pathBox } from './shape-help.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const sensor: Patch = {
  sensor: { gap: 1.2, gap_range: { least: 0.5, most: 2.5 }, bearing_play: 0.08, pole: 1.6 },
  duty: { temperature: { cold: '-20 degC', hot: '90 degC' } },
};
const axial: Patch = { sensor: { direction: 'axial', float: 0.2, gap_range: { least: 0.5, most: 2.5 }, gap: 1.2 } };

const drawnOf = (...patches: Patch[]) => {
  const judged = judge(...patches);
  const input = sensorToDraw(judged.joint);
  if (!input) throw new Error('no sensor is drawn');
  return { judged, input, drawing: sensorView(input) };
};

type Path = Extract<Shape, { kind: 'path' }>;
const paths = (shapes: readonly Shape[], fill: Path['fill']) =>
  shapes.filter((s): s is Path => s.kind === 'path' && s.fill === fill && s.closed).map(pathBox);

describe('a sensor that looks at the tips', () => {
  const { judged, input, drawing } = drawnOf(sensor);
  const mm = sensorScale(input);

  it('draws two elements of 1.6 mm, 2.5 mm apart (data sheets, differential kind), to the scale of the teeth', () => {
    const [left, right] = paths(drawing.shapes, 'ink');
    if (!left || !right) throw new Error('no elements are drawn');
    expect(left.xMax - left.xMin).toBeCloseTo(1.6 * mm, 9);
    expect((right.xMin + right.xMax - left.xMin - left.xMax) / 2).toBeCloseTo(2.5 * mm, 9);
    // Both the same way off the middle of the tooth.
    expect((right.xMax + left.xMin) / 2).toBeCloseTo(50, 9);
  });

  it('draws a tooth as wide as it is cut: 0.4 of the pitch of 60 teeth on 178 mm, straight across', () => {
    const [edge = []] = input.edges;
    const tips = edge.filter(({ x, y }) => Math.abs(x) < 3 && Math.hypot(x, y + 89) > 89 - 1e-9).map(({ x }) => x);
    const half = 89 * Math.sin((0.2 * 2 * Math.PI) / 60);
    expect(Math.max(...tips)).toBeCloseTo(half, 9);
    expect(Math.min(...tips)).toBeCloseTo(-half, 9);
    const roots = edge.map(({ x, y }) => Math.hypot(x, y + 89));
    expect(Math.min(...roots)).toBeCloseTo(89 - 4.5, 9);
  });

  it('holds the gap between the face and the tooth, to the same scale', () => {
    const body = paths(drawing.shapes, 'adapter')[0];
    const steel = paths(drawing.shapes, 'screw')[0];
    expect((body?.yMin ?? 0) - (steel?.yMax ?? 0)).toBeCloseTo(1.2 * mm, 9);
  });

  it('shows the gaps of the findings, and cold above hot for a wheel that grows', () => {
    const nearest = Math.min(...input.states.map((state) => state.nearest));
    const farthest = Math.max(...input.states.map((state) => state.farthest));
    expect(nearest).toBeCloseTo(findingOf(judged, 'sensor-gap-high').value ?? 0, 5);
    expect(farthest).toBeCloseTo(findingOf(judged, 'sensor-gap-low').value ?? 0, 5);
    const [cold, set, hot] = input.states.map(({ middle }) => middle);
    // Steel, 12e-6 / K within 1e-6, on a radius of 89 mm: 70 K make 0.075 mm.
    expect((set ?? 0) - (hot ?? 0)).toBeCloseTo(0.075, 2);
    expect(cold).toBeGreaterThan(set ?? 0);
    const scale = gapLineScale(input);
    const borne = paths(drawing.shapes, 'good')[0];
    expect(borne?.xMin).toBeCloseTo(0.5 * scale, 9);
    expect(borne?.xMax).toBeCloseTo(2.5 * scale, 9);
  });
});

describe('a sensor that looks along the axis', () => {
  it('draws open teeth laid out flat: as wide as along the tips, as deep as the sheet', () => {
    const { input } = drawnOf(axial);
    const middle = input.teeth.find((loop) => loop.some(({ x }) => x > 0) && loop.some(({ x }) => x < 0)) ?? [];
    const xs = middle.map(({ x }) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo((0.4 * Math.PI * 178) / 60, 9);
    expect(Math.min(...middle.map(({ y }) => y))).toBe(-3);
  });

  it('draws bars between windows at the middle of the windows', () => {
    const { input, drawing } = drawnOf(axial, {
      wheel: { form: 'windows', rim: 4, height: 8, outside: 178, root_radius: 0.5 },
    });
    // The windows lie from 89 - 4 - 8 to 89 - 4 mm: their middle at 81 mm.
    expect(input.pitch).toBeCloseTo((2 * Math.PI * 81) / 60, 9);
    const middle = input.teeth.find((loop) => loop.some(({ x }) => x > 0) && loop.some(({ x }) => x < 0)) ?? [];
    const xs = middle.map(({ x }) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo((0.4 * 2 * Math.PI * 81) / 60, 9);
    expect(drawing.title).toBe('the sensor over the bars');
  });
});

describe('the picture', () => {
  it.each([
    ['radial', [sensor]],
    ['axial', [axial]],
    ['a coil', [{ sensor: { kind: 'coil' } }]],
    ['few coarse teeth', [{ wheel: { teeth: 12, height: 9 } }]],
  ] as const)('is well-formed and keeps its words apart: %s', (_, patches) => {
    const { drawing, input } = drawnOf(...patches);
    expectApart(drawing);
    expectApart(sensorView({ ...input, units: 'in' }));
    const svg = writeSvg(drawing);
    expect(badNumbers(svg)).toEqual([]);
    expect(parseXml(svg).some(({ tag }) => tag === 'svg')).toBe(true);
  });

  it('is not there without a sensor', () => {
    expect(pictures(judge({ sensor: undefined }).joint).map(({ name }) => name)).not.toContain('sensor');
  });
});
