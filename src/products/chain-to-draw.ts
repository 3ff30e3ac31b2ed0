/** The chains of a joint as their pictures need them: what stands in the parts is taken as built where it was measured. */
import type { ChainRow, ChainViewInput } from '../drawing/chain-sheet.ts';
import type { Joint } from '../job/joint.ts';
import { hasWindows } from '../parts/tone-wheel.ts';
import { type ChainId, type ChainStudy, chainStudies } from '../rotor/chain-study.ts';
import { formatLength } from '../units/format.ts';
import { dialText, steadyFixed } from '../units/steady.ts';
import { concentricity } from '../validate/concentricity.ts';
import { asItIs } from './as-it-is.ts';
import { partOfLink } from './part-of-link.ts';

const codes: Readonly<Record<ChainId, string>> = {
  shaft: 'concentricity',
  lean: 'face-runout',
  teeth: 'wheel-runout',
};

const titles: Readonly<Record<ChainId, { readonly title: string; readonly to: string; readonly told: string }>> = {
  shaft: {
    title: 'How far the driven shaft can be off centre',
    to: "driven shaft's axis",
    told: 'Links of the centring chain, the widest first: what to improve first so that the shaft runs centred.',
  },
  lean: {
    title: 'How far the driven face can run out',
    to: "driven flange's face",
    told: 'Links of what leans the driven flange, by a dial at its rim, the widest first.',
  },
  teeth: {
    title: 'How far the teeth can run out',
    to: 'tips of the teeth',
    told: 'Links between the driving axis and the teeth, by a dial at their tips (twice the shift), the widest first.',
  },
};

const size = (mm: number, decimals: number): string => {
  const text = steadyFixed(mm, decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
};

/** Decimals of a link's part, as in the findings. */
const decimals = 3;

function rowOf({ link, worst, likely, place, amount }: ChainStudy['told'][number]): ChainRow {
  const { id, what, angle, high, most, doubt } = link;
  const at = (degrees: number) => `${Number(size(degrees, 0)) % 360}\u00b0`;
  return {
    what,
    number: place + 1,
    said: size(amount, decimals),
    worst,
    likely,
    read:
      angle === null
        ? doubt === 0
          ? null
          : `read with a dial: ${dialText(most - doubt)} to a side that is not known, in doubt by ${dialText(doubt)}`
        : `read with a dial: ${dialText(most)}${high === undefined ? ` towards ${at(angle)}` : `, high at ${at(high)}`}, in doubt by ${dialText(doubt)}`,
    feature: partOfLink(id),
  };
}

/** The teeth's chain of a wheel with windows, whose rim the dial reads. */
const windowsTitle: (typeof titles)['teeth'] = {
  title: 'How far the windows can run out',
  to: 'rim of the wheel',
  told: 'Links between the driving axis and the windows, by a dial at the rim outside of them (twice the shift), the widest first.',
};

/** A chain's picture, and what stands under it. */
export interface ChainToDraw {
  readonly name: `chain-${ChainId}`;
  readonly input: ChainViewInput;
  readonly caption: string;
}

/** Every chain that the joint has: shaft, lean, teeth. Empty chains are left out. */
export function chainsToDraw(joint: Joint): ChainToDraw[] {
  const built = asItIs(joint);
  const findings = concentricity.run(built);
  const inches = joint.job.units === 'in';
  const sized = (mm: number) => `${size(mm, 3)} mm${inches ? ` [${formatLength(mm, 'in')}]` : ''}`;
  return chainStudies(built).flatMap(({ id, shares, told, first, worst, likely }) => {
    const finding = findings.find(({ code }) => code === codes[id]);
    if (!finding || worst <= 0) return [];
    const {
      title,
      to,
      told: about,
    } = id === 'teeth' && joint.wheelSpec && hasWindows(joint.wheelSpec) ? windowsTitle : titles[id];
    return [
      {
        name: `chain-${id}` as const,
        caption: built === joint ? about : `${about} As built.`,
        input: {
          id: `chain-${id}`,
          title,
          from: shares[0]?.link.id === 'set-true' ? 'where the dial stands' : "driving flange's axis",
          to,
          rows: told.map(rowOf),
          worst,
          likely,
          limit: finding.limit,
          verdict: finding.verdict,
          start: first && { number: first.place + 1, cure: first.link.cure },
          notGiven: finding.notGiven ?? [],
          feature: finding.feature,
          unit: 'mm',
          sized,
        },
      },
    ];
  });
}
