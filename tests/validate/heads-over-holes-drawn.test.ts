/** Bearing faces beside other holes, drawn by hand: one M8 screw, a face of 13 on a hole of 9, holes of 9 beside it. mm */
import { describe, expect, it } from 'vitest';
import { headsOverHoles } from '../../src/validate/heads-over-holes.ts';
import { drawn } from './drawn-screws.ts';
import { expectSaid, findingOf, type Patch } from './help.ts';

const seat = { under: 'head', part: 'driving flange', face: 13, outer: 13, inner: 9, limit: null };
const at = (away: number) => ({ x: 50 + away, y: 0 });

interface Beside {
  /** Distances of empty holes, of holes with a screw, and of pins of 6. */
  readonly empty?: readonly number[];
  readonly next?: readonly number[];
  readonly pins?: readonly number[];
  readonly on?: Patch;
  readonly screws?: Patch;
}
function run({ empty = [], next = [], pins = [], on = {}, screws = {} }: Beside) {
  const { joint } = drawn(
    { tightening: { seats: [{ ...seat, ...on }] }, positions: [at(0)], ...screws },
    {
      driving: {
        holes: { diameter: { value: 9 }, positions: [at(0), ...next.map(at)], unused: empty.map(at) },
      },
      ...(pins.length > 0 ? { dowels: { driving: { pin: { d: 6 } } } } : {}),
      adapterSpec: { groups: [{ id: 'driving-dowels', positions: pins.map(at) }] },
    },
  );
  return headsOverHoles.run(joint);
}
const said = (beside: Beside, code = 'heads-clear-holes-driving') => findingOf({ findings: run(beside) }, code);

/** Share of a ring that a hole of 9 so far beside it leaves, in thin strips: a circle's chord at x is 2 sqrt(r2 - x2). */
function leftOf(outer: number, inner: number, distance: number): number {
  const [n, from, to] = [100_000, distance - 4.5, outer / 2];
  const half = (r: number, x: number) => Math.sqrt(Math.max(0, r * r - x * x));
  let cut = 0;
  for (let i = 0; i < n; i++) {
    const x = from + ((i + 0.5) * (to - from)) / n;
    const hole = half(4.5, x - distance);
    cut += (2 * (Math.min(hole, half(outer / 2, x)) - Math.min(hole, half(inner / 2, x))) * (to - from)) / n;
  }
  return 1 - cut / ((Math.PI / 4) * (outer ** 2 - inner ** 2));
}

describe('beside empty holes', () => {
  it.each([
    // Distance less 4.5 and 6.5; the screw may stand off by half of 9 - 8. A face that loses a tenth fails (choice of this program).
    [12.5, 1.5, 'pass'],
    [11.5, 0.5, 'pass'],
    [11.49, 0.49, 'caution'],
    [11, 0, 'caution'],
    [10.9, -0.1, 'caution'],
    [8.5, -2.5, 'fail'],
  ] as const)('%f away: %f, %s', (away, value, verdict) => {
    expectSaid(said({ empty: [away] }), { verdict, value, limit: 0.5 });
  });

  it('the tenth itself: by the area of the lens', () => {
    let [whole, gone] = [11, 8.5];
    while (whole - gone > 1e-6) {
      const middle = (whole + gone) / 2;
      if (leftOf(13, 9, middle) >= 0.9) whole = middle;
      else gone = middle;
    }
    expect(said({ empty: [whole + 0.002] }).verdict).toBe('caution');
    expect(said({ empty: [whole + 0.002] }).why).toContain('90 % of it is left');
    expect(said({ empty: [gone - 0.002] }).verdict).toBe('fail');
    expect(said({ empty: [gone - 0.002] }).why).toContain('89 % of it is left');
    expect(said({ empty: [gone] }).why).not.toContain('come into each other');
  });

  it('says which is nearest, how far and how wide, and by how much it is overlapped', () => {
    const clear = said({ empty: [14, 12.5, 13] }).why;
    expect(clear).toContain(
      'The bearing face is 13.0 mm; the nearest other hole is the empty hole, 12.5 mm from the screw and 9.0 mm wide.',
    );
    expect(clear).toContain('The screw may stand off by 0.50 mm in its own hole.');
    expect(said({ empty: [10.9] }).why).toContain('lies 0.10 mm over the edge of the empty hole');
    // By its edge: a pin of 6 is nearer than a hole of 9 where its middle is 1.5 nearer.
    expect(said({ empty: [12.5], pins: [11.1] }).why).toContain('nearest other hole is the empty hole');
    expect(said({ empty: [12.5], pins: [10.9] }).why).toContain(
      'nearest other hole is the dowel hole, 10.9 mm from the screw and 6.0 mm wide',
    );
    expect(said({ empty: [-12.5], next: [12.4] }).why).toContain("nearest other hole is the next screw's hole");
  });

  it('a screw that fills its hole has no play to keep', () => {
    expectSaid(said({ empty: [11], on: { inner: 7.9 } }), { verdict: 'pass', value: 0, limit: 0 });
    expectSaid(said({ empty: [11.5], on: { inner: 9.2 } }), { verdict: 'caution', value: 0.5, limit: 0.6 });
  });

  it('a face no wider than its hole has nothing left', () => {
    expect(said({ empty: [10.9], on: { inner: 13 } })).toMatchObject({
      verdict: 'fail',
      why: expect.stringContaining(': 0 %'),
    });
    // Where no washer is known none is advised.
    const unknown = { screws: { thread: 'M8.3' } };
    expect(said({ empty: [10.9], on: { inner: 13 }, ...unknown }).remedy).not.toContain('washers');
    // A ring of 0.005 is one: 0.01 over it are 0.46 of 40.8 round it.
    expect(said({ empty: [10.99], on: { inner: 12.99 } }).verdict).toBe('caution');
  });

  it('pins under a face are no more than a caution: they fill their holes', () => {
    // 0.5 over the pin, and so far over it that a tenth is gone.
    expectSaid(said({ empty: [30], pins: [9] }), { verdict: 'caution', value: -0.5, limit: 0.5 });
    expectSaid(said({ empty: [30], pins: [6.6] }), { verdict: 'caution', value: -2.9, limit: 0.5 });
  });
});

