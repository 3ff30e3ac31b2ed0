/** Other ways of making the joint, and why nothing passes, as sentences for both reports. */
import type { Alternative, Alternatives, Joint } from '../job/joint.ts';
import { formatMass, type LengthUnits } from '../units/format.ts';
import { numberText, sizeText } from './numbers.ts';

/** One other way, in words. */
export interface OtherWay {
  readonly what: string;
  /** What it trades against the chosen one. */
  readonly trades: string;
  /** Its own sizes. */
  readonly sizes: string;
  /** What to write in the job to have it. */
  readonly keys: string;
}

/** What a report says about the ways that were tried. */
export interface OtherWays {
  /** How many were tried and which was taken. */
  readonly chosen: string;
  readonly others: readonly OtherWay[];
  /** Why nothing passes, a paragraph each; empty when something does. */
  readonly impossible: readonly string[];
}

/** Differences below these are none: mm, and a share of the whole for masses. */
const sameSize = 0.005;
const sameShare = 0.002;

/** "2.0 mm thicker"; empty where it makes no difference. */
function difference(amount: number, whole: number, text: (size: number) => string, more: string, less: string): string {
  if (Math.abs(amount) <= sameShare * Math.abs(whole)) return '';
  return `${text(Math.abs(amount))} ${amount > 0 ? more : less}`;
}

/** Inertia about the axis, kg.mm2: what a fabricator can compare with a flywheel. */
const inertiaText = (gmm2: number): string => `${numberText(Number((gmm2 / 1000).toPrecision(3)))} kg.mm2`;

const counted = (amount: number, one: string, many: string): string =>
  amount === 0 ? '' : `${Math.abs(amount)} ${Math.abs(amount) === 1 ? one : many} ${amount > 0 ? 'more' : 'fewer'}`;

function tradesOf({ than, thickness, mass, inertia, cautions, spares }: Alternative, units: LengthUnits): string {
  const parts = [
    Math.abs(than.thickness) < sameSize
      ? ''
      : difference(than.thickness, thickness, (size) => sizeText(size, units, 1), 'thicker', 'thinner'),
    difference(than.mass, mass, (size) => formatMass(size, units), 'heavier', 'lighter'),
    difference(than.inertia, inertia, inertiaText, 'more inertia', 'less inertia'),
    counted(than.pockets, 'pocket', 'pockets'),
    counted(than.threads, 'thread to tap', 'threads to tap'),
    counted(than.faces, 'drilling set-up', 'drilling set-ups'),
    cautions.length > 0 ? `past the limit in ${cautions.join(' and in ')}` : '',
    spares.length > 0 ? `within the limit in ${spares.join(' and in ')}` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'the same size and mass, and as much work' : parts.join(', ');
}

function otherWay(other: Alternative, units: LengthUnits): OtherWay {
  return {
    what: other.what,
    trades: tradesOf(other, units),
    sizes: `${sizeText(other.thickness, units, 1)} thick, ${formatMass(other.mass, units)}, ${inertiaText(other.inertia)}`,
    keys: other.keys,
  };
}

function impossibleText({ impossible, tried }: Alternatives): string[] {
  if (impossible === null) return [];
  const { facts, together, nearest, undrawn } = impossible;
  const ways = tried === 1 ? 'The job leaves one way open' : `${tried} ways were tried`;
  const lead =
    tried === 1
      ? `${ways}, and it does not pass.`
      : together
        ? `${ways}; each of them fails on one or the other of these:`
        : facts.length === 1
          ? `${ways}, and one fact fails them all:`
          : `${ways}, and each of these facts alone fails them all:`;
  const cure = nearest ?? 'None of the changes to the adapter that were tried lets it pass.';
  return [lead, ...facts, ...(undrawn === undefined ? [] : [undrawn]), cure];
}

/** What the report says; null when nothing was searched. */
export function otherWays({ alternatives }: Pick<Joint, 'alternatives'>, units: LengthUnits): OtherWays | null {
  if (alternatives === undefined) return null;
  const { tried, chosen, because, others } = alternatives;
  const why = because === '' ? '' : ` It is not the usual way: ${because}.`;
  return {
    chosen: `${tried} ${tried === 1 ? 'way was' : 'ways were'} tried. Chosen: ${chosen}.${why}`,
    others: others.map((other) => otherWay(other, units)),
    impossible: impossibleText(alternatives),
  };
}
