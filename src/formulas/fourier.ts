/** From the strengths of harmonics to the curve that they add up to. */
import { cos, sin } from '../units/trig.ts';

/** Strengths of harmonics n = 0 upwards, both of one length. */
export interface Strengths {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * The real curves f(k) = c0 + 2 Re sum over n of c_n exp(2 pi i n k / M), k = 0 to M - 1, each from its harmonics n = 0 upwards. Two of
 * them share one transform, as its real and its imaginary part. Radix-2 in place. Source: definition of the discrete Fourier transform;
 * the halving step is the usual one.
 * @param harmonics of each curve, no more than M / 2; `im[0]` is not read
 * @param samples M, a power of two
 */
export function curvesOfHarmonics(harmonics: readonly Strengths[], samples: number): Float64Array[] {
  if (samples < 2 || (samples & (samples - 1)) !== 0) throw new Error(`${samples} is no power of two.`);
  const curves: Float64Array[] = [];
  for (let at = 0; at < harmonics.length; at += 2) {
    const x = new Float64Array(samples);
    const y = new Float64Array(samples);
    const [first, second] = [harmonics[at] as Strengths, harmonics[at + 1]];
    addHarmonics(x, y, first);
    // i times the second: its curve comes out in the imaginary part.
    if (second) addHarmonics(y, x, second, -1);
    transform(x, y);
    curves.push(x, ...(second ? [y] : []));
  }
  return curves;
}

/** Adds harmonics and their mirror images to a spectrum; with `turned` -1 to one whose parts are swapped, which is i times theirs. */
function addHarmonics(x: Float64Array, y: Float64Array, { re, im }: Strengths, turned: 1 | -1 = 1): void {
  const samples = x.length;
  if (re.length > samples / 2) throw new Error(`${re.length} harmonics do not fit ${samples} samples.`);
  x[0] = (x[0] as number) + (re[0] ?? 0);
  for (let n = 1; n < re.length; n++) {
    const a = re[n] as number;
    const b = turned * (im[n] as number);
    const m = samples - n;
    x[n] = (x[n] as number) + a;
    x[m] = (x[m] as number) + a;
    y[n] = (y[n] as number) + b;
    y[m] = (y[m] as number) - b;
  }
}

function transform(x: Float64Array, y: Float64Array): void {
  const samples = x.length;
  toBitReversed(x, y);
  for (let half = 1; half < samples; half *= 2) {
    const { cos, sin } = turnsOf(half);
    // Block by block, side by side: strides of a power of two would meet in the same few lines of the cache.
    for (let block = 0; block < samples; block += 2 * half) {
      for (let k = 0; k < half; k++) {
        const c = cos[k] as number;
        const s = sin[k] as number;
        const a = block + k;
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
}

interface Turns {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/** Every transform turns by the same angles: each half's are worked out once. */
const known = new Map<number, Turns>();

function turnsOf(half: number): Turns {
  const turns = known.get(half) ?? {
    cos: Float64Array.from({ length: half }, (_, k) => cos((Math.PI * k) / half)),
    sin: Float64Array.from({ length: half }, (_, k) => sin((Math.PI * k) / half)),
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
    swap(x, i, j);
    swap(y, i, j);
  }
}

function swap(values: Float64Array, i: number, j: number): void {
  const kept = values[i] as number;
  values[i] = values[j] as number;
  values[j] = kept;
}
