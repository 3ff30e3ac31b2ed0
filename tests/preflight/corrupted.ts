/** Drawings with one thing wrong each, and the code that must name it. `also`: codes that may follow from the same fault. */
import { arc, box, boxOfLines, circle, dxf, entity, line, plate, polyline } from './dxf-script.ts';

export interface Corrupted {
  readonly what: string;
  readonly code: string;
  readonly text: string | Uint8Array;
  readonly also?: readonly string[];
  readonly thickness?: number;
}

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));
const ring = (r: number) => Array.from({ length: 9 }, (_, i): [number, number] => [r * Math.cos(i), r * Math.sin(i)]);
const spline = (knots: readonly number[], points: readonly (readonly [number, number])[], flags = 8): string =>
  entity('SPLINE', [
    [70, flags],
    [71, 3],
    [72, knots.length],
    [73, points.length],
    [74, 0],
    ...knots.map((knot) => [40, knot] as const),
    ...points.flatMap(([x, y]) => [[10, x] as const, [20, y] as const, [30, 0] as const]),
  ]);
const insert = (name: string, more: readonly (readonly [number, string | number])[] = []): string =>
  entity('INSERT', [[2, name], [10, 0], [20, 0], [30, 0], ...more]);
const [outline, holeA, holeB] = plate as [string, string, string];
const whole = dxf({ entities: plate });
/** A wheel drawn in inches: 6.25 over all, bore 2.25, holes 9/32. */
const inchWheel = [
  circle(0, 0, 3.125),
  circle(0, 0, 1.125),
  ...[0, 1, 2, 3].map((i) => circle(2 * Math.cos(i * 1.5708), 2 * Math.sin(i * 1.5708), 0.140625)),
];

