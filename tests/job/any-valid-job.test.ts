import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { readJob } from '../../src/job/read.ts';

/** A length in mm, typed in one of the ways people type it. */
function typedLength(least: number, most: number): fc.Arbitrary<{ mm: number; typed: unknown }> {
  const hundredths = fc
    .integer({ min: Math.ceil(least * 100), max: Math.floor(most * 100) })
    .map((count) => count / 100);
  return fc.tuple(hundredths, fc.constantFrom('bare', 'mm', 'in', 'cm', 'thou')).map(([mm, unit]) => {
    if (unit === 'bare') return { mm, typed: mm };
    if (unit === 'mm') return { mm, typed: `${mm} mm` };
    if (unit === 'cm') return { mm, typed: `${mm / 10} cm` };
    // 1 in = 25.4 mm exactly; the typed text keeps enough decimals to come back within a nanometre.
    return unit === 'in'
      ? { mm, typed: `${(mm / 25.4).toFixed(9)} in` }
      : { mm, typed: `${(mm / 0.0254).toFixed(6)} thou` };
  });
}

/** A flange whose parts fit inside each other: register < holes < rim. */
const flange = fc
  .record({
    register: typedLength(30, 60),
    hole: typedLength(6, 10),
    margin: typedLength(12, 25),
    rim: typedLength(12, 30),
    count: fc.integer({ min: 3, max: 8 }),
    gender: fc.constantFrom('male', 'female'),
    hasRegister: fc.boolean(),
    layout: fc.constantFrom('circle', 'chord', 'angles', 'at'),
  })
  .map(({ register, hole, margin, rim, count, gender, hasRegister, layout }) => {
    const circle = register.mm + 2 * margin.mm;
    const outside = circle + 2 * rim.mm;
    const step = 360 / count;
    const angles = Array.from({ length: count }, (_, index) => index * step);
    const places = {
      circle: { count, circle },
      chord: { count, chord: circle * Math.sin(Math.PI / count) },
      angles: { angles, circle },
      at: {
        at: angles.map((angle) => [
          (circle / 2) * Math.cos((angle * Math.PI) / 180),
          (circle / 2) * Math.sin((angle * Math.PI) / 180),
        ]),
      },
    }[layout];
    const typed = {
      outside: `${outside} mm`,
      register: hasRegister ? { gender, diameter: register.typed, depth: '2.5 mm' } : 'none',
      holes: { ...places, diameter: hole.typed },
    };
    return { typed, outside, register: register.mm, hole: hole.mm, hasRegister };
  });

describe('any valid job', () => {
  it('reads to the numbers that were meant, whatever units they were typed in', () => {
    const duty = fc.record({
      torque: fc.integer({ min: 2, max: 5000 }),
      speed: fc.integer({ min: 50, max: 20_000 }),
    });
    fc.assert(
      fc.property(flange, flange, fc.option(duty), fc.constantFrom('block', 'json'), (driving, driven, load, style) => {
        const data = {
          job: 1,
          title: 'Any',
          driving: driving.typed,
          driven: driven.typed,
          ...(load === null ? {} : { duty: load }),
        };
        const read = readJob(style === 'json' ? JSON.stringify(data) : stringify(data), 'any.job.yaml');
        expect(read.ok ? [] : read.errors).toEqual([]);
        if (!read.ok) return;
        for (const [side, meant] of [
          ['driving', driving],
          ['driven', driven],
        ] as const) {
          const { outside, register, holes } = read.job[side];
          expect(outside?.value).toBeCloseTo(meant.outside, 6);
          expect(holes?.diameter?.value).toBeCloseTo(meant.hole, 6);
          if (meant.hasRegister)
            expect(register).toMatchObject({ diameter: { value: expect.closeTo(meant.register, 6) } });
          else expect(register).toBe('none');
        }
        expect(read.job.duty?.torque).toBe(load?.torque);
        expect(read.given.has('driven.holes.diameter')).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});
