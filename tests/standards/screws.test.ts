import { describe, expect, it } from 'vitest';
import { clearanceHole, clearanceHoles, inchClearanceHoles } from '../../src/standards/clearance-holes.ts';
import { counterboreFor } from '../../src/standards/counterbores.ts';
import { countersinkFor } from '../../src/standards/countersinks.ts';
import { readDesignation } from '../../src/standards/designation.ts';
import { nutFor } from '../../src/standards/hex-nuts.ts';
import { proofLoad, proofLoads, propertyClass, propertyClasses } from '../../src/standards/property-classes.ts';
import { headKinds, screwHead } from '../../src/standards/screw-heads.ts';
import { longestUpTo, standardLengths } from '../../src/standards/screw-lengths.ts';
import { must } from '../../src/standards/table.ts';
import { threadLimits } from '../../src/standards/thread-limits.ts';
import { allThreads, findThread } from '../../src/standards/threads.ts';
import { washerFor } from '../../src/standards/washers.ts';

const metricSizes = clearanceHoles.rows.map((row) => row.size);
const sizes = [...metricSizes, ...inchClearanceHoles.rows.map((row) => row.size)];

describe('designations', () => {
  it.each([
    ['M10', 'M10'],
    ['m10', 'M10'],
    [' M 10 ', 'M10'],
    ['M10x1.5', 'M10'],
    ['M10-6H', 'M10'],
    ['M10X1.25', 'M10x1.25'],
    ['M10 x 1.25-6g', 'M10x1.25'],
    ['M10\u00d71.25', 'M10x1.25'],
    ['3/8-16', '3/8-16 UNC'],
    ['3/8-16 UNC', '3/8-16 UNC'],
    ['3/8 UNF', '3/8-24 UNF'],
    ['3/8"-24', '3/8-24 UNF'],
    ['#10-24', '#10-24 UNC'],
    ['10-32', '#10-32 UNF'],
    ['1/4-20 UNC-2B', '1/4-20 UNC'],
  ])('%s is %s', (text, designation) => expect(must(findThread(text)).designation).toBe(designation));

  it.each([
    ['M9', /no M9.*M8, M10/],
    ['M10x0.9', /M10 is M10x1.5, M10x1.25, M10x1\./],
    ['3/8', /does not say the pitch; write 3\/8-16 UNC or 3\/8-24 UNF/],
    ['3/8-18', /3\/8-16 UNC or 3\/8-24 UNF/],
    ['7/8-9', /Listed sizes: #10, 1\/4/],
    ['3/8-16 UNF', /3\/8-16 UNC or 3\/8-24 UNF/],
    ['1/4-32 UNEF', /only the UNC and UNF/],
    ['1/0-20', /not a thread/],
    ['', /not a thread/],
    ['ten', /not a thread/],
    ['M', /not a thread/],
    ['M10x', /not a thread/],
  ])('%s is refused with a helpful sentence', (text, why) => {
    expect(findThread(text)).toEqual({ ok: false, why: expect.stringMatching(why) });
  });

  it('reads a bare number size by the ASME B1.1 rule 0.060 + 0.013 n', () => {
    expect(must(readDesignation('#10')).d).toBeCloseTo(0.19 * 25.4, 6);
  });
});

describe('every thread', () => {
  it.each(allThreads().map((thread) => ({ designation: thread.designation, thread })))('$designation', ({ thread }) => {
    const { d, pitch, d2, D1, d3, stressArea, tapDrill } = thread;
    expect(must(findThread(thread.designation))).toEqual(thread);
    // ISO 68-1 and ASME B1.1 basic profile: closed forms, to the rounding of the print (0.0005 mm, or 0.00005 in each).
    const rounding = thread.system === 'metric' ? 0.00051 : 0.0026;
    expect(Math.abs(d2 - (d - 0.649519 * pitch))).toBeLessThan(rounding);
    expect(Math.abs(D1 - (d - 1.082532 * pitch))).toBeLessThan(rounding);
    expect(Math.abs(d3 - (d - 1.226869 * pitch))).toBeLessThan(rounding);
    const diameter = thread.system === 'metric' ? (d2 + d3) / 2 : d - 0.9743 * pitch;
    expect(Math.abs(stressArea / ((Math.PI / 4) * diameter ** 2) - 1)).toBeLessThan(0.003);
    // The drill leaves some thread and no more than all of it; ISO and shop rule: close to d - P.
    const height = (d - tapDrill) / (1.082532 * pitch);
    expect(height).toBeGreaterThan(0.7);
    expect(height).toBeLessThanOrEqual(1.02);
    const limits = must(threadLimits(thread));
    expect(limits.d.max).toBeLessThanOrEqual(d);
    expect(limits.d2.max).toBeLessThan(limits.D2.max);
    expect(limits.D1.min).toBeGreaterThan(limits.d2.min - 0.866 * pitch);
    expect(tapDrill).toBeLessThan(limits.D1.max + 0.13);
  });
});

describe('heads and holes of every size agree with each other', () => {
  it.each(headKinds.flatMap((kind) => sizes.map((size) => ({ kind, size }))))('$kind $size', ({ kind, size }) => {
    const head = screwHead(kind, size);
    if (!head.ok) return expect(head.why).toMatch(/Listed: .*,/);
    const { d, dk, k, dw = dk, source } = head.value;
    expect(source).not.toBe('');
    expect(dk).toBeGreaterThan(1.4 * d);
    expect(dk).toBeLessThan(2.4 * d);
    expect(k).toBeGreaterThan(0.4 * d);
    expect(k).toBeLessThan(d + 0.0128);
    const { diameter } = must(clearanceHole(size, 'coarse'));
    expect(dw).toBeGreaterThan(diameter);
  });

  it.each(sizes)('%s: counterbore clears the knurled head and hides it, washer and nut fit', (size) => {
    const [fine, medium, coarse] = (['fine', 'medium', 'coarse'] as const).map(
      (series) => must(clearanceHole(size, series)).diameter,
    );
    const d = must(readDesignation(size)).d;
    expect(fine).toBeGreaterThan(d);
    expect(medium).toBeGreaterThan(fine ?? Number.NaN);
    expect(coarse).toBeGreaterThan(medium ?? Number.NaN);
    const bore = must(counterboreFor(size));
    const head = must(screwHead('socket', size));
    expect(bore.diameter).toBeGreaterThan(head.dk);
    // Inch heads are printed to 0.001 in, so H can differ from D by half of that.
    expect(Math.abs(bore.depth - head.k - bore.allowance)).toBeLessThan(0.0128);
    expect(bore.allowance).toBeGreaterThan(0.35);
    const washer = must(washerFor(size));
    expect(washer.hole).toBeGreaterThan(d);
    expect(washer.outside).toBeGreaterThan(head.dk);
    if (bore.washerDiameter !== undefined) expect(bore.washerDiameter).toBeGreaterThan(washer.outside);
    const nut = must(nutFor(size));
    expect(nut.acrossCorners / nut.acrossFlats).toBeCloseTo(2 / Math.sqrt(3), 9);
    expect(nut.height).toBeGreaterThan(0.65 * d);
    expect(nut.height).toBeLessThan(d);
  });

  it.each(sizes.filter((size) => screwHead('flat', size).ok))('%s: countersink takes the sharp head', (size) => {
    const sink = countersinkFor(size);
    if (!sink.ok) return expect(sink.why).toMatch(/DIN 74/);
    const head = must(screwHead('flat', size));
    expect(sink.value.angle).toBe(head.coneAngle);
    expect(sink.value.diameter).toBeGreaterThan(head.dk);
    expect(sink.value.diameter).toBeLessThan(head.dk + 0.5);
    expect(sink.value.throughHole).toBe(must(clearanceHole(size)).diameter);
  });

  it('takes a thread as well as a size', () => {
    expect(must(screwHead('socket', 'M10x1.25'))).toEqual(must(screwHead('socket', 'M10')));
    expect(must(clearanceHole('3/8-16 UNC'))).toEqual(must(clearanceHole('3/8')));
  });

  it('gives inch figures in millimetres: 3/8 normal hole 13/32 in', () => {
    expect(must(clearanceHole('3/8')).diameter).toBeCloseTo((13 / 32) * 25.4, 1);
  });
});

describe('lengths', () => {
  it.each(headKinds.flatMap((kind) => sizes.map((size) => ({ kind, size }))))(
    '$kind $size ascend and start short',
    ({ kind, size }) => {
      const answer = standardLengths(kind, size);
      if (!answer.ok) return expect(answer.why).toMatch(/Listed/);
      const { lengths } = answer.value;
      expect(lengths.length).toBeGreaterThan(2);
      expect(lengths.every((length, at) => at === 0 || length > (lengths[at - 1] ?? 0))).toBe(true);
      const d = must(readDesignation(size)).d;
      expect(lengths[0]).toBeLessThan(2.7 * d);
    },
  );

  it('picks the longest that fits, and says so when none does', () => {
    expect(must(longestUpTo('socket', 'M10', 37))).toBe(35);
    expect(must(longestUpTo('socket', 'M10', 35))).toBe(35);
    expect(longestUpTo('socket', 'M10', 12)).toEqual({ ok: false, why: expect.stringContaining('shortest is 16 mm') });
  });
});

describe('property classes', () => {
  it.each(proofLoads.rows)('$size proof loads follow from stress area and class within 0.7 %', (row) => {
    const thread = must(findThread(row.size));
    for (const cls of ['8.8', '10.9', '12.9'] as const) {
      const load = thread.stressArea * must(propertyClass(cls, thread.d)).proofStress;
      expect(Math.abs(load / must(proofLoad(row.size, cls)) - 1)).toBeLessThan(0.007);
    }
  });

  it('weakest first, and the 8.8 step lies at 16 mm', () => {
    expect(propertyClasses.rows.every((row) => row.Sp < row.Rp && row.Rp < row.Rm)).toBe(true);
    expect(must(propertyClass('8.8', 16)).tensileStrength).toBe(800);
    expect(must(propertyClass('8.8', 16.01)).tensileStrength).toBe(830);
  });

  it('reads grade 8 and refuses the unknown', () => {
    expect(must(propertyClass('Grade 8', 9.525)).tensileStrength).toBeCloseTo(1034.2, 1);
    expect(propertyClass('11.9', 10)).toEqual({ ok: false, why: expect.stringContaining('8.8, 10.9, 12.9') });
    expect(propertyClass('8.8', 60)).toEqual({ ok: false, why: expect.stringContaining('60 mm') });
  });
});
