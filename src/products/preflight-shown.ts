/** A pre-flight as the page shows it: words, numbers, and a picture with the places marked. Plain data. */
import { faultMarks, preflightView } from '../drawing/preflight-view.ts';
import type { Verdict } from '../model/finding.ts';
import type { PlacedFinding, Preflight } from '../model/preflight.ts';
import { overallVerdict, worstFirst } from '../report/rank.ts';
import { writeSvg } from '../write/svg.ts';

export interface ShownPreflight {
  readonly file: string;
  readonly isReadable: boolean;
  readonly verdict: Verdict;
  /** Worst first; `mark` is its number in the picture, 0 for none. */
  readonly findings: readonly { readonly mark: number; readonly finding: PlacedFinding }[];
  /** An SVG element, or null where there is nothing to draw, or too much. */
  readonly svg: string | null;
}

export function shownPreflight({ isReadable, findings, cuts }: Preflight, file: string): ShownPreflight {
  const ranked = worstFirst(findings) as PlacedFinding[];
  const marks = faultMarks(ranked);
  return {
    file,
    isReadable,
    verdict: overallVerdict(findings),
    findings: ranked.map((finding) => ({ finding, mark: marks.find((mark) => mark.finding === finding)?.number ?? 0 })),
    svg:
      cuts === null || cuts.runs.length === 0
        ? null
        : writeSvg(preflightView(file, cuts, ranked), { standalone: false }),
  };
}
