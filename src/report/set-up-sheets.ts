/** Set-up sheets: one page an operation, to lie beside the machine and to be filled in with a pencil. */
import type { DrillingPlan, PlanStep } from '../shop/drilling-plan.ts';
import type { Operation, ShopSize } from '../shop/operation.ts';
import type { Route } from '../shop/operations.ts';
import { formatLength, type LengthUnits } from '../units/format.ts';
import { escaped } from '../units/markup.ts';
import { limitsText } from './numbers.ts';
import { reportStyle } from './report-style.ts';
import { cutCells, drilledOrder } from './set-up-holes.ts';

export interface SetUpSheets {
  readonly title: string;
  readonly part: string;
  readonly revision: string;
  readonly units: LengthUnits;
  readonly material: string;
  readonly quantityNote: string;
  /** What a failing job's papers say; empty where nothing fails. */
  readonly warning: string;
  readonly route: Route;
  /** Ready-made pictures of each side's holes, by face. */
  readonly maps: Readonly<Partial<Record<'driving' | 'driven', string>>>;
  /** Where speeds and feeds come from. */
  readonly speedSource: string;
}

const list = (items: readonly string[]): string => items.map((item) => `<li>${escaped(item)}</li>`).join('');

function block(title: string, items: readonly string[], tag: 'ul' | 'ol' = 'ul'): string {
  return items.length === 0
    ? ''
    : `<h3>${title}</h3><${tag} class="${tag === 'ol' ? 'work' : 'plain'}">${list(items)}</${tag}>`;
}

/** What is left to do with a size that is off, in a few words. */
function whenOff({ mend, verb }: ShopSize): string {
  if (mend === 'never') return 'stop';
  return mend === 'too large' ? `large: ${verb} again. Small: stop` : `small: ${verb} again. Large: stop`;
}

const sizeRow =
  (units: LengthUnits) =>
  (size: ShopSize): string => {
    const { number, what, lower, upper, unit, gauge } = size;
    const limits = unit === 'g' ? `${lower.toFixed(0)} to ${upper.toFixed(0)} g` : limitsText(lower, upper, units);
    return `<tr><th>${number}</th><td>${escaped(what)}</td><td class="number">${escaped(limits)}</td><td>${escaped(gauge)}</td><td class="off">${escaped(whenOff(size))}</td><td class="fill"></td></tr>`;
  };

function measureTable({ measure, off }: Operation, units: LengthUnits): string {
  if (measure.length === 0) return '';
  return `<h3>Stop and measure, cold; numbers as in the inspection record</h3><table class="sizes"><thead><tr><th>No.</th><th>Size</th><th class="number">Limits</th><th>With</th><th>When it is off</th><th>Found</th></tr></thead><tbody>${measure
    .map(sizeRow(units))
    .join('')}</tbody></table>${off.map((line) => `<p class="source">${escaped(line)}</p>`).join('')}`;
}

function turningTable({ cuts }: Operation, units: LengthUnits): string {
  if (cuts.length === 0) return '';
  const rows = cuts
    .map(
      ({ what, diameter, cut }) =>
        `<tr><td>${escaped(what)}, ${escaped(formatLength(diameter, units, units === 'mm' ? 1 : 3))}</td><td class="number">${cut.rpm}${cut.capped ? ' (all it has)' : ''}</td><td class="number">${escaped(formatLength(cut.perTurn, units, units === 'mm' ? 2 : 4))}</td><td class="number">${cut.speed}</td></tr>`,
    )
    .join('');
  return `<h3>Speeds to start from</h3><table><thead><tr><th>At</th><th class="number">rpm</th><th class="number">Feed per turn</th><th class="number">m/min</th></tr></thead><tbody>${rows}</tbody></table>`;
}

