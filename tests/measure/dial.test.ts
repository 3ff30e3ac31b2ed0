/** Registers and run-out from readings made up of known parts: what went in must come out. */
import { describe, expect, it } from 'vitest';
import { equalAngles, fitHarmonics } from '../../src/measure/harmonics.ts';
import { type RegisterReadings, sizeRegister } from '../../src/measure/register.ts';
import { faceRunout, rimRunout } from '../../src/measure/runout.ts';
import { must } from '../../src/standards/table.ts';
import { angleBetween, normal, radians, randomFrom, within } from './random.ts';

/** What a dial reads: eccentricity e towards a, ovality o (greatest less smallest diameter) widest at b. */
const dialAt = (t: number, e: number, a: number, o = 0, b = 0) =>
  e * Math.cos(radians(t - a)) + (o / 2) * Math.cos(radians(2 * (t - b)));

describe('run-out of a rim', () => {
  it('comes apart into eccentricity and ovality with their directions', () => {
    const random = randomFrom(61);
    for (let round = 0; round < 500; round++) {
      const count = 5 + Math.floor(12 * random());
      const [e, a, o, b] = [0.2 * random(), 360 * random(), 0.1 * random(), 180 * random()];
      const angles = equalAngles(count, 360 * random());
      const rim = must(rimRunout({ readings: angles.map((t) => 0.5 + dialAt(t, e, a, o, b)), angles }));
      expect(rim.eccentricity.size).toBeCloseTo(e, 9);
      if (e > 1e-3) expect(angleBetween(rim.eccentricity.angle, a)).toBeLessThan(1e-5);
      expect(rim.ovality?.size).toBeCloseTo(o, 9);
      if (o > 1e-3) expect(angleBetween(2 * (rim.ovality?.angle ?? 0), 2 * b)).toBeLessThan(1e-5);
      expect(rim.remainder).toBeLessThan(1e-9);
    }
  });

  it('agrees with the discrete Fourier sums at equal angles', () => {
    // Second method: at equal steps a1 = 2/n sum r cos t, b1 = 2/n sum r sin t (textbook discrete Fourier series).
    const readings = [0, 0.04, 0.07, 0.03, -0.02, -0.06, -0.05, -0.01];
    const angles = equalAngles(8);
    const sums = angles.reduce(
      ([c, s], t, k) =>
        [c + ((readings[k] ?? 0) * Math.cos(radians(t))) / 4, s + ((readings[k] ?? 0) * Math.sin(radians(t))) / 4] as [
          number,
          number,
        ],
      [0, 0] as [number, number],
    );
    const rim = must(rimRunout({ readings, angles }));
    expect(rim.eccentricity.size).toBeCloseTo(Math.hypot(...sums), 12);
    expect(angleBetween(rim.eccentricity.angle, (Math.atan2(sums[1], sums[0]) * 180) / Math.PI)).toBeLessThan(1e-9);
    expect(rim.tir).toBeCloseTo(0.13, 12);
  });

  it('is half the total reading for a round rim off centre: e = TIR / 2', () => {
    // e = TIR / 2 (definition, balance handbooks): readings at high and low spot.
    const angles = equalAngles(4, 30);
    const rim = must(rimRunout({ readings: angles.map((t) => dialAt(t, 0.025, 30)), angles }));
    expect(rim.tir).toBeCloseTo(0.05, 12);
    expect(rim.eccentricity.size).toBeCloseTo(rim.tir / 2, 12);
    expect(rim.eccentricity.angle).toBeCloseTo(30, 9);
  });

  it('holds the true eccentricity in its doubt always while the dial keeps within its own', () => {
    const random = randomFrom(67);
    for (let round = 0; round < 4000; round++) {
      const count = 3 + Math.floor(10 * random());
      const [e, a] = [0.1 * random(), 360 * random()];
      const o = count >= 5 ? 0.05 * random() : 0;
      const angles = equalAngles(count);
      const readings = angles.map((t) => dialAt(t, e, a, o, 40) + (random() < 0.5 ? -1 : 1) * 0.01);
      const { eccentricity } = must(rimRunout({ readings, angles }));
      const off = Math.hypot(
        eccentricity.size * Math.cos(radians(eccentricity.angle)) - e * Math.cos(radians(a)),
        eccentricity.size * Math.sin(radians(eccentricity.angle)) - e * Math.sin(radians(a)),
      );
      expect(off).toBeLessThanOrEqual(eccentricity.doubt + 1e-9);
    }
  });

  it('takes stated angles that are not equal', () => {
    const angles = [0, 40, 100, 150, 220, 290, 330];
    const rim = must(rimRunout({ readings: angles.map((t) => dialAt(t, 0.06, 200, 0.02, 75)), angles }));
    expect(rim.eccentricity).toMatchObject({ size: expect.closeTo(0.06, 9), angle: expect.closeTo(200, 6) });
    expect(rim.ovality).toMatchObject({ size: expect.closeTo(0.02, 9), angle: expect.closeTo(75, 6) });
  });

  it('leaves noise and dents to the remainder, and says where to look again', () => {
    const random = randomFrom(71);
    const angles = equalAngles(12);
    const noisy = must(
      rimRunout({ readings: angles.map((t) => dialAt(t, 0.08, 120) + normal(random, 0.002)), angles }),
    );
    expect(noisy.eccentricity.size).toBeCloseTo(0.08, 2);
    expect(noisy.notes).toEqual([]);
    const dented = must(
      rimRunout({ readings: angles.map((t, k) => dialAt(t, 0.02, 120) + (k === 5 ? -0.2 : 0)), angles }),
    );
    expect(dented.notes.join(' ')).toMatch(/neither eccentricity nor ovality/);
  });

  it('says when there are too few readings', () => {
    const two = rimRunout({ readings: [0, 0.1], angles: [0, 180] });
    expect(two.ok ? '' : two.why).toMatch(/2 dial readings are too few.*3 or more/);
    const four = must(rimRunout({ readings: [0, 0.02, 0.05, 0.02], angles: equalAngles(4) }));
    expect(four.ovality).toBeNull();
    expect(four.notes.join(' ')).toMatch(/tell no ovality: take 5 or more/);
    const twice = rimRunout({ readings: [0, 0.1, 0.2, 0], angles: [0, 120, 240, 360] });
    expect(twice.ok ? '' : twice.why).toMatch(/Two readings stand at 0 degrees/);
  });
});

