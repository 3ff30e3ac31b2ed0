import { describe, expect, it } from 'vitest';
import { faceView } from '../../src/drawing/face-view.ts';
import { textBox } from '../../src/drawing/text-size.ts';
import type { Drawing, Shape } from '../../src/model/drawing.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { adapter, adapterSpec, joint, pictures, ring, wheel } from '../report/fixture.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const byId = (id: string): Drawing => {
  const found = pictures.find((d) => d.id === id);
  if (!found) throw new Error(`no drawing ${id}`);
  return found;
};

type Circle = Extract<Shape, { kind: 'circle' }>;
const circles = (d: Drawing, feature?: string): Circle[] =>
  d.shapes.filter((s): s is Circle => s.kind === 'circle' && (feature === undefined || s.feature === feature));

describe('every picture of the demo joint', () => {
  it('comes in one order, each with its own id', () => {
    expect(pictures.map((d) => d.id)).toEqual(['demo-section', 'demo-driving-face', 'demo-driven-face', 'demo-wheel']);
  });

  it.each(pictures.map((d) => [d.id, d] as const))(
    '%s is well-formed SVG without bad numbers, inside its box',
    (_, d) => {
      const out = writeSvg(d);
      expect(badNumbers(out)).toEqual([]);
      expect(parseXml(out).length).toBeGreaterThan(20);
      for (const s of d.shapes) {
        if (s.kind !== 'text') continue;
        const b = textBox(s);
        expect(b.xMin).toBeGreaterThanOrEqual(d.box.xMin);
        expect(b.xMax).toBeLessThanOrEqual(d.box.xMax);
        expect(b.yMin).toBeGreaterThanOrEqual(d.box.yMin);
        expect(b.yMax).toBeLessThanOrEqual(d.box.yMax);
      }
    },
  );

  it.each(pictures.map((d) => [d.id, d] as const))('%s names only features that exist', (_, d) => {
    const known = new Set([
      ...adapter.features.map((f) => f.id),
      ...wheel.features.map((f) => f.id),
      ...joint.screws.map((g) => g.id),
      adapter.id,
      wheel.id,
      'driving-flange',
      'driven-flange',
      'index-mark',
    ]);
    for (const s of d.shapes) if (s.feature !== undefined) expect(known).toContain(s.feature);
  });

  it.each(pictures.map((d) => [d.id, d] as const))('%s has no two labels over each other', (_, d) => {
    const boxes = d.shapes.flatMap((s) => (s.kind === 'text' ? [{ text: s.text, ...textBox(s) }] : []));
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const apart = a.xMax <= b.xMin || b.xMax <= a.xMin || a.yMax <= b.yMin || b.yMax <= a.yMin;
        expect(apart, `${a.text} over ${b.text}`).toBe(true);
      }
    });
  });
});

