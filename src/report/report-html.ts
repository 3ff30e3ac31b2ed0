/** The report as one self-contained page: no script, nothing loaded from outside, ready to print on A4 or Letter. */
import type { Finding } from '../model/finding.ts';
import { escaped } from '../units/markup.ts';
import { otherWaysSection, tubesSection, whyNothingPasses } from './alternatives-html.ts';
import { controllerSection } from './controller-html.ts';
import { limitText, quantityText } from './numbers.ts';
import { marginText, type ReportData } from './report-data.ts';
import { reportStyle } from './report-style.ts';
import { verdictWords } from './report-text.ts';
import { sheetSection } from './sheet-lines.ts';
import { verdictClass, verdictMark } from './verdict-mark.ts';

/** A picture for the page: SVG text from the writer, without an XML declaration, its ids unlike those of the other pictures. */
export interface ReportPicture {
  readonly caption: string;
  readonly svg: string;
  /** A narrow sheet: two of them stand side by side. */
  readonly column?: boolean;
}

function banner(data: ReportData): string {
  const { verdict, counts } = data;
  const tally = `${counts.fail} fail, ${counts.caution} caution, ${counts['not assessed']} not assessed, ${counts.pass} pass.`;
  return [
    `<section class="banner ${verdictClass(verdict)}" aria-label="Verdict">`,
    verdictMark(verdict),
    `<p class="word">${verdictWords[verdict]}</p>`,
    `<p class="headline">${escaped(data.headline)}</p>`,
    `<p class="counts">${escaped(`${tally} ${data.unassessed}`.trim())}</p>`,
    '</section>',
  ].join('\n');
}

function answers(data: ReportData): string {
  if (data.answers.length === 0) return '';
  const rows = data.answers.map(
    ({ question, word, text, verdict }) =>
      `<tr class="${verdictClass(verdict)}"><th scope="row">${escaped(question)}</th><td class="word">${verdictMark(verdict)} ${escaped(word)}</td><td>${escaped(text)}</td></tr>`,
  );
  const columns = [{ title: 'Question', width: '23%' }, { title: 'Answer', width: '19%' }, { title: 'Its number' }];
  return `<section class="together"><h2>In short</h2>${table('answers', 'Answers', columns, rows)}</section>`;
}

function nextSteps(data: ReportData): string {
  const anchor = (code: string, about: string): number =>
    data.findings.findIndex((f) => f.code === code && f.title === about);
  const items = data.next.map(
    (step) =>
      `<li class="${verdictClass(step.verdict)}">${verdictMark(step.verdict)} ${escaped(step.todo)} <span class="about">${verdictWords[step.verdict].toLowerCase()}: <a href="#finding-${anchor(step.code, step.about) + 1}">${escaped(step.about)}</a></span>${step.tried.map((tried) => `<br><span class="tried">${escaped(tried)}</span>`).join('')}</li>`,
  );
  const body =
    items.length > 0
      ? `${data.bestChange === null ? '' : `<p>${escaped(data.bestChange)}</p>`}<ol class="next">${items.join('\n')}</ol>`
      : '<p>Print the mock-up and try it on both flanges before any metal is cut.</p>';
  return `<section><h2>What to do next</h2>\n${body}</section>`;
}

const safety = (data: ReportData): string =>
  `<section class="warning"><h2>Safety</h2><ul>${data.safety.map((s) => `<li>${escaped(s)}</li>`).join('')}</ul></section>`;

interface Column {
  readonly title: string;
  readonly width?: string;
  readonly number?: boolean;
}

/** A table of bodies, each of two rows: what is short, and below it in full width what is told of it. */
function bodiedTable(className: string, caption: string, columns: readonly Column[], bodies: string): string {
  const cols = columns.map((c) => (c.width ? `<col style="width:${c.width}">` : '<col>')).join('');
  const heads = columns
    .map((c) => `<th scope="col"${c.number ? ' class="number"' : ''}>${escaped(c.title)}</th>`)
    .join('');
  return `<div class="wide ${className}"><table aria-label="${escaped(caption)}"><colgroup>${cols}</colgroup><thead><tr>${heads}</tr></thead>\n${bodies}</table></div>`;
}

