/** The sheet order in the report: each flat part as it goes to the cutting service, and what the pre-flight of its own file found. */
import type { Verdict } from '../model/finding.ts';
import type { DrawingFacts, PlacedFinding } from '../model/preflight.ts';
import type { LengthUnits } from '../units/format.ts';
import { escaped } from '../units/markup.ts';
import { quantityText } from './numbers.ts';
import { overallVerdict } from './rank.ts';

/** One flat part, its file, and what was read of that file. Lengths in mm. */
export interface SheetOrder {
  readonly part: string;
  /** Name of the drawing that was read back. */
  readonly file: string;
  readonly material: string;
  readonly thickness: number;
  readonly quantity: number;
  /** Features that are cut small on purpose, in words. */
  readonly undersize: readonly string[];
  readonly findings: readonly PlacedFinding[];
  readonly facts: DrawingFacts | null;
}

export interface SheetLine {
  readonly label: string;
  readonly value: string;
  readonly note: string;
  readonly verdict: Verdict | null;
}

/** Findings that carry a number against the service's limits, in the order of the bench. */
const measured: readonly (readonly [code: string, label: string])[] = [
  ['dxf-hole-size', 'Smallest hole'],
  ['dxf-web', 'Narrowest web'],
  ['dxf-neck', 'Narrowest neck'],
  ['dxf-slot', 'Narrowest slot'],
  ['dxf-inside-corner', 'Inside radius'],
  ['dxf-part-small', 'Shortest side'],
  ['dxf-part-large', 'Longest side'],
];

const both = (mm: number): string => `${mm.toFixed(3)} mm (${(mm / 25.4).toFixed(4)} in)`;

/** The lines of one part. */
export function sheetLines(order: SheetOrder, units: LengthUnits): SheetLine[] {
  const { facts, findings, material, thickness, quantity, undersize } = order;
  const verdict = overallVerdict(findings);
  const plain = (label: string, value: string, note = ''): SheetLine => ({ label, value, note, verdict: null });
  const seen = findings.filter(({ code, value, verdict: one }) => one === 'pass' && value === null && !hasLine(code));
  const open = findings.filter((one) => (one.verdict === 'fail' || one.verdict === 'caution') && !hasLine(one.code));
  const proof = facts?.largestHole ?? null;
  return [
    {
      label: 'Read back',
      value: order.file,
      note: `${verdict === 'pass' ? 'clean' : 'see below'}: ${seen.map(({ title }) => title).join('; ')}`,
      verdict,
    },
    ...open.map(({ title, why, remedy, verdict: one }) => ({ label: title, value: why, note: remedy, verdict: one })),
    plain('Sheet', `${material}, ${quantityText(thickness, 'mm', units)} thick`, `${quantity} off`),
    ...(facts === null
      ? []
      : [
          plain(
            'Over all',
            `${facts.width.toFixed(3)} x ${facts.height.toFixed(3)} mm`,
            `${(facts.width / 25.4).toFixed(4)} x ${(facts.height / 25.4).toFixed(4)} in`,
          ),
          plain(
            'Scale proof',
            proof === null ? `width ${both(facts.width)}` : `largest hole ${both(proof)}`,
            'measured in the file; whoever opens it must find the same',
          ),
        ]),
    ...measured.flatMap(([code, label]) => {
      const finding = findings.find((one) => one.code === code);
      return finding === undefined ? [] : [measuredLine(label, finding, units)];
    }),
    ...undersize.map((text) => plain('Cut small on purpose', text, 'do not correct')),
  ];
}

const hasLine = (code: string): boolean => measured.some(([known]) => known === code);

function measuredLine(label: string, finding: PlacedFinding, units: LengthUnits): SheetLine {
  const { value, limit, margin, unit, verdict, why, remedy } = finding;
  const note = verdict === 'pass' || remedy === '' ? '' : remedy;
  if (value === null) return { label, value: why, note, verdict };
  const against = limit === null ? '' : `, limit ${quantityText(limit, unit, units)}`;
  const left =
    margin === null ? '' : `, ${quantityText(Math.abs(margin), unit, units)} ${margin >= 0 ? 'to spare' : 'short'}`;
  return { label, value: `${quantityText(value, unit, units)}${against}${left}`, note, verdict };
}

/** The order as paragraphs for the text report: one heading a part. */
export function sheetAsText(
  orders: readonly SheetOrder[],
  units: LengthUnits,
): { readonly title: string; readonly paragraphs: readonly string[] }[] {
  return orders.map((order) => ({
    title: `Sheet order: ${order.part}`,
    paragraphs: sheetLines(order, units).map(({ label, value, note, verdict }) => {
      const word = verdict === null || verdict === 'pass' ? '' : ` [${verdict.toUpperCase()}]`;
      return `${label}${word}: ${value}${note === '' ? '' : `; ${note}`}`;
    }),
  }));
}

/** The order as sections of the page; empty without a flat part. */
export function sheetSection(orders: readonly SheetOrder[], units: LengthUnits): string {
  return orders
    .map((order) => {
      const rows = sheetLines(order, units).map(
        ({ label, value, note, verdict }) =>
          `<tr><th scope="row">${escaped(label)}</th><td>${escaped(verdict ?? '')}</td><td>${escaped(value)}</td><td>${escaped(note)}</td></tr>`,
      );
      const head = ['What', 'Verdict', 'Found', 'Note'].map((title) => `<th scope="col">${title}</th>`).join('');
      const widths = ['20%', '12%', '36%', 'auto'].map((width) => `<col style="width:${width}">`).join('');
      return `<section><h2>Sheet order: ${escaped(order.part)}</h2><div class="wide"><table><colgroup>${widths}</colgroup><thead><tr>${head}</tr></thead><tbody>${rows.join('\n')}</tbody></table></div></section>`;
    })
    .join('\n');
}

/** The order as data, under `sheet` of the report's JSON. */
export function sheetJson(orders: readonly SheetOrder[], units: LengthUnits) {
  return orders.map((order) => ({
    part: order.part,
    file: order.file,
    material: order.material,
    thickness: order.thickness,
    quantity: order.quantity,
    verdict: overallVerdict(order.findings),
    facts: order.facts,
    undersize: order.undersize,
    lines: sheetLines(order, units),
    findings: order.findings,
  }));
}
