/**
 * The legal word nearest to a mistyped one, or null when none is near.
 *
 * Letter case and spaces do not matter. Near means at most two slips (letters changed, added or dropped), and fewer
 * than half of the word. Words over 40 letters are never near, so that hostile input costs nothing.
 */
export function nearestWord(typed: string, legal: readonly string[]): string | null {
  const word = fold(typed);
  if (word === '' || word.length > 40) return null;
  let best: string | null = null;
  let fewest = Math.min(3, Math.max(2, Math.ceil(word.length / 2)));
  for (const candidate of legal) {
    const slips = slipsBetween(word, fold(candidate));
    if (slips < fewest) {
      best = candidate;
      fewest = slips;
    }
  }
  return best;
}

function fold(text: string): string {
  return text.toLowerCase().replace(/[\s_-]+/g, '');
}

/** Levenshtein distance, with two swapped neighbours counted as one slip (optimal string alignment). */
function slipsBetween(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 2) return 3;
  let twoAbove: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const here = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let least = Math.min(
        (above[column - 1] ?? 0) + (same ? 0 : 1),
        (above[column] ?? 0) + 1,
        (here[column - 1] ?? 0) + 1,
      );
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) least = Math.min(least, (twoAbove[column - 2] ?? 0) + 1);
      here.push(least);
    }
    twoAbove = above;
    above = here;
  }
  return above[b.length] ?? 0;
}
