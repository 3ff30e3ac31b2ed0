/** Random numbers that come out the same every time, and readings with a known error. */

/** A small generator (mulberry32, public domain) from a fixed seed: numbers from 0 up to 1. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Even over -half to half. */
export const within = (random: () => number, half: number) => (2 * random() - 1) * half;

/** Normal with the given deviation (Box and Muller). */
export const normal = (random: () => number, deviation: number) =>
  deviation * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** A point on a circle about (x, y). */
export const onCircle = (radius: number, degrees: number, x = 0, y = 0) => ({
  x: x + radius * Math.cos(radians(degrees)),
  y: y + radius * Math.sin(radians(degrees)),
});

/** Difference of two angles, 0 to 180. */
export function angleBetween(a: number, b: number): number {
  const off = Math.abs(a - b) % 360;
  return Math.min(off, 360 - off);
}
