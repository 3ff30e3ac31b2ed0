/** Every printed section is read by the job reader, with the numbers and the doubt that were printed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { resolveFlange } from '../../src/job/resolve-flange.ts';
import type { ChordReading } from '../../src/measure/chord-set.ts';
import { circleFromChords } from '../../src/measure/chord-set.ts';
import { type BlockParts, flangeBlock } from '../../src/measure/flange-block.ts';
import {
  fromReadings,
  givenOnce,
  type Instrument,
  instrumentDoubt,
  type Measured,
} from '../../src/measure/measured.ts';

/** The block beside another flange, read as a job; in inches when asked, which must not matter. */
function readBlock(side: 'driving' | 'driven', parts: BlockParts, units = 'mm') {
  const other = side === 'driving' ? 'driven' : 'driving';
  const text = `job: 1\nunits: ${units}\n${flangeBlock(side, parts)}${other}: { outside: 120 mm, holes: { count: 4, circle: 100 mm, diameter: 8 mm } }\n`;
  const read = readJob(text, 'block.job.yaml');
  if (!read.ok) throw new Error(`${text}\n${read.errors.map((error) => error.message).join('\n')}`);
  return { flange: read.job[side], errorAt: read.errorAt, text };
}

const near = (size: Measured | undefined) => ({
  value: expect.closeTo(size?.value ?? 0, 3),
  doubt: expect.closeTo(size?.doubt ?? 0, 3),
});

const tool = fc.constantFrom<Instrument>('caliper', 'micrometer', 'dial');
const sizeOf = (least: number, most: number, instrument: Instrument): fc.Arbitrary<Measured> =>
  fc
    .tuple(
      fc.double({ min: least, max: most, noNaN: true }),
      fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { maxLength: 5 }),
    )
    .map(([size, errors]) => {
      const base = Number(size.toFixed(3));
      if (errors.length === 0)
        return instrument === 'caliper'
          ? givenOnce(base)
          : { value: base, doubt: instrumentDoubt[instrument], basis: 'stated' };
      return fromReadings(
        errors.map((error) => Number((base + error * instrumentDoubt[instrument]).toFixed(4))),
        instrument,
      );
    });

describe('a printed section', () => {
  it('is read by a job in either unit, with value and doubt kept', () => {
    const parts = tool.chain((instrument) =>
      fc.record({
        instrument: fc.constant(instrument),
        outside: fc.option(sizeOf(120, 200, instrument), { nil: undefined }),
        register: fc.option(
          fc.record({
            gender: fc.constantFrom('male' as const, 'female' as const),
            diameter: sizeOf(20, 60, instrument),
            depth: fc.option(sizeOf(1, 9, instrument), { nil: undefined }),
          }),
          { nil: undefined },
        ),
        holes: fc.option(
          fc.record({
            count: fc.integer({ min: 2, max: 8 }),
            circle: sizeOf(80, 100, instrument),
            first: fc.option(fc.double({ min: -180, max: 180, noNaN: true }), { nil: undefined }),
            diameter: sizeOf(5, 9, instrument),
          }),
          { nil: undefined },
        ),
      }),
    );
    fc.assert(
      fc.property(
        parts,
        fc.constantFrom('mm', 'in'),
        fc.constantFrom('driving' as const, 'driven' as const),
        (given, units, side) => {
          const { flange } = readBlock(side, given, units);
          if (given.outside !== undefined) expect(flange.outside).toMatchObject(near(given.outside));
          if (given.holes !== undefined) {
            expect(flange.holes?.circle).toMatchObject(near(given.holes.circle));
            expect(flange.holes?.diameter).toMatchObject(near(given.holes.diameter));
            expect(flange.holes?.count).toBe(given.holes.count);
          }
          const register = given.register?.depth === undefined ? undefined : given.register;
          if (register === undefined) expect(flange.register).toBeUndefined();
          else
            expect(typeof flange.register === 'object' && flange.register.diameter).toMatchObject(
              near(register.diameter),
            );
        },
      ),
      { numRuns: 150 },
    );
  });

  it('keeps chords as they were read, and the job comes to the same circle and doubt', () => {
    const chords: ChordReading[] = [
      { span: 'skip_one', over: 'outside', reading: fromReadings([103.1, 103.14], 'caliper') },
      { span: 'skip_one', over: 'inside', reading: givenOnce(87.05) },
      { span: 1, over: 'outside', reading: givenOnce(66.9), pin: givenOnce(8.03) },
    ];
    const hole = givenOnce(8.1);
    const set = circleFromChords(5, chords, hole);
    const { flange, text } = readBlock('driving', {
      outside: givenOnce(130),
      holes: { count: 5, chords, diameter: hole },
    });
    expect(flange.holes?.chords).toHaveLength(3);
    expect(flange.holes?.chords?.[0]?.reading.readings).toEqual([103.1, 103.14]);
    if (!set.ok) throw new Error(set.why);
    expect(text).toContain(`# circle ${Number(set.circle.value.toFixed(3))} +-`);
    const read = readBlock('driving', { outside: givenOnce(130), holes: { count: 5, chords, diameter: hole } });
    const resolved = resolveFlange('driving', read.flange, [], read.errorAt);
    if (!resolved.ok) throw new Error(resolved.errors.map(({ message }) => message).join('\n'));
    expect(resolved.flange.holes.circle).toBeCloseTo(set.circle.value, 6);
    expect(resolved.flange.holes.doubt).toBeCloseTo(set.circle.doubt / 2, 6);
  });

  it('keeps coordinates, angles, threads and dial readings', () => {
    const at = [
      { x: 29, y: 24 },
      { x: -29, y: 24 },
      { x: -29, y: -24 },
      { x: 29, y: -24 },
    ];
    expect(readBlock('driven', { holes: { at, thread: '5/16-18 UNC' } }).flange.holes).toMatchObject({
      at: at.map(({ x, y }) => [x, y]),
      thread: '5/16-18 UNC',
    });
    expect(
      readBlock('driven', { holes: { circle: givenOnce(100), angles: [0, 70, 180, 250.5], diameter: givenOnce(8) } })
        .flange.holes?.angles,
    ).toEqual([0, 70, 180, 250.5]);
    const rim = { readings: [-0.02, 0, 0.03, 0.01] };
    const face = { readings: [0, 0.02, 0.01], angles: [0, 100, 220], radius: 45 };
    expect(readBlock('driving', { runout: { rim, face } }).flange.runout).toMatchObject({
      rim: { readings: rim.readings, angles: [0, 90, 180, 270] },
      face,
    });
  });

  it('turns a register without its depth, and nothing at all, into something that still reads', () => {
    const { flange, text } = readBlock('driving', { register: { gender: 'female', diameter: givenOnce(57) } });
    expect(flange.register).toBeUndefined();
    expect(text).toContain('#   depth: ?');
    expect(readBlock('driving', {}).flange).toEqual({});
  });

  it('does not hand on readings that a job would refuse: an oval keeps value and doubt', () => {
    const oval: Measured = { value: 57, doubt: 0.12, basis: 'repeated', readings: [56.88, 57.12, 57, 57] };
    const { flange } = readBlock('driving', { register: { gender: 'male', diameter: oval, depth: givenOnce(3) } });
    expect(typeof flange.register === 'object' && flange.register.diameter).toMatchObject({
      value: 57,
      doubt: 0.12,
      basis: 'stated',
    });
  });
});
