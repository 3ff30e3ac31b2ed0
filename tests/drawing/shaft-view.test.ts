/** Sketch of the shaft and picture of the line: nothing overlaps, lengths and slopes are drawn true, signs are told. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LineToDraw, lineView } from '../../src/drawing/line-view.ts';
import { type ShaftToDraw, shaftView } from '../../src/drawing/shaft-view.ts';
import { overlap, type TextShape, textBox } from '../../src/drawing/text-size.ts';
import { directionOf } from '../../src/formulas/shaft-direction.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const texts = ({ shapes }: Drawing) => shapes.filter((shape): shape is TextShape => shape.kind === 'text');

function expectApart(drawing: Drawing): void {
  const all = texts(drawing);
  all.forEach((a, i) => {
    for (const b of all.slice(i + 1))
      expect(overlap(textBox(a), textBox(b)), `"${a.text}" lies over "${b.text}"`).toBe(false);
  });
}

const shaft: ShaftToDraw = {
  id: 'shaft',
  units: 'mm',
  faces: 1294,
  home: 1264,
  out: 1354,
  ends: { a: 60, b: 54 },
  flange: 128,
  tube: 76,
  at: { a: 'on the adapter', b: 'at the far end' },
};

describe('the sketch of the shaft', () => {
  it('tells every length and both faces', () => {
    const said = texts(shaftView(shaft)).map(({ text }) => text);
    expect(said).toEqual(
      expect.arrayContaining([
        'joint centres, as fitted 1180.0',
        'A to B pushed home: make it so 1264.0',
        'A to B as fitted at ride height 1294.0',
        'A to B pulled out 1354.0',
        'A',
        'B',
      ]),
    );
  });

  it('draws each length between the points that it names', () => {
    const { shapes } = shaftView(shaft);
    const spans = shapes.flatMap((s) =>
      s.kind === 'line' && s.pen === 'dimension' && s.from.y === s.to.y ? [s.to.x - s.from.x] : [],
    );
    expect(spans.map((span) => Math.round(span))).toEqual([1180, 1264, 1294, 1354]);
  });

  it('keeps its texts apart, is well-formed, for any shaft', () => {
    fc.assert(
      fc.property(
        fc.record({
          faces: fc.double({ min: 150, max: 4000, noNaN: true }),
          stroke: fc.option(fc.double({ min: 10, max: 200, noNaN: true }), { nil: null }),
          a: fc.double({ min: 0, max: 60, noNaN: true }),
          b: fc.double({ min: 0, max: 60, noNaN: true }),
          known: fc.boolean(),
          units: fc.constantFrom('mm' as const, 'in' as const),
          flange: fc.double({ min: 60, max: 300, noNaN: true }),
        }),
        ({ faces, stroke, a, b, known, units, flange }) => {
          const home = stroke === null ? null : faces - Math.min(stroke / 3, faces / 4);
          const out = home === null || stroke === null ? null : home + stroke;
          const drawing = shaftView({ ...shaft, faces, home, out, ends: known ? { a, b } : null, units, flange });
          expectApart(drawing);
          expect(badNumbers(writeSvg(drawing))).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
    expect(parseXml(writeSvg(shaftView(shaft)))[0]?.tag).toBe('svg');
  });
});

const line = (readings: readonly (readonly [number, number])[], names?: readonly string[]): LineToDraw => ({
  id: 'shaft-line',
  shafts: readings.map(([side, plan], i) => ({
    name: names?.[i] ?? `shaft ${i + 1}`,
    side,
    plan,
    length: i === 0 || i === readings.length - 1 ? null : 1000,
    direction: directionOf({ side, plan }),
  })),
  joints: readings.slice(1).map((_, i) => ({ angle: 3 + i, isEven: i === 1 })),
});

describe('the picture of the line', () => {
  it('a plus side angle goes down towards the far end, a plus plan angle goes up, to the left', () => {
    const { shapes } = lineView(
      line([
        [0, 0],
        [6, 4],
        [0, 0],
      ]),
    );
    const strokes = shapes.flatMap((s) => (s.kind === 'line' && s.pen === 'mark' ? [s] : []));
    const slopes = strokes.map(({ from, to }) => (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI);
    // Three shafts and two signs from the side, then the same from above.
    expect(slopes[1]).toBeCloseTo(
      (-Math.atan(Math.tan((6 * Math.PI) / 180) / Math.cos((4 * Math.PI) / 180)) * 180) / Math.PI,
      6,
    );
    expect(slopes[3]).toBeLessThan(0);
    expect(slopes[4]).toBeGreaterThan(0);
    expect(slopes[6]).toBeCloseTo(4, 6);
    expect(slopes[8]).toBeGreaterThan(0);
    expect(slopes[9]).toBeLessThan(0);
  });

  it('keeps its texts apart for any line', () => {
    const angle = fc.double({ min: -12, max: 12, noNaN: true });
    const name = fc.constantFrom(
      'pinion',
      'gearbox output',
      'transfer box rear output flange',
      'a shaft with a name of forty letters here',
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(angle, angle, name), { minLength: 2, maxLength: 6 }), (shafts) => {
        const drawing = lineView(
          line(
            shafts.map(([s, p]) => [s, p] as const),
            shafts.map(([, , n]) => n),
          ),
        );
        expectApart(drawing);
        expect(badNumbers(writeSvg(drawing))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
