/** The bracket to print: its holes with the printer's allowance, and the words that keep it off a machine, on its foot. */
import { type BracketSpec, bracketFaults } from './bracket.ts';
import type { MeasureText } from './lay-text.ts';

/** A line of letters on the foot: the middle of it on the blank, read with the foot's free end below. mm */
export interface FootText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly depth: number;
}

/** Letters are between these cap heights, mm, tried in such steps; lines stand this many cap heights apart. */
const letters = { least: 1.8, most: 6, step: 0.1, apart: 0.7 };
/** Kept free beside holes and edges, mm. */
const margin = 2;
/** Depth of letters, mm, and at most this share of the sheet. */
const deep = { most: 0.6, share: 0.25 };

/** Holes as they are printed; as drawn where the wider ones do not fit. */
export function bracketMockUp(spec: BracketSpec, more: number): BracketSpec {
  const { foot, sensor } = spec;
  const wider: BracketSpec = {
    ...spec,
    foot: { ...foot, hole: foot.hole + more },
    sensor: { bore: sensor.bore + more, ear: sensor.ear && { ...sensor.ear, hole: sensor.ear.hole + more } },
  };
  return bracketFaults(wider).length > 0 ? spec : wider;
}

/**
 * The lines on the face z = thickness of the foot, between the two bolt holes; none where the letters would be too small to read.
 * A flat bracket has its sensor there too: the lines end before its bore.
 */
export function footText(spec: BracketSpec, lines: readonly string[], measure: MeasureText): FootText[] {
  const { foot, straights, bends, sensor, relief, thickness, arm } = spec;
  const wide = foot.spacing - foot.hole - 2 * margin;
  const end =
    bends.length > 0
      ? (straights[0] ?? 0) - (relief && arm.width < foot.spacing - foot.hole ? relief.depth : 0)
      : (straights[0] ?? 0) -
        arm.edge -
        Math.max(sensor.bore / 2, sensor.ear?.towards === 'foot' ? sensor.ear.distance + sensor.ear.hole / 2 : 0);
  const high = end - 2 * margin;
  const rows = lines.length + letters.apart * (lines.length - 1);
  let height = Math.min(letters.most, high / rows);
  // Small letters are a little wider for their height: what does not fit is made smaller until it does.
  const widest = () => Math.max(...lines.map((text) => measure(text, height)));
  while (height >= letters.least && widest() > wide) height -= letters.step;
  if (lines.length === 0 || !(height >= letters.least)) return [];
  const pitch = height * (1 + letters.apart);
  const middle = end / 2;
  return lines.map((text, i) => ({
    text,
    x: middle + ((lines.length - 1) / 2 - i) * pitch,
    y: 0,
    height,
    depth: Math.min(deep.most, deep.share * thickness),
  }));
}
