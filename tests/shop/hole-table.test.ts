/** The hole table: every drilling once, where it is seen from, mirrored once. */
import { describe, expect, it } from 'vitest';
import { holeSets } from '../../src/shop/hole-table.ts';
import { judge, type Patch } from '../validate/help.ts';

const jobs: Record<string, Patch> = {
  sound: {},
  'countersunk, dowels, wheel on the driving face': {
    adapter: { driving: { head: 'flat', dowels: 'auto' }, thickness: 24 },
    wheel: { face: 'driving' },
  },
};

describe.each(Object.entries(jobs))('%s', (_, patch) => {
  const { joint } = judge(patch);
  const sets = holeSets(joint);

  it('has every off-axis drilling of the part once', () => {
    const tabled = sets.flatMap(({ holes }) => holes.map(({ drilling }) => drilling)).sort();
    const drilled = joint.adapter.drillings.filter(({ x, y }) => Math.hypot(x, y) > 0).map(({ id }) => id);
    expect(tabled).toEqual(drilled.sort());
  });

  it('puts each hole where turning the part over like a page brings it', () => {
    for (const { from, holes } of sets) {
      for (const { drilling, x, y, radius, angle } of holes) {
        const real = joint.adapter.drillings.find(({ id }) => id === drilling);
        if (!real) throw new Error(drilling);
        // Half a turn about the y axis: (x, y, z) to (-x, y, -z). Seen from above, that is the driving side.
        const seen = from === 'driven' ? { x: real.x, y: real.y } : { x: -real.x, y: real.y };
        expect(x).toBeCloseTo(seen.x, 6);
        expect(y).toBeCloseTo(seen.y, 6);
        expect(radius * Math.cos((angle * Math.PI) / 180)).toBeCloseTo(x, 4);
        expect(radius * Math.sin((angle * Math.PI) / 180)).toBeCloseTo(y, 4);
      }
    }
  });

  it('cuts what the part model says: widest and narrowest of each drilling', () => {
    for (const { cuts, holes } of sets) {
      const wide = Math.max(...cuts.flatMap((cut) => (cut.op === 'spot' || cut.op === 'tap' ? [] : [cut.diameter])));
      const real = joint.adapter.drillings.find(({ id }) => id === holes[0]?.drilling);
      const narrow = Math.min(...(real?.profile ?? []).map(({ r }) => r).filter((r) => r > 0));
      const drill = cuts.find((cut) => cut.op === 'drill');
      const ream = cuts.find((cut) => cut.op === 'ream');
      expect(2 * narrow).toBeCloseTo(ream ? ream.diameter : drill?.op === 'drill' ? drill.diameter : Number.NaN, 6);
      const tap = cuts.some((cut) => cut.op === 'tap');
      if (!tap) expect(2 * Math.max(...(real?.profile ?? []).map(({ r }) => r))).toBeCloseTo(wide, 6);
    }
  });

  it('letters the sets and numbers the holes round the circle', () => {
    expect(sets.map(({ letter }) => letter).join('')).toBe('ABCDEFGH'.slice(0, sets.length));
    for (const { letter, holes } of sets) {
      expect(holes.map(({ tag }) => tag)).toEqual(holes.map((_hole, i) => `${letter}${i + 1}`));
      const angles = holes.map(({ angle }) => angle);
      expect([...angles].sort((a, b) => a - b)).toEqual(angles);
    }
  });
});
