/**
 * The exact modeller: OpenCascade, compiled for the web. The only file that names its package; 23 MB, so it is loaded when first used.
 */
import type { OpenCascadeInstance } from 'replicad-opencascadejs';

export type Occ = OpenCascadeInstance;
export type * as Bound from 'replicad-opencascadejs';

let loading: Promise<Occ> | undefined;

/**
 * The modeller, loaded once; it finds its own binary beside its code. It would print what it transfers on standard output, where a
 * program that reads ours expects JSON: it is kept quiet.
 */
export function occ(): Promise<Occ> {
  loading ??= import('replicad-opencascadejs').then(({ default: start }) =>
    start({ print: () => undefined, printErr: () => undefined }),
  );
  return loading;
}

/** Keeps what the modeller hands out, so that it can be given back: its memory is not collected. */
export interface Handles {
  keep<T extends { delete(): void }>(handle: T): T;
}

/** Runs `work` and gives back every handle that it kept, whatever comes of it. Nothing of the modeller may leave with the result. */
export function withHandles<T>(work: (handles: Handles) => T): T {
  const kept: { delete(): void }[] = [];
  try {
    return work({
      keep: (handle) => {
        kept.push(handle);
        return handle;
      },
    });
  } finally {
    for (const handle of kept.reverse()) handle.delete();
  }
}
