/** A drilling program read by its published words (ISO 6983) and nothing else: would it run a tool where none may go? mm. */

/** What the part allows: how far out holes can be, and how far below the face a tool may reach. */
export interface Stock {
  readonly radius: number;
  readonly deepest: number;
}

/** Every word a control may meet here, each with its number. */
const word = /([A-Z])(-?\d+(?:\.\d*)?)/g;
const coordinates = 'XYZRQF';

/** What is wrong with a program, in words; null where nothing is. */
export function programFault(text: string, { radius, deepest }: Stock): string | null {
  const at = { X: 0, Y: 0, Z: Number.POSITIVE_INFINITY, R: Number.NaN, F: Number.NaN };
  let [mode, isTurning, isEnded] = ['G0', false, false];
  for (const [i, line] of text.split('\n').entries()) {
    const no = (why: string) => `line ${i + 1} (${line}): ${why}`;
    const bare = line.replace(/\([^()]*\)/g, '').trim();
    if (bare === '' || bare === '%') continue;
    if (isEnded) return no('something stands behind the end');
    const words = [...bare.matchAll(word)].map(([, letter = '', number = '']) => ({ letter, number }));
    if (words.map(({ letter, number }) => letter + number).join('') !== bare.replace(/\s/g, ''))
      return no('a word that is none');
    for (const { letter, number } of words) {
      if (coordinates.includes(letter) && !number.includes('.')) return no('a number without its point');
      if (letter in at) at[letter as keyof typeof at] = Number(number);
    }
    const has = (letter: string, number?: string) =>
      words.some((one) => one.letter === letter && (number === undefined || one.number === number));
    for (const code of ['0', '1', '80', '81', '83', '84', '85']) if (has('G', code)) mode = `G${code}`;
    if (has('M', '3') || has('M', '4')) isTurning = true;
    if (has('M', '5') || has('M', '6')) isTurning = false;
    if (has('M', '30')) isEnded = true;
    const isMove = ['X', 'Y', 'Z'].some((letter) => has(letter));
    if (!isMove) continue;
    if (!(Math.hypot(at.X, at.Y) <= radius)) return no(`${at.X}, ${at.Y} lies beside the part`);
    if (!(at.Z >= -deepest)) return no(`Z ${at.Z} is below all that may be cut`);
    if (mode === 'G0') {
      if (!(at.Z > 0)) return no('rapid below the face');
      continue;
    }
    if (mode === 'G80') return no('a move without a way of moving');
    if (!(at.F > 0)) return no('a cut without a feed');
    if (mode !== 'G1' && !(at.R > 0)) return no('a cycle that starts in the metal');
    // A spindle may stand while nothing is cut: the dry copy keeps above the part.
    if (!isTurning && at.Z < 0) return no('a cut with a spindle that stands');
    if (mode !== 'G1') at.Z = at.R;
  }
  return isEnded ? null : 'the program has no end';
}
