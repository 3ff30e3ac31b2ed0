/** Bodies in section: what a cut leaves of them, and the edges that show behind the cut. mm; x across, y along the shaft. */
import { stretchesOf } from '../geometry/contour.ts';
import type { Fill, Pen, Shape } from '../model/drawing.ts';
import type { Flats, Profile } from '../model/part.ts';
import type { Contour } from '../model/sheet.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import {
  type Band,
  cutSlabs,
  drillingBands,
  mirrored,
  openStretches,
  outlines,
  outsideBands,
} from './section-region.ts';
import { slopes } from './turned-profile.ts';

/** A body that is turned and drilled, as far as a cut needs it. */
export interface RoundBody {
  readonly outer: Profile;
  readonly drillings: readonly { readonly x: number; readonly y: number; readonly profile: Profile }[];
  readonly flats?: Flats;
}

/** Angles of the two half-planes, degrees: x > 0 and x < 0. */
export interface CutAngles {
  readonly right: number;
  readonly left: number;
}

/** Height of a broken edge: the body goes on beyond it, nobody knows how far. */
export type BrokenAt = number | null;

/** How far flats let a body reach at an angle, mm; infinite without flats. */
export function reachOfFlats(flats: Flats | undefined, angle: number): number {
  if (!flats) return Infinity;
  const c = Math.abs(cos(((angle - flats.angle) * Math.PI) / 180));
  return c < 1e-9 ? Infinity : flats.across / 2 / c;
}

/** A broken edge in place of the straight one at that height: the long-break line of ISO 128, a zigzag every 40 mm or so. */
function broken(loop: readonly { x: number; y: number }[], at: BrokenAt): { x: number; y: number; bulge: number }[] {
  return loop.flatMap((p, i) => {
    const q = loop[(i + 1) % loop.length] ?? p;
    const corner = { x: p.x, y: p.y, bulge: 0 };
    if (at === null || Math.abs(p.y - at) > 1e-6 || Math.abs(q.y - at) > 1e-6) return [corner];
    const length = Math.abs(q.x - p.x);
    const count = Math.max(1, Math.round(length / 40));
    const step = (q.x - p.x) / count;
    const wide = Math.sign(step) * Math.min(1.2, 0.15 * Math.abs(step));
    const zigzag = [
      [-1, 0],
      [-0.4, 2],
      [0.4, -2],
      [1, 0],
    ] as const;
    return [
      corner,
      ...Array.from({ length: count }, (_, k) =>
        zigzag.map(([dx, dy]) => ({ x: p.x + (k + 0.5) * step + dx * wide, y: at + dy, bulge: 0 })),
      ).flat(),
    ];
  });
}

/** Draws a turned body in section, and the round edges that show in its openings. */
export function roundSection(
  body: RoundBody,
  cut: CutAngles,
  style: { readonly fill: Fill; readonly pen: Pen; readonly feature: string; readonly brokenAt: BrokenAt },
): Shape[] {
  const onAxis = (d: { x: number; y: number }): boolean => Math.hypot(d.x, d.y) < 1e-6;
  const sides = (d: RoundBody['drillings'][number]): Band[][] =>
    onAxis(d)
      ? [
          slopes(d.profile).map((s) => ({
            z0: s.z0,
            z1: s.z1,
            left: [-s.r0, -s.r1] as const,
            right: [s.r0, s.r1] as const,
          })),
        ]
      : [drillingBands(d, cut.right), mirrored(drillingBands(d, cut.left))];
  const voids = body.drillings.flatMap(sides);
  const limit = { left: reachOfFlats(body.flats, cut.left), right: reachOfFlats(body.flats, cut.right) };
  const slabs = cutSlabs(outsideBands(body.outer, limit), voids.flat());
  const behind = voids.flatMap((bands) =>
    bands.slice(1).flatMap((band, i): Shape[] => {
      const before = bands[i] as Band;
      if (Math.abs(before.z1 - band.z0) > 1e-6) return [];
      const from = Math.min(before.left[1], band.left[0]);
      const to = Math.max(before.right[1], band.right[0]);
      return openStretches(slabs, band.z0, from, to).map(([a, b]) => ({
        kind: 'line',
        pen: 'thin',
        from: { x: a, y: band.z0 },
        to: { x: b, y: band.z0 },
      }));
    }),
  );
  const loops = outlines(slabs).map((loop) => broken(loop, style.brokenAt));
  return [...behind, { kind: 'path', pen: style.pen, fill: style.fill, closed: true, loops, feature: style.feature }];
}

/** Where a ray from the origin at `angle` degrees passes through closed contours: distances from the axis, in pairs. */
export function rayIntervals(contours: readonly Contour[], angle: number): [number, number][] {
  const a = (angle * Math.PI) / 180;
  const ux = cos(a);
  const uy = sin(a);
  const hits: number[] = [];
  for (const s of contours.flatMap(stretchesOf)) {
    // Distance to the left of the ray: a crossing is where it changes sign.
    const side = (x: number, y: number): number => ux * y - uy * x;
    if (s.kind === 'line') {
      const d1 = side(s.x1, s.y1);
      const d2 = side(s.x2, s.y2);
      if (d1 < 0 === d2 < 0) continue;
      const t = d1 / (d1 - d2);
      hits.push((s.x1 + t * (s.x2 - s.x1)) * ux + (s.y1 + t * (s.y2 - s.y1)) * uy);
      continue;
    }
    const off = side(s.x, s.y);
    if (Math.abs(off) >= s.r) continue;
    const along = s.x * ux + s.y * uy;
    const half = Math.sqrt(s.r * s.r - off * off);
    for (const d of [along - half, along + half]) {
      const at = atan2(d * uy - s.y, d * ux - s.x);
      const turn = 2 * Math.PI;
      const ahead = (((s.sweep > 0 ? at - s.start : s.start - at) % turn) + turn) % turn;
      if (ahead < Math.abs(s.sweep)) hits.push(d);
    }
  }
  const out = hits.filter((d) => d > 0).sort((p, q) => p - q);
  // A body round the axis starts in its bore: an odd count means the axis itself is in the material.
  if (out.length % 2 === 1) out.unshift(0);
  return Array.from({ length: out.length / 2 }, (_, i) => [out[2 * i] as number, out[2 * i + 1] as number]);
}
