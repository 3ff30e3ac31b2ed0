import { describe, expect, it } from 'vitest';
import { allTables } from '../../src/standards/all.ts';
import { clearanceHoles } from '../../src/standards/clearance-holes.ts';
import { gradeNames, standardTolerances } from '../../src/standards/iso286-grades.ts';
import { lookUp, lookUpStep, meant, must } from '../../src/standards/table.ts';

const signedFields = new Set(['deviation', 'coldest']);

describe('every table', () => {
  it('has an id of its own', () => {
    expect(new Set(allTables.map((table) => table.id)).size).toBe(allTables.length);
  });

  it.each(allTables.map((table) => ({ id: table.id, table })))('$id says what it is', ({ table }) => {
    for (const text of [table.edition, table.title, table.source, table.covers]) {
      expect(text.trim().length).toBeGreaterThan(1);
    }
    expect(table.unit).not.toBe('');
    expect(table.rows.length).toBeGreaterThan(0);
    if (table.verified === 'memory') {
      expect(`${table.source} ${table.edition}`).toMatch(/memory|common practice|row by row/);
    }
  });

  it.each(allTables.map((table) => ({ id: table.id, table })))('$id has only finite, positive figures', ({ table }) => {
    for (const row of table.rows) {
      for (const [column, cell] of Object.entries(row)) {
        if (typeof cell === 'number')
          expect(cell, column).toSatisfy((n: number) => Number.isFinite(n) && (n >= 0 || signedFields.has(column)));
        if (typeof cell === 'string') expect(cell.length, column).toBeGreaterThan(0);
        if (typeof cell === 'object' && cell !== null) {
          for (const inner of Object.values(cell as Record<string, number | string | null>)) {
            if (typeof inner === 'string') expect((inner as string).length).toBeGreaterThan(0);
            else if (inner !== null)
              expect(inner).toSatisfy((n: number) => Number.isFinite(n) && (n >= 0 || signedFields.has(column)));
          }
        }
      }
    }
  });

  it.each(allTables.map((table) => ({ id: table.id, table })))('$id repeats no row', ({ table }) => {
    const rows = table.rows.map((row) => JSON.stringify(row));
    expect(new Set(rows).size).toBe(rows.length);
  });

  it.each(
    allTables
      .filter((table) => table.rows.some((row) => 'd' in row || 'D' in row))
      .map((table) => ({ id: table.id, table })),
  )('$id grows with the size in every column', ({ table }) => {
    const rows = table.rows as readonly Readonly<Record<string, unknown>>[];
    // Fine and unified threads list several pitches of one size, and their pitch-bound columns may fall.
    if (table.id === 'iso261-fine' || table.id === 'asme-b1.1') return expect(rows.length).toBeGreaterThan(10);
    const falls: string[] = [];
    for (let at = 1; at < rows.length; at++) {
      for (const [column, cell] of Object.entries(rows[at] ?? {})) {
        const before = rows[at - 1]?.[column];
        if (typeof cell === 'number' && typeof before === 'number' && cell < before - 1e-9)
          falls.push(`${column} at row ${at}`);
      }
    }
    expect(falls).toEqual([]);
  });
});

describe('the steps of ISO 286', () => {
  it('follow each other without a gap from 0 to 500', () => {
    const { rows } = standardTolerances;
    expect(rows[0]?.over).toBe(0);
    expect(rows.at(-1)?.upTo).toBe(500);
    for (let at = 1; at < rows.length; at++) expect(rows[at]?.over).toBe(rows[at - 1]?.upTo);
  });

  it('give every grade a wider tolerance than the one before', () => {
    for (const row of standardTolerances.rows) {
      const tolerances = gradeNames.map((grade) => row.IT[grade] ?? Number.NaN);
      expect(tolerances.every((IT, at) => at === 0 || IT > (tolerances[at - 1] ?? 0))).toBe(true);
    }
  });

  it('put a size at the end of a step into that step', () => {
    expect(must(lookUpStep(standardTolerances, 50)).upTo).toBe(50);
    expect(must(lookUpStep(standardTolerances, 50.001)).upTo).toBe(80);
  });

  it.each([0, -3, 500.01, Number.NaN, Number.POSITIVE_INFINITY])('miss %s with the range in words', (size) => {
    const answer = lookUpStep(standardTolerances, size);
    expect(answer).toEqual({ ok: false, why: expect.stringContaining('over 0 up to 500 mm') });
  });
});

describe('lookUp', () => {
  it('ignores case and spaces', () => expect(must(lookUp(clearanceHoles, 'size', ' m 10')).medium).toBe(11));

  it('lists the legal sizes on a miss', () => {
    const answer = lookUp(clearanceHoles, 'size', 'M9');
    expect(answer).toEqual({ ok: false, why: expect.stringMatching(/ISO 273.*M9.*M8, M10.*M24/) });
  });

  it('guesses a small slip and stays silent at a wild one', () => {
    expect(meant('6O61-T6', ['6061-T6', '7075-T6'])).toBe(' (did you mean 6061-T6?)');
    expect(meant('unobtainium', ['6061-T6', '7075-T6'])).toBe('');
  });

  it('must() turns a miss into a thrown bug', () => {
    expect(() => must(lookUp(clearanceHoles, 'size', 'M9'))).toThrow(/M9/);
  });
});
