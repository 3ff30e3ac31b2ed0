/**
 * A published table kept a second time, apart from the one in the program, so that no figure changes there unnoticed.
 *
 * Both copies come from one collection of figures, which was compared with the prints that are named. What a print has wrong, or what was
 * misread when it was collected, is in both: `tests/truth` holds the tables against limits and loads that were printed elsewhere.
 */
export interface SecondEntry {
  /** Of the table in the program. */
  readonly id: string;
  readonly source: string;
  /** Names of the columns that the print has; a dot leads into a column of columns. */
  readonly columns: string;
  /** Rows, one a line or parted by semicolons; cells parted by spaces, - where the print has none. */
  readonly rows: string;
  /** First cells of rows that are in the program's table but in no print. */
  readonly leavesOut?: string;
}
