/**
 * Sines and angles, held against series summed in whole numbers of 2^-200: definitions of the functions (DLMF 4.19.1, 4.19.2, 4.24.3), which
 * share no code and no rounding with what is tested.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acos, asin, atan, atan2, cos, sin, tan } from '../../src/units/trig.ts';

const bits = 200n;
const one = 1n << bits;

/** A double as a whole number of 2^-200, exactly. */
function exactly(value: number): bigint {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  const raw = view.getBigUint64(0);
  const exponent = Number((raw >> 52n) & 0x7ffn);
  const fraction = (raw & 0xfffffffffffffn) | (exponent === 0 ? 0n : 1n << 52n);
  const shift = bits + BigInt(Math.max(exponent, 1) - 1075);
  const size = shift >= 0n ? fraction << shift : fraction >> -shift;
  return raw >> 63n === 1n ? -size : size;
}
const rounded = (of: bigint) => Number(of) / 2 ** Number(bits);

/** sum of x^k / k! with alternating signs, k from `first` in steps of two. */
function alternating(x: bigint, first: 0 | 1): bigint {
  let term = first === 0 ? one : x;
  let sum = 0n;
  for (let k = first; term !== 0n; k += 2) {
    sum += term;
    term = -((((term * x) >> bits) * x) >> bits) / BigInt((k + 1) * (k + 2));
  }
  return sum;
}

/** arctan of a tangent below 1/2. */
function arc(t: bigint): bigint {
  let power = t;
  let sum = 0n;
  for (let k = 1n; power !== 0n; k += 2n) {
    sum += power / k;
    power = -((((power * t) >> bits) * t) >> bits);
  }
  return sum;
}
/** Machin 1706: pi / 4 = 4 arctan 1/5 - arctan 1/239. */
const pi = 4n * (4n * arc(one / 5n) - arc(one / 239n));

function exactAtan(value: number): bigint {
  const x = exactly(value);
  if (value < 0) return -exactAtan(-value);
  if (value > 1) return pi / 2n - exactAtanOf((one * one) / x);
  return exactAtanOf(x);
}
/** arctan x = arctan 1/2 + arctan((x - 1/2) / (1 + x / 2)): DLMF 4.24.15. */
const exactAtanOf = (x: bigint) => arc(one / 2n) + arc(((x - one / 2n) * one) / (one + x / 2n));

/** Units in the last place between a double and the exact value. */
function off(value: number, exact: bigint): number {
  const near = Math.abs(rounded(exact));
  const unit = 2 ** (Math.floor(Math.log2(Math.max(near, 2 ** -60))) - 52);
  return Math.abs(rounded(exactly(value) - exact)) / unit;
}

describe('sines and angles', () => {
  it('are right to a unit in the last place', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 30, noNaN: true }), (x) => {
        expect(off(sin(x), alternating(exactly(x), 1))).toBeLessThan(1);
        expect(off(cos(x), alternating(exactly(x), 0))).toBeLessThan(1);
        expect(off(atan(x), exactAtan(x))).toBeLessThan(1);
      }),
      { numRuns: 400 },
    );
  });

  it('are right close to quarter turns, where nearly all of the angle cancels', () => {
    for (let quarter = -9; quarter <= 9; quarter++) {
      for (const past of [0, 1e-16, -1e-13, 1e-9, -1e-5, 1e-3]) {
        const x = (quarter * Math.PI) / 2 + past;
        expect(off(sin(x), alternating(exactly(x), 1)), `sin ${x}`).toBeLessThan(1);
        expect(off(cos(x), alternating(exactly(x), 0)), `cos ${x}`).toBeLessThan(1);
      }
    }
  });

  it('are right many turns out', () => {
    // Whole turns are taken off exactly, in whole numbers.
    for (const x of [355, 1e4 + 0.1, 123456.789, -1e6]) {
      const rest = exactly(x) % (2n * pi);
      expect(off(sin(x), alternating(rest, 1)), String(x)).toBeLessThan(1);
      expect(off(cos(x), alternating(rest, 0)), String(x)).toBeLessThan(1);
    }
    expect(Math.abs(sin(1e9))).toBeLessThanOrEqual(1);
  });

  it('agree with each other: a direction has its angle in every quarter, a sine and a cosine come back', () => {
    fc.assert(
      fc.property(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (angle) => {
        expect(atan2(3 * sin(angle), 3 * cos(angle))).toBeCloseTo(angle, 14);
        expect(sin(asin(sin(angle)))).toBeCloseTo(sin(angle), 15);
        expect(cos(acos(cos(angle)))).toBeCloseTo(cos(angle), 15);
        expect(tan(angle) * cos(angle)).toBeCloseTo(sin(angle), 13);
      }),
    );
  });

  it('take zeros, infinities and what is no number as the language does', () => {
    const ends = [0, -0, 1, -1, Infinity, -Infinity, Number.NaN];
    for (const y of ends) {
      for (const x of ends) expect(atan2(y, x)).toBe(Math.atan2(y, x));
      expect(atan(y)).toBe(Math.atan(y));
      expect(asin(y)).toBe(Math.asin(y));
    }
    expect([sin(Infinity), cos(-Infinity), sin(Number.NaN), cos(Number.NaN)]).toEqual(Array(4).fill(Number.NaN));
    expect(Object.is(sin(-0), -0)).toBe(true);
    expect([acos(1), acos(-1), acos(2)]).toEqual([0, Math.PI, Number.NaN]);
  });
});
