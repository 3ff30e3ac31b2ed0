/** The signal for the bench: one turn as numbers, tooth by tooth, speed by speed, as a sound, and a note of how to use them. */
import type { Joint } from '../job/joint.ts';
import { signalSpeeds, speedRange } from '../rotor/signal-speeds.ts';
import { type SignalStudy, steelGap, studySignal } from '../rotor/signal-study.ts';
import { type SignalSweep, signalSweep } from '../rotor/signal-sweep.ts';
import { writeWav } from '../write/wav.ts';
import { type MadeFile, type Product, utf8 } from './product.ts';
import { signalWords } from './signal-to-draw.ts';

const degrees = 180 / Math.PI;
/** Sample files hold no more rows than this. */
const mostRows = 20_000;

const csv = (head: readonly string[], rows: readonly (readonly (number | string)[])[]): string =>
  `${[head, ...rows].map((row) => row.join(',')).join('\n')}\n`;

/** A number without a minus zero and without needless digits. */
const num = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

/** Whether the output is on at a turn, radians. */
function isOnAt({ edges }: SignalStudy): (turn: number) => boolean {
  let next = 0;
  return (turn) => {
    while (next < edges.length && (edges[next] as { turn: number }).turn <= turn) next++;
    const last = edges[(next - 1 + edges.length) % edges.length];
    return last?.rises ?? false;
  };
}

/** One turn: angle, time, gap, what is read, output. The coil's voltage is 1 at its greatest. */
export function traceCsv(study: SignalStudy, rpm: number): string {
  const { trace, setting } = study;
  const steel = steelGap(study);
  const isOn = isOnAt(study);
  const peak = trace.slope.reduce((most, v) => Math.max(most, Math.abs(v)), 0) || 1;
  const step = Math.ceil(trace.turn.length / mostRows);
  const rows: (number | string)[][] = [];
  trace.turn.forEach((turn, k) => {
    const on = isOn(turn);
    if (k % step !== 0) return;
    const angle = turn * degrees;
    rows.push([
      num(angle, 4),
      num(angle / 6 / rpm, 9),
      num(steel[k] as number, 4),
      num(trace.level[k] as number, 6),
      ...(setting.isCoil ? [num((trace.slope[k] as number) / peak, 6)] : []),
      on ? 1 : 0,
    ]);
  });
  return csv(['angle_deg', 'time_s', 'gap_mm', 'level', ...(setting.isCoil ? ['voltage'] : []), 'output'], rows);
}

/** Tooth by tooth, as the controller times them. */
export function teethCsv({ readings }: SignalStudy, rpm: number): string {
  const rows = (readings?.teeth ?? []).map(({ turn, period, error, speedError, duty }, i) => [
    i + 1,
    num(turn, 4),
    num(period, 5),
    num(period / 6 / rpm, 9),
    error === null ? '' : num(100 * error, 4),
    speedError === null ? '' : num(100 * speedError, 4),
    num(100 * duty, 3),
  ]);
  return csv(
    ['pulse', 'angle_deg', 'period_deg', 'period_s', 'period_error_percent', 'speed_error_percent', 'on_percent'],
    rows,
  );
}

/** Speed by speed. */
export function speedsCsv(joint: Joint, isCoil: boolean): string {
  const rows = signalSpeeds(joint).map(({ rpm, hertz, period, coil }) => [
    num(rpm, 4),
    num(hertz, 4),
    num(period, 6),
    ...(isCoil ? [num(coil, 6)] : []),
  ]);
  return csv(['rpm', 'frequency_hz', 'period_ms', ...(isCoil ? ['coil_voltage_share'] : [])], rows);
}

