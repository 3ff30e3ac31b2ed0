/** What the files of a job are called: as the user says, else as the job came, else by its title once that is another one. */

/** Where a job's name comes from. */
export interface Called {
  readonly name: string;
  /** The title that the job came with: under another title the name is made of that one. Null where the user gave the name. */
  readonly title: string | null;
}

/** A text and its name, to go back to. */
export interface Step {
  readonly text: string;
  readonly called: Called;
}

/** A new job. */
export const unnamed: Called = { name: 'my-joint', title: '' };

/** Names longer than this are cut: a file's name with its part and ending must fit every disk. */
const mostLetters = 60;

/** Words as the start of a file's name: small letters, digits, single hyphens. Empty where there are none. */
export const slug = (words: string): string =>
  words
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, '-')
    .slice(0, mostLetters)
    .replace(/^-+|-+$/g, '');

/** The title in a job's text as it stands, even one with errors elsewhere; empty where there is none. */
export function titleOf(text: string): string {
  const typed = /^title:[ \t]*(.*)$/m.exec(text)?.[1]?.trim() ?? '';
  const quoted = /^(["'])(.*?)\1/.exec(typed);
  return quoted?.[2] ?? typed.replace(/\s#.*$|^#.*$/, '').trim();
}

/** The start of every file's name. */
export function nameOf({ name, title }: Called, text: string): string {
  const now = titleOf(text);
  return title === null || now === title ? name : slug(now) || unnamed.name;
}

/** Of what was kept in the browser before titles were, an example is known by its name; any other name is the user's. */
export function calledAsShelved(
  { name, title }: { readonly name: string; readonly title?: string | null },
  examples: Readonly<Record<string, string>>,
): Called {
  if (title !== undefined) return { name, title };
  const example = examples[name];
  return { name, title: example === undefined ? null : titleOf(example) };
}
