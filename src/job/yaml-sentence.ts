/** Syntax errors of YAML in a fabricator's words. */

const sentences: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'Indent with spaces: this line starts with a tab.',
  BAD_INDENT:
    'The indentation does not fit here: keys of one section start in the same column, and a bracket must be closed.',
  BLOCK_AS_IMPLICIT_KEY:
    'There is a second "key:" on this line, or the line is indented too far; put each key on a line of its own, or text with a colon in quotes.',
  MULTILINE_IMPLICIT_KEY: 'A key and its colon must stand on one line.',
  BLOCK_IN_FLOW: 'Inside { } or [ ], separate keys with commas, not with new lines and dashes.',
  BAD_ALIAS: 'A value cannot start with * or & here; put it in quotes.',
  BAD_DQ_ESCAPE: 'This \\ code is not known inside double quotes; use single quotes, or write \\\\.',
  KEY_OVER_1024_CHARS: 'This key is too long.',
  MULTIPLE_DOCS: 'This file holds several YAML documents (split by ---); a job is one document.',
  BAD_DIRECTIVE: 'This line starts with %, which has a meaning of its own; put the text in quotes or delete the line.',
  RESOURCE_EXHAUSTION: 'Nested too deeply to be a job.',
};

/** A syntax error's sentence and the offset it should point at; `message` is the parser's own. */
export function syntaxFault(
  code: string,
  message: string,
  text: string,
  offset: number,
): { offset: number; message: string } {
  if (code === 'BLOCK_AS_IMPLICIT_KEY' || code === 'MULTILINE_IMPLICIT_KEY') {
    const end = text.indexOf('\n', offset);
    const rest = text.slice(offset, end < 0 ? undefined : end);
    const isAloneOnLine = /^[ ]*$/.test(text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset));
    // No second key on this line: the parser has run into the next one, which is indented too far, or this one lacks its colon.
    if (!/:(\s|$)/.test(rest) && end >= 0) {
      if (isAloneOnLine) return { offset, message: colonMissing };
      const next = /\S/.exec(text.slice(end));
      if (next !== null)
        return {
          offset: end + next.index,
          message: 'This line is indented further than the key above it; keys of one section start in the same column.',
        };
    }
  }
  return { offset, message: yamlSentence(code, message, text, offset) };
}

const colonMissing = 'A colon is missing: each line is written key: value, with a space after the colon.';

/** Unknown codes fall back on the parser's message, whose first line is plain enough. */
function yamlSentence(code: string, message: string, text: string, offset: number): string {
  if (code === 'MISSING_CHAR' || code === 'BAD_INDENT') {
    const bracket = /end with a ([\]}])/.exec(message)?.[1];
    if (bracket !== undefined)
      return `A ${bracket === ']' ? '[' : '{'} opened above is never closed, or its lines are not indented under it; close it with ${bracket}.`;
    if (/closing/.test(message)) return `A quote (${message.includes("'") ? "'" : '"'}) was opened and never closed.`;
  }
  if (code === 'MISSING_CHAR') return missingCharacter(message, text, offset);
  if (code === 'BAD_SCALAR_START') return `A value cannot start with ${text[offset] ?? 'this sign'}; put it in quotes.`;
  if (code === 'UNEXPECTED_TOKEN') {
    const bracket = text[offset];
    if (bracket === '}' || bracket === ']') return `This ${bracket} closes nothing.`;
    if (/node end/.test(message))
      return 'There is something after the end of this value; put the whole value in quotes, or delete the rest (inches: 2 1/4 in).';
    return 'This does not fit here; check the colon, the comma or the bracket before it.';
  }
  return sentences[code] ?? `This is not readable YAML: ${message.split('\n')[0]?.slice(0, 120)}.`;
}

function missingCharacter(message: string, text: string, offset: number): string {
  if (/implicit map keys? need|followed by map values|:/.test(message)) return colonMissing;
  if (/ , |comma|between/.test(message)) return 'A comma is missing between two items.';
  return `A sign is missing before ${text[offset] === undefined || text[offset] === '\n' ? 'the end of this line' : `"${text[offset]}"`}: a comma, a colon or a bracket.`;
}
