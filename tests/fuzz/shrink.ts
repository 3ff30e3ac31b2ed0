/** A failing input made smaller, line by line, as long as it fails the same way. */

/** The kind of a fault: its first words without its numbers. */
export const sortOfFault = (fault: string) => (fault.split('\n')[0] ?? '').replace(/[-\d.e+]+/g, '#').slice(0, 60);

/**
 * Leaves out ever smaller runs of lines while `faultOf` tells of the same sort of fault.
 * @param tries the most attempts
 */
export async function shrunk(
  text: string,
  faultOf: (text: string) => Promise<string | null>,
  tries = 300,
): Promise<string> {
  const first = await faultOf(text);
  if (first === null) return text;
  const sort = sortOfFault(first);
  let lines = text.split('\n');
  let left = tries;
  for (let run = Math.ceil(lines.length / 2); run >= 1; run = Math.floor(run / 2)) {
    for (let at = 0; at < lines.length && left > 0; ) {
      const fewer = lines.toSpliced(at, run);
      left--;
      const fault = await faultOf(fewer.join('\n'));
      if (fault !== null && sortOfFault(fault) === sort) lines = fewer;
      else at += run;
    }
  }
  return lines.join('\n');
}