/** A table of rows. */
const table = (className: string, caption: string, columns: readonly Column[], rows: readonly string[]): string =>
  bodiedTable(className, caption, columns, `<tbody>\n${rows.join('\n')}\n</tbody>`);

function keyNumbers(data: ReportData): string {
  const rows = data.keyNumbers.map(
    (k) => `<tr><th scope="row">${escaped(k.label)}</th><td>${escaped(k.value)}</td><td>${escaped(k.note)}</td></tr>`,
  );
  const columns = [{ title: 'Size', width: '24%' }, { title: 'Value', width: '26%' }, { title: 'Note' }];
  return `<section class="together"><h2>Key numbers</h2>${table('key', 'Key numbers', columns, rows)}</section>`;
}

function screws(data: ReportData): string {
  if (data.screws.length === 0) return '';
  const rows = data.screws.map(
    (s) =>
      `<tbody><tr${s.tighten === '' ? '' : ' class="short"'}><td class="number">${s.count}</td><th scope="row">${escaped(s.what)}</th><td>${escaped(s.detail)}</td><td>${escaped(s.where)}</td></tr>${s.tighten === '' ? '' : `<tr><td></td><td colspan="3">Tighten: ${escaped(s.tighten)}</td></tr>`}</tbody>`,
  );
  const columns = [
    { title: 'Count', width: '8%', number: true },
    { title: 'What', width: '34%' },
    { title: 'Standard and class', width: '24%' },
    { title: 'Where' },
  ];
  return `<section class="together"><h2>Screws to buy</h2>${bodiedTable('screws', 'Screws to buy', columns, rows.join('\n'))}</section>`;
}

function pictures(list: readonly ReportPicture[]): string {
  if (list.length === 0) return '';
  const figure = (p: ReportPicture) => `<figure>${p.svg.trim()}<figcaption>${escaped(p.caption)}</figcaption></figure>`;
  const wide = list.filter(({ column }) => !column).map(figure);
  const narrow = list.filter(({ column }) => column).map(figure);
  const beside =
    narrow.length === 0
      ? ''
      : `<section><h2>Centring, balance and the sensor's gap, the widest first</h2>\n<div class="columns">${narrow.join('\n')}</div></section>`;
  return `<section><h2>Pictures</h2>\n${wide.join('\n')}</section>\n${beside}`.trim();
}

const numberCell = (text: string): string => `<td class="number">${escaped(text)}</td>`;

const numberCells = (f: Finding, data: ReportData): string =>
  numberCell(quantityText(f.value, f.unit, data.units)) +
  numberCell(f.limit === null ? '-' : limitText(f, data.units).replace(/^limit /, '')) +
  numberCell(marginText(f, data.units));

const nameCell = (f: Finding, mark: string): string =>
  `<th scope="row">${mark}${escaped(f.title)}<span class="code">${escaped(f.feature)} | ${escaped(f.code)}</span></th>`;

/** A finding that asks for something: its verdict in a column of its own, its remedy in bold. */
function openRow(f: Finding, index: number, data: ReportData): string {
  const words = [
    `<p>${escaped(f.why)}</p>`,
    f.remedy === '' ? '' : `<p class="do">Do: ${escaped(f.remedy)}</p>`,
    f.source === '' ? '' : `<p class="source">Source: ${escaped(f.source)}</p>`,
  ].join('');
  return `<tbody id="finding-${index + 1}" class="${verdictClass(f.verdict)}"><tr class="short"><td class="verdict">${verdictMark(f.verdict)} ${verdictWords[f.verdict]}</td>${nameCell(f, '')}${numberCells(f, data)}</tr><tr><td></td><td colspan="4">${words}</td></tr></tbody>`;
}

/** A pass, set tighter. */
function passRow(f: Finding, index: number, data: ReportData): string {
  const source = f.source === '' ? '' : ` <span class="source">Source: ${escaped(f.source)}</span>`;
  const note = f.remedy === '' ? '' : ` ${escaped(f.remedy)}`;
  return `<tbody id="finding-${index + 1}" class="pass"><tr class="short">${nameCell(f, `${verdictMark('pass')} `)}${numberCells(f, data)}</tr><tr><td class="told" colspan="4">${escaped(f.why)}${note}${source}</td></tr></tbody>`;
}

