/** The sketch of a flange that is not whole yet. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FlangeSketchInput, flangeSketch } from '../../src/drawing/flange-sketch.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { expectApart, texts } from './shape-help.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const bare: FlangeSketchInput = {
  id: 'x',
  name: 'driving flange',
  units: 'mm',
  outside: null,
  register: null,
  bore: null,
  circle: null,
  holes: [],
  hole: null,
};
const ring = (count: number, circle: number) =>
  Array.from({ length: count }, (_, i) => ({
    x: (circle / 2) * Math.cos((2 * Math.PI * i) / count),
    y: (circle / 2) * Math.sin((2 * Math.PI * i) / count),
  }));
const radii = (input: FlangeSketchInput, feature: string) =>
  flangeSketch(input).shapes.flatMap((shape) =>
    shape.kind === 'circle' && shape.feature === feature && shape.pen !== 'dimension' ? [shape.r] : [],
  );

describe('a flange as typed so far', () => {
  it('shows what is known true to size, and asks for what is not', () => {
    expect(radii({ ...bare, outside: 112 }, 'outside')).toEqual([56]);
    expect(radii({ ...bare, outside: 112 }, 'holes')).toEqual([]);
    const some = { ...bare, outside: 112, circle: 84, holes: ring(6, 84), register: { diameter: 62, gender: null } };
    expect(radii(some, 'register')).toEqual([31]);
    const words = texts(flangeSketch(some).shapes);
    expect(words).toContain('6 holes');
    expect(words).toContain('size not typed yet');
    expect(words).toContain('register: spigot or recess?');
    expect(texts(flangeSketch({ ...bare, circle: 84 }).shapes)).toContain('how many holes?');
    const whole = { ...some, hole: { diameter: 8, words: 'M8' } };
    expect(radii(whole, 'holes')).toEqual([42, 4, 4, 4, 4, 4, 4]);
    expect(texts(flangeSketch(whole).shapes)).toContain('M8, Ø8.00');
  });

  it('keeps its words apart and its numbers finite, whatever is known', () => {
    const size = (least: number, most: number) => fc.option(fc.double({ min: least, max: most, noNaN: true }));
    const inputs = fc.record({
      outside: size(20, 700),
      register: fc.option(
        fc.record({
          diameter: fc.double({ min: 5, max: 600, noNaN: true }),
          gender: fc.constantFrom('male' as const, 'female' as const, null),
        }),
      ),
      bore: size(1, 600),
      circle: size(8, 680),
      count: fc.integer({ min: 0, max: 72 }),
      hole: fc.option(
        fc.record({ diameter: fc.double({ min: 2, max: 80, noNaN: true }), words: fc.constant('clear') }),
      ),
      units: fc.constantFrom('mm' as const, 'in' as const),
    });
    fc.assert(
      fc.property(inputs, ({ count, ...rest }) => {
        const input = { ...bare, ...rest, holes: rest.circle === null ? [] : ring(count, rest.circle) };
        const drawing = flangeSketch(input);
        expectApart(drawing);
        const svg = writeSvg(drawing, { standalone: true });
        expect(badNumbers(svg)).toEqual([]);
        const { xMin, xMax, yMin, yMax } = drawing.box;
        expect([xMin, xMax, yMin, yMax].every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('is sound SVG, with holes that all stand on the axis too', () => {
    const drawing = flangeSketch({ ...bare, name: 'a <b> & "c"', holes: [{ x: 0, y: 0 }] });
    expect(parseXml(writeSvg(drawing, { standalone: true })).some(({ text }) => text.includes('a <b> & "c"'))).toBe(
      true,
    );
  });
});
