/** Rows of a sweep as CSV (RFC 4180: commas, CRLF, quotes doubled), a point for decimals whatever the language of the machine. */
import { printable } from '../job/errors.ts';
import { numberNames, type VariantRow } from './variant.ts';

/** A cell. Text that a spreadsheet would take for a formula is kept text by a leading apostrophe. */
function cell(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  // CSV knows no way to write signs that move a cursor or turn the writing: what looks at this file is a terminal as often as not.
  const text = printable(typeof value === 'string' ? value : JSON.stringify(value), Number.POSITIVE_INFINITY);
  const safe = /^[=+\-@\t\r]/.test(text) && Number.isNaN(Number(text)) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const line = (cells: readonly unknown[]): string => `${cells.map(cell).join(',')}\r\n`;

/** The first line. @param names of the varied fields, in their order */
export function csvHead(names: readonly string[]): string {
  return line([
    'index',
    ...names,
    'verdict',
    'fails',
    'cautions',
    'not_assessed',
    'worst',
    'tightest_pass',
    ...numberNames,
    'error',
  ]);
}

/** How many of the worst findings are named in a line. */
const named = 3;

/** One row, with a cell for every column of the head. */
export function csvLine(names: readonly string[], row: VariantRow): string {
  const { index, values, verdict, counts, findings = [], tightest, numbers = {}, errors = [] } = row;
  const worst = findings
    .filter((finding) => finding.verdict === verdict)
    .slice(0, named)
    .map(({ code, feature }) => `${code} (${feature})`);
  const said = errors.slice(0, named).map(({ path, message }) => (path === '' ? message : `${path}: ${message}`));
  return line([
    index,
    ...names.map((name) => values[name]),
    verdict,
    counts?.fail,
    counts?.caution,
    counts?.['not assessed'],
    worst.join('; '),
    tightest ? `${tightest.code} (${tightest.feature})` : '',
    ...numberNames.map((name) => numbers[name]),
    said.join(' '),
  ]);
}
