/** Which kind of sensor lies on the bench, by what its leads do on a meter; never by how many leads it has. */
import type { Lookup } from '../standards/table.ts';
import { found, missing, must } from '../standards/table.ts';
import { type SensorKind, toothRule } from '../standards/tooth-rules.ts';
import { parseQuantity } from '../units/quantity.ts';
import type { Answer, Asked } from './answer.ts';
import { activeLevels, type MeterTest, meterTests, nextTest, type Sight, suspects } from './sensor-evidence.ts';
import { optional, pieces, typedCount } from './typed.ts';

export interface SensorTyped extends Asked {
  /** Between two leads: "1100 ohm", "1.1 kohm", "open". */
  readonly resistance?: string | undefined;
  readonly polarity?: string | undefined;
  readonly supply?: string | undefined;
  readonly output?: string | undefined;
  /** Supply current, two levels: "7 mA, 14 mA". */
  readonly current?: string | undefined;
  readonly slow?: string | undefined;
  readonly turned?: string | undefined;
  /** Whether its tip holds a paper clip. */
  readonly magnet?: string | undefined;
  readonly leads?: string | undefined;
}

/** Coils from the lowest to the highest that is known, ohm, with room on both sides (387 to 2000: workshop manuals). */
const winding = [100, 5000] as const;
const nearlyOpen = 100_000;
/** How sure one has to be of a kind to say so, and to say that it is likely. */
const sureFrom = 0.9;
const likelyFrom = 0.6;

const testOf = (id: string): MeterTest => meterTests.find((test) => test.id === id) as MeterTest;
const sightOf = (id: string, answer: string): Sight | undefined =>
  testOf(id).sights.find((one) => one.answer === answer);

function resistanceSight(text: string): Lookup<Sight> {
  const word = text.trim().toLowerCase();
  if (['open', 'ol', 'infinite', 'none'].includes(word)) return found(sightOf('resistance', 'open') as Sight);
  const read = parseQuantity(text, 'resistance');
  if (!read.ok) return missing(`--resistance: ${read.why} Or write open.`);
  if (read.value < 0) return missing('--resistance: a resistance is not below 0.');
  const answer =
    read.value >= winding[0] && read.value <= winding[1] ? 'coil' : read.value > nearlyOpen ? 'open' : 'other';
  return found(sightOf('resistance', answer) as Sight);
}

/** Two levels of current are an output of their own kind where they lie where such sensors put them. */
function currentSight(text: string): Lookup<Sight> {
  const levels: number[] = [];
  for (const piece of pieces(text)) {
    const read = parseQuantity(piece, 'current');
    if (!read.ok) return missing(`--current: ${read.why}`);
    levels.push(read.value);
  }
  if (levels.length !== 2) return missing('--current: give both levels of the supply current, "7 mA, 14 mA".');
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  const within = (value: number, [from, to]: readonly [number, number]) => value >= 0.85 * from && value <= 1.15 * to;
  const isActive = within(low, activeLevels.low) && within(high, activeLevels.high);
  const sight = sightOf('output', isActive ? 'current' : 'switches') as Sight;
  return found(isActive ? sight : { ...sight, what: 'no two levels of current near 7 and 14 mA' });
}

/** What was typed, as sights; the first slip as a sentence. */
function sightsOf(typed: SensorTyped): Lookup<Map<string, Sight>> {
  const seen = new Map<string, Sight>();
  const resistance = optional(typed.resistance, resistanceSight);
  if (!resistance.ok) return resistance;
  if (resistance.value) seen.set('resistance', resistance.value);
  for (const id of ['polarity', 'supply', 'output', 'slow', 'turned'] as const) {
    const word = typed[id]?.trim().toLowerCase();
    if (word === undefined || word === '') continue;
    const sight = sightOf(id, word);
    if (!sight) {
      const legal = testOf(id).sights.map(({ answer, what }) => `${answer} (${what})`);
      return missing(`--${id} is ${legal.join(', or ')}; got "${word.slice(0, 20)}".`);
    }
    seen.set(id, sight);
  }
  const current = optional(typed.current, currentSight);
  if (!current.ok) return current;
  if (current.value && typed.output !== undefined)
    return missing('Give --output or --current, not both: two levels of current are the output.');
  if (current.value) seen.set('output', current.value);
  return found(seen);
}

