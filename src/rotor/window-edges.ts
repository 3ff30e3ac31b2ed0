/** Where bars and windows meet the circle that a sensor looks at, on the outline itself. Radians. */
import { type Stretch, stretchesOf } from '../geometry/contour.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { type ToneWheelSpec, widthRadius } from '../parts/tone-wheel.ts';

/** Bars and windows along one circle. */
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
  return { x: stretch.x + stretch.r * Math.cos(angle), y: stretch.y + stretch.r * Math.sin(angle) };
}

/** Angles at which a contour crosses a circle about the axis. */
export function crossingsOf(contour: Contour, radius: number): number[] {
  return stretchesOf(contour).flatMap((stretch) => {
    const beyond = (share: number) => {
      const { x, y } = pointOn(stretch, share);
      return Math.hypot(x, y) >= radius;
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
      return [Math.atan2(y, x)];
    });
  });
}

/** Bars and windows of a wheel along the middle of its windows. */
export function windowEdges(wheel: SheetPart, spec: ToneWheelSpec): WindowEdges {
  const whole = 2 * Math.PI;
  const first = (spec.toothAngle * Math.PI) / 180;
  const ahead = (angle: number) => (((angle - first) % whole) + whole) % whole;
  const windows = wheel.holes.filter(({ kind }) => kind === 'path');
  const runs = windows.map((window) => {
    const [a = 0, b = 0] = crossingsOf(window, widthRadius(spec)).map(ahead);
    return { from: Math.min(a, b), to: Math.max(a, b) };
  });
  // The bars are alike: where the first window begins, the first bar ends.
  const halfBar = Math.min(...runs.map(({ from }) => from));
  const isOpen = (angle: number) => {
    const at = ((angle % whole) + whole) % whole;
    // Window i begins in place i; the last one goes on over the places that are missing.
    const run = runs[Math.min(Math.floor((at * spec.teeth) / whole), runs.length - 1)];
    return run !== undefined && at > run.from && at < run.to;
  };
  return { halfBar, isOpen };
}
