/** Adapters of every kind at random, all invented: registers of both genders inside and at the rim, seats, flats, every kind of hole. */
import fc from 'fast-check';
import type { AdapterSpec, HoleGroupSpec, HoleShape, RegisterSpec } from '../../src/parts/adapter-spec.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((v) => Math.round(v * 100) / 100);

const limitsOf = (diameter: number) => ({ lower: diameter, upper: diameter, zone: 'test' });

function register(outside: number): fc.Arbitrary<RegisterSpec | null> {
  const any = fc
    .record({
      gender: fc.constantFrom('male', 'female'),
      at: fc.constantFrom('inner', 'rim'),
      inner: mm(30, 56),
      narrower: mm(3, 8),
      depth: mm(1.5, 4),
      chamfer: mm(0, 1),
      cut: fc.boolean(),
    })
    .map(({ gender, at, inner, narrower, depth, chamfer, cut }): RegisterSpec => {
      const diameter = at === 'rim' ? Math.round((outside - narrower) * 100) / 100 : inner;
      return {
        gender,
        at,
        diameter,
        depth,
        limits: limitsOf(diameter),
        chamfer,
        undercut: gender === 'male' && at === 'inner' && cut ? { width: 0.4, depth: 0.3 } : null,
      } as RegisterSpec;
    });
  return fc.option(any, { freq: 5 });
}

const shape: fc.Arbitrary<HoleShape> = fc
  .record({
    kind: fc.constantFrom('surface', 'counterbore', 'countersink', 'blind', 'tapped through'),
    d: mm(4, 10),
    face: fc.constantFrom('driving', 'driven'),
    depth: mm(3, 9),
  })
  .map(({ kind, d, face, depth }): HoleShape => {
    if (kind === 'blind' || kind === 'tapped through') {
      const drillDepth = kind === 'blind' ? depth + 2 : null;
      return {
        kind: 'tapped',
        thread: 'M',
        major: d,
        tapDrill: 0.85 * d,
        face,
        threadDepth: depth,
        drillDepth,
        pointAngle: 118,
      };
    }
    const head =
      kind === 'counterbore'
        ? ({ kind, diameter: 1.7 * d, depth } as const)
        : kind === 'countersink'
          ? ({ kind, diameter: 2 * d, angle: 90 } as const)
          : ({ kind: 'surface' } as const);
    return { kind: 'passing', diameter: d, headFace: face, head };
  });

export const ring = (count: number, radius: number, first = 0) =>
  Array.from({ length: count }, (_, i) => {
    const angle = ((first + (i * 360) / count) * Math.PI) / 180;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });

const group = (side: HoleGroupSpec['side'], least: number, most: number): fc.Arbitrary<HoleGroupSpec> =>
  fc
    .record({ count: fc.integer({ min: 2, max: 6 }), radius: mm(least, most), first: mm(0, 90), shape })
    .map(({ count, radius, first, shape }) => ({
      id: `${side}-screws`,
      side,
      label: `${side} holes`,
      positions: ring(count, radius, first),
      shape,
    }));

/** Dimensions that belong together; holes may still come near one another, or cross. */
export const anyAdapter: fc.Arbitrary<AdapterSpec> = fc
  .record({
    thickness: mm(14, 32),
    outside: mm(124, 150),
    chamfer: mm(0, 1),
    bore: fc.option(mm(8, 26)),
    across: fc.option(mm(118, 122)),
    clocking: mm(0, 180),
    driving: group('driving', 36, 52),
    driven: group('driven', 36, 52),
    seat: fc.option(fc.record({ face: fc.constantFrom('driving', 'driven'), height: mm(2, 5) })),
    low: register(124),
    high: register(124),
  })
  .map(({ across, seat, low, high, driving, driven, ...rest }): AdapterSpec => {
    const free = seat && (seat.face === 'driving' ? low : high)?.at !== 'rim';
    return {
      id: 'adapter',
      name: 'RANDOM',
      material: { id: 'steel', name: 'steel', density: 0.00785 },
      ...rest,
      flats: across === null ? null : { across, angle: 90 },
      registers: { driving: low, driven: high },
      groups: [driving, driven],
      wheelSeat: free ? ({ ...seat, diameter: 118, limits: limitsOf(118) } as AdapterSpec['wheelSeat']) : null,
    };
  });
