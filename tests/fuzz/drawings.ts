/** Tables of points and drawings by chance: sound ones, odd ones, and ones in which nothing fits. */
import type { Chance } from './chance.ts';

const odd: readonly string[] = [
  '',
  '-0',
  '1e308',
  '-1e308',
  '1e999',
  '5e-324',
  'NaN',
  '0x10',
  '1,5',
  '9007199254740993',
  '\u0000',
  '\u202e',
  '\u001b[2J',
  '12 in',
  '1/3',
  '"',
  'ABC',
  '12..5',
  '--3',
  '\u00d810',
];

function number(chance: Chance): string {
  const way = chance.share();
  if (way < 0.06) return chance.pick(odd);
  if (way < 0.3) return String(chance.whole(-3, 120));
  return String(Number((200 * (chance.share() - 0.5)).toPrecision(chance.whole(1, 12))));
}

/** A table of points: mostly two columns, with names, blanks and slips. */
export function pointTable(chance: Chance): string {
  const between = chance.pick([',', ';', '\t', ' ', ', ', '  ']);
  const columns = chance.pick([2, 2, 2, 2, 3, 1, 6]);
  const rows = chance.pick([0, 1, 2, 3, 4, 5, 6, 8, 12, 60, 1100]);
  const head = chance.pick([
    '',
    '',
    'x,y\n',
    'X [mm];Y [mm]\n',
    '# points\n',
    'no,x,y\n',
    'y\tx\n',
    'a,b\n',
    '\uFEFFx,y\n',
  ]);
  const end = chance.pick(['\n', '\n', '\r\n', '\r']);
  const circle = chance.happens(0.5) ? chance.whole(20, 300) / 2 : null;
  const lines = Array.from({ length: rows }, (_, row) => {
    const turn = (2 * Math.PI * row) / rows;
    const cells = Array.from({ length: columns }, (_, column) =>
      circle !== null && !chance.happens(0.05)
        ? (circle * (column === 0 ? Math.cos(turn) : Math.sin(turn))).toFixed(2)
        : number(chance),
    );
    return cells.join(between);
  });
  return head + lines.join(end) + end;
}

const shapes: Readonly<Record<string, readonly number[]>> = {
  LINE: [10, 20, 11, 21],
  CIRCLE: [10, 20, 40],
  ARC: [10, 20, 40, 50, 51],
  POINT: [10, 20],
  LWPOLYLINE: [90, 70, 10, 20, 42, 10, 20, 42, 10, 20],
  POLYLINE: [66, 70],
  VERTEX: [10, 20, 42],
  SEQEND: [],
  ELLIPSE: [10, 20, 11, 21, 40, 41, 42],
  SPLINE: [70, 71, 72, 73, 40, 40, 40, 40, 40, 40, 40, 40, 10, 20, 10, 20, 10, 20, 10, 20],
  INSERT: [2, 10, 20, 41, 42, 50, 70, 71, 44, 45],
  HATCH: [91, 70],
  TEXT: [10, 20, 40, 1],
  'ÄÖ\u0007': [10],
};

const small: Readonly<Record<number, readonly string[]>> = {
  2: ['A', 'B', '*Model_Space', 'missing'],
  66: ['1', '0'],
  70: ['0', '1', '4', '8', '9', '128', '-1'],
  71: ['3', '2', '1', '0', '9999'],
  72: ['8', '0', '99999999'],
  73: ['4', '0', '-4'],
  90: ['3', '2', '0', '99999999', '-1'],
  91: ['1', '99999999'],
  44: ['10'],
  45: ['10'],
};

function pair(code: number, value: string): string {
  return `${String(code).padStart(3)}\n${value}\n`;
}

function entity(chance: Chance): string {
  const kind = chance.pick(Object.keys(shapes));
  const groups = (shapes[kind] ?? []).filter(() => !chance.happens(0.03));
  const layer = chance.happens(0.8) ? pair(8, chance.pick(['0', 'CUT', '\u001b]0;x', '<script>'])) : '';
  const extra = chance.happens(0.1)
    ? pair(chance.pick([67, 230, 62, 60, 39, 48, 999, 1000, -1, 70000]), number(chance))
    : '';
  const told = groups.map((code) =>
    pair(code, chance.happens(0.9) && small[code] ? chance.pick(small[code]) : number(chance)),
  );
  return pair(0, kind) + layer + told.join('') + extra;
}

/** A drawing in the ASCII form of DXF, with blocks that may hold themselves. */
export function drawing(chance: Chance): string {
  const many = (most: number) => Array.from({ length: chance.whole(0, most) }, () => entity(chance)).join('');
  const section = (name: string, body: string) =>
    pair(0, 'SECTION') + pair(2, name) + body + (chance.happens(0.97) ? pair(0, 'ENDSEC') : '');
  const unit = chance.happens(0.6)
    ? pair(9, '$INSUNITS') + pair(70, chance.pick(['0', '1', '4', '5', '6', '99', 'x', '-1']))
    : '';
  const block = (name: string) =>
    pair(0, 'BLOCK') +
    pair(2, name) +
    pair(10, number(chance)) +
    pair(20, number(chance)) +
    many(4) +
    pair(0, 'ENDBLK');
  const text = [
    chance.happens(0.7) ? section('HEADER', unit) : '',
    chance.happens(0.4) ? section('BLOCKS', block('A') + block('B')) : '',
    section('ENTITIES', many(chance.pick([3, 12, 40]))),
    pair(0, 'EOF'),
  ].join('');
  return chance.happens(0.2) ? text.replaceAll('\n', '\r\n') : text;
}
