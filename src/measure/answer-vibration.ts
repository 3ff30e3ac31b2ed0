/** The vibration finder: which of the usual causes fits what was felt, ranked, with the next cheap test. */
import { type Driveline, frequencyAt, type Order, ordersOf } from '../formulas/orders.ts';
import { goodShare, halfBand } from '../standards/shaft-speed-rules.ts';
import type { Lookup } from '../standards/table.ts';
import { andThen, found } from '../standards/table.ts';
import { listed } from '../units/sentence.ts';
import type { Answer } from './answer.ts';
import { balanceSafety } from './balance-safety.ts';
import { type Speaks, type Suspect, suspects } from './vibration-suspects.ts';
import { type Felt, readFelt, type VibrationTyped } from './vibration-typed.ts';
import { tidy } from './words.ts';

export interface RankedSuspect {
  readonly suspect: Suspect;
  /** 0 to 1: how well frequency, moment and rise fit together. */
  readonly score: number;
  readonly word: 'fits' | 'may be' | 'hardly' | 'not known';
  /** The order that comes nearest; null where none of its orders is known. */
  readonly order: Order | null;
  /** What speaks for or against it, in words. */
  readonly says: readonly string[];
}

/** What an observation is worth: rules of thumb, common practice. They rank, they prove nothing. */
const worth: Readonly<Record<Speaks, number>> = { for: 1, neither: 0.6, against: 0.12 };
/** No miss by frequency counts for less: a meter may have caught the wrong line. */
const leastFit = 0.01;
/** Half-width of the band in which a shaft near its critical speed shakes, as a share: the band that is kept about half of it. */
const criticalBand = halfBand;

/** 1 on the line, 0.6 one doubt away, 0.14 two doubts away: the bell curve. */
const bell = (off: number): number => Math.max(leastFit, Math.exp(-(off * off) / 2));

/** It fits when its line is near and nothing is neutral about it; without a frequency nothing fits for sure. */
function wordFor(score: number, isMeasured: boolean): RankedSuspect['word'] {
  return score > worth.neither && isMeasured ? 'fits' : score >= 0.12 ? 'may be' : 'hardly';
}

/** How well the speed sits on the critical speed or on half of it; null when that is not known. */
function nearCritical({ speed, critical }: Felt, { id }: Pick<Order, 'id'>): number | null {
  if (critical === null || speed === null) return null;
  const at = id === 'joint' ? critical / 2 : critical;
  return bell((speed.value - at) / Math.hypot(speed.doubt, criticalBand * at));
}

/** The best of a suspect's orders, and how well it fits. */
function bestOrder(suspect: Suspect, felt: Felt, orders: readonly Order[]): { order: Order | null; fit: number } {
  const own = orders.filter(({ id }) => suspect.orders.includes(id));
  const judged = own.map((order) => {
    const byLine = felt.order === null ? 1 : bell((felt.order.value - order.perTurn) / felt.order.doubt);
    const bySpeed = suspect.id === 'critical' ? (nearCritical(felt, order) ?? worth.neither) : 1;
    return { order, fit: byLine * bySpeed };
  });
  return judged.reduce<{ order: Order | null; fit: number }>((a, b) => (b.fit > a.fit ? b : a), {
    order: null,
    fit: 0,
  });
}

function saysOf(suspect: Suspect, felt: Felt, shown: readonly Order[]): string[] {
  const { when, higher, speed } = felt;
  const lines = shown.map(
    (order) =>
      `${order.name}${speed === null ? `, ${Number(order.perTurn.toPrecision(3))} a turn of the shaft` : `, ${tidy(frequencyAt(order, speed.value), 1)} Hz`}`,
  );
  const told = (speaks: Speaks, what: string) => (speaks === 'neither' ? [] : [`${what} speaks ${speaks} it`]);
  return [
    ...lines,
    ...(when === null ? [] : told(suspect.when[when], whenWords[when])),
    ...(higher === null ? [] : told(suspect.higher[higher], `that it ${higher} with speed`)),
  ];
}

const whenWords = {
  load: 'under load',
  coast: 'on the overrun',
  neutral: 'coasting in neutral',
  always: 'load or not',
  standing: 'standing still',
} as const;

/** Ranks every suspect, best first. Suspects that lack a ratio come last, as not known. */
export function rankSuspects(felt: Felt): RankedSuspect[] {
  const known: Driveline = { axle: felt.axle, gear: felt.gear, cylinders: felt.cylinders };
  const orders = ordersOf(known);
  const ranked = suspects.map((suspect): RankedSuspect => {
    const { order, fit } = bestOrder(suspect, felt, orders);
    const { when, higher } = felt;
    const score =
      fit * (when === null ? 1 : worth[suspect.when[when]]) * (higher === null ? 1 : worth[suspect.higher[higher]]);
    const isOpen = order === null;
    const shown = felt.order === null ? orders.filter(({ id }) => suspect.orders.includes(id)) : order ? [order] : [];
    return {
      suspect,
      score,
      order,
      word: isOpen ? 'not known' : wordFor(score, felt.order !== null),
      says: saysOf(suspect, felt, shown),
    };
  });
  return ranked.sort((a, b) => b.score - a.score);
}

