/** From the strengths of harmonics to the curve that they add up to. */

/**
 * The real curve f(k) = c0 + 2 Re sum over n of c_n exp(2 pi i n k / M), k = 0 to M - 1, from its harmonics n = 0 upwards.
 * Radix-2 transform in place. Source: definition of the discrete Fourier transform; the halving step is the usual one.
 * @param re, im harmonics, fewer than M / 2; `im[0]` is not read
 * @param samples M, a power of two
 */
export function curveOfHarmonics(re: Float64Array, im: Float64Array, samples: number): Float64Array {
  if (samples < 2 || (samples & (samples - 1)) !== 0) throw new Error(`${samples} is no power of two.`);
  if (re.length > samples / 2) throw new Error(`${re.length} harmonics do not fit ${samples} samples.`);
  const x = new Float64Array(samples);
  const y = new Float64Array(samples);
  x[0] = re[0] ?? 0;
  for (let n = 1; n < re.length; n++) {
    x[n] = x[samples - n] = re[n] as number;
    y[n] = im[n] as number;
    y[samples - n] = -(im[n] as number);
  }
  toBitReversed(x, y);
  for (let half = 1; half < samples; half *= 2) {
    const { cos, sin } = turnsOf(half);
    for (let k = 0; k < half; k++) {
      const c = cos[k] as number;
      const s = sin[k] as number;
      for (let a = k; a < samples; a += 2 * half) {
        const b = a + half;
        const xb = x[b] as number;
        const yb = y[b] as number;
        const dx = c * xb - s * yb;
        const dy = c * yb + s * xb;
        x[b] = (x[a] as number) - dx;
        y[b] = (y[a] as number) - dy;
        x[a] = (x[a] as number) + dx;
        y[a] = (y[a] as number) + dy;
      }
    }
  }
  return x;
}

interface Turns {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/** Every transform turns by the same angles: each half's are worked out once. */
const known = new Map<number, Turns>();

function turnsOf(half: number): Turns {
  const turns = known.get(half) ?? {
    cos: Float64Array.from({ length: half }, (_, k) => Math.cos((Math.PI * k) / half)),
    sin: Float64Array.from({ length: half }, (_, k) => Math.sin((Math.PI * k) / half)),
  };
  known.set(half, turns);
  return turns;
}

function toBitReversed(x: Float64Array, y: Float64Array): void {
  for (let i = 1, j = 0; i < x.length; i++) {
    let bit = x.length >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i >= j) continue;
    [x[i], x[j]] = [x[j] as number, x[i] as number];
    [y[i], y[j]] = [y[j] as number, y[i] as number];
  }
}
