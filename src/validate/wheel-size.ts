/** Has a wheel whose outside was left open grown far beyond what it stands on, why, and what would make it smaller? */
import { hasGrown, mostGrowth, quietUpTo } from '../job/wheel-growth.ts';
import { capital } from '../units/sentence.ts';
import { type Check, judged } from './check.ts';

const mm = (value: number) => `${Number(value.toFixed(2))} mm`;

/** What each key changes, at the bench. Whatever counts the pulses must know of another count. */
const wordsFor: Readonly<Record<string, string>> = {
  'wheel.teeth': 'fewer teeth, which whatever counts them must be told',
  'wheel.ratio': 'another share of tooth and valley',
  'wheel.thickness': 'a thinner sheet',
  'sheet.tolerance': 'a service that cuts closer',
  'sensor.crawl': 'a slowest speed that is not so slow',
};

export const wheelSize: Check = {
  id: 'wheel-size',
  title: 'Size of a wheel that was left open',
  source: 'choice of this program',
  run({ wheelGrowth: growth }) {
    if (!growth) return [];
    const { outside, start, because, smaller } = growth;
    const changes = (smaller ?? []).map(
      ({ key, outside: then }) =>
        `${wordsFor[key.split(':')[0] ?? ''] ?? 'a change'} (${key}): ${mm(then)}, ${mm(outside - then)} smaller`,
    );
    // Nobody has looked yet while somebody types, nor in a sweep.
    const found =
      smaller === undefined
        ? ''
        : changes.length > 0
          ? `One change, and the wheel sized again with it: ${changes.join('; or ')}.`
          : 'No single change of teeth, ratio, thickness or tolerance makes it much smaller: a sensor that reads a finer pitch would.';
    const byHand = 'type wheel.outside, if there is room for it.';
    const cure = found === '' ? capital(byHand) : `${found} Or ${byHand}`;
    return [
      judged(
        {
          code: 'wheel-size',
          feature: 'wheel-outline',
          title: 'outside of the wheel that was chosen',
          unit: 'mm',
          why: `The wheel came out at ${mm(outside)}; screws, adapter and flanges alone ask for ${mm(start)}.${hasGrown(growth) ? ` It is that large because only then ${because}. It is heavy, and needs room all round.` : ''}`,
          cure,
          source: `the demands of the checks; ${mostGrowth} times what it stands on, choice of this program`,
        },
        outside,
        { limit: quietUpTo(growth), sense: 'at most', worst: 'caution' },
      ),
    ];
  },
};