function magnetNote(magnet: string | undefined): Lookup<string[]> {
  const word = magnet?.trim().toLowerCase();
  if (word === undefined || word === '') {
    return found([
      'Does a paper clip stay on its tip? A sensor without a magnet reads magnetic rings only (--magnet yes, or no).',
    ]);
  }
  if (word === 'yes') return found([]);
  if (word !== 'no')
    return missing(`--magnet is yes or no: does a paper clip stay on the tip? Got "${word.slice(0, 20)}".`);
  return found([
    'Its tip holds no paper clip: it has no magnet of its own and was made for a magnetic ring. It will not see steel teeth. Find one with a magnet.',
  ]);
}

function blockFor(kind: SensorKind): string {
  const rule = must(toothRule(kind));
  const gap =
    rule.gap === null ? [] : [`  gap: ${rule.gap} mm    # usual for its kind; the data sheet stands before it`];
  return ['sensor:', `  kind: ${kind}`, ...gap, ''].join('\n');
}

/** The likeliest kind, how sure that is, and the test that would tell most. */
export function answerSensor(typed: SensorTyped): Lookup<Answer> {
  const sights = sightsOf(typed);
  if (!sights.ok) return sights;
  const magnet = magnetNote(typed.magnet);
  if (!magnet.ok) return magnet;
  const leads = optional(typed.leads, (text) => typedCount(text, '--leads', 1, 8));
  if (!leads.ok) return leads;
  const seen = [...sights.value.values()];
  if (seen.length === 0) return missing(`Say what the leads do. ${testOf('resistance').how}`);
  const ranked = suspects(seen);
  const [best] = ranked;
  if (!best) return missing('No kind is known.');
  // Judgement is never quite sure.
  const percent = (share: number) => (share > 0.99 ? 'over 99 %' : `${Math.round(100 * share)} %`);
  const name = (kind: SensorKind) => must(toothRule(kind)).title;
  const hasMagnet = typed.magnet?.trim().toLowerCase() !== 'no';
  const isSure = best.share >= sureFrom;
  const isLikely = best.share >= likelyFrom;
  const next = nextTest(seen, [...sights.value.keys()]);
  const others = ranked.filter(({ share }, i) => i > 0 && share >= 0.05);
  const title = isSure
    ? `This is ${article(name(best.kind))} (${percent(best.share)} sure).`
    : isLikely
      ? `Likely ${article(name(best.kind))} (${percent(best.share)}); one more test will tell.`
      : `Not told yet: ${[best, ...others].map(({ kind, share }) => `${name(kind)} ${percent(share)}`).join(', ')}.`;
  return found({
    title,
    lines: [
      ...[...sights.value].map(([id, { what }]) => `${id}: ${what}`),
      ...(isSure || isLikely
        ? others.map(({ kind, share }) => `it may still be ${article(name(kind))}: ${percent(share)}`)
        : []),
    ],
    notes: [
      ...(next && !isSure ? [`Next: ${next.how}`] : []),
      ...(leads.value === undefined
        ? []
        : [
            `${leads.value} leads tell little: coils have two or three, wheel-speed sensors two, Hall sensors two to four.`,
          ]),
      ...magnet.value,
      'The shares are judgement (common practice), not a measurement: the number on its body and its data sheet stand before them.',
    ],
    result: {
      kind: isLikely ? best.kind : null,
      share: Number(best.share.toFixed(4)),
      kinds: Object.fromEntries(ranked.map(({ kind, share }) => [kind, Number(share.toFixed(4))])),
      next: next?.id ?? null,
    },
    search: {},
    block: isLikely && hasMagnet ? blockFor(best.kind) : null,
  });
}

const article = (name: string): string => `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
