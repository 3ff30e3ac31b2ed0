/** Two cuts with less metal between them than the chord error run into each other as polygons: then they are drawn finer. */

/** Outlines that touch or cross one another as they are drawn. */
export class OutlinesMeet extends Error {
  constructor() {
    super('an area with touching or crossing outlines cannot be filled');
  }
}

/** Finer than this nothing is drawn, mm: metal that thin is none. */
const finest = 1e-4;

/**
 * What a chord error makes, or what the next finer one does where the outlines meet.
 * @param chordError mm, more than 0
 * @throws OutlinesMeet where they still do at the finest
 */
export function finelyEnough<T>(chordError: number, make: (chordError: number) => T): T {
  for (let error = chordError; ; error /= 4) {
    try {
      return make(error);
    } catch (fault) {
      if (!(fault instanceof OutlinesMeet) || error / 4 < finest) throw fault;
    }
  }
}
