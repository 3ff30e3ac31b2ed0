/** Sketches of the flanges of a job that is not whole yet: there is something to look at from the first size that is typed. */
import { flangeSketch } from '../drawing/flange-sketch.ts';
import type { FlangePreset } from '../job/flange-presets.ts';
import { flangesSoFar } from '../job/flange-so-far.ts';
import { writeSvg } from '../write/svg.ts';
import type { LivePicture } from './live-view.ts';

/**
 * The flanges of a job text as far as they can be read, each as a picture; none where no size is known.
 * @param presets known patterns, for `from`
 */
export const flangeSketches = (text: string, presets: readonly FlangePreset[]): LivePicture[] =>
  flangesSoFar(text, presets).map((flange) => {
    const { side, name, pattern } = flange;
    const id = `${side}-so-far`;
    const drawing = flangeSketch({ ...flange, id, name: name ?? `${side} flange` });
    const filled = pattern === null ? '' : ` What is not typed is the pattern ${pattern}'s: measure it.`;
    return {
      name: id,
      caption: `The ${side} flange as typed so far, looking at its own face.${filled}`,
      svg: writeSvg(drawing, { standalone: false }),
      column: false,
    };
  });
