import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rayIntervals, roundSection } from '../../src/drawing/section-body.ts';
import { drillingBands } from '../../src/drawing/section-region.ts';
import { sectionView } from '../../src/drawing/section-view.ts';
import { overlap, textBox } from '../../src/drawing/text-size.ts';
import type { Shape } from '../../src/model/drawing.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { toDraw, wheel } from '../report/fixture.ts';
import { badNumbers } from './svg-help.ts';

const style = { fill: 'adapter', pen: 'cut', feature: 'adapter', brokenAt: null } as const;
const cylinder = (r: number, h: number) => [
  { z: 0, r },
  { z: h, r },
];

function loopsOf(shapes: readonly Shape[], feature = 'adapter'): readonly (readonly { x: number; y: number }[])[] {
  const path = shapes.find((s) => s.kind === 'path' && s.feature === feature && s.closed);
  if (path?.kind !== 'path') throw new Error('no section');
  return path.loops;
}

/** Signed area by the shoelace formula; inner loops run clockwise and count negative. */
const area = (loops: readonly (readonly { x: number; y: number }[])[]): number =>
  loops.reduce(
    (sum, loop) =>
      sum +
      loop.reduce((s, p, i) => {
        const q = loop[(i + 1) % loop.length] ?? p;
        return s + (p.x * q.y - q.x * p.y) / 2;
      }, 0),
    0,
  );

