import { describe, expect, it } from 'vitest';
import { formatErrors, readJob } from '../../src/job/read.ts';
import { goodJob, spoil, unmark } from './sample.ts';

/** [piece of the good job, what is typed instead with the place marked, key path, phrase of the sentence] */
const slips: readonly (readonly [string, string, string, RegExp])[] = [
  // The head of the file.
  ['job: 1', 'job: ‸2', 'job', /reads job: 1; got 2/],
  ['job: 1', 'job: ‸one', 'job', /got one/],
  ['title: Test joint', `title: ‸${'x'.repeat(81)}`, 'title', /at most 80 characters; got 81/],
  ['title: Test joint', 'title: ‸""', 'title', /empty/],
  ['title: Test joint', 'title: ‸[a, b]', 'title', /Must be text; got a list of 2/],
  ['title: Test joint', 'title: ‸"a\\nb"', 'title', /cannot be printed/],
  ['title: Test joint', 'title: Test joint\n‸title: Again', 'title', /written twice/],
  ['units: mm', 'units: ‸cm', 'units', /Must be mm or in; got cm/],
  ['units: mm', '‸unit: mm', 'unit', /Did you mean units\?/],
  ['units: mm', '‸__proto__: 1', '__proto__', /cannot be a key/],
  ['units: mm', '‸constructor: 1', 'constructor', /cannot be a key/],
  ['units: mm', '‸brackets: {}', 'brackets', /Did you mean bracket\?/],
  ['units: mm', '‸tonewheel: {}', 'tonewheel', /here it is called wheel/],
  // Duty.
  ['480 N.m', '‸480 Nn', 'duty.torque', /Did you mean N\.m\?/],
  ['480 N.m', '‸-480', 'duty.torque', /more than 0 and at most 200000 N\.m; got -480/],
  ['480 N.m', '‸0', 'duty.torque', /more than 0/],
  ['480 N.m', '‸0.48', 'duty.torque', /kilonewton metres write 0\.48 kN\.m/],
  ['480 N.m', '‸.nan', 'duty.torque', /not a number/],
  ['480 N.m', '‸1e9', 'duty.torque', /at most 200000 N\.m/],
  ['4200 rpm', '‸4.2', 'duty.speed', /for 4200 rpm write 4200/],
  ['4200 rpm', '‸4200 mm', 'duty.speed', /the unit of a length/],
  ['4200 rpm', '‸.inf', 'duty.speed', /infinite/],
  ['4200 rpm', '‸200000', 'duty.speed', /at most 100000 rpm/],
  ['speed: 4200 rpm', '‸rpm: 4200', 'duty.rpm', /here it is called speed/],
  ['speed: 4200 rpm', 'speed: 4200, grade: ‸G17', 'duty.grade', /Listed: G 4000/],
  ['speed: 4200 rpm', 'speed: ‸0x1068', 'duty.speed', /0x1068 is not a decimal number/],
  ['duty: { torque: 480 N.m, speed: 4200 rpm }', 'duty: ‸480', 'duty', /has keys of its own/],
  ['duty: { torque: 480 N.m, speed: 4200 rpm }', '‸duty:', 'duty', /no value/],
  // A flange.
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸4.0', 'driving.outside', /If that is inches, write 4 in/],
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸-120', 'driving.outside', /20 to 700 mm; got -120/],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: ‸120,5',
    'driving.outside',
    /Use a point for decimals, not a comma: 120\.5/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: ‸120 inches',
    'driving.outside',
    /20 to 700 mm; got 120 inches, which is 3048 mm/,
  ],
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸120 ± 0.1 ± 2', 'driving.outside', /doubt as a key of its own/],
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸120 ±', 'driving.outside', /doubt as a key of its own/],
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸true', 'driving.outside', /Expected a length/],
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸80', 'driving.holes.circle', /break out of the rim/],
  ['driving:\n  outside: 120', 'driving:\n  ‸outside:', 'driving.outside', /no value/],
  ['driving:\n  outside: 120', 'driving:\n  outside: 120\n  ‸od: 120', 'driving.od', /here it is called outside/],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: 120\n  ‸circle: 84',
    'driving.circle',
    /belongs under driving\.holes/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: 120\n  bore: ‸130',
    'driving.bore',
    /not smaller than the outside/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: 120\n  material: ‸S356',
    'driving.material',
    /did you mean S355\?/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: 120\n  behind: ‸lots',
    'driving.behind',
    /does not start with a number/,
  ],
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸*other', 'driving.outside', /names nothing/],
  ['driving:\n  outside: 120', 'driving:\n  outside: !!float ‸120', 'driving.outside', /tags/],
  // Measured values.
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: [120, 120.02, ‸102]',
    'driving.outside[2]',
    /102 mm \(number 3 of 3\) stands apart/,
  ],
  ['driving:\n  outside: 120', 'driving:\n  outside: [‸120, 121]', 'driving.outside[0]', /120 and 121 mm disagree/],
  ['driving:\n  outside: 120', 'driving:\n  outside: ‸[]', 'driving.outside', /1 to 50 items/],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: { value: 120, instrument: ‸calliper }',
    'driving.outside.instrument',
    /Did you mean caliper\?/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: { value: 120, ‸douht: 0.1 }',
    'driving.outside.douht',
    /Did you mean doubt\?/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: { value: 120, doubt: ‸-0.1 }',
    'driving.outside.doubt',
    /0 to 10 mm/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: { value: ‸125, readings: [120, 120.02] }',
    'driving.outside.value',
    /not among its own readings/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: ‸{ instrument: ruler }',
    'driving.outside',
    /needs value: or readings:/,
  ],
  [
    'driving:\n  outside: 120',
    'driving:\n  outside: { value: 120, proven: ‸yes }',
    'driving.outside.proven',
    /Write true for yes/,
  ],
  // Register.
  ['gender: male', 'gender: ‸mle', 'driving.register.gender', /Did you mean male\?/],
  ['diameter: 57,', 'diameter: 57,‸5,', 'driving.register.5', /Decimals take a point/],
  ['diameter: 57,', 'diameter: ‸157,', 'driving.register.diameter', /smaller than the outside/],
  ['fit: h7', 'fit: ‸H7', 'driving.register.fit', /write small letters, such as h7/],
  ['fit: h7', 'fit: ‸h77', 'driving.register.fit', /grades are/],
  ['fit: h7', 'fit: ‸tight', 'driving.register.fit', /not a tolerance zone/],
  [
    'register: { gender: female, diameter: 75, depth: 2.5 }',
    'register: { gender: female, diameter: 75, depth: ‸12 }',
    'driven.register.depth',
    /goes through a flange 12 mm thick/,
  ],
  [
    'register: { gender: female, diameter: 75, depth: 2.5 }',
    '‸register: { gender: female, diameter: 75 }',
    'driven.register.depth',
    /depth rod/,
  ],
  [
    'register: { gender: female, diameter: 75, depth: 2.5 }',
    'register: ‸nome',
    'driven.register',
    /none, or keys of its own; got nome/,
  ],
  [
    'register: { gender: female, diameter: 75, depth: 2.5 }',
    'bore: 50\n  register: { gender: female, diameter: ‸37.5, depth: 2.5 }',
    'driven.register.diameter',
    /75 \/ 2 = 37\.5: did you type the radius\?/,
  ],
  ['depth: 2.3,', 'depth: ‸0.09,', 'driving.register.depth', /If that is inches, write 0\.09 in/],
  // Holes.
  ['count: 6', 'count: ‸6.5', 'driving.holes.count', /whole number, 2 to 72; got 6\.5/],
  ['count: 6', 'count: ‸1', 'driving.holes.count', /2 to 72; got 1/],
  ['count: 6', 'count: ‸six', 'driving.holes.count', /whole number/],
  ['count: 6, circle: 84', 'count: 6, circle: 84, chord: ‸42', 'driving.holes.chord', /circle or chord, not both/],
  ['count: 6, circle: 84', 'count: 6, ‸pcd: 84', 'driving.holes.pcd', /here it is called circle/],
  ['count: 6, circle: 84', 'count: 6, ‸circel: 84', 'driving.holes.circel', /Did you mean circle\?/],
  [
    'count: 6, circle: 84',
    'count: 6, circle: ‸42',
    'driving.holes.circle',
    /radius of the circle\? Twice 42 mm is 84 mm/,
  ],
  ['count: 6, circle: 84', 'count: 48, circle: ‸84', 'driving.holes.circle', /Neighbouring holes overlap/],
  ['count: 6, circle: 84', 'count: 6, circle: 84, at: ‸[[42, 0]]', 'driving.holes.at', /2 to 72 items; got 1/],
  ['count: 6, circle: 84', 'at: [[42, 0], ‸[42]]', 'driving.holes.at[1]', /a pair, written \[x, y\]/],
  ['count: 6, circle: 84', 'at: [[42, 0], [42, ‸up]]', 'driving.holes.at[1][1]', /does not start with a number/],
  ['count: 6, circle: 84', 'at: [[42, 0], [-42, 0], ‸[42, 0]]', 'driving.holes.at[2]', /stand on one place/],
  ['count: 6, circle: 84', 'at: [[42, 0], ‸[-72, 0]]', 'driving.holes.at[1]', /break out of the rim/],
  [
    'count: 6, circle: 84',
    'at: [[42, 0], [-42, 0]], circle: ‸84',
    'driving.holes.circle',
    /already places every hole; delete circle/,
  ],
  ['count: 6, circle: 84', 'count: 6, angles: ‸[0, 90], circle: 84', 'driving.holes.angles', /2 angles for 6 holes/],
  ['count: 6, circle: 84', 'angles: [0, 90, ‸400], circle: 84', 'driving.holes.angles[2]', /-360 to 360 deg/],
  ['count: 6, circle: 84', 'count: 6, circle: 84, first: ‸one', 'driving.holes.first', /does not start with a number/],
  ['diameter: 8.1', 'diameter: 8.1, thread: ‸M8', 'driving.holes.thread', /not both/],
  ['diameter: 8.1', 'diameter: 8.1, depth: ‸10', 'driving.holes.depth', /is for tapped holes/],
  ['diameter: 8.1', 'diameter: ‸0', 'driving.holes.diameter', /2 to 80 mm; got 0/],
  ['thread: M10', 'thread: ‸M11', 'driven.holes.thread', /There is no M11 in ISO 261/],
  ['thread: M10', 'thread: ‸M10x0.9', 'driven.holes.thread', /M10 is M10x1\.5/],
  ['thread: M10', 'thread: ‸coarse', 'driven.holes.thread', /not a thread/],
  ['depth: 14', 'through: ‸no', 'driven.holes.through', /Write false for no/],
  // Adapter.
  ['thickness: auto', 'thickness: ‸-4', 'adapter.thickness', /3 to 300 mm; got -4/],
  ['thickness: auto', 'thickness: ‸automatic', 'adapter.thickness', /write auto, or a length/],
  ['thickness: auto', 'thickness: ‸aut', 'adapter.thickness', /Did you mean auto\?/],
  ['thickness: auto', 'thickness: 20, chamfer: ‸10', 'adapter.chamfer', /leave no rim/],
  ['outside: 130', 'outside: ‸65', 'adapter.outside', /Did you type the radius\? Twice 65 is 130 mm/],
  ['outside: 130', 'outside: 130, bore: ‸140', 'adapter.bore', /not smaller than the outside/],
  ['outside: 130', 'outside: 130, flats: ‸140', 'adapter.flats', /nearer together/],
  [
    'outside: 130',
    'outside: 130, setup: ‸by eye',
    'adapter.setup',
    /one chucking, indicated, edge finder or three jaw/,
  ],
  ['outside: 130', 'outside: 130, driving: { class: ‸9.9 }', 'adapter.driving.class', /8\.8, 10\.9 or 12\.9; got 9\.9/],
  [
    'outside: 130',
    'outside: 130, driving: { fastening: ‸into flnge }',
    'adapter.driving.fastening',
    /Did you mean into_flange\?/,
  ],
  ['outside: 130', 'outside: 130, driving: { washer: ‸maybe }', 'adapter.driving.washer', /true or false/],
  [
    'outside: 130',
    'outside: 130, driving: { register: { diameter: ‸28.5 } }',
    'adapter.driving.register.diameter',
    /57 \/ 2 = 28\.5: did you type the radius\?/,
  ],
  [
    'outside: 130',
    'outside: 130, driven: { register: { ‸dia: 75 } }',
    'adapter.driven.register.dia',
    /here it is called diameter/,
  ],
  ['material: S355', 'material: ‸unobtainium', 'adapter.material', /There is no material "unobtainium"/],
  ['adapter: {', '‸adaptor: {', 'adaptor', /Did you mean adapter\?/],
  ['thread: M10, depth: 14', 'thread: M10, depth: ‸140', 'driven.holes.depth', /14 diameters.*Was 14 mm meant/],
  // Wheel.
  ['teeth: 36', 'teeth: ‸10000', 'wheel.teeth', /3 to 3600; got 10000/],
  ['teeth: 36', 'teeth: ‸2000', 'wheel.teeth', /stand 0\.267 mm apart/],
  ['teeth: 36', 'teeth: 36\n  missing: ‸36', 'wheel.missing', /at least one must be left/],
  ['  height: 5', '  root: 160\n  height: ‸5', 'wheel.height', /root or height, not both/],
  ['  height: 5', '  root: ‸170', 'wheel.root', /must be smaller than the outside/],
  ['  height: 5', '  root: ‸80', 'wheel.root', /did you type the radius\? Twice 80 is 160 mm/],
  ['  height: 5', '  height: ‸84', 'wheel.height', /leave no wheel/],
  ['  height: 5', '  height: 5\n  ratio: ‸5', 'wheel.ratio', /0\.1 to 0\.9; got 5/],
  ['  height: 5', '  height: 5\n  bore: ‸165', 'wheel.bore', /leaves no ring/],
  ['  height: 5', '  height: 5\n  screws: { circle: ‸168 }', 'wheel.screws.circle', /outside the roots/],
  ['  outside: 170\n', '  outside: ‸automatic\n', 'wheel.outside', /write auto, or/],
  ['outside: 170\n  height: 5', 'outside: auto\n  root: ‸160', 'wheel.root', /follows from an outside that is chosen/],
  ['  outside: 170\n', '  room: ‸12\n', 'wheel.room', /leave wheel\.room out, see which outside is chosen/],
  // A slip in the outside is told alone, not as if it had been left open.
  ['outside: 170\n  height: 5', 'outside: ‸17O\n  root: 160\n  room: 12', 'wheel.outside', /.+/],
  // Print, sheet.
  ['print: { holes: 0.3 }', 'print: { holes: ‸30 }', 'print.holes', /-1 to 2 mm; got 30/],
  ['print: { holes: 0.3 }', 'print: { bed: ‸220 }', 'print.bed', /a list, written/],
  ['flavour: [standard]', 'flavour: [standard, ‸dwg]', 'sheet.flavour[1]', /standard, r12, polyline; got dwg/],
  ['sheet: { flavour: [standard] }', 'sheet: ‸none', 'sheet', /has keys of its own/],
  ['sheet: { flavour: [standard] }', 'shaft: { mass: ‸8400 }', 'shaft.mass', /If that is grams, write 8400 g/],
  ['sheet: { flavour: [standard] }', 'sensor: { kind: ‸halls }', 'sensor.kind', /Did you mean hall\?/],
];

