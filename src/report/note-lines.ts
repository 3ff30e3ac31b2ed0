/** A plain note of 78 columns, paragraph by paragraph. */
import { plain, wrap } from './plain-text.ts';

const width = 78;
const label = 14;

export interface NoteWriter {
  /** A line of its own, or several where it is long. */
  readonly text: (text: string) => void;
  /** "Material      S355, ..." */
  readonly row: (name: string, text: string) => void;
  /** A heading and its list; nothing where the list is empty. */
  readonly section: (title: string, list: readonly string[]) => void;
  readonly gap: () => void;
  /** The whole note, ending in a line break. */
  readonly end: () => string;
}

/** Starts an empty note. ASCII only: anything else is spelled out. */
export function note(): NoteWriter {
  const lines: string[] = [];
  const paragraph = (lead: string, text: string, indent: number): void => {
    const rows = wrap(plain(text), width - indent);
    lines.push(...rows.map((row, i) => `${i === 0 ? lead.padEnd(indent) : ' '.repeat(indent)}${row}`));
  };
  return {
    text: (text) => paragraph('', text, 0),
    row: (name, text) => paragraph(name, text, label),
    section: (title, list) => {
      if (list.length === 0) return;
      lines.push('', title);
      for (const text of list) paragraph('  - ', text, 4);
    },
    gap: () => lines.push(''),
    end: () => `${lines.join('\n')}\n`,
  };
}
