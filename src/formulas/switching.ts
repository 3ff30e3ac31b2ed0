/** Where a sensor or an input circuit switches on a curve that repeats every turn. */

/** One switching: the turn at which it comes, radians, and which way. */
export interface Edge {
  readonly turn: number;
  readonly rises: boolean;
}

/** A curve over one turn: samples at growing turns, radians, the first one a turn later follows the last. */
export interface TurnCurve {
  readonly turn: Float64Array;
  readonly value: Float64Array;
}

const whole = 2 * Math.PI;

/** The turn at which the curve passes a value between sample k - 1 and sample k, k in any turn. */
function crossing({ turn, value }: TurnCurve, k: number, at: number): number {
  const count = value.length;
  const b = k % count;
  const a = (k - 1 + count) % count;
  const from = value[a] as number;
  const to = value[b] as number;
  const end = turn[b] as number;
  const start = a < b ? (turn[a] as number) : (turn[a] as number) - whole;
  const share = to === from ? 1 : Math.min(1, Math.max(0, (at - from) / (to - from)));
  const found = start + share * (end - start);
  return ((found % whole) + whole) % whole;
}

const extremes = (value: Float64Array): { readonly most: number; readonly least: number } => {
  let most = -Infinity;
  let least = Infinity;
  for (const v of value) {
    most = Math.max(most, v);
    least = Math.min(least, v);
  }
  return { most, least };
};

/**
 * A switch that learns from the signal: it goes on where the curve climbs past `on` of the way from the last valley to the last peak,
 * and off where it falls past `off` of it. After one turn of learning, the edges of the next turn.
 * Source: 60 and 40 % of the peaks seen at the last two edges, data sheet of a true zero-speed gear-tooth sensor.
 * @param on, off shares, 0 < off < on < 1
 */
export function trackedEdges(curve: TurnCurve, on: number, off: number): Edge[] {
  const { value } = curve;
  const count = value.length;
  const { most, least } = extremes(value);
  if (most - least < 1e-12) return [];
  let [peak, valley] = [most, least];
  let isOn = (value[count - 1] as number) > (most + least) / 2;
  let best = value[count - 1] as number;
  const edges: Edge[] = [];
  for (let k = 0; k < 2 * count; k++) {
    const v = value[k % count] as number;
    best = isOn ? Math.max(best, v) : Math.min(best, v);
    // A peak or a valley counts once it is over; until then the one before it does, unless this one goes further.
    const at = isOn
      ? valley + off * (Math.max(best, valley) - valley)
      : Math.min(best, peak) + on * (peak - Math.min(best, peak));
    if (isOn ? v >= at : v <= at) continue;
    if (isOn) peak = best;
    else valley = best;
    isOn = !isOn;
    best = v;
    if (k >= count) edges.push({ turn: crossing(curve, k, at), rises: isOn });
  }
  return edges.sort((a, b) => a.turn - b.turn);
}

/**
 * A squarer for a coil: it switches where the curve passes zero, and only after the curve has been further out than `arm` times its
 * greatest swing, so that noise in a long valley does not count. The zero taken is the last one before that.
 * @param arm share of the greatest swing, 0 < arm < 1
 */
export function zeroEdges(curve: TurnCurve, arm: number): Edge[] {
  const { value } = curve;
  const count = value.length;
  const { most, least } = extremes(value);
  const level = arm * Math.max(most, -least);
  if (!(level > 1e-12)) return [];
  let isOn: boolean | null = null;
  let zero = 0;
  const edges: Edge[] = [];
  for (let k = 1; k < 2 * count; k++) {
    const v = value[k % count] as number;
    const before = value[(k - 1) % count] as number;
    if (before < 0 !== v < 0) zero = k;
    const goes: boolean | null = v > level ? true : v < -level ? false : isOn;
    if (goes === isOn) continue;
    if (isOn !== null && k >= count) edges.push({ turn: crossing(curve, zero, 0), rises: goes === true });
    isOn = goes;
  }
  return edges.sort((a, b) => a.turn - b.turn);
}
