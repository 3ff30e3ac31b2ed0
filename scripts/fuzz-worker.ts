/** Runs fuzz cases one by one in a process of its own, so that a hang can be ended and its memory bounded from outside. */
import { type Case, makeCase, runCase } from '../tests/fuzz/cases.ts';
import { shrunk } from '../tests/fuzz/shrink.ts';
import { readWorld } from '../tests/fuzz/world.ts';

const seed = Number(process.argv[2]);
const world = readWorld();

process.on('message', async (number: number) => {
  const made: Case = makeCase(world, seed, number);
  const outcome = await runCase(world, made);
  let small: string | null = null;
  if (outcome.fault !== null) {
    const again = async (text: string) =>
      (await runCase(world, { ...made, bytes: new TextEncoder().encode(text) })).fault;
    small = await shrunk(new TextDecoder().decode(made.bytes), again);
  }
  const rss = process.memoryUsage().rss;
  process.send?.({ number, kind: made.kind, path: made.path?.join('.') ?? null, small, ...outcome, rss });
});
process.send?.('ready');
