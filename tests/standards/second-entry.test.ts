/** Every cell of the published tables against a second copy of the print, kept apart: row by row, none dropped, none added. */
import { describe, expect, it } from 'vitest';
import { allTables } from '../../src/standards/all.ts';
import { fitsEntries } from './second-entry/fits.ts';
import { screwsEntries } from './second-entry/screws.ts';
import { shopEntries } from './second-entry/shop.ts';
import { strengthEntries } from './second-entry/strength.ts';
import { threadsEntries } from './second-entry/threads.ts';

const cellOf = (row: object, column: string): unknown =>
  column in row
    ? (row as Readonly<Record<string, unknown>>)[column]
    : column.split('.').reduce<unknown>((at, key) => (at as Readonly<Record<string, unknown>> | undefined)?.[key], row);

describe('tables as printed', () => {
  it.each([...fitsEntries, ...threadsEntries, ...screwsEntries, ...strengthEntries, ...shopEntries])(
    '$id ($source)',
    ({ id, columns, rows, leavesOut = '' }) => {
      const table = allTables.find((candidate) => candidate.id === id);
      const printed = rows
        .split(/[\n;]/)
        .map((row) => row.trim())
        .filter((row) => row !== '');
      const ours = table?.rows.map((row) =>
        columns
          .split(' ')
          .map((column) => String(cellOf(row, column) ?? '-'))
          .join(' '),
      );
      const unprinted = leavesOut.split(' ');
      expect(ours?.filter((row) => !unprinted.includes(row.split(' ')[0] ?? ''))).toEqual(printed);
    },
  );
});
