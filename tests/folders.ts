/** Folders that go away after the test file that made them. `seed.ts` sees to that: files of one worker share this one. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folders: string[] = [];

/** A new empty folder. */
export function folder(name = 'job'): string {
  const path = mkdtempSync(join(tmpdir(), `flangewright-${name}-`));
  folders.push(path);
  return path;
}

/** Take all of them away. */
export function removeFolders(): void {
  for (const path of folders.splice(0)) rmSync(path, { recursive: true, force: true });
}
