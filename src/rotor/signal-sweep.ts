/** The signal as a sound: the shaft run up from crawl to top speed, for playing into an input on the bench. */

import type { SpeedRange } from './signal-speeds.ts';
import type { SignalStudy } from './signal-study.ts';

/** Samples and what they hold. */
export interface SignalSweep {
  /** -1 to 1. */
  readonly samples: Float32Array;
  readonly rate: number;
  readonly seconds: number;
  /** Turns of the shaft; whole where the sweep is at least one turn long. */
  readonly turns: number;
  readonly pulses: number;
  readonly from: number;
  readonly to: number;
  /** The top speed was left out: its pulses come faster than a sound card carries. */
  readonly isCut: boolean;
}

export const soundRate = 48_000;
/** Share of the sample rate that a sound card carries well. */
const carried = 0.4;
const usualSeconds = 20;
/** Loudest sample as a share of full scale. */
const loudness = 0.8;

/** Running integral of a turn's output over the angle: corner turns, growing, and the integral up to each. */
interface Integral {
  readonly turn: readonly number[];
  readonly sum: readonly number[];
}

/** A square output: 1 while it is on, -1 while it is off. The coil: its own curve, 1 at its greatest. */
function integralFrom({ edges, trace, setting }: SignalStudy, start: number): Integral {
  const whole = 2 * Math.PI;
  const ahead = (turn: number) => (((turn - start) % whole) + whole) % whole;
  const turn: number[] = [0];
  const sum: number[] = [0];
  const add = (to: number, height: number) => {
    sum.push((sum.at(-1) as number) + height * (to - (turn.at(-1) as number)));
    turn.push(to);
  };
  if (!setting.isCoil) {
    const corners = edges.map((edge) => ({ at: ahead(edge.turn), rises: edge.rises })).sort((a, b) => a.at - b.at);
    for (const { at, rises } of corners) add(at, rises ? -1 : 1);
    add(whole, -1);
    return { turn, sum };
  }
  const peak = trace.slope.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const corners = Array.from(trace.turn, (at, k) => ({ at: ahead(at), height: (trace.slope[k] as number) / peak }));
  corners.sort((a, b) => a.at - b.at);
  let before = (corners.at(-1) as (typeof corners)[number]).height;
  for (const { at, height } of corners) {
    add(at, (before + height) / 2);
    before = height;
  }
  add(whole, before);
  return { turn, sum };
}

/** A turn at which the output is off and stays so for a while: in the middle between an edge down and the next one up. */
function quietTurn({ edges }: SignalStudy): number {
  const at = edges.findIndex(({ rises }) => !rises);
  const down = edges[at];
  const up = edges[(at + 1) % edges.length];
  if (!down || !up) return 0;
  const until = up.turn > down.turn ? up.turn : up.turn + 2 * Math.PI;
  return (down.turn + until) / 2;
}

/**
 * Runs the shaft from crawl to top speed, each second by the same factor, for about 20 s, at 48 000 samples a second. Each sample is
 * the mean of the output over its own time, so that edges between samples keep their place. A coil grows with the speed, as it does.
 * Null where there are no pulses.
 */
export function signalSweep(study: SignalStudy, range: SpeedRange): SignalSweep | null {
  const { places, mark, pulses, setting } = study;
  if (pulses === 0 || study.edges.length < 2) return null;
  // Beside an extra tooth pulses come twice as close.
  const most = (60 * carried * soundRate) / (mark?.kind === 'extra' ? 2 * places : places);
  const isCut = range.top > most;
  const to = Math.min(range.top, most);
  const from = Math.min(range.crawl, to / 2);
  const growth = Math.log(to / from);
  // Mean speed of an even growth: (to - from) / ln(to / from).
  const meanTurns = (to - from) / growth / 60;
  const wanted = usualSeconds * meanTurns;
  const turns = wanted >= 1 ? Math.round(wanted) : wanted;
  const seconds = turns / meanTurns;
  const count = Math.floor(seconds * soundRate);
  const start = quietTurn(study);
  const integral = integralFrom(study, start);
  const whole = integral.sum.at(-1) as number;
  const samples = new Float32Array(count);
  const turned = (t: number) => (2 * Math.PI * from * seconds * (Math.exp((growth * t) / seconds) - 1)) / growth / 60;
  let corner = 0;
  let lap = 0;
  const upTo = (angle: number): number => {
    while (angle - 2 * Math.PI * lap >= 2 * Math.PI) {
      lap += 1;
      corner = 0;
    }
    const at = angle - 2 * Math.PI * lap;
    while (corner < integral.turn.length - 2 && (integral.turn[corner + 1] as number) <= at) corner++;
    const [a, b] = [integral.turn[corner] as number, integral.turn[corner + 1] as number];
    const [y, z] = [integral.sum[corner] as number, integral.sum[corner + 1] as number];
    return lap * whole + (b > a ? y + ((at - a) / (b - a)) * (z - y) : z);
  };
  let angle = 0;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const next = turned((i + 1) / soundRate);
    const reached = upTo(next);
    const scale = setting.isCoil ? ((next - angle) * soundRate * 60) / (2 * Math.PI * to) : 1;
    samples[i] = (loudness * scale * (reached - sum)) / (next - angle);
    angle = next;
    sum = reached;
  }
  return { samples, rate: soundRate, seconds, turns, pulses: Math.round(pulses * turns), from, to, isCut };
}
