import { describe, expect, it } from 'vitest';
import type { Drawing, Shape } from '../../src/model/drawing.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const drawing = (shapes: readonly Shape[], more: Partial<Drawing> = {}): Drawing => ({
  id: 'demo',
  title: 'Demo',
  description: 'A demo.',
  box: { xMin: -10, yMin: -20, xMax: 30, yMax: 40 },
  shapes,
  ...more,
});

describe('writeSvg', () => {
  it('gives width and height in mm, and scales them without touching the drawing', () => {
    const [root] = parseXml(writeSvg(drawing([]), { scale: 0.5 }));
    expect(root?.attributes).toMatchObject({
      width: '20mm',
      height: '30mm',
      viewBox: '-10 -40 40 60',
      role: 'img',
    });
  });

  it('turns y over: a point that is up in the drawing is up on the page', () => {
    const [line] = parseXml(
      writeSvg(drawing([{ kind: 'line', pen: 'thin', from: { x: 1, y: 2 }, to: { x: 3, y: -4 } }])),
    ).filter((e) => e.tag === 'path');
    expect(line?.attributes.d).toBe('M1 -2L3 4');
  });

  it('writes a quarter turn counter-clockwise from +x to +y as true arcs that run up the page', () => {
    // By hand: from (5, 0) over (3.536, 3.536) to (0, 5); y is turned over; counter-clockwise is sweep flag 0 with y down.
    const arc: Shape = { kind: 'arc', pen: 'thin', centre: { x: 0, y: 0 }, r: 5, start: 0, end: 90 };
    const [path] = parseXml(writeSvg(drawing([arc]))).filter((e) => e.tag === 'path');
    expect(path?.attributes.d).toBe('M5 0A5 5 0 0 0 3.536 -3.536A5 5 0 0 0 0 -5');
  });

  it('writes a bulge of 1 as half a turn of half the chord', () => {
    // bulge = tan(sweep / 4); tan(45 degrees) = 1.
    const loop = [
      { x: -3, y: 0, bulge: 1 },
      { x: 3, y: 0, bulge: 0 },
    ];
    const [path] = parseXml(
      writeSvg(drawing([{ kind: 'path', pen: 'cut', fill: 'none', closed: true, loops: [loop] }])),
    ).filter((e) => e.tag === 'path');
    expect(path?.attributes.d).toBe('M-3 0A3 3 0 0 0 3 0Z');
  });

  it('escapes text and drops control characters', () => {
    const text: Shape = {
      kind: 'text',
      at: { x: 0, y: 0 },
      text: '<b>"a" & \u0000\u0007\u202e\'b\'\ud800',
      size: 3,
      align: 'start',
      angle: 0,
    };
    const out = writeSvg(drawing([text], { title: '</title><script>alert(1)</script>\u0001' }));
    expect(out).not.toContain('<script');
    const elements = parseXml(out);
    expect(elements.find((e) => e.tag === 'text')?.text).toBe('<b>"a" & \'b\'');
    expect(elements.find((e) => e.tag === 'title')?.text).toBe('</title><script>alert(1)</script>');
  });

  it('rounds to a thousandth, without minus zero and without exponents', () => {
    const out = writeSvg(
      drawing([{ kind: 'line', pen: 'thin', from: { x: -1e-9, y: 1e-9 }, to: { x: 1 / 3, y: 1e-7 } }]),
    );
    expect(parseXml(out).find((e) => e.tag === 'path')?.attributes.d).toBe('M0 0L0.333 0');
    expect(badNumbers(out)).toEqual([]);
  });

  it('starts every id with the id of the drawing, so that two drawings can share a page', () => {
    const circle: Shape = { kind: 'circle', pen: 'cut', fill: 'adapter', centre: { x: 0, y: 0 }, r: 5 };
    const ids = (id: string) => parseXml(writeSvg(drawing([circle], { id }))).flatMap((e) => e.attributes.id ?? []);
    const both = [...ids('one'), ...ids('two')];
    expect(both.length).toBe(8);
    expect(new Set(both).size).toBe(both.length);
  });

  it('is the same every time, and refuses numbers that are none', () => {
    const circle = (r: number): Drawing =>
      drawing([{ kind: 'circle', pen: 'cut', fill: 'wheel', centre: { x: 0, y: 0 }, r }]);
    expect(writeSvg(circle(4))).toBe(writeSvg(circle(4)));
    expect(() => writeSvg(circle(Number.NaN))).toThrow(/not a number/);
    expect(() => writeSvg(drawing([], { box: { xMin: 0, yMin: 0, xMax: 0, yMax: 5 } }))).toThrow(/empty box/);
  });

  it('leaves declaration and namespace out inside a page', () => {
    const inline = writeSvg(drawing([]), { standalone: false });
    expect(inline.startsWith('<svg id=')).toBe(true);
    expect(inline).not.toContain('http');
    expect(writeSvg(drawing([])).startsWith('<?xml version="1.0"')).toBe(true);
  });
});
