/**
 * Writing a set of files all or nothing: everything is written beside its place first, then renamed. If anything goes wrong the old files
 * stand as they stood.
 */
import { randomBytes } from 'node:crypto';
import { lstat, mkdir, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { UsageError } from './io.ts';

/** A file to be written, by its name inside the folder. */
export interface FileToWrite {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What the system's own codes mean, as the end of a sentence. */
export const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EACCES: 'the folder may not be written to',
  EPERM: 'the folder may not be written to',
  EROFS: 'the disk is read-only',
  ENOTDIR: 'part of that path is a file, not a folder',
  EEXIST: 'a file stands where the folder should be',
  ENAMETOOLONG: 'the name is too long',
  EFBIG: 'a file would be larger than is allowed here',
  ENOENT: 'the folder went away, or may not be made',
  EIO: 'the disk is failing',
};

function userError(folder: string, error: unknown): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const reason = reasons[code];
  return reason
    ? new UsageError(`Nothing was written to ${folder}: ${reason}. Files of earlier runs are as they were.`)
    : error;
}

/** What stands under a name: nothing, a file, or something that must not be replaced. */
async function standing(path: string): Promise<'nothing' | 'file' | 'other'> {
  try {
    return (await lstat(path)).isDirectory() ? 'other' : 'file';
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return 'nothing';
    throw error;
  }
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * Write every file into a folder, or none.
 * @param folder made if it is not there
 * @param retire names of earlier files that no longer hold: each is renamed to NAME.old
 * @returns the names that were retired
 * @throws UsageError with a plain sentence; the old files are then whole
 */
export async function writeAll(
  folder: string,
  files: readonly FileToWrite[],
  retire: readonly string[] = [],
): Promise<string[]> {
  const stage = join(folder, `.writing-${process.pid}-${randomBytes(4).toString('hex')}`);
  const undo: (() => Promise<void>)[] = [];
  const retired: string[] = [];
  try {
    // In two steps: a read-only disk is told as such only by the second.
    await mkdir(folder, { recursive: true });
    await mkdir(stage);
    for (const { name, bytes } of files) {
      if ((await standing(join(folder, name))) === 'other') {
        throw new UsageError(
          `Nothing was written to ${folder}: ${name} is a folder there. Move it away or choose another folder with -o.`,
        );
      }
      await writeWhole(join(stage, name), bytes);
    }
    for (const name of retire) {
      if ((await standing(join(folder, name))) !== 'file') continue;
      const old = join(folder, `${name}.old`);
      await rename(join(folder, name), old);
      undo.push(() => rename(old, join(folder, name)));
      retired.push(name);
    }
    for (const { name } of files) {
      const target = join(folder, name);
      const kept = join(stage, `${name}.before`);
      if ((await standing(target)) === 'file') {
        await rename(target, kept);
        undo.push(() => rename(kept, target));
      }
      await rename(join(stage, name), target);
      undo.push(() => rm(target, { force: true }));
    }
    return retired;
  } catch (error) {
    for (const step of undo.reverse()) await step();
    throw userError(folder, error);
  } finally {
    await rm(stage, { recursive: true, force: true }).catch(() => undefined);
  }
}
