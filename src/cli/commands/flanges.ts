/** `flanges`: known patterns, one by its id, or the nearest to what was measured. */
import {
  alikeWords,
  type FlangePreset,
  findPattern,
  holesWords,
  type PatternList,
  registerWords,
  searchPresets,
  trustWords,
} from '../../core.ts';
import { exit, type Io, UsageError } from '../io.ts';
import { loadPatterns } from '../presets.ts';

export interface FlangesArguments {
  readonly id: string | undefined;
  readonly circle: number | undefined;
  readonly holes: number | undefined;
  readonly outside: number | undefined;
  readonly register: number | undefined;
  readonly json: boolean;
}

/** One line: id, outside, register, holes. */
function line(preset: FlangePreset): string {
  const outside = preset.outside === undefined ? 'outside ?' : `outside ${preset.outside}`;
  return `${preset.id.padEnd(18)} ${outside.padEnd(12)} ${registerWords(preset).padEnd(24)} ${holesWords(preset)}`;
}

/** Everything known of one pattern. */
function card(preset: FlangePreset, { nearMisses }: PatternList): string {
  return [
    `${preset.id}: ${preset.title} (${preset.family})`,
    ...(preset.unsuitable ? [`  NOT FOR AN ADAPTER: ${preset.unsuitable}`] : []),
    `  outside    ${preset.outside ?? 'not known'}${preset.thickness === undefined ? '' : `, ${preset.thickness} thick`}`,
    `  register   ${registerWords(preset)}`,
    `  holes      ${holesWords(preset)}`,
    ...(preset.runout
      ? [`  run-out    rim ${preset.runout.rim ?? '?'}, face ${preset.runout.face ?? '?'} total indicator reading`]
      : []),
    ...(preset.note ? [`  note       ${preset.note}`] : []),
    `  source     ${preset.source}`,
    `  ${trustWords(preset)}`,
    ...alikeWords(preset, nearMisses).map((line) => `  ${line}`),
    '',
    '  In a job:',
    `    driving:          # or driven:`,
    `      from: ${preset.id}`,
    '',
  ].join('\n');
}

export async function flanges(io: Io, args: FlangesArguments): Promise<number> {
  const patterns = await loadPatterns();
  if (args.id !== undefined) {
    const found = findPattern(patterns, args.id);
    if (!found.ok) throw new UsageError(found.why);
    io.out(args.json ? `${JSON.stringify(found.value, null, 2)}\n` : card(found.value, patterns));
    return exit.clean;
  }
  const { circle, holes, outside, register } = args;
  const search = {
    ...(circle === undefined ? {} : { circle }),
    ...(holes === undefined ? {} : { holes }),
    ...(outside === undefined ? {} : { outside }),
    ...(register === undefined ? {} : { register }),
  };
  if (Object.keys(search).length === 0) {
    io.out(
      args.json
        ? `${JSON.stringify(patterns.flanges, null, 2)}\n`
        : `${patterns.flanges.map(line).join('\n')}\n\nLengths in mm. One in full: flangewright flanges ID. By measure: --circle --holes --outside --register.\n`,
    );
    return exit.clean;
  }
  const matches = searchPresets(patterns.flanges, search, 8);
  if (args.json) {
    io.out(
      `${JSON.stringify(
        matches.map(({ preset, distance, differences }) => ({ id: preset.id, distance, differences, preset })),
        null,
        2,
      )}\n`,
    );
    return exit.clean;
  }
  io.out('Nearest first. A pattern is a guess for your flange, never a measurement.\n');
  for (const { preset, differences } of matches) {
    io.out(`${line(preset)}\n${differences.map((difference) => `    ${difference}\n`).join('')}`);
  }
  return exit.clean;
}
