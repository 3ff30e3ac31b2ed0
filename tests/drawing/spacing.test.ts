import { describe, expect, it } from 'vitest';
import { dimensionWidth, uprightDimension } from '../../src/drawing/dimension.ts';
import { faceView } from '../../src/drawing/face-view.ts';
import { onCircleText, spacingLines } from '../../src/drawing/spacing-text.ts';
import { textBox } from '../../src/drawing/text-size.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { HoleGroupSpec } from '../../src/parts/adapter-spec.ts';
import { adapterSpec, ring } from '../report/fixture.ts';

const at = (circle: number, ...angles: number[]) => angles.flatMap((a) => ring(1, circle, a));
const corners = (wide: number, high: number) =>
  [1, -1].flatMap((i) => [1, -1].map((j) => ({ x: (i * wide) / 2, y: (j * high) / 2 })));

describe('how holes stand, in words', () => {
  it('says nothing of holes that stand evenly, wherever they start', () => {
    expect(spacingLines(ring(6, 94), 'mm')).toEqual([]);
    expect(spacingLines(ring(7, 94, 331.3), 'mm')).toEqual([]);
    expect(spacingLines(ring(1, 94), 'mm')).toEqual([]);
  });

  it('takes coordinates rounded to a hundredth as even', () => {
    const rounded = ring(6, 94, 10).map(({ x, y }) => ({ x: Number(x.toFixed(2)), y: Number(y.toFixed(2)) }));
    expect(spacingLines(rounded, 'mm')).toEqual([]);
    expect(onCircleText(rounded, 'mm')).toMatch(/^ on \u00d8(93\.99|94\.0)/);
  });

  it('gives both spacings of a rectangle: 62 x 46.5 stands on a circle of 77.5 (a 3-4-5 triangle)', () => {
    expect(onCircleText(corners(62, 46.5), 'mm')).toBe(' on \u00d877.50');
    expect(spacingLines(corners(62, 46.5), 'mm')).toEqual(['in a rectangle 62.00 x 46.50 apart']);
    expect(spacingLines(corners(46.5, 62), 'mm')).toEqual(['in a rectangle 62.00 x 46.50 apart']);
    // 63.5 mm = 2.5 in, 44.45 mm = 1.75 in, exactly.
    expect(spacingLines(corners(63.5, 44.45), 'in')).toEqual([
      'in a rectangle 63.50 [2.5000 in] x 44.45 [1.7500 in] apart',
    ]);
    expect(spacingLines(corners(50, 50), 'mm')).toEqual([]);
  });

  it('gives the angles of other uneven patterns, the count of many, and says when there is no circle', () => {
    expect(spacingLines(at(80, 200, 50, 0), 'mm').join(' ')).toBe(
      'unevenly spaced, at 0.00\u00b0, 50.00\u00b0, 200.00\u00b0',
    );
    expect(spacingLines(at(80, 0, 10, 40, 80, 120, 160, 200, 240, 280), 'mm')).toEqual(['unevenly spaced']);
    expect(spacingLines([...at(80, 0), ...at(90, 180)], 'mm')).toEqual(['not on one circle']);
  });

  it('gives the same angles on both faces of a part, though one is seen turned over', () => {
    const [group] = adapterSpec.groups as [HoleGroupSpec];
    const adapter = buildAdapter({ ...adapterSpec, groups: [{ ...group, positions: at(80, 0, 50, 200) }] });
    for (const from of ['driving', 'driven'] as const) {
      const d = faceView({ id: 'x', adapter, from, clocking: 0, mate: null, units: 'mm' });
      const words = d.shapes.flatMap((s) => (s.kind === 'text' ? [s.text] : [])).join(' ');
      expect(words).toContain('unevenly spaced, at 0.00\u00b0, 50.00\u00b0, 200.00\u00b0');
    }
  });
});

describe('uprightDimension', () => {
  it('keeps its text between its own lines and clear of the part, however thin the part is', () => {
    for (const high of [2, 5, 8, 19, 40, 90]) {
      const x = -(50 + dimensionWidth(high, '19.00', 6));
      const shapes = uprightDimension({ low: 0, high }, x, -50, '19.00', 6);
      const text = shapes.find((s) => s.kind === 'text');
      if (text?.kind !== 'text') throw new Error('no text');
      const box = textBox(text);
      expect(box.xMin).toBeGreaterThan(x);
      expect(box.xMax).toBeLessThan(-50);
      // No extension line runs through the figures.
      for (const y of [0, high]) expect(y <= box.yMin + 1e-9 || y >= box.yMax - 1e-9, `${high}: ${y}`).toBe(true);
    }
  });
});