/** Slips that make the text no YAML: one error, no key path. */
const brokenText: readonly (readonly [string, string, string])[] = [
  ['a tab for indentation', spoil('  teeth: 36', '‸\tteeth: 36'), 'Indent with spaces'],
  ['an open bracket', spoil('outside: 130 }\n', 'outside: 130\n').replace('\nwheel', '\n‸wheel'), 'never closed'],
  ['an open quote', goodJob.replace('title: Test joint', 'title: "Test joint').concat('‸'), 'never closed'],
  ['a missing colon', spoil('  teeth: 36', '  ‸teeth 36'), 'colon is missing'],
  ['text after a quoted value', spoil('title: Test joint', 'title: "2"‸1/4'), 'after the end of this value'],
  ['a bad indentation', spoil('  outside: 170', '   ‸outside: 170'), 'indent'],
  ['a second document', `${goodJob}‸---\njob: 1\n`, 'several YAML documents'],
  ['an old version of YAML', `‸%YAML 1.1\n---\n${goodJob}`, 'YAML 1.2'],
  ['a closing bracket too many', spoil('print: { holes: 0.3 }', 'print: { holes: 0.3 }‸}'), 'closes nothing'],
  ['a list for a job', '‸- job: 1\n', 'list of keys'],
  ['a word for a job', '‸job:1', 'a space after the colon'],
  ['an empty file', '‸', 'empty'],
  ['blanks only', '‸ \n \n', 'empty'],
  ['comments only', '‸# nothing\n', 'nothing in this file'],
  ['a binary file', 'PK‸\u0003\u0004\u0000\u0000', 'not a text file'],
  ['bytes that are not UTF-8', 'job: 1\ntitle: caf‸\uFFFD\n', 'UTF-8'],
  ['300 KiB', `‸${'# x\n'.repeat(77_000)}`, 'too large'],
];

