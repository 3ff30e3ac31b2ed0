/** What a command may touch: where it prints and what it asks. Commands are functions of this, so tests can hold it in their hands. */

export interface Io {
  /** Standard output, as is. */
  readonly out: (text: string) => void;
  /** Standard error, as is. */
  readonly err: (text: string) => void;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  /** Ask a question at a terminal; null when nobody is there to answer. */
  readonly ask: ((question: string) => Promise<string>) | null;
  /** Colour a piece of text, or leave it as it is. */
  readonly paint: (text: string, style: string) => string;
  /** Somebody watches standard error: a progress bar may be drawn there. Left out: nobody does. */
  readonly isWatched?: boolean;
}

/** Exit codes of every command. */
export const exit = { clean: 0, checkFailed: 1, badJob: 2, bug: 70, stopped: 130 } as const;

/** A mistake of the user's: one plain sentence, no stack trace, exit code 2. */
export class UsageError extends Error {}
