/** `new`: a commented starter job. At a terminal it asks; otherwise it writes the example as it is. */
import { access } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import {
  formatErrors,
  jobJsonSchema,
  readJob,
  type StarterAnswers,
  type StarterFlange,
  schemaFileName,
  starterJob,
} from '../../core.ts';
import { exit, type Io, UsageError } from '../io.ts';
import { shown } from '../shown.ts';
import { writeAll } from '../write-all.ts';

const exists = (path: string) =>
  access(path).then(
    () => true,
    () => false,
  );

/** Ask, and take an empty answer for "leave it as it is". */
async function ask(io: Io, question: string): Promise<string | undefined> {
  const answer = (await io.ask?.(`${question}: `))?.trim();
  return answer === '' ? undefined : answer;
}

async function askFlange(io: Io, side: string): Promise<StarterFlange> {
  io.out(`\nThe ${side} flange. Empty answers keep the example's invented value.\n`);
  const from = await ask(io, '  Known pattern id, if any (see: flangewright flanges)');
  if (from !== undefined) return { from };
  const outside = await ask(io, '  Outside diameter');
  const thickness = await ask(io, '  Thickness');
  const gender = await ask(io, '  Register on the flange: male (spigot), female (recess) or none');
  const isNone = gender?.toLowerCase() === 'none';
  const diameter = isNone ? undefined : await ask(io, '  Register diameter');
  const depth = isNone ? undefined : await ask(io, '  Register height or depth');
  const count = await ask(io, '  How many holes');
  const circle = await ask(io, '  Bolt circle, through the hole centres');
  const thread = await ask(io, '  Thread, if the holes are tapped (e.g. M10)');
  const hole = thread === undefined ? await ask(io, '  Diameter of the clear holes') : undefined;
  const threadDepth = thread === undefined ? undefined : await ask(io, '  Usable thread depth');
  const isGender = gender === 'male' || gender === 'female';
  return {
    ...(outside === undefined ? {} : { outside }),
    ...(thickness === undefined ? {} : { thickness }),
    ...(isNone
      ? { register: 'none' as const }
      : {
          register: {
            ...(isGender ? { gender: gender as 'male' | 'female' } : {}),
            ...(diameter === undefined ? {} : { diameter }),
            ...(depth === undefined ? {} : { depth }),
          },
        }),
    holes: {
      ...(count === undefined ? {} : { count }),
      ...(circle === undefined ? {} : { circle }),
      ...(thread === undefined ? {} : { thread }),
      ...(hole === undefined ? {} : { diameter: hole }),
      ...(threadDepth === undefined ? {} : { depth: threadDepth }),
    },
  };
}

async function questions(io: Io): Promise<StarterAnswers> {
  if (!io.ask) return {};
  const title = await ask(io, 'What joint is this');
  const units = await ask(io, 'Units of plain numbers, mm or in');
  const torque = await ask(io, 'Peak torque at this shaft, e.g. 320 N.m');
  const speed = await ask(io, 'Highest speed of this shaft, e.g. 2600 rpm');
  const driving = await askFlange(io, 'driving');
  const driven = await askFlange(io, 'driven');
  const wheel = await ask(io, '\nIs there a toothed wheel for a speed sensor, yes or no');
  return {
    ...(title === undefined ? {} : { title }),
    ...(units === 'mm' || units === 'in' ? { units } : {}),
    ...(torque === undefined ? {} : { torque }),
    ...(speed === undefined ? {} : { speed }),
    driving,
    driven,
    ...(wheel?.toLowerCase().startsWith('n') ? { withoutWheel: true } : {}),
  };
}

export async function newJob(io: Io, { file }: { readonly file: string }): Promise<number> {
  const path = resolve(io.cwd, file);
  if (await exists(path)) throw new UsageError(`${file} is there already and is left alone. Choose another name.`);
  const text = starterJob(await questions(io));
  const folder = dirname(path);
  const utf8 = (content: string) => new TextEncoder().encode(content);
  const schema = { name: schemaFileName, bytes: utf8(`${JSON.stringify(jobJsonSchema(), null, 2)}\n`) };
  await writeAll(folder, [{ name: basename(path), bytes: utf8(text) }, schema]);
  io.out(
    `Wrote ${shown(file)}, and ${shown(join(dirname(file), schemaFileName))} so that an editor can complete its keys.\n`,
  );
  const read = readJob(text, basename(path));
  if (!read.ok) {
    io.err(`Some answers need another look:\n${formatErrors(read.errors, text)}\n`);
    return exit.badJob;
  }
  io.out(`Next: put your readings in, then  flangewright check ${shown(file)}\n`);
  return exit.clean;
}
