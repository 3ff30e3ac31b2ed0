/** Everything a report says, as data. Text, JSON and HTML are three ways of writing this down. */
import type { Joint } from '../job/joint.ts';
import type { JobInput } from '../job/schema.ts';
import type { Assumption, Finding, Verdict } from '../model/finding.ts';
import { senseOf } from '../model/limit-use.ts';
import { checkedName } from '../model/tried.ts';
import type { RubbingJoint } from '../rotor/joint-face.ts';
import { reverses } from '../rotor/joint-torque.ts';
import type { LengthUnits } from '../units/format.ts';
import { capital } from '../units/sentence.ts';
import { type OtherWays, otherWays } from './alternatives.ts';
import { type Answer, answersOf, openQuestions } from './answers.ts';
import { type ControllerReport, controllerReport } from './controller.ts';
import { dowelsToBuy } from './dowel-lines.ts';
import { jointVerdict } from './joint-verdict.ts';
import { type JointWithNumbers, type KeyNumber, keyNumbers } from './key-numbers.ts';
import { quantityText } from './numbers.ts';
import { leading, worstFirst } from './rank.ts';
import { safetyNote, standingLimits } from './safety.ts';
import { type BuyLine, screwsToBuy } from './screw-list.ts';
import { shaftLines } from './shaft-lines.ts';
import type { SheetOrder } from './sheet-lines.ts';
import { signalLines } from './signal-lines.ts';
import { bestChange, type TriedJson, triedJson, triedWords } from './tried-words.ts';
import { type TubesReport, tubesReport } from './tubes.ts';

/** The part of a joint that a report reads. */
export type JointToReport = JointWithNumbers &
  RubbingJoint &
  Pick<Joint, 'assumptions' | 'alternatives' | 'tried' | 'wheelSpec'> & {
    readonly job: Pick<JobInput, 'title' | 'units' | 'shaft' | 'duty' | 'sensor' | 'wheel'>;
  };

/** What was written, and what was held back and why; unknown for a mere check. */
export interface FilesReport {
  readonly made: readonly { readonly kind: string; readonly path: string; readonly bytes: number }[];
  readonly held: readonly { readonly kind: string; readonly why: string }[];
}

export interface NextStep {
  readonly verdict: Verdict;
  readonly code: string;
  /** What it is about, in trade words. */
  readonly about: string;
  readonly todo: string;
  /** What came of trying it, a sentence for each change it names; empty where none was tried. */
  readonly tried: readonly string[];
}

export interface ReportData {
  readonly title: string;
  /** The mark of this job, on every file made from it; empty where it was not worked out. */
  readonly revision: string;
  readonly units: LengthUnits;
  readonly verdict: Verdict;
  readonly counts: Readonly<Record<Verdict, number>>;
  /** One sentence with the one number that matters most. */
  readonly headline: string;
  /** Says how many checks were not assessed; empty when all were. */
  readonly unassessed: string;
  /** The questions of whoever bolts it up. */
  readonly answers: readonly Answer[];
  readonly next: readonly NextStep[];
  /** The one change that cures most of it; null where there is none. */
  readonly bestChange: string | null;
  /** What came of trying remedies, by the name (`checkedName`) of the finding. */
  readonly tried: Readonly<Record<string, readonly string[]>>;
  /** The same as data. */
  readonly triedJson: readonly TriedJson[];
  readonly findings: readonly Finding[];
  readonly assumptions: readonly Assumption[];
  readonly keyNumbers: readonly KeyNumber[];
  readonly screws: readonly BuyLine[];
  /** Other ways of making the joint, and why nothing passes; null when nothing was searched. */
  readonly alternatives: OtherWays | null;
  /** Stock tubes for the shaft; null where the job describes none. */
  readonly tubes: TubesReport | null;
  /** What to tell the controller, and tooth counts; null without a wheel or a sensor. */
  readonly controller: ControllerReport | null;
  /** Flat parts as they are ordered, with the pre-flight of their files; empty for a mere check. */
  readonly sheet: readonly SheetOrder[];
  readonly files: FilesReport | null;
  readonly safety: readonly string[];
  readonly limits: readonly string[];
}

/** What is left of a margin, in words: "0.35 mm to spare", "0.80 mm short", "0.03 mm over". */
export function marginText(finding: Finding, units: LengthUnits): string {
  if (finding.margin === null) return '-';
  const size = quantityText(Math.abs(finding.margin), finding.unit, units);
  if (finding.margin >= 0) return `${size} to spare`;
  const over = finding.value !== null && finding.limit !== null && finding.value > finding.limit;
  return over ? `${size} over` : `${size} short`;
}