/** Fifty and more kinds. */
export const corrupted: readonly Corrupted[] = [
  {
    what: 'a gap of 0.3 mm',
    code: 'dxf-open-contour',
    text: dxf({ entities: [...boxOfLines(0, 0, 80, 50).slice(0, 3), line(0, 50, 0, 0.3), holeA] }),
  },
  {
    what: 'one side missing',
    code: 'dxf-open-contour',
    text: dxf({ entities: [...boxOfLines(0, 0, 80, 50).slice(0, 3)] }),
  },
  {
    what: 'a polyline not closed',
    code: 'dxf-open-contour',
    text: dxf({
      entities: [
        polyline(
          [
            [0, 0],
            [80, 0],
            [80, 50],
            [0, 50],
          ],
          false,
        ),
        holeA,
      ],
    }),
  },
  {
    what: 'two halves on a bar of 2 mm in 3 mm sheet',
    code: 'dxf-neck',
    text: dxf({
      entities: [
        polyline([
          [0, 0],
          [30, 0],
          [30, 14],
          [50, 14],
          [50, 0],
          [80, 0],
          [80, 30],
          [50, 30],
          [50, 16],
          [30, 16],
          [30, 30],
          [0, 30],
        ]),
      ],
    }),
    thickness: 3,
    also: ['dxf-inside-corner'],
  },
  {
    what: 'a slit of 0.05 mm from the edge',
    code: 'dxf-slot',
    text: dxf({
      entities: [
        polyline([
          [0, 0],
          [80, 0],
          [80, 50],
          [40.05, 50],
          [40.05, 20],
          [40, 20],
          [40, 50],
          [0, 50],
        ]),
      ],
    }),
  },
  { what: 'a stray line', code: 'dxf-open-contour', text: dxf({ entities: [...plate, line(30, 30, 40, 35)] }) },
  {
    what: 'an arc that falls short of its line',
    code: 'dxf-open-contour',
    text: dxf({
      entities: [
        line(0, 0, 80, 0),
        line(80, 0, 80, 50),
        line(80, 50, 25, 50),
        arc(25, 25, 25, 90.5, 270),
        line(0, 0, 0, 0.0001),
      ],
    }),
    also: ['dxf-tiny-segments', 'dxf-branch', 'dxf-crossing', 'dxf-self-crossing'],
  },
  { what: 'a circle twice', code: 'dxf-duplicates', text: dxf({ entities: [...plate, holeA] }) },
  {
    what: 'an outline twice, the other way round',
    code: 'dxf-duplicates',
    text: dxf({
      entities: [
        ...plate,
        polyline([
          [0, 50],
          [80, 50],
          [80, 0],
          [0, 0],
        ]),
      ],
    }),
  },
  {
    what: 'a line twice',
    code: 'dxf-duplicates',
    text: dxf({ entities: [...boxOfLines(0, 0, 80, 50), line(80, 0, 0, 0), holeA] }),
  },
  {
    what: 'a circle twice, 2 um off',
    code: 'dxf-duplicates',
    text: dxf({ entities: [...plate, circle(20.002, 25, 5)] }),
  },
  {
    what: 'a line over part of another',
    code: 'dxf-overlap',
    text: dxf({ entities: [...boxOfLines(0, 0, 80, 50), line(10, 0, 40, 0), holeA] }),
    also: ['dxf-open-contour'],
  },
  {
    what: 'arcs of one circle that overlap',
    code: 'dxf-overlap',
    text: dxf({ entities: [outline, arc(20, 25, 5, 0, 200), arc(20, 25, 5, 180, 360)] }),
    also: ['dxf-open-contour'],
  },
  {
    what: 'an arc on a circle',
    code: 'dxf-overlap',
    text: dxf({ entities: [...plate, arc(20, 25, 5, 10, 80)] }),
    also: ['dxf-open-contour'],
  },
  {
    what: 'a polyline that runs back',
    code: 'dxf-overlap',
    text: dxf({
      entities: [
        polyline([
          [0, 0],
          [80, 0],
          [80, 50],
          [80, 80],
          [80, 50],
          [0, 50],
        ]),
      ],
    }),
    also: ['dxf-self-crossing'],
  },
  { what: 'a hole over the edge', code: 'dxf-crossing', text: dxf({ entities: [...plate, circle(80, 25, 5)] }) },
  { what: 'two holes that cross', code: 'dxf-crossing', text: dxf({ entities: [...plate, circle(24, 28, 5)] }) },
  { what: 'a hole that touches the edge', code: 'dxf-crossing', text: dxf({ entities: [outline, circle(20, 5, 5)] }) },
  {
    what: 'an outline like an eight',
    code: 'dxf-self-crossing',
    text: dxf({
      entities: [
        polyline([
          [0, 0],
          [80, 50],
          [80, 0],
          [0, 50],
        ]),
      ],
    }),
  },
  {
    what: 'a bulge across its own contour',
    code: 'dxf-self-crossing',
    text: dxf({
      entities: [
        polyline([
          [0, 0, -1.5],
          [80, 0],
          [80, 50],
          [0, 50],
        ]),
      ],
    }),
  },
  {
    what: 'a branch',
    code: 'dxf-branch',
    text: dxf({ entities: [...boxOfLines(0, 0, 80, 50), line(80, 50, 0, 0)] }),
    also: ['dxf-open-contour', 'dxf-crossing'],
  },
  { what: 'a line of no length', code: 'dxf-zero-length', text: dxf({ entities: [...plate, line(30, 30, 30, 30)] }) },
  {
    what: 'a corner twice in a row',
    code: 'dxf-zero-length',
    text: dxf({
      entities: [
        polyline([
          [0, 0],
          [80, 0],
          [80, 0],
          [80, 50],
          [0, 50],
        ]),
        holeA,
      ],
    }),
  },
  { what: 'a circle of radius 0', code: 'dxf-zero-length', text: dxf({ entities: [...plate, circle(40, 25, 0)] }) },
  {
    what: 'a tiny segment',
    code: 'dxf-tiny-segments',
    text: dxf({
      entities: [
        polyline([
          [0, 0],
          [80, 0],
          [80, 0.004],
          [80, 50],
          [0, 50],
        ]),
        holeA,
      ],
    }),
  },
  {
    what: 'a crumb of a line',
    code: 'dxf-tiny-segments',
    text: dxf({ entities: [...plate, line(30, 30, 30.003, 30)] }),
  },
  {
    what: 'text',
    code: 'dxf-text',
    text: dxf({
      entities: [
        ...plate,
        entity('TEXT', [
          [10, 5],
          [20, 5],
          [40, 3],
          [1, 'S235 3 mm'],
        ]),
      ],
    }),
  },
  {
    what: 'running text',
    code: 'dxf-text',
    text: dxf({
      entities: [
        ...plate,
        entity('MTEXT', [
          [10, 5],
          [20, 5],
          [40, 3],
          [1, 'note'],
        ]),
      ],
    }),
  },
  {
    what: 'a dimension',
    code: 'dxf-dimensions',
    text: dxf({
      entities: [
        ...plate,
        entity('DIMENSION', [
          [2, '*D0'],
          [10, 0],
          [20, 0],
          [70, 0],
        ]),
      ],
    }),
  },
  {
    what: 'a leader',
    code: 'dxf-dimensions',
    text: dxf({
      entities: [
        ...plate,
        entity('LEADER', [
          [10, 0],
          [20, 0],
        ]),
      ],
    }),
  },
  {
    what: 'a hatch',
    code: 'dxf-hatch',
    text: dxf({
      entities: [
        ...plate,
        entity('HATCH', [
          [2, 'ANSI31'],
          [91, 0],
        ]),
      ],
    }),
  },
  {
    what: 'a centre point',
    code: 'dxf-points',
    text: dxf({
      entities: [
        ...plate,
        entity('POINT', [
          [10, 20],
          [20, 25],
        ]),
      ],
    }),
  },
  {
    what: 'a picture',
    code: 'dxf-pictures',
    text: dxf({
      entities: [
        ...plate,
        entity('IMAGE', [
          [10, 0],
          [20, 0],
        ]),
      ],
    }),
  },
  {
    what: 'a construction line',
    code: 'dxf-construction',
    text: dxf({
      entities: [
        ...plate,
        entity('XLINE', [
          [10, 0],
          [20, 0],
          [11, 1],
          [21, 0],
        ]),
      ],
    }),
  },
  { what: 'a solid', code: 'dxf-solids', text: dxf({ entities: [...plate, entity('3DSOLID', [])] }) },
  {
    what: 'a face in space',
    code: 'dxf-solids',
    text: dxf({
      entities: [
        ...plate,
        entity('3DFACE', [
          [10, 0],
          [20, 0],
          [30, 0],
        ]),
      ],
    }),
  },
  {
    what: 'an entity nobody knows',
    code: 'dxf-unknown-entity',
    text: dxf({ entities: [...plate, entity('ACME_GADGET', [])] }),
  },
  {
    what: 'a splined hole',
    code: 'dxf-splines',
    text: dxf({
      entities: [
        outline,
        spline(
          [0, 0, 0, 0, 1, 2, 3, 3, 3, 3],
          [
            [20, 20],
            [35, 20],
            [35, 35],
            [10, 40],
            [5, 20],
            [20, 20],
          ],
        ),
      ],
    }),
  },
  {
    what: 'a spline by points only',
    code: 'dxf-spline-points',
    text: dxf({
      entities: [
        outline,
        entity('SPLINE', [
          [70, 1],
          [71, 3],
          [74, 3],
          [11, 20],
          [21, 20],
          [11, 30],
          [21, 20],
          [11, 25],
          [21, 30],
        ]),
      ],
    }),
  },
  {
    what: 'a spline with too few knots',
    code: 'dxf-bad-number',
    text: dxf({ entities: [...plate, spline([0, 0, 0, 0, 1, 1, 1], ring(5).slice(0, 5))] }),
  },
  {
    what: 'an ellipse',
    code: 'dxf-ellipses',
    text: dxf({
      entities: [
        outline,
        entity('ELLIPSE', [
          [10, 40],
          [20, 25],
          [30, 0],
          [11, 10],
          [21, 0],
          [31, 0],
          [40, 0.5],
          [41, 0],
          [42, 6.283185307179586],
        ]),
      ],
    }),
  },
  { what: 'a wide polyline', code: 'dxf-wide-lines', text: dxf({ entities: [box(0, 0, 80, 50, [[43, 0.5]]), holeA] }) },
  { what: 'all at height 5', code: 'dxf-height', text: dxf({ entities: [box(0, 0, 80, 50, [[38, 5]])] }) },
  {
    what: 'lines at two heights',
    code: 'dxf-not-flat',
    text: dxf({ entities: [box(0, 0, 80, 50), box(10, 10, 20, 20, [[38, 3]])] }),
  },
  {
    what: 'a line that climbs',
    code: 'dxf-not-flat',
    text: dxf({
      entities: [
        ...boxOfLines(0, 0, 80, 50).slice(0, 3),
        entity('LINE', [
          [10, 0],
          [20, 50],
          [30, 0],
          [11, 0],
          [21, 0],
          [31, 4],
        ]),
      ],
    }),
  },
  {
    what: 'a circle on edge',
    code: 'dxf-tilted',
    text: dxf({
      entities: [
        outline,
        circle(20, 25, 5, [
          [210, 1],
          [220, 0],
          [230, 0],
        ]),
      ],
    }),
  },
  {
    what: 'a circle from behind',
    code: 'dxf-mirrored-plane',
    text: dxf({
      entities: [
        outline,
        circle(-20, 25, 5, [
          [210, 0],
          [220, 0],
          [230, -1],
        ]),
      ],
    }),
  },
  {
    what: 'a mirrored block',
    code: 'dxf-mirrored-block',
    text: dxf({
      blocks: { part: plate },
      entities: [
        insert('part', [
          [41, -1],
          [42, 1],
        ]),
      ],
    }),
  },
  {
    what: 'a stretched block',
    code: 'dxf-stretched-block',
    text: dxf({
      blocks: { part: plate },
      entities: [
        insert('part', [
          [41, 2],
          [42, 1],
        ]),
      ],
    }),
    also: ['dxf-ellipses'],
  },
  { what: 'a block that is not there', code: 'dxf-missing-block', text: dxf({ entities: [...plate, insert('lost')] }) },
  {
    what: 'a block that holds itself',
    code: 'dxf-block-loop',
    text: dxf({ blocks: { snake: [insert('snake')] }, entities: [...plate, insert('snake')] }),
  },
  {
    what: 'a block of blocks without number',
    code: 'dxf-block-loop',
    text: dxf({
      blocks: {
        a: [circle(0, 0, 1)],
        b: [
          insert('a', [
            [70, 5000],
            [71, 5000],
            [44, 5],
            [45, 5],
          ]),
        ],
      },
      entities: [...plate, insert('b')],
    }),
  },
  {
    what: 'a frozen layer',
    code: 'dxf-hidden-layers',
    text: dxf({
      layers: [{ name: 'aids', flags: 1 }],
      entities: [...plate, circle(40, 25, 2, []).replace('8\n0\n', '8\naids\n')],
    }),
  },
  {
    what: 'a layer that is off',
    code: 'dxf-hidden-layers',
    text: dxf({
      layers: [{ name: 'aids', colour: -7 }],
      entities: [...plate, circle(40, 25, 2).replace('8\n0\n', '8\naids\n')],
    }),
  },
  {
    what: 'a layer that is not plotted',
    code: 'dxf-hidden-layers',
    text: dxf({
      layers: [{ name: 'aids', plot: 0 }],
      entities: [...plate, circle(40, 25, 2).replace('8\n0\n', '8\naids\n')],
    }),
  },
  {
    what: 'a frame in paper space',
    code: 'dxf-paper-space',
    text: dxf({ entities: [...plate, box(-100, -100, 297, 210, [[67, 1]])] }),
  },
  {
    what: 'a part in a hole',
    code: 'dxf-island',
    text: dxf({ entities: [outline, box(10, 10, 40, 30), circle(30, 25, 8)] }),
  },
  { what: 'a hole beside the part', code: 'dxf-hole-outside', text: dxf({ entities: [...plate, circle(100, 25, 4)] }) },
  { what: 'two parts', code: 'dxf-several-parts', text: dxf({ entities: [...plate, box(100, 0, 60, 50)] }) },
  {
    what: 'a coordinate that is no number',
    code: 'dxf-bad-number',
    text: dxf({ entities: [...plate, line(0, 0, 1, 1).replace('11\n1\n', '11\nNaN\n')] }),
  },
  {
    what: 'a decimal comma',
    code: 'dxf-bad-number',
    text: dxf({ entities: [outline, circle(20, 25, 5).replace('40\n5\n', '40\n5,5\n')] }),
  },
  {
    what: 'a radius that is missing',
    code: 'dxf-bad-number',
    text: dxf({ entities: [outline, circle(20, 25, 5).replace('40\n5\n', '')] }),
  },
  {
    what: 'a number beyond all bounds',
    code: 'dxf-bad-number',
    text: dxf({ entities: [...plate, line(0, 0, 1e300, 0)] }),
  },
  {
    what: 'a bulge over no distance',
    code: 'dxf-bad-bulge',
    text: dxf({
      entities: [
        outline,
        polyline([
          [20, 25, 1],
          [20, 25, 1],
        ]),
      ],
    }),
    also: ['dxf-zero-length'],
  },
  {
    what: 'a part a kilometre away',
    code: 'dxf-far-away',
    text: dxf({ entities: [box(1e6, 1e6, 80, 50), circle(1e6 + 20, 1e6 + 25, 5)] }),
  },
  { what: 'no unit', code: 'dxf-units', text: dxf({ units: null, entities: plate }) },
  { what: 'a unit that no part has', code: 'dxf-units', text: dxf({ units: 20, entities: plate }) },
  {
    what: 'metres',
    code: 'dxf-units',
    text: dxf({ units: 6, entities: [box(0, 0, 0.08, 0.05), circle(0.02, 0.025, 0.005)] }),
  },
  {
    what: 'two statements of the unit',
    code: 'dxf-units-disagree',
    text: dxf({
      header: [
        [9, '$MEASUREMENT'],
        [70, 0],
      ],
      entities: plate,
    }),
  },
  {
    what: 'inches declared as mm',
    code: 'dxf-inch-read-as-mm',
    text: dxf({ entities: inchWheel }),
    also: ['dxf-part-small', 'dxf-hole-size'],
  },
  {
    what: 'inches without a unit',
    code: 'dxf-inch-read-as-mm',
    text: dxf({ units: null, entities: inchWheel }),
    also: ['dxf-units', 'dxf-part-small', 'dxf-hole-size'],
  },
  {
    what: 'mm figures turned into inches, declared as mm',
    code: 'dxf-inch-read-as-mm',
    text: dxf({ entities: [circle(0, 0, 2.3622), circle(0, 0, 0.9843), circle(1.5, 0, 0.1299)] }),
    also: ['dxf-part-small', 'dxf-hole-size'],
  },
  {
    what: 'mm declared as inches',
    code: 'dxf-mm-read-as-inch',
    text: dxf({ units: 1, entities: [circle(0, 0, 80), circle(0, 0, 25), circle(50, 0, 3.3)] }),
    also: ['dxf-part-large'],
  },
  {
    what: 'converted twice',
    code: 'dxf-scale',
    text: dxf({ entities: [circle(0, 0, 2032), circle(0, 0, 635), circle(1270, 0, 3.3 * 25.4)] }),
    also: ['dxf-part-large'],
  },
  {
    what: 'smaller than a millimetre',
    code: 'dxf-scale',
    text: dxf({ entities: [box(0, 0, 0.08, 0.05)] }),
    also: ['dxf-part-small'],
  },
  {
    what: 'a hole too small for its sheet',
    code: 'dxf-hole-size',
    thickness: 5,
    text: dxf({ entities: [outline, circle(40, 25, 1)] }),
  },
  {
    what: 'a web too thin for its sheet',
    code: 'dxf-web',
    thickness: 3,
    text: dxf({ entities: [outline, circle(20, 6.5, 5)] }),
  },
  {
    what: 'an edge drawn as two',
    code: 'dxf-web',
    text: dxf({ entities: [outline, circle(40, 25, 10), circle(40, 25, 9.95)] }),
    also: ['dxf-island'],
  },
  {
    what: 'a sharp inside corner',
    code: 'dxf-inside-corner',
    thickness: 3,
    text: dxf({ entities: [outline, box(30, 15, 20, 20)] }),
  },
  { what: 'a part too small', code: 'dxf-part-small', thickness: 3, text: dxf({ entities: [box(0, 0, 10, 40)] }) },
  { what: 'a part too large', code: 'dxf-part-large', text: dxf({ entities: [box(0, 0, 3200, 900)] }) },
  { what: 'nothing drawn', code: 'dxf-nothing-to-cut', text: dxf({ entities: [] }) },
  {
    what: 'text alone',
    code: 'dxf-nothing-to-cut',
    text: dxf({
      entities: [
        entity('TEXT', [
          [10, 0],
          [20, 0],
          [40, 5],
          [1, 'plate'],
        ]),
      ],
    }),
    also: ['dxf-text'],
  },
  {
    what: 'cut off in the middle',
    code: 'dxf-truncated',
    text: dxf({ entities: [...plate, holeB.slice(0, 30)], end: '' }),
    also: ['dxf-bad-number', 'dxf-duplicates'],
  },
  { what: 'cut off before its end mark', code: 'dxf-truncated', text: whole.replace('0\nEOF\n', '') },
  { what: 'an empty file', code: 'dxf-empty-file', text: '' },
  { what: 'a binary DXF', code: 'dxf-binary', text: bytes('AutoCAD Binary DXF\r\n\x1a\0\0\0SECTION\0') },
  { what: 'a DWG renamed', code: 'dxf-is-dwg', text: bytes('AC1027\0\0\0\0\0\x01\x00\x00') },
  { what: 'a PDF renamed', code: 'dxf-other-format', text: bytes('%PDF-1.7\n') },
  {
    what: 'a drawing in two-byte characters',
    code: 'dxf-other-format',
    text: bytes(`\xff\xfe${[...whole].map((c) => `${c}\0`).join('')}`),
  },
  { what: 'a line lost in the middle', code: 'dxf-damaged', text: whole.replace('\nCIRCLE\n', '\n') },
  { what: 'a letter to the shop', code: 'dxf-damaged', text: 'Dear shop,\nplease cut me a plate.\n' },
];
