/** A chain of shifts in words: its links with amounts that add up to the sum that is told, what to do first, and what grade it keeps as designed. */
import { permissibleSpecificUnbalance } from '../formulas/balance.ts';
import type { Link } from '../formulas/chain.ts';
import { firstToDo, type LinkShare, sharesOf, toldShares, widestFirst } from '../formulas/chain-shares.ts';
import type { BalanceGrade } from '../standards/balance-grades.ts';
import { finestGradeFor } from '../standards/balance-grades.ts';
import { dialText } from '../units/steady.ts';
import { angle, fromIndex, plain } from './words.ts';

/** How sizes of a chain are written. */
interface ChainUnit {
  readonly unit: string;
  readonly decimals: number;
}

const inMm: ChainUnit = { unit: 'mm', decimals: 3 };

/** One link with its rounded part of the worst case; where a dial told its side, how that part comes about. */
function linkWords({ link, along }: LinkShare, amount: number, { unit, decimals }: ChainUnit): string {
  const size = (value: number) => plain(value, decimals);
  const told = `${link.what} ${size(amount)}${unit === '' ? '' : ` ${unit}`}`;
  const doubt = Number(size(link.doubt));
  // The doubt as it is written, and the rest: the two add up to the amount.
  const rest = Number(size(amount - doubt));
  const dial = `${size(doubt)} doubt of the dial`;
  if (link.angle === null) {
    if (doubt === 0) return told;
    return unit === inMm.unit
      ? `${told} (${dialText(link.most - link.doubt)} read, ${dialText(link.doubt)} doubt of the dial)`
      : `${told} (${size(rest)} read, ${dial})`;
  }
  // What a dial saw is told by its high spot, which can be marked; everything else by the side it pulls to.
  const tenth = (degrees: number) => angle(Number(degrees.toFixed(1)) % 360);
  const at = link.high === undefined ? ` towards ${tenth(link.angle)}` : `, high at ${tenth(link.high)}`;
  const read = doubt > 0 ? ' read' : '';
  const arrow =
    along < 0
      ? `${size(link.most)}${read}${at}, pulls back by ${size(Math.abs(rest))}`
      : size(rest) === size(link.most)
        ? `${size(rest)}${read}${at}`
        : `${size(rest)} of the ${size(link.most)}${read}${at}`;
  if (doubt > 0) return `${told} (${arrow}, ${dial})`;
  if (link.high === undefined && size(rest) === size(link.most)) return `${told}${at}`;
  return `${told} (${arrow})`;
}

/** From where, which way round and seen from where every angle of a joint is told; empty where a chain tells none. */
export const anglesSaid = (links: readonly Link[]): string =>
  links.some(({ angle: at }) => at !== null) ? ` Angles: ${fromIndex}.` : '';

/** Links as a list, the widest first, their amounts adding up to the worst case. Parts of the chain in the unit that is named. */
export const listed = (shares: readonly LinkShare[], unit = inMm): string =>
  toldShares(shares, unit.decimals)
    .map((share) => linkWords(share, share.amount, unit))
    .join(', ');

/** As `listed`, no more than `most` links by name and the rest as one sum. */
export function listedShort(shares: readonly LinkShare[], most: number, unit: ChainUnit): string {
  const all = toldShares(shares, unit.decimals);
  const named = all.slice(0, most).map((share) => linkWords(share, share.amount, unit));
  const rest = all.slice(most);
  const sum = rest.reduce((total, { amount }) => total + amount, 0);
  return [...named, ...(rest.length > 0 ? [`${rest.length} smaller, together ${plain(sum, unit.decimals)}`] : [])].join(
    ', ',
  );
}

/** What to do first, a sentence; empty where nothing is left to do about any link, and for an empty chain. */
export function startWith(links: readonly Link[]): string {
  const shares = sharesOf(links);
  const first = firstToDo(shares);
  if (!first) return '';
  const { what, cure } = first.link;
  const ranked = widestFirst(shares);
  const bigger = ranked.slice(
    0,
    ranked.findIndex(({ place }) => place === first.place),
  );
  return bigger.length === 0
    ? `Start with the biggest, ${what}: ${cure}.`
    : `Start with ${what}: ${cure}. Nothing is left to do about what is bigger: ${bigger.map(({ link }) => link.what).join(', ')}.`;
}

/** The same where there always is something to say. */
export const startOrDone = (links: readonly Link[]): string =>
  startWith(links) || 'Nothing is left to do about any of its links.';

/**
 * What the joint keeps as it is designed: the finest grade at its speed, and how fast it may turn in the grade that is asked for.
 * @param off how far the mass is off centre at worst, mm, above 0
 * @param rpm highest speed, above 0
 * Source: G = e omega, ISO 21940-11.
 */
export function asDesigned(off: number, rpm: number, asked: BalanceGrade): string {
  const kept = finestGradeFor((off * 2 * Math.PI * rpm) / 60);
  // Micrometres at one turn a minute, over those that are off: the speed at which the two are equal.
  const speed = Math.floor(permissibleSpecificUnbalance(asked.G, 1) / (1000 * off) + 1e-9);
  const keeps = kept
    ? `As designed it keeps ${kept.name} at ${plain(rpm, 0)} rpm (duty.grade: ${kept.name.replace(' ', '')})`
    : `As designed it keeps no grade of ISO 21940-11 at ${plain(rpm, 0)} rpm`;
  return `${keeps}, and ${asked.name} up to ${speed} rpm.`;
}

/** What to do about a chain that is past its limit: first step, the place where it can be put right, and the grade that it keeps as it is. */
export function cureOfChain(links: readonly Link[], off: number, rpm: number, asked: BalanceGrade): string {
  const first = startWith(links);
  const balanced = first
    ? `${first} Then have the shaft balanced in place.`
    : 'Have the shaft balanced in place: nothing is left to do about any of its links.';
  return `${balanced} ${asDesigned(off, rpm, asked)}`;
}
