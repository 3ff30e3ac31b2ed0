/** Random joints whose two hole circles stand well apart (two pockets and a web): what is left on auto must come out sound. Lengths in mm. */
import fc from 'fast-check';
import type { Patch } from '../validate/help.ts';

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);

interface Holes {
  readonly count: number;
  readonly tapped: 'M6' | 'M8' | 'M10' | null;
  readonly clear: number;
}

const holes = fc.record<Holes>({
  count: fc.integer({ min: 3, max: 6 }),
  tapped: fc.constantFrom('M6', 'M8', 'M10', null),
  clear: fc.constantFrom(6.4, 6.6, 8.1, 8.4, 9, 9.7, 10.1, 10.5, 11),
});

const register = fc.record({
  gender: fc.constantFrom('male', 'female'),
  doubt: fc.constantFrom(0.005, 0.03, 0.05),
  depth: tenths(2, 5),
  corner: fc.constantFrom(0.3, 0.5, 0.8),
});

/** As typed: the smaller flange drives or is driven, each side tapped or clear, registers inside the smaller circle. */
export const randomJoint = fc
  .record({
    inner: holes,
    outer: holes,
    circle: tenths(72, 100),
    apart: tenths(54, 80),
    registers: fc.tuple(fc.option(register), fc.option(register)),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    smallDrives: fc.boolean(),
    thickness: tenths(7, 16),
    depth: fc.constantFrom(undefined, 20, 24),
    behind: fc.constantFrom(undefined, 60),
    material: fc.constantFrom('S355', '1045', '6061-T6', '4140-Q&T'),
    head: fc.constantFrom('auto', 'socket'),
    washer: fc.boolean(),
    class: fc.constantFrom('8.8', '10.9'),
    flats: fc.constantFrom('none', 'auto'),
    wheel: fc.boolean(),
  })
  .map((r): Patch => {
    const flange = (own: Holes, circle: number, fits: (typeof r.registers)[number]): Patch => ({
      outside: circle + 26,
      thickness: r.thickness,
      holes: {
        count: own.count,
        circle,
        ...(own.tapped === null
          ? { diameter: own.clear }
          : { thread: own.tapped, ...(r.depth === undefined ? {} : { depth: r.depth }) }),
      },
      // Both registers lie inside the smaller circle by its widest pocket, 24, a web and the mouth of a recess.
      register:
        fits === null
          ? 'none'
          : {
              gender: fits.gender,
              diameter: { value: 24 + r.share * (r.circle - 24 - 34), doubt: fits.doubt },
              depth: fits.depth,
              corner: fits.corner,
            },
      ...(r.behind === undefined ? {} : { behind: r.behind }),
    });
    const small = flange(r.inner, r.circle, r.registers[0]);
    const large = flange(r.outer, r.circle + r.apart, r.registers[1]);
    const outside = r.circle + r.apart + 90;
    return {
      job: 1,
      duty: { speed: '3000 rpm' },
      driving: r.smallDrives ? small : large,
      driven: r.smallDrives ? large : small,
      adapter: {
        material: r.material,
        flats: r.flats,
        driving: { head: r.head, washer: r.washer, class: r.class },
        driven: { head: r.head, washer: r.washer, class: r.class },
      },
      ...(r.wheel ? { wheel: { teeth: 60, outside, height: 5, ratio: 0.4 } } : {}),
    };
  });
