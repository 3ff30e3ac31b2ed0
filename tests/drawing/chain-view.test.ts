/** The picture of a centring chain: parts that add up, bars to scale, words that keep apart. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChainViewInput } from '../../src/drawing/chain-sheet.ts';
import { barHigh } from '../../src/drawing/chain-sheet.ts';
import { chainView } from '../../src/drawing/chain-view.ts';
import { type Link, stackOf } from '../../src/formulas/chain.ts';
import { sharesOf } from '../../src/formulas/chain-shares.ts';
import type { Shape } from '../../src/model/drawing.ts';
import { chainsToDraw } from '../../src/products/chain-to-draw.ts';
import { pictures } from '../../src/products/pictures.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { findingOf, judge } from '../validate/help.ts';
import { expectApart, pathBox, texts } from './shape-help.ts';
import { badNumbers, parseXml } from './svg-help.ts';

const link = (most: number, angle: number | null = null, doubt = 0, usual?: number): Link => ({
  id: `${most}`,
  what: `link ${most}`,
  least: 0,
  most,
  angle,
  doubt,
  source: '',
  memory: false,
  cure: '',
  ...(usual === undefined ? {} : { usual }),
});

const row = (worst: number, likely = 0, number = 1) => ({
  what: `link ${worst}`,
  number,
  said: worst.toFixed(3),
  worst,
  likely,
  read: null,
  feature: 'body',
});

const input = (rows: ChainViewInput['rows'], limit: number | null = 0.1): ChainViewInput => ({
  id: 'chain',
  title: 'How far it can be off',
  from: 'one axis',
  to: 'another',
  rows,
  worst: rows.reduce((sum, { worst }) => sum + worst, 0),
  likely: rows.reduce((sum, { likely }) => sum + likely, 0),
  limit,
  verdict: 'pass',
  start: { number: rows[0]?.number ?? 1, cure: 'a closer fit' },
  notGiven: [],
  feature: 'driven-register',
  unit: 'mm',
  sized: (mm) => `${mm.toFixed(3)} mm`,
});

type Bar = Extract<Shape, { kind: 'path' }>;
const isBar = (shape: Shape): shape is Bar => shape.kind === 'path' && shape.closed;
/** Bars of the links' worst parts from the top down, without the likely ones, the sum and the legend. */
const stairs = (shapes: readonly Shape[]) =>
  shapes
    .filter(isBar)
    .filter(({ fill }) => fill === 'screw' || fill === 'doubtful' || fill === 'void')
    .map(pathBox)
    .filter(({ yMin, yMax }) => Math.abs(yMax - yMin - barHigh) < 1e-9);

describe('parts of a chain', () => {
  it('add up to both sums: arrows of 3 and 4 at right angles, a doubt of 1, a loose link of 2', () => {
    // The known sum is 5; 3 lies along it by 3 x 3/5, 4 by 4 x 4/5. Worst 5 + 1 + 2, likely the root of 25 + 1 + 4.
    const shares = sharesOf([link(3, 0, 1), link(4, 90), link(2)]);
    const near = (values: number[], expected: number[]) =>
      values.forEach((value, i) => {
        expect(value).toBeCloseTo(expected[i] as number, 12);
      });
    near(
      shares.map(({ worst }) => worst),
      [1.8 + 1, 3.2, 2],
    );
    near(
      shares.map(({ likely }) => likely),
      [10, 16, 4].map((square) => square / Math.sqrt(30)),
    );
  });

  it('say that an arrow pulls back: 5 one way and 2 the other leave 3', () => {
    const [five, two] = sharesOf([link(5, 0), link(2, 180)]);
    expect(five?.worst).toBeCloseTo(5, 12);
    expect(two?.worst).toBeCloseTo(-2, 12);
  });

  it('add up whatever the links are', () => {
    const any = fc.record({
      most: fc.double({ min: 0, max: 9, noNaN: true }),
      angle: fc.option(fc.double({ min: 0, max: 360, noNaN: true })),
      doubt: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 8 }), (list) => {
        const links = list.map(({ most, angle, doubt }) => link(most, angle, doubt));
        const stack = stackOf(links);
        const shares = sharesOf(links);
        expect(shares.reduce((sum, { worst }) => sum + worst, 0)).toBeCloseTo(stack.worst, 9);
        expect(shares.reduce((sum, { likely }) => sum + likely, 0)).toBeCloseTo(stack.likely, 6);
      }),
    );
  });
});

