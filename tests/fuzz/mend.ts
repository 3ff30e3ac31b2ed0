/**
 * A grown job made more likely to be read: what the reader refuses is left out and read again. The schema cannot say that two keys
 * exclude each other or that a circle must fit its flange; the reader's own errors can.
 */
import { stringify } from 'yaml';
import { readJob } from '../../src/core.ts';
import type { Chance } from './chance.ts';
import type { KeyPath } from './grammar.ts';

type Bag = Record<string, unknown>;

const isBag = (value: unknown): value is Bag => typeof value === 'object' && value !== null;

/** "driven.holes.at[2]" as its steps. */
const stepsOf = (path: string) => path.split(/[.[\]]+/).filter((step) => step !== '');

/** The section that holds the last step of a path, and that step; the deepest part of the path that is there. */
function holderOf(data: unknown, steps: readonly string[]): { holder: Bag; step: string; depth: number } | null {
  let holder: unknown = data;
  let found: { holder: Bag; step: string; depth: number } | null = null;
  for (const [index, step] of steps.entries()) {
    if (!isBag(holder) || !Object.hasOwn(holder, step)) break;
    found = { holder, step, depth: index + 1 };
    holder = holder[step];
  }
  return found;
}

/**
 * @param kept the key that must stay: in its place one of its neighbours is left out
 * @param rounds how often it is read again
 */
export function mended(data: unknown, kept: KeyPath | null, chance: Chance, rounds = 6): unknown {
  const copy: unknown = structuredClone(data);
  const way = (kept ?? []).filter((step) => step !== '[]').join('.');
  for (let round = 0; round < rounds; round++) {
    const read = readJob(stringify(copy), 'mend');
    if (read.ok) return copy;
    for (const { path } of read.errors.slice(0, 6)) {
      const steps = stepsOf(path);
      const found = holderOf(copy, steps);
      if (found === null) continue;
      const { holder, step, depth } = found;
      const named = steps
        .slice(0, depth)
        .filter((name) => !/^\d+$/.test(name))
        .join('.');
      const isKept = way !== '' && (named === way || way.startsWith(`${named}.`));
      const others = Object.keys(holder).filter((key) => key !== step && !Array.isArray(holder));
      if (!isKept) {
        if (Array.isArray(holder) && holder.length > 2) holder.splice(Number(step), 1);
        else delete holder[step];
      } else if (others.length > 0) delete holder[chance.pick(others)];
    }
  }
  return copy;
}
