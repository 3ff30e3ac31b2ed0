/** The commented job that a newcomer starts from: valid as it stands, every invented value marked. */
import type { JobUnits } from './schema.ts';

/** A value as somebody would type it: 57.15, "2 1/4 in". */
export type TypedValue = string | number;

/** What was answered about one flange. Whatever is left out is filled with an invented value. */
export interface StarterFlange {
  readonly name?: string;
  /** A known pattern to start from instead of measured sizes. */
  readonly from?: string;
  readonly outside?: TypedValue;
  readonly thickness?: TypedValue;
  readonly register?:
    | 'none'
    | { readonly gender?: 'male' | 'female'; readonly diameter?: TypedValue; readonly depth?: TypedValue };
  readonly holes?: {
    readonly count?: TypedValue;
    readonly circle?: TypedValue;
    readonly diameter?: TypedValue;
    readonly thread?: string;
    readonly depth?: TypedValue;
  };
}

export interface StarterAnswers {
  readonly title?: string;
  readonly units?: JobUnits;
  readonly torque?: TypedValue;
  readonly speed?: TypedValue;
  readonly driving?: StarterFlange;
  readonly driven?: StarterFlange;
  /** Leave the wheel out of the file. */
  readonly withoutWheel?: boolean;
}

/** Where the modeline looks for the schema: beside the job. */
export const schemaFileName = 'flangewright.schema.json';

/** A job without sizes: what the page begins a new one with. Not valid before both flanges are filled in. */
export const emptyJob = `# A job for flangewright: one joint between two flanges.
job: 1
driving:
  name: driving flange
driven:
  name: driven flange
`;

/** Sizes of two flanges that exist nowhere, mm. */
const invented = {
  driving: {
    outside: 112,
    thickness: 14,
    register: { gender: 'male', diameter: 62, depth: 4 },
    holes: { count: 6, circle: 84, thread: 'M8', depth: 16 },
  },
  driven: {
    outside: 138,
    thickness: 9,
    register: { gender: 'female', diameter: 57, depth: 3 },
    holes: { count: 4, circle: 120, diameter: 10.4 },
  },
} as const;

const mark = '  # INVENTED: put yours';

/**
 * Text of a starter job. Answers are written as they were typed (read the result with readJob to judge them); an invented
 * length carries its mm when the job is in inches. Ends with a line break.
 */
export function starterJob(answers: StarterAnswers = {}): string {
  const units = answers.units ?? 'mm';
  const lines = [
    `# yaml-language-server: $schema=./${schemaFileName}`,
    '# A job for flangewright: one joint between two flanges. Lines that start with # are notes.',
    '# Lines marked INVENTED hold made-up values: replace them with what you measured.',
    '# A measured value is one number, or repeated readings [57.02, 57.00, 57.04],',
    '# or { value: 57.02, instrument: micrometer } (caliper, micrometer, dial, ruler, catalogue), or { value: 57.02, doubt: 0.01 }.',
    '# Any value may carry its own unit: 2 1/4 in, 57.15 mm, 350 lbf.ft.',
    '',
    'job: 1                      # version of this format',
    given(
      'title',
      answers.title === undefined ? undefined : JSON.stringify(answers.title),
      '"My joint"',
      '',
      'what this joint is',
    ),
    `units: ${units}                   # what a bare length means: mm or in`,
    '',
    'duty:                       # what the joint must carry',
    given('torque', typed(answers.torque), '400 N.m', '  ', 'peak torque at this shaft'),
    given('speed', typed(answers.speed), '2600 rpm', '  ', 'highest speed this shaft ever turns'),
    '  grade: G40                # balance grade: G40 car shafts, G16 cardan shafts (finer), G6.3 machines',
    '',
    '# The flange that turns the adapter.',
    ...flangeLines('driving', answers.driving ?? {}, units),
    '',
    '# The flange that the adapter turns.',
    ...flangeLines('driven', answers.driven ?? {}, units),
    '',
    ...adapterLines(units),
    ...(answers.withoutWheel === true ? [] : ['', ...wheelLines(units)]),
    '',
    'print:                      # the printed mock-up',
    `  holes: ${length(0.3, units)}                # added to the diameter of every hole`,
    `  registers: ${length(0.3, units)}            # allowance of the registers, on the diameter`,
  ];
  return `${lines.join('\n')}\n`;
}

function flangeLines(side: 'driving' | 'driven', answers: StarterFlange, units: JobUnits): string[] {
  const own = invented[side];
  const name = given(
    'name',
    answers.name === undefined ? undefined : JSON.stringify(answers.name),
    `"${side === 'driving' ? 'drive unit' : 'axle'} flange"`,
    '  ',
    'in your words',
  );
  if (answers.from !== undefined) {
    return [
      `${side}:`,
      name,
      `  from: ${JSON.stringify(answers.from)}   # a known pattern; any key below overrides it. List them: flangewright flanges`,
    ];
  }
  return [
    `${side}:`,
    name,
    '  # from: DIN100-companion  # or start from a known pattern and override it. List them: flangewright flanges',
    given('outside', typed(answers.outside), length(own.outside, units), '  ', 'outside diameter'),
    given('thickness', typed(answers.thickness), length(own.thickness, units), '  ', 'thickness at the holes'),
    ...registerLines(answers.register, own.register, units),
    ...holeLines(answers.holes ?? {}, own.holes, units),
    '  # material: S355          # of the flange, for its tapped threads',
    '  # runout: { rim: 0.03, face: 0.02 }   # total indicator readings, turning the flange by hand',
    '  # behind: 40              # free room behind the flange for heads, nuts and a spanner',
  ];
}

