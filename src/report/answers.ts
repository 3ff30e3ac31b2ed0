/** The five questions that whoever bolts the joint up asks, each answered in a few words with its number. */
import type { Finding, Verdict } from '../model/finding.ts';
import type { LengthUnits } from '../units/format.ts';
import { quantityText } from './numbers.ts';
import { leading, verdictRank } from './rank.ts';

export interface Answer {
  readonly question: string;
  readonly verdict: Verdict;
  /** One word or two: "Yes", "No", "Yes, with care", "Doubtful", "Not known". */
  readonly word: string;
  readonly text: string;
}

/** Which checks answer a question: starts of their codes, the one that leads first. */
interface Question {
  readonly question: string;
  readonly codes: readonly string[];
  /** The finding that tells the chance of it, where there is one. */
  readonly chance?: string;
  /** No link of the joint: it is answered, but is not what gives way first. */
  readonly isBesides?: true;
  /** While this one is open the joint is not known to be good. */
  readonly isVital?: true;
}

const questions: readonly Question[] = [
  {
    question: 'Does it stay centred?',
    codes: ['concentricity', 'face-runout', 'register-', 'dowel-fit', 'faces-seat-first', 'built-runout'],
    chance: 'centring-chance',
    isVital: true,
  },
  {
    question: 'Does it stay balanced?',
    codes: ['joint-unbalance', 'balance-adapter', 'balance-wheel', 'couple-', 'symmetry'],
    chance: 'balance-chance',
    isVital: true,
  },
  {
    question: 'Does it stay tight?',
    codes: [
      'grip-',
      'preload-',
      'head-pressure-',
      'nut-pressure-',
      'thread-stripping',
      'thread-engagement',
      'bolt-pitch-',
      'design-torque',
    ],
    isVital: true,
  },
  {
    question: 'Is the metal strong enough?',
    codes: [
      'torsion',
      'ring-shear',
      'bolt-shear-',
      'bearing-',
      'plate-bending-',
      'head-web-shear-',
      'dowel-shear',
      'burst-',
      'shaft-torsion',
    ],
    isVital: true,
  },
  {
    question: 'Does the shaft stay below its critical speed?',
    codes: ['shaft-critical-speed', 'shaft-half-critical', 'shaft-orders'],
  },
  {
    question: 'Does the shaft fit?',
    codes: ['shaft-length', 'shaft-plunge', 'spline-engagement', 'shaft-to-cut', 'mock-up-thickness'],
    isBesides: true,
  },
  {
    question: 'Are the joint angles right?',
    codes: ['train-residual', 'angle-reading', 'joint-angle-', 'needle-angle', 'angle-difference', 'angle-signs'],
    isBesides: true,
  },
  {
    question: 'Can the sensor read the wheel?',
    codes: [
      'tooth-',
      'valley-width',
      'wheel-thickness',
      'wheel-magnetic',
      'sensor-',
      'signal-window-height',
      'signal-tooth-height',
    ],
    isBesides: true,
  },
  {
    question: 'Does the bracket hold the sensor?',
    codes: ['bracket-'],
    isBesides: true,
  },
];

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
function behindIt({ code, verdict }: Finding, findings: readonly Finding[], units: LengthUnits): string {
  const side = /^grip-(\w+)$/.exec(code)?.[1];
  const dowels = findings.find((one) => one.code === `dowel-shear-${side}` && one.verdict === 'pass');
  return verdict === 'caution' && dowels ? `Not by friction: its dowels carry it. ${numberOf(dowels, units)}.` : '';
}

/** How much of what is allowed is used up: 1 at the limit, more beyond it; null where there is nothing to compare. */
export function usedUp({ value, limit, margin }: Finding): number | null {
  if (value === null || limit === null || margin === null || value <= 0 || limit <= 0) return null;
  const isAtMost = margin >= 0 === value <= limit;
  return isAtMost ? value / limit : limit / value;
}

