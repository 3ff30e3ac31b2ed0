/** The bracket's picture and its lines in the report: what must be there to cut, bend and set it. */
import { describe, expect, it } from 'vitest';
import { pictures } from '../../src/products/pictures.ts';
import { bracketLines } from '../../src/report/bracket-lines.ts';
import { judge } from '../validate/help.ts';

const bracket = {
  bolts: { size: 'M6', spacing: 60, from_axis: 82, along: 32 },
  sensor: { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } },
};

describe('the picture', () => {
  const { joint } = judge({ sensor: { gap: 1 }, bracket });
  const drawing = pictures(joint).find(({ name }) => name === 'bracket')?.drawing;
  if (!drawing) throw new Error('no picture');
  const part = joint.bracket?.part;
  if (!part) throw new Error('no bracket');

  it('shows every cut of the blank and every bend line where it is', () => {
    const cut = drawing.shapes.filter((shape) => shape.kind !== 'text' && shape.pen === 'cut');
    expect(cut).toHaveLength(part.holes.length + 1);
    const dashed = drawing.shapes.flatMap((shape) => (shape.kind === 'line' && shape.pen === 'hidden' ? [shape] : []));
    expect(dashed.map(({ from, to }) => ({ from, to }))).toEqual(
      (part.bends ?? []).map(({ from, to }) => ({ from, to })),
    );
  });

  it('says angle, way, radius, gap and blank in words', () => {
    const words = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    // Foot 11.3 + 26, half a bend of 8.3095: the line at 41.455. Blank: 37.3 + 8.3095 + 40.1.
    for (const text of ['up 90\u00b0, R 4.00', 'gap 1.00', '41.455', '85.710', '78.60']) expect(words).toContain(text);
    expect(drawing.description).toMatch(/one bend/);
  });

  it('keeps within its box', () => {
    const { box } = drawing;
    for (const shape of drawing.shapes)
      if (shape.kind === 'path')
        for (const { x, y } of shape.loops.flat()) {
          expect(x >= box.xMin && x <= box.xMax && y >= box.yMin && y <= box.yMax).toBe(true);
        }
  });
});

describe('the sensor behind its ear', () => {
  const sensor = { ...bracket.sensor, behind: 40 };
  const drawn = (keys: object) => {
    const { joint } = judge({ sensor: { gap: 1 }, bracket: { ...bracket, sensor: keys } });
    const drawing = pictures(joint).find(({ name }) => name === 'bracket')?.drawing;
    if (!drawing) throw new Error('no picture');
    return drawing;
  };
  const bodies = (keys: object) =>
    drawn(keys).shapes.flatMap((shape) =>
      shape.kind === 'path' && shape.feature === 'bracket-sensor' ? shape.loops : [],
    );
  const words = (keys: object) => drawn(keys).shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));

  it('is as wide as its bore and as long as was told, from the seat of the ear on, with its length', () => {
    const [loop = []] = bodies(sensor);
    const span = (of: 'x' | 'y') => [Math.min(...loop.map((c) => c[of])), Math.max(...loop.map((c) => c[of]))] as const;
    const [[left, right], [low, high]] = [span('x'), span('y')];
    expect(right - left).toBeCloseTo(18.2, 9);
    expect(high - low).toBeCloseTo(40, 9);
    // The wheel's rim is the top of its box; a gap of 1 and a reach of 25 over it lies the ear.
    const rim = drawn(sensor).shapes.flatMap((shape) =>
      shape.kind === 'path' && shape.feature === 'wheel-outline' ? shape.loops.flat().map(({ y }) => y) : [],
    );
    expect(low - Math.max(...rim)).toBeCloseTo(26, 9);
    expect(words(sensor)).toContain('behind 40.00');
    const { box } = drawn(sensor);
    expect(high).toBeLessThan(box.yMax);
  });

  it('is not made up where nobody told it', () => {
    expect(bodies(bracket.sensor)).toEqual([]);
    expect(words(bracket.sensor).filter((word) => word.startsWith('behind'))).toEqual([]);
  });
});

describe('the lines of the report', () => {
  it('tell blank, bends and how to set the gap', () => {
    const { joint } = judge({ sensor: { gap: 1 }, bracket });
    const [blank, bends, gap] = bracketLines(joint, 'mm');
    expect(blank?.value).toMatch(/85\.71.*78\.6/);
    expect(bends?.value).toMatch(/up 90.* at 41\.4/);
    expect(gap?.note).toMatch(/slots, 4/);
    const flat = judge({
      sensor: { gap: 1 },
      bracket: { ...bracket, form: 'flat', bolts: { spacing: 60, from_axis: 100, along: 40 } },
    });
    expect(
      bracketLines(flat.joint, 'mm')
        .map(({ note }) => note)
        .join(),
    ).toMatch(/stand-offs 12/);
    expect(bracketLines(judge().joint, 'mm')).toEqual([]);
  });
});
