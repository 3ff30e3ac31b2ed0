/** A pre-flight as text for a terminal and as JSON. Plain ASCII, at most 100 columns, colour only through `paint`. */
import type { Finding, Verdict } from '../model/finding.ts';
import type { DrawingFacts, Place, PlacedFinding, Preflight } from '../model/preflight.ts';
import { quantityText } from './numbers.ts';
import { plain, wrap } from './plain-text.ts';
import { overallVerdict, worstFirst } from './rank.ts';
import { findingJson } from './report-json.ts';
import { type TextOptions, verdictWords } from './report-text.ts';

/** `check FILE.dxf --json`. */
export interface PreflightJson {
  readonly file: string;
  readonly verdict: Verdict;
  readonly findings: readonly (Finding & { readonly places: readonly Place[] })[];
  readonly facts: DrawingFacts | null;
}

const ranked = ({ findings }: Preflight): PlacedFinding[] => worstFirst(findings) as PlacedFinding[];

/** A pre-flight as an object ready for JSON.stringify. */
export function preflightJson(preflight: Preflight, file: string): PreflightJson {
  return {
    file,
    verdict: overallVerdict(preflight.findings),
    findings: ranked(preflight).map((finding) => ({ ...findingJson(finding), places: finding.places })),
    facts: preflight.facts,
  };
}

const headlines: Readonly<Record<Verdict, string>> = {
  fail: 'Do not send this file.',
  caution: 'It can be cut; settle these points with the service first.',
  'not assessed': 'Nothing could be judged.',
  pass: 'Ready to send.',
};

/** A pre-flight as text, worst first, ending in a line break. */
export function preflightText(preflight: Preflight, file: string, options: TextOptions = {}): string {
  const { paint = (text: string) => text, width = 100 } = options;
  const lines: string[] = [];
  const put = (lead: string, text: string, indent: number): void => {
    const rows = wrap(plain(text), width - indent);
    lines.push(...rows.map((row, i) => `${i === 0 ? lead.padEnd(indent) : ' '.repeat(indent)}${row}`));
  };
  const say = (verdict: Verdict, text: string): void => {
    const word = verdictWords[verdict];
    const rows = wrap(plain(text), width - word.length - 2);
    lines.push(
      ...rows.map((row, i) => (i === 0 ? `${paint(word, verdict)}  ${row}` : ' '.repeat(word.length + 2) + row)),
    );
  };
  put('', plain(file), 0);
  const verdict = overallVerdict(preflight.findings);
  say(verdict, headlines[verdict]);
  for (const finding of ranked(preflight)) {
    if (finding.verdict === 'pass' || finding.verdict === 'not assessed') continue;
    lines.push('');
    say(finding.verdict, `${finding.title} [${finding.feature}] ${finding.code}${sizeWords(finding)}`);
    put('  why', finding.why, 10);
    if (finding.remedy !== '') put('  do', finding.remedy, 10);
  }
  // What waits for the same answer is told together.
  const open = ranked(preflight).filter((finding) => finding.verdict === 'not assessed');
  for (const remedy of new Set(open.map((finding) => finding.remedy))) {
    const titles = open.filter((finding) => finding.remedy === remedy).map(({ title, code }) => `${title} [${code}]`);
    lines.push('');
    say('not assessed', `${titles.join('; ')}.`);
    put('  do', remedy, 10);
  }
  const passes = preflight.findings.filter((finding) => finding.verdict === 'pass');
  if (passes.length > 0 && options.passes !== false) {
    lines.push('', paint('Passes', 'heading'));
    for (const finding of passes)
      say(
        'pass',
        `${finding.title}${sizeWords(finding)}. ${finding.value === null || finding.code === 'dxf-scale-proof' ? finding.why : ''}`,
      );
  }
  return `${lines.join('\n')}\n`;
}

/** The number of a finding, and what it is held against. */
function sizeWords({ value, limit, unit, margin }: PlacedFinding): string {
  if (value === null) return '';
  const size = quantityText(value, unit, 'mm');
  return limit === null || margin === null || unit === ''
    ? `: ${size}`
    : `: ${size}, limit ${quantityText(limit, unit, 'mm')}`;
}
