/**
 * The files of a sweep. While it runs, rows are added to NAME.sweep.part.jsonl, and NAME.sweep.part.json says which plan they belong
 * to; when it ends or is stopped, the rows get their final name and CSV and picture are written beside them. A run that was killed
 * leaves the part file: whole lines of it are taken up again by --resume, a torn last line is dropped.
 */
import { createReadStream, createWriteStream } from 'node:fs';
import { open, readFile, rename, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { csvHead, csvLine, type VariantRow } from '../core.ts';

/** Paths of one sweep. */
export interface SweepPaths {
  readonly part: string;
  readonly partPlan: string;
  readonly rows: string;
  readonly plan: string;
  readonly csv: string;
  readonly picture: string;
}

export function sweepPaths(start: string): SweepPaths {
  return {
    part: `${start}.sweep.part.jsonl`,
    partPlan: `${start}.sweep.part.json`,
    rows: `${start}.sweep.jsonl`,
    plan: `${start}.sweep.json`,
    csv: `${start}.sweep.csv`,
    picture: `${start}.sweep.svg`,
  };
}

/** Which sweep the rows of a file belong to. */
export interface PlanMark {
  /** Of the job's text, the values, the way of judging and the program's version. */
  readonly key: string;
  readonly process: number;
}

/** Null where there is none, or none that can be read. */
export async function readMark(path: string): Promise<PlanMark | null> {
  try {
    const data = JSON.parse(await readFile(path, 'utf8')) as Partial<PlanMark>;
    return typeof data.key === 'string' ? { key: data.key, process: Number(data.process ?? 0) } : null;
  } catch {
    return null;
  }
}

/** True while the process that wrote a mark still runs. */
export function isRunning({ process: id }: PlanMark): boolean {
  if (!Number.isInteger(id) || id <= 0 || id === process.pid) return false;
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

export async function sizeOf(path: string): Promise<number> {
  return stat(path).then(
    ({ size }) => size,
    () => 0,
  );
}

/** Lines of a file one by one, split at line feeds only: a row may hold signs that others take for line ends. */
async function* linesOf(path: string): AsyncGenerator<string> {
  let rest = '';
  for await (const chunk of createReadStream(path, 'utf8')) {
    const pieces = (rest + String(chunk)).split('\n');
    rest = pieces.pop() ?? '';
    yield* pieces;
  }
  if (rest !== '') yield rest;
}

function rowOf(line: string): VariantRow | null {
  try {
    const row = JSON.parse(line) as VariantRow;
    return typeof row === 'object' && row !== null && typeof row.index === 'number' ? row : null;
  } catch {
    return null;
  }
}

/**
 * Take up the rows that are there: whole lines, numbered from 0 without a gap. Whatever comes after them is cut off.
 * @returns how many were taken up
 */
export async function takeUp(path: string, take: (row: VariantRow) => void): Promise<number> {
  const whole = await sizeOf(path);
  if (whole === 0) return 0;
  let done = 0;
  let bytes = 0;
  for await (const line of linesOf(path)) {
    const row = rowOf(line);
    const end = bytes + Buffer.byteLength(line) + 1;
    // A last line without its line end may be torn even where it reads.
    if (row === null || row.index !== done || end > whole) break;
    take(row);
    done += 1;
    bytes = end;
  }
  await truncate(path, bytes);
  return done;
}

/** Write beside the place, then put in place: the name never stands for half a file. */
export async function replaceFile(path: string, write: (beside: string) => Promise<void>): Promise<void> {
  const beside = `${path}.writing`;
  try {
    await write(beside);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true }).catch(() => undefined);
    throw error;
  }
}

/** CSV of the rows, one at a time. @param names of the varied fields */
export async function writeCsv(rows: string, csv: string, names: readonly string[]): Promise<void> {
  async function* lines(): AsyncGenerator<string> {
    yield csvHead(names);
    let block = '';
    for await (const line of linesOf(rows)) {
      const row = rowOf(line);
      if (row) block += csvLine(names, row);
      if (block.length > 65_536) {
        yield block;
        block = '';
      }
    }
    yield block;
  }
  await replaceFile(csv, (beside) => pipeline(Readable.from(lines()), createWriteStream(beside)));
}

export async function writeText(path: string, text: string): Promise<void> {
  await replaceFile(path, (beside) => writeFile(beside, text));
}

/** A file that rows are added to. */
export interface RowFile {
  readonly add: (lines: string) => Promise<void>;
  /** All that was added is on the disk when this is done. */
  readonly close: () => Promise<void>;
}

export async function openRows(path: string): Promise<RowFile> {
  const handle = await open(path, 'a');
  return {
    add: async (lines) => {
      await handle.appendFile(lines);
    },
    close: async () => {
      await handle.sync();
      await handle.close();
    },
  };
}
