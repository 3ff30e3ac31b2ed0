/** The chain of shifts, against closed forms of the sums it throws. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Link, meanSquareOf, scatterOf, stackOf } from '../../src/formulas/chain.ts';
import { chanceFrom } from '../../src/formulas/chance.ts';

const link = (given: Partial<Link> & Pick<Link, 'most'>): Link => ({
  id: 'link',
  what: 'a link',
  least: given.most,
  angle: null,
  doubt: 0,
  source: '',
  memory: false,
  cure: '',
  ...given,
});

const size = fc.double({ min: 0, max: 1, noNaN: true });
const anyLink = fc
  .record({
    a: size,
    b: size,
    angle: fc.option(fc.double({ min: 0, max: 360, noNaN: true }), { nil: null }),
    doubt: fc.double({ min: 0, max: 0.2, noNaN: true }),
  })
  .map(({ a, b, angle, doubt }) =>
    link({
      least: angle === null ? Math.min(a, b) : Math.max(a, b),
      most: Math.max(a, b),
      angle,
      doubt: angle === null ? 0 : doubt,
    }),
  );
const anyChain = fc.array(anyLink, { minLength: 1, maxLength: 6 });

describe('worst and likely', () => {
  it('adds unknown directions plainly, and as squares: 3 and 4 make 7 and 5', () => {
    expect(stackOf([link({ most: 3 }), link({ most: 4 })])).toMatchObject({ worst: 7, likely: 5 });
  });

  it('adds known directions as arrows: 3 towards 0 and 4 towards 90 degrees make 5 both ways', () => {
    const { worst, likely, known } = stackOf([link({ most: 3, angle: 0 }), link({ most: 4, angle: 90 })]);
    expect(worst).toBeCloseTo(5, 12);
    expect(likely).toBeCloseTo(5, 12);
    expect(known.x).toBeCloseTo(3, 12);
    expect(known.y).toBeCloseTo(4, 12);
  });

  it('lets equal run-outs that stand opposite cancel, but for their doubt', () => {
    const pair = [link({ most: 0.02, angle: 30, doubt: 0.005 }), link({ most: 0.02, angle: 210, doubt: 0.005 })];
    expect(stackOf(pair).worst).toBeCloseTo(0.01, 12);
    expect(stackOf(pair).likely).toBeCloseTo(0.005 * Math.SQRT2, 12);
  });

  it('never likely more than worst, and never less than any one loose link', () => {
    fc.assert(
      fc.property(anyChain, (chain) => {
        const { worst, likely } = stackOf(chain);
        expect(likely).toBeLessThanOrEqual(worst + 1e-12);
        for (const one of chain) if (one.angle === null) expect(likely).toBeGreaterThanOrEqual(one.most - 1e-12);
      }),
    );
  });
});

describe('throws', () => {
  it('never goes beyond the worst case', () => {
    fc.assert(
      fc.property(anyChain, fc.integer(), (chain, seed) => {
        const sizes = scatterOf(chain, seed, 500).sizes();
        expect(sizes[499]).toBeLessThanOrEqual(stackOf(chain).worst + 1e-12);
      }),
    );
  });

  it('comes to the mean square of the closed form, to five standard errors', () => {
    fc.assert(
      fc.property(anyChain, fc.integer(), (chain, seed) => {
        const squares = [...scatterOf(chain, seed, 4000).sizes()].map((s) => s * s);
        const mean = squares.reduce((a, b) => a + b, 0) / squares.length;
        const spread = Math.sqrt(squares.reduce((sum, s) => sum + (s - mean) ** 2, 0) / squares.length ** 2);
        expect(Math.abs(mean - meanSquareOf(chain))).toBeLessThan(5 * spread + 1e-12);
      }),
    );
  });

  it.each([0.3, 0.5, 0.7, 0.9])('two arrows of 0.6 and 0.4: chance of no more than %s by the cosine rule', (r) => {
    // The angle between them is even, so the sum stays within r for the angles beyond acos((r^2 - a^2 - b^2)/(2ab)).
    const [a, b] = [0.6, 0.4];
    const closed = 1 - Math.acos((r * r - a * a - b * b) / (2 * a * b)) / Math.PI;
    const scatter = scatterOf([link({ most: a }), link({ most: b })], 7, 40_000);
    expect(Math.abs(scatter.chanceOf(r) - closed)).toBeLessThan(5 * Math.sqrt((closed * (1 - closed)) / 40_000));
    expect(scatter.chanceOf(scatter.within(closed))).toBeGreaterThanOrEqual(closed);
  });

  it('says of every share what the sorted sizes say', () => {
    fc.assert(
      fc.property(anyChain, fc.integer(), fc.double({ min: 0, max: 1, noNaN: true }), (chain, seed, share) => {
        const scatter = scatterOf(chain, seed, 300);
        const sizes = scatter.sizes();
        expect(scatter.within(share)).toBe(sizes[Math.max(1, Math.ceil(share * 300)) - 1]);
        expect(scatter.chanceOf(scatter.within(share))).toBe(
          sizes.filter((size) => size <= scatter.within(share)).length / 300,
        );
        expect(scatter.sizes()).toEqual(sizes);
      }),
    );
  });

  it('gives the same answer for the same seed', () => {
    const chain = [link({ most: 0.2, least: 0 }), link({ most: 0.1, angle: 40, doubt: 0.02 })];
    expect(scatterOf(chain, 3).sizes()).toEqual(scatterOf(chain, 3).sizes());
    expect(scatterOf(chain, 3).sizes()).not.toEqual(scatterOf(chain, 4).sizes());
  });

  it('knows an empty chain', () => {
    expect(stackOf([])).toEqual({ worst: 0, likely: 0, known: { x: 0, y: 0 } });
    expect(scatterOf([]).chanceOf(0)).toBe(1);
  });
});

describe('the stream of chance', () => {
  it('fills 64 boxes evenly (chi squared) and hangs on nothing before it (lag one)', () => {
    const throws = 64_000;
    const next = chanceFrom(12345);
    const numbers = Array.from({ length: throws }, next);
    const boxes = new Array<number>(64).fill(0);
    for (const n of numbers) boxes[Math.floor(64 * n)] = (boxes[Math.floor(64 * n)] ?? 0) + 1;
    const chi = boxes.reduce((sum, count) => sum + (count - throws / 64) ** 2 / (throws / 64), 0);
    // 63 degrees of freedom: mean 63, standard deviation 11.2 (chi-squared distribution).
    expect(chi).toBeGreaterThan(63 - 4 * 11.2);
    expect(chi).toBeLessThan(63 + 4 * 11.2);
    let product = 0;
    for (let i = 1; i < throws; i++) product += ((numbers[i] as number) - 0.5) * ((numbers[i - 1] as number) - 0.5);
    expect(Math.abs(product / throws) * 12).toBeLessThan(5 / Math.sqrt(throws));
  });
});
