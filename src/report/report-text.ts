/** The report for a terminal: at most 100 columns, plain ASCII, colour only through `paint`. */
import type { Finding, Verdict } from '../model/finding.ts';
import { quantityText } from './numbers.ts';
import { plain, wrap } from './plain-text.ts';
import { marginText, type ReportData } from './report-data.ts';

/** What a piece of text is, for whoever colours it. */
export type TextStyle = Verdict | 'heading' | 'quiet';

export interface TextOptions {
  /** Puts colour round a piece of text; by default none. It must not change the text's length as seen. */
  readonly paint?: (text: string, style: TextStyle) => string;
  /** Columns, 60 to 100. */
  readonly width?: number;
  /** Print passes one line each; by default true. */
  readonly passes?: boolean;
}

export const verdictWords: Readonly<Record<Verdict, string>> = {
  fail: 'FAIL',
  caution: 'CAUTION',
  'not assessed': 'NOT ASSESSED',
  pass: 'PASS',
};

interface Page {
  readonly paint: (text: string, style: TextStyle) => string;
  readonly width: number;
  readonly lines: string[];
}

/** A paragraph with a lead-in on its first line and the rest set in below it. */
function put(page: Page, lead: string, text: string, indent: number): void {
  const rows = wrap(plain(text), page.width - indent);
  const pad = ' '.repeat(indent);
  if (rows.length === 0) page.lines.push(lead.trimEnd());
  rows.forEach((row, i) => page.lines.push(i === 0 ? `${lead.padEnd(indent)}${row}` : `${pad}${row}`));
}

function heading(page: Page, text: string): void {
  page.lines.push('', page.paint(plain(text), 'heading'));
}

function fullFinding(page: Page, f: Finding, data: ReportData): void {
  const word = verdictWords[f.verdict];
  const rows = wrap(plain(`${f.title} [${f.feature}] ${f.code}`), page.width - word.length - 2);
  rows.forEach((row, i) => page.lines.push(i === 0 ? `${page.paint(word, f.verdict)}  ${row}` : `${' '.repeat(word.length + 2)}${row}`));
  if (f.value !== null) {
    const limit = f.limit === null ? '' : `   limit ${quantityText(f.limit, f.unit, data.units)}`;
    const margin = f.margin === null ? '' : `   margin ${marginText(f, data.units)}`;
    put(page, '  value', `${quantityText(f.value, f.unit, data.units)}${limit}${margin}`, 10);
  }
  put(page, '  why', f.why, 10);
  if (f.remedy !== '') put(page, '  do', f.remedy, 10);
  if (f.source !== '') put(page, '  source', f.source, 10);
}

/** A pass in one line: word, title, margin. Cut with three dots when it does not fit. */
function passLine(page: Page, f: Finding, data: ReportData): void {
  const margin = f.margin === null ? (f.value === null ? '' : quantityText(f.value, f.unit, data.units)) : marginText(f, data.units);
  const right = plain(margin);
  const room = page.width - 6 - (right === '' ? 0 : right.length + 2);
  const left = plain(`${f.title} [${f.feature}]`);
  const cut = left.length > room ? `${left.slice(0, Math.max(0, room - 3))}...` : left;
  const gap = right === '' ? '' : ' '.repeat(Math.max(2, page.width - 6 - cut.length - right.length));
  page.lines.push(`${page.paint('PASS', 'pass')}  ${cut}${gap}${right}`.trimEnd());
}

/** Writes the whole report as text, ending in a line break. */
export function reportText(data: ReportData, options: TextOptions = {}): string {
  const { paint = (text) => text, passes = true } = options;
  const width = Math.min(100, Math.max(60, options.width ?? 100));
  const page: Page = { paint, width, lines: [] };
  put(page, '', data.title, 0);
  const word = verdictWords[data.verdict];
  const rows = wrap(plain(data.headline), width - word.length - 2);
  rows.forEach((row, i) => page.lines.push(i === 0 ? `${paint(word, data.verdict)}  ${row}` : `${' '.repeat(word.length + 2)}${row}`));
  const { counts } = data;
  put(page, '', `${counts.fail} fail, ${counts.caution} caution, ${counts['not assessed']} not assessed, ${counts.pass} pass. ${data.unassessed}`, 0);

  if (data.next.length > 0) {
    heading(page, 'What to do next');
    data.next.forEach((step, i) => put(page, `${String(i + 1).padStart(2)}. `, `${step.todo} (${step.about})`, 4));
  }
  const bad = data.findings.filter((f) => f.verdict === 'fail' || f.verdict === 'caution');
  const open = data.findings.filter((f) => f.verdict === 'not assessed');
  const good = data.findings.filter((f) => f.verdict === 'pass');
  if (bad.length > 0) {
    heading(page, 'Findings');
    bad.forEach((f) => fullFinding(page, f, data));
  }
  if (open.length > 0) {
    heading(page, 'Not assessed');
    open.forEach((f) => fullFinding(page, f, data));
  }
  if (good.length > 0 && passes) {
    heading(page, 'Passes');
    good.forEach((f) => passLine(page, f, data));
  }
  heading(page, 'Key numbers');
  data.keyNumbers.forEach((k) => put(page, `  ${plain(k.label)}`, `${k.value}${k.note === '' ? '' : `   ${k.note}`}`, 26));
  if (data.screws.length > 0) {
    heading(page, 'Screws to buy');
    data.screws.forEach((s) => put(page, `${String(s.count).padStart(4)} x `, [s.what, s.detail, s.where].filter((t) => t !== '').join('; '), 7));
  }
  if (data.assumptions.length > 0) {
    heading(page, 'Assumed');
    data.assumptions.forEach((a) => put(page, '  ', `${a.path} = ${a.value} (${a.from}${a.memory ? '; FROM MEMORY, measure it' : ''})`, 4));
  }
  if (data.files !== null) {
    heading(page, 'Files');
    data.files.made.forEach((f) => put(page, '  made', `${f.path} (${f.kind}, ${f.bytes} bytes)`, 8));
    data.files.held.forEach((f) => put(page, '  HELD', `${f.kind}: ${f.why}`, 8));
  }
  heading(page, 'Safety');
  data.safety.forEach((s) => put(page, '  ', s, 2));
  heading(page, 'What this report does not show');
  data.limits.forEach((s) => put(page, '  ', s, 2));
  return `${page.lines.join('\n')}\n`;
}
