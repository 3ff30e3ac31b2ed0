/** The picture of the signal: it shows what it was told, and no words lie over other words. */
import { describe, expect, it } from 'vitest';
import { niceAbove } from '../../src/drawing/plot-panel.ts';
import { timeText } from '../../src/drawing/signal-view.ts';
import { overlap, textBox } from '../../src/drawing/text-size.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { pictures } from '../../src/products/pictures.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { judge, type Patch } from '../validate/help.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const drawn = (...patches: readonly Patch[]): Drawing => {
  const found = pictures(judge(...patches).joint).find(({ name }) => name === 'signal');
  if (!found) throw new Error('no picture of the signal');
  return found.drawing;
};

const textsOf = (drawing: Drawing) =>
  drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [{ words: shape.text, box: textBox(shape) }] : []));

const cases: readonly (readonly [string, Patch])[] = [
  ['a differential Hall', {}],
  ['a coil with two teeth missing', { sensor: { kind: 'coil' }, wheel: { missing: 2 } }],
  ['few teeth', { wheel: { teeth: 4 }, sensor: { kind: 'hall', gap: '0.5 mm' } }],
  ['many teeth', { wheel: { teeth: 180, height: '3 mm', root_radius: 0.3 }, sensor: { kind: 'hall', gap: '0.5 mm' } }],
  ['a wheel that runs out badly', { wheel: { set_true: '1 mm' }, sensor: { kind: 'coil', gap: '0.6 mm' } }],
  ['a slow shaft', { duty: { speed: '3 rpm' } }],
];

describe.each(cases)('%s', (_, patch) => {
  const drawing = drawn(patch);

  it('is written as sound SVG', () => {
    const svg = writeSvg(drawing);
    expect(badNumbers(svg.replace(/<(title|desc|text)[^>]*>[^<]*/g, ''))).toEqual([]);
    expect(parseXml(svg).length).toBeGreaterThan(40);
    expect(svg.length).toBeLessThan(120_000);
  });

  it('has no words over words, and all of them on the sheet', () => {
    const texts = textsOf(drawing);
    texts.forEach((a, i) => {
      expect(a.box.xMin).toBeGreaterThanOrEqual(drawing.box.xMin);
      expect(a.box.xMax).toBeLessThanOrEqual(drawing.box.xMax);
      const over = texts.slice(i + 1).filter((b) => overlap(a.box, b.box));
      expect(over.map((b) => `${a.words} / ${b.words}`)).toEqual([]);
    });
  });
});

it('bars: one for each tooth, and a word where teeth are missing', () => {
  const bars = (drawing: Drawing) =>
    drawing.shapes.filter((shape) => shape.kind === 'path' && shape.fill === 'adapter').length;
  expect(bars(drawn())).toBe(60);
  const missing = drawn({ wheel: { missing: 2 } });
  expect(bars(missing)).toBe(57);
  expect(textsOf(missing).map(({ words }) => words)).toContain('gap');
});

it('is left out where nobody knows how the wheel is read', () => {
  const names = (patch: Patch) => pictures(judge(patch).joint).map(({ name }) => name);
  expect(names({ sensor: undefined })).not.toContain('signal');
  expect(names({ wheel: undefined, sensor: undefined })).not.toContain('signal');
});

it('times: 6 degrees at 1000 rpm are a thousandth of a second', () => {
  expect(timeText(6, 1000)).toBe('1 ms');
  expect(timeText(6, 4000)).toBe('250 \u00b5s');
});

it('round numbers above', () => {
  expect([0.011, 0.3, 1, 4.2, 70].map(niceAbove)).toEqual([0.02, 0.5, 1, 5, 100]);
});
