/** The signal of a joint as its picture needs it. */
import type { CurvePoint, SignalViewInput } from '../drawing/signal-view.ts';
import type { Joint } from '../job/joint.ts';
import { markPeriods } from '../job/wheel-mark.ts';
import { speedRange } from '../rotor/signal-speeds.ts';
import { type SignalStudy, steelGap, studySignal } from '../rotor/signal-study.ts';

const degrees = 180 / Math.PI;
const plain = (value: number, decimals: number): string => value.toFixed(decimals);

/** Runs during which the output is on, degrees, over two turns so that a window may lie across the start. */
function onRuns({ edges }: SignalStudy): { from: number; to: number }[] {
  return edges.flatMap((edge, i) => {
    if (!edge.rises) return [];
    const off = edges[(i + 1) % edges.length];
    if (!off) return [];
    const from = edge.turn * degrees;
    const to = off.turn > edge.turn ? off.turn * degrees : off.turn * degrees + 360;
    return [-360, 0, 360].map((turn) => ({ from: from + turn, to: to + turn }));
  });
}

/** The window of the close look: the mark of a position, or the tooth that is timed worst, in the middle of a few. */
function windowOf({ readings, places }: SignalStudy): { from: number; to: number } {
  const pitch = 360 / places;
  const teeth = readings?.teeth ?? [];
  const worst = teeth.reduce<(typeof teeth)[number] | undefined>((a, b) => {
    const weight = (t: typeof b): number => (t.error === null ? 9 : Math.abs(t.error));
    return a === undefined || weight(b) > weight(a) ? b : a;
  }, undefined);
  const middle = worst ? worst.turn + worst.period / 2 : 0;
  const half = worst && worst.error === null ? worst.period / 2 + 1.6 * pitch : 2.6 * pitch;
  return { from: middle - half, to: middle + half };
}

function curveIn(study: SignalStudy, values: Float64Array, from: number, to: number): CurvePoint[] {
  const { turn } = study.trace;
  const points: CurvePoint[] = [];
  for (const lap of [-360, 0, 360]) {
    for (let k = 0; k < turn.length; k++) {
      const at = (turn[k] as number) * degrees + lap;
      if (at >= from && at <= to) points.push({ degrees: at, value: values[k] as number });
    }
  }
  return points.sort((a, b) => a.degrees - b.degrees);
}

/** What stands under the picture. */
export function signalWords(
  study: SignalStudy,
  range: { readonly top: number; readonly isTopGiven: boolean },
): string[] {
  const { readings, pulses, present, places, setting, lowSpot, expected, face, mark, words, isWindows } = study;
  const { tooth, teeth } = words;
  const hertz = (places * range.top) / 60;
  const said = [
    `${present} ${teeth}${present === places ? '' : ` on ${places} places`} make ${pulses} pulses a turn: ${Number(hertz.toPrecision(4))} Hz at ${Number(range.top.toFixed(1))} rpm${range.isTopGiven ? '' : ' (duty.speed not given)'}.`,
  ];
  if (readings) {
    const { peak, rms, onceATurn, duty, markRatios } = readings;
    const periods = markPeriods(mark, words, markRatios);
    said.push(
      `One ${tooth}'s time is off by up to ${plain(100 * peak, 2)} % (root mean square ${plain(100 * rms, 2)} %, of it once a turn ${plain(100 * onceATurn, 2)} %); running out alone gives ${plain(100 * expected.runout, 2)} %.`,
      `On for ${plain(100 * duty.mean, 1)} % of the period${periods === '' ? '.' : `; ${periods}.`}`,
    );
  }
  if (face) {
    said.push(
      `The height of the ${isWindows ? words.valleys : teeth} leaves ${plain(100 * face.heightShare, 0)} % of the swing; through a ${words.valley} the picture shows the gap as far as the sheet's other face.`,
    );
  }
  said.push(
    `At the low spot the signal is ${plain(100 * lowSpot, 0)} % of that at the high spot${setting.isCoil ? '; a coil gives voltage in proportion to the speed' : ''}.`,
    `Taken: ${setting.taken.join('; ')}.`,
  );
  return said;
}

/** Null where there is no wheel, or nobody knows how it is read. */
export function signalToDraw(joint: Joint): SignalViewInput | null {
  const answer = studySignal(joint);
  if (!answer.ok || !joint.wheel) return null;
  const { study } = answer;
  const { trace, setting, readings } = study;
  const range = speedRange(joint);
  const { from, to } = windowOf(study);
  const steel = steelGap(study);
  return {
    id: 'signal',
    wheel: joint.wheel.name,
    sensor: setting.sensor,
    isBars: study.isWindows,
    ...(study.mark && study.mark.kind !== 'missing' ? { mark: `${study.mark.kind} ${study.words.tooth}` } : {}),
    isCoil: setting.isCoil,
    rpm: range.top,
    gap: curveIn(study, steel, 0, 360),
    near: {
      from,
      to,
      signal: curveIn(study, setting.isCoil ? trace.slope : trace.level, from, to),
      on: onRuns(study).filter((run) => run.to > from && run.from < to),
      periods: (readings?.teeth ?? []).flatMap(({ turn, period, error }) =>
        [-360, 0, 360]
          .map((lap) => ({ from: turn + lap, to: turn + lap + period, error }))
          .filter((bar) => bar.from >= from && bar.to <= to),
      ),
    },
    errors: (readings?.teeth ?? []).map(({ turn, period, error }) => ({ degrees: turn, period, error })),
    words: signalWords(study, range),
  };
}
