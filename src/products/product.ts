/** A file that the program can make from a designed joint. */
import type { Joint } from '../job/joint.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import type { Picture } from './pictures.ts';

/** Everything a product may use. */
export interface Making {
  readonly joint: Joint;
  readonly findings: readonly Finding[];
  readonly verdict: Verdict;
  /** The mark of the job that all files of one run carry. */
  readonly revision: string;
  /** Start of every file name: the job file's own name. */
  readonly base: string;
  /** The joint's pictures, drawn once for all who show them. */
  readonly pictures: () => readonly Picture[];
  /** True when checks fail and the user asked for the held files all the same. */
  readonly forced: boolean;
  /** Says what is being made, and how much of it is done: 0 to 1. Nobody may be listening. */
  readonly tell?: (what: string, share: number) => void;
}

/** One file, made. */
export interface MadeFile {
  readonly kind: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Product {
  /** The word for `--only`. */
  readonly kind: string;
  readonly about: string;
  /** True for files that send metal to a machine: held back while a check fails. */
  readonly metal: boolean;
  /** False where the job has no such part. */
  readonly applies: (joint: Joint) => boolean;
  /** Left out: made every time. Given: made when `--only` names it, or when this says that the job asks for it. */
  readonly asked?: (joint: Joint) => boolean;
  readonly names: (making: Pick<Making, 'joint' | 'base'>) => readonly string[];
  readonly make: (making: Making) => Promise<readonly MadeFile[]>;
}

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What a file made from a job with failing checks says inside, or an empty text. */
export function verdictWords(verdict: Verdict, forced: boolean): string {
  if (verdict !== 'fail') return '';
  return forced ? 'CHECKS FAILED - FORCED' : 'CHECKS FAILED';
}
