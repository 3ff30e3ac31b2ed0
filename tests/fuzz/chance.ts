/** Numbers by chance from a seed: the same seed gives the same case on every machine. */

export interface Chance {
  /** From 0 up to, not including, 1. */
  readonly share: () => number;
  /** Whole number from `least` to `most`, both included. */
  readonly whole: (least: number, most: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  /** True in `share` of the throws. */
  readonly happens: (share: number) => boolean;
}

/** A generator of 32 bits of state; a counter is stirred by multiplying and shifting. Good enough to reach cases, not for secrets. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const share = () => {
    state = (state + 0x9e3779b9) >>> 0;
    let stirred = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    stirred = Math.imul(stirred ^ (stirred >>> 13), 0xc2b2ae35);
    return ((stirred ^ (stirred >>> 16)) >>> 0) / 2 ** 32;
  };
  return {
    share,
    whole: (least, most) => least + Math.floor(share() * (most - least + 1)),
    pick: (list) => {
      if (list.length === 0) throw new Error('nothing to pick from');
      return list[Math.floor(share() * list.length)] as (typeof list)[number];
    },
    happens: (limit) => share() < limit,
  };
}
