import type { Material } from './materials.ts';
import { propertyClass } from './property-classes.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, missing } from './table.ts';
import type { Thread } from './threads.ts';

/** Least engagement in one parent material, as a multiple of the nominal diameter, by screw class (coarse thread). */
export interface EngagementRow extends TableRow {
  readonly parent: string;
  readonly family: 'steel' | 'iron' | 'aluminium';
  /** The row holds for parents stronger than this, MPa. */
  readonly RmOver: number;
  readonly '8.8': number;
  readonly '10.9': number;
  /** null where no figure is published. */
  readonly '12.9': number | null;
}

/** Recommended least thread engagement at full load; the countersunk first turn does not count. */
export const threadEngagement: StandardTable<EngagementRow> = {
  id: 'thread-engagement',
  edition: 'Published trials, M6 to M16',
  title: 'Least thread engagement by parent material',
  source:
    'a fastener handbook, from trials with M6 to M16 (steel, iron, pure aluminium); ' +
    'strong aluminium: rule of thumb 1.5 to 2 d, bounded by the equal-strength length of FED-STD-H28',
  covers: 'steel above 360, iron above 220, aluminium above 180 MPa; coarse threads',
  verified: 'secondary',
  unit: 'x d',
  notes: [
    'A fine thread takes the figure of the next higher class: 1.25 d for 8.8 and 1.4 d for 10.9 are printed for steel.',
    'Engagement beyond 2.5 d adds little: the first turns carry the load.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { parent: 'S235, C15', family: 'steel', RmOver: 360, '8.8': 1, '10.9': 1.25, '12.9': 1.4 },
    { parent: 'E295, S355, C35', family: 'steel', RmOver: 500, '8.8': 0.9, '10.9': 1, '12.9': 1.2 },
    { parent: 'C45 and 42CrMo4, heat treated', family: 'steel', RmOver: 800, '8.8': 0.8, '10.9': 0.9, '12.9': 1 },
    { parent: 'GJL-250', family: 'iron', RmOver: 220, '8.8': 1, '10.9': 1.25, '12.9': 1.4 },
    { parent: 'Al 99.5', family: 'aluminium', RmOver: 180, '8.8': 2, '10.9': 2.5, '12.9': null },
    { parent: 'strong aluminium', family: 'aluminium', RmOver: 290, '8.8': 1.5, '10.9': 2, '12.9': 2.5, memory: true },
  ],
};

/** The least engagement of one joint. */
export interface LeastEngagement {
  /** Full threads that must overlap, mm. */
  readonly length: number;
  /** The same as a multiple of d. */
  readonly factor: number;
  /** Which printed parent the figure stands for. */
  readonly row: string;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * Least engagement of a screw in a tapped parent so that the screw, not the thread, is the weak link.
 *
 * Takes the strongest table row that the parent still beats; stainless steel is read as steel. Inch grades stand in
 * the column of equal tensile strength: 5 as 8.8, 8 as 10.9, A574 as 12.9. A fine thread takes the next higher class.
 * Errors: plastics, a parent weaker than every row, and 12.9 fine, for which nothing is published.
 */
export function leastEngagement(thread: Thread, parent: Material, className: string): Lookup<LeastEngagement> {
  return andThen(propertyClass(className, thread.d), ({ name }) =>
    andThen(rowFor(parent), (row) => {
      const column = columnFor(name, thread.series);
      const factor = column === undefined ? null : row[column];
      if (factor === null) {
        return missing(
          `No least engagement is published for class ${name}, ${thread.series} thread, in ${parent.name}; ` +
            'take a coarse thread or a lower class.',
        );
      }
      const memory = row.memory ?? false;
      const source = memory ? 'rule of thumb for aluminium, bounded by FED-STD-H28' : threadEngagement.edition;
      return found({ factor, length: factor * thread.d, row: row.parent, source, memory });
    }),
  );
}

function rowFor(parent: Material): Lookup<EngagementRow> {
  const family = parent.family === 'stainless' ? 'steel' : parent.family;
  const rows = threadEngagement.rows.filter((row) => row.family === family);
  if (rows.length === 0)
    return missing(`A ${parent.family} thread carries no joint; no engagement is given for ${parent.name}.`);
  // S235 has exactly the 360 MPa that its own row is printed for, so a parent that equals the limit belongs to it.
  const beaten = rows.filter((row) => parent.tensileStrength >= row.RmOver).sort((a, b) => b.RmOver - a.RmOver);
  const [row] = beaten;
  if (row !== undefined) return found(row);
  const least = Math.min(...rows.map((candidate) => candidate.RmOver));
  return missing(
    `${parent.name} has ${parent.tensileStrength} MPa; least engagement is published for ${family} from ${least} MPa up.`,
  );
}

type Column = '8.8' | '10.9' | '12.9';

function columnFor(className: string, series: 'coarse' | 'fine'): Column | undefined {
  const columns: readonly Column[] = ['8.8', '10.9', '12.9'];
  const inch: Readonly<Record<string, Column>> = { '5': '8.8', '8': '10.9', A574: '12.9' };
  const own = inch[className] ?? columns.find((column) => column === className);
  if (own === undefined || series === 'coarse') return own;
  return columns[columns.indexOf(own) + 1];
}
