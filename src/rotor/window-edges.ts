/** Where bars and windows, or teeth and valleys, meet the circle that a sensor looks at from the side, on the outline itself. Radians. */

import { type Stretch, stretchesOf } from '../geometry/contour.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { axialRadius, hasWindows, pulseAt, type ToneWheelSpec } from '../parts/tone-wheel.ts';
import { hypot } from '../units/hypot.ts';
import { atan2, cos, sin } from '../units/trig.ts';

/** Bars and windows, or teeth and valleys, along one circle. */
export interface WindowEdges {
  /** Half of the angle that a bar takes. */
  readonly halfBar: number;
  /** Whether a direction is open, counted counter-clockwise from the middle of bar 1; any turn. */
  readonly isOpen: (angle: number) => boolean;
}

/** Pieces that a stretch is cut into before the crossing is looked for: an arc may turn back within one. */
const pieces = 8;
const halvings = 50;

function pointOn(stretch: Stretch, share: number): { readonly x: number; readonly y: number } {
  if (stretch.kind === 'line') {
    return { x: stretch.x1 + share * (stretch.x2 - stretch.x1), y: stretch.y1 + share * (stretch.y2 - stretch.y1) };
  }
  const angle = stretch.start + share * stretch.sweep;
  return { x: stretch.x + stretch.r * cos(angle), y: stretch.y + stretch.r * sin(angle) };
}

/** Angles at which a contour crosses a circle about the axis. */
export function crossingsOf(contour: Contour, radius: number): number[] {
  return stretchesOf(contour).flatMap((stretch) => {
    const beyond = (share: number) => {
      const { x, y } = pointOn(stretch, share);
      return hypot(x, y) >= radius;
    };
    return Array.from({ length: pieces }, (_, i) => [i / pieces, (i + 1) / pieces] as const).flatMap(([from, to]) => {
      const starts = beyond(from);
      if (starts === beyond(to)) return [];
      let [low, high] = [from, to];
      for (let k = 0; k < halvings; k++) {
        const middle = (low + high) / 2;
        if (beyond(middle) === starts) low = middle;
        else high = middle;
      }
      const { x, y } = pointOn(stretch, high);
      return [atan2(y, x)];
    });
  });
}

/** The outline goes in at the end of a tooth and out at the start of the next one; the first crossing ends tooth 1. */
function valleysOf(crossings: readonly number[]): { readonly from: number; readonly to: number }[] {
  const sorted = [...crossings].sort((a, b) => a - b);
  return sorted.flatMap((from, i) => (i % 2 === 0 ? [{ from, to: sorted[i + 1] ?? 2 * Math.PI }] : []));
}

/** Bars and windows of a wheel along the middle of its windows; teeth and valleys along half of their height. */
export function windowEdges(wheel: SheetPart, spec: ToneWheelSpec): WindowEdges {
  const whole = 2 * Math.PI;
  const first = (spec.toothAngle * Math.PI) / 180;
  const ahead = (angle: number) => (((angle - first) % whole) + whole) % whole;
  const middle = axialRadius(spec);
  const runs = hasWindows(spec)
    ? wheel.holes
        .filter(({ kind }) => kind === 'path')
        .map((window) => {
          const [a = 0, b = 0] = crossingsOf(window, middle).map(ahead);
          return { from: Math.min(a, b), to: Math.max(a, b) };
        })
    : valleysOf(crossingsOf(wheel.outside, middle).map(ahead));
  // Plain bars are alike: where the first window begins, the first bar ends.
  const halfBar = Math.min(...runs.map(({ from }) => from));
  const isOpen = (angle: number) => {
    const at = ((angle % whole) + whole) % whole;
    const run = runs[pulseAt(spec, (at * spec.teeth) / whole)];
    return run !== undefined && at > run.from && at < run.to;
  };
  return { halfBar, isOpen };
}
