/** Text made safe for a page or a drawing: HTML, SVG and every other XML take it. */

/** Text that may stand as it is. Nearly every text does. */
const plain = /^[ !#$%(-;=?-~]*$/;

/** Escapes markup, and drops control characters and those that steer a terminal or turn the writing direction. */
export function escaped(text: string): string {
  if (plain.test(text)) return text;
  return text
    .replace(/[\t\n\r]+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\ufffe\uffff]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
