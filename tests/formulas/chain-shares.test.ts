/** What each link adds to a chain's sums, on paper: arrows of 0.03 and 0.04 square to each other (0.05 together) and 0.02 towards any side. mm */
import { describe, expect, it } from 'vitest';
import type { Link } from '../../src/formulas/chain.ts';
import { addingUp, firstToDo, sharesOf, toldShares, widestFirst } from '../../src/formulas/chain-shares.ts';

const link = (id: string, most: number, more: Partial<Link> = {}): Link => ({
  id,
  what: id,
  least: 0,
  most,
  angle: null,
  doubt: 0,
  source: '',
  memory: false,
  cure: `mend ${id}`,
  ...more,
});
const chain = [
  link('one', 0.03, { angle: 0, doubt: 0.005 }),
  link('two', 0.04, { angle: 90 }),
  link('three', 0.02),
] as const;
const near = (value: number) => expect.closeTo(value, 12);

describe('parts of a chain', () => {
  it('worst: what lies along the known sum, 0.03 x 0.6 and 0.04 x 0.8, and what may stray', () => {
    const shares = sharesOf(chain);
    expect(shares.map(({ along }) => along)).toEqual([near(0.018), near(0.032), 0]);
    expect(shares.map(({ worst }) => worst)).toEqual([near(0.023), near(0.032), near(0.02)]);
  });

  it('likely: squares over the root of 0.05^2 + 0.005^2 + 0.02^2', () => {
    const likely = Math.sqrt(0.0025 + 0.000025 + 0.0004);
    const parts = [0.000025 + 0.018 * 0.05, 0.032 * 0.05, 0.0004].map((square) => near(square / likely));
    expect(sharesOf(chain).map((share) => share.likely)).toEqual(parts);
  });

  it('likely of a sum of many small ones: by its own root mean square', () => {
    const shares = sharesOf([link('many', 0.04, { usual: 0.012 }), link('one', 0.016)]);
    expect(shares.map(({ likely }) => likely)).toEqual([near(0.0072), near(0.0128)]);
    expect(shares.map(({ worst }) => worst)).toEqual([0.04, 0.016]);
  });

  it('an arrow that pulls back takes off; nothing at all adds nothing', () => {
    const back = sharesOf([link('there', 0.05, { angle: 30 }), link('back', 0.02, { angle: 210 })]);
    expect(back.map(({ worst }) => worst)).toEqual([near(0.05), near(-0.02)]);
    expect(sharesOf([link('none', 0), link('still', 0, { angle: 40 })])).toMatchObject([
      { worst: 0, along: 0, likely: 0 },
      { worst: 0, along: 0, likely: 0 },
    ]);
  });
});

describe('what is told', () => {
  const ids = (shares: readonly { readonly link: Link }[]) => shares.map((share) => share.link.id);

  it('the widest first, of equal ones the first in the chain, each with its place', () => {
    const shares = sharesOf([link('a', 0.01), link('b', 0.03), link('c', 0.01), link('d', 0.02)]);
    expect(ids(widestFirst(shares))).toEqual(['b', 'd', 'a', 'c']);
    expect(widestFirst(shares).map(({ place }) => place)).toEqual([1, 3, 0, 2]);
  });

  it('the first thing to do is the widest link that has a cure and adds anything', () => {
    expect(firstToDo(sharesOf(chain))?.link.id).toBe('two');
    expect(firstToDo(sharesOf([link('a', 0.03, { cure: '' }), link('b', 0.01), link('c', 0.02)]))?.link.id).toBe('c');
    expect(firstToDo(sharesOf([link('a', 0.03, { cure: '' }), link('b', 0)]))).toBeNull();
    expect(firstToDo([])).toBeNull();
  });

  it('amounts add up to the rounded sum, whatever their order', () => {
    const shares = toldShares(sharesOf([link('a', 0.0103), link('b', 0.0205), link('c', 0.0108)]), 3);
    // 0.0416 is told as 0.042: two thousandths are missing, of what lost 0.3, 0.5 and 0.8.
    expect(shares.map(({ link: { id }, amount }) => [id, amount])).toEqual([
      ['b', 0.021],
      ['c', 0.011],
      ['a', 0.01],
    ]);
    expect(addingUp([0.0103, 0.0205, 0.0108], 3)).toEqual([0.01, 0.021, 0.011]);
  });
});