/** What the files are and how to use them. */
export function signalNote(joint: Joint, study: SignalStudy, sweep: SignalSweep | null, base: string): string {
  const range = speedRange(joint);
  const { setting, places, words } = study;
  const high = study.isWindows ? words.valleys : words.teeth;
  const rpm = (value: number) =>
    `${Number(value.toPrecision(4))} rpm (${Number(((places * value) / 60).toPrecision(4))} Hz)`;
  const sound =
    sweep === null
      ? ['No sound: the sensor makes no pulses.']
      : [
          `${base}-signal.wav: the shaft run up from ${rpm(sweep.from)} to ${rpm(sweep.to)} in ${Number(sweep.seconds.toFixed(2))} s, ${sweep.turns < 1 ? `${Number(sweep.turns.toFixed(3))} of a turn` : `${sweep.turns} turns`}, ${sweep.pulses} pulses. 16 bits, one channel, ${sweep.rate} samples a second.`,
          ...(sweep.isCut
            ? [
                `The top speed of ${rpm(range.top)} is left out: its pulses come faster than a sound card carries. Test the top end with a signal generator.`,
              ]
            : []),
          'A sound card passes no steady voltage and little below 20 Hz: at crawl a square wave sags. Its output is a volt or two: enough for most coil inputs; a Hall input needs a transistor or a comparator after it.',
          'Play it with all effects and level control off, start at low volume, and look at the wave with a scope first. Do not wire a sound card to a circuit that is not isolated from it.',
        ];
  return `${[
    `What the sensor will see: ${joint.job.title}`,
    '',
    ...signalWords(study, range),
    '',
    `${base}-signal.csv: one turn of the shaft at ${Number(range.top.toPrecision(4))} rpm${range.isTopGiven ? '' : ' (taken, since duty.speed is not given)'}, counter-clockwise seen from the driven side, tooth 1 at the sensor at 0 degrees. gap_mm: down to the steel under the middle of the sensor, ${study.face ? `through a ${words.valley} to the sheet's other face, ${words.teeth}` : 'teeth'} as drawn. level: field, relative, 1 over solid steel${setting.spacing === null ? '' : ', first element less the second'}.${setting.isCoil ? ' voltage: 1 at its greatest.' : ''} output: 1 while on.`,
    `${base}-signal-teeth.csv: each pulse as the controller times it. ${base}-signal-speeds.csv: frequency from crawl${range.isCrawlGiven ? '' : ' (a fiftieth of the top, since sensor.crawl gives none below it)'} to top speed.`,
    ...sound,
    '',
    study.face
      ? `How it is worked out: the true ${high}, moved off centre, leaning, and turned past the sensor, which looks along the axis at their middle. Above the face each harmonic n of the field fades with the gap by the law of Laplace, exp(-n gap / R), R the radius of ${study.isWindows ? "the windows' middle" : 'the middle of the teeth'}: the spacing loss of magnetic recording (Wallace, 1951; from memory). A ${words.valley} counts as open right through, ${study.isWindows ? '' : 'with air beyond the tips and '}with nothing close behind it; what ${study.isWindows ? 'its height costs' : 'the height of the teeth costs'} is told above. A pole averages over its width.`
      : 'How it is worked out: the true outline, moved off centre and turned past the sensor. Outside the teeth each harmonic of the field fades with the distance by the law of Laplace: the tooth harmonic by exp(-2 pi gap / pitch), the spacing loss of magnetic recording (Wallace, 1951; from memory). Steel below the tips counts as if the gap were larger by as much. A pole averages over its width.',
    setting.isCoil
      ? `A coil gives the rate of change of that (law of induction), so its voltage grows with the speed; the controller times the zero after each ${words.tooth}.`
      : 'The sensor switches at 60 and 40 % between the last valley and the last peak (data sheet of a true zero-speed gear-tooth sensor); the controller times where it goes on.',
    'Not in it: volts, saturation, eddy currents at speed, the delay of the sensor and its own scatter, noise, twist of the shaft. It tells shape, timing and ratios. Measure one with a scope before you trust it.',
  ].join('\n')}\n`;
}

function made(kind: string, name: string, bytes: Uint8Array): MadeFile {
  return { kind, name, bytes };
}

export const signalFiles: Product = {
  kind: 'signal',
  about:
    'what the sensor will see: one turn, each tooth and each speed as CSV, a WAV to play into an input, and a note',
  metal: false,
  applies: (joint) => studySignal(joint).ok,
  asked: (joint) => joint.job.sensor?.signal === true,
  names: ({ base }) =>
    ['signal.csv', 'signal-teeth.csv', 'signal-speeds.csv', 'signal.wav', 'signal.txt'].map((end) => `${base}-${end}`),
  async make({ joint, base }) {
    const answer = studySignal(joint);
    if (!answer.ok) return [];
    const { study } = answer;
    const range = speedRange(joint);
    const sweep = signalSweep(study, range);
    const kind = 'signal';
    return [
      made(kind, `${base}-signal.csv`, utf8(traceCsv(study, range.top))),
      made(kind, `${base}-signal-teeth.csv`, utf8(teethCsv(study, range.top))),
      made(kind, `${base}-signal-speeds.csv`, utf8(speedsCsv(joint, study.setting.isCoil))),
      ...(sweep ? [made(kind, `${base}-signal.wav`, writeWav(sweep.samples, sweep.rate))] : []),
      made(kind, `${base}-signal.txt`, utf8(signalNote(joint, study, sweep, base))),
    ];
  },
};
