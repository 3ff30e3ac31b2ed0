/** What the lookups do at their edges: the odd cases of the standards, and a plain sentence where there is nothing. */
import { describe, expect, it } from 'vitest';
import { airDie, kFactor, leastBendRadius, usualDieOpening } from '../../src/standards/bend-practice.ts';
import { countersinkFor } from '../../src/standards/countersinks.ts';
import { drillFeeds } from '../../src/standards/cutting-speed-tables.ts';
import { cuttingGroup, startingCut } from '../../src/standards/cutting-speeds.ts';
import { readDesignation } from '../../src/standards/designation.ts';
import { toleranceLimits } from '../../src/standards/iso286.ts';
import { findMaterial } from '../../src/standards/materials.ts';
import { smallestPart } from '../../src/standards/sheet-parts.ts';
import { must } from '../../src/standards/table.ts';
import { blindTap } from '../../src/standards/tap-depth.ts';
import { threadLimits } from '../../src/standards/thread-limits.ts';
import { findThread } from '../../src/standards/threads.ts';

describe('odd cases of ISO 286', () => {
  const micrometres = (size: number, zone: string) => {
    const { lower, upper } = must(toleranceLimits(size, zone));
    return [lower, upper].map((mm) => Number((1000 * mm).toFixed(3)));
  };

  // A textbook on machine drawing, table 15.2 (ei of j), and table 15.1 (IT5 9, IT6 13, IT7 21 at 25 mm; IT8 14 at 3 mm).
  it.each([
    [25, 'j5', [-4, 5]],
    [25, 'j6', [-4, 9]],
    [25, 'j7', [-8, 13]],
    [3, 'j8', [-6, 8]],
  ] as const)('%f %s is %j', (size, zone, limits) => expect(micrometres(size, zone)).toEqual(limits));

  it('has no j8 over 3 mm, and no coarse grades up to 1 mm (notes of the same table)', () => {
    expect(toleranceLimits(3.01, 'j8')).toMatchObject({ ok: false, why: expect.stringContaining('j8 up to 3 mm') });
    expect(toleranceLimits(1, 'H14')).toMatchObject({ ok: false, why: expect.stringContaining('1 mm') });
    expect(toleranceLimits(1.01, 'H14').ok).toBe(true);
    expect(toleranceLimits(1, 'H13').ok).toBe(true);
  });

  it('has the holes J6, J7 and J8 and no other J (a mould-component catalogue prints 8, 12 and 20 at 20 mm)', () => {
    expect(['J6', 'J7', 'J8'].map((zone) => micrometres(20, zone)[1])).toEqual([8, 12, 20]);
    for (const zone of ['J5', 'J9']) expect(toleranceLimits(20, zone).ok).toBe(false);
  });

  // Hole rules of the same book: N coarser than 8 has ES 0 (-4 up to 3 mm); 300 M6 is printed with -9 where the rule gives -11.
  it.each([
    [20, 'N9', 0],
    [3, 'N9', -4],
    [3.01, 'N9', 0],
    [300, 'M6', -9],
    [250, 'M6', -8],
    [316, 'M6', -10],
  ])('%f %s ends at %f', (size, zone, upper) => expect(micrometres(size, zone)[1]).toBe(upper));
});

describe('threads', () => {
  it('have no limits where the pitch is not tabled', () => {
    const odd = { ...must(findThread('M8')), pitch: 1.1 };
    expect(threadLimits(odd)).toMatchObject({ ok: false, why: expect.stringContaining('not tabled') });
    // M8 with a pitch that is tabled, but for thinner screws only.
    expect(threadLimits({ ...must(findThread('M8')), pitch: 0.5 }).ok).toBe(false);
  });

  it('take no drill beyond the table, and none for no depth', () => {
    const coarse = { ...must(findThread('M24')), pitch: 3.5 };
    expect(blindTap(coarse, 20)).toMatchObject({ ok: false, why: expect.stringContaining('3 mm') });
    expect(blindTap(must(findThread('M8')), Number.NaN).ok).toBe(false);
    // DIN 76-1, pitch 1.25: 6.2 regular, 3.9 short (remembered).
    expect(must(blindTap(must(findThread('M8')), 12))).toMatchObject({ thread: 12, drill: 18.2 });
    expect(must(blindTap(must(findThread('M8')), 12, 'short')).drill).toBeCloseTo(15.9, 9);
  });

  it('number sizes are 0.060 + 0.013 n in (ASME B1.1), to the micron of a millimetre', () => {
    expect(must(readDesignation('#8')).d).toBe(4.1656);
    expect(must(readDesignation('#12')).d).toBe(5.4864);
    // 7/16 in is 11.1125 mm exactly.
    expect(must(readDesignation('7/16')).d).toBe(11.1125);
  });

  it('an inch countersink is a hundredth of an inch wider than the sharp head: 3/8 in, 0.781 in (ASME B18.3)', () => {
    expect(must(countersinkFor('3/8')).diameter).toBeCloseTo(0.791 * 25.4, 3);
    // DIN 74 form F as printed.
    expect(must(countersinkFor('M6'))).toMatchObject({ diameter: 13.7, throughHole: 6.6, angle: 90 });
  });
});