function toolTable(plan: DrillingPlan, units: LengthUnits): string {
  const step = (s: PlanStep): string => {
    const tool = plan.tools.find(({ number }) => number === s.tool);
    if (!tool) return '';
    const { depth, tip, peck } = cutCells(s, units);
    const other = tool.or === '' ? '' : `<br><span class="source">or ${escaped(tool.or)}</span>`;
    return `<tr><th>T${tool.number}</th><td>${escaped(tool.name)}${other}</td><td>${escaped(s.letter)}: ${s.holes.length} ${escaped(s.what)}</td><td>${escaped(depth)}</td><td class="number">${escaped(tip)}</td><td class="number">${tool.cut.rpm}${tool.cut.capped ? '*' : ''}</td><td class="number">${escaped(tool.op === 'tap' ? 'by pitch' : formatLength(tool.cut.feed, units, units === 'mm' ? 0 : 2))}</td><td>${escaped(peck)}</td></tr>`;
  };
  const capped = plan.tools.some(({ cut }) => cut.capped)
    ? '<p class="source">* all that the spindle has (adapter.shop.top_speed).</p>'
    : '';
  return `<h3>Tools, in order</h3><table class="tools"><thead><tr><th></th><th>Tool</th><th>Set</th><th>Depth from the face</th><th class="number">Tip at Z</th><th class="number">rpm</th><th class="number">Feed a minute</th><th>Pecks</th></tr></thead><tbody>${plan.steps.map(step).join('')}</tbody></table>${capped}`;
}

function holeTable(plan: DrillingPlan, units: LengthUnits): string {
  const digits = units === 'mm' ? 3 : 4;
  const bare = (value: number): string => formatLength(value, units, digits).replace(/ (mm|in)$/, '');
  const { holes, columns } = drilledOrder(plan);
  const heads = columns.map(({ tool, words }) => `<th>T${tool}<br>${escaped(words)}</th>`).join('');
  const rows = holes
    .map(({ hole, tools }) => {
      const boxes = columns
        .map(({ tool }) => `<td class="tick">${tools.includes(tool) ? '<span class="box"></span>' : '-'}</td>`)
        .join('');
      return `<tr><th>${escaped(hole.tag)}</th><td class="number">${bare(hole.x)}</td><td class="number">${bare(hole.y)}</td><td class="number soft">${bare(hole.radius)}</td><td class="number soft">${hole.angle.toFixed(3)}</td>${boxes}<td class="fill"></td></tr>`;
    })
    .join('');
  return `<h3>Holes, in the order drilled: down each column, tick as you go</h3><table class="holes"><thead><tr><th>Hole</th><th class="number">X ${units}</th><th class="number">Y ${units}</th><th class="number">Radius</th><th class="number">Angle</th>${heads}<th>Found</th></tr></thead><tbody>${rows}</tbody></table>`;
}

function mapOf({ face }: DrillingPlan, { maps }: SetUpSheets): string {
  const map = maps[face];
  return map
    ? `<figure class="map">${map}<figcaption>Seen from the ${face} side, as it lies before you.</figcaption></figure>`
    : '';
}

function drillingBlock(plan: DrillingPlan, { units }: SetUpSheets): string {
  const stands = plan.highest > 0 ? `; metal stands ${formatLength(plan.highest, units)} over the face` : '';
  return `${toolTable(plan, units)}<p class="source">Tip at Z: the read-out with zero on the face, plus is up${escaped(stands)}.</p>${holeTable(plan, units)}`;
}

function operationPage(operation: Operation, sheets: SetUpSheets): string {
  const { number, title, machine, held, zero, indicate, steps, plan } = operation;
  const drilling = plan ? drillingBlock(plan, sheets) : '';
  const map = plan ? mapOf(plan, sheets) : '';
  return `<section class="op">
<header class="strip"><span>${escaped(sheets.part)}, ${escaped(sheets.title)}</span><span>revision ${escaped(sheets.revision)}</span></header>
<h2>${number} ${escaped(title)} <span class="machine">${machine}</span></h2>
<div class="two"><div>${block('Held', held)}${block('Zero', zero)}${block('Indicate', indicate)}</div><div>${block('Order of work', steps, 'ol')}${map}</div></div>
${drilling}
${turningTable(operation, sheets.units)}
${measureTable(operation, sheets.units)}
<p class="done">Done by <span></span> date <span></span> time <span></span></p>
</section>`;
}