describe('run-out of a face', () => {
  it('is a tilt by the radius it was read at', () => {
    // A plane tilted by g about the axis stands r tan g high at its high side.
    const [g, high, radius] = [0.05, 250, 45];
    const angles = equalAngles(6);
    const face = must(
      faceRunout(
        { readings: angles.map((t) => 0.1 + radius * Math.tan(radians(g)) * Math.cos(radians(t - high))), angles },
        radius,
      ),
    );
    expect(face.tilt.degrees).toBeCloseTo(g, 9);
    expect(face.tilt.high).toBeCloseTo(high, 6);
  });

  it('wants a radius', () => {
    const no = faceRunout({ readings: [0, 0.1, 0.2], angles: equalAngles(3) }, 0);
    expect(no.ok ? '' : no.why).toMatch(/radius/);
  });
});

describe('a register', () => {
  const read = (readings: readonly number[], more: Partial<RegisterReadings> = {}) =>
    sizeRegister({ readings, instrument: 'caliper', gender: 'male', ...more });

  it('is the mean of its readings, with the doubt of the instrument beyond the farthest where they cannot be of one size', () => {
    const { size } = must(read([57.02, 57.06, 57.1]));
    // 57.02 - 0.03 to 57.10 + 0.03.
    expect(size).toMatchObject({ value: 57.06, doubt: 0.07, basis: 'repeated' });
    // To 60.021 + 0.005 from a mean of 60.007.
    expect(must(read([60, 60, 60.021], { instrument: 'micrometer' })).size.doubt).toBeCloseTo(0.019, 9);
    // Six hundredths are still within a caliper's doubt on both sides.
    expect(must(read([57.02, 57.08])).size.doubt).toBe(0.03);
    expect(must(read([57.02, 57.03])).size.doubt).toBe(0.03);
    expect(must(read([57.02, 57.022], { instrument: 'micrometer' })).size.doubt).toBe(0.005);
  });

  it('finds an oval and its direction from readings across it', () => {
    const angles = [0, 30, 60, 90, 120, 150];
    const readings = angles.map((t) => 57 + 0.06 * Math.cos(radians(2 * (t - 40))));
    const { size, ovality, isOval } = must(read(readings, { angles, instrument: 'micrometer' }));
    expect(size.value).toBeCloseTo(57, 9);
    expect(ovality).toMatchObject({ size: expect.closeTo(0.12, 9), angle: expect.closeTo(40, 6) });
    expect(isOval).toBe(true);
  });

  it('does not average two readings that disagree', () => {
    const no = read([57.02, 57.4]);
    expect(no.ok ? '' : no.why).toMatch(/spread over 0\.38 mm.*57\.02 and 57\.4 mm disagree/);
    const odd = read([57.02, 57.03, 57.6, 57.02]);
    expect(odd.ok ? '' : odd.why).toMatch(/57\.6 mm \(number 3 of 4\) stands apart/);
  });

  it('warns of jaws in a small bore, and takes their error into the doubt', () => {
    const { size, notes } = must(read([9.02, 9.03, 9.02], { gender: 'female', jawFlat: 0.5 }));
    // 9.0233 - sqrt(9.0233^2 - 0.25) = 0.01386, by hand.
    expect(size.doubt).toBeCloseTo(0.03 + 0.01386, 4);
    expect(notes.join(' ')).toMatch(/read small bores small.*fit rings/);
    expect(must(read([9.02, 9.03, 9.02])).notes.join(' ')).not.toMatch(/small bores/);
  });

  it('holds the true size in its doubt always while readings keep within theirs', () => {
    const random = randomFrom(73);
    for (let round = 0; round < 5000; round++) {
      const true_ = 20 + 100 * random();
      const readings = Array.from({ length: 1 + Math.floor(6 * random()) }, () => true_ + within(random, 0.03));
      const { size } = must(read(readings));
      expect(Math.abs(size.value - true_)).toBeLessThanOrEqual(size.doubt + 1e-9);
    }
  });
});

describe('waves', () => {
  it('refuses angles that cannot tell', () => {
    const same = fitHarmonics([1, 2, 3], [0, 0, 0], [1], 0.01);
    expect(same.ok ? '' : same.why).toMatch(/spread the readings/);
    const few = fitHarmonics([1, 2, 3], [0, 120, 240], [1, 2], 0.01);
    expect(few.ok ? '' : few.why).toMatch(/5 or more/);
    const uneven = fitHarmonics([1, 2, 3], [0, 120], [1], 0.01);
    expect(uneven.ok ? '' : uneven.why).toMatch(/3 readings for 2 angles/);
  });
});
