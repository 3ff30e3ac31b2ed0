/** A job that reads well, invented, to be spoilt one line at a time. */
export const goodJob = `job: 1
title: Test joint
units: mm
duty: { torque: 480 N.m, speed: 4200 rpm }
driving:
  outside: 120
  thickness: 12
  register: { gender: male, diameter: 57, depth: 2.3, fit: h7 }
  holes: { count: 6, circle: 84, diameter: 8.1 }
driven:
  outside: 120
  thickness: 12
  register: { gender: female, diameter: 75, depth: 2.5 }
  holes: { count: 8, circle: 101.5, thread: M10, depth: 14 }
adapter: { material: S355, thickness: auto, outside: 130 }
wheel:
  teeth: 36
  outside: 170
  height: 5
print: { holes: 0.3 }
sheet: { flavour: [standard] }
`;

/** The mark that shows in a spoilt text where the error must stand. */
export const mark = '‸';

/** The text without its mark, and the place of the mark, counted from 1. */
export function unmark(marked: string): { text: string; line: number; column: number } {
  const at = marked.indexOf(mark);
  if (at < 0 || marked.indexOf(mark, at + 1) >= 0) throw new Error('one mark is needed in each spoilt job');
  const before = marked.slice(0, at).split('\n');
  return {
    text: marked.replace(mark, ''),
    line: before.length,
    column: (before[before.length - 1] ?? '').length + 1,
  };
}

/** The good job with one piece of it replaced. */
export function spoil(piece: string, replacement: string): string {
  if (goodJob.split(piece).length !== 2) throw new Error(`"${piece}" must stand once in the good job`);
  return goodJob.replace(piece, () => replacement);
}
