/** A terminal that remembers what it was told. */
import { resolve } from 'node:path';
import type { Io } from '../../src/cli/io.ts';
import { main } from '../../src/cli/main.ts';
import { folder } from '../folders.ts';

export const presets = resolve(import.meta.dirname, '../../presets');

/** A job whose checks fail, whatever the shipped examples become: two near circles whose heads cannot clear each other. */
export const failingJob = `job: 1
title: Two circles that look alike
driving:
  outside: 112
  thickness: 14
  register: { gender: male, diameter: 57, depth: 4 }
  holes: { count: 6, circle: 84, thread: M8, depth: 16 }
driven:
  outside: 110
  thickness: 8
  register: { gender: female, diameter: 60, depth: 3 }
  holes: { count: 6, circle: 86, diameter: 8.4 }
adapter: { clocking: 0 }
wheel: { teeth: 30, outside: 178, height: 6, ratio: 0.4 }
`;

export interface Heard {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export { folder };

/** Run a command in a folder, answering questions from a list; no list: nobody is at the terminal. */
export async function run(cwd: string, argv: readonly string[], answers?: readonly string[]): Promise<Heard> {
  const heard = { out: '', err: '' };
  const left = [...(answers ?? [])];
  const io: Io = {
    out: (text) => {
      heard.out += text;
    },
    err: (text) => {
      heard.err += text;
    },
    cwd,
    ask: answers ? async () => left.shift() ?? '' : null,
    paint: (text) => text,
  };
  const code = await main(argv, io);
  return { code, ...heard };
}
