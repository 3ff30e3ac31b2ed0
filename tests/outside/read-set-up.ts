/** What a set-up page says, read as a person reads it: which side is up, and the holes of its list. Lengths in mm. */

export interface ReadHole {
  readonly tag: string;
  readonly x: number;
  readonly y: number;
  /** Tools that have a box to tick. */
  readonly ticks: number;
}

export interface ReadSide {
  readonly up: 'driving' | 'driven';
  /** Side of the map that the index mark is said to lie on. */
  readonly mark: 'left' | 'right';
  readonly holes: readonly ReadHole[];
}

const textOf = (markup: string) => markup.replace(/<[^>]*>/g, '').trim();

/** The drilling pages of a set-up page. */
export function readSetUp(page: string): ReadSide[] {
  return page.split('<section class="op">').flatMap((section): ReadSide[] => {
    const [table] = section.match(/<table class="holes">.*?<\/table>/s) ?? [];
    if (!table) return [];
    const up = section.match(/drill the (driving|driven) side/i)?.[1];
    const mark = section.match(/Index mark on the (left|right)/)?.[1];
    if ((up !== 'driving' && up !== 'driven') || (mark !== 'left' && mark !== 'right'))
      throw new Error('no side named');
    const perUnit = table.includes('X in<') ? 25.4 : 1;
    const rows = [...table.matchAll(/<tr>(<th>[A-Z]\d+<\/th>.*?)<\/tr>/gs)].map(([, row = '']) => row);
    const holes = rows.map((row): ReadHole => {
      const cells = [...row.matchAll(/<t[hd][^>]*>.*?<\/t[hd]>/gs)].map(([cell]) => textOf(cell));
      const [tag = '', x = '', y = ''] = cells;
      return { tag, x: Number(x) * perUnit, y: Number(y) * perUnit, ticks: (row.match(/class="box"/g) ?? []).length };
    });
    return [{ up, mark, holes }];
  });
}