describe('sheet', () => {
  it('parts below 15 mm, above 8 mm of thickness 25 mm, fall through the grid (a public design guide)', () => {
    expect([1, 8, 8.01, 25].map((t) => must(smallestPart(t)))).toEqual([15, 15, 25, 25]);
    for (const t of [0, -1, 25.1, Number.NaN]) expect(smallestPart(t)).toMatchObject({ ok: false });
  });

  it('bends over 6, 8 or 10 thicknesses (two published guides)', () => {
    expect([1, 2.5, 3, 8, 9, 10].map(usualDieOpening)).toEqual([6, 15, 24, 64, 90, 100]);
    expect(airDie(0)).toMatchObject({ ok: false });
    for (const [radius, thickness] of [
      [0, 0],
      [1, 0],
      [-0.1, 1],
    ] as const)
      expect(kFactor('steel', radius, thickness)).toMatchObject({
        ok: false,
        why: expect.stringContaining('above 0 mm'),
      });
    expect(must(kFactor('steel', 0, 1))).toBe(0.38);
    expect(must(airDie(8)).V).toBe(80);
    expect(must(airDie(1, 13)).V).toBe(80);
    expect(airDie(1, 13.1).ok).toBe(false);
  });

  it('bends hard aluminium wide (an aircraft bend radius chart)', () => {
    // 2024-T3: 5 t at 0.125 in, 3.5 t at 0.063 in; 6061-T6: 2.5 t and 1.5 t.
    const at = (id: string) => must(leastBendRadius(must(findMaterial(id)), 2));
    expect(at('2024-T351')).toMatchObject({ least: 7, usual: 10 });
    expect(at('6061-T6')).toMatchObject({ least: 3, usual: 5 });
    expect(at('7075-T6')).toMatchObject({ least: 10, usual: 16 });
    expect(leastBendRadius(must(findMaterial('PETG')), 2).ok).toBe(false);
  });
});

describe('starting cuts', () => {
  const steel = { family: 'steel', tensileStrength: 560 } as const;

  it('steel is tough from 700 MPa on: 220 HB (ISO 18265, remembered)', () => {
    expect(cuttingGroup({ ...steel, tensileStrength: 699 })).toBe('steel');
    expect(cuttingGroup({ ...steel, tensileStrength: 700 })).toBe('strong steel');
  });

  it('turn by 1000 v/(pi d), in tens from 100 rpm on and in fives below, always rounded down', () => {
    for (const diameter of [3, 8, 20, 60, 250, 900]) {
      const { speed, rpm } = startingCut(steel, 'rough turn', 'hss', diameter, 5000);
      const free = (1000 * speed) / (Math.PI * diameter);
      const step = free >= 100 ? 10 : 5;
      expect(rpm % step).toBe(0);
      expect(rpm).toBeLessThanOrEqual(Math.max(free, 5));
      if (free < 5000 && free > 5) expect(rpm).toBeGreaterThan(free - step);
    }
    expect(startingCut(steel, 'rough turn', 'hss', 90_000, 5000).rpm).toBe(5);
  });

  it('a carbide tool may be told, and a tap is none', () => {
    const at = (tool: 'carbide' | 'hss') => startingCut(steel, 'drill', tool, 8, 20_000).speed;
    expect(at('carbide')).toBeGreaterThan(at('hss'));
    const tap = (tool: 'carbide' | 'hss') => startingCut(steel, 'tap', tool, 8, 20_000, 1.25);
    expect(tap('carbide')).toEqual(tap('hss'));
  });

  it('spot at half the feed of a drill; a drill beyond the table keeps the last feed', () => {
    const perTurn = (operation: 'drill' | 'spot', diameter: number) =>
      startingCut(steel, operation, 'hss', diameter, 5000).perTurn;
    expect(perTurn('spot', 8)).toBeCloseTo(perTurn('drill', 8) / 2, 12);
    expect(perTurn('drill', 150)).toBe(drillFeeds.rows.at(-1)?.feed);
    // The steps end at 1/8, 1/4, 1/2 and 1 in.
    expect(perTurn('drill', 3.175)).toBeLessThan(perTurn('drill', 3.18));
    expect(perTurn('drill', 12.7)).toBeLessThan(perTurn('drill', 12.71));
  });

  it('there is one for every cut, with the feed in mm/min that turns and feed per turn make', () => {
    for (const cut of ['spot', 'drill', 'ream', 'counterbore', 'countersink', 'rough turn', 'finish turn'] as const) {
      for (let diameter = 5; diameter < 30; diameter++) {
        const { rpm, perTurn, feed } = startingCut(steel, cut, 'hss', diameter, 5000);
        expect(perTurn, cut).toBeGreaterThan(0);
        // Whole millimetres a minute, at least one.
        if (rpm * perTurn >= 1) expect(Math.abs(feed - rpm * perTurn), cut).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    }
  });

  it('is a bug to ask for a material that has no speeds, or for a cut without a feed', () => {
    expect(() =>
      startingCut({ family: 'unobtainium' as 'steel', tensileStrength: 1 }, 'drill', 'hss', 8, 5000),
    ).toThrow(/no cutting speed/);
  });
});
