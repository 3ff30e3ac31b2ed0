/** What users named, fit for a terminal: a file's name or an argument may hold signs that move a cursor or turn the writing. */

/** Control and invisible signs as question marks; line ends and tabs stay. */
export const shown = (text: string): string => text.replace(/[^\P{C}\n\t]|\p{Zl}|\p{Zp}/gu, '?');

/** JSON with such signs written as \uXXXX, which reads back as the same data. Ends with a line break. */
export function jsonText(data: unknown): string {
  const escaped = (sign: string) =>
    Array.from({ length: sign.length }, (_, at) => `\\u${sign.charCodeAt(at).toString(16).padStart(4, '0')}`).join('');
  return `${JSON.stringify(data, null, 2).replace(/[^\P{C}\n]|\p{Zl}|\p{Zp}/gu, escaped)}\n`;
}
