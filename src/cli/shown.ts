/** What users named, fit for a terminal: a file's name or an argument may hold signs that move a cursor or turn the writing. */

/** Control and invisible signs as question marks; line ends and tabs stay. */
export const shown = (text: string): string => text.replace(/[^\P{C}\n\t]|\p{Zl}|\p{Zp}/gu, '?');

/** Such signs written as \uXXXX in JSON, which reads back as the same data. */
function escapedIn(json: string): string {
  const escaped = (sign: string) =>
    Array.from({ length: sign.length }, (_, at) => `\\u${sign.charCodeAt(at).toString(16).padStart(4, '0')}`).join('');
  return json.replace(/[^\P{C}\n]|\p{Zl}|\p{Zp}/gu, escaped);
}

/** JSON on lines set in, without such signs. Ends with a line break. */
export const jsonText = (data: unknown): string => `${escapedIn(JSON.stringify(data, null, 2))}\n`;

/** The same on one line. */
export const jsonLine = (data: unknown): string => `${escapedIn(JSON.stringify(data))}\n`;
