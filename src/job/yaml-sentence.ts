/** Syntax errors of YAML in a fabricator's words. */

const sentences: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'Indent with spaces: this line starts with a tab.',
  BAD_INDENT: 'The indentation does not fit here: keys of one section start in the same column, and a bracket must be closed.',
  BLOCK_AS_IMPLICIT_KEY: 'There is a second "key:" on this line, or the line is indented too far; put each key on a line of its own, or text with a colon in quotes.',
  MULTILINE_IMPLICIT_KEY: 'A key and its colon must stand on one line.',
  BLOCK_IN_FLOW: 'Inside { } or [ ], separate keys with commas, not with new lines and dashes.',
  BAD_ALIAS: 'A value cannot start with * or & here; put it in quotes.',
  BAD_DQ_ESCAPE: 'This \\ code is not known inside double quotes; use single quotes, or write \\\\.',
  KEY_OVER_1024_CHARS: 'This key is too long.',
  MULTIPLE_DOCS: 'This file holds several YAML documents (split by ---); a job is one document.',
  BAD_DIRECTIVE: 'This line starts with %, which has a meaning of its own; put the text in quotes or delete the line.',
  RESOURCE_EXHAUSTION: 'Nested too deeply to be a job.',
};

/**
 * A sentence for a syntax error: its code and the parser's own message, and where it stands.
 * Unknown codes fall back on the parser's message, whose first line is plain enough.
 */
export function yamlSentence(code: string, message: string, text: string, offset: number): string {
  if (code === 'MISSING_CHAR' || code === 'BAD_INDENT') {
    const bracket = /end with a ([\]}])/.exec(message)?.[1];
    if (bracket !== undefined) return `A ${bracket === ']' ? '[' : '{'} opened above is never closed, or its lines are not indented under it; close it with ${bracket}.`;
    if (/closing/.test(message)) return `A quote (${message.includes("'") ? "'" : '"'}) was opened and never closed.`;
  }
  if (code === 'MISSING_CHAR') return missingCharacter(message, text, offset);
  if (code === 'BAD_SCALAR_START') return `A value cannot start with ${text[offset] ?? 'this sign'}; put it in quotes.`;
  if (code === 'UNEXPECTED_TOKEN') {
    const bracket = text[offset];
    if (bracket === '}' || bracket === ']') return `This ${bracket} closes nothing.`;
    if (/node end/.test(message)) return 'There is something after the end of this value; put the whole value in quotes, or delete the rest (inches: 2 1/4 in).';
    return 'This does not fit here; check the colon, the comma or the bracket before it.';
  }
  return sentences[code] ?? `This is not readable YAML: ${message.split('\n')[0]?.slice(0, 120)}.`;
}

function missingCharacter(message: string, text: string, offset: number): string {
  if (/implicit map keys? need|followed by map values|:/.test(message)) return 'A colon is missing: each line is written key: value, with a space after the colon.';
  if (/ , |comma|between/.test(message)) return 'A comma is missing between two items.';
  return `A sign is missing before ${text[offset] === undefined || text[offset] === '\n' ? 'the end of this line' : `"${text[offset]}"`}: a comma, a colon or a bracket.`;
}