describe('wrong jobs are answered by a sentence at the right place', () => {
  it('starts from a job that reads well', () => {
    const read = readJob(goodJob, 'good.job.yaml');
    expect(read.ok ? [] : read.errors).toEqual([]);
  });

  it.each(slips)('%j -> %j: %s', (piece, replacement, path, phrase) => {
    const marked = spoil(piece, replacement);
    // The slip whose mark cannot stand at the error.
    const { text, line, column } =
      path === 'driving.holes.circle' && replacement.endsWith('‸80')
        ? unmark(marked.replace('‸', '').replace('circle: 84', 'circle: ‸84'))
        : unmark(marked);
    const read = readJob(text, 'bad.job.yaml');
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.errors).toHaveLength(1);
    const [error] = read.errors;
    expect(error).toMatchObject({ file: 'bad.job.yaml', path, line, column });
    expect(error?.message).toMatch(phrase);
    expect(error?.message).toMatch(/^["A-Z0-9*[{].*[.?)]$/s);
  });

  it.each(brokenText)('%s', (_, marked, phrase) => {
    const { text, line, column } = unmark(marked);
    const read = readJob(text, 'bad.job.yaml');
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.errors[0]).toMatchObject({ path: '', line, column });
    expect(read.errors[0]?.message).toContain(phrase);
  });

  it('says what is missing of an almost empty job', () => {
    const read = readJob('job: 1\n', 'bad.job.yaml');
    expect(read.ok ? [] : read.errors.map((error) => [error.path, error.line])).toEqual([
      ['driven', 1],
      ['driving', 1],
    ]);
  });

  it('tells all mistakes at once, in the order of the file', () => {
    const text = goodJob
      .replace('480 N.m', '480 Nn')
      .replace('thickness: auto', 'thickness: -4')
      .replace('teeth: 36', 'teeth: 1')
      .replace('circle: 84', 'circle: 84, chord: 42');
    const read = readJob(text, 'bad.job.yaml');
    expect(read.ok ? [] : read.errors.map((error) => [error.line, error.path])).toEqual([
      [4, 'duty.torque'],
      [9, 'driving.holes.chord'],
      [15, 'adapter.thickness'],
      [17, 'wheel.teeth'],
    ]);
  });

  it('still compares the sound keys of a section that holds a bad one', () => {
    const text = goodJob
      .replace('thickness: 12', 'thickness: -12')
      .replace('circle: 84', 'circle: 84, chord: 42')
      .replace('  teeth: 36', '  teeth: 36\n  tooth: north\n  root: 160');
    const read = readJob(text, 'bad.job.yaml');
    expect(read.ok ? [] : read.errors.map((error) => error.path)).toEqual([
      'driving.thickness',
      'driving.holes.chord',
      'wheel.tooth',
      'wheel.height',
    ]);
  });

  it('prints file, line, column, key path, the line and a caret', () => {
    const text = spoil('thickness: auto', 'thickness: -4');
    const read = readJob(text, 'bad.job.yaml');
    expect(read.ok ? '' : formatErrors(read.errors, text)).toBe(
      'bad.job.yaml:15:39 adapter.thickness: Must be 3 to 300 mm; got -4 mm.\n' +
        '    adapter: { material: S355, thickness: -4, outside: 130 }\n' +
        '                                          ^\n',
    );
  });

  it('counts lines alike with a byte order mark and with carriage returns', () => {
    const text = spoil('thickness: auto', 'thickness: -4');
    for (const variant of [`\uFEFF${text}`, text.replaceAll('\n', '\r\n'), text.replaceAll('\n', '\r')]) {
      const read = readJob(variant, 'bad.job.yaml');
      expect(read.ok ? [] : read.errors.map((error) => [error.line, error.column])).toEqual([[15, 39]]);
      expect(read.ok ? '' : formatErrors(read.errors, variant)).toContain(`\n    ${' '.repeat(38)}^`);
    }
  });
});
