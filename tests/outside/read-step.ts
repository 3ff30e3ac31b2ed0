/** STEP files as gmsh's OpenCASCADE reads them, for tests. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { MassProperties } from '../../src/model/mass.ts';

export interface Face {
  readonly kind: string;
  readonly area: number;
  readonly centre: readonly number[];
  readonly radius?: number;
  readonly normal?: readonly number[];
}

export interface Read {
  /** Names down the tree, joined by strokes. */
  readonly path: string;
  readonly volume: number;
  readonly centre: readonly number[];
  readonly inertia: MassProperties['inertia'];
  readonly box: readonly number[];
  readonly faces: readonly Face[];
}

/** Last name of a solid's path. */
export const lastName = ({ path }: Read) => path.slice(path.lastIndexOf('/') + 1);

/** What stands in the files, by path; and the volumes that pairs of solids share, file by file in the order asked. */
export interface Answer {
  readonly files: Readonly<Record<string, readonly Read[]>>;
  readonly apart: Readonly<Record<string, readonly number[]>>;
}

/** One process for all files. Missing gmsh is an Error that names it. */
export function readStep(files: readonly string[], apart: readonly (readonly [string, string, string])[]): Answer {
  // The Debian package belongs to the system's own Python, which need not be the first one on the path.
  const python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import gmsh']).status === 0);
  if (python === undefined) throw new Error('python3-gmsh is missing: install the Debian package of that name.');
  const script = fileURLToPath(new URL('./read_step.py', import.meta.url));
  const input = JSON.stringify({ files, apart });
  const { status, stdout, stderr } = spawnSync(python, [script], { input, encoding: 'utf8', maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error(`read_step.py ended with ${status}: ${stderr || stdout}`);
  return JSON.parse(stdout) as Answer;
}
