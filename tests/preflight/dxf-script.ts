/** DXF files written line by line, so that a test can say exactly what is wrong with each. */

export type Group = readonly [code: number, value: string | number];

const pairs = (groups: readonly Group[]): string => groups.map(([code, value]) => `${code}\n${value}\n`).join('');

export const line = (x1: number, y1: number, x2: number, y2: number, more: readonly Group[] = []): string =>
  pairs([[0, 'LINE'], [8, '0'], [10, x1], [20, y1], [30, 0], [11, x2], [21, y2], [31, 0], ...more]);

export const circle = (x: number, y: number, r: number, more: readonly Group[] = []): string =>
  pairs([[0, 'CIRCLE'], [8, '0'], [10, x], [20, y], [30, 0], [40, r], ...more]);

export const arc = (x: number, y: number, r: number, from: number, to: number, more: readonly Group[] = []): string =>
  pairs([[0, 'ARC'], [8, '0'], [10, x], [20, y], [30, 0], [40, r], [50, from], [51, to], ...more]);

export type Corner = readonly [x: number, y: number, bulge?: number];

export const polyline = (corners: readonly Corner[], isClosed = true, more: readonly Group[] = []): string =>
  pairs([
    [0, 'LWPOLYLINE'],
    [8, '0'],
    [90, corners.length],
    [70, isClosed ? 1 : 0],
    ...more,
    ...corners.flatMap(([x, y, bulge]): Group[] => [
      [10, x],
      [20, y],
      ...(bulge === undefined ? [] : [[42, bulge] as const]),
    ]),
  ]);

export const entity = (type: string, groups: readonly Group[] = []): string => pairs([[0, type], [8, '0'], ...groups]);

/** A rectangle as one closed polyline, and as four lines. */
export const box = (x: number, y: number, w: number, h: number, more: readonly Group[] = []): string =>
  polyline(
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ],
    true,
    more,
  );

export const boxOfLines = (x: number, y: number, w: number, h: number): string[] => [
  line(x, y, x + w, y),
  line(x + w, y, x + w, y + h),
  line(x + w, y + h, x, y + h),
  line(x, y + h, x, y),
];

export interface Script {
  /** $INSUNITS; null to leave it out. */
  readonly units?: number | null;
  readonly header?: readonly Group[];
  readonly layers?: readonly {
    readonly name: string;
    readonly flags?: number;
    readonly colour?: number;
    readonly plot?: number;
  }[];
  readonly blocks?: Readonly<Record<string, readonly string[]>>;
  readonly entities: readonly string[];
  /** What stands after the entities; by default the end of the section and of the file. */
  readonly end?: string;
}

/** The whole file. */
export function dxf({ units = 4, header = [], layers = [], blocks = {}, entities, end }: Script): string {
  const unit: Group[] =
    units === null
      ? []
      : [
          [9, '$INSUNITS'],
          [70, units],
        ];
  const layer = layers.map(({ name, flags = 0, colour = 7, plot = 1 }) =>
    pairs([
      [0, 'LAYER'],
      [2, name],
      [70, flags],
      [62, colour],
      [6, 'CONTINUOUS'],
      [290, plot],
    ]),
  );
  const block = Object.entries(blocks).map(
    ([name, list]) =>
      pairs([
        [0, 'BLOCK'],
        [8, '0'],
        [2, name],
        [70, 0],
        [10, 0],
        [20, 0],
        [30, 0],
      ]) +
      list.join('') +
      pairs([
        [0, 'ENDBLK'],
        [8, '0'],
      ]),
  );
  return [
    pairs([[0, 'SECTION'], [2, 'HEADER'], [9, '$ACADVER'], [1, 'AC1015'], ...unit, ...header, [0, 'ENDSEC']]),
    pairs([
      [0, 'SECTION'],
      [2, 'TABLES'],
      [0, 'TABLE'],
      [2, 'LAYER'],
      [70, layers.length],
    ]),
    ...layer,
    pairs([
      [0, 'ENDTAB'],
      [0, 'ENDSEC'],
      [0, 'SECTION'],
      [2, 'BLOCKS'],
    ]),
    ...block,
    pairs([
      [0, 'ENDSEC'],
      [0, 'SECTION'],
      [2, 'ENTITIES'],
    ]),
    ...entities,
    end ??
      pairs([
        [0, 'ENDSEC'],
        [0, 'EOF'],
      ]),
  ].join('');
}

/** A sound plate, 80 x 50 mm with two round holes: what each corrupted file is made from. */
export const plate: readonly string[] = [box(0, 0, 80, 50), circle(20, 25, 5), circle(60, 25, 5)];
