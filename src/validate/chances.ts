/** How many of many joints made this way would pass: the chain thrown by chance, always from the same seed. */
import { permissibleSpecificUnbalance, permissibleUnbalance } from '../formulas/balance.ts';
import { type Link, scatterOf, stackOf, usualRuns } from '../formulas/chain.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { linksTo } from '../rotor/links.ts';
import { spinningMass, unbalanceLinks } from '../rotor/unbalance.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { startOrDone } from './chain-words.ts';
import { type Check, judged } from './check.ts';
import { mm, plain } from './words.ts';

/** Share of joints that should pass without a second look, per cent. Common practice: nineteen of twenty. */
const wanted = 95;
/** Below this share, per cent, most joints fail. */
const even = 50;

function chanceFinding(
  words: { readonly code: string; readonly title: string; readonly shown: (size: number) => string },
  links: readonly Link[],
  allowed: number,
): Finding {
  const scatter = scatterOf(links);
  const percent = 100 * scatter.chanceOf(allowed);
  const { shown } = words;
  return judged(
    {
      code: words.code,
      feature: 'body',
      title: words.title,
      unit: '%',
      why: `Of ${usualRuns} joints thrown by chance within their limits, half come out within ${shown(scatter.within(0.5))} and nineteen of twenty within ${shown(scatter.within(0.95))}; ${shown(allowed)} is allowed. The worst possible is ${shown(stackOf(links).worst)}.`,
      cure: `${startOrDone(links)} Or measure it on the finished joint and correct it there.`,
      source:
        'seeded throws: sizes even within their limits, angles even where nothing is known; limit by ISO 21940-11',
    },
    percent,
    { limit: wanted, sense: 'at least', hard: even },
  );
}

function chances(joint: Joint): Finding[] {
  const { duty } = joint.job;
  // Without a speed the other checks already say what is missing.
  if (duty?.speed === undefined) return [];
  const { G } = must(balanceGrade(duty.grade));
  const centred = chanceFinding(
    {
      code: 'centring-chance',
      title: 'chance that the shaft is centred well enough',
      shown: (size) => mm(size, 3),
    },
    linksTo(joint, 'shaft'),
    permissibleSpecificUnbalance(G, duty.speed) / 1000,
  );
  const balanced = chanceFinding(
    {
      code: 'balance-chance',
      title: 'chance that the joint is balanced well enough',
      shown: (size) => `${plain(size, 0)} g.mm`,
    },
    unbalanceLinks(joint),
    permissibleUnbalance(spinningMass(joint), G, duty.speed),
  );
  return [centred, balanced];
}

export const chance: Check = {
  id: 'chance',
  title: 'Chance of passing',
  source: 'Monte Carlo, seeded',
  isSlow: true,
  run: chances,
};
