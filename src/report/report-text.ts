/** The report for a terminal: at most 100 columns, plain ASCII, colour only through `paint`. */
import type { Finding, Verdict } from '../model/finding.ts';
import { waysAsText } from './alternatives-text.ts';
import { controllerAsText } from './controller-text.ts';
import { limitText, quantityText } from './numbers.ts';
import { plain, wrap } from './plain-text.ts';
import { marginText, type ReportData } from './report-data.ts';
import { sheetAsText } from './sheet-lines.ts';

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
  // A lead-in that is longer than its column still has a space behind it.
  const first = lead.length < indent || /^$|\s$/.test(lead) ? lead.padEnd(indent) : `${lead} `;
  const rows = wrap(plain(text), page.width - first.length);
  const pad = ' '.repeat(indent);
  if (rows.length === 0) page.lines.push(lead.trimEnd());
  page.lines.push(...rows.map((row, i) => (i === 0 ? `${first}${row}` : `${pad}${row}`)));
}

/** A paragraph that starts with a verdict's word; its other lines are set in below the text. */
function judged(page: Page, verdict: Verdict, text: string): void {
  const word = verdictWords[verdict];
  const indent = word.length + 2;
  const rows = wrap(plain(text), page.width - indent);
  page.lines.push(
    `${page.paint(word, verdict)}  ${rows[0] ?? ''}`.trimEnd(),
    ...rows.slice(1).map((row) => ' '.repeat(indent) + row),
  );
}

function heading(page: Page, text: string): void {
  page.lines.push('', page.paint(plain(text), 'heading'));
}

function fullFinding(page: Page, f: Finding, data: ReportData): void {
  judged(page, f.verdict, `${f.title} [${f.feature}] ${f.code}`);
  if (f.value !== null) {
    const limit = f.limit === null ? '' : `, ${limitText(f, data.units)}`;
    const margin = f.margin === null ? '' : `, ${marginText(f, data.units)}`;
    put(page, '  value', `${quantityText(f.value, f.unit, data.units)}${limit}${margin}`, 10);
  }
  put(page, '  why', f.why, 10);
  if (f.remedy !== '') put(page, '  do', f.remedy, 10);
  if (f.source !== '') put(page, '  source', f.source, 10);
}

/** A pass in one line: word, title, margin. Cut with three dots when it does not fit. */
function passLine(page: Page, f: Finding, data: ReportData): void {
  const margin =
    f.margin === null ? (f.value === null ? '' : quantityText(f.value, f.unit, data.units)) : marginText(f, data.units);
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
  put(page, '', data.revision === '' ? data.title : `${data.title} (revision ${data.revision})`, 0);
  judged(page, data.verdict, data.headline);
  const { counts } = data;
  put(
    page,
    '',
    `${counts.fail} fail, ${counts.caution} caution, ${counts['not assessed']} not assessed, ${counts.pass} pass. ${data.unassessed}`,
    0,
  );

  for (const { question, word, text, verdict } of data.answers) {
    page.lines.push('', `${plain(question)} ${page.paint(plain(word), verdict)}`);
    put(page, '  ', text, 2);
  }

  if (data.next.length > 0) {
    heading(page, 'What to do next');
    if (data.bestChange !== null) put(page, '', data.bestChange, 0);
    for (const [i, step] of data.next.entries()) {
      put(page, `${String(i + 1).padStart(2)}. `, `${step.todo} (${step.about})`, 4);
      for (const tried of step.tried) put(page, '    ', tried, 6);
    }
  }
  const bad = data.findings.filter((f) => f.verdict === 'fail' || f.verdict === 'caution');
  const open = data.findings.filter((f) => f.verdict === 'not assessed');
  const good = data.findings.filter((f) => f.verdict === 'pass');
  if (bad.length > 0) {
    heading(page, 'Findings');
    for (const f of bad) fullFinding(page, f, data);
  }
  if (open.length > 0) {
    heading(page, 'Not assessed');
    for (const f of open) fullFinding(page, f, data);
  }
  if (good.length > 0 && passes) {
    heading(page, 'Passes');
    for (const f of good) passLine(page, f, data);
  }
  heading(page, 'Key numbers');
  for (const k of data.keyNumbers)
    put(page, `  ${plain(k.label)}`, `${k.value}${k.note === '' ? '' : `; ${k.note}`}`, 26);
  if (data.screws.length > 0) {
    heading(page, 'Screws to buy');
    for (const s of data.screws)
      put(
        page,
        `${String(s.count).padStart(4)} x `,
        [s.what, s.detail, s.where, s.tighten].filter((t) => t !== '').join('; '),
        7,
      );
  }
  for (const { title, paragraphs } of [
    ...sheetAsText(data.sheet, data.units),
    ...waysAsText(data.alternatives),
    ...controllerAsText(data.controller),
  ]) {
    heading(page, title);
    for (const text of paragraphs) put(page, '  ', text, 4);
  }
  if (data.tubes !== null) {
    heading(page, 'Tubes that would do');
    for (const text of [data.tubes.lead, ...data.tubes.tubes.map((tube) => `- ${tube}`), data.tubes.note])
      put(page, '  ', text, 4);
  }
  if (data.assumptions.length > 0) {
    heading(page, 'Assumed');
    for (const a of data.assumptions)
      put(page, '  ', `${a.path} = ${a.value} (${a.from}${a.memory ? '; FROM MEMORY, measure it' : ''})`, 4);
  }
  if (data.files !== null) {
    heading(page, 'Files');
    for (const f of data.files.made) put(page, '  made', `${f.path} (${f.kind}, ${f.bytes} bytes)`, 8);
    for (const f of data.files.held) put(page, '  HELD', `${f.kind}: ${f.why}`, 8);
  }
  heading(page, 'Safety');
  for (const s of data.safety) put(page, '  ', s, 2);
  heading(page, 'What this report does not show');
  for (const s of data.limits) put(page, '  ', s, 2);
  return `${page.lines.join('\n')}\n`;
}
