/** Drills against a list that was read apart from the one they were typed from, and against brute force. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drillFor, drillSystems, drillsOf, findDrill, nearestDrills } from '../../src/standards/drills.ts';
import { mmPerInch } from '../../src/standards/inch.ts';
import { must } from '../../src/standards/table.ts';
import { threadLimits } from '../../src/standards/thread-limits.ts';
import { allThreads } from '../../src/standards/threads.ts';

/** Number drills 80 to 1, ten-thousandths of an inch, as printed in an open drill list (not the one the table was typed from). */
const numbersElsewhere = `135 145 160 180 200 210 225 240 250 260 280 292 310 320 330 350 360 370 380 390 400 410 420 430 465 520 550
  595 635 670 700 730 760 785 810 820 860 890 935 960 980 995 1015 1040 1065 1100 1110 1130 1160 1200 1285 1360 1405 1440 1470 1495
  1520 1540 1570 1590 1610 1660 1695 1730 1770 1800 1820 1850 1890 1910 1935 1960 1990 2010 2040 2055 2090 2130 2210 2280`;

/** Letter drills A to Z, mm, as printed in an open metric drill chart; the last three are printed to 0.01 mm. */
const lettersElsewhere = `5.944 6.045 6.147 6.248 6.350 6.528 6.629 6.756 6.909 7.036 7.137 7.366 7.493 7.671 8.026 8.204 8.433 8.611
  8.839 9.093 9.347 9.576 9.804 10.080 10.260 10.490`;

const words = (text: string) => text.trim().split(/\s+/).map(Number);

describe('the drill series', () => {
  it('number drills are as printed elsewhere', () => {
    const ours = drillsOf('number');
    expect(ours.map(({ inches }) => Math.round(inches * 10_000))).toEqual(words(numbersElsewhere));
    expect([ours[0]?.name, ours.at(-1)?.name]).toEqual(['No. 80', 'No. 1']);
  });

  it('letter drills are as printed elsewhere', () => {
    const ours = drillsOf('letter');
    const printed = words(lettersElsewhere);
    expect(ours.map(({ name }) => name).join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
    for (const [at, { diameter }] of ours.entries()) {
      expect(Math.abs(diameter - (printed[at] ?? 0))).toBeLessThan(at < 23 ? 0.0011 : 0.0051);
    }
  });

  it.each([
    ['1/64', 0.397],
    ['21/64', 8.334],
    ['27/64', 10.716],
    ['1/2', 12.7],
    ['31/32', 24.606],
    ['1 in', 25.4],
  ])('the fraction %s is %f mm (published conversion table)', (name, mm) => {
    expect(Math.abs(must(findDrill(name)).diameter - mm)).toBeLessThan(0.0011);
  });

  it('has the steps of common practice: tenths to 14, halves to 32', () => {
    const sizes = drillsOf('metric').map(({ diameter }) => diameter);
    for (const size of [1, 2.5, 3.3, 4.2, 5, 6.8, 8.5, 10.2, 12.9, 13.9, 14, 14.5, 17.5, 25, 32]) {
      expect(sizes).toContain(size);
    }
    for (const size of [10.25, 14.1, 14.25, 32.5]) expect(sizes).not.toContain(size);
    expect(drillsOf('metric').every(({ memory }) => memory)).toBe(true);
  });

  it('grows without a repeat, inch and mm alike', () => {
    for (const system of drillSystems) {
      const drills = drillsOf(system);
      for (let at = 1; at < drills.length; at++) {
        expect(drills[at]?.diameter).toBeGreaterThan(drills[at - 1]?.diameter ?? 0);
      }
      for (const { diameter, inches } of drills) expect(Math.abs(diameter - inches * mmPerInch)).toBeLessThan(0.00051);
    }
    expect(drillsOf('fractional')).toHaveLength(64);
  });
});

describe('drills around a size', () => {
  it('names the neighbours in every series', () => {
    const around = nearestDrills(8.5);
    expect(around.metric).toMatchObject({
      below: { name: '8.4 mm' },
      exact: { name: '8.5 mm' },
      above: { name: '8.6 mm' },
    });
    expect(around.fractional).toMatchObject({ below: { name: '21/64' }, exact: null, above: { name: '11/32' } });
    expect(around.letter).toMatchObject({ below: { name: 'Q' }, exact: null, above: { name: 'R' } });
    expect(around.number).toMatchObject({ below: { name: 'No. 1' }, exact: null, above: null });
  });

  it('knows an inch size by its printed millimetres', () => {
    // 0.257 in = 6.5278 mm, printed 6.528.
    expect(nearestDrills(6.528).letter.exact?.name).toBe('F');
    expect(nearestDrills(6.35)).toMatchObject({
      fractional: { exact: { name: '1/4' } },
      letter: { exact: { name: 'E' } },
    });
  });

  it('agrees with a plain search', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 40, noNaN: true }), fc.constantFrom(...drillSystems), (mm, system) => {
        const { below, exact, above } = nearestDrills(mm)[system];
        const sizes = drillsOf(system).map(({ diameter }) => diameter);
        const less = sizes.filter((size) => size < mm - 0.002);
        const more = sizes.filter((size) => size > mm + 0.002);
        expect(below?.diameter ?? null).toBe(less.length === 0 ? null : Math.max(...less));
        expect(above?.diameter ?? null).toBe(more.length === 0 ? null : Math.min(...more));
        expect(exact === null).toBe(less.length + more.length === sizes.length);
      }),
    );
  });
});

