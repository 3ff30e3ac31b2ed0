/**
 * Which point each label's leader touches, and how high each label stands: searched one label at a time. This search is most of the
 * time that a picture takes, and a picture is drawn at every keystroke: so it works on plain arrays that are made once.
 */
import type { Point } from '../model/drawing.ts';

/** A label as the search sees it. */
export interface ToPlace {
  /** Points that the leader may touch; at least one. */
  readonly anchors: readonly Point[];
  /** Height of the label with its space, mm. */
  readonly height: number;
}

/** Where the labels go, mm; see CaptionColumn. */
export interface PlaceIn {
  /** Where leaders bend, beside the column. */
  readonly elbow: number;
  readonly yMin: number;
  readonly yMax: number;
  readonly size: number;
  readonly obstacles: readonly { readonly centre: Point; readonly r: number }[];
}

/** One label placed: its index, and its leader's two ends. */
export interface Placed {
  readonly index: number;
  readonly from: Point;
  readonly to: Point;
}

/** Whether a point lies nearer than `reach` (mm) to the stretch from `a` to `b`. */
function within(reach: number, px: number, py: number, ax: number, ay: number, bx: number, by: number): boolean {
  if (px + reach < ax && px + reach < bx) return false;
  if (px - reach > ax && px - reach > bx) return false;
  if (py + reach < ay && py + reach < by) return false;
  if (py - reach > ay && py - reach > by) return false;
  const dx = bx - ax;
  const dy = by - ay;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / length2));
  const offX = px - ax - t * dx;
  const offY = py - ay - t * dy;
  return offX * offX + offY * offY < reach * reach;
}

/** From how many first guesses the search sets out. */
const firstGuesses = 3;
/** Labels are gone through so many times at most. */
const mostRounds = 4;
/** Costs nearer than this are equal. */
const rounding = 1e-9;

/** The search over one column of labels. `order` is a row of label indices from the top; the rest stands by label. */
class Column {
  readonly #labels: readonly ToPlace[];
  readonly #in: PlaceIn;
  readonly #x: Float64Array;
  readonly #y: Float64Array;
  /** Height of the label in the middle, by place in the order. */
  readonly #middle: Float64Array;
  readonly #order: Int32Array;
  /** Runs of labels that stand close: wished heights summed, how many, how high together, the first. */
  readonly #sum: Float64Array;
  readonly #count: Int32Array;
  readonly #tall: Float64Array;
  readonly #first: Int32Array;

  constructor(labels: readonly ToPlace[], place: PlaceIn) {
    const n = labels.length;
    this.#labels = labels;
    this.#in = place;
    this.#x = new Float64Array(n);
    this.#y = new Float64Array(n);
    this.#middle = new Float64Array(n);
    this.#order = new Int32Array(n);
    this.#sum = new Float64Array(n);
    this.#count = new Int32Array(n);
    this.#tall = new Float64Array(n);
    this.#first = new Int32Array(n);
  }

  touch(label: number, anchor: number): void {
    const point = this.#labels[label]?.anchors[anchor] as Point;
    this.#x[label] = point.x;
    this.#y[label] = point.y;
  }

