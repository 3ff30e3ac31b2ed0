/** Random jobs: whole ones that a fabricator might type, and ones with something wrong in them. */
import fc from 'fast-check';

/** A length with at most two decimals, as a caliper gives it. */
const length = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 100), max: Math.round(most * 100) }).map((hundredths) => hundredths / 100);

const threads = ['M6', 'M8', 'M10', 'M12', 'M8x1', '3/8-16', '5/16-24'] as const;

interface FlangeShape {
  readonly outside: number;
  readonly lines: readonly string[];
}

/** A flange whose register lies inside its holes and whose holes lie inside its rim. */
const flange: fc.Arbitrary<FlangeShape> = fc
  .record({
    outside: length(80, 220),
    thickness: fc.option(length(6, 20), { nil: undefined }),
    rim: length(8, 14),
    inside: length(12, 18),
    gender: fc.constantFrom('male', 'female', 'none'),
    depth: length(1.5, 6),
    count: fc.integer({ min: 3, max: 10 }),
    first: fc.integer({ min: 0, max: 90 }),
    isTapped: fc.boolean(),
    thread: fc.constantFrom(...threads),
    hole: length(6.4, 13),
    blind: length(8, 30),
    behind: fc.option(length(10, 60), { nil: undefined }),
    runout: fc.option(length(0, 0.2), { nil: undefined }),
  })
  .map((f) => {
    const circle = Math.round((f.outside - 2 * f.rim) * 100) / 100;
    const register = Math.round((circle - 2 * f.inside) * 100) / 100;
    const hole = f.isTapped ? `thread: "${f.thread}", depth: ${f.blind}` : `diameter: ${f.hole}`;
    return {
      outside: f.outside,
      lines: [
        `outside: ${f.outside}`,
        ...(f.thickness === undefined ? [] : [`thickness: ${f.thickness}`]),
        f.gender === 'none' || register < 10
          ? 'register: none'
          : `register: { gender: ${f.gender}, diameter: ${register}, depth: ${f.depth} }`,
        `holes: { count: ${f.count}, circle: ${circle}, first: ${f.first}, ${hole} }`,
        ...(f.behind === undefined ? [] : [`behind: ${f.behind}`]),
        ...(f.runout === undefined ? [] : [`runout: { rim: ${f.runout}, face: ${f.runout} }`]),
      ],
    };
  });

const adapter = fc.record({
  thickness: fc.oneof(fc.constant('auto'), length(8, 60)),
  clocking: fc.oneof(fc.constant('auto'), length(0, 359)),
  bore: fc.constantFrom('auto', 'none'),
  flats: fc.constantFrom('auto', 'none'),
  chamfer: length(0, 1.5),
  material: fc.constantFrom('S355', '6061-T6', '4140-Q&T', 'EN-GJS-500-7'),
  head: fc.constantFrom('auto', 'socket'),
  seat: fc.constantFrom('auto', 'sunk'),
});

const wheel = fc.record({
  teeth: fc.integer({ min: 12, max: 80 }),
  over: length(70, 110),
  height: length(3, 5),
  flanks: fc.constantFrom('straight', 'radial'),
  missing: fc.integer({ min: 0, max: 2 }),
});

const indent = (lines: readonly string[]) => lines.map((line) => `  ${line}`);

/** A job in the format's own words; it may still ask for something that cannot be designed. */
export const anyJob: fc.Arbitrary<string> = fc
  .record({
    driving: flange,
    driven: flange,
    adapter,
    wheel: fc.option(wheel, { nil: undefined }),
    duty: fc.option(
      fc.record({ torque: fc.integer({ min: 20, max: 2000 }), speed: fc.integer({ min: 100, max: 9000 }) }),
      { nil: undefined },
    ),
  })
  .map((job) => {
    const widest = Math.max(job.driving.outside, job.driven.outside);
    return [
      'job: 1',
      'title: any joint',
      ...(job.duty ? [`duty: { torque: ${job.duty.torque} N.m, speed: ${job.duty.speed} rpm }`] : []),
      'driving:',
      ...indent(job.driving.lines),
      'driven:',
      ...indent(job.driven.lines),
      'adapter:',
      `  thickness: ${job.adapter.thickness}`,
      `  clocking: ${job.adapter.clocking}`,
      `  bore: ${job.adapter.bore}`,
      `  flats: ${job.adapter.flats}`,
      `  chamfer: ${job.adapter.chamfer}`,
      `  material: "${job.adapter.material}"`,
      ...(job.wheel
        ? [
            'wheel:',
            `  teeth: ${job.wheel.teeth}`,
            `  missing: ${job.wheel.missing}`,
            `  outside: ${Math.round((widest + job.wheel.over) * 100) / 100}`,
            `  height: ${job.wheel.height}`,
            `  flanks: ${job.wheel.flanks}`,
            // Every fourth wheel has windows, the rim as typed or left out.
            ...(job.wheel.teeth % 4 === 0 ? ['  form: windows'] : []),
            ...(job.wheel.teeth % 8 === 0 ? ['  rim: 4'] : []),
            // Where no tooth is missing, every fifth wheel has a wide one, every other fifth an extra one.
            ...(job.wheel.missing === 0 && job.wheel.teeth % 5 === 0 ? [`  wide: ${1 + (job.wheel.teeth % 3)}`] : []),
            ...(job.wheel.missing === 0 && job.wheel.teeth % 5 === 1 ? ['  extra: 1', '  ratio: 0.35'] : []),
            '  root_radius: 0.3',
          ]
        : []),
      '',
    ].join('\n');
  });

/** Slips that make a job unreadable, each with a part of the text to break. */
export const slips: readonly (readonly [string, (text: string) => string])[] = [
  ['a negative size', (text) => text.replace(/outside: (\d)/, 'outside: -$1')],
  ['not a number', (text) => text.replace(/circle: [\d.]+/, 'circle: .nan')],
  ['a unit nobody knows', (text) => text.replace(/circle: ([\d.]+)/, 'circle: $1 furlong')],
  ['a misspelt key', (text) => text.replace('holes:', 'hoels:')],
  ['a missing section', (text) => text.replace(/driven:\n( {2}.*\n)+/, '')],
  ['ten thousand holes', (text) => text.replace(/count: \d+/, 'count: 10000')],
  ['a colon without a space', (text) => text.replace('outside: ', 'outside:')],
  ['an unclosed bracket', (text) => text.replace(/holes: \{/, 'holes: {{')],
  ['a decimal comma', (text) => text.replace(/outside: (\d+)(\.\d+)?/, 'outside: $1,5')],
  ['a word for a number', (text) => text.replace(/count: \d+/, 'count: many')],
  ['the wrong version', (text) => text.replace('job: 1', 'job: 7')],
  ['a key twice', (text) => text.replace('title: any joint', 'title: any joint\ntitle: another')],
];
