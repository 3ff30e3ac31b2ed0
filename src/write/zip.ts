/** Zip archives, the only file that names their package. The same files give the same bytes, whenever and wherever they are packed. */
import { zipSync } from 'fflate';

export interface ZipEntry {
  /** Path within the archive, with forward slashes. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** An archive has no way to leave the time out: the earliest it knows, read from the parts of a date as a local clock shows them. */
const noTime = (): Date => new Date(1980, 0, 1, 0, 0, 0);

/** An archive of files in the order given. Throws an Error when two have the same name. */
export function zip(entries: readonly ZipEntry[]): Uint8Array {
  const names = new Set(entries.map(({ name }) => name));
  if (names.size !== entries.length) throw new Error('two files of an archive have the same name');
  // `os: 3` and the mode below: plain files that everyone may read, wherever they are unpacked.
  return zipSync(
    Object.fromEntries(entries.map(({ name, bytes }) => [name, [bytes, { os: 3, attrs: 0o100644 << 16 }] as const])),
    { level: 6, mtime: noTime() },
  );
}