describe('roundSection', () => {
  it('cuts a plain disc to one rectangle', () => {
    const loops = loopsOf(roundSection({ outer: cylinder(40, 10), drillings: [] }, { right: 0, left: 180 }, style));
    expect(loops.length).toBe(1);
    expect(loops[0]?.length).toBe(4);
    expect(area(loops)).toBeCloseTo(800, 9);
  });

  it('leaves out a bore, a counterbored hole on the right and nothing on the left', () => {
    // Right: through hole 10 wide, pocket 16 wide and 4 deep. By hand: 80 x 10 - 20 x 10 - (10 x 6 + 16 x 4) = 476 mm2.
    const hole = {
      x: 25,
      y: 0,
      profile: [
        { z: 0, r: 5 },
        { z: 6, r: 5 },
        { z: 6, r: 8 },
        { z: 10, r: 8 },
      ],
    };
    const bore = { x: 0, y: 0, profile: cylinder(10, 10) };
    const loops = loopsOf(
      roundSection({ outer: cylinder(40, 10), drillings: [bore, hole] }, { right: 0, left: 180 }, style),
    );
    expect(area(loops)).toBeCloseTo(476, 9);
    expect(loops.length).toBe(3);
  });

  it('shows the chord of a hole beside the cut', () => {
    // A hole of radius 5 whose axis stands 3 mm beside the plane: half chord 4 (3-4-5 triangle).
    const [band] = drillingBands({ x: 20, y: 3, profile: cylinder(5, 10) }, 0);
    expect(band?.left[0]).toBeCloseTo(16, 9);
    expect(band?.right[0]).toBeCloseTo(24, 9);
    expect(drillingBands({ x: 20, y: 5.1, profile: cylinder(5, 10) }, 0)).toEqual([]);
    expect(drillingBands({ x: -20, y: 0, profile: cylinder(5, 10) }, 0)).toEqual([]);
  });

  it('reaches only to the flats where the cut crosses them squarely', () => {
    const body = {
      outer: cylinder(40, 10),
      drillings: [],
      flats: { feature: 'flats', across: 70, angle: 0 },
    };
    const loops = loopsOf(roundSection(body, { right: 0, left: 90 }, style));
    const xs = loops.flat().map((p) => p.x);
    expect(Math.max(...xs)).toBeCloseTo(35, 9);
    expect(Math.min(...xs)).toBeCloseTo(-40, 9);
  });

  it('agrees with counting: a point of the cut is material where it lies in the outside and in no hole', () => {
    const size = fc.double({ min: 0.5, max: 12, noNaN: true });
    const place = fc.double({ min: -38, max: 38, noNaN: true });
    const hole = fc.record({
      x: place,
      y: place,
      r: size,
      wide: size,
      step: fc.double({ min: 1, max: 19, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(hole, { maxLength: 5 }), fc.double({ min: 0, max: 360, noNaN: true }), (holes, angle) => {
        const outer = [
          { z: 0, r: 36 },
          { z: 4, r: 40 },
          { z: 16, r: 40 },
          { z: 16, r: 30 },
          { z: 20, r: 30 },
        ];
        const drillings = holes.map((h) => ({
          x: h.x,
          y: h.y,
          profile: [
            { z: 0, r: h.r },
            { z: h.step, r: h.r },
            { z: h.step, r: h.wide },
            { z: 20, r: h.wide },
          ],
        }));
        const loops = loopsOf(roundSection({ outer, drillings }, { right: angle, left: angle + 180 }, style));
        const a = (angle * Math.PI) / 180;
        for (let i = 0; i < 40; i++) {
          const x = -41 + (82 * (i + 0.377)) / 40;
          const z = (20 * ((i * 7) % 40) + 4.13) / 40;
          const rim = z < 4 ? 36 + z : z < 16 ? 40 : 30;
          const clear = (d: number): boolean => Math.abs(d) > 1e-3;
          // The half-planes stop at the axis: a hole that straddles it is cut by both.
          const px = x * Math.cos(a);
          const py = x * Math.sin(a);
          const gaps = holes.map((h) => Math.hypot(px - h.x, py - h.y) - (z < h.step ? h.r : h.wide));
          if (!clear(Math.abs(x) - rim) || !gaps.every(clear)) continue;
          const solid = Math.abs(x) < rim && gaps.every((g) => g > 0);
          let crossings = 0;
          for (const loop of loops)
            loop.forEach((p, k) => {
              const q = loop[(k + 1) % loop.length] ?? p;
              if (p.y > z !== q.y > z && p.x + ((z - p.y) / (q.y - p.y)) * (q.x - p.x) > x) crossings++;
            });
          expect(crossings % 2 === 1).toBe(solid);
        }
      }),
      { numRuns: 150, seed: 20 },
    );
  });
});

describe('rayIntervals', () => {
  it('finds web and hole of the wheel along a screw hole', () => {
    // Screw hole at 15 degrees on a 140 circle, 5.5 wide; bore 116. A ray through it: 58 to 67.25, then 72.75 outwards.
    const spans = rayIntervals([wheel.outside, ...wheel.holes], 15);
    expect(spans.length).toBe(2);
    expect(spans[0]?.[0]).toBeCloseTo(58, 6);
    expect(spans[0]?.[1]).toBeCloseTo(67.25, 6);
    expect(spans[1]?.[0]).toBeCloseTo(72.75, 6);
  });

  it('reaches the tip over a tooth and the root over a valley', () => {
    const end = (angle: number): number => rayIntervals([wheel.outside, ...wheel.holes], angle).at(-1)?.[1] ?? 0;
    expect(end(0.0001)).toBeCloseTo(88, 6);
    expect(end(3)).toBeCloseTo(83, 6);
  });
});

describe('sectionView', () => {
  const d = sectionView(toDraw, 'demo');
  const texts = d.shapes.flatMap((s) => (s.kind === 'text' ? [s.text] : []));

  it('says which holes it is cut through, and the thickness', () => {
    expect(texts).toContain(
      'left half: cut through a driven hole at 150.00\u00b0; right half: cut through a driving hole at 0.00\u00b0; sizes in mm',
    );
    expect(texts).toContain('26.00');
    expect(texts).toContain('z = 0');
    expect(texts).toContain('z = 26.00');
    expect(texts).toContain('thickness not known');
  });

  it('states the clearances of both registers', () => {
    expect(texts).toContain('clearance 0.010 to 0.059');
    expect(texts).toContain('from 0.010 tight to 0.049 loose');
  });

  it('has the cut area that the profiles give', () => {
    // By hand, half by half, in mm2 (z from -4 to 26).
    // Rim 64 x 26 less two 1 x 1 edge chamfers: 1663. Spigot 30 x 4, foot groove 1.5 x 0.5, lead chamfer 1 x 1 / 2: 118.75.
    // Bore from -4 to 22, 15 wide, edge break 0.5 x 0.5 / 2 at the spigot's end: 390.125. Recess 28.5 x 4, mouth 0.5 x 0.5 / 2: 114.125.
    const half = 64 * 26 - 2 * 0.5 + (30 * 4 - 1.5 * 0.5 - 0.5) - (15 * 26 + 0.125) - (28.5 * 4 + 0.125);
    // Right: hole 11 x 26, pocket 18 wide, 11 deep. Left: drill 8.5 x 20, mouth chamfer 0.75 x 0.75, point of 118 degrees.
    const right = 11 * 15 + 18 * 11;
    const left = 8.5 * 20 + 0.75 * 0.75 + (4.25 * 4.25) / Math.tan((59 * Math.PI) / 180);
    expect(area(loopsOf(d.shapes))).toBeCloseTo(2 * half - right - left, 6);
  });

  it('draws one screw of each set, heads where they sit', () => {
    const heads = d.shapes.filter((s) => s.kind === 'path' && s.fill === 'screw' && s.feature === 'driving-screws');
    const ys = heads.flatMap((s) => (s.kind === 'path' ? s.loops.flat().map((p) => p.y) : []));
    expect(Math.max(...ys)).toBeCloseTo(25, 9);
    expect(Math.min(...ys)).toBeCloseTo(-10, 9);
    expect(d.shapes.some((s) => s.feature === 'driven-screws' && s.kind === 'path')).toBe(true);
  });

  it('keeps labels apart and numbers whole with long names, inches, bolts and nothing known of the flanges', () => {
    const long = 'an uncommonly long name of a flange that nobody wanted to shorten';
    const bolts = toDraw.screws.map((g) => ({
      ...g,
      label: long,
      length: null,
      grip: Number.NaN,
      washer: { outside: 20, thickness: 2 },
      nut: { height: 8.4, acrossFlats: 16 },
    }));
    const blank = { ...toDraw.driving, name: long, thickness: null, register: null, bore: null, holes: [] };
    for (const units of ['mm', 'in'] as const) {
      const odd = sectionView(
        { ...toDraw, units, screws: bolts, driving: blank, driven: { ...blank, outside: 60 } },
        'odd',
      );
      expect(badNumbers(writeSvg(odd))).toEqual([]);
      const boxes = odd.shapes.flatMap((s) => (s.kind === 'text' ? [{ text: s.text, ...textBox(s) }] : []));
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) expect(overlap(a, b), `${a.text} over ${b.text}`).toBe(false);
      });
    }
  });

  it('breaks the edge of a flange of unknown thickness, and only there', () => {
    // A straight far edge has two corners at its height; the long-break line adds zigzags that reach 2 mm past it.
    const driven = loopsOf(d.shapes, 'driven-flange')
      .flat()
      .map((p) => p.y);
    const driving = loopsOf(d.shapes, 'driving-flange')
      .flat()
      .map((p) => p.y);
    expect(Math.max(...driven)).toBeCloseTo(26 + 12.2 + 2, 9);
    expect(Math.min(...driving)).toBeCloseTo(-12, 9);
  });
});
