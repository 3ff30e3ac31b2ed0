/** Text that any terminal can show: ASCII, no control characters, wrapped. */

const spelled: Readonly<Record<string, string>> = {
  '\u00d8': 'dia ',
  '\u2300': 'dia ',
  '\u00b0': ' deg',
  '\u00b1': '+/-',
  '\u00d7': 'x',
  '\u00b7': '.',
  '\u2212': '-',
  '\u2013': '-',
  '\u2014': '-',
  '\u2018': "'",
  '\u2019': "'",
  '\u201c': '"',
  '\u201d': '"',
  '\u2026': '...',
  '\u2264': '<=',
  '\u2265': '>=',
  '\u00b5': 'u',
  '\u03bc': 'u',
  '\u00b2': '2',
  '\u00b3': '3',
  '\u00df': 'ss',
};

/** ASCII only: known signs are spelled out, accents dropped, anything else is a question mark, control characters are gone. */
export function plain(text: string): string {
  return [...text.replace(/\s+/g, ' ')]
    .map((c) => spelled[c] ?? c)
    .join('')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[\p{Cc}\p{Cf}]/gu, '')
    .replace(/[^ -~]/gu, '?');
}

/** Breaks plain text into lines of at most `width` columns; words longer than a line are cut. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (let word of text.split(' ').filter((w) => w !== '')) {
    while (word.length > width) {
      if (line !== '') lines.push(line);
      line = '';
      lines.push(word.slice(0, width));
      word = word.slice(width);
    }
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines;
}
