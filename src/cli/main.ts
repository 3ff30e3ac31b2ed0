/** The command line: reads arguments, runs one command, returns its exit code. Only bin.ts ends the process. */
import yargs from 'yargs';
import { checkAny } from './commands/check-dxf.ts';
import { flanges } from './commands/flanges.ts';
import { make } from './commands/make.ts';
import { measure } from './commands/measure.ts';
import { measureExamples, measureFlags, subjects } from './commands/measure-flags.ts';
import { newJob } from './commands/new.ts';
import { schema } from './commands/schema.ts';
import { serve } from './commands/serve.ts';
import { sweep } from './commands/sweep.ts';
import { exit, type Io, UsageError } from './io.ts';
import { shown } from './shown.ts';
import { version } from './version.ts';

/** A flag that wants a positive number, or a sentence. */
function positive(name: string, value: unknown): number | undefined {
  if (value === undefined) return undefined;
  const number = Number(value);
  if (!(number > 0) || !Number.isFinite(number))
    throw new UsageError(`--${name} wants a number above 0, in mm; got ${String(value)}.`);
  return number;
}

function portOf(value: unknown): number {
  const port = Number(value);
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new UsageError(`--port wants a whole number from 0 to 65535; got ${String(value)}.`);
  return port;
}

function threadsOf(value: number | undefined): number | undefined {
  if (value !== undefined && !(Number.isInteger(value) && value >= 1 && value <= 256))
    throw new UsageError(`--workers wants a whole number from 1 to 256; got ${String(value)}.`);
  return value;
}

