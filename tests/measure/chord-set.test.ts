/**
 * Bolt circle from several chords. The stated rate of a half-width: while every reading keeps within its own doubt, the true
 * circle lies inside the stated doubt always (100 in 100); when readings scatter normally with their doubt as two deviations,
 * at least 95 in 100.
 */
import { describe, expect, it } from 'vitest';
import { chordChoices, chordFactor } from '../../src/measure/chord.ts';
import { type ChordReading, type ChordSet, circleFromChords } from '../../src/measure/chord-set.ts';
import { fromReadings, givenOnce, instrumentDoubt, type Measured } from '../../src/measure/measured.ts';
import { normal, randomFrom, within } from './random.ts';

const read = (value: number): Measured => ({ value, doubt: 0.03, basis: 'given' });

function good(set: ChordSet): Extract<ChordSet, { ok: true }> {
  if (!set.ok) throw new Error(set.why);
  return set;
}

function refused(set: ChordSet): Extract<ChordSet, { ok: false }> {
  if (set.ok) throw new Error('these chords should have been refused');
  return set;
}

describe('one span', () => {
  it('gives the worked examples', () => {
    // Six neighbours 42.00 between centres lie on 84.00; five, farthest 95.106, on 100.000 (worked by hand: 2 x 42; 100 sin 72).
    expect(
      good(circleFromChords(6, [{ span: 'neighbours', over: 'centres', reading: read(42) }], null)).circle.value,
    ).toBeCloseTo(84, 9);
    expect(
      good(circleFromChords(5, [{ span: 'farthest', over: 'centres', reading: read(95.1057) }], null)).circle.value,
    ).toBeCloseTo(100, 3);
  });

  it('cancels the hole size exactly by outside and inside, and finds it', () => {
    const set = good(
      circleFromChords(
        5,
        [
          { span: 'skip_one', over: 'outside', reading: read(95.1057 + 8.1) },
          { span: 'skip_one', over: 'inside', reading: read(95.1057 - 8.1) },
        ],
        null,
      ),
    );
    expect(set.circle.value).toBeCloseTo(100, 3);
    expect(set.circle.doubt).toBeCloseTo(0.03 / Math.sin((72 * Math.PI) / 180), 9);
    expect(set.hole).toEqual({ value: 8.1, doubt: 0.03, basis: 'repeated' });
  });

  it('takes the hole off an outside reading, and its doubt in', () => {
    const hole = { value: 8.1, doubt: 0.05, basis: 'stated' as const };
    const set = good(circleFromChords(4, [{ span: 'farthest', over: 'outside', reading: read(108.1) }], hole));
    expect(set.circle).toMatchObject({ value: 100, doubt: 0.08 });
    const inside = good(circleFromChords(4, [{ span: 'farthest', over: 'inside', reading: read(91.9) }], hole));
    expect(inside.circle).toMatchObject({ value: 100, doubt: 0.08 });
  });

  it('prefers the pins it was read over', () => {
    const set = good(
      circleFromChords(4, [{ span: 'farthest', over: 'outside', reading: read(109.8), pin: read(9.8) }], read(8.1)),
    );
    expect(set.circle.value).toBeCloseTo(100, 9);
  });
});

describe('contradictions', () => {
  const chord = (span: number, over: ChordReading['over'], value: number): ChordReading => ({
    span,
    over,
    reading: read(value),
  });

  it.each([
    ['an outside reading without the hole', 6, [chord(1, 'outside', 50)], null, /needs their diameter/, 0],
    [
      'outside less than inside',
      6,
      [chord(1, 'outside', 33.9), chord(1, 'inside', 50.1)],
      null,
      /were they swapped/,
      0,
    ],
    [
      'a pair that says another hole',
      6,
      [chord(1, 'outside', 50.1), chord(1, 'inside', 33.9)],
      read(12),
      /say that the holes are 8.1/,
      0,
    ],
    [
      'an outside reading that is an inside one',
      6,
      [chord(1, 'outside', 15)],
      read(8.1),
      /Was it taken over the inside/,
      0,
    ],
    ['a span this pattern has not', 3, [chord(2, 'centres', 50)], null, /1 to 1 positions/, 0],
    ['nothing', 6, [], null, /no chord here/, null],
  ] as const)('refuses %s', (_, holes, chords, hole, why, at) => {
    const no = refused(circleFromChords(holes, [...chords], hole));
    expect(no.why).toMatch(why);
    expect(no.reading).toBe(at);
  });

  it('names the odd one of three, and by how much it is off', () => {
    // Circle 84 of six: 42, 72.746, 84. The second was misread by 1 mm: 73.746 / sin 60 = 85.155, 1.155 more.
    const no = refused(
      circleFromChords(6, [chord(1, 'centres', 42), chord(2, 'centres', 73.746), chord(3, 'centres', 84)], null),
    );
    expect(no.why).toMatch(/The odd one is skip one.*1\.15 mm larger/);
    expect(no.reading).toBe(1);
  });

  it('names both of two', () => {
    const no = refused(circleFromChords(6, [chord(1, 'centres', 42), chord(3, 'centres', 83)], null));
    expect(no.why).toMatch(/84 \+-0\.06 mm.*83 \+-0\.03 mm.*Measure both again/);
  });

  it('forgives what drilled holes scatter, and widens the doubt to cover it', () => {
    // 84.00 by neighbours +-0.06, 84.15 across +-0.03: 0.15 apart, 0.06 more than both doubts.
    const set = good(circleFromChords(6, [chord(1, 'centres', 42), chord(3, 'centres', 84.15)], null));
    expect(set.isScattered).toBe(true);
    expect(set.circle.value - set.circle.doubt).toBeLessThanOrEqual(84 + 1e-9);
    expect(set.circle.value + set.circle.doubt).toBeGreaterThanOrEqual(84.15 - 1e-9);
  });

  it('finds the span that was miscounted', () => {
    const no = refused(
      circleFromChords(8, [chord(1, 'centres', 38.268), chord(3, 'centres', 70.711), chord(4, 'centres', 100)], null),
    );
    expect(no.why).toMatch(/70\.711 mm would agree if it was measured between holes skip one/);
    expect(no.reading).toBe(1);
  });

  it('finds the edge that was mistaken', () => {
    const no = refused(circleFromChords(6, [chord(1, 'centres', 42), chord(3, 'centres', 92.1)], read(8.1)));
    expect(no.why).toMatch(/92\.1 mm would agree if it was read over the outside/);
  });
});

