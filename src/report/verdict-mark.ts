/** A shape for each verdict, so that colour is never needed to tell them apart. */
import type { Verdict } from '../model/finding.ts';

const shapes: Readonly<Record<Verdict, string>> = {
  // An octagon with a cross.
  fail: '<path class="solid" d="M7 2h10l5 5v10l-5 5H7l-5-5V7z"/><path class="cutout" d="M8.5 8.5l7 7M15.5 8.5l-7 7"/>',
  // A triangle with an exclamation mark.
  caution: '<path d="M12 2.5L22.5 21h-21z"/><path d="M12 9.5v5M12 17.6v.2"/>',
  // A dashed ring with a question mark's dot and bar left out: an open question.
  'not assessed': '<circle cx="12" cy="12" r="9.5" stroke-dasharray="3.2 3.4"/><path d="M8 12h8"/>',
  // A ring with a tick.
  pass: '<circle cx="12" cy="12" r="9.8"/><path d="M7.5 12.5l3.2 3.2 5.8-6.8"/>',
};

/** Inline SVG of a verdict's shape; hidden from screen readers, because the word stands beside it. */
export const verdictMark = (verdict: Verdict): string =>
  `<svg class="mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${shapes[verdict]}</svg>`;

/** CSS class of a verdict. */
export const verdictClass = (verdict: Verdict): string => verdict.replace(' ', '-');
