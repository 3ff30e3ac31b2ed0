/** Reading a file the user named, with a sentence for everything that can go wrong. */
import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type Io, UsageError } from './io.ts';

/** A job is text of a few kilobytes; anything past this is something else. */
const mostBytes = 4 * 1024 * 1024;

function sentence(path: string, error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
      return `There is no file ${path}. Start one with: flangewright new ${path}`;
    case 'EISDIR':
      return `${path} is a folder, not a job file.`;
    case 'EACCES':
    case 'EPERM':
      return `${path} may not be read: check who owns it.`;
    default:
      return `${path} could not be read${code ? ` (${code})` : ''}.`;
  }
}

/** The text of a file. @throws UsageError with a plain sentence */
export async function readText(io: Io, path: string): Promise<string> {
  const full = resolve(io.cwd, path);
  try {
    const { size, isDirectory } = await stat(full).then((s) => ({ size: s.size, isDirectory: s.isDirectory() }));
    if (isDirectory) throw new UsageError(`${path} is a folder, not a job file.`);
    if (size > mostBytes)
      throw new UsageError(`${path} is ${(size / 1024 / 1024).toFixed(1)} MB: a job file is a few kilobytes of text.`);
    return new TextDecoder('utf-8', { fatal: true }).decode(await readFile(full));
  } catch (error) {
    if (error instanceof UsageError) throw error;
    if (error instanceof TypeError) throw new UsageError(`${path} is not text (not UTF-8): is it a job file?`);
    throw new UsageError(sentence(path, error));
  }
}