function numberSentence(finding: Finding, units: LengthUnits): string {
  const { title, value, limit, unit, margin } = finding;
  if (value === null) return title;
  const found = `${title}: ${quantityText(value, unit, units)}`;
  if (limit === null) return found;
  const against = `${found} against a limit of ${quantityText(limit, unit, units)}`;
  return margin === null ? against : `${against}, ${marginText(finding, units)}`;
}

function headlineOf(findings: readonly Finding[], verdict: Verdict, units: LengthUnits): string {
  const lead = leading(findings);
  if (lead === null) return 'Nothing was checked.';
  const sentence = numberSentence(lead, units);
  const cautions = findings.filter((finding) => finding.verdict === 'caution').length;
  switch (verdict) {
    case 'fail':
      return `${capital(sentence)}.`;
    case 'caution':
      return `${plural(cautions, 'check asks', 'checks ask')} for care, none fails outright. First: ${sentence}.`;
    case 'pass':
      return `Nothing fails. Nearest to its limit: ${sentence}.`;
    case 'not assessed':
      return lead.verdict === 'not assessed' && !findings.some((f) => f.verdict === 'pass')
        ? 'No check had what it needs. Nothing is known to be good.'
        : `Nothing fails so far, but this is not known yet: ${openQuestions(findings).join(' ')}`;
  }
}

/** A finding that says which way its limit runs, for whoever shows it beside its number. */
function withSense(finding: Finding): Finding {
  const sense = senseOf(finding);
  return sense === null ? finding : { ...finding, sense };
}

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Remedies worst first; the same advice for several features is given once. */
function nextSteps(findings: readonly Finding[], tried: ReportData['tried']): NextStep[] {
  const out: NextStep[] = [];
  for (const f of findings) {
    if (f.verdict === 'pass' || f.remedy.trim() === '') continue;
    if (out.some((step) => step.todo === f.remedy)) continue;
    out.push({ verdict: f.verdict, code: f.code, about: f.title, todo: f.remedy, tried: tried[checkedName(f)] ?? [] });
  }
  return out;
}

function limitsOf(
  counts: ReportData['counts'],
  assumptions: readonly Assumption[],
  findings: readonly Finding[],
): string[] {
  const memory = assumptions.filter((a) => a.memory).length;
  const missing = counts['not assessed'];
  const names = [...new Set(findings.filter((f) => f.verdict === 'not assessed').map((f) => f.title))];
  return [
    ...standingLimits,
    ...(missing > 0
      ? [`${plural(missing, 'check was', 'checks were')} not assessed for want of input: ${names.join('; ')}.`]
      : []),
    ...(memory > 0
      ? [
          `${plural(memory, 'number rests', 'numbers rest')} on memory and not on a source that was read. Measure before you cut metal.`,
        ]
      : []),
  ];
}

/**
 * Gathers a report.
 * @param joint the resolved joint
 * @param findings what the checks said, in any order
 * @param files what was made and held back; null when nothing was to be written
 * @param sheet flat parts with the pre-flight of their files, where these were made
 */
export function reportData(
  joint: JointToReport,
  findings: readonly Finding[],
  files: FilesReport | null = null,
  revision = '',
  sheet: readonly SheetOrder[] = [],
): ReportData {
  const { title, units } = joint.job;
  const ranked = worstFirst(findings);
  const verdict = jointVerdict(findings);
  const count = (v: Verdict): number => findings.filter((f) => f.verdict === v).length;
  const counts = {
    fail: count('fail'),
    caution: count('caution'),
    'not assessed': count('not assessed'),
    pass: count('pass'),
  };
  const missing = counts['not assessed'];
  const tried = triedWords(joint.tried ?? [], units);
  return {
    title,
    revision,
    units,
    verdict,
    counts,
    headline: headlineOf(ranked, verdict, units),
    unassessed:
      missing === 0
        ? ''
        : `${plural(missing, 'check was', 'checks were')} not assessed and ${missing === 1 ? 'counts' : 'count'} neither way.`,
    answers: answersOf(findings, units, reverses(joint)),
    next: nextSteps(ranked, tried),
    bestChange: bestChange(joint.tried ?? []),
    tried,
    triedJson: triedJson(joint.tried ?? []),
    findings: ranked.map(withSense),
    assumptions: joint.assumptions,
    keyNumbers: [...keyNumbers(joint, units), ...signalLines(joint), ...shaftLines(joint, units)],
    alternatives: otherWays(joint, units),
    tubes: tubesReport(joint, units),
    controller: controllerReport(joint, units),
    screws: [...screwsToBuy(joint), ...dowelsToBuy(joint)],
    sheet,
    files,
    safety: safetyNote,
    limits: limitsOf(counts, joint.assumptions, ranked),
  };
}
