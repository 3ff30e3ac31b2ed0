/** Makes every file of a joint, or the kinds asked for, and holds back what must not reach a machine. */
import type { Joint } from '../job/joint.ts';
import { revisionOf } from '../job/revision.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import { jointVerdict } from '../report/joint-verdict.ts';
import type { FilesReport } from '../report/report-data.ts';
import { packedMockUpFiles } from './3mf.ts';
import { benchSheetFile } from './bench-sheet.ts';
import { bracketFiles, bracketMockUpFile, gapCardFile } from './bracket.ts';
import { drawingFiles } from './drawing.ts';
import { inspectionFiles } from './inspection.ts';
import { adapterMockUpFile, wheelMockUpFile } from './mock-up.ts';
import { orderFiles } from './order.ts';
import { outlineFile } from './outline.ts';
import { packFiles } from './pack.ts';
import { paperFiles } from './paper.ts';
import { type Picture, pictures } from './pictures.ts';
import { previewFiles } from './preview.ts';
import type { MadeFile, Making, Product } from './product.ts';
import { programFiles } from './program.ts';
import { reportFiles, reportKind } from './report.ts';
import { ringFiles } from './rings.ts';
import { setUpFiles } from './set-up.ts';
import { shaftFiles } from './shaft.ts';
import { signalFiles } from './signal.ts';
import { stepFiles } from './step.ts';

/** What is made of the joint itself. */
const single: readonly Product[] = [
  adapterMockUpFile,
  wheelMockUpFile,
  outlineFile,
  bracketFiles,
  bracketMockUpFile,
  gapCardFile,
  orderFiles,
  previewFiles,
  ringFiles,
  paperFiles,
  inspectionFiles,
  benchSheetFile,
  setUpFiles,
  programFiles,
  drawingFiles,
  shaftFiles,
  stepFiles,
  packedMockUpFiles,
  signalFiles,
];

/** Every product but the report, in the order they are made and listed: packs are made of the others. */
export const products: readonly Product[] = [...single, packFiles(single)];

/** The words that `--only` takes. */
export const productKinds: readonly string[] = [...products.map((product) => product.kind), reportKind];

/** The kinds that this joint has something for: no wheel's files without a wheel. */
export const kindsFor = (joint: Joint): readonly string[] => [
  ...products.filter(({ applies }) => applies(joint)).map(({ kind }) => kind),
  reportKind,
];

export interface MakeOptions {
  readonly base: string;
  /** The job file's name as it was given. */
  readonly jobName: string;
  /** Kinds to make; empty for all. */
  readonly only: readonly string[];
  readonly force: boolean;
  /** Told what is being made, and how much is done: 0 to 1. */
  readonly tell?: (what: string, share: number) => void;
}

export interface Held {
  readonly kind: string;
  readonly why: string;
  /** Names of the files that were not made. */
  readonly names: readonly string[];
}

export interface Made {
  readonly verdict: Verdict;
  readonly files: readonly MadeFile[];
  readonly held: readonly Held[];
}

/** Why a kind is held back. */
function reasonToHold(findings: readonly Finding[]): string {
  const failed = findings.filter((finding) => finding.verdict === 'fail').map((finding) => finding.title);
  return `checks fail (${[...new Set(failed)].join('; ')}): mend the job, or have it made all the same and answer for it`;
}

/** Make the files. */
export async function makeFiles(joint: Joint, findings: readonly Finding[], options: MakeOptions): Promise<Made> {
  const verdict = jointVerdict(findings);
  const failing = verdict === 'fail';
  let drawn: readonly Picture[] | undefined;
  const making: Making = {
    joint,
    findings,
    verdict,
    revision: revisionOf(joint),
    base: options.base,
    pictures: () => (drawn ??= pictures(joint)),
    forced: failing && options.force,
  };
  const wanted = (kind: string) => options.only.length === 0 || options.only.includes(kind);
  const files: MadeFile[] = [];
  const held: Held[] = [];
  const named = options.only.length > 0;
  const chosen = products.filter(
    ({ kind, applies, asked }) => wanted(kind) && applies(joint) && (named || asked?.(joint) !== false),
  );
  for (const [i, product] of chosen.entries()) {
    options.tell?.(product.about, i / chosen.length);
    if (product.metal && failing && !options.force) {
      held.push({ kind: product.kind, why: reasonToHold(findings), names: product.names(making) });
    } else {
      const tell = (what: string, share: number) => options.tell?.(what, (i + share) / chosen.length);
      files.push(...(await product.make({ ...making, tell })));
    }
  }
  if (wanted(reportKind)) {
    const list: FilesReport = {
      made: files.map(({ kind, name, bytes }) => ({ kind, path: name, bytes: bytes.length })),
      held: held.map(({ kind, why }) => ({ kind, why })),
    };
    files.push(...(await reportFiles(making, options.jobName, list)));
  }
  return { verdict, files, held };
}
