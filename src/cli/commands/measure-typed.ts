/** What was typed for `measure`, by flags or by answers. */

/** What was typed: each flag (and subject and file) as one text; chords and points as lists. */
export interface Typed {
  readonly texts: Readonly<Record<string, string | undefined>>;
  readonly chords: readonly string[];
  readonly at: readonly string[];
}
