/** The bench sheet: what a person wants beside the part and the spanner, on one sheet of A4, with room to write. Data, and the page. */
import type { Verdict } from '../model/finding.ts';
import { escaped } from '../units/markup.ts';
import { benchStyle } from './bench-style.ts';
import { verdictWords } from './report-text.ts';
import { verdictClass, verdictMark } from './verdict-mark.ts';

/** A size as it was read: how it was typed, what it counts as, and with what it was read. */
export interface ReadingLine {
  readonly what: string;
  readonly typed: string;
  readonly counts: string;
  readonly tool: string;
}

/** A size to hold. `number` is its line in the inspection record; null where it has none. */
export interface HoldLine {
  readonly number: number | null;
  readonly what: string;
  readonly limits: string;
  /** What was found already; empty where nobody measured. */
  readonly found: string;
}

export interface ScrewLine {
  readonly what: string;
  readonly where: string;
  /** "36 N.m (26.6 lbf.ft)", or why there is none. */
  readonly torque: string;
  /** "12, 24, 36 N.m"; empty without a torque. */
  readonly steps: string;
  /** "A1 A4 A2 A5 A3 A6". */
  readonly order: string;
}

export interface BenchSheet {
  readonly title: string;
  readonly revision: string;
  /** Loud words where checks fail; empty where none does. */
  readonly warning: string;
  readonly units: 'mm' | 'in';
  readonly verdict: Verdict;
  readonly headline: string;
  /** How much of its limit the weakest link uses: the headline names it. Empty where no finding has a number. */
  readonly weakest: string;
  /** Each flange's own name, and its readings. */
  readonly measured: readonly { readonly name: string; readonly lines: readonly ReadingLine[] }[];
  readonly hold: readonly HoldLine[];
  readonly dial: readonly HoldLine[];
  readonly screws: readonly ScrewLine[];
  readonly sensor: readonly { readonly what: string; readonly value: string; readonly toFill: boolean }[];
  readonly cautions: readonly { readonly verdict: Verdict; readonly text: string }[];
  /** Which way round to bolt it up, where that is known. */
  readonly boltUp: readonly string[];
  readonly safety: readonly string[];
}

/** Cautions that find room; the report has all of them. */
const mostCautions = 5;

const box = (words: string): string => `<td class="box">${escaped(words)}</td>`;