/** Run one command. @returns the exit code; prints through `io` only */
export async function main(argv: readonly string[], io: Io): Promise<number> {
  let code: number = exit.clean;
  const run = async (command: Promise<number>) => {
    code = await command;
  };
  const parser = yargs([...argv])
    .scriptName('flangewright')
    .usage('$0 COMMAND\n\nOne job file in; mock-up, wheel outline and an honest verdict out.')
    .command(
      'check <file>',
      'Every finding, worst first; touches no file. A job, or a DXF before it goes to a cutting service.',
      (y) =>
        y
          .positional('file', {
            type: 'string',
            demandOption: true,
            describe: 'job file, *.job.yaml, or a drawing, *.dxf',
          })
          .option('json', { type: 'boolean', default: false, describe: 'JSON alone on standard output' })
          .option('thickness', { type: 'string', describe: 'of the sheet, mm (drawings only)' })
          .option('material', { type: 'string', describe: 'of the sheet (drawings only)' })
          .option('units', {
            type: 'string',
            describe: 'unit of the drawing, mm or in, when it does not say (drawings only)',
          })
          .option('job', { type: 'string', describe: 'job whose service limits and part hold (drawings only)' }),
      ({ file, json, thickness, material, units, job }) =>
        run(checkAny(io, { file, json, thickness, material, units, job })),
    )
    .command(
      'make <job>',
      'All files and the report. Files for a metal-cutting machine are held back while a check fails.',
      (y) =>
        y
          .positional('job', { type: 'string', demandOption: true, describe: 'job file, *.job.yaml' })
          .option('out', { alias: 'o', type: 'string', default: 'out', describe: 'folder for the files' })
          .option('only', { type: 'string', array: true, default: [] as string[], describe: 'kinds to make, by comma' })
          .option('force', {
            type: 'boolean',
            default: false,
            describe: 'make held files too; each one says so inside',
          })
          .option('json', { type: 'boolean', default: false, describe: 'JSON alone on standard output' }),
      (a) => run(make(io, { job: a.job, out: a.out, only: a.only, force: a.force, json: a.json })),
    )
    .command(
      'new [file]',
      'A commented starter job; asks at a terminal, asks nothing when there is none.',
      (y) =>
        y.positional('file', {
          type: 'string',
          default: 'my.job.yaml',
          describe: 'where to write it; never overwrites',
        }),
      (a) => run(newJob(io, { file: a.file })),
    )
    .command(
      'flanges [id]',
      'Known flange patterns, by id or by what was measured.',
      (y) =>
        y
          .positional('id', { type: 'string', describe: 'pattern id, e.g. DIN100-shaft' })
          .option('circle', { type: 'string', describe: 'measured bolt circle, mm' })
          .option('holes', { type: 'string', describe: 'number of holes' })
          .option('outside', { type: 'string', describe: 'measured outside diameter, mm' })
          .option('register', { type: 'string', describe: 'measured register diameter, mm' })
          .option('json', { type: 'boolean', default: false, describe: 'JSON alone on standard output' }),
      (a) => {
        const search = {
          circle: positive('circle', a.circle),
          holes: positive('holes', a.holes),
          outside: positive('outside', a.outside),
          register: positive('register', a.register),
        };
        return run(flanges(io, { id: a.id, json: a.json, ...search }));
      },
    )
    .command(
      'measure [subject] [file]',
      'Readings to numbers with their doubt: bolt circle, hole pattern, register, run-out, thread, balance in place.',
      (y) =>
        y
          .positional('subject', {
            type: 'string',
            describe: `what was measured: ${subjects.join(', ')}`,
            // A file may stand in its place, so the list binds nobody: it is only offered to the shell.
            ...(argv.includes('--get-yargs-completions') ? { choices: subjects } : {}),
          })
          .positional('file', { type: 'string', describe: 'pattern: points as CSV (x,y a line), or a DXF' })
          .options(measureFlags)
          .epilogue(measureExamples),
      (a) => run(measure(io, a)),
    )
    .command(
      'sweep <job>',
      'Judge every combination of several values of some keys: CSV, JSON Lines and a picture of the trade.',
      (y) =>
        y
          .positional('job', { type: 'string', demandOption: true, describe: 'job file, *.job.yaml' })
          .option('vary', {
            type: 'string',
            array: true,
            nargs: 1,
            default: [] as string[],
            describe: 'key=values, once a key: adapter.thickness=14..22/0.5, wheel.teeth=48,60,72',
          })
          .option('out', { alias: 'o', type: 'string', default: 'out', describe: 'folder for the files' })
          .option('workers', { type: 'number', describe: 'threads; by default one a core' })
          .option('search', {
            type: 'boolean',
            default: false,
            describe: 'try every way of each variant, not only the usual one',
          })
          .option('resume', { type: 'boolean', default: false, describe: 'go on where the same sweep was stopped' })
          .option('json', { type: 'boolean', default: false, describe: 'JSON alone on standard output' }),
      (a) => run(sweep(io, { ...a, workers: threadsOf(a.workers) })),
    )
    .command(
      'serve',
      'The page: see the joint while you decide. On this machine only.',
      (y) => y.option('port', { type: 'number', default: 4477, describe: 'port on the loopback address; 0 for any' }),
      (a) => run(serve(io, { port: portOf(a.port) })),
    )
    .command('schema', "The job file's JSON Schema, for editors.", {}, () => run(schema(io)))
    .completion('completion', 'A script that completes commands in your shell.')
    .demandCommand(1, 'Say what to do: check, make, new, measure, flanges, sweep, serve, schema. See --help.')
    .recommendCommands()
    .strict()
    .version(version)
    .help()
    .wrap(100)
    .exitProcess(false)
    .fail((message, error) => {
      throw error ?? new UsageError(message);
    });
  try {
    await parser.parseAsync([...argv], {}, (_error: unknown, _args: unknown, output: string) => {
      if (output !== '') io.out(`${output}\n`);
    });
    return code;
  } catch (error) {
    if (error instanceof UsageError) {
      io.err(`flangewright: ${shown(error.message)}\n`);
      return exit.badJob;
    }
    if (error instanceof Error && error.name === 'YError') {
      io.err(`flangewright: ${shown(error.message)}\n`);
      return exit.badJob;
    }
    io.err(
      `flangewright: this is a bug in the program, not in your job.\n${shown(error instanceof Error ? (error.stack ?? error.message) : String(error))}\n`,
    );
    return exit.bug;
  }
}
