/** What came of trying a remedy, in a sentence for whoever must choose between remedies. */
import type { Asked, Moved, TriedChange } from '../model/tried.ts';
import type { LengthUnits } from '../units/format.ts';
import { listed } from '../units/sentence.ts';
import { limitText, quantityText } from './numbers.ts';

/** No more titles than this in one sentence. */
const mostTitles = 3;

/** Titles of checks, each once, the rest counted. */
function titles(moved: readonly { readonly title: string }[]): string {
  const all = [...new Set(moved.map(({ title }) => title))];
  const rest = all.length - mostTitles;
  return listed(rest > 0 ? [...all.slice(0, mostTitles), `${rest} more`] : all);
}

/** Below this share of what was missing a change makes no difference. */
const sameShare = 0.02;

/** What becomes of the finding itself: "cures this", "brings it nearer, not far enough: 412 MPa, at most 380 MPa". */
function effect({ before, after }: Asked, units: LengthUnits): string {
  if (after === null || after.verdict === 'pass') return 'cures this';
  if (after.verdict === 'not assessed') return 'leaves it open: then it is not assessed';
  const number =
    after.value === null || after.limit === null
      ? ''
      : `: ${quantityText(after.value, after.unit, units)}, ${limitText(after, units)}`;
  if (before.verdict === 'fail' && after.verdict === 'caution') return `brings it from fail to caution${number}`;
  if (before.verdict === 'caution' && after.verdict === 'fail') return `makes it worse: it fails then${number}`;
  const gained = (after.margin ?? 0) - (before.margin ?? 0);
  const least = sameShare * Math.abs(before.margin ?? 0);
  if (gained > least) return `brings it nearer, not far enough${number}`;
  return gained < -least ? `makes it worse${number}` : `does not change it${number}`;
}

/** How checks are told that get worse. */
const leads = { fail: 'fails', caution: 'asks for care', 'not assessed': 'not assessed' } as const;

/** "but then fails: head room on the driven side; asks for care: web between holes" */
function spoilt(worse: readonly Moved[]): string {
  const parts = (['fail', 'caution', 'not assessed'] as const).flatMap((verdict) => {
    const some = worse.filter(({ after }) => after === verdict);
    return some.length === 0 ? [] : [`${leads[verdict]}: ${titles(some)}`];
  });
  return `but then ${parts.join('; ')}`;
}

/** Every finding that a change cures, asked for or not. */
const curedBy = ({ asked, better }: TriedChange): Pick<Moved, 'name' | 'code' | 'title'>[] => [
  ...asked.flatMap(({ name, code, before, after }) =>
    after === null || after.verdict === 'pass' ? [{ name, code, title: before.title }] : [],
  ),
  ...better.filter(({ after }) => after === 'pass'),
];

/** What came of one change, for one of the findings that asked for it. */
function sentence(change: TriedChange, asked: Asked, units: LengthUnits): string {
  const { words, stopped, worse } = change;
  const lead = `Tried (${words}):`;
  if (stopped !== null) return `${lead} that cannot be made here. ${stopped}`;
  // The finding itself is told of already.
  const others = worse.filter(({ name }) => name !== asked.name);
  const also = curedBy(change).filter(({ name }) => name !== asked.name);
  const parts = [
    effect(asked, units),
    others.length === 0 ? 'no other check gets worse' : spoilt(others),
    ...(also.length > 0 ? [`it cures ${titles(also)} too`] : []),
  ];
  return `${lead} ${parts.join('; ')}.`;
}

/** Sentences by the name (`checkedName`) of the finding that they belong to. */
export function triedWords(
  tried: readonly TriedChange[],
  units: LengthUnits,
): Readonly<Record<string, readonly string[]>> {
  const words: Record<string, string[]> = {};
  for (const change of tried)
    for (const asked of change.asked) {
      words[asked.name] ??= [];
      words[asked.name]?.push(sentence(change, asked, units));
    }
  return words;
}

/** How many findings a change cures; 0 where it spoils anything. */
const cures = (change: TriedChange): number =>
  change.stopped !== null || change.worse.length > 0 ? 0 : curedBy(change).length;

/** The change that does most, where it cures two findings or more and spoils none; null where there is none. */
export function bestChange(tried: readonly TriedChange[]): string | null {
  const [best] = [...tried].sort((a, b) => cures(b) - cures(a));
  const count = best ? cures(best) : 0;
  return best && count > 1
    ? `One change was tried that cures ${count} of these and makes no other check worse (${best.words}).`
    : null;
}

/** What was tried, as data. */
export interface TriedJson {
  /** What to write in the job. */
  readonly write: string;
  /** Codes: of the findings that ask for it, of those it cures, of those it eases, of those it makes worse. */
  readonly asked_by: readonly string[];
  readonly cures: readonly string[];
  readonly eases: readonly string[];
  readonly worsens: readonly string[];
  /** Why it cannot be made; null where it can. */
  readonly stopped: string | null;
}

/** The same as data, for a program. */
export function triedJson(tried: readonly TriedChange[]): TriedJson[] {
  return tried.map((change) => {
    const { words, asked, better, worse, stopped } = change;
    const cured = stopped === null ? curedBy(change).map(({ code }) => code) : [];
    const moved = [
      ...asked.flatMap(({ code, before, after }) =>
        before.verdict === 'fail' && after?.verdict === 'caution' ? [code] : [],
      ),
      ...better.map(({ code }) => code),
    ];
    return {
      write: words,
      asked_by: asked.map(({ code }) => code),
      cures: cured,
      eases: moved.filter((code) => !cured.includes(code)),
      worsens: worse.map(({ code }) => code),
      stopped,
    };
  });
}
