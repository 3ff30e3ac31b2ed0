import { describe, expect, it } from 'vitest';
import { firstCrossing, isLaminar, nestingAt } from '../../src/geometry/nesting.ts';
import { adapter, drilling, profile, turned } from './fixtures.ts';

const disc = profile([0, 50], [20, 50]);
const flats = { flats: { feature: 'flats', across: 80, angle: 0 } };

describe('which outlines cross', () => {
  it('an adapter keeps all its outlines apart', () => {
    expect(firstCrossing(adapter())).toBeNull();
  });

  it.each([
    ['holes side by side', [drilling('a', 20, 0, [0, 5], [20, 5]), drilling('b', 31, 0, [0, 5], [20, 5])]],
    ['holes that just touch', [drilling('a', 20, 0, [0, 5], [20, 5]), drilling('b', 30, 0, [0, 5], [20, 5])]],
    ['a hole within a recess', [drilling('a', 0, 0, [10, 30], [20, 30]), drilling('b', 20, 0, [0, 5], [20, 5])]],
    [
      'overlapping in plan, at different heights',
      [drilling('a', 20, 0, [0, 5], [8, 5]), drilling('b', 24, 0, [12, 5], [20, 5])],
    ],
    [
      'crossing within a wider hole',
      [
        drilling('a', 10, 0, [0, 5], [20, 5]),
        drilling('b', 14, 0, [0, 5], [20, 5]),
        drilling('c', 0, 0, [0, 25], [20, 25]),
      ],
    ],
    ['crossing outside the part', [drilling('a', 60, 0, [0, 5], [20, 5]), drilling('b', 64, 0, [0, 5], [20, 5])]],
    ['one bore inside another', [drilling('a', 0, 0, [0, 5], [20, 15]), drilling('b', 0, 0, [0, 15], [20, 5])]],
  ])('%s: laminar', (_, drillings) => {
    expect(isLaminar(turned('p', disc, drillings))).toBe(true);
  });

  it('names the two that cross and a height where they do', () => {
    const countersunk = drilling('screw', 20, 0, [0, 5], [12, 5], [20, 13]);
    const tapped = drilling('tapped', 35, 0, [0, 4], [20, 4]);
    const crossing = firstCrossing(turned('p', disc, [countersunk, tapped]));
    expect(crossing).toMatchObject({ a: 'screw', b: 'tapped' });
    expect(crossing?.z).toBeGreaterThan(12);
  });

  it('finds a hole that breaks out of the rim, out of a flat, or through the edge of a recess', () => {
    const hole = (x: number) => [drilling('hole', x, 0, [0, 5], [20, 5])];
    expect(firstCrossing(turned('p', disc, hole(46)))).toMatchObject({ a: 'hole', b: 'p' });
    expect(isLaminar(turned('p', disc, hole(44.9), flats))).toBe(false);
    expect(isLaminar(turned('p', disc, hole(34.9), flats))).toBe(true);
    const recess = drilling('recess', 0, 0, [15, 20], [20, 20]);
    expect(firstCrossing(turned('p', disc, [recess, ...hole(22)]))).toMatchObject({ a: 'recess', b: 'hole' });
  });

  it('finds outlines that cross only in the plane where one ends and the other begins', () => {
    const low = drilling('low', 20, 0, [0, 5], [10, 5]);
    const high = drilling('high', 24, 0, [10, 5], [20, 5]);
    expect(firstCrossing(turned('p', disc, [low, high]))).toEqual({ a: 'low', b: 'high', z: 10 });
  });
});

describe('outlines at a height', () => {
  it('lists the outside and the holes that open in it, with their radii there', () => {
    const at = nestingAt(adapter(), 20.5);
    expect(at).toHaveLength(1 + 1 + 6 + 6);
    expect(at[0]).toEqual({ id: 'adapter', x: 0, y: 0, r: 60 });
    expect(at.find((o) => o.id === 'bore + recess')?.r).toBe(30);
    expect(at.find((o) => o.id === 'screw-1')?.r).toBeCloseTo(7.75, 12);
    expect(nestingAt(adapter(), 23)).toEqual([]);
    expect(nestingAt(adapter(), -1).map((o) => o.id)).toEqual(['adapter', 'bore + recess']);
  });
});
