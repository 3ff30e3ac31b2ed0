/** The order note for a cutting service: one flat part, what to cut, how to prove the scale, what matters. Plain ASCII, 78 columns. */
import { plain, wrap } from './plain-text.ts';

/** One flat part as it is ordered. Lengths in mm. */
export interface PartOrder {
  /** Words that stand first when checks fail; else empty. */
  readonly warning: string;
  readonly part: string;
  readonly title: string;
  readonly revision: string;
  readonly files: readonly { readonly name: string; readonly about: string; readonly remarks: readonly string[] }[];
  readonly material: string;
  readonly thickness: number;
  readonly quantity: number;
  readonly size: { readonly width: number; readonly height: number };
  /** Diameter of the largest hole as drawn; null where there is no round one. */
  readonly proof: number | null;
  readonly mass: number | null;
  readonly cutLength: number;
  readonly pierces: number;
  readonly tolerance: string;
  readonly kerf: string;
  /** Features that are cut small and finished later. */
  readonly undersize: readonly string[];
  /** What must be right, and why. */
  readonly critical: readonly string[];
  readonly finish: readonly string[];
}

const width = 78;
const both = (mm: number): string => `${mm.toFixed(3)} mm (${(mm / 25.4).toFixed(4)} in)`;

/** The note as text, ending in a line break. It names nobody: who orders it adds that. */
export function orderText(order: PartOrder): string {
  const lines: string[] = [];
  const paragraph = (lead: string, text: string, indent: number): void => {
    const rows = wrap(plain(text), width - indent);
    lines.push(...rows.map((row, i) => `${i === 0 ? lead.padEnd(indent) : ' '.repeat(indent)}${row}`));
  };
  const section = (title: string, list: readonly string[]): void => {
    if (list.length === 0) return;
    lines.push('', title);
    for (const text of list) paragraph('  - ', text, 4);
  };
  if (order.warning !== '') lines.push(order.warning, '');
  paragraph('', `Cutting order: ${order.part}`, 0);
  paragraph('', `${order.title}, revision ${order.revision}`, 0);
  lines.push('');
  const row = (label: string, text: string): void => paragraph(label, text, 14);
  row('Quantity', String(order.quantity));
  row('Material', order.material);
  row('Thickness', both(order.thickness));
  row('Size', `${order.size.width.toFixed(2)} x ${order.size.height.toFixed(2)} mm over all`);
  if (order.mass !== null) row('Mass', `${order.mass.toFixed(1)} g each`);
  row('Cutting', `${order.cutLength.toFixed(0)} mm in ${order.pierces} contours, one pierce each`);
  row('Units', 'millimetres, scale 1:1. Do not scale on import.');
  row(
    'Scale proof',
    order.proof === null
      ? `measured in the file, the part is ${both(order.size.width)} across. If it is not, stop and ask.`
      : `measured in the file, the largest hole is ${both(order.proof)} across. If it is not, stop and ask.`,
  );
  row('Tolerance', order.tolerance);
  row('Kerf', order.kerf);
  const drawings = order.files.filter(({ name }) => name.endsWith('.dxf')).length;
  lines.push('', drawings > 1 ? 'Files (the drawings all show the same part: use any one)' : 'Files');
  for (const { name, about, remarks } of order.files) {
    paragraph('  - ', `${name}: ${about}.`, 4);
    for (const remark of remarks) paragraph('      ', remark, 6);
  }
  section('Cut small on purpose: do not correct', order.undersize);
  section('What must be right, and why', order.critical);
  section('Finish', order.finish);
  return `${lines.join('\n')}\n`;
}
