/** The adapter in section, axis lying, driven face to the right. mm of the part: x along the shaft, y away from the axis. */
import type { Point, Shape } from '../../model/drawing.ts';
import { onAxis } from '../face-scene.ts';
import { reachOfFlats } from '../section-body.ts';
import {
  type Band,
  cutSlabs,
  drillingBands,
  mirrored,
  openStretches,
  outlines,
  outsideBands,
} from '../section-region.ts';
import { slopes } from '../turned-profile.ts';
import type { CuttingLine, CutZone } from './cutting-line.ts';
import { hatching } from './hatch.ts';
import { line, polyline } from './shapes.ts';
import type { AdapterToDraw } from './to-draw.ts';

/** What a cut leaves: closed outlines, edges that show behind it, and threads. */
export interface Cut {
  readonly loops: readonly (readonly Point[])[];
  readonly behind: readonly (readonly [Point, Point])[];
  readonly threads: readonly (readonly [Point, Point])[];
}

/** A band as far as it lies between two distances from the axis. */
function within(bands: readonly Band[], from: number, to: number): Band[] {
  const held = (x: number) => Math.min(to, Math.max(from, x));
  return bands
    .map((b) => ({
      ...b,
      left: [held(b.left[0]), held(b.left[1])] as const,
      right: [held(b.right[0]), held(b.right[1])] as const,
    }))
    .filter((b) => b.right[0] - b.left[0] > 1e-7 || b.right[1] - b.left[1] > 1e-7);
}

const axial = (profile: Parameters<typeof slopes>[0]): Band[] =>
  slopes(profile).map((s) => ({ z0: s.z0, z1: s.z1, left: [-s.r0, -s.r1] as const, right: [s.r0, s.r1] as const }));

function threadsOf(zones: readonly CutZone[], sign: 1 | -1): (readonly [Point, Point])[] {
  return zones.flatMap(({ set, drilling }) => {
    if (!set?.thread || !drilling) return [];
    const { profile } = drilling;
    const [low, high] = [profile[0]?.z ?? 0, profile.at(-1)?.z ?? 0];
    const { major, depth } = set.thread;
    const [face, end] =
      set.from === 'driven' ? [high, depth === null ? low : high - depth] : [low, depth === null ? high : low + depth];
    const off = Math.hypot(drilling.x, drilling.y);
    const sides = [off - major / 2, off + major / 2].map(
      (r) =>
        [
          { x: face, y: sign * r },
          { x: end, y: sign * r },
        ] as const,
    );
    const stop = [
      { x: end, y: sign * (off - major / 2) },
      { x: end, y: sign * (off + major / 2) },
    ] as const;
    return depth === null ? sides : [...sides, stop];
  });
}

/** Cuts the adapter along a line; without a line, where there are no holes but those on the axis. */
export function cutAdapter({ adapter }: AdapterToDraw, cutting: CuttingLine | null): Cut {
  const away = adapter.drillings.filter((d) => !onAxis(d));
  const through = (zones: readonly CutZone[], own: boolean): Band[][] =>
    away.flatMap((d) =>
      zones.flatMap(({ angle, from, to, drilling }) => {
        if ((drilling?.id === d.id) !== own) return [];
        const bands = within(drillingBands(d, angle), from, to);
        return bands.length > 0 ? [bands] : [];
      }),
    );
  const met = (own: boolean) =>
    cutting ? [...through(cutting.upper, own), ...through(cutting.lower, own).map(mirrored)] : [];
  const shown = [...adapter.drillings.filter(onAxis).map((d) => axial(d.profile)), ...met(true)];
  // Holes that the cut only grazes take their bite, but no edges are drawn behind them.
  const voids = [...shown, ...met(false)];
  const limit = (zones: readonly CutZone[] | undefined) =>
    zones ? reachOfFlats(adapter.flats, zones.at(-1)?.angle ?? 90) : Infinity;
  const slabs = cutSlabs(
    outsideBands(adapter.outer, { right: limit(cutting?.upper), left: limit(cutting?.lower) }),
    voids.flat(),
  );
  const behind = shown.flatMap((bands) => {
    const edges = bands.flatMap((band, i) => {
      const before = bands[i - 1];
      const low = before
        ? [Math.min(before.left[1], band.left[0]), Math.max(before.right[1], band.right[0])]
        : [band.left[0], band.right[0]];
      const last = i === bands.length - 1 ? [[band.z1, band.left[1], band.right[1]] as const] : [];
      return [[band.z0, low[0] as number, low[1] as number] as const, ...last];
    });
    return edges.flatMap(([z, from, to]) =>
      to - from < 1e-6
        ? []
        : openStretches(slabs, z, from, to).map(
            ([a, b]) =>
              [
                { x: z, y: a },
                { x: z, y: b },
              ] as const,
          ),
    );
  });
  return {
    loops: outlines(slabs).map((loop) => loop.map(({ x, y }) => ({ x: y, y: x }))),
    behind,
    threads: cutting ? [...threadsOf(cutting.upper, 1), ...threadsOf(cutting.lower, -1)] : [],
  };
}

/** A cut as it is drawn at a scale, its z = 0 on the axis at the origin. mm of paper. */
export function drawCut({ loops, behind, threads }: Cut, scale: number): Shape[] {
  const p = ({ x, y }: Point): Point => ({ x: scale * x, y: scale * y });
  const drawn = loops.map((loop) => loop.map(p));
  return [
    ...hatching(drawn),
    ...behind.map(([a, b]) => line(p(a), p(b), 'thin')),
    ...drawn.map((loop) => polyline(loop, 'outline', true)),
    ...threads.map(([a, b]) => line(p(a), p(b), 'thin')),
  ];
}