describe('faceView', () => {
  it('labels hole groups, registers, bore and clocking', () => {
    const texts = byId('demo-driven-face').shapes.flatMap((s) => (s.kind === 'text' ? [s.text] : []));
    for (const label of [
      '6 x M10x1.5 on \u00d8101.50',
      '6 x \u00d811.0 on \u00d894.00',
      '\u00d857.00 H7',
      '\u00d830.00 bore',
      '30.00\u00b0',
      'clocking 30.00\u00b0: driven pattern against driving',
      'sizes in mm',
      'seen from the driven side',
    ])
      expect(texts).toContain(label);
  });

  it('draws counterbores solid where they open and hidden from the other side', () => {
    const pens = (id: string, r: number) =>
      new Set(
        circles(byId(id), 'driving-screws')
          .filter((c) => Math.abs(c.r - r) < 1e-9)
          .map((c) => c.pen),
      );
    expect(pens('demo-driven-face', 9)).toEqual(new Set(['outline']));
    expect(pens('demo-driving-face', 9)).toEqual(new Set(['hidden']));
    expect(pens('demo-driving-face', 5.5)).toEqual(new Set(['outline']));
  });

  it('shows blind tapped holes hidden from behind', () => {
    const behind = circles(byId('demo-driving-face'), 'driven-screws').filter(
      (c) => c.r > 1 && c.pen !== 'centre' && c.pen !== 'dimension',
    );
    expect(behind.length).toBe(12);
    expect(behind.every((c) => c.pen === 'hidden')).toBe(true);
  });

  it('mirrors an uneven pattern when seen from the driving side', () => {
    // Three holes at 0, 50 and 200 degrees; turned over about the y axis they stand at 180, 130 and -20 degrees.
    const positions = [0, 50, 200].map((a) => ({
      x: 40 * Math.cos((a * Math.PI) / 180),
      y: 40 * Math.sin((a * Math.PI) / 180),
    }));
    const [group] = adapterSpec.groups;
    if (!group) throw new Error('the demo adapter has no holes');
    const adapter = buildAdapter({ ...adapterSpec, groups: [{ ...group, positions }] });
    const seen = (from: 'driving' | 'driven') =>
      circles(faceView({ id: 'x', adapter, from, clocking: 0, mate: null, units: 'mm' }), group.id)
        .filter((c) => Math.abs(c.r - 5.5) < 1e-9)
        .map((c) => Math.round((Math.atan2(c.centre.y, c.centre.x) * 180) / Math.PI));
    expect(seen('driven').sort((a, b) => a - b)).toEqual([-160, 0, 50]);
    expect(seen('driving').sort((a, b) => a - b)).toEqual([-20, 130, 180]);
  });

  it('cuts the rim at the flats with true arcs', () => {
    const adapter = buildAdapter({ ...adapterSpec, flats: { across: 120, angle: 90 } });
    const d = faceView({ id: 'x', adapter, from: 'driven', clocking: 30, mate: 120, units: 'in' });
    const rim = d.shapes.find(
      (s) =>
        s.kind === 'path' && s.pen === 'outline' && s.loops[0]?.some((p) => p.bulge > 0 && Math.hypot(p.x, p.y) > 63.5),
    );
    if (rim?.kind !== 'path') throw new Error('no rim with flats');
    const corners = rim.loops[0] ?? [];
    expect(corners.length).toBe(4);
    for (const p of corners) {
      expect(Math.abs(p.y)).toBeCloseTo(60, 9);
      expect(Math.hypot(p.x, p.y)).toBeCloseTo(64, 9);
    }
    const texts = d.shapes.flatMap((s) => (s.kind === 'text' ? [s.text] : []));
    expect(texts).toContain('120.00 [4.7244 in] across flats');
  });

  it('labels any count of holes without one label over another', () => {
    for (const [count, circle, turn] of [
      [3, 70, 7],
      [4, 80, 45],
      [8, 108, 22.5],
      [10, 112, 90],
    ] as const) {
      const groups = adapterSpec.groups.map((g) => ({ ...g, positions: ring(count, circle, turn) }));
      const d = faceView({
        id: 'x',
        adapter: buildAdapter({ ...adapterSpec, groups }),
        from: 'driven',
        clocking: 200,
        mate: 90,
        units: 'mm',
      });
      const boxes = d.shapes.flatMap((s) => (s.kind === 'text' ? [textBox(s)] : []));
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1))
          expect(a.xMax <= b.xMin || b.xMax <= a.xMin || a.yMax <= b.yMin || b.yMax <= a.yMin).toBe(true);
      });
    }
  });
});

describe('wheelView', () => {
  it('draws the outline with the very corners of the part, true arcs included', () => {
    const shape = byId('demo-wheel').shapes.find((s) => s.kind === 'path' && s.feature === wheel.outside.feature);
    if (shape?.kind !== 'path' || wheel.outside.kind !== 'path') throw new Error('no outline');
    expect(shape.loops[0]).toEqual(wheel.outside.vertices);
    const arcs = writeSvg(byId('demo-wheel')).match(/A\d/g)?.length ?? 0;
    expect(arcs).toBeGreaterThanOrEqual(58 * 2);
  });

  it('says how many teeth there are and where tooth 1 is', () => {
    const texts = byId('demo-wheel').shapes.flatMap((s) => (s.kind === 'text' ? [s.text] : []));
    expect(texts).toContain('tooth 1');
    expect(texts).toContain('60 - 2 teeth: 60 positions, 2 left out');
    expect(texts).toContain('6 x \u00d85.50 on \u00d8140.00');
    expect(texts).toContain('1.00 air gap');
  });
});