function registerLines(
  answers: StarterFlange['register'],
  own: { gender: string; diameter: number; depth: number },
  units: JobUnits,
): string[] {
  if (answers === 'none') return ['  register: none            # no step that centres it'];
  return [
    '  register:                 # the step that centres it; write register: none when there is none',
    given('gender', answers?.gender, own.gender, '    ', 'male stands out of the face, female goes into it'),
    given('diameter', typed(answers?.diameter), length(own.diameter, units), '    ', ''),
    given('depth', typed(answers?.depth), length(own.depth, units), '    ', 'how far it stands out or goes in'),
    `    # fit: ${own.gender === 'male' ? 'h7 ' : 'H7 '}               # only when a drawing states it`,
  ];
}

function holeLines(
  answers: NonNullable<StarterFlange['holes']>,
  own: Readonly<Record<string, string | number>>,
  units: JobUnits,
): string[] {
  const isAnswered = answers.diameter !== undefined || answers.thread !== undefined;
  const isTapped = isAnswered ? answers.thread !== undefined : 'thread' in own;
  const lines = [
    '  holes:                    # circle may be replaced by chord: the distance of two neighbours',
    given('count', typed(answers.count), String(own.count), '    ', 'how many'),
    given('circle', typed(answers.circle), length(Number(own.circle), units), '    ', 'diameter through their centres'),
  ];
  if (!isTapped)
    return [
      ...lines,
      given(
        'diameter',
        typed(answers.diameter),
        length(Number(own.diameter ?? 10.5), units),
        '    ',
        'clear holes; for tapped ones write thread: M10 and depth',
      ),
    ];
  return [
    ...lines,
    given(
      'thread',
      answers.thread,
      String(own.thread ?? 'M10'),
      '    ',
      'tapped holes; for clear ones write diameter instead',
    ),
    given(
      'depth',
      typed(answers.depth),
      length(Number(own.depth ?? 15), units),
      '    ',
      'usable depth of thread; or write through: true',
    ),
  ];
}

function adapterLines(units: JobUnits): string[] {
  return [
    'adapter:                    # the part between the two; auto lets the program choose and say why',
    '  material: S355',
    '  thickness: auto           # auto: the least that meets every demand',
    '  outside: auto',
    '  clocking: auto            # angle between the two hole patterns',
    '  bore: auto                # centre bore, which is also the indicating bore; or none',
    '  flats: none               # two vise flats: none, auto, or the distance across them',
    `  chamfer: ${length(1, units)}`,
    `  web: ${length(3, units)}                    # least metal between two features (common practice)`,
    '  setup: indicated          # how the axis is found after turning over: one chucking, indicated, edge finder, three jaw',
    '  driving: { fastening: auto, class: 10.9, fit: auto }   # fastening: auto, into_flange, into_adapter, through',
    '  driven: { fastening: auto, class: 10.9, fit: auto }',
  ];
}

function wheelLines(units: JobUnits): string[] {
  return [
    'wheel:                      # the toothed wheel; delete the section when there is none',
    `  teeth: 60               ${mark}; missing ones included; auto: from sensor.expects, or sensor.was and sensor.axle`,
    `  missing: 0              ${mark}; 0 when every tooth is there, as a speed sensor wants it`,
    '  outside: auto             # over the teeth; auto: the least that clears its screws and the flanges and suits the sensor',
    `  # height: ${length(4.5, units)}             # of a tooth; left out: what the sensor needs. Or type outside, and root: the root diameter`,
    '  # form: windows           # slots in a closed rim instead of teeth; the sensor then looks along the axis',
    '  ratio: 0.4                # tooth width as a share of the pitch',
    `  root_radius: ${length(0.8, units)}          # in the corner of the valley; sharp ones burn`,
    `  thickness: ${length(3, units)}              # of the sheet; a coil wants 5 mm`,
    '  material: DC01            # magnetic, for most sensors',
    '  on: adapter               # what it is screwed to: adapter, driving or driven',
    '  screws: { count: 6, size: M5 }',
    '',
    'sensor:                     # what reads the teeth; delete the section when there is none',
    `  kind: differential_hall ${mark}; coil, hall, differential_hall or active_wheel_speed`,
    `  # gap: ${length(1, units)}                # air gap to the tooth, from the sensor's data sheet`,
    '  # axle: 4.1               # turns of this shaft in one turn of the road wheels',
    '  # was: { teeth: 44, ratio: 1 }   # the wheel that was read before, and its turns in one of the road wheels',
  ];
}

/** One line: the answer, or the invented value and its mark. */
function given(key: string, answer: string | undefined, own: string, indent: string, about: string): string {
  const note = about === '' ? '' : `; ${about}`;
  if (answer === undefined) return `${`${indent}${key}: ${own}`.padEnd(26)}${mark}${note}`;
  return about === '' ? `${indent}${key}: ${answer}` : `${`${indent}${key}: ${answer}`.padEnd(26)}  # ${about}`;
}

function length(mm: number, units: JobUnits): string {
  return units === 'mm' ? String(mm) : `${mm} mm`;
}

/** An answer as YAML: plain when it cannot be mistaken, else in quotes. */
function typed(answer: TypedValue | undefined): string | undefined {
  if (answer === undefined) return undefined;
  const text = String(answer).trim();
  return /^\d[\w ./-]*$/.test(text) ? text : JSON.stringify(text);
}