/** A finding's number against its limit, in words. */
function numberOf(finding: Finding, units: LengthUnits): string {
  const { title, value, limit, unit, why } = finding;
  // Without a number the reason is all there is to say.
  if (value === null || limit === null) return `${title}: ${why.replace(/\.$/, '')}`;
  return `${title}: ${quantityText(value, unit, units)}, limit ${quantityText(limit, unit, units)}`;
}

const worse = (a: Finding, b: Finding): Finding => {
  const rank = verdictRank(a.verdict) - verdictRank(b.verdict);
  if (rank !== 0) return rank < 0 ? a : b;
  return (usedUp(b) ?? -1) > (usedUp(a) ?? -1) ? b : a;
};

function answerTo({ question, codes, chance }: Question, findings: readonly Finding[], units: LengthUnits): Answer[] {
  const about = findings.filter(({ code }) => codes.some((start) => code.startsWith(start)));
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
    isOpen ? '' : behindIt(told, findings, units),
    sure?.value !== null && sure !== undefined && told === lead
      ? `Of a hundred joints made this way ${Math.floor(sure.value)} stay within.`
      : '',
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

/**
 * What fails worst, whichever check says so, as the report's headline has it; where nothing fails, the check that is nearest to its limit
 * or furthest beyond it, among those that answer a question.
 */
function weakest(findings: readonly Finding[]): Finding | null {
  const fails = findings.filter(({ verdict }) => verdict === 'fail');
  if (fails.length > 0) return leading(fails);
  const all = questions.flatMap(({ codes, isBesides }) => (isBesides ? [] : codes));
  const about = findings.filter(
    (finding) =>
      finding.verdict !== 'not assessed' &&
      usedUp(finding) !== null &&
      all.some((start) => finding.code.startsWith(start)),
  );
  return about.length === 0 ? null : about.reduce(worse);
}

/** What widens the margin of a pass, by the start of its code. SIDE stands for driving, driven or wheel. */
const widens: Readonly<Record<string, string>> = {
  'register-corner': 'A larger chamfer at the mouth of the recess, or an undercut at the foot of the spigot.',
  'register-holds': 'A higher spigot or a deeper recess (adapter.SIDE.register: { depth }).',
  'register-opens': "An adapter of the flange's own metal (adapter.material).",
  'register-binds': "An adapter of the flange's own metal (adapter.material).",
  'register-': 'A mate measured with a micrometer, or a closer fit (adapter.SIDE.fit).',
  'faces-seat-first': 'A lower spigot or a deeper recess (adapter.SIDE.register).',
  'dowel-': 'Thicker pins, or holes reamed together (adapter.SIDE.dowels).',
  'balance-': 'An even pattern of holes.',
  'couple-': 'Both faces drilled alike.',
  'preload-': 'More length clamped: a thicker adapter, washers, longer screws; and the re-torque after the first run.',
  'head-pressure-': 'Hardened washers (adapter.SIDE.washer: true).',
  'nut-pressure-': 'Hardened washers (adapter.SIDE.washer: true).',
  'thread-': 'Longer screws or deeper threads.',
  'bolt-pitch-': 'More screws.',
  'bolt-shear-': 'Thicker or more screws.',
  'bearing-': 'Thicker or more screws, or dowels (adapter.SIDE.dowels: auto).',
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

/** Answers to the five questions; a question that no check speaks to is left out. */
export function answersOf(findings: readonly Finding[], units: LengthUnits): Answer[] {
  const answered = questions.flatMap((question) => answerTo(question, findings, units));
  const weak = weakest(findings);
  if (!weak) return answered;
  const used = usedUp(weak);
  const better = betterFor(weak);
  return [
    ...answered,
    {
      question: 'What is the weakest link?',
      verdict: weak.verdict,
      word: used === null ? 'It fails' : `${Math.round(100 * used)} % used`,
      text: `${numberOf(weak, units)}.`,
    },
    ...(better === ''
      ? []
      : [{ question: 'What would make it better?', verdict: weak.verdict, word: 'Do this first', text: better }]),
  ];
}
