/** Text made safe for an HTML page. */

/** Escapes markup, and drops control characters and those that turn the writing direction. */
export function html(text: string): string {
  return text
    .replace(/[\t\n\r]+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\ufffe\uffff]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
