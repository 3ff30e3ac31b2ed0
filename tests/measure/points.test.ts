/** Points from tables and drawings; drawings are written by ezdxf, which shares no code with the reader. */
import { execFileSync, spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { pointsFromCsv } from '../../src/measure/points-from-csv.ts';
import { holesFromDxf } from '../../src/measure/points-from-dxf.ts';
import { must } from '../../src/standards/table.ts';

describe('a table of points', () => {
  const points = [
    { x: 42, y: 0 },
    { x: -21.5, y: 36.37 },
  ];

  it.each([
    ['commas', '42,0\n-21.5,36.37'],
    ['names, comments and empty lines', '# from the read-out\nx,y\n42,0\n\n-21.5,36.37\n'],
    ['columns in another order', 'hole,Y (mm),X (mm)\n1,0,42\n2,36.37,-21.5'],
    ['semicolons with decimal commas', '42;0\r\n-21,5;36,37'],
    ['tabs', '42\t0\n-21.5\t36.37'],
    ['spaces', '42 0\n-21.5   36.37'],
    ['a byte order mark and units', '\uFEFF42 mm,0\n-21.5,36.37 mm'],
  ])('is read with %s', (_, text) => {
    expect(must(pointsFromCsv(text, 'mm'))).toEqual(points);
  });

  it('is read in inches', () => {
    expect(must(pointsFromCsv('1,0.5', 'in'))).toEqual([{ x: 25.4, y: 12.7 }]);
  });

  it.each([
    ['', /no points/],
    ['x,y', /no points/],
    ['42,0\n21', /Line 2 has no y/],
    ['42,0\n21,up', /Line 2: "up" does not start with a number/],
    ['a,b\n1,2', /two of them must be x and y/],
    [Array.from({ length: 1001 }, () => '1,2').join('\n'), /1001 rows/],
  ])('answers %j with a sentence', (text, why) => {
    const answer = pointsFromCsv(text, 'mm');
    expect(answer.ok ? '' : answer.why).toMatch(why);
  });
});

/** Debian keeps ezdxf beside its own python, which need not be the first one found. */
const python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import ezdxf']).status === 0) ?? '';

function drawn(body: string, units = 4): string {
  if (python === '') throw new Error('python3-ezdxf is missing: install the Debian package of that name.');
  const script = `import ezdxf, io, sys
doc = ezdxf.new("R2010"); doc.units = ${units}
m = doc.modelspace()
${body}
s = io.StringIO(); doc.write(s); sys.stdout.write(s.getvalue())`;
  return execFileSync(python, ['-c', script], { encoding: 'utf8' });
}

describe('a drawing', () => {
  it('gives the circles that most are of, and tells what it left out', () => {
    const text = drawn(
      'm.add_circle((0,0), 50)\nfor x, y in [(42,0),(0,42),(-42,0),(0,-42)]: m.add_circle((x,y), 4.05)\nm.add_line((0,0),(1,1))',
    );
    const { holes, notes } = must(holesFromDxf(text, 'mm'));
    expect(holes).toEqual(
      [
        [42, 0],
        [0, 42],
        [-42, 0],
        [0, -42],
      ].map(([x, y]) => ({ x, y, diameter: 8.1 })),
    );
    expect(notes.join(' ')).toMatch(/Left out: 1 LINE.*4 of 8\.1 mm and 1 of 100 mm/);
  });

  it('takes the diameter that was asked for, and inches as the drawing says', () => {
    const body = 'for x in (1, 2, 3): m.add_circle((x, 0), 0.25)\nfor x in (1, 2, 3): m.add_circle((x, 1), 0.125)';
    const text = drawn(body, 1);
    const which = holesFromDxf(text, 'mm');
    expect(which.ok ? '' : which.why).toMatch(/3 of 12\.7 mm and 3 of 6\.35 mm.*--hole/);
    expect(must(holesFromDxf(text, 'mm', 6.35)).holes[0]).toEqual({ x: 25.4, y: 25.4, diameter: 6.35 });
    const none = holesFromDxf(text, 'mm', 9);
    expect(none.ok ? '' : none.why).toMatch(/No circle in this DXF is 9 mm across/);
  });

  it('turns a mirrored plane back, and takes points when there are no circles', () => {
    expect(
      must(holesFromDxf(drawn('for x in (5, 9): m.add_circle((x, 2), 3, dxfattribs={"extrusion": (0,0,-1)})'), 'mm'))
        .holes,
    ).toEqual([
      { x: -5, y: 2, diameter: 6 },
      { x: -9, y: 2, diameter: 6 },
    ]);
    expect(must(holesFromDxf(drawn('m.add_point((1,2))\nm.add_point((3,4))'), 'mm')).holes).toEqual([
      { x: 1, y: 2, diameter: 0 },
      { x: 3, y: 4, diameter: 0 },
    ]);
  });

  it.each([
    ['AutoCAD Binary DXF\r\n', /binary DXF/],
    ['hello\nworld\n', /should be a code number and is "hello"/],
    ['', /should be a code number|empty/],
    ['0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n', /no ENTITIES section/],
    ['0\nSECTION\n2\nENTITIES\n0\nLINE\n0\nENDSEC\n0\nEOF\n', /no circles and no points.*1 LINE/],
    ['0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n10\nabc\n20\n1\n40\n2\n0\nENDSEC\n0\nEOF\n', /no proper centre or radius/],
  ])('answers %j with a sentence', (text, why) => {
    const answer = holesFromDxf(text, 'mm');
    expect(answer.ok ? '' : answer.why).toMatch(why);
  });
});
