/** LinuxCNC's own interpreter (Debian package linuxcnc-uspace) run over a program: what a machine would be told, move by move. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Move {
  readonly kind: 'rapid' | 'feed';
  readonly tool: number;
  /** rpm at that moment; 0: at rest. */
  readonly rpm: number;
  readonly feed: number;
  readonly from: { readonly x: number; readonly y: number; readonly z: number };
  readonly to: { readonly x: number; readonly y: number; readonly z: number };
}

export interface Run {
  readonly moves: readonly Move[];
  readonly stops: number;
  readonly units: readonly string[];
  readonly ended: boolean;
}

/** Runs a program. Throws when the interpreter finds fault with a line, or is not there. */
export function runRs274(program: string, tools: number): Run {
  const folder = mkdtempSync(join(tmpdir(), 'rs274-'));
  try {
    const [file, table] = [join(folder, 'program.ngc'), join(folder, 'tool.tbl')];
    writeFileSync(file, program);
    writeFileSync(table, Array.from({ length: tools }, (_, i) => `T${i + 1} P${i + 1} Z0 D5\n`).join(''));
    const run = spawnSync('rs274', ['-g', '-t', table, file], {
      encoding: 'utf8',
      cwd: folder,
      maxBuffer: 1 << 26,
    });
    if (run.error) throw new Error(`rs274 (Debian package linuxcnc-uspace): ${run.error.message}`);
    // What it has to complain about stands on the error output, beside the line.
    const complaint = run.stderr.replace(/^executing\s*$/m, '').trim();
    if (complaint !== '' || run.status !== 0) throw new Error(`rs274: ${complaint} (${run.status})`);
    return read(run.stdout);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function read(output: string): Run {
  const moves: Move[] = [];
  const units: string[] = [];
  let at = { x: 0, y: 0, z: 0 };
  let [tool, rpm, speed, feed, stops] = [0, 0, 0, 0, 0];
  for (const line of output.split('\n')) {
    const [, name = '', inside = ''] = line.match(/^\s*\d+\s+N\S*\s+(\w+)\((.*)\)/) ?? [];
    const numbers = inside.split(',').map(Number);
    if (name === 'CHANGE_TOOL') tool = numbers[0] ?? 0;
    if (name === 'SET_SPINDLE_SPEED') speed = numbers[1] ?? 0;
    if (name === 'START_SPINDLE_CLOCKWISE') rpm = speed;
    if (name === 'STOP_SPINDLE_TURNING') rpm = 0;
    if (name === 'SET_FEED_RATE') feed = numbers[0] ?? 0;
    if (name === 'PROGRAM_STOP') stops++;
    if (name === 'USE_LENGTH_UNITS') units.push(inside);
    if (name === 'STRAIGHT_TRAVERSE' || name === 'STRAIGHT_FEED') {
      const [x = Number.NaN, y = Number.NaN, z = Number.NaN] = numbers;
      const to = { x, y, z };
      moves.push({ kind: name === 'STRAIGHT_FEED' ? 'feed' : 'rapid', tool, rpm, feed, from: at, to });
      at = to;
    }
  }
  return { moves, stops, units, ended: output.includes('PROGRAM_END()') };
}