  /** Middle of a run of labels: as wished, held between the column's ends. */
  #middleOf(run: number): number {
    const { yMin, yMax } = this.#in;
    const half = (this.#tall[run] as number) / 2;
    const [low, high] = [yMin + half, yMax - half];
    if (low > high) return (yMin + yMax) / 2;
    return Math.min(high, Math.max(low, (this.#sum[run] as number) / (this.#count[run] as number)));
  }

  /** Labels one under the other in their order, as near to their points' heights as the spacing allows. */
  #spread(): void {
    const [sum, count, tall, first, order] = [this.#sum, this.#count, this.#tall, this.#first, this.#order];
    let last = -1;
    for (let i = 0; i < order.length; i++) {
      const label = order[i] as number;
      last += 1;
      sum[last] = this.#y[label] as number;
      count[last] = 1;
      tall[last] = this.#labels[label]?.height as number;
      first[last] = i;
      while (last > 0) {
        const above = this.#middleOf(last - 1) - (tall[last - 1] as number) / 2;
        if (above >= this.#middleOf(last) + (tall[last] as number) / 2) break;
        last -= 1;
        sum[last] = (sum[last] as number) + (sum[last + 1] as number);
        count[last] = (count[last] as number) + (count[last + 1] as number);
        tall[last] = (tall[last] as number) + (tall[last + 1] as number);
      }
    }
    for (let run = 0; run <= last; run++) {
      let top = this.#middleOf(run) + (tall[run] as number) / 2;
      const start = first[run] as number;
      for (let i = start; i < start + (count[run] as number); i++) {
        const height = this.#labels[order[i] as number]?.height as number;
        this.#middle[i] = top - height / 2;
        top -= height;
      }
    }
  }

  /** Whether the leaders at two places of the order cross. */
  #cross(i: number, k: number): boolean {
    const [p, q] = [this.#order[i] as number, this.#order[k] as number];
    const [ax, ay, cx, cy] = [this.#x[p] as number, this.#y[p] as number, this.#x[q] as number, this.#y[q] as number];
    const bx = this.#in.elbow;
    const [by, dy] = [this.#middle[i] as number, this.#middle[k] as number];
    // Both leaders end on the elbow.
    const c = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const d = (bx - ax) * (dy - ay) - (by - ay) * (bx - ax);
    if (!(c * d < 0)) return false;
    const a = (bx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
    const b = (bx - cx) * (by - cy) - (dy - cy) * (bx - cx);
    return a * b < 0;
  }

  /** Orders the labels, highest point first; neighbours whose leaders cross change places. */
  place(): void {
    const [order, x, y] = [this.#order, this.#x, this.#y];
    const n = order.length;
    for (let i = 0; i < n; i++) {
      let at = i;
      for (; at > 0; at--) {
        const before = order[at - 1] as number;
        const falls = (y[i] as number) - (y[before] as number) || (x[before] as number) - (x[i] as number);
        if (!(falls > 0)) break;
        order[at] = before;
      }
      order[at] = i;
    }
    for (let turn = 0; ; turn++) {
      this.#spread();
      let at = 0;
      while (at < n - 1 && !this.#cross(at, at + 1)) at++;
      if (at >= n - 1 || turn >= n) return;
      const upper = order[at] as number;
      order[at] = order[at + 1] as number;
      order[at + 1] = upper;
    }
  }

  /**
   * What a choice costs: long or steep leaders a little, runs over holes and over other labels' points more, crossings most.
   * Counting stops where `limit` is reached: such a choice is not taken anyway.
   */
  cost(limit: number): number {
    const { size, obstacles, elbow } = this.#in;
    const [order, x, y, middle] = [this.#order, this.#x, this.#y, this.#middle];
    const n = order.length;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const label = order[i] as number;
      const steep = Math.abs((middle[i] as number) - (y[label] as number));
      sum += Math.hypot(elbow - (x[label] as number), steep) + 1.5 * steep;
    }
    for (let i = 0; i < n; i++) {
      if (sum >= limit) return sum;
      const [fromX, fromY] = [x[order[i] as number] as number, y[order[i] as number] as number];
      const toY = middle[i] as number;
      for (let k = 0; k < n; k++) {
        if (sum >= limit) return sum;
        if (k === i) continue;
        const [otherX, otherY] = [x[order[k] as number] as number, y[order[k] as number] as number];
        if (within(0.7 * size, otherX, otherY, fromX, fromY, elbow, toY)) sum += 25 * size;
        if (k < i) continue;
        if (this.#cross(i, k)) sum += 200 * size;
        const isLevel = Math.abs(fromY - otherY) < 1.5 * size;
        if (isLevel && within(1.5 * size, otherX, otherY, fromX, fromY, fromX, fromY)) sum += 40 * size;
      }
      for (const { centre, r } of obstacles) {
        if (within(0.97 * r, centre.x, centre.y, fromX, fromY, elbow, toY)) sum += 25 * size;
      }
    }
    return sum;
  }

  /** The labels as they are placed now, from the top. */
  placed(): Placed[] {
    return [...this.#order].map((index, i) => ({
      index,
      from: { x: this.#x[index] as number, y: this.#y[index] as number },
      to: { x: this.#in.elbow, y: this.#middle[i] as number },
    }));
  }
}

/** Points chosen one label at a time, until no single change makes the picture better. */
function improved(column: Column, labels: readonly ToPlace[], first: readonly number[]): number {
  const chosen = [...first];
  for (const [i, k] of chosen.entries()) column.touch(i, k);
  column.place();
  let best = column.cost(Infinity);
  for (let round = 0; round < mostRounds; round++) {
    const before = best;
    for (const [i, { anchors }] of labels.entries()) {
      let keep = chosen[i] as number;
      for (let k = 0; k < anchors.length; k++) {
        // What is chosen already costs what it costs.
        if (k === chosen[i]) continue;
        column.touch(i, k);
        column.place();
        const cost = column.cost(best);
        if (cost < best - rounding) {
          best = cost;
          keep = k;
        }
      }
      chosen[i] = keep;
      column.touch(i, keep);
    }
    if (best === before) break;
  }
  column.place();
  return best;
}

/** The columns that were searched last: most edits of a job leave most pictures as they are. */
let lately: readonly { readonly asked: string; readonly placed: readonly Placed[] }[] = [];
const mostKept = 12;

/**
 * The cheapest of several searches. The first guesses are fixed, so that the same input gives the same picture.
 * @returns labels from the top; empty for none
 */
export function placeLabels(labels: readonly ToPlace[], place: PlaceIn): readonly Placed[] {
  const asked = JSON.stringify([labels, place]);
  const known = lately.find((one) => one.asked === asked);
  if (known) return known.placed;
  const placed = searched(labels, place);
  lately = [{ asked, placed }, ...lately].slice(0, mostKept);
  return placed;
}

function searched(labels: readonly ToPlace[], place: PlaceIn): Placed[] {
  const column = new Column(labels, place);
  let best: { readonly placed: Placed[]; readonly cost: number } = { placed: [], cost: Infinity };
  for (let guess = 0; guess < firstGuesses; guess++) {
    const first = labels.map(({ anchors }, i) => (guess * (i + 1) * 5) % anchors.length);
    const cost = improved(column, labels, first);
    if (cost < best.cost - rounding) best = { placed: column.placed(), cost };
  }
  return best.placed;
}
