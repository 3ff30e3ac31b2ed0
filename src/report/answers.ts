/** The questions that whoever bolts the joint up asks, each answered in a few words with its number. */
import type { Finding, Verdict } from '../model/finding.ts';
import { pressing, usedUp } from '../model/limit-use.ts';
import type { LengthUnits } from '../units/format.ts';
import { capital } from '../units/sentence.ts';
import { limitText, quantityText } from './numbers.ts';
import { type Question, questions, speaksTo } from './questions.ts';
import { leading, verdictRank } from './rank.ts';

export interface Answer {
  readonly question: string;
  readonly verdict: Verdict;
  /** One word or two: "Yes", "No", "Yes, with care", "Doubtful", "Not known". */
  readonly word: string;
  readonly text: string;
}

const words: Readonly<Record<Verdict, string>> = {
  pass: 'Yes',
  caution: 'Yes, with care',
  fail: 'No',
  'not assessed': 'Not known',
};

/** Nobody reads a yes over a number that is past its limit, even where it is only a caution. */
const wordFor = (verdict: Verdict, told: Finding): string =>
  verdict === 'caution' && told.margin !== null && told.margin < 0 ? 'Doubtful' : words[verdict];

/** What stands behind a joint that slips: the dowels of that side, where they carry it alone. */
function behindIt({ code, verdict, value }: Finding, findings: readonly Finding[], units: LengthUnits): string {
  const side = /^grip-(\w+)$/.exec(code)?.[1];
  const dowels = findings.find((one) => one.code === `dowel-shear-${side}` && one.verdict === 'pass');
  if (verdict !== 'caution' || !dowels) return '';
  const slips = value !== null && value < 1;
  return `${slips ? 'Not by friction: its dowels carry it.' : 'Should it slip, its dowels carry it.'} ${capital(numberOf(dowels, units))}.`;
}

/** A finding's number against its limit, in words. */
function numberOf(finding: Finding, units: LengthUnits): string {
  const { title, value, limit, unit, why } = finding;
  // Without a number the reason is all there is to say.
  if (value === null || limit === null) return `${title}: ${why.replace(/\.$/, '')}`;
  return `${title}: ${quantityText(value, unit, units)}, ${limitText(finding, units)}`;
}

/** Of two findings the one that is told first. */
const worse = (a: Finding, b: Finding): Finding => {
  const rank = verdictRank(a.verdict) - verdictRank(b.verdict);
  if (rank !== 0) return rank < 0 ? a : b;
  return pressing(b) > pressing(a) ? b : a;
};

/** A chance at which one joint in twenty at most is past its limit is called rare. */
const rare = 95;

/** How many joints stay within; where the worst case does not, what that leaves in doubt although few or none get there. */
function chanceWords({ verdict, margin }: Finding, { value }: Finding): string {
  if (value === null) return '';
  const many = `f a hundred joints made this way ${Math.floor(value)} stay within`;
  if (verdict !== 'caution' || margin === null || margin >= 0) return `O${many}.`;
  const worst = 'That is the worst case: every link off as far as it may be, and all the same way.';
  return `${worst} ${value >= rare ? `Few come near it: o${many}` : `O${many}`}. Only the finished joint, measured, tells of this one.`;
}

function answerTo(asked: Question, findings: readonly Finding[], units: LengthUnits, reversing = false): Answer[] {
  const { question, codes, chance } = asked;
  const about = findings.filter((finding) => speaksTo(asked, finding));
  const [first] = about;
  if (!first) return [];
  const lead =
    about
      .filter(({ code }) => code.startsWith(codes[0] ?? ''))
      .reduce<Finding | null>((a, b) => (a ? worse(a, b) : b), null) ?? first;
  const judged = about.filter(({ verdict }) => verdict !== 'not assessed');
  const open = about.filter(({ verdict }) => verdict === 'not assessed');
  // A question is only answered where its leading check was: passes about lesser things do not answer it.
  const isOpen = lead.verdict === 'not assessed' && !judged.some(({ verdict }) => verdict === 'fail');
  const worst = judged.length > 0 ? judged.reduce(worse) : lead;
  const verdict: Verdict = isOpen ? 'not assessed' : worst.verdict;
  const told = isOpen ? lead : worst.verdict === 'pass' && lead.value !== null ? lead : worst;
  const notGiven = [...new Set(about.flatMap((finding) => finding.notGiven ?? []))];
  const sure = findings.find(({ code }) => code === chance);
  const text = [
    isOpen ? `${lead.why} ${lead.remedy}` : `${numberOf(told, units)}.`,
    // Dowels save no face that slips to and fro.
    isOpen || reversing ? '' : behindIt(told, findings, units),
    sure !== undefined && told === lead ? chanceWords(told, sure) : '',
    !isOpen && told !== worst && worst.value !== null ? `Nearest to its limit: ${numberOf(worst, units)}.` : '',
    notGiven.length > 0 ? `Not given, counted as nothing: ${notGiven.join(', ')}.` : '',
    !isOpen && open.length > 0 ? `Not looked at: ${[...new Set(open.map(({ title }) => title))].join(', ')}.` : '',
  ];
  return [{ question, verdict, word: wordFor(verdict, told), text: text.filter((part) => part !== '').join(' ') }];
}