function frontPage(sheets: SetUpSheets): string {
  const { route, material, quantityNote, warning } = sheets;
  const rows = route.operations
    .map(
      ({ number, title, machine, held }) =>
        `<tr><th>${number}</th><td>${escaped(title)}</td><td>${machine}</td><td>${escaped(held[0] ?? '')}</td><td class="tick"><span class="box"></span></td></tr>`,
    )
    .join('');
  return `<p>${escaped(material)}. ${escaped(quantityNote)}</p>
${warning === '' ? '' : `<p class="held">${escaped(warning)}</p>`}
<p><strong>First the ${route.first} side.</strong> ${escaped(route.why)}</p>
<p><strong>Turning over</strong> is always like the page of a book: left becomes right, up stays up. With the driven side up the index mark lies on the right, with the driving side up on the left. Coordinates on each page are those of the side that is up, mirrored already: type them as they stand.</p>
<table><thead><tr><th>No.</th><th>Operation</th><th>Machine</th><th>Held</th><th>Done</th></tr></thead><tbody>${rows}</tbody></table>
<div class="warning"><h2>Before you start</h2><ul><li>Speeds and feeds are where to start, not what to trust: ${escaped(sheets.speedSource)}. Slower for a light machine, a long drill or a dull one.</li><li>Finish sizes are measured at room temperature: a part warm from the cut is large by a hundredth and more.</li><li>Chuck key out, guards on, hands off what turns. Clamps below the height of travel.</li></ul></div>`;
}

/** The printable page with all sheets. Pictures are SVG texts made elsewhere. */
export function setUpHtml(sheets: SetUpSheets): string {
  const { title, part, revision, route } = sheets;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(title)}: set-up sheets</title>
<style>
${reportStyle}
.op{break-before:page}
h3{margin:3.5mm 0 1mm;font-size:10.5pt;break-after:avoid}
.strip{display:flex;justify-content:space-between;padding:0;max-width:none;font-size:8.5pt;color:var(--soft)}
.op h2{margin-top:2mm}.machine{float:right;font-weight:400;font-size:10.5pt}
.two{display:grid;grid-template-columns:1fr 1fr;gap:0 7mm}
.two h3:first-child{margin-top:0}
ul.plain,ol.work{margin:0;padding-left:5mm}ul.plain li,ol.work li{margin-bottom:.8mm}
.fill{min-width:22mm;border-left:.2mm solid var(--line);padding-left:2mm}
.tick{text-align:center}.box{display:inline-block;width:3.6mm;height:3.6mm;border:.3mm solid var(--ink)}
.sizes tbody td,.sizes tbody th{height:6.5mm}.holes th,.holes td{padding:.55mm 2mm .55mm 0}.holes .soft{color:var(--soft)}
.holes tbody th{width:10mm}
figure.map{margin:2mm 0 0}figure.map svg{max-height:58mm}figure.map figcaption{margin-top:0}
.tools th{white-space:nowrap}.tools td,.tools th{font-size:8.5pt}.op{font-size:9.5pt;line-height:1.32}.off{font-size:8.5pt}thead th{white-space:nowrap}
.done{margin-top:5mm;font-size:9pt}.done span{display:inline-block;min-width:32mm;border-bottom:.25mm solid var(--ink)}
</style>
</head>
<body>
<header><p class="kind">Set-up sheets by flangewright, revision ${escaped(revision)}. ${escaped(part)}.</p><h1>${escaped(title)}</h1></header>
<main>
${frontPage(sheets)}
${route.operations.map((operation) => operationPage(operation, sheets)).join('\n')}
</main>
</body>
</html>
`;
}
