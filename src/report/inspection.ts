/** The inspection record: every size worth measuring on the finished parts, with its limits, what was found, and what to do. */
import type { Judgement } from '../inspect/disposition.ts';
import type { LengthUnits } from '../units/format.ts';
import { limitTexts } from '../units/limits.ts';
import { escaped } from '../units/markup.ts';
import { numberText } from './numbers.ts';
import { reportStyle } from './report-style.ts';

/** A record: the judgements and what they come to. */
export interface InspectionRecord {
  readonly title: string;
  /** The mark of the job. */
  readonly revision: string;
  /** Verdict on the parts, in words; "not measured" for a blank record. */
  readonly verdict: string;
  /** What to do, a sentence or empty. */
  readonly todo: string;
  readonly by: string;
  /** What the job is typed in: on an inch job the limits are told in both. */
  readonly units: LengthUnits;
  readonly judgements: readonly Judgement[];
}

/** The record as an object ready for JSON.stringify. mm and g; null where nothing was measured. */
export function inspectionJson({ title, revision, verdict, todo, by, judgements }: InspectionRecord) {
  return {
    title,
    revision,
    verdict,
    todo,
    by,
    sizes: judgements.map(({ characteristic: c, disposition, beyond, takeOff }) => ({
      number: c.number,
      part: c.part,
      what: c.what,
      feature: c.feature,
      nominal: c.nominal,
      lower: c.lower,
      upper: c.upper,
      unit: c.unit,
      limitsFrom: c.from,
      gauge: c.gauge,
      measured: c.found?.value ?? null,
      doubt: c.found?.doubt ?? null,
      measuredWith: c.found?.with ?? null,
      disposition,
      beyond,
      takeOff,
    })),
  };
}

const size = (value: number, unit: 'mm' | 'g') => (unit === 'g' ? value.toFixed(0) : value.toFixed(3));

/** Limits as every paper has them: rounded inwards; on an inch job the inches of drawing and bench sheet stand with them. */
function limitsOf({ lower, upper, unit }: Judgement['characteristic'], units: LengthUnits): string {
  if (unit === 'g') return `${size(lower, unit)} to ${size(upper, unit)}`;
  const said = (one: LengthUnits) => {
    const texts = limitTexts(lower, upper, one);
    return lower === 0 ? `up to ${texts.upper}` : `${texts.lower} to ${texts.upper}`;
  };
  return units === 'in' ? `${said('mm')} (${said('in')} in)` : said('mm');
}

function row({ characteristic: c, disposition, takeOff }: Judgement, units: LengthUnits): string {
  const limits = limitsOf(c, units);
  const found = c.found ? `${size(c.found.value, c.unit)} ±${numberText(c.found.doubt)}` : '';
  const todo = takeOff
    ? `${disposition}: ${c.verb} ${size(takeOff.from, c.unit)} to ${size(takeOff.to, c.unit)} more`
    : disposition === 'not measured'
      ? ''
      : disposition;
  return `<tr><td class="number">${c.number}</td><th scope="row">${escaped(c.what)}</th><td class="number">${escaped(limits)}</td><td>${escaped(c.from)}</td><td>${escaped(c.gauge)}</td><td class="fill">${escaped(found)}</td><td class="fill">${escaped(todo)}</td></tr>`;
}

function part(name: 'adapter' | 'wheel', { judgements, units }: InspectionRecord): string {
  const rows = judgements.filter(({ characteristic }) => characteristic.part === name).map((one) => row(one, units));
  if (rows.length === 0) return '';
  const widths = ['5%', '27%', '17%', '14%', '14%', '12%', '11%'];
  const heads = ['No.', 'What', 'Limits', 'From', 'Measure with', 'Found', 'Verdict'];
  const head = heads.map((title) => `<th scope="col">${title}</th>`).join('');
  return `<section><h2>${name === 'adapter' ? 'Adapter' : 'Wheel'}${units === 'in' ? ', mm (inches in brackets, masses g)' : ', mm (masses g)'}</h2><table><colgroup>${widths.map((w) => `<col style="width:${w}">`).join('')}</colgroup><thead><tr>${head}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table></section>`;
}

/** The record as a page to print and to fill in at the bench. */
export function inspectionHtml(record: InspectionRecord): string {
  const isBlank = record.judgements.every(({ disposition }) => disposition === 'not measured');
  const verdict = isBlank
    ? '<p>Fill in what you find, at 20 degrees C, burrs off. Then give it in the job under built: the sums are run again with the real numbers.</p>'
    : `<p><strong>${escaped(record.verdict)}.</strong> ${escaped(record.todo)}</p>`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(record.title)}: inspection record</title>
<style>
${reportStyle}
td.fill{border-left:.2mm solid var(--line);padding-left:2mm}
tbody td,tbody th{height:8mm}
.sign{display:flex;gap:8mm;margin-top:8mm}.sign p{flex:1;border-top:.3mm solid var(--ink);padding-top:1mm;font-size:9pt}
</style>
</head>
<body>
<header><p class="kind">Inspection record by flangewright, revision ${escaped(record.revision)}. Sizes at 20 degrees C; limits count, never the nominal.</p><h1>${escaped(record.title)}</h1></header>
<main>
${verdict}
${part('adapter', record)}
${part('wheel', record)}
<div class="sign"><p>Measured by${record.by === '' ? '' : `: ${escaped(record.by)}`}</p><p>Date</p><p>Accepted by</p></div>
</main>
</body>
</html>
`;
}
