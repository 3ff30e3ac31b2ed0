/** The hole-pattern disc as a part model. Expected sizes are worked out by hand beside each check. */
import { describe, expect, it } from 'vitest';
import type { EngravedText } from '../../src/model/engraving.ts';
import { buildHoleDisc, discThickness, type HoleDiscSpec } from '../../src/parts/hole-disc.ts';
import { textWidth } from '../../src/solids/engrave.ts';

const four = [0, 90, 180, 270].map((a) => ({
  x: 42 * Math.cos((a * Math.PI) / 180),
  y: 42 * Math.sin((a * Math.PI) / 180),
}));
const spec = (more: Partial<HoleDiscSpec> = {}): HoleDiscSpec => ({
  id: 'driving',
  name: 'demo flange',
  outside: 112,
  register: { gender: 'male', at: 'inner', diameter: 62, doubt: 0.03, depth: 4 },
  bore: null,
  holes: { positions: four, diameter: 8, tapped: true, doubt: 0.05 },
  ...more,
});
const disc = (more: Partial<HoleDiscSpec> = {}) =>
  buildHoleDisc(spec(more), { holes: 0.3, registers: 0.2 }, { words: ['DEMO'], measure: textWidth });
const radius = (part: ReturnType<typeof disc>['part'], id: string) =>
  Math.min(...(part.drillings.find((d) => d.id === id)?.profile.map((p) => p.r) ?? [Number.NaN]));

describe('hole-pattern disc', () => {
  it('tapped holes: the screw, the allowance and twice the doubt of its place; clear holes: their size and the allowance', () => {
    expect(2 * radius(disc().part, 'hole-1')).toBeCloseTo(8 + 0.3 + 0.1, 9);
    const clear = disc({ holes: { positions: four, diameter: 8.4, tapped: false, doubt: 0.05 } });
    expect(2 * radius(clear.part, 'hole-3')).toBeCloseTo(8.7, 9);
  });

  it('goes over a spigot at its largest, with the allowance, and lies as it is seen', () => {
    const { part, upsideDown } = disc();
    expect(2 * radius(part, 'middle')).toBeCloseTo(62 + 0.03 + 0.2, 9);
    expect(upsideDown).toBe(false);
    expect(part.outer.map((p) => p.z)).toEqual([0, discThickness]);
    expect((part.engravings as EngravedText[]).find((e) => e.text === 'THIS SIDE OUT')).toMatchObject({
      surface: 'top',
      z: 2,
    });
  });

  it('has a boss towards a recess, which is printed up and says so, and never touches its floor', () => {
    const { part, upsideDown } = disc({
      register: { gender: 'female', at: 'inner', diameter: 50, doubt: 0.03, depth: 1.5 },
    });
    expect(upsideDown).toBe(true);
    expect(part.outer[0]?.z).toBeCloseTo(-(1.5 - 0.3), 9);
    expect(2 * (part.outer[1]?.r ?? 0)).toBeCloseTo(50 - 0.03 - 0.2, 9);
    expect((part.engravings as EngravedText[]).find((e) => e.text === 'THIS SIDE TO FLANGE')).toMatchObject({
      surface: 'bottom',
      z: 0,
    });
  });

  it('drops whole into a recess that holds the bolting face, and lies flush on such a spigot', () => {
    const rim = (gender: 'male' | 'female') =>
      disc({ register: { gender, at: 'rim', diameter: 105, doubt: 0.05, depth: 3 } }).part.outer.map((p) => 2 * p.r);
    expect(rim('female')).toEqual([expect.closeTo(105 - 0.05 - 0.2, 9), expect.closeTo(104.75, 9)]);
    expect(rim('male')).toEqual([105, 105]);
  });

  it('leaves a ring round its holes when nothing else says how wide the middle may be open', () => {
    // 42 to a hole's centre, half of 8.4, 5 mm of ring.
    expect(radius(disc({ register: null }).part, 'middle')).toBeCloseTo(42 - 4.2 - 5, 9);
    expect(radius(disc({ register: null, bore: 20 }).part, 'middle')).toBe(10);
  });

  it('has its index mark and the figure 1 at hole 1, wherever that is', () => {
    const positions = [
      { x: 0, y: -42 },
      { x: 42, y: 0 },
    ];
    const { part } = disc({ holes: { positions, diameter: 8, tapped: true, doubt: 0 } });
    expect(part.engravings.find((e) => e.kind === 'index')?.angle).toBeCloseTo(-90, 9);
    expect((part.engravings as EngravedText[]).find((e) => e.text === '1')?.angle).toBeCloseTo(-90, 9);
  });
});