export function answerVibration(typed: VibrationTyped): Lookup<Answer> {
  return andThen(readFelt(typed), (felt): Lookup<Answer> => {
    const ranked = rankSuspects(felt);
    const open = ranked.filter(({ word }) => word === 'not known');
    const judged = ranked.filter(({ word }) => word !== 'not known');
    const alive = judged.filter(({ word }) => word !== 'hardly');
    const told = alive.length > 0 ? alive : judged.slice(0, 2);
    const hardly = judged.filter((one) => !told.includes(one));
    return found({
      title: titleOf(felt, judged),
      lines: [
        ...feltLines(felt),
        ...told.flatMap(({ suspect, word, says }, i) => [
          `${i + 1}. ${suspect.name}: ${word}. ${says.join('; ')}`,
          `   next: ${suspect.test}`,
        ]),
        ...(hardly.length > 0 ? [`hardly: ${hardly.map(({ suspect }) => suspect.name).join('; ')}`] : []),
        ...open.map(
          ({ suspect }) => `not known: ${suspect.name}; give ${suspect.needs.map((key) => `--${key}`).join(', ')}`,
        ),
      ],
      notes: [
        ...criticalNotes(felt),
        ...tieNotes(told),
        ...nextNotes(felt),
        ...sourceNotes(felt, told),
        ...safetyNotes,
      ],
      result: {
        speed: felt.speed,
        frequency: felt.frequency,
        order: felt.order,
        suspects: ranked.map(({ suspect, score, word, order }) => ({
          id: suspect.id,
          name: suspect.name,
          word,
          score,
          perTurn: order?.perTurn ?? null,
          frequency: order && felt.speed ? frequencyAt(order, felt.speed.value) : null,
          test: suspect.test,
        })),
      },
      search: {},
      block: null,
    });
  });
}

function titleOf({ order, when }: Felt, judged: readonly RankedSuspect[]): string {
  const [first] = judged;
  if (order === null && when === null)
    return 'Speed alone names no cause. Measure the frequency there (a telephone with a vibration meter on the seat rail does), and say when it is felt.';
  if (!first || first.word === 'hardly')
    return 'None of the usual causes fits. Read speed and frequency again; something that answers by itself (exhaust, mirror, mount) may sing.';
  return `Look first at ${first.suspect.name}.`;
}

function feltLines({ speed, frequency, order }: Felt): string[] {
  const parts = [
    ...(speed === null ? [] : [`shaft at ${tidy(speed.value, 0)} +-${tidy(speed.doubt, 0)} rpm`]),
    ...(frequency === null ? [] : [`${tidy(frequency.value, 1)} +-${tidy(frequency.doubt, 1)} Hz`]),
    ...(order === null ? [] : [`${tidy(order.value, 2)} +-${tidy(order.doubt, 2)} a turn of the shaft`]),
  ];
  return [`felt: ${parts.join(', ')}`];
}

function criticalNotes({ speed, critical }: Felt): string[] {
  if (critical === null || speed === null)
    return ['The critical speed of the shaft was not given (--critical): it is ranked by order alone.'];
  const share = speed.value / critical;
  return share > goodShare
    ? [
        `STOP: ${tidy(speed.value, 0)} rpm is ${tidy(100 * share, 0)} % of the critical speed; over ${100 * goodShare} % nothing is looked for on the road. Drive slower until the shaft is changed.`,
      ]
    : [
        `${tidy(speed.value, 0)} rpm is ${tidy(100 * share, 0)} % of the critical speed; stay below ${100 * goodShare} %.`,
      ];
}

/** Suspects on the same line are not told apart by a frequency. */
function tieNotes(told: readonly RankedSuspect[]): string[] {
  const [first] = told;
  const same = told.filter(
    ({ order }) => first?.order && order && Math.abs(order.perTurn / first.order.perTurn - 1) < 0.03,
  );
  if (same.length < 2) return [];
  const names = same.map(({ suspect }) => suspect.name).join('; ');
  const hasEngine = same.some(({ suspect }) => suspect.orders.includes('firing') || suspect.orders.includes('half'));
  return [
    `These shake equally often here: ${names}. The frequency cannot tell them apart, the tests can.${hasEngine ? ' The same road speed in another gear parts engine and shaft.' : ''}`,
  ];
}

function nextNotes({ order, when, higher }: Felt): string[] {
  return [
    ...(order === null
      ? [
          'Not measured: the frequency (--frequency 60 Hz) or the order (--order 2); the lines above tell where each cause would lie.',
        ]
      : []),
    ...(when === null
      ? [
          'Not said: when it is felt (--when load, coast, neutral, always or standing). Cheapest test: at that speed, into neutral and let it roll. It stays: shaft, wheels, axle. It goes: engine or load.',
        ]
      : []),
    ...(higher === null
      ? [
          'Not said: whether it grows or fades a little above that speed (--higher grows or fades); only where the road and the critical speed allow it.',
        ]
      : []),
  ];
}

function sourceNotes({ assumed }: Felt, told: readonly RankedSuspect[]): string[] {
  const from = [...new Set(told.map(({ suspect }) => suspect.source))];
  return [
    ...(assumed.length > 0 ? [`Taken, common practice: ${listed(assumed)}.`] : []),
    `Ranked by how near each cause's line lies, and by rules of thumb for when it is felt. From: ${from.join('; ')}.`,
  ];
}

const safetyNotes: readonly string[] = [
  'Road tests: one drives, another reads; a quiet road, within the law, guard and retention loop fitted. Stop when it grows out of step with the speed.',
  ...balanceSafety.filter((text) => text.startsWith('Safety:')),
];
