/** What a sensor meets, harmonic by harmonic: sums of closed terms, and a tooth whose corners are worked out on paper. */
import { describe, expect, it } from 'vitest';
import { curvesOfHarmonics } from '../../src/formulas/fourier.ts';
import { signalTrace, sizesFor } from '../../src/formulas/signal-trace.ts';
import { toothHarmonics, toothPulse } from '../../src/formulas/tooth-field.ts';
import { windowTrace } from '../../src/formulas/window-trace.ts';

const turn = 2 * Math.PI;
const near = (value: number, digits = 9) => expect.closeTo(value, digits);

describe('the tooth that a pattern is made of', () => {
  it('keeps what lies within its own stretch, cut where that ends', () => {
    // Four pointed teeth of 10 over a root of 8, 0.6 to either side; level exp(-2 pi depth / pitch) less the root's exp(-0.8).
    const floor = Math.exp((-2 * Math.PI * 2) / ((Math.PI / 2) * 10));
    const outline = [0, 1, 2, 3, 4].flatMap((k) =>
      [
        { angle: (k * Math.PI) / 2 - 0.6, r: 8 },
        { angle: (k * Math.PI) / 2, r: 10 },
        { angle: (k * Math.PI) / 2 + 0.6, r: 8 },
      ].slice(0, k === 4 ? 1 : 3),
    );
    const point = { angle: near(0), level: near(1 - floor) };
    for (const k of [0, 1, 3, 5]) {
      const whole = toothPulse(outline, (k * Math.PI) / 2, Math.PI / 2);
      expect(whole.floor).toBeCloseTo(floor, 12);
      expect(whole.nodes).toEqual([
        { angle: near(-Math.PI / 4), level: near(0) },
        { angle: near(-0.6), level: near(0) },
        point,
        { angle: near(0.6), level: near(0) },
        { angle: near(Math.PI / 4), level: near(0) },
      ]);
      // Half way down either side, in a straight line from level to level.
      const tip = toothPulse(outline, (k * Math.PI) / 2, Math.PI / 2, 0.3);
      expect(tip.nodes).toEqual([
        { angle: near(-0.3), level: near((1 - floor) / 2) },
        point,
        { angle: near(0.3), level: near((1 - floor) / 2) },
      ]);
    }
  });
});

it('harmonics of teeth that lean: (1 / 2 pi) times the integral of the pattern times exp(-i n angle), in thin strips', () => {
  // Up at once, down in a straight line over 0.4; a floor of 0.1; teeth at 1 and 2.5, and one of half the height at 4.
  const saw = (height: number) => ({
    nodes: [
      { angle: 0, level: 0 },
      { angle: 0, level: height },
      { angle: 0.4, level: 0 },
    ],
    floor: 0.1,
  });
  const { re, im } = toothHarmonics(saw(1), [1, 2.5], 12, { pulse: saw(0.5), at: 4 });
  const strips = 40_000;
  for (const n of [0, 1, 2, 5, 11]) {
    const sum = [n === 0 ? 0.1 : 0, 0];
    for (const [at, height] of [
      [1, 1],
      [2.5, 1],
      [4, 0.5],
    ] as const)
      for (let i = 0; i < strips; i++) {
        const off = (0.4 * (i + 0.5)) / strips;
        const part = (height * (1 - off / 0.4) * 0.4) / strips / turn;
        sum[0] = (sum[0] as number) + part * Math.cos(n * (at + off));
        sum[1] = (sum[1] as number) - part * Math.sin(n * (at + off));
      }
    expect([re[n], n === 0 ? 0 : im[n]]).toEqual(sum.map((value) => near(value, 8)));
  }
});

