/** What is refused before the text is looked at as YAML. */

/** Longest job, bytes of UTF-8. */
export const largestJob = 256 * 1024;

/** The first thing that makes a text no job at all, or null. */
export function textFault(text: string): { line: number; column: number; message: string; allowed?: string } | null {
  if (text.length > largestJob || new TextEncoder().encode(text).length > largestJob) {
    return {
      line: 1,
      column: 1,
      message: `This file is too large for a job: ${Math.ceil(text.length / 1024)} KiB, at most ${largestJob / 1024} KiB are read.`,
      allowed: `at most ${largestJob / 1024} KiB`,
    };
  }
  const odd = /[^\P{Cc}\t\n\r\u0085]|\uFFFD|[\uFFFE\uFFFF]|\p{Cs}/u.exec(text);
  if (odd !== null) {
    const before = text.slice(0, odd.index).split(/\r\n|\n|\r/);
    return {
      line: before.length,
      column: (before[before.length - 1] ?? '').length + 1,
      message: 'This is not a text file in UTF-8: it holds bytes that no text has. Save the job as plain UTF-8 text.',
    };
  }
  if (text.replace(/^\uFEFF/, '').trim() === '') {
    return { line: 1, column: 1, message: 'This file is empty; flangewright new writes a starter job.' };
  }
  return null;
}