/** Chords of a random pattern with errors from `error`, at random spans and edges, and the hole measured likewise. */
function simulate(random: () => number, error: () => number): { holes: number; circle: number; set: ChordSet } {
  const holes = 2 + Math.floor(11 * random());
  const circle = 40 + 200 * random();
  const neighbours = circle * Math.sin(Math.PI / holes);
  const hole = Math.min(5 + 12 * random(), 0.45 * neighbours);
  const choices = chordChoices(holes).filter(() => random() < 0.6);
  const readings = (choices.length > 0 ? choices : chordChoices(holes).slice(-1)).flatMap(
    ({ positions }): ChordReading[] => {
      const centres = circle / chordFactor(holes, positions);
      const how = Math.floor(4 * random());
      const one = (over: ChordReading['over'], value: number): ChordReading => {
        const times = 1 + Math.floor(3 * random());
        const list = Array.from({ length: times }, () => value + error());
        return {
          span: positions,
          over,
          reading: times === 1 ? givenOnce(list[0] as number) : fromReadings(list, 'caliper'),
        };
      };
      if (how === 0) return [one('centres', centres)];
      if (how === 1) return [one('outside', centres + hole)];
      if (how === 2) return [one('inside', centres - hole)];
      return [one('outside', centres + hole), one('inside', centres - hole)];
    },
  );
  return { holes, circle, set: circleFromChords(holes, readings, givenOnce(hole + error())) };
}

describe('the stated doubt', () => {
  const rounds = 20_000;

  it('always holds the true circle while readings keep within their doubt, on 2 to 12 holes', () => {
    const random = randomFrom(20_240_601);
    let narrow = 0;
    for (let round = 0; round < rounds; round++) {
      const { circle, set } = simulate(random, () => within(random, instrumentDoubt.caliper));
      const { value, doubt } = good(set).circle;
      expect(Math.abs(value - circle)).toBeLessThanOrEqual(doubt + 1e-8);
      if (Math.abs(value - circle) > doubt / 2) narrow++;
    }
    // The bound is no idle one: some readings use more than half of it.
    expect(narrow / rounds).toBeGreaterThan(0.05);
  });

  it('holds it at the ends of the doubt too, where every reading is off as far as it can be', () => {
    const random = randomFrom(7);
    for (let round = 0; round < rounds / 4; round++) {
      const { circle, set } = simulate(random, () => (random() < 0.5 ? -1 : 1) * instrumentDoubt.caliper);
      const { value, doubt } = good(set).circle;
      expect(Math.abs(value - circle)).toBeLessThanOrEqual(doubt + 1e-8);
    }
  });

  it('holds it 95 in 100 when readings scatter normally with the doubt as two deviations', () => {
    const random = randomFrom(99);
    let inside = 0;
    let told = 0;
    for (let round = 0; round < rounds; round++) {
      const { circle, set } = simulate(random, () => normal(random, instrumentDoubt.caliper / 2));
      if (!set.ok) continue;
      told++;
      if (Math.abs(set.circle.value - circle) <= set.circle.doubt) inside++;
    }
    expect(inside / told).toBeGreaterThanOrEqual(0.95);
    // Readings beyond their doubt may be refused as contradictory, but seldom.
    expect(told / rounds).toBeGreaterThan(0.95);
  });

  it('is never more than that of the best single span', () => {
    const random = randomFrom(5);
    for (let round = 0; round < 2000; round++) {
      const set = good(simulate(random, () => within(random, 0.03)).set);
      for (const estimate of set.estimates) {
        expect(set.circle.doubt).toBeLessThanOrEqual(Math.abs(estimate.residual) + estimate.doubt + 1e-8);
      }
    }
  });
});
