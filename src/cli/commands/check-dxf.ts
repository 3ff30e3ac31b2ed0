/** `check FILE.dxf`: pre-flight of a drawing before it goes to a cutting service. Touches no file. */
import { readFile, stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { askedPreflight, overallVerdict, preflightDxf, preflightJson, preflightText, readJob } from '../../core.ts';
import { exit, type Io, UsageError } from '../io.ts';
import { readText } from '../read-text.ts';
import { jsonText } from '../shown.ts';
import { check, reportErrors } from './check.ts';

export interface DxfArguments {
  readonly file: string;
  readonly json: boolean;
  readonly thickness?: string | undefined;
  readonly material?: string | undefined;
  readonly units?: string | undefined;
  /** A job file whose service limits and part hold. */
  readonly job?: string | undefined;
}

/** True for the name of a drawing. */
export const isDrawing = (file: string): boolean => /\.dxf$/i.test(file);

/** Read no more than this off the disk; what is larger is no drawing of a part. */
const mostBytes = 256 * 1024 * 1024;

async function readBytes(io: Io, file: string): Promise<Uint8Array> {
  const full = resolve(io.cwd, file);
  try {
    const about = await stat(full);
    if (!about.isFile()) throw new UsageError(`${file} is not a file.`);
    if (about.size > mostBytes)
      throw new UsageError(`${file} is ${Math.round(about.size / 1024 / 1024)} MB: no flat part is.`);
    return await readFile(full);
  } catch (error) {
    if (error instanceof UsageError) throw error;
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    throw new UsageError(
      code === 'ENOENT' ? `There is no file ${file}.` : `${file} could not be read${code ? ` (${code})` : ''}.`,
    );
  }
}

/** The pre-flight's findings, worst first. @returns 0, 1 when one fails, 2 when the file cannot be read as a DXF */
export async function checkDxf(io: Io, { file, json, ...typed }: DxfArguments): Promise<number> {
  const bytes = await readBytes(io, file);
  const text = typed.job === undefined ? null : await readText(io, typed.job);
  const read = text === null || typed.job === undefined ? null : readJob(text, basename(typed.job));
  if (read !== null && text !== null && !read.ok) return reportErrors(io, read.errors, text, json);
  const job = read?.ok ? read.job : undefined;
  const options = askedPreflight({ ...typed, job, fileName: basename(file) });
  if (!options.ok) throw new UsageError(options.why);
  const preflight = preflightDxf(bytes, options.value);
  io.out(json ? jsonText(preflightJson(preflight, file)) : preflightText(preflight, file, { paint: io.paint }));
  if (!preflight.isReadable) return exit.badJob;
  return overallVerdict(preflight.findings) === 'fail' ? exit.checkFailed : exit.clean;
}

/** `check FILE`: a drawing by its name, else a job. @throws UsageError on a drawing's option beside a job */
export async function checkAny(io: Io, typed: DxfArguments): Promise<number> {
  if (isDrawing(typed.file)) return checkDxf(io, typed);
  const odd = (['thickness', 'material', 'units', 'job'] as const).find((name) => typed[name] !== undefined);
  if (odd !== undefined) throw new UsageError(`--${odd} is for drawings (*.dxf); a job says it itself.`);
  return check(io, { job: typed.file, json: typed.json });
}
