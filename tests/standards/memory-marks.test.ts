/** Sizes are what they say, and what rests on memory says so: rows are marked as their sources, and the collection of figures, have it. */
import { describe, expect, it } from 'vitest';
import { allTables } from '../../src/standards/all.ts';

interface Marked {
  readonly memory?: true;
  readonly source?: string;
}

const table = (id: string) => {
  const found = allTables.find((candidate) => candidate.id === id);
  if (!found) throw new Error(id);
  return found as { readonly rows: readonly (Marked & Readonly<Record<string, unknown>>)[] };
};

describe('sizes', () => {
  const sized = allTables.filter(({ rows }) => rows.some((row) => 'size' in row && ('d' in row || 'D' in row)));

  it.each(sized.map(({ id }) => id))(
    '%s: the diameter is what the size says, number sizes by 0.060 + 0.013 n',
    (id) => {
      for (const { size, d, D } of table(id).rows) {
        const [, metric, number, above, below] =
          /^M?(?:(?<=M)(\d+)|#(\d+)|(\d+)\/(\d+)|(?<!M)(\d+))$/.exec(`${size}`) ?? [];
        if (metric !== undefined) expect(d, `${size}`).toBe(Number(metric));
        else if (number !== undefined) expect(D, `${size}`).toBeCloseTo(0.06 + 0.013 * Number(number), 12);
        else if (above !== undefined) expect(D, `${size}`).toBe(Number(above) / Number(below));
        else expect(d, `${size}`).toBe(Number(size));
      }
    },
  );
});

describe('rows', () => {
  // ISO 261 with its second choice up to 24, and the number and fraction sizes of ASME B1.1 from #10 to 3/4 in.
  it.each([
    ['M3 to M24', 'M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20 M22 M24'],
    ['#10 to 3/4 in', '#10 1/4 5/16 3/8 7/16 1/2 5/8 3/4'],
  ])('of tables that cover %s leave no size out', (covers, sizes) => {
    // Proof loads are printed for the sizes of first choice only.
    const tables = allTables.filter(
      (each) => each.covers === covers && each.id !== 'iso898-1-proof' && each.rows.some((row) => 'size' in row),
    );
    expect(tables.length).toBeGreaterThan(1);
    for (const { id } of tables) {
      const rows = table(id).rows.map(({ size }) => size);
      expect(rows.join(' '), id).toBe(sizes);
    }
  });
});

describe('marks of memory', () => {
  it.each(['iso7380-1-lengths', 'din76-1', 'setups', 'metric-drills', 'shaft-tubes'])(
    '%s was remembered as a whole: every row is marked',
    (id) => {
      for (const row of table(id).rows) expect(row.memory, JSON.stringify(row)).toBe(true);
    },
  );

  it.each(['machining-rules', 'bend-radii'])('%s names a source row by row: practice and memory are marked', (id) => {
    for (const { memory = false, source = '' } of table(id).rows)
      expect(memory, source).toBe(/memory|common practice/.test(source));
  });

  // The collection's notes on single rows: read in no print, or printed otherwise.
  it.each([
    ['iso4014', 'size', 'M3 M18'],
    ['din974-1', 'size', 'M3'],
    ['thread-engagement', 'RmOver', '290'],
    ['sheet-rules', 'what', 'corner'],
    ['laser-kerf', 't', '6'],
    ['iso21940-11', 'G', '1600 2.5'],
    ['vdi2230-alpha', 'scatterFrom', '5'],
    ['materials', 'id', '2024-T351 1018-CD 1045 4140-Q&T A36 S235JR S355 DC01 304 430 EN-GJS-500-7 PLA PETG ABS PA12'],
    ['iso4762', 'size', ''],
    ['iso273', 'size', ''],
    ['iso7089', 'size', ''],
    ['iso10642', 'size', ''],
    ['iso898-1', 'cls', ''],
  ])('%s: %s %s and no other', (id, key, marked) => {
    const rows = table(id).rows.filter(({ memory }) => memory === true);
    expect(rows.map((row) => String(row[key])).join(' ')).toBe(marked);
  });

  it('only iron and steel are magnetic, and of the stainless kinds 430 alone (data sheets)', () => {
    const magnetic = table('materials').rows.filter((row) => row.magnetic === true);
    expect(magnetic.map(({ id }) => id)).toEqual([
      '1018-CD',
      '1045',
      '4140-Q&T',
      'A36',
      'S235JR',
      'S355',
      'DC01',
      '430',
      'EN-GJS-500-7',
    ]);
  });
});
