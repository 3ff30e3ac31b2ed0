/** DXF text as a list of group codes and values, for the flavours whose package needs a correction. */

/** One group: its code, and its value as written. */
export type DxfTag = readonly [code: number, value: string];

/** The groups of a DXF text. @throws where the text is not pairs of lines */
export function readTags(text: string): DxfTag[] {
  const lines = text.split(/\r?\n/);
  if (lines.at(-1) === '') lines.pop();
  const tags: DxfTag[] = [];
  for (let i = 0; i < lines.length; i += 2) {
    const code = Number(lines[i]);
    const value = lines[i + 1];
    if (!Number.isInteger(code) || value === undefined) throw new Error(`DXF line ${i + 1} is not a group code.`);
    tags.push([code, value]);
  }
  return tags;
}

/** The text of a list of groups: a line for the code, a line for the value. */
export function writeTags(tags: readonly DxfTag[]): string {
  return `${tags.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;
}

/** Where a group with this code and value stands, at or after `from`. @throws where there is none */
export function findTag(tags: readonly DxfTag[], code: number, value: string, from = 0): number {
  const at = tags.findIndex(([c, v], i) => i >= from && c === code && v === value);
  if (at < 0) throw new Error(`The DXF has no group ${code} ${value}.`);
  return at;
}