function measuredTable({ name, lines }: BenchSheet['measured'][number]): string {
  const rows = lines.map(
    ({ what, typed, counts, tool }) =>
      `<tr><th scope="row">${escaped(what)}</th><td>${escaped(typed)}</td><td class="number">${escaped(counts)}</td><td class="tool">${escaped(tool)}</td></tr>`,
  );
  return `<table aria-label="Measured: ${escaped(name)}"><colgroup><col style="width:19%"><col style="width:37%"><col style="width:24%"><col></colgroup><thead><tr><th scope="col" colspan="2">${escaped(name)}</th><th scope="col" class="number">counts as</th><th scope="col" class="tool">with</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

function holdRow({ number, what, limits, found }: HoldLine): string {
  return `<tr><td class="number">${number ?? ''}</td><th scope="row">${escaped(what)}</th><td class="number">${escaped(limits)}</td>${box(found)}</tr>`;
}

const holdTable = (name: string, lines: readonly HoldLine[], heads: readonly [string, string]): string =>
  lines.length === 0
    ? ''
    : `<table aria-label="${name}"><colgroup><col style="width:6%"><col><col style="width:31%"><col style="width:17%"></colgroup><thead><tr><th scope="col"></th><th scope="col">${heads[0]}</th><th scope="col" class="number">${heads[1]}</th><th scope="col" class="tool">found</th></tr></thead><tbody>${lines.map(holdRow).join('')}</tbody></table>`;

/** Two columns, as even as whole rows go. */
function holdColumns(lines: readonly HoldLine[]): string {
  const first = Math.ceil(lines.length / 2);
  return `<div class="two">${[lines.slice(0, first), lines.slice(first)]
    .map((some, i) => holdTable(`Sizes to hold, ${i + 1}`, some, ['size', 'limits']))
    .join('')}</div>`;
}

function screwsTable(lines: readonly ScrewLine[]): string {
  if (lines.length === 0) return '';
  const rows = lines.map(
    ({ what, where, torque, steps, order }) =>
      `<tr><th scope="row">${escaped(what)} <span class="soft">${escaped(where)}</span></th><td><strong>${escaped(torque)}</strong></td><td>${escaped(steps)}</td><td>${escaped(order)}</td><td class="box"></td></tr>`,
  );
  return `<table aria-label="Screws"><colgroup><col><col style="width:22%"><col style="width:15%"><col style="width:19%"><col style="width:8%"></colgroup><thead><tr><th scope="col">screws</th><th scope="col">torque</th><th scope="col">in steps</th><th scope="col">order, cross-wise</th><th scope="col">done</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

function sensorTable(lines: BenchSheet['sensor']): string {
  if (lines.length === 0) return '';
  const rows = lines.map(
    ({ what, value, toFill }) =>
      `<tr><th scope="row">${escaped(what)}</th><td${toFill ? '' : ' colspan="2"'}>${escaped(value)}</td>${toFill ? box('') : ''}</tr>`,
  );
  return `<table class="sensor" aria-label="Wheel and sensor"><colgroup><col style="width:38%"><col><col style="width:20%"></colgroup><thead><tr><th scope="col" colspan="3">wheel and sensor</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

function cautionsList(list: BenchSheet['cautions']): string {
  if (list.length === 0) return '<p>No check fails or asks for care.</p>';
  const more = list.length - mostCautions;
  const items = list
    .slice(0, mostCautions)
    .map(({ verdict, text }) => `<li class="${verdictClass(verdict)}">${verdictMark(verdict)} ${escaped(text)}</li>`);
  return `<ul>${items.join('')}${more > 0 ? `<li>and ${more} more: see the report, which also says what to do</li>` : ''}</ul>`;
}

/** Lines of text that fill the sheet at its usual letters, in the widest font that stands in for the first one named. Found by printing. */
const roomyLines = 65;
/** Smaller than this no letter is read at a bench. */
const leastScale = 0.72;

const linesFor = (text: string, width: number): number => Math.max(1, Math.ceil(text.length / width));

/** About how many lines of text stand one under the other, at the usual letters. */
function linesOf({
  title,
  warning,
  measured,
  hold,
  dial,
  screws,
  sensor,
  cautions,
  boltUp,
  safety,
}: BenchSheet): number {
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  const held = (lines: readonly HoldLine[]) => sum(lines.map(({ what }) => Math.max(1.7, linesFor(what, 27))));
  const readings = measured.map(({ lines }) =>
    sum(
      lines.map(
        ({ what, typed, counts }) => 0.3 + Math.max(linesFor(what, 11), linesFor(typed, 21), linesFor(counts, 13)),
      ),
    ),
  );
  const first = Math.ceil(hold.length / 2);
  const mind = [...cautions.slice(0, mostCautions).map(({ text }) => text), ...boltUp, ...safety];
  return sum([
    Math.max(11, sum(sensor.map(({ what, value }) => 0.4 + Math.max(linesFor(what, 20), linesFor(value, 22))))),
    sum(
      screws.map(
        ({ what, where, torque, steps, order }) =>
          0.4 +
          Math.max(2, linesFor(`${what} ${where}`, 42), linesFor(torque, 25), linesFor(steps, 17), linesFor(order, 22)),
      ),
    ),
    2 * (linesFor(`${warning}${title}`, 40) - 1),
    Math.max(...readings, 0),
    Math.max(held(hold.slice(0, first)), held(hold.slice(first))),
    Math.max(held(dial), sum(mind.map((text) => linesFor(text, 58)))),
  ]);
}

/** How much smaller than usual everything is set, so that all of it stands on one sheet: narrower letters also wrap less. */
const scaleOf = (sheet: BenchSheet): number => {
  const over = linesOf(sheet) / roomyLines;
  return over <= 1 ? 1 : Math.max(leastScale, 1 / over ** 0.8);
};

/** The page. `picture` is SVG of the section, set in as it is; every other text is escaped. */
export function benchSheetHtml(sheet: BenchSheet, picture: string): string {
  const { title, revision, warning, units, verdict, headline, weakest } = sheet;
  const name = warning === '' ? title : `${warning}: ${title}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(name)}: bench sheet</title>
<style>
${benchStyle}
</style>
</head>
<body style="--scale:${scaleOf(sheet).toFixed(2)}">
<header><h1>${escaped(name)}</h1><p class="mark-of"><strong>${escaped(revision)}</strong> bench sheet, sizes in ${units === 'in' ? 'inches' : 'mm'} at 20 \u00b0C</p></header>
<main>
<section class="verdict ${verdictClass(verdict)}" aria-label="Verdict">${verdictMark(verdict)}<p><strong class="word">${verdictWords[verdict]}</strong> ${escaped(headline)}${weakest === '' ? '' : ` The weakest link: ${escaped(weakest)}.`}</p></section>
<div class="two top"><figure>${picture.trim()}</figure>${sensorTable(sheet.sensor)}</div>
${screwsTable(sheet.screws)}
<section><h2>What was measured, as typed (\u201ccaliper?\u201d: not said, counted as one)</h2><div class="two">${sheet.measured.map(measuredTable).join('')}</div></section>
<section><h2>Sizes to hold; numbered as on the drawing and in the inspection record; angles from the index mark, counter-clockwise seen from the driven side</h2>${holdColumns(sheet.hold)}</section>
<div class="two"><section><h2>Dial in, total indicator reading</h2>${holdTable('Dial in', sheet.dial, ['dial on', 'at most'])}</section>
<section class="mind"><h2>Mind</h2>${cautionsList(sheet.cautions)}${[...sheet.boltUp, ...sheet.safety].map((line) => `<p>${escaped(line)}</p>`).join('')}</section></div>
<p class="sign"><span>made and measured by</span><span>date</span><span>adapter marked ${escaped(revision)}</span></p>
</main>
</body>
</html>
`;
}