describe('a drill for a size', () => {
  it('takes the nearest within bounds', () => {
    expect(must(drillFor(8.42)).name).toBe('Q');
    expect(must(drillFor(8.42, {}, ['metric'])).name).toBe('8.4 mm');
    expect(must(drillFor(8.42, { atLeast: 8.42 }, ['metric'])).name).toBe('8.5 mm');
    expect(must(drillFor(9.8, { atMost: 9.8 }, ['fractional'])).name).toBe('3/8');
    expect(must(drillFor(8, { atLeast: 8, atMost: 8 })).name).toBe('8 mm');
    // A tie: E and 1/4 are one size, and fractions come first.
    expect(must(drillFor(6.35)).system).toBe('fractional');
  });

  it('says what there is when nothing lies within the bounds', () => {
    expect(drillFor(8.45, { atLeast: 8.41, atMost: 8.43 }, ['metric'])).toEqual({
      ok: false,
      why: 'No drill is 8.41 to 8.43; around 8.45 mm there are: 8.4 mm (8.4), 8.5 mm (8.5).',
    });
    expect(drillFor(50, { atLeast: 50 }).ok).toBe(false);
    for (const wrong of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) expect(drillFor(wrong).ok).toBe(false);
  });

  it('never leaves the bounds, and nothing within them is nearer', () => {
    const size = fc.double({ min: 0.3, max: 33, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (mm, a, b) => {
        const bounds = { atLeast: Math.min(a, b), atMost: Math.max(a, b) };
        const answer = drillFor(mm, bounds);
        const inside = drillSystems
          .flatMap(drillsOf)
          .map(({ diameter }) => diameter)
          .filter((diameter) => diameter >= bounds.atLeast - 0.002 && diameter <= bounds.atMost + 0.002);
        expect(answer.ok).toBe(inside.length > 0);
        if (answer.ok) {
          const nearest = Math.min(...inside.map((diameter) => Math.abs(diameter - mm)));
          expect(Math.abs(answer.value.diameter - mm)).toBeCloseTo(nearest, 9);
        }
      }),
    );
  });

  it('knows every tap drill of the thread tables by its name, but for sizes that a shop orders', () => {
    for (const { designation, system, tapDrill, tapDrillName = `${tapDrill}` } of allThreads()) {
      const drill = findDrill(tapDrillName);
      if (drill.ok) expect(Math.abs(drill.value.diameter - tapDrill), designation).toBeLessThan(0.002);
      // Twentieths and quarters are in the standard series, not among the sizes usually kept.
      else expect(system === 'metric' && Math.abs((tapDrill * 20) % 2) > 0.5, designation).toBe(true);
    }
  });

  it('finds for every thread a drill within the limits of the tapped hole', () => {
    for (const thread of allThreads()) {
      const limits = threadLimits(thread);
      if (!limits.ok) continue;
      const { min, max } = limits.value.D1;
      const drill = drillFor(thread.tapDrill, { atLeast: min, atMost: max });
      expect(drill.ok, thread.designation).toBe(true);
    }
  });
});

describe('the name of a drill', () => {
  it.each([
    ['8.5', '8.5 mm'],
    ['8.5mm', '8.5 mm'],
    ['1', '1 mm'],
    ['1"', '1 in'],
    ['#7', 'No. 7'],
    ['no 7', 'No. 7'],
    ['Number 7', 'No. 7'],
    ['f', 'F'],
    ['letter F', 'F'],
    ['21/64 in', '21/64'],
    ['21/64"', '21/64'],
  ])('"%s" is %s', (asked, name) => expect(must(findDrill(asked)).name).toBe(name));

  it.each(['', '8.55', '#81', '#0', 'AA', '2/64', '65/64'])('"%s" is not', (asked) => {
    expect(findDrill(asked)).toEqual({ ok: false, why: expect.stringContaining('write 8.5 mm, 21/64, No. 7 or F') });
  });
});