describe('the picture of a chain', () => {
  it('draws each bar to scale from where the last one ends, and the number of its place in the chain', () => {
    // 0.03 + 0.05 + 0.01 against 0.1: 99 mm of sheet stand for 0.1 mm.
    const { shapes } = chainView(input([row(0.05, 0, 2), row(0.03, 0, 1), row(0.01, 0, 3)]));
    const bars = stairs(shapes);
    expect(bars).toHaveLength(3);
    const ends = [0, 0.05, 0.08, 0.09].map((sum) => sum * 990);
    bars.forEach(({ xMin, xMax }, i) => {
      expect(xMin).toBeCloseTo(ends[i] as number, 9);
      expect(xMax).toBeCloseTo(ends[i + 1] as number, 9);
    });
    const limits = shapes.filter((s) => s.kind === 'line' && s.pen === 'mark' && Math.abs(s.from.x - 99) < 1e-9);
    expect(limits).toHaveLength(4);
    expect(texts(shapes)).toContain('0.010 mm to spare');
    expect(texts(shapes).join(' ')).toMatch(/Start with 2: link 0\.05 gives 56\u00a0% of the\s+worst case/);
  });

  it('starts where it is told to, not at the widest, and says so where nothing is left to do', () => {
    const chain = { ...input([row(0.05, 0, 2), row(0.03, 0, 1)]), start: { number: 1, cure: 'a truer flange' } };
    // 0.03 of 0.08.
    const words = texts(chainView(chain).shapes).join(' ');
    expect(words).toMatch(
      /Start with 1: link 0\.03 gives 38\u00a0% of the\s+worst case\. What helps: a truer flange\./,
    );
    const done = texts(chainView({ ...chain, start: null }).shapes).join(' ');
    expect(done).toContain('Nothing is left to do about any of these links.');
    expect(done).not.toContain('What helps');
  });

  it('draws a link that pulls back backwards', () => {
    const [first, last] = stairs(chainView(input([row(0.06), row(-0.02)], 0.04)).shapes);
    // 0.06 is the farthest that any bar reaches.
    expect(first?.xMax).toBeCloseTo(99, 9);
    expect(last?.xMax).toBeCloseTo(99, 9);
    expect(last?.xMin).toBeCloseTo((99 * 4) / 6, 9);
  });

  it('says so where the limit lies far off the sheet, and where none is known', () => {
    expect(texts(chainView(input([row(0.01)], 0.05)).shapes)).toContain('the limit lies 5.0 times as far');
    expect(texts(chainView(input([row(0.01)], null)).shapes)).toContain('no limit is known');
  });

  it('is well-formed whatever the parts are called, and keeps its words apart', () => {
    const hostile = { ...row(0.02), what: '<b>&"\'\u202e fit </text> of the driving flange on whatever there is' };
    const drawing = chainView({ ...input([hostile, row(0.01)]), notGiven: ['driving.runout.rim'] });
    expectApart(drawing);
    const svg = writeSvg(drawing);
    expect(badNumbers(svg)).toEqual([]);
    const read = parseXml(svg);
    expect(read.some(({ tag }) => tag === 'b')).toBe(false);
    expect(read.filter(({ tag }) => tag === 'text').some(({ text }) => text.includes('<b>&"\''))).toBe(true);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.0005, max: 0.4, noNaN: true }), { minLength: 1, maxLength: 8 }),
        fc.option(fc.double({ min: 0.001, max: 2, noNaN: true })),
        (sizes, limit) =>
          expectApart(
            chainView(
              input(
                sizes.map((size) => row(size, size / 3)),
                limit,
              ),
            ),
          ),
      ),
      { numRuns: 60 },
    );
  });
});

describe('the chains of a joint', () => {
  const judged = judge();

  it('come to what the findings say', () => {
    const chains = chainsToDraw(judged.joint);
    expect(chains.map(({ name }) => name)).toEqual(['chain-shaft', 'chain-lean', 'chain-teeth']);
    for (const [i, code] of ['concentricity', 'face-runout', 'wheel-runout'].entries()) {
      const finding = findingOf(judged, code);
      const { input: drawn } = chains[i] as (typeof chains)[number];
      expect(drawn.rows.reduce((sum, { worst }) => sum + worst, 0)).toBeCloseTo(finding.value ?? 0, 5);
      expect(drawn.limit).toBe(finding.limit);
      expect(drawn.feature).toBe(finding.feature);
    }
  });

  it('take what was measured on the finished part', () => {
    const built = judge({ built: { adapter: { driven: { register: { value: 59.99, instrument: 'micrometer' } } } } });
    const seat = (of: typeof built) =>
      chainsToDraw(of.joint)[0]?.input.rows.find(({ what }) => what === 'driven register fit')?.worst;
    expect(seat(built)).not.toBeCloseTo(seat(judged) ?? 0, 4);
    expect(chainsToDraw(built.joint)[0]?.caption).toContain('As built');
  });

  it('have no teeth without a wheel', () => {
    const names = pictures(judge({ wheel: undefined, sensor: undefined }).joint).map(({ name }) => name);
    expect(names).toContain('chain-shaft');
    expect(names).not.toContain('chain-teeth');
    expect(names).not.toContain('sensor');
  });
});
