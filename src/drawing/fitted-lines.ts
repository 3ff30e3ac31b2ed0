/** Text broken between words so that no line is wider than its room. */
import { textWidth } from './text-size.ts';

/** Lines of a text at a cap height, mm; a word that is too wide for the room has a line of its own. */
export function fittedLines(text: string, size: number, room: number, bold = false): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || textWidth(`${last} ${word}`, size, bold) > room) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
