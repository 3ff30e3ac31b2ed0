/** The order chart: nothing overlaps, and its lines are where the sums say. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type OrderChartInput, orderChart } from '../../src/drawing/order-chart.ts';
import { overlap, type TextShape, textBox } from '../../src/drawing/text-size.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { pictures } from '../../src/products/pictures.ts';
import { judge } from '../validate/help.ts';

const usual: OrderChartInput = {
  id: 'orders',
  orders: [
    { name: 'once a turn: balance, run-out', perTurn: 1 },
    { name: 'twice a turn: joints at an angle', perTurn: 2 },
  ],
  levels: [{ name: 'bending of the shaft', frequency: 100 }],
  speeds: [{ name: 'highest', rpm: 4000 }],
  bands: [{ name: 'half critical: not for long', from: 2760, to: 3240 }],
};

const texts = ({ shapes }: Drawing) => shapes.filter((shape): shape is TextShape => shape.kind === 'text');

function expectApart(drawing: Drawing): void {
  const all = texts(drawing);
  all.forEach((a, i) => {
    for (const b of all.slice(i + 1))
      expect(overlap(textBox(a), textBox(b)), `"${a.text}" lies over "${b.text}"`).toBe(false);
  });
}

describe('order chart', () => {
  it('says where the orders meet the first level', () => {
    // 100 Hz: once a turn at 6000 rpm, which is off the chart; twice a turn at 3000.
    const said = texts(orderChart(usual)).map(({ text }) => text);
    expect(said).toContain('meets the bending of the shaft at 3000 rpm');
    expect(said).toContain('100.0 Hz, once a turn at 6000 rpm');
    expect(said).not.toContain('meets the bending of the shaft at 6000 rpm');
  });

  it('marks a meeting where both lines are', () => {
    const { shapes } = orderChart(usual);
    const circles = shapes.filter((shape) => shape.kind === 'circle' && shape.fill === 'screw');
    expect(circles).toHaveLength(1);
    const level = shapes.find((shape) => shape.kind === 'line' && shape.pen === 'hidden');
    const [circle] = circles;
    if (circle?.kind !== 'circle' || level?.kind !== 'line') throw new Error('no meeting is drawn');
    expect(circle.centre.y).toBeCloseTo(level.from.y, 9);
  });

  it('keeps its words apart, whatever it shows', () => {
    const input = fc.record({
      id: fc.constant('orders'),
      orders: fc.array(
        fc.record({
          name: fc.constantFrom(...usual.orders.map(({ name }) => name), 'engine firing, engine 0.7 to 1', 'teeth'),
          perTurn: fc.double({ min: 0.1, max: 60, noNaN: true }),
        }),
        { minLength: 1, maxLength: 7 },
      ),
      levels: fc.array(
        fc.record({
          name: fc.constant('bending of the shaft'),
          frequency: fc.double({ min: 10, max: 600, noNaN: true }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      speeds: fc.array(
        fc.record({
          name: fc.constantFrom('cruise', 'highest'),
          rpm: fc.double({ min: 300, max: 12_000, noNaN: true }),
        }),
        { minLength: 1, maxLength: 2 },
      ),
      bands: fc.constant(usual.bands),
    });
    fc.assert(
      fc.property(input, (chart) => expectApart(orderChart(chart))),
      { numRuns: 40 },
    );
  });

  it('is a picture of a job with a tube, and of no other', () => {
    const shaft = {
      shaft: {
        tube: { outside: 76.2, wall: 2.11, length: 1300 },
        cruise: 2000,
        engine: { cylinders: 6, gears: [1, 0.7] },
      },
    };
    const picture = pictures(judge(shaft).joint).find(({ name }) => name === 'orders');
    if (!picture) throw new Error('no order chart');
    expectApart(picture.drawing);
    expect(pictures(judge().joint).map(({ name }) => name)).not.toContain('orders');
  });
});