const numbers = (value: string, limit: string, margin: string): Column[] => [
  { title: 'Value', width: value, number: true },
  { title: 'Limit', width: limit, number: true },
  { title: 'Margin', width: margin, number: true },
];

function findings(data: ReportData): string {
  const units = data.units === 'in' ? 'inches' : 'metric';
  const rows = data.findings.map((f, i) => ({
    f,
    row: f.verdict === 'pass' ? passRow(f, i, data) : openRow(f, i, data),
  }));
  const open = rows.filter(({ f }) => f.verdict !== 'pass').map(({ row }) => row);
  const passes = rows.filter(({ f }) => f.verdict === 'pass').map(({ row }) => row);
  const openColumns = [
    { title: 'Verdict', width: '16%' },
    { title: 'Checked, what it means and what to do' },
    ...numbers('13%', '16%', '16%'),
  ];
  const passColumns = [{ title: 'Checked, and what it means' }, ...numbers('13%', '16%', '18%')];
  return [
    '<section><h2>Findings, worst first</h2>',
    open.length > 0
      ? bodiedTable(`findings ${units}`, 'Findings that ask for something', openColumns, open.join('\n'))
      : '<p>No check asks for anything.</p>',
    '</section>',
    passes.length > 0
      ? `<section><h2>What passes, nearest to its limit first</h2>${bodiedTable(`findings passes ${units}`, 'Passes', passColumns, passes.join('\n'))}</section>`
      : '',
  ].join('\n');
}

function assumptions(data: ReportData): string {
  if (data.assumptions.length === 0) return '';
  const rows = data.assumptions.map(
    (a) =>
      `<tr><th scope="row">${escaped(a.path)}</th><td>${escaped(a.value)}</td><td>${escaped(a.from)}${a.memory ? ' <span class="memory">MEMORY: measure it.</span>' : ''}</td></tr>`,
  );
  const columns = [
    { title: 'Key in the job', width: '30%' },
    { title: 'Value', width: '24%' },
    { title: 'Where it comes from' },
  ];
  return `<section><h2>Assumed, not measured</h2>${table('assumed', 'Assumptions', columns, rows)}</section>`;
}

function files(data: ReportData): string {
  if (data.files === null) return '';
  const held = data.files.held.map(
    (f) => `<tr><td class="held">held back</td><th scope="row">${escaped(f.kind)}</th><td>${escaped(f.why)}</td></tr>`,
  );
  const made = data.files.made.map(
    (f) =>
      `<tr><td>made</td><th scope="row">${escaped(f.kind)}</th><td>${escaped(f.path)} (${f.bytes} bytes)</td></tr>`,
  );
  const columns = [{ title: 'State', width: '14%' }, { title: 'Kind', width: '24%' }, { title: 'File, or why not' }];
  return `<section><h2>Files</h2>${table('files', 'Files', columns, [...held, ...made])}</section>`;
}

const limits = (data: ReportData): string =>
  `<section><h2>What this report does not show</h2><ul class="limits">${data.limits.map((s) => `<li>${escaped(s)}</li>`).join('')}</ul></section>`;

/** Writes the page. The pictures' SVG is set in as it is; every other text is escaped. */
export function reportHtml(data: ReportData, list: readonly ReportPicture[] = []): string {
  const parts = [
    '<main>',
    banner(data),
    answers(data),
    nextSteps(data),
    whyNothingPasses(data.alternatives),
    safety(data),
    keyNumbers(data),
    screws(data),
    sheetSection(data.sheet, data.units),
    otherWaysSection(data.alternatives),
    tubesSection(data.tubes),
    controllerSection(data.controller),
    pictures(list),
    findings(data),
    assumptions(data),
    files(data),
    limits(data),
    '</main>',
  ].filter((part) => part !== '');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(data.title)}: ${verdictWords[data.verdict]}</title>
<style>
${reportStyle}
</style>
</head>
<body>
<header><p class="kind">Joint report by flangewright${data.revision === '' ? '' : `, revision ${escaped(data.revision)}`}. Sizes in mm${data.units === 'in' ? ', inches in brackets' : ''}; angles from the adapter's index mark, counter-clockwise seen from the driven side.</p><h1>${escaped(data.title)}</h1></header>
${parts.join('\n')}
</body>
</html>
`;
}