/** The questions that matter most and that no check could answer, as they are asked. */
export function openQuestions(findings: readonly Finding[]): string[] {
  return questions.flatMap((one) =>
    one.isVital
      ? answerTo(one, findings, 'mm').flatMap(({ question, verdict }) => (verdict === 'not assessed' ? [question] : []))
      : [],
  );
}

/** What widens the margin of a pass, by the start of its code. SIDE stands for driving, driven or wheel. */
const widens: Readonly<Record<string, string>> = {
  'register-corner': 'A larger chamfer at the mouth of the recess, or an undercut at the foot of the spigot.',
  'register-holds': 'A higher spigot or a deeper recess (adapter.SIDE.register: { depth }).',
  'register-opens': "An adapter of the flange's own metal (adapter.material).",
  'register-binds': "An adapter of the flange's own metal (adapter.material).",
  'register-': 'A mate measured with a micrometer, or a closer fit (adapter.SIDE.fit).',
  'faces-seat-first': 'A lower spigot or a deeper recess (adapter.SIDE.register).',
  'dowel-fit-': 'A closer fit (adapter.SIDE.dowels.fit).',
  'dowel-press-': 'A freer fit (adapter.SIDE.dowels.fit).',
  'dowel-length-': 'Longer pins, or thinner ones (adapter.SIDE.dowels.length, .size).',
  'dowel-': 'Thinner pins, or fewer of them (adapter.SIDE.dowels.size, .count).',
  'balance-': 'An even pattern of holes.',
  'couple-': 'Both faces drilled alike.',
  'preload-': 'More length clamped: a thicker adapter, washers, longer screws; and the re-torque after the first run.',
  'head-pressure-': 'Hardened washers (adapter.SIDE.washer: true).',
  'nut-pressure-': 'Hardened washers (adapter.SIDE.washer: true).',
  'thread-': 'Longer screws or deeper threads.',
  'bolt-pitch-': 'More screws.',
  'bolt-shear-': 'Thicker or more screws.',
  'bearing-': 'Thicker or more screws.',
  'plate-bending-': 'Faces that touch as far out as the screws reach (adapter.outside).',
  'head-web-shear-': 'A thicker adapter (adapter.thickness), or flatter heads.',
  torsion: 'A larger outside or a smaller bore (adapter.outside, adapter.bore).',
  'ring-shear': 'A thicker adapter (adapter.thickness).',
  'burst-': 'A smaller part, or a stronger metal.',
};

/** What would make the weakest link better. */
function betterFor({ code, feature, remedy, improve }: Finding): string {
  if (remedy !== '') return remedy;
  if (improve !== undefined) return improve;
  const start = Object.keys(widens).find((key) => code.startsWith(key));
  const side = ['driving', 'driven', 'wheel'].find((name) => code.endsWith(name) || feature.startsWith(name));
  return start ? (widens[start] ?? '').replaceAll('SIDE', side ?? 'driven') : '';
}

/** The first thing, as the headline names it, and what would make it better; empty where no finding has a number and none is bad. */
function weakest(findings: readonly Finding[], units: LengthUnits): Answer[] {
  const weak = leading(findings);
  const used = weak && usedUp(weak);
  if (!weak || weak.verdict === 'not assessed' || (weak.verdict === 'pass' && used === null)) return [];
  const { verdict } = weak;
  const better = betterFor(weak);
  const isDone = better === '' && weak.improve !== undefined;
  return [
    {
      question: 'What is the weakest link?',
      verdict,
      word: used !== null ? `${Math.round(100 * used)} % used` : verdict === 'fail' ? 'It fails' : 'Needs a look',
      text: `${numberOf(weak, units)}.`,
    },
    ...(better === '' && !isDone
      ? []
      : [
          {
            question: 'What would make it better?',
            verdict,
            word: isDone ? 'Nothing is left' : 'Do this first',
            text: isDone ? 'What helps is done already: the closest fit, the finest measurement.' : better,
          },
        ]),
  ];
}

/** Answers to the questions; a question that no check speaks to is left out. `reversing`: the joint's torque works both ways (duty.reversing). */
export const answersOf = (findings: readonly Finding[], units: LengthUnits, reversing = false): Answer[] =>
  [...questions.flatMap((question) => answerTo(question, findings, units, reversing)), ...weakest(findings, units)].map(
    (answer) => ({ ...answer, text: capital(answer.text) }),
  );