describe('where every hole has its screw', () => {
  it('nothing is told of faces that lie clear or touch; one over the next hole fails', () => {
    expect(run({ next: [12] })).toEqual([]);
    expect(run({ next: [11] })).toEqual([]);
    expect(run({})).toEqual([]);
    const over = said({ next: [10.99] });
    expectSaid(over, { verdict: 'fail', value: -0.01, limit: 0 });
    expect(over.why).toContain('The heads come into each other too.');
    expect(over.remedy).not.toContain('holes.use');
    // An empty hole that is farther off asks for its play all the same.
    expectSaid(said({ next: [11], empty: [30] }), { verdict: 'caution', value: 0, limit: 0.5 });
    expect(said({ next: [11], empty: [30] }).why).not.toContain('come into each other');
  });

  it('the worst of the screws counts', () => {
    // The next screw has an empty hole 0.5 nearer than the first.
    const found = said({ next: [40], empty: [13, 28] });
    expect(found.value).toBeCloseTo(12 - 11, 6);
    expect(found.why).toContain('12.0 mm from the screw');
  });
});

describe('what to do about it', () => {
  const washer = { outside: 16, thickness: 1.6, hole: 8.4 };
  const cure = (away: number, more: Beside = {}) => said({ empty: [away], ...more }).remedy;

  it('washers left out, where the bare heads clear it with their play', () => {
    // On a washer 15.56 wide; the bare face of 13 clears 11.5.
    const washed = { on: { outer: 15.56 }, screws: { washer } };
    expect(said({ empty: [11.5], ...washed }).title).toContain('heads, on washers, clear');
    expect(cure(11.5, washed)).toMatch(
      /^Leave the washers out \(adapter\.driving\.washer: false\): the heads alone clear it, or take thinner/,
    );
    expect(cure(11.49, washed)).toMatch(/^Take thinner screws \(adapter\.driving\.screw\)\./);
    expect(cure(11.4)).not.toContain('Leave the washers');
  });

  it('the other head, where its face is small enough: hexagon 11.63 (ISO 4017), socket 12.33 (ISO 4762)', () => {
    // 11.63 / 2 + 4.5 + 0.5 = 10.815; 12.33 / 2 + 5 = 11.165.
    expect(cure(10.82)).toMatch(/^Take smaller heads \(adapter\.driving\.head: hex\), which clear it/);
    expect(cure(10.81)).not.toContain('smaller heads');
    const hex = { screws: { head: { kind: 'hex' } } };
    expect(cure(11.17, hex)).toMatch(/^Take smaller heads \(adapter\.driving\.head: socket\), which clear it/);
    expect(cure(11.16, hex)).not.toContain('smaller heads');
    expect(cure(10.82, { screws: { washer }, on: { outer: 15.56 } })).not.toContain('smaller heads');
  });

  it('thick washers, where they leave a twentieth more than the bare face: areas by strips', () => {
    // ISO 7089 M8, 16 x 1.6: 13 + 1.6 x 1.6 = 15.56.
    const area = (outer: number, away: number) => leftOf(outer, 9, away) * (Math.PI / 4) * (outer ** 2 - 81);
    for (const away of [10.9, 9, 8.5]) {
      expect(area(15.56, away)).toBeGreaterThan(1.05 * area(13, away));
      expect(cure(away)).toMatch(
        /[Pp]ut thick hardened washers under them that bridge the hole \(adapter\.driving\.washer: true/,
      );
      expect(cure(away)).toContain(
        `gives ${area(15.56, away).toFixed(0)} mm2 in place of ${area(13, away).toFixed(0)})`,
      );
    }
    // Uncut at 12.5, and the washer is no larger than 16: (16^2 - 81) over (15.73^2 - 81) is 1.051, over (15.75^2 - 81) 1.048.
    expect(cure(12.5, { on: { face: 15.73, outer: 15.73 } })).toContain('hardened washers');
    expect(cure(12.5, { on: { face: 15.75, outer: 15.75 } })).not.toContain('hardened washers');
    expect(cure(11, { screws: { washer }, on: { outer: 15.56 } })).not.toContain('hardened washers');
    expect(cure(10.9, { screws: { thread: 'M8.3' } })).not.toContain('hardened washers');
  });

  it('an empty hole stays, whatever number of screws is used', () => {
    const stays = 'another number in driving.holes.use does not take it away';
    expect(cure(10.9)).toContain(stays);
    expect(said({ next: [10.9], empty: [30] }).remedy).toContain(stays);
    expect(said({ next: [10.9] }).remedy).not.toContain(stays);
  });

  it('nuts have no other heads to take', () => {
    const nuts = said({ empty: [10.82], on: { under: 'nut' } }, 'nuts-clear-holes-driving');
    expect(nuts.title).toContain('nuts clear of other holes in the driving flange');
    expect(nuts.remedy).not.toContain('smaller heads');
    const washed = { on: { under: 'nut', outer: 15.56 }, screws: { washer } };
    expect(said({ empty: [11.5], ...washed }, 'nuts-clear-holes-driving').remedy).toContain('the nuts alone clear it');
  });
});

it('each flange by its own holes, and nothing of other parts or of the wheel', () => {
  const driven = { driven: { holes: { diameter: { value: 10 }, positions: [at(0)], unused: [at(12)] } } };
  const of = (part: string, screws: Patch = {}) =>
    headsOverHoles.run(
      drawn({ tightening: { seats: [{ ...seat, part }] }, positions: [at(0)], ...screws }, driven).joint,
    );
  expect(of('driven flange').map(({ value, title }) => [value, title])).toEqual([
    [0.5, 'M8 heads clear of other holes in the driven flange'],
  ]);
  expect(of('wheel')).toEqual([]);
  expect(of('driven flange', { side: 'wheel' })).toEqual([]);
  expect(headsOverHoles.run(drawn({ tightening: { seats: undefined } }, driven).joint)).toEqual([]);
});

describe('heads that stand on the adapter', () => {
  const on = { part: 'adapter' };
  /** A hole of 10 from `low` to `high` through the adapter of 20, so far beside the screw. */
  const hole = (away: number, feature: Patch, [low, high] = [0, 20], radius = 5): Patch => ({
    adapter: {
      features: [{ id: 'one', ...feature }],
      drillings: [
        // Its own hole is none beside it.
        { feature: 'one', ...at(0), profile: [0, 20].map((z) => ({ z, r: 4.5 })) },
        { feature: 'one', ...at(away), profile: [low, high].map((z) => ({ z, r: radius })) },
      ],
    },
  });
  const found = (away: number, feature: Patch = {}, stretch?: number[], screws: Patch = {}) =>
    headsOverHoles.run(
      drawn(
        { tightening: { seats: [{ ...seat, ...on }] }, positions: [at(0)], ...screws },
        hole(away, feature, stretch as [number, number]),
      ).joint,
    );

  it.each([
    [{ side: 'driving', purpose: 'screw hole' }, "next screw's hole", 'fail', true],
    [{ side: 'driven', purpose: 'screw hole' }, 'hole', 'caution', false],
    [{ side: 'driving', purpose: 'dowel hole' }, 'dowel hole', 'caution', false],
    [{ side: 'driving', purpose: 'bore' }, 'bore', 'caution', false],
    [{ side: 'driving', purpose: 'recess' }, 'bore', 'caution', false],
  ] as const)('0.2 over a hole of %o: %s, %s', (feature, name, verdict, collides) => {
    const [only, ...others] = found(11.3, feature);
    expect(others).toEqual([]);
    if (!only) throw new Error('nothing said');
    expectSaid(only, { verdict, value: -0.2, limit: 0 });
    expect(only.why).toContain(`over the edge of the ${name}:`);
    expect(only.why.includes('come into each other')).toBe(collides);
    expect(only.remedy).not.toContain('holes.use');
  });

  it('touching is clear, and so is a hole that opens on the other face only, or heads that are sunk', () => {
    expect(found(11.5)).toEqual([]);
    expect(found(11.3)).toHaveLength(1);
    expect(found(11.3, {}, [0, 19])).toEqual([]);
    expect(found(11.3, {}, [1, 20])).toHaveLength(1);
    expect(found(11.3, {}, undefined, { seat: 'sunk' })).toEqual([]);
    // A hole that passes nothing has no face to look at.
    expect(found(11.3, {}, undefined, { id: 'others' })).toEqual([]);
  });
});
