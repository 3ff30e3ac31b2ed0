/**
 * Sines and angles that are the same on every machine, to the last bit. The language leaves that bit to each engine: a browser and a server,
 * or this year's and last year's, give other files for the same job, and where two ways are equally good even another drawing. Here only
 * sums, products, quotients and square roots are used, which IEEE 754 settles.
 *
 * Source: the reduction and the polynomials of fdlibm (Sun Microsystems 1993, s_sin.c, k_sin.c, k_cos.c, e_rem_pio2.c, s_atan.c, e_atan2.c),
 * each good to less than one unit in the last place; the numbers from memory, held against the decimals of a reference library in the tests.
 */

/** Quarter turns up to which the reduction is exact. Beyond (angles over 1.6 million) the angle has no last bits left that mean anything. */
const mostQuarters = 2 ** 20;

/** A quarter turn in three pieces, each with room for a product of 20 bits, and what is left after each. */
const quarter = 1.5707963267341256;
const quarterRest = 6.077100506506192e-11;
const second = 6.077100506303966e-11;
const secondRest = 2.0222662487959506e-21;

/** Sine of an angle in the eighth turn about 0; `tail` is what of the angle does not fit into it. */
function nearSine(x: number, tail: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    0.00833333333332249 +
    z *
      (-0.0001984126982985795 +
        z * (0.0000027557313707070068 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)));
  return x - (z * (0.5 * tail - v * r) - tail - v * -0.16666666666666632);
}

function nearCosine(x: number, tail: number): number {
  const z = x * x;
  const r =
    z *
    (0.0416666666666666 +
      z *
        (-0.001388888888887411 +
          z *
            (0.00002480158728947673 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * tail));
}

/** Sine of an angle and so many quarter turns more. */
function sineFrom(angle: number, more: number): number {
  if (!Number.isFinite(angle)) return Number.NaN;
  const quarters = Math.round(angle / quarter);
  // No more than one double can say: what is left of such an angle is taken as it is.
  if (Math.abs(quarters) > mostQuarters) return sineFrom(angle % (2 * Math.PI), more);
  let x = angle;
  let tail = 0;
  if (quarters !== 0) {
    const first = angle - quarters * quarter;
    let rest = quarters * quarterRest;
    x = first - rest;
    // Close to a quarter turn nearly all of it cancels: the next piece of the quarter turn is needed.
    if (Math.abs(x) < 1e-4 * Math.abs(angle)) {
      rest = quarters * second;
      const finer = first - rest;
      rest = quarters * secondRest - (first - finer - rest);
      x = finer - rest;
      tail = finer - x - rest;
    } else tail = first - x - rest;
  }
  switch ((quarters + more) & 3) {
    case 0:
      return nearSine(x, tail);
    case 1:
      return nearCosine(x, tail);
    case 2:
      return -nearSine(x, tail);
    default:
      return -nearCosine(x, tail);
  }
}

/** Sine of an angle in radians; NaN for what is not finite. */
export const sin = (angle: number): number => (angle === 0 ? angle : sineFrom(angle, 0));

/** Cosine of an angle in radians; NaN for what is not finite. */
export const cos = (angle: number): number => sineFrom(angle, 1);

/** Tangent of an angle in radians, to two units in the last place. */
export const tan = (angle: number): number => sin(angle) / cos(angle);

/** Arcs of 1/2, 1, 3/2 and of infinity, and what of them does not fit. */
const arcs = [0.4636476090008061, 0.7853981633974483, 0.982793723247329, 1.5707963267948966] as const;
const arcRests = [
  2.2698777452961687e-17, 3.061616997868383e-17, 1.3903311031230998e-17, 6.123233995736766e-17,
] as const;

function series(x: number): number {
  const z = x * x;
  const w = z * z;
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 + w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))));
  const even =
    w *
    (-0.19999999999876483 +
      w * (-0.11111110405462356 + w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))));
  return x * (odd + even);
}

/** Angle of a tangent, -pi/2 to pi/2 radians. */
export function atan(tangent: number): number {
  const x = Math.abs(tangent);
  if (!(x >= 0.4375)) return x < 2 ** -27 || Number.isNaN(x) ? tangent : tangent - series(tangent);
  const sign = tangent < 0 ? -1 : 1;
  const [k, small] =
    x < 0.6875
      ? ([0, (2 * x - 1) / (2 + x)] as const)
      : x < 1.1875
        ? ([1, (x - 1) / (x + 1)] as const)
        : x < 2.4375
          ? ([2, (x - 1.5) / (1 + 1.5 * x)] as const)
          : ([3, -1 / x] as const);
  return sign * (arcs[k] - (series(small) - arcRests[k] - small));
}

/** What of pi does not fit into a double. */
const piRest = 1.2246467991473532e-16;

/** Angle of the direction (x, y), -pi to pi radians, as the language defines it for zeros and infinities. */
export function atan2(y: number, x: number): number {
  // Corners of the definition have no last bit to be settled but multiples of an eighth turn.
  if (y === 0 || x === 0 || !Number.isFinite(x) || !Number.isFinite(y)) return Math.atan2(y, x);
  const steep = atan(Math.abs(y / x));
  const turned = x > 0 ? steep : Math.PI - (steep - piRest);
  return y < 0 ? -turned : turned;
}

/** Angle of a sine, -pi/2 to pi/2 radians; NaN beyond -1 to 1. */
export const asin = (sine: number): number => atan2(sine, Math.sqrt((1 - sine) * (1 + sine)));

/** Angle of a cosine, 0 to pi radians; NaN beyond -1 to 1. */
export const acos = (cosine: number): number => atan2(Math.sqrt((1 - cosine) * (1 + cosine)), cosine);