describe('what is met, harmonic by harmonic', () => {
  // Bars half a pitch wide, N of them: 1/2 and 2 / (pi m) sin(pi m / 2) cos(m N angle) for m = 1, 3, 5..., each faded by its own law.
  const bars = (count: number, angle: number, left: (n: number) => number): number => {
    let sum = 0.5;
    for (let m = 1; m < 400; m += 2)
      sum += (2 / (Math.PI * m)) * (m % 4 === 1 ? 1 : -1) * left(m * count) * Math.cos(m * count * angle);
    return sum;
  };
  const even = (count: number) => Array.from({ length: count }, (_, i) => (turn * i) / count);

  it('windows before a face that wobbles, 0.5 of 1 mm: exp(-n gap / R), to a ten-thousandth also where it is nearest', () => {
    const { passed, gap, level } = windowTrace({
      halfBar: turn / 120,
      bars: even(30),
      pitchAngle: turn / 30,
      radius: 50,
      gap: 1,
      wobble: 0.5,
      off: { size: 0, nearestAt: 0 },
      pole: 0,
      spacing: null,
    });
    for (let k = 0; k < level.length; k += 7) {
      const angle = passed[k] as number;
      expect(gap[k]).toBeCloseTo(1 - 0.5 * Math.cos(angle), 9);
      const sum = bars(30, angle, (n) => Math.exp((-n * (gap[k] as number)) / 50));
      expect(Math.abs((level[k] as number) - sum)).toBeLessThan(1e-4);
    }
  });

  it('a wheel that runs out by 2 of 8 mm: (R / rho)^N, as close as six distances hold it', () => {
    const level = (angle: number, h: number) => ({ angle, level: h });
    const half = turn / 240;
    const trace = signalTrace({
      pulse: { nodes: [level(-half, 0), level(-half, 1), level(half, 1), level(half, 0)], floor: 0 },
      teeth: even(60),
      pitchAngle: turn / 60,
      tip: 60,
      gap: 8,
      off: { size: 2, nearestAt: 1 },
      pole: 0,
      spacing: null,
    });
    // Chebyshev's bound for a polynomial through six places: (N e / L)^6 / (6! 2^5) of the greatest there is, at the narrowest gap.
    const greatest = (2 / Math.PI) * (60 / 66) ** 60;
    const bound = (((60 * 2) / 68) ** 6 / (720 * 32)) * greatest;
    let worst = 0;
    trace.level.forEach((value, k) => {
      const at = trace.turn[k] as number;
      // The axis of turning at 0, the wheel's centre 2 from it, the sensor at 68.
      const [x, y] = [68 - 2 * Math.cos(at - 1), -2 * Math.sin(at - 1)];
      const rho = Math.hypot(x, y);
      expect(trace.gap[k]).toBeCloseTo(rho - 60, 9);
      worst = Math.max(worst, Math.abs(value - bars(60, at - Math.atan2(y, x), (n) => (60 / rho) ** n)));
    });
    expect(worst).toBeLessThan(bound);
  });
});

it('harmonics add up over two samples or any other power of two, and over no other number', () => {
  const strengths = (count: number) => ({ re: new Float64Array(count).fill(1), im: new Float64Array(count) });
  expect(curvesOfHarmonics([strengths(1)], 2)).toEqual([Float64Array.of(1, 1)]);
  // 1 + 2 cos over four samples.
  expect(Array.from(curvesOfHarmonics([strengths(2)], 4)[0] ?? [])).toEqual([3, 1, -1, 1].map((value) => near(value)));
  for (const samples of [0, 1, 3, 6, 48])
    expect(() => curvesOfHarmonics([strengths(1)], samples)).toThrow(/power of two/);
  expect(() => curvesOfHarmonics([strengths(3)], 4)).toThrow(/do not fit/);
});

it.each([
  // A power of two, at least 1024, four to a harmonic, 64 to a tooth, and never over 2^17; 8 harmonics at least, two samples to each at most.
  [100, 60, 4096, 100],
  [2000.4, 30, 8192, 2001],
  [256, 8, 1024, 256],
  [257, 8, 2048, 257],
  [2.5, 8, 1024, 8],
  [1e6, 60, 131_072, 65_536],
] as const)('%f harmonics of %d teeth: %d samples, %d harmonics', (wanted, teeth, samples, count) => {
  expect(sizesFor(wanted, turn / teeth)).toEqual({ samples, count });
});
