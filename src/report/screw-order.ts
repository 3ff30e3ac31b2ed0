/** The list of screws, nuts, washers and pins to buy, for a person and for a spreadsheet. */
import type { Joint } from '../job/joint.ts';
import { dowelsToBuy } from './dowel-lines.ts';
import { note } from './note-lines.ts';
import { plain } from './plain-text.ts';
import { type BuyLine, screwsToBuy } from './screw-list.ts';

const linesOf = (joint: Joint): BuyLine[] => [...screwsToBuy(joint), ...dowelsToBuy(joint)];

/** A cell of RFC 4180; a leading sign that a spreadsheet would run as a formula is kept from doing so. */
function cell(text: string): string {
  const safe = /^[=+\-@]/.test(text) ? `'${text}` : text;
  return `"${plain(safe).replaceAll('"', '""')}"`;
}

/** Comma-separated, CRLF, a heading line. */
export function screwCsv(joint: Joint): string {
  const times = joint.job.sheet.quantity;
  const rows = linesOf(joint).map(({ count, what, detail, where, tighten }) =>
    [String(count), String(count * times), ...[what, detail, where, tighten].map(cell)].join(','),
  );
  return `${['per joint,to buy,what,standard and class,where,tighten', ...rows].join('\r\n')}\r\n`;
}

/** The same as a note. */
export function screwText(joint: Joint, revision: string, warning: string): string {
  const out = note();
  const times = joint.job.sheet.quantity;
  if (warning !== '') {
    out.text(warning);
    out.gap();
  }
  out.text('Screws to buy');
  out.text(`${joint.job.title}, revision ${revision}`);
  out.gap();
  out.row('Joints', `${times}; the counts below are for all of them. Buy one spare of each.`);
  out.section(
    'List',
    linesOf(joint).map(
      ({ count, what, detail, where }) => `${count * times} x ${what}${detail === '' ? '' : `, ${detail}`} (${where})`,
    ),
  );
  out.section('Mind', [
    'The strength class stands on the head. No mark, no class: do not use it here.',
    'New ones only. A screw that has been tightened to its torque once is spent for this.',
    'No zinc by hot dip, no stainless in their place: strength and friction are others.',
  ]);
  return out.end();
}
