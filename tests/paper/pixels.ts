/** A page as poppler paints it, and lengths measured in its pixels. Nothing here knows how the page was drawn. */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';

export const dpi = 600;

/** A grey page; x to the right and y up from the lower left corner, mm. */
export interface Page {
  readonly columns: number;
  readonly rows: number;
  /** mm of paper for one pixel. */
  readonly pixel: number;
  readonly grey: Uint8Array;
}

export function run(tool: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8' });
  if (error) throw new Error(`${tool} cannot be run: ${error.message}. It is in the Debian package poppler-utils.`);
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stderr || stdout}`);
  return stdout;
}

/** One page painted at `painted` dots an inch; lengths are told as if it had been painted at 600. */
export function paint(folder: string, pdf: string, number: number, painted = dpi): Page {
  const stem = join(folder, `page-${number}-${painted}`);
  run('pdftoppm', [
    '-r',
    String(painted),
    '-gray',
    '-f',
    String(number),
    '-l',
    String(number),
    '-singlefile',
    pdf,
    stem,
  ]);
  const bytes = readFileSync(`${stem}.pgm`);
  rmSync(`${stem}.pgm`);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error('pdftoppm did not write a grey picture of one byte a pixel');
  return { columns: Number(head[1]), rows: Number(head[2]), pixel: 25.4 / dpi, grey: bytes.subarray(head[0].length) };
}

/** Ink at a point, 0 to 1, between the four pixels about it. */
export function inkAt({ columns, rows, pixel, grey }: Page, x: number, y: number): number {
  const [u, v] = [x / pixel - 0.5, rows - y / pixel - 0.5];
  const [c, r] = [Math.floor(u), Math.floor(v)];
  const at = (i: number, j: number) =>
    i < 0 || j < 0 || i >= columns || j >= rows ? 0 : 1 - (grey[j * columns + i] as number) / 255;
  const [p, q] = [u - c, v - r];
  return (1 - q) * ((1 - p) * at(c, r) + p * at(c + 1, r)) + q * ((1 - p) * at(c, r + 1) + p * at(c + 1, r + 1));
}

/** Middles of the dark stretches met on the way from one point to another, mm from the first. */
export function darkAlong(page: Page, from: readonly [number, number], to: readonly [number, number]): number[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const step = page.pixel / 4;
  const middles: number[] = [];
  let [ink, moment] = [0, 0];
  for (let s = 0; s <= length; s += step) {
    const dark = inkAt(page, from[0] + ((to[0] - from[0]) * s) / length, from[1] + ((to[1] - from[1]) * s) / length);
    if (dark > 0.02) {
      ink += dark;
      moment += dark * s;
    } else if (ink > 0) {
      if (ink * step > 0.03) middles.push(moment / ink);
      [ink, moment] = [0, 0];
    }
  }
  return middles;
}

/**
 * The circle drawn near a place: on each ray the one dark line within `reach` of the expected radius, rays with none or several left
 * out; then least squares (Kasa), with the tenth of the points that lie worst left out once.
 */
export function circleNear(
  page: Page,
  x: number,
  y: number,
  r: number,
  reach = 0.8,
): { x: number; y: number; r: number } {
  let points: [number, number][] = [];
  for (let k = 0; k < 360; k++) {
    const a = ((k + 0.5) * Math.PI) / 180;
    const [c, s] = [Math.cos(a), Math.sin(a)];
    const from = [x + (r - reach) * c, y + (r - reach) * s] as const;
    const found = darkAlong(page, from, [x + (r + reach) * c, y + (r + reach) * s]);
    const [only] = found;
    if (found.length === 1 && only !== undefined) points.push([from[0] + only * c, from[1] + only * s]);
  }
  if (points.length < 120)
    throw new Error(`no circle of radius ${r} near ${x}, ${y}: only ${points.length} rays meet one line`);
  const rough = kasa(points);
  const miss = ([px, py]: [number, number]) => Math.abs(Math.hypot(px - rough.x, py - rough.y) - rough.r);
  points = points.sort((a, b) => miss(a) - miss(b)).slice(0, Math.ceil(0.9 * points.length));
  return kasa(points);
}

/** Algebraic circle fit: x2 + y2 = 2 a x + 2 b y + c, solved by the normal equations about the points' mean. */
function kasa(points: readonly (readonly [number, number])[]): { x: number; y: number; r: number } {
  const n = points.length;
  const [mx, my] = [points.reduce((t, p) => t + p[0], 0) / n, points.reduce((t, p) => t + p[1], 0) / n];
  let [uu, uv, vv, uz, vz, z] = [0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const [u, v] = [px - mx, py - my];
    const w = u * u + v * v;
    uu += u * u;
    uv += u * v;
    vv += v * v;
    uz += u * w;
    vz += v * w;
    z += w;
  }
  const det = 2 * (uu * vv - uv * uv);
  const [a, b] = [(uz * vv - vz * uv) / det, (vz * uu - uz * uv) / det];
  return { x: a + mx, y: b + my, r: Math.sqrt(a * a + b * b + z / n) };
}
