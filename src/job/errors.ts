/** A mistake in a job file, told with its place. Data, never thrown. */

export interface JobError {
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
  /** Key path, "driven.holes.circle" or "driven.holes.at[2]"; empty for the file as a whole. */
  readonly path: string;
  /** One or two whole sentences. */
  readonly message: string;
  /** What was typed there, shortened. */
  readonly value?: string;
  readonly allowed?: string;
  readonly hint?: string;
}

/** What may be added to an error beside its sentence. */
export type ErrorMore = Partial<Pick<JobError, 'value' | 'allowed' | 'hint'>>;

/** Makes an error at a key path's place in the file; the deepest part of the path that was typed gives the place. */
export type ErrorAt = (path: string, message: string, more?: ErrorMore) => JobError;

export type PathStep = string | number;

/** ['driven', 'holes', 'at', 2] as "driven.holes.at[2]". */
export function pathText(steps: readonly PathStep[]): string {
  return steps.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? step : `${text}.${step}`;
  }, '');
}

/** Whether a key path is another or stands inside it. */
export function isWithin(path: string, outer: string): boolean {
  return path === outer || path.startsWith(`${outer}.`) || path.startsWith(`${outer}[`);
}

/** "driven.holes.at[2]" as ['driven', 'holes', 'at', 2]. */
export function pathSteps(path: string): PathStep[] {
  return [...path.matchAll(/\[(\d+)\]|([^.[\]]+)/g)].map((match) =>
    match[1] === undefined ? (match[2] ?? '') : Number(match[1]),
  );
}

/** A typed value fit for a sentence: printable, on one line, at most about 40 characters. */
export function shownValue(typed: unknown): string {
  if (typed === undefined || typed === null) return 'nothing';
  if (Array.isArray(typed)) return `a list of ${typed.length}`;
  if (typeof typed === 'object') return 'a set of keys';
  if (typeof typed === 'number' && !Number.isFinite(typed)) return 'a number that no size can be';
  return printable(String(typed), 40);
}

/** Control and invisible characters replaced, and cut to `most` characters. */
export function printable(text: string, most: number): string {
  const cut = text.length > most ? `${text.slice(0, most - 3)}...` : text;
  return cut.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '?');
}

/** In the order of the file. */
export function sortErrors(errors: readonly JobError[]): JobError[] {
  return [...errors].sort((a, b) => a.line - b.line || a.column - b.column || a.path.localeCompare(b.path, 'en'));
}

const widestLine = 100;

/**
 * Errors as text for a terminal: `file:line:col path: sentence`, then the source line and a caret under the place.
 * Long lines are cut to a window around the place. Ends with a line break when there is any error.
 */
export function formatErrors(errors: readonly JobError[], text: string): string {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  return errors
    .map((error) => {
      const head = `${error.file}:${error.line}:${error.column} ${error.path === '' ? '' : `${error.path}: `}${error.message}`;
      const source = lines[error.line - 1];
      return source === undefined || source.trim() === '' ? `${head}\n` : `${head}\n${excerpt(source, error.column)}\n`;
    })
    .join('');
}

function excerpt(source: string, column: number): string {
  const start = column > widestLine - 20 ? column - Math.floor(widestLine / 2) : 0;
  const window = printable(source.slice(start, start + widestLine).replaceAll('\t', ' '), widestLine + 3);
  return `    ${window}\n    ${' '.repeat(Math.max(0, column - 1 - start))}^`;
}
